/** A flat plate's efficiency line from what it is made of. */
import { DesignError, requireNumber } from '../../input/errors.ts';
import { efficiencyFactor, type FinnedTube } from './fin.ts';
import { leastSquares } from './least-squares.ts';
import { topLoss } from './top-loss.ts';

/** A flat plate by its parts. */
export interface CollectorBuild {
  /** Of the aperture, to which the line refers. [m²] */
  readonly area: number;
  /** Height of the box times its perimeter: what loses at the edge. [m²] */
  readonly edgeArea: number;
  /** Covers, 1 to 3. */
  readonly covers: number;
  /** [-] */
  readonly coverEmittance: number;
  /** [-] */
  readonly plateEmittance: number;
  /** (τα) at normal incidence, dirt included. [-] */
  readonly transmittanceAbsorptance: number;
  /** k of the plate. [W/(m·K)] */
  readonly plateConductivity: number;
  /** δ of the plate. [m] */
  readonly plateThickness: number;
  /** W, from tube to tube. [m] */
  readonly tubeSpacing: number;
  /** D, outside of the tube. [m] */
  readonly tubeDiameter: number;
  /** D_i, bore. [m] */
  readonly innerDiameter: number;
  /** 1/C_b, per metre of tube. [m·K/W] */
  readonly bondResistance: number;
  /** h, film inside the tubes at the test's flow. [W/(m²·K)] */
  readonly filmCoefficient: number;
  /** Of the insulation. [W/(m·K)] */
  readonly insulationConductivity: number;
  /** Behind the plate. [m] */
  readonly backThickness: number;
  /** At the edge. [m] */
  readonly edgeThickness: number;
  /** Added to the covers' loss, for asking what an error of Klein's formula does; 0 by default. [W/(m²·K)] */
  readonly extraTopLoss?: number;
}

/** Conditions at which the line is drawn. */
export interface RatingConditions {
  /** On the plane. [W/m²] */
  readonly irradiance: number;
  /** Outdoor air. [°C] */
  readonly ambientTemperature: number;
  /** Of the panel. [°] */
  readonly slope: number;
  /** Film of the wind on the outer cover. [W/(m²·K)] */
  readonly windCoefficient: number;
  /** ṁ c_p through the panel. [W/K] */
  readonly capacityRate: number;
  /** Inlet of each point, three at least. [°C] */
  readonly inletTemperatures: readonly number[];
}

/** One point of the line. */
export interface RatingPoint {
  /** [°C] */
  readonly inletTemperature: number;
  /** Mean of inlet and outlet. [°C] */
  readonly meanTemperature: number;
  /** Mean of the plate. [°C] */
  readonly plateTemperature: number;
  /** Through the covers. [W/(m²·K)] */
  readonly topLoss: number;
  /** Of the whole panel, per aperture. [W/(m²·K)] */
  readonly loss: number;
  /** F'. [-] */
  readonly efficiencyFactor: number;
  /** F_R. [-] */
  readonly removalFactor: number;
  /** Into the fluid. [W] */
  readonly usefulPower: number;
  /** (t_m − t_a)/G. [m²·K/W] */
  readonly reducedTemperature: number;
  /** η. [-] */
  readonly efficiency: number;
}

/** A line and its points. */
export interface RatedLine {
  /** [-] */
  readonly eta0: number;
  /** [W/(m²·K)] */
  readonly a1: number;
  /** [W/(m²·K²)] */
  readonly a2: number;
  /** Largest distance of a point from the line. [-] */
  readonly largestResidual: number;
  /** In the order of the inlets. */
  readonly points: readonly RatingPoint[];
}

/**
 * Efficiency line of a flat plate from its build: plate temperature by iteration at each inlet, then least squares of η on
 * (t_m − t_a)/G.
 *
 *     U_L = U_t(T_p) + k/thickness + (k/edge) edge area/A
 *     T_p = T_in + (Q/A)(1 − F_R)/(F_R U_L),   Q = A [F_R (τα) G − F_R U_L (T_in − T_a)]
 *     η = eta0 − a1 x − a2 G x²,   x = (t_m − t_a)/G
 *
 * Where the fit bends the wrong way a2 is 0 and the line straight.
 *
 * @throws {@link DesignError} for a number out of its range.
 * @see Duffie & Beckman (2013) §6.4 to 6.9; Klein (1979) for U_t.
 */
export function collectorFromBuild(build: CollectorBuild, conditions: RatingConditions): RatedLine {
  requireBuild(build);
  requireConditions(conditions);
  return ratedLine(build, conditions);
}

/** Kernel of {@link collectorFromBuild}. @internal */
export function ratedLine(build: CollectorBuild, conditions: RatingConditions): RatedLine {
  const points = conditions.inletTemperatures.map((inlet) => ratingPoint(build, conditions, inlet));
  const { irradiance } = conditions;
  const rows = points.map(({ reducedTemperature: x }) => [1, -x, -irradiance * x * x]);
  const values = points.map(({ efficiency }) => efficiency);
  let [eta0, a1, a2] = leastSquares(rows, values) as [number, number, number];
  if (a2 < 0) {
    a2 = 0;
    [eta0, a1] = leastSquares(
      rows.map((row) => row.slice(0, 2)),
      values,
    ) as [number, number];
  }
  const residual = (row: readonly number[], value: number) => eta0 + a1 * row[1]! + a2 * row[2]! - value;
  const largestResidual = Math.max(...rows.map((row, at) => Math.abs(residual(row, values[at]!))));
  return { eta0, a1, a2, largestResidual, points };
}

