/** From the years of each cause alone to bands of all together. */
import type { StepOptions } from '../year/stepping.ts';
import type { KnownBy, Mover } from './band-parts.ts';
import type { BandShare, Bands, MeasureBand } from './band-types.ts';
import { normalQuantile } from './distributions.ts';
import { latinHypercube } from './latin-hypercube.ts';
import { MEASURE_UNITS, type Measure } from './measures.ts';
import { percentile } from './percentiles.ts';
import type { StudyRow } from './types.ts';

/** Steps of the moved years: what a cause adds is a difference of two of them, and the coarse steps' own error goes out of it. */
export const COARSE: StepOptions = { stepsPerHour: 1 };

/** Designs drawn on the curves, no years: enough for a percentile to within a hundredth of the band. */
const SAMPLES = 4000;
const SEED = 1;
/** Houses with every cause off at once, each a year of its own. Judgement: 20 strata put the ends of a band of 90 % into the outermost. */
export const HOUSES = 20;

/** Where those houses stand, cause by cause: a Latin hypercube. */
export function housesOf(list: readonly Mover[]): readonly (readonly number[])[] {
  const cube = latinHypercube(SEED + 1, HOUSES, list.length);
  return Array.from({ length: HOUSES }, (_, house) =>
    list.map(({ mean, deviation }, cause) => mean + deviation * normalQuantile(cube(house, cause))),
  );
}

/** What the bands are of. */
interface Matter {
  readonly list: readonly Mover[];
  readonly known: KnownBy;
  readonly measures: readonly Measure[];
  readonly share: number;
}

/** A parabola through the base and the two years of one cause, as what it adds to the base. */
interface Effect {
  readonly mover: Mover;
  /** @param x - In the cause's own measure, 0 as the design is written. */
  readonly adds: (x: number) => number;
}

function effectOf(mover: Mover, [base, one, other]: readonly [number, number, number]): Effect {
  const [x, y] = mover.at;
  const [a, b] = [(one - base) / x!, (other - base) / y!];
  const bend = (a - b) / (x! - y!);
  return { mover, adds: (at) => at * (a + bend * (at - x!)) };
}

/** Temperatures and hours: a limit, a boiling point or nought bends them, so that effects of causes do not add up. */
export const bends = (measure: Measure): boolean => ['°C', 'h'].includes(MEASURE_UNITS[measure]);
/** Bands of the key figures, from the rows of `bands`. */
export function analyseBands(rows: readonly StudyRow[], matter: Matter): Bands {
  const { list, measures } = matter;
  const cube = latinHypercube(SEED, SAMPLES, list.length);
  const drawn = list.map(({ mean, deviation }, cause) =>
    Float64Array.from({ length: SAMPLES }, (_, sample) => mean + deviation * normalQuantile(cube(sample, cause))),
  );
  const found = measures.flatMap((measure): [Measure, MeasureBand][] => {
    const values = rows.map((row) => row.measures[measure] ?? null);
    const needed = 2 + 2 * list.length + (bends(measure) ? HOUSES : 0);
    if (values.length < needed || values.includes(null)) return [];
    const [value, coarse, ...numbers] = values as [number, number, ...number[]];
    const effects = list.map((mover, at) => effectOf(mover, [coarse, numbers[2 * at]!, numbers[2 * at + 1]!]));
    const added = bends(measure)
      ? Float64Array.from(numbers.slice(-HOUSES), (year) => year - coarse)
      : Float64Array.from({ length: SAMPLES }, (_, sample) =>
          effects.reduce((sum, { adds }, at) => sum + adds(drawn[at]![sample]!), 0),
        );
    added.sort();
    const floor = MEASURE_UNITS[measure] === '°C' ? Number.NEGATIVE_INFINITY : 0;
    const [low, middle, high] = endsOf(matter.share).map((end) => Math.max(value + quantile(added, end), floor));
    return [[measure, bandOf(matter, { value, low: low!, middle: middle!, high: high! }, effects)]];
  });
  return Object.fromEntries(found);
}

/** Quantile of sorted values, each in the middle of its stratum (Hazen 1914); linear between neighbours. */
function quantile(sorted: Float64Array, share: number): number {
  const place = Math.min(Math.max(share * sorted.length - 0.5, 0), sorted.length - 1);
  return percentile(sorted, place / (sorted.length - 1));
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
