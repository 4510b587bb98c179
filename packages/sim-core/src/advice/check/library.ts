// The runs that a log is set against: healthy, with each uncertain thing moved, with each fault.

import type { WeatherYear } from '@noonloop/weather-io';
import type { SystemDesign } from '../../design/design.ts';
import { total } from '../../physics/column.ts';
import { scaledLight } from '../../physics/sun/scaled-light.ts';
import type { Fault } from './causes.ts';
import { faultsOf } from './faults.ts';
import { dayFactors, gaussFrom, uniformFrom } from './lots.ts';
import { runSpan, type Span, type Trace } from './span-run.ts';
import {
  deviationOf,
  type House,
  type ModelUncertainty,
  moved,
  PARAMETERS,
  PARAMETERS_OF_FAULTS,
  plainHouse,
} from './uncertainty.ts';

/** A run and what one standard deviation of each uncertain thing makes of it. */
export interface RunFamily {
  readonly base: Trace;
  /** Runs with one thing moved by one standard deviation, in the order of `PARAMETERS`. */
  readonly movedBy: readonly Trace[];
  /** What {@link movedBy} is set against: {@link base}, or the healthy run for things that act alike. */
  readonly against: readonly Trace[];
  /** Runs with days of their own, and that without. */
  readonly days: readonly Trace[];
  readonly plainDay: Trace;
}

/** One fault. */
export interface FaultRuns {
  readonly fault: Fault;
  /** By degree. */
  readonly traces: readonly Trace[];
  /** About the severest degree. */
  readonly family: RunFamily;
}

/** All that is needed to judge any log of one house in one span. */
export interface Library {
  readonly span: Span;
  readonly healthy: RunFamily;
  readonly faults: readonly FaultRuns[];
  readonly uncertainty: ModelUncertainty;
  /** Runs made. */
  readonly runs: number;
}

/** How a library is made. */
interface LibraryOptions {
  readonly uncertainty: ModelUncertainty;
  /** Runs with days of their own. */
  readonly members: number;
  readonly seed: number;
  /** Whether faults are run too; default true. */
  readonly faults?: boolean;
}

/** Below this share of the healthy pump's hours the loop counts as standing. Judgement. [-] */
const STANDS = 0.3;

/** Makes the runs. */
export function buildLibrary(
  design: SystemDesign,
  weather: WeatherYear,
  span: Span,
  { uncertainty, members, seed, faults: withFaults = true }: LibraryOptions,
): Library {
  let runs = 0;
  const run = ({ design: of, weather: under, habits }: House): Trace => {
    runs++;
    return runSpan(of, under, span, habits);
  };
  const memory = new Map<unknown, Trace>();
  const house = plainHouse(design, weather);
  const days = dayHouses(house, uncertainty, members, seed);
  const move = (about: House, count: number): Trace[] =>
    PARAMETERS.slice(0, count).map((key) => run(moved(about, key, deviationOf(key, uncertainty))));

  const base = run(house);
  const healthyMoved = move(house, PARAMETERS.length);
  const healthy: RunFamily = {
    base,
    movedBy: healthyMoved,
    against: PARAMETERS.map(() => base),
    days: days.map(run),
    plainDay: base,
  };
  let standing: Pick<RunFamily, 'days' | 'plainDay'> | null = null;
  const families = new Map<unknown, RunFamily>();
  const faults = (withFaults ? faultsOf(design) : []).map((fault): FaultRuns => {
    const traces = fault.degrees.map(({ apply }) => {
      const known = memory.get(apply) ?? run({ ...house, design: apply(design) });
      memory.set(apply, known);
      return known;
    });
    const { apply } = fault.degrees.at(-1)!;
    const known = families.get(apply);
    if (known !== undefined) return { fault, traces, family: known };
    const about = { ...house, design: apply(design) };
    const severest = traces.at(-1)!;
    const stands = total(severest.pumpRuns) < STANDS * total(base.pumpRuns);
    if (stands) {
      standing ??= { days: days.map((day) => run({ ...day, design: apply(design) })), plainDay: severest };
    }
    const family: RunFamily = {
      base: severest,
      movedBy: [...move(about, PARAMETERS_OF_FAULTS), ...healthyMoved.slice(PARAMETERS_OF_FAULTS)],
      against: PARAMETERS.map((_, at) => (at < PARAMETERS_OF_FAULTS ? severest : base)),
      ...(stands ? standing! : { days: healthy.days, plainDay: base }),
    };
    families.set(apply, family);
    return { fault, traces, family };
  });
  return { span, healthy, faults, uncertainty, runs };
}

/** The house with draw and sun of each day drawn by lot. */
export function dayHouses(house: House, uncertainty: ModelUncertainty, members: number, seed: number): House[] {
  const gauss = gaussFrom(uniformFrom(seed));
  return Array.from({ length: members }, () => {
    const dailyDraw = dayFactors(gauss, uncertainty.dailyDraw);
    const sun = dayFactors(gauss, uncertainty.dailySun);
    return {
      ...house,
      weather: scaledLight(house.weather, (day) => sun[day]!),
      habits: { ...house.habits, dailyDraw },
    };
  });
}
