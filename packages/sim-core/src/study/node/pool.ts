import type { WeatherYear } from '@noonloop/weather-io';
import { Piscina } from 'piscina';
import { issue, refuse } from '../request.ts';
import type { StudyRow, StudyRunner } from '../types.ts';
import { shareWeather } from './shared-weather.ts';
import { threadsGiven } from './threads.ts';
import type { PoolTask } from './worker.ts';

/** Threads that simulate, until they are closed. */
export interface StudyPool extends StudyRunner {
  /** Threads. */
  readonly workers: number;
  /** Ends the threads; tasks under way are given up. */
  readonly close: () => Promise<void>;
}

/** Options of {@link startPool}. */
export interface PoolOptions {
  /** Threads, 1 to 256. Default: as many as the job was given, by affinity, Slurm, control group and memory. */
  readonly workers?: number;
}

/** Most designs that travel together. */
const MOST_TOGETHER = 16;
/** Tasks for each thread in a study, so that the last thread does not work alone for long. */
const TASKS_PER_WORKER = 8;
/** Tasks in hand for each thread: one under way, the next ready, one waiting to be taken in order. */
const IN_HAND = 3;

/**
 * Starts threads for studies: pass the pool as `runner`. Rows come out in order and with the same bits as without it. Weather is
 * shared between threads, not copied; each thread computes the light on a plane once for all designs that it gets in a row.
 *
 * Close it when done, or let `await using` do so where the language has it; threads left open keep the process alive no longer
 * than their work.
 *
 * @throws DesignError for a number of threads out of range.
 */
export function startPool(options: PoolOptions = {}): StudyPool {
  const { workers = threadsGiven() } = options;
  const fits = Number.isInteger(workers) && workers >= 1 && workers <= 256;
  refuse(fits ? [] : [issue('workers', workers, 'a whole number from 1 to 256', 'Leave it out for one a core.')]);
  const threads = new Piscina<PoolTask, StudyRow[]>({ filename: WORKER, minThreads: workers, maxThreads: workers });
  const shared = new WeakMap<WeatherYear, { key: number; year: WeatherYear }>();
  let nextKey = 0;
  const sharedOnce = (weather: WeatherYear) => {
    let entry = shared.get(weather);
    if (entry === undefined) {
      entry = { key: nextKey++, year: shareWeather(weather) };
      shared.set(weather, entry);
    }
    return entry;
  };
  return {
    workers,
    tasks: IN_HAND * workers,
    designsPerTask: (count) => Math.max(1, Math.min(MOST_TOGETHER, Math.ceil(count / (workers * TASKS_PER_WORKER)))),
    run: ({ cases, weathers, request }) => {
      const needed = [...new Set(cases.map(({ weather }) => weather))];
      const packed = needed.map((index) => [index, sharedOnce(weathers[index]!)]);
      return threads.run({ cases, weathers: Object.fromEntries(packed), request });
    },
    close: () => threads.destroy(),
  };
}

/** The worker beside this file; a thread reads what its process does, so sources too where they are run. */
const WORKER = (
  import.meta.url.endsWith('.ts') ? new URL('./worker.ts', import.meta.url) : new URL('./worker.js', import.meta.url)
).href;
