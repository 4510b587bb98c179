import type { WeatherYear } from '@noonloop/weather-io';
import { defineSystem } from '../define/define.ts';
import type { SystemInput } from '../define/system-input.ts';
import type { DesignIssue } from '../input/errors.ts';
import { type BandPart, type KnownBy, type Mover, movers } from './band-parts.ts';
import { normalQuantile } from './distributions.ts';
import { latinHypercube } from './latin-hypercube.ts';
import { MEASURE_UNITS, type Measure } from './measures.ts';
import { setFields } from './paths.ts';
import { percentile } from './percentiles.ts';
import { issue, refuse, rowRequest, unknownOptions } from './request.ts';
import { collectRows, makeStudy, type Study } from './study.ts';
import type { StudyRow, StudyValue } from './types.ts';
import { weatherList } from './weathers.ts';

/** Options of {@link bands}. */
export interface BandOptions {
  /** Key figures that get a band. Default: fuel saved, its share, heat delivered, stagnation, hottest tank and hottest absorber. */
  readonly measures?: readonly Measure[];
  /** How well the collector's coefficients are known: a certificate, or a survey of a panel without papers. Default `certificate`. */
  readonly collector?: KnownBy['collector'];
  /** How well the water use is known: by a meter of this house, by who lives there, or not at all. Default `people`. */
  readonly water?: KnownBy['water'];
  /** Whether the band is for one year to come, with its weather, and not for the mean of many. Default true. */
  readonly oneYear?: boolean;
  /** Share of cases that the band holds, 0.5 to 0.99. Default 0.9. [-] */
  readonly share?: number;
}

/** What one cause adds to the band of a key figure. */
export interface BandShare extends Pick<BandPart, 'name' | 'source'> {
  /** Standard deviation of the key figure from this cause alone. [unit of the key figure] */
  readonly deviation: number;
}

/** Band of one key figure. [unit of the key figure] */
export interface MeasureBand {
  /** As the design is written. */
  readonly value: number;
  /** Half the cases lie below; it may lie off {@link value}, for some causes pull one way. */
  readonly middle: number;
  /** Lower end. */
  readonly low: number;
  /** Upper end. */
  readonly high: number;
  /** Half the band over {@link value}, which reports take as `uncertainty`; `null` where the value is 0. [-] */
  readonly halfWidth: number | null;
  /** Causes, the greatest first. */
  readonly parts: readonly BandShare[];
}

/** Outcome of {@link bands}: a band by key figure; one without a number in every year is left out. */
export type Bands = Readonly<Partial<Record<Measure, MeasureBand>>>;

const LEADING = [
  'fuelSaved',
  'fuelSaving',
  'deliveredEnergy',
  'stagnationHours',
  'peakTankTemperature',
  'hottestAbsorber',
] as const satisfies readonly Measure[];
/** Figures that cannot be negative. */
const AT_LEAST_0: readonly string[] = ['h', 'm³'];
/** Designs drawn on the curves, no years: enough for a percentile to within a hundredth of the band. */
const SAMPLES = 4000;
const SEED = 1;

/**
 * How sure the leading numbers are: each cause (light, optics, losses, coil, tank, cold water, use, burner) is moved alone to either side, a year
 * each; curves through the three years are then drawn from at random, all causes together. Some 17 years.
 *
 * What moves together between causes beyond that is left out, and so is the error of what nobody has measured; docs/theory/studies.md has the
 * spreads with their sources. A comparison of two designs is surer than either: most causes are the same in both.
 *
 * @param base - The design as written.
 * @param weather - The year that it is simulated in.
 * @param options - What is known.
 * @throws {@link DesignError} listing all faults of base and options at once.
 * @example
 * const { fuelSaved } = await bands(design, weather, { water: 'meter' }).outcome();
 * renderText(simulate(defineSystem(design), weather), { uncertainty: fuelSaved.halfWidth });
 */
