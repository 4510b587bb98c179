/** Screening by elementary effects: many paths through the ranges, each moving every input once. */
import type { Measure } from '../measures.ts';
import { diceFor } from '../random.ts';
import type { StudyRow } from '../types.ts';

/** Levels of the grid; with four the step below meets each level equally often (Morris 1991). */
const LEVELS = 4;
/** Step of an input over its range. */
const STEP = LEVELS / (2 * (LEVELS - 1));

/** What one input does to one key figure. */
export interface ElementaryEffects {
  /** Mean effect of moving the input through its whole range; falls and rises cancel. [unit of the key figure] */
  readonly mean: number;
  /** Mean size of the effect: the order of importance. */
  readonly meanSize: number;
  /** Standard deviation of the effect: large where it is curved or hangs on other inputs; `null` with fewer than two paths. */
  readonly deviation: number | null;
  /** Paths that gave the effect; those with a failed design are left out. */
  readonly paths: number;
}

/** Outcome of a screening. */
export interface Morris {
  /** Effects by input and key figure. */
  readonly effects: Readonly<Record<string, Readonly<Partial<Record<Measure, ElementaryEffects>>>>>;
  /** Rows whose design failed. */
  readonly failed: number;
}

/** One path: where it starts, in which order inputs move, and which way. */
interface MorrisPath {
  readonly start: readonly number[];
  readonly order: readonly number[];
  readonly up: readonly boolean[];
}

function pathFor(seed: number, path: number, inputs: number): MorrisPath {
  const dice = diceFor(seed, path);
  const order = Array.from({ length: inputs }, (_, input) => input);
  for (let at = inputs - 1; at > 0; at--) {
    const other = dice.below(at + 1);
    [order[at], order[other]] = [order[other]!, order[at]!];
  }
  const up = order.map(() => dice.below(2) === 1);
  const start = up.map((rises) => {
    const level = dice.below(LEVELS / 2) / (LEVELS - 1);
    return rises ? level : level + STEP;
  });
  return { start, order, up };
}

/** A point of the unit cube: path by path, each with its start and one point after every move. @internal */
export function morrisPoint(seed: number, index: number, inputs: number): readonly number[] {
  const { start, order, up } = pathFor(seed, Math.trunc(index / (inputs + 1)), inputs);
  const point = [...start];
  for (const input of order.slice(0, index % (inputs + 1))) point[input]! += up[input] ? STEP : -STEP;
  return point;
}

/**
 * Elementary effects of a set of rows.
 *
 *     EE = (y after − y before)/Δ, Δ signed step over the range;   μ mean, μ* mean of |EE|, σ standard deviation
 *
 * @see Morris, Technometrics 33 (1991) 161–174; μ*: Campolongo, Cariboni & Saltelli, Environ. Model. Softw. 22 (2007) 1509–1518.
 * @internal
 */
export async function analyseMorris(
  rows: Iterable<StudyRow> | AsyncIterable<StudyRow>,
  paths: readonly string[],
  measures: readonly Measure[],
  seed: number,
): Promise<Morris> {
  const inputs = paths.length;
  const effects = paths.map(() => new Map(measures.map((measure) => [measure, [] as number[]])));
  let before: StudyRow | null = null;
  let failed = 0;
  for await (const row of rows) {
    if (row.error !== undefined) failed++;
    const move = (row.index % (inputs + 1)) - 1;
    if (move >= 0 && before?.index === row.index - 1) {
      const { order, up } = pathFor(seed, Math.trunc(row.index / (inputs + 1)), inputs);
      const input = order[move]!;
      for (const [measure, list] of effects[input]!) {
        const [from, to] = [before.measures[measure] ?? null, row.measures[measure] ?? null];
        if (from !== null && to !== null) list.push((to - from) / (up[input] ? STEP : -STEP));
      }
    }
    before = row;
  }
  return { effects: Object.fromEntries(paths.map((path, input) => [path, summaries(effects[input]!)])), failed };
}

function summaries(effects: ReadonlyMap<Measure, readonly number[]>) {
  const entries = [...effects].flatMap(([measure, list]): [Measure, ElementaryEffects][] => {
    const paths = list.length;
    if (paths === 0) return [];
    const mean = list.reduce((sum, effect) => sum + effect, 0) / paths;
    const meanSize = list.reduce((sum, effect) => sum + Math.abs(effect), 0) / paths;
    const squares = list.reduce((sum, effect) => sum + (effect - mean) ** 2, 0);
    return [[measure, { mean, meanSize, deviation: paths < 2 ? null : Math.sqrt(squares / (paths - 1)), paths }]];
  });
  return Object.fromEntries(entries);
}
