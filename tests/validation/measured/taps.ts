/**
 * One flat in Naples, one person, 2019 and 2020, a reading each second while water runs: WEUSEDTO-Data, A. Di Mauro, CC BY 4.0. It is all water,
 * hot and cold. Flows are taken as mL/s, which the data do not say. Nothing is fitted.
 */
import { readFileSync } from 'node:fs';
import { DateTime } from 'luxon';
import { sharedFile } from '../../shared.ts';
import { mean, quantile } from './sets.ts';

export const TAPS_FILE = 'taps/Shower.csv';
/** Longer without water and it is another draw. [s] */
const PAUSE = 60;
/** Shorter and smaller than a shower. [s], [L] */
const SHOWER = { seconds: 60, litres: 5 };

/** One draw. */
export interface TapDraw {
  /** Local clock. */
  readonly hour: number;
  /** From first to last water. [s] */
  readonly seconds: number;
  /** [L] */
  readonly litres: number;
}

function readings(tap: string): [seconds: number, flow: number][] {
  const list: [number, number][] = [];
  // Half a million lines: ten digits of seconds since 1970, a blank or comma, the flow.
  for (const line of readFileSync(sharedFile(`measured/taps/${tap}.csv`), 'utf8').split('\n')) {
    const [time, flow] = [Number(line.slice(0, 10)), Number(line.slice(11))];
    if (time > 0 && flow > 0) list.push([time, flow]);
  }
  return list;
}

type Tap = 'Shower' | 'Kitchenfaucet' | 'Washbasin';
const known = new Map<Tap, readonly TapDraw[]>();

/** Draws of a tap: water with pauses under a minute. A reading stands for its second. */
export function draws(tap: Tap): readonly TapDraw[] {
  const list = known.get(tap) ?? readDraws(tap);
  known.set(tap, list);
  return list;
}

function readDraws(tap: Tap): TapDraw[] {
  const list: { from: number; to: number; millilitres: number }[] = [];
  for (const [time, flow] of readings(tap).sort((a, b) => a[0] - b[0])) {
    const last = list.at(-1);
    if (last !== undefined && time - last.to <= PAUSE) {
      last.to = time;
      last.millilitres += flow;
    } else list.push({ from: time, to: time, millilitres: flow });
  }
  return list.map(({ from, to, millilitres }) => ({
    hour: DateTime.fromSeconds(from, { zone: 'Europe/Rome' }).hour,
    seconds: to - from + 1,
    litres: millilitres / 1000,
  }));
}

/** Middle and four fifths of the showers. */
export interface ShowerFigures {
  readonly count: number;
  /** 10, 50 and 90 in a hundred. [L] */
  readonly litres: readonly number[];
  /** [min] */
  readonly minutes: readonly number[];
  /** [L/min] */
  readonly flow: readonly number[];
}

export function showers(): ShowerFigures {
  const long = draws('Shower').filter(({ seconds, litres }) => seconds >= SHOWER.seconds && litres >= SHOWER.litres);
  const spread = (of: (draw: TapDraw) => number) => [0.1, 0.5, 0.9].map((share) => quantile(long.map(of), share));
  return {
    count: long.length,
    litres: spread(({ litres }) => litres),
    minutes: spread(({ seconds }) => seconds / 60),
    flow: spread(({ litres, seconds }) => (60 * litres) / seconds),
  };
}

/** Share of the water in each hour of the day, kitchen, basin and shower together. Shape [24]. [-] */
export function hourShares(): number[] {
  const hours = new Array<number>(24).fill(0);
  for (const tap of ['Shower', 'Kitchenfaucet', 'Washbasin'] as const)
    for (const { hour, litres } of draws(tap)) hours[hour]! += litres;
  const whole = mean(hours) * 24;
  return hours.map((litres) => litres / whole);
}

/** Share of the water that a shape puts into another hour. [-] */
export const misplaced = (one: readonly number[], other: readonly number[]): number =>
  one.reduce((sum, share, hour) => sum + Math.abs(share - other[hour]!), 0) / 2;
