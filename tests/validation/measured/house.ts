/**
 * One house in Germany, collector, tank bottom and top, third sensor, pump: thermal-solar-plant-dataset, MIT, copyright 2018 Stephan
 * Strittmatter. The tank's volume, its sensors' heights and the controller's settings are not in it. Fitted, and said so at each: the loss on every
 * second quiet night, the settings on every second month. Nights on which the tank warmed the collectors are left out of the loss.
 */
import { defineSystem } from '@noonloop/sim-core';
import {
  compilePumpControl,
  decidePump,
  differenceWants,
} from '../../../packages/sim-core/src/physics/control/pump-control.ts';
import { compileTank, restTank, WATER_HEAT_CAPACITY } from '../../../packages/sim-core/src/physics/tank/tank.ts';
import { plainInput } from '../../examples.ts';
import { mean, measuredRows, measuredText, type Pairs } from './sets.ts';

export const HOUSE_FILE = 'house/2017-5min.csv';
export const NIGHTS_FILE = 'house/quiet-nights-2017.csv';
/** Assumed; the loss goes with it. [m³] */
const VOLUME = 0.3;
const NODES = 20;
/** Sensors, as shares of the height: judgement. */
const [LOW, HIGH] = [0.15, 0.85];

interface Night {
  readonly hours: number;
  readonly bottom: readonly [number, number];
  readonly top: readonly [number, number];
  readonly room: number;
}

/** Warmest collector from 23 to 5 h, by the date of the morning. [°C] */
function warmestAtNight(): Map<string, number> {
  const warmest = new Map<string, number>();
  const morningOf = (day: string) => new Date(Date.parse(`${day}T00:00:00Z`) + 86_400_000).toISOString().slice(0, 10);
  for (const { day, hour, collector } of houseLog()) {
    if (hour >= 5 && hour < 23) continue;
    const morning = hour >= 23 ? morningOf(day) : day;
    warmest.set(morning, Math.max(warmest.get(morning) ?? Number.NEGATIVE_INFINITY, collector));
  }
  return warmest;
}

/**
 * Nights in which the third sensor keeps within 1.5 K: then it hangs in the room. Every second is for fitting. On some the standing collector is
 * warmer than the room: the tank feeds it, and what it loses then is no loss of its insulation.
 */
function nights(feeding = false): [fitted: Night[], kept: Night[]] {
  const known = sorted.get(feeding) ?? sortNights(feeding);
  sorted.set(feeding, known);
  return known;
}
const sorted = new Map<boolean, [fitted: Night[], kept: Night[]]>();

function sortNights(feeding: boolean): [fitted: Night[], kept: Night[]] {
  const warmest = warmestAtNight();
  const all = measuredRows(NIGHTS_FILE)
    .filter(({ date, room0, room1 }) => {
      const fed = warmest.get(date!)! > (Number(room0) + Number(room1)) / 2;
      return fed === feeding;
    })
    .map((row) => Object.fromEntries(Object.entries(row).map(([name, text]) => [name, Number(text)])))
    .filter((row) => Math.abs(row.room0! - row.room1!) < 1.5)
    .map(
      (row): Night => ({
        hours: row.hours!,
        bottom: [row.bottom0!, row.bottom1!],
        top: [row.top0!, row.top1!],
        room: (row.room0! + row.room1!) / 2,
      }),
    );
  return [all.filter((_, at) => at % 2 === 0), all.filter((_, at) => at % 2 === 1)];
}

const middle = ({ bottom, top }: Night, at: 0 | 1): number => (bottom[at] + top[at]) / 2;

/** Loss of a tank of 300 L whose mean cools as on the nights for fitting, τ by least squares. [W/K] */
export function fittedTankLoss(): number {
  fitted ??= lossOf(nights()[0]);
  return fitted;
}
let fitted: number | undefined;

/** Nights on which the tank feeds the collectors, and what it seems to lose on them. [W/K] */
export function feedingNights(): { count: number; loss: number } {
  const all = nights(true).flat();
  return { count: all.length, loss: lossOf(all) };
}

function lossOf(fitted: readonly Night[]): number {
  const cooled = (time: number) =>
    fitted.reduce((sum, night) => {
      const end = night.room + (middle(night, 0) - night.room) * Math.exp(-night.hours / time);
      return sum + (end - middle(night, 1)) ** 2;
    }, 0);
  let [low, high] = [20, 400];
  for (let pass = 0; pass < 60; pass++) {
    const [a, b] = [low + (high - low) / 3, high - (high - low) / 3];
    if (cooled(a) < cooled(b)) high = b;
    else low = a;
  }
  return (VOLUME * WATER_HEAT_CAPACITY) / ((low + high) * 1800);
}

/** What a design takes for such a tank. [W/K] */
export const defaultTankLoss = (): number =>
  defineSystem({ ...plainInput, tank: { volume: VOLUME } }).tank.lossCoefficient;

/** Ends of the nights that were not fitted. [°C] */
export interface NightEnds {
  readonly bottom: Pairs;
  readonly top: Pairs;
  readonly mean: Pairs;
}

