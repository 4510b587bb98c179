/** Weighted least squares of the efficiency line through the points of a yard test. */
import { beamIncidenceModifier } from '../../physics/collector/incidence.ts';
import { type CompiledFluid, fluidDensity, fluidSpecificHeat } from '../../physics/fluid/compile.ts';
import { solve } from './least-squares.ts';
import type { YardTest } from './yard-schema.ts';

/** eta0, a1, a2. */
export type Line = readonly [eta0: number, a1: number, a2: number];

/** A value and its standard deviation that the readings are added to. */
export interface Prior {
  readonly value: number;
  readonly deviation: number;
}

/** What the tools do to all readings alike; 0 and 1 leave them as they are. */
export interface Shift {
  /** Added to every outlet. [K] */
  readonly pair: number;
  /** Factor on every flow. [-] */
  readonly flow: number;
  /** Factor on every irradiance. [-] */
  readonly sun: number;
  /** Factor on the heat capacity. [-] */
  readonly capacity: number;
}

export const UNSHIFTED: Shift = { pair: 0, flow: 1, sun: 1, capacity: 1 };

/** One reading turned into a point: q = eta0 K G − a1 d − a2 d |d|. */
export interface YardNumbers {
  /** Heat into the fluid, and into the panel while it warms. [W/m²] */
  readonly flux: number;
  /** K G. [W/m²] */
  readonly light: number;
  /** d = t_m − t_a. [K] */
  readonly difference: number;
  /** G. [W/m²] */
  readonly irradiance: number;
  /** ρ c_p V̇/A. [W/(m²·K)] */
  readonly capacityRate: number;
}

/** Diffuse light counts as if it came at 60° (Duffie & Beckman §5.4, from memory): K = 1 − b0. */
const modifierOf = (b0: number, incidence: number, diffuse: number): number =>
  (1 - diffuse) * beamIncidenceModifier({ b0 }, incidence) + diffuse * (1 - b0);

/** The readings as points. */
export function yardNumbers(test: YardTest, fluid: CompiledFluid, shift: Shift): YardNumbers[] {
  return test.points.map((point) => {
    const outlet = point.outlet + shift.pair;
    const mean = (point.inlet + outlet) / 2;
    const flow = point.flow * shift.flow;
    const capacityRate = (fluidDensity(fluid, point.inlet) * fluidSpecificHeat(fluid, mean) * flow) / test.area;
    const stored = (test.heatCapacity * shift.capacity * (point.warming ?? 0)) / 3600;
    const irradiance = point.irradiance * shift.sun;
    return {
      flux: capacityRate * (outlet - point.inlet) + stored,
      light: modifierOf(test.b0, point.incidence, point.diffuseShare) * irradiance,
      difference: mean - point.air,
      irradiance,
      capacityRate,
    };
  });
}

/** Standard deviation of each point's flux from what differs from reading to reading. [W/m²] */
export function yardDeviations(test: YardTest, points: readonly YardNumbers[], line: Line): number[] {
  const { thermometer, air, flowReading, sunReading } = test.tools;
  return points.map(({ flux, light, difference, capacityRate }) =>
    Math.hypot(
      capacityRate * thermometer * Math.SQRT2,
      flux * flowReading,
      line[0] * light * sunReading,
      (line[1] + 2 * line[2] * Math.abs(difference)) * Math.hypot(air, thermometer / Math.SQRT2),
    ),
  );
}

/** A fitted line. */
export interface YardFit {
  readonly line: Line;
  /** Covariance from the readings' scatter and the priors. Shape [3 × 3]. */
  readonly covariance: readonly (readonly number[])[];
  /** Σ (residual/deviation)². [-] */
  readonly chiSquare: number;
}

const row = ({ light, difference }: YardNumbers): Line => [light, -difference, -difference * Math.abs(difference)];

/** Flux of a line at a point. [W/m²] */
export const fluxOf = (line: Line, point: YardNumbers): number =>
  row(point).reduce((sum, value, at) => sum + value * line[at]!, 0);

/** Least squares with priors: (Σ r rᵀ/σ² + diag 1/σ_p²) p = Σ r q/σ² + p_0/σ_p². */
export function fitLine(
  points: readonly YardNumbers[],
  deviations: readonly number[],
  priors: readonly Prior[],
): YardFit {
  // In units of the priors' deviations the matrix is near 1 whatever the sizes of the three.
  const units = priors.map(({ deviation }) => deviation);
  const scaled = points.map((point, at) => row(point).map((value, i) => (value * units[i]!) / deviations[at]!));
  const matrix = units.map((_, i) =>
    units.map((_, j) => scaled.reduce((sum, r) => sum + r[i]! * r[j]!, i === j ? 1 : 0)),
  );
  const right = units.map(
    (unit, i) =>
      scaled.reduce((sum, r, at) => sum + (r[i]! * points[at]!.flux) / deviations[at]!, 0) + priors[i]!.value / unit,
  );
  const line = solve(matrix, right)!.map((value, i) => value * units[i]!) as unknown as Line;
  const covariance = units.map((unit, i) => {
    const unitVector = units.map((_, j) => (i === j ? 1 : 0));
    return solve(matrix, unitVector)!.map((value, j) => value * unit * units[j]!);
  });
  const chiSquare = points.reduce(
    (sum, point, at) => sum + ((point.flux - fluxOf(line, point)) / deviations[at]!) ** 2,
    0,
  );
  return { line, covariance, chiSquare };
}
