import { checkInput } from '../../input/check.ts';
import type { WorkingStep } from '../../input/working.ts';
import { type CompiledFluid, compileFluid } from '../../physics/fluid/compile.ts';
import type { Band } from './band.ts';
import type { RatedCollector } from './rate.ts';
import type { Reading } from './schema.ts';
import {
  fitLine,
  fluxOf,
  type Line,
  type Prior,
  type Shift,
  UNSHIFTED,
  type YardFit,
  type YardNumbers,
  yardDeviations,
  yardNumbers,
} from './yard-fit.ts';
import { yardNotes } from './yard-notes.ts';
import { type YardTest, type YardTestInput, yardSchema } from './yard-schema.ts';
import { yardSteps } from './yard-steps.ts';

/** Deviations from the middle to limits that hold in nine cases of ten. [-] */
const NINETY = 1.645;

/** Where a coefficient of the line comes from. */
export type YardOrigin = 'test' | 'known' | 'both' | 'assumed' | 'cannot tell';

/** A coefficient of the line, with the limits that it stays within in about nine cases of ten. */
export interface YardCoefficient {
  /** `null` where the readings cannot tell it. */
  readonly band: Band | null;
  /** Readings, what was known before, both, a common value, or nothing. */
  readonly from: YardOrigin;
  /** What the readings would have to be like, where they cannot tell; else empty. */
  readonly remedy: string;
}

/** One reading on the line. */
export interface YardPoint {
  /** Heat into the fluid per area. [W/m²] */
  readonly flux: number;
  /** (t_m − t_a)/G; `null` with the panel covered. [m²·K/W] */
  readonly reducedTemperature: number | null;
  /** η; `null` with the panel covered. [-] */
  readonly efficiency: number | null;
  /** Limits of η in nine cases of ten, from what differs between readings; of the flux with the panel covered. */
  readonly error: number;
  /** Distance from the line in standard deviations; beyond 3 the reading is doubtful. [-] */
  readonly residual: number;
}

/** A panel's line from readings in a yard. */
export interface YardRating {
  /** For `array.collector` of `defineSystem`; `null` where eta0 or a1 cannot be told. */
  readonly collector: RatedCollector | null;
  /** Zero-loss efficiency at normal incidence. [-] */
  readonly eta0: YardCoefficient;
  /** [W/(m²·K)] */
  readonly a1: YardCoefficient;
  /** [W/(m²·K²)] */
  readonly a2: YardCoefficient;
  /** The readings, in order. */
  readonly points: readonly YardPoint[];
  /**
   * Σ (residual/deviation)² over the points less the coefficients that they told; near 1 when the tools are as good as said;
   * `null` without spare points. [-]
   */
  readonly scatter: number | null;
  /** The working. */
  readonly steps: readonly WorkingStep[];
  /** What a reader should know before trusting it. */
  readonly notes: readonly string[];
}

/** Priors so wide that they only keep the equations solvable. */
const OPEN: readonly Prior[] = [
  { value: 0.7, deviation: 1 },
  { value: 5, deviation: 30 },
];
/** a2 of a glazed flat plate where nothing is known: between 0 and 0.02; judgement. */
const COMMON_A2: Prior = { value: 0.01, deviation: 0.006 };
/** eta0 and a1 of glazed flat plates where the readings tell nothing of them, for the other's sake; judgement. */
const COMMON: readonly Prior[] = [
  { value: 0.7, deviation: 0.08 },
  { value: 5.5, deviation: 2 },
];
/** A known number without limits is taken as good to 10 %; judgement. */
const BARE = 0.1;

/** Widest half band that still counts as told: of eta0, and of a1 as a share of it; judgement. [-] */
const TOLD = { eta0: 0.12, a1: 0.4 } as const;