/** The tank of a run through each night, linear between its sensors at the start. @param lossCoefficient - [W/K] */
export function nightEnds(lossCoefficient: number): NightEnds {
  const [, kept] = nights();
  const design = defineSystem({ ...plainInput, tank: { volume: VOLUME, lossCoefficient, nodes: NODES } }).tank;
  const ends = kept.map((night) => {
    const tank = compileTank({ ...design, roomTemperature: night.room }, [6]);
    const slope = (night.top[0] - night.bottom[0]) / (HIGH - LOW);
    for (let node = 0; node < NODES; node++) {
      const height = Math.min(Math.max((node + 0.5) / NODES, LOW), HIGH);
      tank.temperature[node] = night.bottom[0] + slope * (height - LOW);
    }
    for (let step = 0; step < Math.round(night.hours * 6); step++) restTank(tank, 6);
    const at = (height: number) => tank.temperature[Math.floor(height * NODES)]!;
    return [at(LOW), at(HIGH)] as const;
  });
  const pairs = (measured: (night: Night) => number, modelled: (end: readonly [number, number]) => number): Pairs => ({
    measured: kept.map(measured),
    modelled: ends.map(modelled),
  });
  return {
    bottom: pairs(
      ({ bottom }) => bottom[1],
      ([low]) => low,
    ),
    top: pairs(
      ({ top }) => top[1],
      ([, high]) => high,
    ),
    mean: pairs(
      (night) => middle(night, 1),
      ([low, high]) => (low + high) / 2,
    ),
  };
}

/** Five minutes of the house. */
interface Reading {
  readonly month: number;
  readonly day: string;
  readonly hour: number;
  readonly collector: number;
  readonly bottom: number;
  readonly top: number;
  readonly runs: boolean;
}

let log: Reading[] | undefined;
export function houseLog(): readonly Reading[] {
  if (log !== undefined) return log;
  // A hundred thousand rows of plain numbers.
  const [head, ...rows] = measuredText(HOUSE_FILE)
    .trimEnd()
    .split('\n')
    .map((line) => line.split(','));
  const [time, ...places] = ['time_local', 'collector_C', 'tank_bottom_C', 'tank_top_C', 'pump_on_share'].map((name) =>
    head!.indexOf(name),
  );
  log = rows.map((row) => {
    const [collector, bottom, top, share] = places.map((at) => Number(row[at])) as [number, number, number, number];
    const stamp = row[time!]!;
    return {
      month: Number(stamp.slice(5, 7)),
      day: stamp.slice(0, 10),
      hour: Number(stamp.slice(11, 13)),
      collector,
      bottom,
      top,
      runs: share >= 0.5,
    };
  });
  return log;
}

/** Settings of the controller. */
export interface Settings {
  readonly start: number;
  readonly stop: number;
  readonly highLimit: number;
}

/** How often the controller's model says the same as the pump did. */
export interface Agreement {
  /** Share of the five-minute rows by day, 6 to 20 h, in which both say the same. [-] */
  readonly same: number;
  /** Running time, measured and modelled. [h] */
  readonly hours: readonly [number, number];
}

const byMonths = new Map<readonly number[], readonly Reading[]>();
function readingsOf(months: readonly number[]): readonly Reading[] {
  const list = byMonths.get(months) ?? houseLog().filter(({ month }) => months.includes(month));
  byMonths.set(months, list);
  return list;
}

/** The controller's model on the measured temperatures of some months. */
export function pumpAgreement({ start, stop, highLimit }: Settings, months: readonly number[]): Agreement {
  const { pump, control } = defineSystem({
    ...plainInput,
    control: { mode: 'difference', difference: { start, stop }, highLimit, highLimitHysteresis: 2 },
  });
  const state = compilePumpControl(pump, control);
  let [rows, same, measured, modelled] = [0, 0, 0, 0];
  for (const { collector, bottom, top, runs } of readingsOf(months)) {
    const wanted = differenceWants(state, collector - bottom);
    const says = decidePump(state, Number.POSITIVE_INFINITY, top, wanted, 300);
    // At night both stand, which says nothing.
    if (!(runs || says || collector > bottom - 5)) continue;
    rows++;
    if (says === runs) same++;
    if (runs) measured += 1 / 12;
    if (says) modelled += 1 / 12;
  }
  return { same: same / rows, hours: [measured, modelled] };
}

const ODD = [1, 3, 5, 7, 9, 11];
export const EVEN = [2, 4, 6, 8, 10, 12];

/** Settings under which the odd months agree best, in whole kelvin. */
export function fittedSettings(): Settings {
  let best: Settings = { start: 5, stop: 3, highLimit: 75 };
  let most = 0;
  for (const start of [5, 6, 7, 8, 9])
    for (const stop of [2, 3, 4])
      for (const highLimit of [74, 75, 76]) {
        const { same } = pumpAgreement({ start, stop, highLimit }, ODD);
        if (same > most) [most, best] = [same, { start, stop, highLimit }];
      }
  return best;
}

/** Days on which the standing collector passed a temperature, and its highest. */
export function stagnationDays(limit: number): { days: number; highest: number } {
  const hot = new Set<string>();
  let highest = 0;
  for (const { day, collector, runs } of houseLog()) {
    if (!runs && collector > limit) hot.add(day);
    highest = Math.max(highest, collector);
  }
  return { days: hot.size, highest };
}

/** Mean fall of the mean temperature in the nights that were not fitted. [K] */
export function nightFall(): number {
  const [, kept] = nights();
  return mean(kept.map((night) => middle(night, 0) - middle(night, 1)));
}
