/** From the years of each cause alone to bands of all together. */
import type { StepOptions } from '../year/stepping.ts';
import type { KnownBy, Mover } from './band-parts.ts';
import type { BandShare, Bands, MeasureBand } from './band-types.ts';
import { normalQuantile } from './distributions.ts';
import { latinStrata } from './latin-hypercube.ts';
import { MEASURE_UNITS, type Measure } from './measures.ts';
import { percentile } from './percentiles.ts';
import type { StudyRow } from './types.ts';

/** Steps of the moved years: what a cause adds is a difference of two of them, and the coarse steps' own error goes out of it. */
export const COARSE: StepOptions = { stepsPerHour: 1 };

/** Designs drawn on the curves, no years: enough for a percentile to within a hundredth of the band. */
const SAMPLES = 4000;
const SEED = 1;
/** Hours of the year's own steps and of coarser ones go by their ratio, with this much added to both: few hours have none. Judgement. [h] */
const FEW_HOURS = 10;

/** What the bands are of. */
interface Matter {
  readonly list: readonly Mover[];
  /** Houses with all causes off at once, whose rows come last. */
  readonly houses: number;
  readonly known: KnownBy;
  readonly measures: readonly Measure[];
  readonly share: number;
}

/** What one cause adds to the base: a parabola through its two years, or a line in its own measure through its one. */
interface Effect {
  readonly mover: Mover;
  /** @param x - As {@link Mover.at}, 0 as the design is written. */
  readonly adds: (x: number) => number;
}

function effectOf(mover: Mover, base: number, [one, other]: readonly number[]): Effect {
  const { scale } = mover;
  const [x, y] = mover.at.map(scale);
  const a = (one! - base) / x!;
  const bend = other === undefined ? 0 : (a - (other - base) / y!) / (x! - y!);
  return { mover, adds: (at) => scale(at) * (a + bend * (scale(at) - x!)) };
}

/** Temperatures and hours: a limit, a boiling point or nought bends them, so that effects of causes do not add up. */
export const bends = (measure: Measure): boolean => ['°C', 'h'].includes(MEASURE_UNITS[measure]);

/** Bands of the key figures, from the rows of `bands`: as written, the same in coarse steps, the moved, the houses. */
export function analyseBands(rows: readonly StudyRow[], matter: Matter): Bands {
  const { houses, list, measures } = matter;
  const normal = Float64Array.from({ length: SAMPLES }, (_, stratum) => normalQuantile((stratum + 0.5) / SAMPLES));
  const drawn = latinStrata(SEED, SAMPLES, list.length).map((strata, cause) =>
    Float64Array.from(strata, (stratum) => list[cause]!.mean + list[cause]!.deviation * normal[stratum]!),
  );
  const firsts = [0];
  for (const { at } of list) firsts.push(firsts.at(-1)! + at.length);
  const moved = firsts.at(-1)!;
  const found = measures.flatMap((measure): [Measure, MeasureBand][] => {
    const values = rows.map((row) => row.measures[measure] ?? null);
    const needed = 2 + moved + (bends(measure) ? houses : 0);
    if (values.length < needed || values.includes(null)) return [];
    const [value, coarse, ...numbers] = values as [number, number, ...number[]];
    const effects = list.map((mover, cause) =>
      effectOf(mover, coarse, numbers.slice(firsts[cause], firsts[cause + 1])),
    );
    const spread = bends(measure)
      ? asWritten(numbers.slice(moved), measure, [value, coarse])
      : drawn[0]!.map((_, sample) => effects.reduce((sum, { adds }, at) => sum + adds(drawn[at]![sample]!), value));
    spread.sort();
    const floor = MEASURE_UNITS[measure] === '°C' ? Number.NEGATIVE_INFINITY : 0;
    const [low, middle, high] = endsOf(matter.share).map((end) => Math.max(quantile(spread, end), floor));
    return [[measure, bandOf(matter, { value, low: low!, middle: middle!, high: high! }, effects)]];
  });
  return Object.fromEntries(found);
}

/** What houses show, brought from coarse steps to those of the value. */
function asWritten(
  years: readonly number[],
  measure: Measure,
  [value, coarse]: readonly [number, number],
): Float64Array {
  const hours = MEASURE_UNITS[measure] === 'h';
  const ratio = (value + FEW_HOURS) / (coarse + FEW_HOURS);
  return Float64Array.from(years, (year) => (hours ? year * ratio : year + value - coarse));
}

/** Quantile of sorted values, of n the i-th at (i − 1/3)/(n + 1/3): nearly median-unbiased whatever they are spread like (Hyndman & Fan 1996, type 8). */
function quantile(sorted: Float64Array, share: number): number {
  const place = share * (sorted.length + 1 / 3) - 2 / 3;
  return percentile(sorted, Math.min(Math.max(place, 0), sorted.length - 1) / (sorted.length - 1));
}

const endsOf = (share: number): readonly number[] => [(1 - share) / 2, 0.5, (1 + share) / 2];

function bandOf(
  { known, share }: Pick<Matter, 'known' | 'share'>,
  ends: Pick<MeasureBand, 'value' | 'low' | 'middle' | 'high'>,
  effects: readonly Effect[],
): MeasureBand {
  const { value, low, high } = ends;
  return {
    ...ends,
    halfWidth: value === 0 ? null : Math.abs((high - low) / 2 / value),
    share,
    oneYear: known.oneYear,
    water: known.water,
    parts: effects.flatMap(sharesOf).sort((a, b) => b.deviation - a.deviation),
  };
}

/** Deviation of one cause, shared out among those of which it is made. */
function sharesOf({ mover, adds }: Effect): BandShare[] {
  const { mean, deviation, parts } = mover;
  const whole = Math.abs(adds(mean + deviation) - adds(mean - deviation)) / 2;
  return parts.map(({ name, source, deviation: own }) => ({ name, source, deviation: (whole * own) / deviation }));
}