/**
 * A panel's efficiency line from readings in a yard: inlet, outlet, flow, sun and air, several points over an hour.
 *
 *     q = ρ c_p V̇ (t_out − t_in)/A + C dt_m/dt,   q = eta0 K G − a1 d − a2 d |d|,   d = t_m − t_a
 *
 * Weighted least squares on q, so that a covered panel (irradiance 0, warm inlet) tells the loss alone. Each reading weighs by
 * its tools. What the tools do to all readings alike (scales of flow and sun, difference between the thermometers, heat capacity)
 * is found by fitting again with each shifted, and adds as independent errors. Where the readings scatter more than their tools
 * explain, their part grows by that. What was known before (`known`, such as the bands of a survey) enters with its own limits. A
 * coefficient whose band stays wider than 0.12 (eta0) or 40 % (a1) is refused, with what would tell it.
 *
 * @param input - Readings; see {@link YardTestInput}. `area` and `points` are needed.
 * @throws {@link DesignError} listing all faults at once, by field and point, with the unit expected.
 * @see ISO 9806 for the line; JCGM 100 for the errors.
 */
export function rateFromYardTest(input: YardTestInput): YardRating {
  const test = checkInput(yardSchema, input);
  const known = [test.known.eta0, test.known.a1, test.known.a2].map(toPrior);
  const fluid = compileFluid(test.fluid, test.glycolMassFraction);
  const { settled, told } = firstTold(test, fluid, known);
  const { fit, points, deviations, scatter } = settled;
  const coefficient = (at: 0 | 1 | 2, remedy: string): YardCoefficient => {
    const half = NINETY * settled.deviation[at]!;
    const before = known[at]!;
    if (at !== 2 && before === null && !told[at]) return { band: null, from: 'cannot tell', remedy };
    const likely = Math.max(fit.line[at], 0);
    const band = { low: Math.max(likely - half, 0), likely, high: likely + half };
    // What the readings could not narrow is as good as it was before them.
    const share = settled.deviation[at]! / (before ?? COMMON_A2).deviation;
    const from = before !== null ? (share < 0.9 ? 'both' : 'known') : at === 2 && share > 0.7 ? 'assumed' : 'test';
    return { band, from, remedy: '' };
  };
  const eta0 = coefficient(
    0,
    'Needs sun of 600 W/m² or more with the inlet near the air’s temperature, a sun meter good to some 7 %, or eta0 from a survey in `known`.',
  );
  const a1 = coefficient(
    1,
    'Needs readings with the fluid 30 K and more above the air, in sun or with the panel covered, and slow enough a flow that inlet and outlet differ by some kelvin; or a1 from a survey in `known`.',
  );
  const a2 = coefficient(2, '');
  return {
    collector: toCollector(test, eta0, a1, a2),
    eta0,
    a1,
    a2,
    points: points.map((point, at) => toPoint(point, fit.line, deviations[at]!)),
    scatter,
    steps: yardSteps(test, points, deviations, fit.line),
    notes: yardNotes(test, points, {
      eta0,
      a1,
      scatter,
      residuals: points.map((p, at) => (p.flux - fluxOf(fit.line, p)) / deviations[at]!),
    }),
  };
}

/** A fit whose weights have settled, with the errors of readings and tools. */
interface Settled {
  readonly points: readonly YardNumbers[];
  readonly deviations: readonly number[];
  readonly priors: readonly Prior[];
  readonly fit: YardFit;
  readonly scatter: number | null;
  /** Standard deviations of eta0, a1, a2, everything counted. */
  readonly deviation: readonly number[];
}

function settle(
  test: YardTest,
  fluid: CompiledFluid,
  priors: readonly Prior[],
  known: readonly (Prior | null)[],
): Settled {
  const points = yardNumbers(test, fluid, UNSHIFTED);
  // The weights need a line, and the line weights: a few rounds settle both.
  let line: Line = [priors[0]!.value, priors[1]!.value, priors[2]!.value];
  let deviations = yardDeviations(test, points, plausible(line));
  let fit = fitLine(points, deviations, priors);
  for (let round = 0; round < 4; round++) {
    line = fit.line;
    deviations = yardDeviations(test, points, plausible(line));
    fit = fitLine(points, deviations, priors);
  }
  const spare = points.length - known.slice(0, 2).filter((prior) => prior === null).length;
  const scatter = spare > 0 ? fit.chiSquare / spare : null;
  const widening = Math.max(1, scatter ?? 1);
  const common = commonErrors(test, fluid, deviations, priors);
  const deviation = [0, 1, 2].map((at) =>
    Math.hypot(Math.sqrt(fit.covariance[at]![at]! * widening), ...common.map((change) => change[at]!)),
  );
  return { points, deviations, priors, fit, scatter, deviation };
}

