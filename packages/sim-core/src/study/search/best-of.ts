import type { WeatherYear } from '@noonloop/weather-io';
import type { ByField } from '../../define/field-path.ts';
import type { SystemInput } from '../../define/system-input.ts';
import type { DesignIssue } from '../../input/errors.ts';
import { openSession } from '../execute.ts';
import { type RowNumber, rowNumber } from '../frontier.ts';
import { MEASURE_UNITS, type Measure } from '../measures.ts';
import { setFields } from '../paths.ts';
import { readRanges, type StudyRanges, valuesAt } from '../ranges.ts';
import { issue, ROW_OPTIONS, refuse, rowRequest, unknownOptions, wholeOption } from '../request.ts';
import type { RunOptions, StudyCase, StudyOptions, StudyPlan, StudyRow, StudyValue } from '../types.ts';
import { weatherList } from '../weathers.ts';
import { directRounds } from './direct.ts';
import { type Limits, limitFaults, penalised, violation } from './limits.ts';

/** Rounds without a new design after which the search ends: what is left lies between whole numbers. */
const IDLE_ROUNDS = 40;

/** What is looked for. */
export type SearchGoal =
  | {
      /** To be as high as it can. */
      readonly highest: RowNumber;
    }
  | {
      /** To be as low as it can. */
      readonly lowest: RowNumber;
    };

/** Options of {@link bestOf}. */
export interface BestOfOptions extends StudyOptions {
  /** A key figure by name, or a number made of a row, that is to be highest or lowest. */
  readonly goal: SearchGoal;
  /** Bounds that the best design must keep, by key figure. Default none. */
  readonly limits?: Limits;
  /** Most designs that are simulated, 2 to 10 000. Default 200. */
  readonly evaluations?: number;
}

/** Outcome of a search. */
export interface BestOf {
  /** The best design that keeps all limits; `null` where none was found. */
  readonly best: StudyRow | null;
  /** Its number; `null` where there is none. */
  readonly value: number | null;
  /** Designs simulated. */
  readonly evaluated: number;
  /** Why the search ended: all evaluations spent, or nothing new to look at. */
  readonly ended: 'evaluations' | 'exhausted';
}

/** A search for the best design. Nothing runs before it is asked to. */
export interface Search extends StudyPlan {
  /** Simulates and hands out every design looked at, in the order of the search; returns what was found. */
  readonly run: (options?: RunOptions) => AsyncGenerator<StudyRow, BestOf>;
  /** Simulates to the end. */
  readonly outcome: (options?: RunOptions) => Promise<BestOf>;
}

/**
 * Looks for the best design over ranges of continuous and whole-number inputs, by the DIRECT method: global, deterministic, for up
 * to about six inputs. Whole numbers are rounded, each with an equal share of its range, and no design is simulated twice. It
 * comes near a continuous optimum slowly and never quite reaches a bound; a narrower second search sharpens.
 *
 * @param base - The design as written; fields with a range may be missing from it.
 * @param ranges - Bounds by place, such as `{ 'array.panels': { from: 2, to: 6, whole: true } }`.
 * @param weather - One year.
 * @param options - The goal, limits and how long to look.
 * @throws {@link DesignError} listing all faults at once.
 * @example
 * const { best } = await bestOf(base, { 'array.tilt': { from: 20, to: 70 } }, weather, { goal: { highest: 'fuelSaved' } }).outcome();
 */
export function bestOf<const Ranges extends StudyRanges>(
  base: SystemInput,
  ranges: Ranges & ByField<Ranges>,
  weather: WeatherYear,
  options: BestOfOptions,
): Search {
  const issues: DesignIssue[] = unknownOptions(options ?? {}, [...ROW_OPTIONS, 'goal', 'limits', 'evaluations']);
  const weathers = weatherList(issues, weather);
  const evaluations = wholeOption(issues, 'options.evaluations', options?.evaluations, 200, [2, 10_000]);
  const goal = options?.goal as { highest?: RowNumber; lowest?: RowNumber } | undefined;
  const wanted = goal?.highest ?? goal?.lowest;
  if (wanted === undefined || Object.keys(goal!).length !== 1) {
    issues.push(
      issue('options.goal', goal, '{ highest } or { lowest }', 'Say which number is to be highest or lowest.'),
    );
  }
  const limits = options?.limits ?? {};
  refuse([...issues, ...limitFaults(limits)]);
  const numberOf = rowNumber('options.goal', wanted!);
  const sign = goal!.lowest === undefined ? -1 : 1;
  const read = readRanges(base, ranges, false);
  const ofInterest = [wanted, ...Object.keys(limits)].filter((name) => Object.hasOwn(MEASURE_UNITS, name as string));
  const goalText = typeof wanted === 'function' ? 'a function' : wanted!;
  const plan: StudyPlan = {
    kind: 'best-of',
    description: { base, ranges, goal: [sign, goalText], limits } as unknown as StudyValue,
    weathers,
    request: rowRequest({ ...options, measures: [...(options.measures ?? []), ...(ofInterest as Measure[])] }),
    total: evaluations,
    first: 0,
    count: evaluations,
    shard: null,
  };

  async function* run(runOptions: RunOptions = {}): AsyncGenerator<StudyRow, BestOf> {
    const cases: StudyCase[] = [];
    const costs: number[] = [];
    const placeOf = new Map<string, number>();
    let best: { row: StudyRow; value: number } | null = null;
    let idle = 0;
    let scale: number | null = null;
    const session = await openSession(plan, (index) => cases[index]!, runOptions);
    try {
      const rounds = directRounds(read.length);
      let { value: points } = await rounds.next([]);
      for (;;) {
        const first = cases.length;
        const places = points!.map((point) => {
          const inputs = valuesAt(read, point);
          const key = JSON.stringify(inputs);
          const known = placeOf.get(key);
          if (known !== undefined) return known;
          const index = cases.length;
          placeOf.set(key, index);
          cases.push({ index, inputs, design: setFields(base, inputs), weather: 0 });
          return index;
        });
        for await (const row of session.rows(first, Math.min(cases.length, evaluations))) {
          const value = row.error === undefined ? numberOf(row) : null;
          const outside = violation(row, limits);
          if (value !== null && value !== 0) scale ??= Math.abs(value);
          costs[row.index] = penalised(value === null ? null : sign * value, outside, scale ?? 1);
          if (value !== null && outside === 0 && (best === null || sign * value < sign * best.value)) {
            best = { row, value };
          }
          yield row;
        }
        idle = cases.length > first ? 0 : idle + 1;
        const spent = cases.length >= evaluations;
        if (spent || idle > IDLE_ROUNDS) {
          const evaluated = Math.min(cases.length, evaluations);
          return {
            best: best?.row ?? null,
            value: best?.value ?? null,
            evaluated,
            ended: spent ? 'evaluations' : 'exhausted',
          };
        }
        points = (await rounds.next(places.map((place) => costs[place]!))).value;
      }
    } finally {
      await session.close();
    }
  }

  return {
    ...plan,
    run,
    outcome: async (runOptions) => {
      const rows = run(runOptions);
      for (;;) {
        const { done, value } = await rows.next();
        if (done) return value;
      }
    },
  };
}
