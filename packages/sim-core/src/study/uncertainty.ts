import type { WeatherYear } from '@noonloop/weather-io';
import type { ByField, DesignField } from '../define/field-path.ts';
import type { SystemInput } from '../define/system-input.ts';
import type { DesignIssue } from '../input/errors.ts';
import { type Correlation, correlateStrata, readCorrelations } from './correlations.ts';
import { boundsOf, distributionFaults, quantileOf, type UncertainInput, valuesOf } from './distributions.ts';
import { type Bound, type FieldSet, fieldFaults, readBounds } from './fields.ts';
import { latinHypercube } from './latin-hypercube.ts';
import type { Measure } from './measures.ts';
import { setFields } from './paths.ts';
import { percentile } from './percentiles.ts';
import { issue, ROW_OPTIONS, refuse, rowRequest, unknownOptions, wholeOption } from './request.ts';
import { makeStudy, type Study } from './study.ts';
import type { StudyOptions, StudyRow, StudyValue } from './types.ts';
import { weatherList } from './weathers.ts';

/** Distributions by the place of their field, such as `'draw.dailyVolume'`. */
export type UncertainInputs = { readonly [Field in DesignField]?: UncertainInput } & {
  readonly [place: string]: UncertainInput;
};

/** Options of {@link uncertainty}. */
export interface UncertaintyOptions extends StudyOptions {
  /** Designs drawn, 10 to 100 000. Default 400. */
  readonly samples?: number;
  /** 0 to 2³² − 1. The same seed gives the same designs. Default 1. */
  readonly seed?: number;
  /** Inputs that go together, such as many people and much water. Default: all are drawn independently. */
  readonly correlations?: readonly Correlation[];
}

/** How one key figure spreads. [unit of the key figure] */
export interface Spread {
  /** Designs that gave a number. */
  readonly count: number;
  /** Mean. */
  readonly mean: number;
  /** Standard deviation; `null` for fewer than two. */
  readonly deviation: number | null;
  /** 5 % lie below. */
  readonly p5: number;
  /** 10 % lie below. */
  readonly p10: number;
  /** A quarter lies below. */
  readonly p25: number;
  /** Half lies below. */
  readonly p50: number;
  /** Three quarters lie below. */
  readonly p75: number;
  /** 90 % lie below. */
  readonly p90: number;
  /** 95 % lie below. */
  readonly p95: number;
}

/** Outcome of {@link uncertainty}. */
export interface Uncertainty {
  /** By key figure; one without any number is left out. */
  readonly spreads: Readonly<Partial<Record<Measure, Spread>>>;
  /** Rows whose design failed; they are in no spread. */
  readonly failed: number;
}

/**
 * How far the key figures may lie apart when inputs and weather are not known better: draws designs (Latin hypercube), simulates
 * each in one of the weather years, and gives percentiles. What it says is as good as the distributions: inputs are drawn
 * independently unless `correlations` say otherwise, and the model's own error is not in it.
 *
 * @param base - The design as written; uncertain fields may be missing from it.
 * @param inputs - Distributions by place, such as `{ 'draw.dailyVolume': { p10: '150 L', p90: '260 L' } }`.
 * @param weather - One year, or several that are drawn with equal chances.
 * @param options - Samples, seed, and which inputs go together.
 * @throws {@link DesignError} listing all faults of base, inputs and options at once.
 */
