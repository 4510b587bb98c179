// What each day and night of a log shows.
import { medianOf, quantileOf } from './changes.ts';
import { type Nights, nightInto } from './nights.ts';
import { GAP, type Series } from './series.ts';

/** Day by day, NaN where a day shows nothing of it; shape [days]. Night means the hours after the midnight before. */
export interface Days extends Nights {
  /** First hour of each day. [h] */
  readonly hour: Float64Array;
  /** Smallest difference at which the pump started after a rest. [K] */
  readonly start: Float64Array;
  /** Median difference at which it stopped. [K] */
  readonly stop: Float64Array;
  /** Median difference while it runs on. [K] */
  readonly running: Float64Array;
  /** Warming of the tank for each kelvin of {@link running}, and for full speed where speed is known: a good hour of the day. [1/h] */
  readonly carried: Float64Array;
  /** Time in which the pump stood though the collector was hot and the tank had room. [h] */
  readonly standing: Float64Array;
  /** Time in which it ran with a hot collector and the tank got no warmer. [h] */
  readonly idle: Float64Array;
  /** Light at the first start. [W/m²] */
  readonly startLight: Float64Array;
  /** Hottest standing collector. [°C] */
  readonly hottest: Float64Array;
  /** Time in which the tank's bottom reads over its top. [h] */
  readonly inverted: Float64Array;
}

/** A sunlit collector so far above the tank ought to be fetched from. Judgement: twice the usual start. [K] */
export const HOT = 25;
/** So far above it nothing flows, if the tank does not warm. Judgement: well over the 15 to 25 K of a running loop. [K] */
const VERY_HOT = 45;
/** Below this much over the highest tank the limit has no say. Judgement. [K] */
const UNDER_LIMIT = 5;
/** Light in which a pump ought to run. Judgement. [W/m²] */
const BRIGHT = 400;

/** Each day. @param limit - Top of the tank at which the pump is stopped. [°C] */
export function daysOf(series: Series, limit: number): Days {
  const { hour } = series;
  const first = Math.floor(hour[0]! / 24);
  const count = Math.floor(hour.at(-1)! / 24) - first + 1;
  const column = () => new Float64Array(count).fill(Number.NaN);
  const days = {
    hour: Float64Array.from({ length: count }, (_, day) => 24 * (first + day)),
    warmNight: column(),
    nightRise: column(),
    decay: column(),
    start: column(),
    stop: column(),
    running: column(),
    carried: column(),
    standing: column(),
    idle: column(),
    startLight: column(),
    hottest: column(),
    inverted: column(),
  };
  let from = 0;
  for (let day = 0; day < count; day++) {
    let to = from;
    while (to < hour.length && hour[to]! < days.hour[day]! + 24) to++;
    if (to > from) {
      nightInto(days, day, series, from, days.hour[day]!);
      pumpInto(days, day, series, { from, to, limit });
    }
    from = to;
  }
  return days;
}

type Filling = { readonly [Key in keyof Days]: Float64Array };

/** Hours of running in a row over which the tank's warming is read. */
const CHUNK = 0.5;
/** Time before a start in which the pump stood, and after it until the loop runs evenly. Judgement. [h] */
const REST = 0.3;

function pumpInto(
  days: Filling,
  day: number,
  { hour, collector, bottom, top, speed, light, has }: Series,
  { from, to, limit }: { readonly from: number; readonly to: number; readonly limit: number },
): void {
  const starts: number[] = [];
  const stops: number[] = [];
  const running: number[] = [];
  const carried: number[] = [];
  const sums = { standing: 0, idle: 0, inverted: 0, hottest: Number.NaN, light: Number.NaN };
  let restSince = from;
  let runSince = -1;
  const over = (at: number) => collector[at]! - bottom[at]!;
  for (let at = Math.max(from, 1); at < to; at++) {
    const step = hour[at]! - hour[at - 1]!;
    if (step > GAP) {
      restSince = at;
      runSince = -1;
      continue;
    }
    if (bottom[at]! > top[at]! + 2) sums.inverted += step;
    const room = top[at]! < limit - UNDER_LIMIT;
    const [was, is] = [speed[at - 1]! > 0, speed[at]! > 0];
    if (is && !was) {
      if (hour[at]! - hour[restSince]! >= REST && room) {
        starts.push(Math.max(over(at - 1), over(at)));
        if (Number.isNaN(sums.light)) sums.light = light[at]!;
      }
      runSince = at;
    }
    if (!is && was) {
      if (room) stops.push(over(at - 1));
      restSince = at;
      runSince = -1;
    }
    if (!is) {
      sums.hottest = Math.max(Number.isNaN(sums.hottest) ? -99 : sums.hottest, collector[at]!);
      const wanted = over(at) > HOT || (light[at]! > BRIGHT && over(at) > HOT / 2);
      if (room && wanted && !Number.isNaN(speed[at]!)) sums.standing += step;
      continue;
    }
    if (runSince < 0 || hour[at]! - hour[runSince]! < CHUNK + REST) continue;
    let back = at;
    while (hour[at]! - hour[back]! < CHUNK - 1e-6) back--;
    let [difference, full] = [0, 0];
    for (let k = back + 1; k <= at; k++) {
      difference += over(k) / (at - back);
      full += speed[k]! / (at - back);
    }
    const warming = (bottom[at]! + top[at]! - bottom[back]! - top[back]!) / 2 / (hour[at]! - hour[back]!);
    if (difference > VERY_HOT && warming < 0.5) sums.idle += step;
    if (!room) continue;
    running.push(difference);
    if (difference > 5) carried.push(warming / difference / (has('pumpSpeed') ? full : 1));
  }
  days.start[day] = Math.min(...(starts.length > 0 ? starts : [Number.NaN]));
  days.stop[day] = medianOf(stops);
  days.running[day] = medianOf(running);
  // Water drawn hides warming: a good hour of the day counts.
  days.carried[day] = carried.length >= 6 ? quantileOf(carried, 0.9) : Number.NaN;
  days.standing[day] = sums.standing;
  days.idle[day] = sums.idle;
  days.inverted[day] = sums.inverted;
  days.hottest[day] = sums.hottest;
  days.startLight[day] = sums.light;
}
