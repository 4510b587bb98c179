import type { WeatherYear } from '@noonloop/weather-io';
import type { ByField } from '../../define/field-path.ts';
import type { SystemInput } from '../../define/system-input.ts';
import type { DesignIssue } from '../../input/errors.ts';
import { setFields } from '../paths.ts';
import { readRanges, type StudyRanges, valuesAt } from '../ranges.ts';
import { issue, ROW_OPTIONS, refuse, rowRequest, unknownOptions, wholeOption } from '../request.ts';
import { collectRows, makeStudy, type Study } from '../study.ts';
import type { StudyCase, StudyOptions, StudyValue } from '../types.ts';
import { weatherList } from '../weathers.ts';
import { analyseMorris, type Morris, morrisPoint } from './morris.ts';
import { analyseOneAtATime, type OneAtATime, oneAtATimeCase, oneAtATimeTotal } from './one-at-a-time.ts';
import { analyseSobol, type Sobol, sobolPoints } from './sobol.ts';

/** What each method finds. */
export interface SensitivityOutcomes {
  /** Key figures at both bounds of each input, the others as in the base. */
  readonly 'one-at-a-time': OneAtATime;
  /** Elementary effects. */
  readonly morris: Morris;
  /** Shares of the variance. */
  readonly sobol: Sobol;
}

/** How sensitivity is looked for. */
export type SensitivityMethod = keyof SensitivityOutcomes;

/** Options of {@link sensitivity}. */
export interface SensitivityOptions<Method extends SensitivityMethod = 'one-at-a-time'> extends StudyOptions {
  /**
   * `one-at-a-time`: 1 + 2 k designs for k inputs, blind to what inputs do together; `morris`: screening, paths × (k + 1)
   * designs; `sobol`: shares of the variance, samples × (k + 2) designs. Default `one-at-a-time`.
   */
  readonly method?: Method;
  /** Paths of `morris`, 2 to 10 000. Default 20 (10 to 50 are customary). */
  readonly paths?: number;
  /** Base samples of `sobol`, 8 to 100 000. Default 256; the bounds of each share tell whether they were enough. */
  readonly samples?: number;
  /** Seed of `morris` and `sobol`, 0 to 2³² − 1. The same seed gives the same designs. Default 1. */
  readonly seed?: number;
}

/**
 * Finds which inputs matter: moves them through their ranges and looks at every key figure of the rows.
 *
 * @param base - The design as written. For `one-at-a-time` a whole one; for the others fields with a range may be missing.
 * @param ranges - Bounds by place, such as `{ 'tank.volume': { from: '200 L', to: '400 L' } }`.
 * @param weather - One year.
 * @param options - Method, its size and seed.
 * @returns A study; its outcome depends on the method.
 * @throws {@link DesignError} listing all faults of base, ranges and options at once.
 */
export function sensitivity<
  Method extends SensitivityMethod = 'one-at-a-time',
  const Ranges extends StudyRanges = StudyRanges,
>(
  base: SystemInput,
  ranges: Ranges & ByField<Ranges>,
  weather: WeatherYear,
  options: SensitivityOptions<Method> = {},
): Study<SensitivityOutcomes[Method]> {
  const method: SensitivityMethod = options.method ?? 'one-at-a-time';
  const issues: DesignIssue[] = unknownOptions(options, [...ROW_OPTIONS, 'method', 'paths', 'samples', 'seed']);
  const weathers = weatherList(issues, weather);
  const paths = wholeOption(issues, 'options.paths', options.paths, 20, [2, 10_000]);
  const samples = wholeOption(issues, 'options.samples', options.samples, 256, [8, 100_000]);
  const seed = wholeOption(issues, 'options.seed', options.seed, 1, [0, 2 ** 32 - 1]);
  if (!['one-at-a-time', 'morris', 'sobol'].includes(method)) {
    issues.push(issue('options.method', method, '"one-at-a-time", "morris" or "sobol"', 'Choose one of these.'));
  }
  refuse(issues);
  const read = readRanges(base, ranges, method === 'one-at-a-time');
  const names = read.map(({ path }) => path);
  const request = rowRequest(options);
  const { measures } = request;
  const given = { base, ranges } as unknown as { [field: string]: StudyValue };
  const common = { weathers, request };
  const atPoint =
    (pointAt: (index: number) => readonly number[]) =>
    (index: number): StudyCase => {
      const inputs = valuesAt(read, pointAt(index));
      return { index, inputs, design: setFields(base, inputs), weather: 0 };
    };
  const studies: { readonly [M in SensitivityMethod]: () => Study<SensitivityOutcomes[M]> } = {
    'one-at-a-time': () =>
      makeStudy({
        ...common,
        kind: 'one-at-a-time',
        description: given,
        total: oneAtATimeTotal(read),
        caseAt: (index) => oneAtATimeCase(base, read, index),
        analyse: async (rows) => analyseOneAtATime(await collectRows(rows), read, measures),
      }),
    morris: () =>
      makeStudy({
        ...common,
        kind: 'morris',
        description: { ...given, paths, seed },
        total: paths * (read.length + 1),
        caseAt: atPoint((index) => morrisPoint(seed, index, read.length)),
        analyse: (rows) => analyseMorris(rows, names, measures, seed),
      }),
    sobol: () =>
      makeStudy({
        ...common,
        kind: 'sobol',
        description: { ...given, samples, seed },
        total: samples * (read.length + 2),
        caseAt: atPoint(sobolPoints(seed, samples, read.length)),
        analyse: (rows) => analyseSobol(rows, names, measures, seed),
      }),
  };
  return studies[method]() as Study<SensitivityOutcomes[Method]>;
}