export function uncertainty<const Inputs extends UncertainInputs>(
  base: SystemInput,
  inputs: Inputs & ByField<Inputs>,
  weather: WeatherYear | readonly WeatherYear[],
  options: UncertaintyOptions = {},
): Study<Uncertainty> {
  const issues: DesignIssue[] = unknownOptions(options, [...ROW_OPTIONS, 'samples', 'seed', 'correlations']);
  const weathers = weatherList(issues, weather);
  const samples = wholeOption(issues, 'options.samples', options.samples, 400, [10, 100_000]);
  const seed = wholeOption(issues, 'options.seed', options.seed, 1, [0, 2 ** 32 - 1]);
  const entries = Object.entries(inputs ?? {});
  if (entries.length === 0 && weathers.length < 2) {
    issues.push(
      issue('inputs', inputs, 'at least one uncertain input, or several weather years', 'Name what is unsure.'),
    );
  }
  const spreading = entries.map(([path, input]) => (isSpread(input) ? path : null));
  const correlated = readCorrelations(issues, options.correlations ?? [], spreading);
  refuse([...issues, ...entries.flatMap(([path, input]) => distributionFaults(path, input))]);
  const quantiles = readDistributions(base, entries);
  const cube = latinHypercube(seed, samples, entries.length + 1, (strata) => {
    if (correlated !== null) correlateStrata(strata, correlated);
  });
  const request = rowRequest(options);
  return makeStudy({
    kind: 'uncertainty',
    // Left out where there are none, so that a study without them is the one it was.
    description: { base, inputs, samples, seed, ...given(options.correlations) } as unknown as StudyValue,
    weathers,
    request,
    total: samples,
    caseAt: (index) => {
      const drawn = Object.fromEntries(entries.map(([path], at) => [path, quantiles[at]!(cube(index, at))]));
      const year = Math.floor(cube(index, entries.length) * weathers.length);
      return { index, inputs: drawn, design: setFields(base, drawn), weather: year };
    },
    analyse: (rows) => analyseUncertainty(rows, request.measures),
  });
}

const given = (correlations: UncertaintyOptions['correlations']) =>
  correlations === undefined || correlations.length === 0 ? {} : { correlations };

/** Whether an input spreads over numbers; a choice has no order. */
const isSpread = (input: UncertainInput): boolean =>
  typeof input === 'object' && input !== null && !('values' in input);

function readDistributions(base: SystemInput, entries: readonly (readonly [string, UncertainInput])[]) {
  const first: FieldSet = Object.fromEntries(entries.map(([path, input]) => [path, valuesOf(input)[0]!]));
  const others = entries.flatMap(([path, input]) => valuesOf(input).map((value): FieldSet => ({ [path]: value })));
  refuse(fieldFaults(base, first, others));
  const bounds = entries.flatMap(([path, input]) => boundsOf(input).map((bound): [string, Bound] => [path, bound]));
  const numbers = readBounds(base, first, bounds);
  let at = 0;
  const issues: DesignIssue[] = [];
  const quantiles = entries.map(([path, input]) => {
    const read = numbers.slice(at, at + boundsOf(input).length);
    at += read.length;
    if (
      read.length > 0 &&
      !(read[0]! < read.at(-1)! && read.every((value, place) => place === 0 || read[place - 1]! <= value))
    ) {
      issues.push(issue(path, read.join(' to '), 'bounds in rising order', 'Give the lowest first.'));
    }
    return quantileOf(input, read);
  });
  refuse(issues);
  return quantiles;
}

async function analyseUncertainty(
  rows: Iterable<StudyRow> | AsyncIterable<StudyRow>,
  measures: readonly Measure[],
): Promise<Uncertainty> {
  const values = new Map(measures.map((measure) => [measure, [] as number[]]));
  let failed = 0;
  for await (const row of rows) {
    if (row.error !== undefined) failed++;
    for (const [measure, list] of values) {
      const value = row.measures[measure] ?? null;
      if (value !== null) list.push(value);
    }
  }
  const spreads = [...values].filter(([, list]) => list.length > 0).map(([measure, list]) => [measure, spreadOf(list)]);
  return { spreads: Object.fromEntries(spreads), failed };
}

/** Spread of a list of at least one. */
function spreadOf(list: readonly number[]): Spread {
  const sorted = Float64Array.from(list).sort();
  const count = sorted.length;
  const mean = sorted.reduce((sum, value) => sum + value, 0) / count;
  const squares = sorted.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  const at = (share: number): number => percentile(sorted, share);
  return {
    count,
    mean,
    deviation: count < 2 ? null : Math.sqrt(squares / (count - 1)),
    p5: at(0.05),
    p10: at(0.1),
    p25: at(0.25),
    p50: at(0.5),
    p75: at(0.75),
    p90: at(0.9),
    p95: at(0.95),
  };
}