/**
 * The fit that asks most of the readings and gets it: both coefficients; else eta0 alone, a1 as common panels have it (a cold
 * test); else a1 alone (a covered panel); else neither.
 */
function firstTold(
  test: YardTest,
  fluid: CompiledFluid,
  known: readonly (Prior | null)[],
): { settled: Settled; told: readonly boolean[] } {
  for (const told of [
    [true, true],
    [true, false],
    [false, true],
  ]) {
    const settled = settle(test, fluid, priorsFor(known, told), known);
    if (told.every((asked, at) => !asked || known[at] !== null || isTold(settled, at))) return { settled, told };
  }
  const told = [false, false];
  return { settled: settle(test, fluid, priorsFor(known, told), known), told };
}

const priorsFor = (known: readonly (Prior | null)[], told: readonly boolean[]): Prior[] => [
  ...told.map((asked, at) => known[at] ?? (asked ? OPEN : COMMON)[at]!),
  known[2] ?? COMMON_A2,
];

/** Whether the readings tell a coefficient by themselves; a2 needs no telling. */
function isTold({ fit: { line }, deviation }: Settled, at: number): boolean {
  const half = NINETY * deviation[at]!;
  if (at === 0) return half <= TOLD.eta0 && line[0] > 0.05 && line[0] <= 1.05;
  return at === 2 || (half <= TOLD.a1 * line[1] && line[1] > 0.2);
}

/** Weights are taken for a line that a panel can have, whatever the fit does on its way. */
const plausible = ([eta0, a1, a2]: Line): Line => [
  Math.min(Math.max(eta0, 0.2), 1),
  Math.min(Math.max(a1, 1), 15),
  Math.min(Math.max(a2, 0), 0.05),
];

function toPrior(reading: Reading | undefined): Prior | null {
  if (reading === undefined) return null;
  if (typeof reading === 'number') return { value: reading, deviation: (BARE * reading) / NINETY || 1e-3 };
  const { low, likely, high } = reading;
  return { value: likely, deviation: Math.max((high - low) / (2 * NINETY), 1e-6 * likely, 1e-9) };
}

/**
 * What one standard deviation of each error that all readings share does to the line: half the way from one side to the other.
 */
function commonErrors(
  test: YardTest,
  fluid: CompiledFluid,
  deviations: readonly number[],
  priors: readonly Prior[],
): number[][] {
  const { thermometerPair, flowScale, sunScale } = test.tools;
  const line = (shift: Partial<Shift>) =>
    fitLine(yardNumbers(test, fluid, { ...UNSHIFTED, ...shift }), deviations, priors).line;
  const sides = (shift: (sign: number) => Partial<Shift>) => {
    const above = line(shift(1));
    return line(shift(-1)).map((value, at) => (above[at]! - value) / 2);
  };
  return [
    sides((sign) => ({ pair: sign * thermometerPair })),
    sides((sign) => ({ flow: 1 + sign * flowScale })),
    sides((sign) => ({ sun: 1 + sign * sunScale })),
    sides((sign) => ({ capacity: 1 + 0.3 * sign })), // a panel's heat capacity is known to a third or so; judgement
  ];
}

function toPoint(point: YardNumbers, line: Line, deviation: number): YardPoint {
  const { flux, irradiance, difference } = point;
  const lit = irradiance > 0;
  return {
    flux,
    reducedTemperature: lit ? difference / irradiance : null,
    efficiency: lit ? flux / irradiance : null,
    error: (NINETY * deviation) / (lit ? irradiance : 1),
    residual: (flux - fluxOf(line, point)) / deviation,
  };
}

function toCollector(
  test: YardTest,
  eta0: YardCoefficient,
  a1: YardCoefficient,
  a2: YardCoefficient,
): RatedCollector | null {
  if (eta0.band === null || a1.band === null || a2.band === null) return null;
  return {
    name: test.name ?? 'flat plate of a yard test',
    area: test.area,
    eta0: Math.min(Math.max(eta0.band.likely, 0.1), 1),
    a1: Math.max(a1.band.likely, 0.2),
    a2: Math.min(Math.max(a2.band.likely, 0), 0.2),
    incidenceModifier: { b0: test.b0 },
    ...(test.heatCapacity >= 1000 ? { heatCapacity: test.heatCapacity } : {}),
  };
}
