// What each night of a log shows: whether the tank warms the collectors, and how fast it cools by itself.
import { medianOf, quantileOf } from './changes.ts';
import { GAP, type Series } from './series.ts';

/** Night by night, under the day of its morning, NaN where a night shows nothing of it; shape [days]. */
export interface Nights {
  /** Collector over what is around it at night, at its warmest while the pump stands. [K] */
  readonly warmNight: Float64Array;
  /** Most by which the standing collector warmed in the dark. [K] */
  readonly nightRise: Float64Array;
  /** Rate at which the tank comes nearer to its room at night, pump and taps at rest. [1/h] */
  readonly decay: Float64Array;
}

/** Night without sun at any place up to 55° and on any clock. Judgement. [h from midnight] */
const NIGHT = [0, 4] as const;
/** From here on what sun there may be is low and falls: it warms no collector. Judgement. [h from midnight] */
const DARK = -3;
/** From here to there the still hours are looked for in which a tank cools. Judgement. [h from midnight] */
const STILL = [-2, 5] as const;
const LEAST_STILL = 3;
/** Over so long a warming in the dark is counted: weather is slower. Judgement. [h] */
const RISE_TIME = 3;
/** Room of a tank where nobody measures it. Judgement. [°C] */
const ROOM = 20;
/** Differences below which a tank's cooling is lost in its thermometers. Judgement. [K] */
const LEAST_OVER_ROOM = 8;
/** A room that changes more while the tank cools is no room, or has a window open. Judgement. [K] */
const ROOM_CHANGE = 3;
/** A bottom that falls faster is drawn from. Judgement. [K/h] */
const DRAWN = 2;

/** A collector so far over room and air at night is warmed by the tank. Judgement. [K] */
export const WARM = 5;
/**
 * So is one that warms so much in the dark. Judgement: a plate under a clear sky lies some 5 K under the air and comes up to it
 * when clouds move in, and the air itself may gain as much in those hours.
 */
export const RISE = 10;

/** By how much a night shows that the tank warms the collectors, over what weather does: 0 and more says so. [K] */
export const fedBy = ({ warmNight, nightRise }: Nights): Float64Array =>
  warmNight.map((warm, day) => Math.max(warm - WARM, nightRise[day]! - RISE));

/** Rates of cooling on nights on which the loop stood cold; on others they say nothing of the insulation. [1/h] */
export function quietDecay(nights: Nights): Float64Array {
  const fed = fedBy(nights);
  return nights.decay.map((value, day) => (fed[day]! >= 0 ? Number.NaN : value));
}

type Filling = { readonly [Key in keyof Nights]: Float64Array };

/** @param from - First reading after midnight. @param midnight - [h] */
export function nightInto(nights: Filling, day: number, series: Series, from: number, midnight: number): void {
  const { hour, collector, top, room, air, speed } = series;
  let first = from;
  while (first > 0 && hour[first - 1]! >= midnight + DARK) first--;
  nights.decay[day] = coolingOf(series, first, midnight);
  const dark: number[] = [];
  for (let at = first; at < hour.length && hour[at]! < midnight + NIGHT[1]; at++) if (!(speed[at]! > 0)) dark.push(at);
  const rows = dark.filter((at) => hour[at]! >= midnight + NIGHT[0]);
  if (rows.length < 3 || hour[rows.at(-1)!]! - hour[rows[0]!]! < (NIGHT[1] - NIGHT[0]) * 0.8) return;
  const of = (values: Float64Array, some: readonly number[] = rows) => medianOf(some.map((at) => values[at]!));
  // Heat can only come from a tank that is warmer.
  const warmth = (some: readonly number[]) => Float64Array.from(some, (at) => Math.min(collector[at]!, top[at]! + 3));
  const around = Math.max(...[of(room), of(air)].filter((value) => !Number.isNaN(value)), Number.NEGATIVE_INFINITY);
  const over = quantileOf(warmth(rows), 0.9) - (Number.isFinite(around) ? around : ROOM + 5);
  // It stands in the air; late in the night an evacuated tube too has lost what the evening left in it.
  const late = rows.slice(Math.floor((2 * rows.length) / 3));
  const overAir = medianOf(warmth(late)) - of(air, late);
  nights.warmNight[day] = Number.isNaN(overAir) ? over : Math.max(over, overAir);
  nights.nightRise[day] = riseOf(
    dark.map((at) => hour[at]!),
    warmth(dark),
  );
}

/** Most that values rise within some hours. @param hour - of each value */
function riseOf(hour: readonly number[], values: Float64Array): number {
  let [most, oldest] = [0, 0];
  for (let at = 0; at < values.length; at++) {
    while (hour[at]! - hour[oldest]! > RISE_TIME) oldest++;
    for (let before = oldest; before < at; before++) most = Math.max(most, values[at]! - values[before]!);
  }
  return most;
}

/**
 * Rate of cooling over the longest still stretch of a night: fall of the tank's mean over the time integral of what it is over its
 * room, which is the exponential's rate whatever the room does meanwhile. NaN where nothing is still for long enough. [1/h]
 */
function coolingOf({ hour, bottom, top, room, speed }: Series, first: number, midnight: number): number {
  let [longest, begin] = [[first, first] as const, first];
  for (let at = first; at < hour.length && hour[at]! < midnight + STILL[1]; at++) {
    if (speed[at]! > 0 || hour[at]! < midnight + STILL[0]) begin = at + 1;
    else if (at > begin) {
      let back = at - 1;
      while (back > begin && hour[at]! - hour[back]! < 0.5) back--;
      const drawn = bottom[back]! - bottom[at]! > DRAWN * Math.max(0.5, hour[at]! - hour[back]!);
      if (drawn || hour[at]! - hour[at - 1]! > GAP) begin = at;
    }
    if (hour[at]! - hour[begin]! > hour[longest[1]]! - hour[longest[0]]!) longest = [begin, at];
  }
  const [from, to] = longest;
  if (to - from < 6 || hour[to]! - hour[from]! < LEAST_STILL) return Number.NaN;
  const mean = (at: number) => (bottom[at]! + top[at]!) / 2;
  const about = (at: number) => (Number.isNaN(room[at]!) ? ROOM : room[at]!);
  let [integral, coldest, warmest, least] = [0, Infinity, -Infinity, Infinity];
  // Both ends are the middle of three readings.
  for (let at = from + 1; at < to; at++) {
    const over = mean(at) - about(at);
    if (at > from + 1) integral += ((over + mean(at - 1) - about(at - 1)) / 2) * (hour[at]! - hour[at - 1]!);
    [coldest, warmest, least] = [Math.min(coldest, about(at)), Math.max(warmest, about(at)), Math.min(least, over)];
  }
  if (!(least > LEAST_OVER_ROOM) || warmest - coldest > ROOM_CHANGE) return Number.NaN;
  const end = (middle: number) => medianOf([middle - 1, middle, middle + 1].map(mean));
  return (end(from + 1) - end(to - 1)) / integral;
}
