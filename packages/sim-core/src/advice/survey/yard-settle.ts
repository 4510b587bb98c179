// A line settled through the readings of a yard test, with the errors of readings and tools.
import type { CompiledFluid } from '../../physics/fluid/compile.ts';
import type { Reading } from './schema.ts';
import {
  fitLine,
  type Line,
  type Prior,
  type Shift,
  UNSHIFTED,
  type YardFit,
  type YardNumbers,
  yardDeviations,
  yardNumbers,
} from './yard-fit.ts';
import type { YardTest } from './yard-schema.ts';

/** Deviations from the middle to limits that hold in nine cases of ten. [-] */
export const NINETY = 1.645;

/** Priors so wide that they only keep the equations solvable. */
const OPEN: readonly Prior[] = [
  { value: 0.7, deviation: 1 },
  { value: 5, deviation: 30 },
];
/** a2 of a glazed flat plate where nothing is known: between 0 and 0.02; judgement. */
export const COMMON_A2: Prior = { value: 0.01, deviation: 0.006 };
/** eta0 and a1 of glazed flat plates where the readings tell nothing of them, for the other's sake; judgement. */
const COMMON: readonly Prior[] = [
  { value: 0.7, deviation: 0.08 },
  { value: 5.5, deviation: 2 },
];
/** A known number without limits is taken as good to 10 %; judgement. */
const BARE = 0.1;

/** Widest half band that still counts as told: of eta0, and of a1 as a share of it; judgement. [-] */
const TOLD = { eta0: 0.12, a1: 0.4 } as const;

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

export function settle(
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
export function firstTold(
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

export const priorsFor = (known: readonly (Prior | null)[], told: readonly boolean[]): Prior[] => [
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

export function toPrior(reading: Reading | undefined): Prior | null {
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