export function bands(base: SystemInput, weather: WeatherYear, options: BandOptions = {}): Study<Bands> {
  const issues: DesignIssue[] = unknownOptions(options, ['measures', 'collector', 'water', 'oneYear', 'share']);
  const [year] = weatherList(issues, weather);
  const { measures = LEADING, collector = 'certificate', water = 'people', oneYear = true, share = 0.9 } = options;
  if (!['certificate', 'survey'].includes(collector))
    issues.push(issue('options.collector', collector, '"certificate" or "survey"', 'Say how it is known.'));
  if (!['meter', 'people', 'unknown'].includes(water))
    issues.push(issue('options.water', water, '"meter", "people" or "unknown"', 'Say how it is known.'));
  if (!(share >= 0.5 && share <= 0.99))
    issues.push(issue('options.share', share, 'from 0.5 to 0.99', 'Give the share of cases that the band shall hold.'));
  refuse(issues);
  const list = movers(defineSystem(base), year!, { collector, water, oneYear });
  const weathers = [year!, ...list.flatMap(({ weathers: own }) => own ?? [])];
  const request = rowRequest({ measures });
  const asked = [...new Set<Measure>(measures)];
  return makeStudy({
    kind: 'bands',
    description: { base, measures: asked, collector, water, oneYear, share } as unknown as StudyValue,
    weathers,
    request,
    total: 1 + 2 * list.length,
    caseAt: (index) => {
      if (index === 0) return { index, inputs: {}, design: base, weather: 0 };
      const mover = list[Math.trunc((index - 1) / 2)]!;
      const side = (index - 1) % 2;
      const at = mover.at[side]!;
      const own = mover.weathers?.[side];
      const fields = mover.fields?.(at) ?? {};
      const weather = own === undefined ? 0 : weathers.indexOf(own);
      return { index, inputs: { [mover.name]: at }, design: setFields(base, fields), weather };
    },
    analyse: async (rows) => analyseBands(await collectRows(rows), list, asked, share),
  });
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

function analyseBands(
  rows: readonly StudyRow[],
  list: readonly Mover[],
  measures: readonly Measure[],
  share: number,
): Bands {
  const cube = latinHypercube(SEED, SAMPLES, list.length);
  const drawn = list.map(({ mean, deviation }, cause) =>
    Float64Array.from({ length: SAMPLES }, (_, sample) => mean + deviation * normalQuantile(cube(sample, cause))),
  );
  const found = measures.flatMap((measure): [Measure, MeasureBand][] => {
    const values = rows.map((row) => row.measures[measure] ?? null);
    if (values.length < 1 + 2 * list.length || values.includes(null)) return [];
    const numbers = values as number[];
    const value = numbers[0]!;
    const effects = list.map((mover, at) => effectOf(mover, [value, numbers[1 + 2 * at]!, numbers[2 + 2 * at]!]));
    const floor = AT_LEAST_0.includes(MEASURE_UNITS[measure]) ? 0 : Number.NEGATIVE_INFINITY;
    const sums = Float64Array.from({ length: SAMPLES }, (_, sample) =>
      Math.max(
        effects.reduce((sum, { adds }, at) => sum + adds(drawn[at]![sample]!), value),
        floor,
      ),
    ).sort();
    const [low, high] = [percentile(sums, (1 - share) / 2), percentile(sums, (1 + share) / 2)];
    return [
      [
        measure,
        {
          value,
          middle: percentile(sums, 0.5),
          low,
          high,
          halfWidth: value === 0 ? null : Math.abs((high - low) / 2 / value),
          parts: effects.flatMap(sharesOf).sort((a, b) => b.deviation - a.deviation),
        },
      ],
    ];
  });
  return Object.fromEntries(found);
}

/** Deviation of one cause, shared out among those of which it is made. */
function sharesOf({ mover, adds }: Effect): BandShare[] {
  const { mean, deviation, parts } = mover;
  const whole = Math.abs(adds(mean + deviation) - adds(mean - deviation)) / 2;
  return parts.map(({ name, source, deviation: own }) => ({ name, source, deviation: (whole * own) / deviation }));
}
