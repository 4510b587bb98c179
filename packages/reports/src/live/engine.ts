/** What runs behind the page: years of turned designs, and what is shown of them. No page in here: it answers messages. */
import { DesignError, defineSystem, type RunResult, type SystemInput, simulate } from '@noonloop/sim-core';
import type { WeatherYear } from '@noonloop/weather-io';
import { ReportError } from '../errors.ts';
import { money } from '../money/index.ts';
import { take } from './take.ts';
import type { Trial } from './trial.ts';
import { designFields, pricesOf } from './turned.ts';
import {
  type LiveFault,
  type LiveReply,
  type LiveRequest,
  type LiveStart,
  type TakeRequest,
  type Turned,
  type TurnRequest,
  WEEK_COLUMNS,
  type WeekColumn,
  type WeekRequest,
} from './types.ts';
import { turnReply } from './view.ts';
import { unpackWeather } from './weather-pack.ts';

/** Years that are kept, so that pins and the last turn are not run again: pins, what is turned, what it is held against, two more. */
const KEPT = 8;
const WEEK = 168;

/** Faults of input by field; anything else is thrown on. */
export function faultsOf(error: unknown): readonly LiveFault[] {
  if (error instanceof DesignError || error instanceof ReportError)
    return error.issues.map(({ path, found, expected, remedy }) => ({
      path: path.replace(/^money\b/, 'prices'),
      words: `found ${found}, expected ${expected}. ${remedy}`,
    }));
  throw error;
}

/** A survey's faults name its fields without what stands before them on the page. */
const ofSurvey = (error: unknown): readonly LiveFault[] =>
  faultsOf(error).map(({ path, words }) => ({ path: `survey.${path}`, words }));

/** The engine of one page. */
export class LiveEngine {
  readonly #start: LiveStart;
  readonly #weather: WeatherYear;
  readonly #kept = new Map<string, RunResult>();

  constructor(start: LiveStart, weather: WeatherYear) {
    this.#start = start;
    this.#weather = weather;
  }

  /** Runs what is not at hand. */
  #run(input: SystemInput): RunResult {
    const key = JSON.stringify(input);
    const result = this.#kept.get(key) ?? simulate(defineSystem(input), this.#weather, { keepTankNodes: true });
    this.#kept.delete(key); // the youngest last
    this.#kept.set(key, result);
    for (const oldest of this.#kept.keys()) {
      if (this.#kept.size <= KEPT) break;
      this.#kept.delete(oldest);
    }
    return result;
  }

  /** A design run; prices that are wrong leave it without money. */
  #trial(turned: Turned): Trial {
    const input = designFields(this.#start, turned);
    const result = this.#run(input);
    try {
      const prices = pricesOf(this.#start, turned, result.design);
      if (prices !== null) money(result, prices);
      return { input, result, money: prices, faults: [] };
    } catch (error) {
      return { input, result, money: null, faults: faultsOf(error) };
    }
  }

  /** Answers a message. @throws what is no fault of the input */
  handle(request: Exclude<LiveRequest, { kind: 'open' }>): LiveReply {
    try {
      return this.#answer(request);
    } catch (error) {
      const seen = Object.keys(request.now).some((path) => path.startsWith('survey.'));
      const survey = seen && error instanceof DesignError && error.issues.every(({ path }) => !path.includes('.'));
      return { kind: 'refused', id: request.id, faults: survey ? ofSurvey(error) : faultsOf(error) };
    }
  }

  #answer(request: TurnRequest | WeekRequest | TakeRequest): LiveReply {
    const now = this.#trial(request.now);
    if (request.kind === 'week') return weekReply(now.result, request);
    const pins = request.pins.map((pin) => this.#trial(pin));
    if (request.kind === 'take') return take(request, now, pins);
    const against = request.against === null ? null : this.#trial(request.against);
    return turnReply(request, now, against, pins);
  }
}

function weekReply({ columns, tankNodes }: RunResult, { id, day }: WeekRequest): LiveReply {
  const nodes = tankNodes.length / 8760;
  const from = 24 * Math.min(Math.max(Math.trunc(day), 0), 358);
  const cut = (name: WeekColumn): Float64Array => columns[name].slice(from, from + WEEK);
  return {
    kind: 'week',
    id,
    day: from / 24,
    nodes,
    tank: tankNodes.slice(from * nodes, (from + WEEK) * nodes),
    columns: Object.fromEntries(WEEK_COLUMNS.map((name) => [name, cut(name)])) as Record<WeekColumn, Float64Array>,
  };
}

/** Unpacks the weather; years are run when they are asked for. */
export async function openEngine(start: LiveStart & { readonly weather: string }): Promise<LiveEngine> {
  return new LiveEngine(start, await unpackWeather(start.weather));
}