/** Loss of the plate at a temperature. [W/(m²·K)] */
function lossAt(build: CollectorBuild, conditions: RatingConditions, plateTemperature: number) {
  const { ambientTemperature, slope, windCoefficient } = conditions;
  const top =
    topLoss({
      plateTemperature: Math.max(plateTemperature, ambientTemperature + 1e-3),
      ambientTemperature,
      covers: build.covers,
      plateEmittance: build.plateEmittance,
      coverEmittance: build.coverEmittance,
      slope,
      windCoefficient,
    }).conductance + (build.extraTopLoss ?? 0);
  const k = build.insulationConductivity;
  return { top, whole: top + k / build.backThickness + (k / build.edgeThickness) * (build.edgeArea / build.area) };
}

function ratingPoint(build: CollectorBuild, conditions: RatingConditions, inlet: number): RatingPoint {
  const { irradiance, ambientTemperature, capacityRate } = conditions;
  const { area, transmittanceAbsorptance } = build;
  const tube: FinnedTube = { ...build, loss: 1 };
  let plate = inlet + 0.02 * irradiance;
  for (let round = 0; ; round++) {
    const { top, whole: loss } = lossAt(build, conditions, plate);
    const factor = efficiencyFactor({ ...tube, loss });
    const z = capacityRate / (area * loss * factor);
    const removal = factor * -z * Math.expm1(-1 / z);
    const flux = removal * (transmittanceAbsorptance * irradiance - loss * (inlet - ambientTemperature));
    const next = inlet + (flux * (1 - removal)) / (removal * loss);
    if (Math.abs(next - plate) < 1e-11 || round === 200) {
      const meanTemperature = inlet + (flux * area) / (2 * capacityRate);
      return {
        inletTemperature: inlet,
        meanTemperature,
        plateTemperature: next,
        topLoss: top,
        loss,
        efficiencyFactor: factor,
        removalFactor: removal,
        usefulPower: flux * area,
        reducedTemperature: (meanTemperature - ambientTemperature) / irradiance,
        efficiency: flux / irradiance,
      };
    }
    plate = next;
  }
}

/** Highest plate temperature that stagnation is looked for. [°C] */
const HOTTEST = 390;

/**
 * Temperature of the plate with no flow: (τα) G = U_L(T_p) (T_p − T_a). Above 200 °C Klein's formula is extrapolated.
 *
 * @internal
 */
export function stagnationOfBuild(build: CollectorBuild, conditions: RatingConditions): number {
  const absorbed = build.transmittanceAbsorptance * conditions.irradiance;
  const ambient = conditions.ambientTemperature;
  let low = ambient + 1e-3;
  let high = HOTTEST;
  for (let round = 0; round < 60; round++) {
    const middle = (low + high) / 2;
    if (lossAt(build, conditions, middle).whole * (middle - ambient) < absorbed) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

function requireBuild(build: CollectorBuild): void {
  requireNumber('area', build.area, 0.01, 100, 'm²');
  requireNumber('edgeArea', build.edgeArea, 0, 100, 'm²');
  requireNumber('covers', build.covers, 1, 3, '');
  requireNumber('coverEmittance', build.coverEmittance, 0.01, 1, '');
  requireNumber('plateEmittance', build.plateEmittance, 0.01, 1, '');
  requireNumber('transmittanceAbsorptance', build.transmittanceAbsorptance, 0.01, 1, '');
  requireNumber('plateConductivity', build.plateConductivity, 0.1, 500, 'W/(m·K)');
  requireNumber('plateThickness', build.plateThickness, 1e-5, 0.05, 'm');
  requireNumber('tubeSpacing', build.tubeSpacing, 1e-3, 2, 'm');
  requireNumber('tubeDiameter', build.tubeDiameter, 1e-4, build.tubeSpacing, 'm (at most the spacing)');
  requireNumber('innerDiameter', build.innerDiameter, 1e-4, build.tubeDiameter, 'm (at most the outside)');
  requireNumber('bondResistance', build.bondResistance, 0, 10, 'm·K/W');
  requireNumber('filmCoefficient', build.filmCoefficient, 1, 1e5, 'W/(m²·K)');
  requireNumber('insulationConductivity', build.insulationConductivity, 1e-3, 10, 'W/(m·K)');
  requireNumber('backThickness', build.backThickness, 1e-4, 1, 'm');
  requireNumber('edgeThickness', build.edgeThickness, 1e-4, 1, 'm');
  requireNumber('extraTopLoss', build.extraTopLoss ?? 0, -2, 5, 'W/(m²·K)');
}

function requireConditions(conditions: RatingConditions): void {
  requireNumber('irradiance', conditions.irradiance, 100, 2000, 'W/m²');
  requireNumber('ambientTemperature', conditions.ambientTemperature, -50, 60, '°C');
  requireNumber('slope', conditions.slope, 0, 90, '°');
  requireNumber('windCoefficient', conditions.windCoefficient, 1, 100, 'W/(m²·K)');
  requireNumber('capacityRate', conditions.capacityRate, 1, 1e5, 'W/K');
  const { inletTemperatures: inlets, ambientTemperature } = conditions;
  for (const [row, inlet] of inlets.entries())
    requireNumber(`inletTemperatures[${row}]`, inlet, ambientTemperature, 150, '°C (the air’s or more)');
  if (new Set(inlets).size >= 3) return;
  throw new DesignError([
    {
      path: 'inletTemperatures',
      found: `${new Set(inlets).size} different`,
      expected: 'three or more different temperatures',
      remedy: 'A curved line needs three points.',
    },
  ]);
}
