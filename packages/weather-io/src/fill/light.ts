// Fills gaps in irradiance by clearness, which the sun's height does not move.
import { beamFromRest, erbsFraction } from '../irradiance/split.ts';
import type { HourlySun } from '../sun/hourly.ts';
import type { LikeDays } from './like-day.ts';
import { runsOf } from './runs.ts';

/** Sunlit hours that a line bridges. Judgement: within three hours the sky of one end still says something of the other. [h] */
const SHORT_GAP = 3;

/** Irradiance in work; `NaN` where missing, filled in place. */
interface LightColumns {
  readonly ghi: Float64Array;
  readonly dni: Float64Array | null;
  readonly dhi: Float64Array | null;
}

/** Hours that were filled, by the way they were. */
export interface LightFilled {
  /** Global from beam and diffuse, or one of these from the other two. */
  readonly closure: number[];
  /** Short gaps. */
  readonly interpolated: number[];
  /** Long gaps. */
  readonly likeDay: number[];
  /** Sun down. */
  readonly night: number[];
}

/**
 * Clearness of each hour, at most 1; `NaN` where global irradiance is missing or the sun is down. At sunrise and sunset the sun of the
 * hour can be as good as down beside light that is not.
 */
export const clearnessOf = (ghi: Float64Array, { light, normal }: HourlySun): Float64Array =>
  ghi.map((value, hour) => (light[hour]! > 0 ? Math.min(value / (normal[hour]! * light[hour]!), 1) : Number.NaN));

/** What the closure and the night say; needs no neighbour. */
export function fillFromClosure({ ghi, dni, dhi }: LightColumns, sun: HourlySun, filled: LightFilled): void {
  const { light, lit } = sun;
  const pair = new Float64Array(2);
  for (let hour = 0; hour < ghi.length; hour++) {
    const gap = [ghi, dni, dhi].filter((values) => values !== null && Number.isNaN(values[hour]!)).length;
    if (gap === 0) continue;
    if (!(light[hour]! > 0)) {
      for (const values of [ghi, dni, dhi]) if (values !== null && Number.isNaN(values[hour]!)) values[hour] = 0;
      filled.night.push(hour);
      continue;
    }
    if (gap > 1 || dni === null || dhi === null) continue;
    const up = (dni[hour]! * light[hour]!) / lit[hour]!;
    if (Number.isNaN(ghi[hour]!)) ghi[hour] = dhi[hour]! + up;
    else if (Number.isNaN(dhi[hour]!)) dhi[hour] = Math.max(ghi[hour]! - up, 0);
    else {
      beamFromRest(ghi[hour]!, dhi[hour]!, sun, hour, pair);
      dni[hour] = pair[0]!;
    }
    filled.closure.push(hour);
  }
}

/**
 * Fills what is left: in gaps of up to three sunlit hours clearness and diffuse share lie on a line between the neighbours (at
 * sunrise and sunset they are those of the one neighbour); in longer ones they are those of the like day at the same hour.
 *
 * @returns Whether a like day was missing somewhere.
 */
export function fillLight(columns: LightColumns, sun: HourlySun, like: LikeDays, filled: LightFilled): boolean {
  const { ghi, dni, dhi } = columns;
  const { light, normal } = sun;
  const clearness = clearnessOf(ghi, sun);
  const share = ghi.map((value, hour) => (dhi !== null && value > 0 ? Math.min(dhi[hour]! / value, 1) : Number.NaN));
  const known = { clearness: clearness.slice(), share: share.slice() };
  const split = dni !== null && dhi !== null;
  const missing = (hour: number): boolean =>
    light[hour]! > 0 && (Number.isNaN(ghi[hour]!) || (split && (Number.isNaN(dni[hour]!) || Number.isNaN(dhi[hour]!))));
  let lacking = false;
  const pair = new Float64Array(2);
  for (const { from, to } of runsOf(missing, ghi.length)) {
    const before = known.clearness[from - 1];
    const after = known.clearness[to];
    const short = to - from <= SHORT_GAP && (!Number.isNaN(before ?? Number.NaN) || !Number.isNaN(after ?? Number.NaN));
    for (let hour = from; hour < to; hour++) {
      const donor = short ? null : like.of(Math.floor(hour / 24));
      const lent = donor === null ? -1 : donor * 24 + (hour % 24);
      const along = (hour - from + 1) / (to - from + 1);
      if (Number.isNaN(ghi[hour]!)) {
        const k = short ? between(before, after, along) : (known.clearness[lent] ?? Number.NaN);
        // A like day may have its sunrise an hour later: then the light of this hour is that of dusk.
        const usable = Number.isNaN(k) && lent >= 0 ? 0 : k;
        if (Number.isNaN(usable)) {
          lacking = true;
          continue;
        }
        clearness[hour] = usable;
        ghi[hour] = usable * normal[hour]! * light[hour]!;
      }
      (short ? filled.interpolated : filled.likeDay).push(hour);
      if (!split) continue;
      const wanted = short ? between(known.share[from - 1], known.share[to], along) : (known.share[lent] ?? Number.NaN);
      const part = Number.isNaN(wanted) ? erbsFraction(clearness[hour]!) : wanted;
      beamFromRest(ghi[hour]!, ghi[hour]! * part, sun, hour, pair);
      dni[hour] = pair[0]!;
      dhi[hour] = pair[1]!;
    }
  }
  return lacking;
}

/** On the line between two values; the one that is there where the other is not. */
function between(before = Number.NaN, after = Number.NaN, along: number): number {
  if (Number.isNaN(before)) return after;
  if (Number.isNaN(after)) return before;
  return before + along * (after - before);
}
