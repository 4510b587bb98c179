/** Faults planted into windows of the house's log, and what gauges by themselves make of them. */
import { checkGauges, type GaugeFinding } from '@noonloop/sim-core';
import type { GaugeReading } from '@noonloop/weather-io';
import { diceFor } from '../../../packages/sim-core/src/study/random.ts';
import { houseGauges, meanOf, PLANTED, type PlantedFault, planted, windowOf } from './planted.ts';

/** Days of a window; shorter for the check valve, so that there are some in which the real one keeps shut. */
const WINDOW = 42;
const SHORT_WINDOW = 14;

/** What was found in a window as it is, and with a fault. */
export interface GaugeTrial {
  readonly planted: PlantedFault;
  /** First day of the window. */
  readonly from: number;
  /** As the log is. */
  readonly plain: readonly GaugeFinding[];
  readonly found: readonly GaugeFinding[];
}

const named = (findings: readonly GaugeFinding[], { faults }: PlantedFault) =>
  findings.some((one) => faults.includes(one.fault));

/** Whether a planted fault was found; `null` where the window as it is showed it already. */
export const foundIn = ({ planted: fault, plain, found }: GaugeTrial): boolean | null =>
  named(plain, fault) ? null : named(found, fault);

/** Findings beside the planted fault that the window as it is does not have. */
export const besideIn = ({ planted: fault, plain, found }: GaugeTrial): readonly GaugeFinding[] =>
  found.filter((one) => !fault.faults.includes(one.fault) && !plain.some((other) => other.fault === one.fault));

const beginningsOf = (first: number, length: number): number[] =>
  Array.from({ length: Math.floor((364 - first - length) / (length / 2)) + 1 }, (_, at) => first + (at * length) / 2);

const asItIs = new Map<string, readonly GaugeFinding[]>();
/** Findings in a window of the log as it is, looked for once: every fault is planted into the same windows. */
function plainFindings(from: number, length: number): readonly GaugeFinding[] {
  const key = `${from} ${length}`;
  const found = asItIs.get(key) ?? checkGauges(windowOf(from, length)).findings;
  asItIs.set(key, found);
  return found;
}

/** Findings in windows of the log as it is, with the day on which each begins. @param first - Day of the first window. @param every - Of the windows. */
export const plainWindows = (first: number, every = 1): { from: number; findings: readonly GaugeFinding[] }[] =>
  beginningsOf(first, WINDOW)
    .filter((_, place) => place % every === 0)
    .map((from) => ({ from, findings: plainFindings(from, WINDOW) }));

/** Windows that the hole of November leaves whole. */
const WHOLE_TO = 305;

/**
 * Every fault in windows from some day on, begun after a third to two thirds, severity by lot.
 *
 * @param every - Of the windows, whose lots stay as they are.
 * @param names - Of the faults.
 */
export function gaugeTrials(seed: number, first: number, every = 1, names: readonly RegExp[] = [/./]): GaugeTrial[] {
  return PLANTED.flatMap((fault, kind) => {
    if (!names.some((name) => name.test(fault.name))) return [];
    const length = fault.faults[0] === 'night-circulation' ? SHORT_WINDOW : WINDOW;
    const beginnings = beginningsOf(first, length).filter((from) => from + length <= WHOLE_TO);
    return beginnings.flatMap((from, place): GaugeTrial[] => {
      if (place % every !== 0) return [];
      const whole = windowOf(from, length);
      const { uniform } = diceFor(seed, 100 * kind + place);
      const since = 24 * (from + length * (1 / 3 + uniform() / 3));
      const change = fault.plant(uniform(), uniform() < 0.5 ? -1 : 1);
      const plain = plainFindings(from, length);
      return [{ planted: fault, from, plain, found: checkGauges(planted(whole, change, since)).findings }];
    });
  });
}

/** Seed and first day of the proof: neither was looked at before the rules stood. */
export const PROOF = { seed: 20_260, first: 10 } as const;

/** A night of the log: how warm the standing collector was at its least from 2 to 5 h, and how fast the tank cooled. */
export interface HouseNight {
  /** Lowest collector from 2 to 5 h of the log's clock. [°C] */
  readonly collector: number;
  /** Fall of the tank's mean over what it is above the room. [1/h] */
  readonly rate: number;
}

/** Nights without pump, by themselves and not by the check: a warm collector and a fast fall are two things that the check does not put together. */
export function houseNights(): HouseNight[] {
  const days = new Map<number, GaugeReading[]>();
  for (const row of houseGauges().readings) {
    const clock = row.hour % 24;
    if (clock < 2 || clock >= 5) continue;
    const day = Math.floor(row.hour / 24);
    days.set(day, [...(days.get(day) ?? []), row]);
  }
  return [...days.values()]
    .filter((rows) => rows.length > 30 && rows.every(({ pumpSpeed }) => pumpSpeed === 0))
    .map((rows) => {
      const [one, other] = [rows[0]!, rows.at(-1)!];
      const over = meanOf(one) - (one.roomTemperature ?? 20);
      return {
        collector: Math.min(...rows.map(({ collectorTemperature }) => collectorTemperature!)),
        rate: (meanOf(one) - meanOf(other)) / (other.hour - one.hour) / Math.max(8, over),
      };
    });
}

/** Faults by name, and the share of them that is found at least: what stops the plant or a gauge nearly always, what creeps in more often than not; requirement. */
export const LEAST_FOUND = [
  [/pump stands|nothing flows|stuck/, 0.9],
  [/gauge off/, 0.7],
  [/flow or coil/, 0.4],
  [/tank loss/, 0.4],
] as const;

/** Share of faults by name that were found, where the window as it is does not show them; NaN of 5 or fewer. */
export function shareFound(trials: readonly GaugeTrial[], name: RegExp): number {
  const could = trials.filter(({ planted }) => name.test(planted.name)).flatMap((trial) => foundIn(trial) ?? []);
  return could.length > 5 ? could.filter((one) => one).length / could.length : Number.NaN;
}
