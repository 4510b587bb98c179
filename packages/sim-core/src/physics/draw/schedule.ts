import { WEEKDAYS } from '@noonloop/weather-io/calendar';
import type { DrawDesign } from '../../design/design.ts';
import { everyHour } from '../column.ts';
import { WATER_HEAT_CAPACITY } from '../tank/tank.ts';
import { clockShift, dayFactors, readDayRange } from './days.ts';
import { type DrawEvent, drawProfile } from './profile.ts';
import type { DrawWithin } from './within.ts';

const HOURS = 8760;
const MINUTES = 60;

/** A draw that keeps its heat needs taps this much warmer than the mains; nearer, its volume is held (judgement). [K] */
const LEAST_WARMING = 5;

/** What the taps want, hour by hour. */
export interface DrawSchedule {
  /** Mixed water wanted. Shape [8760]. [m³] */
  readonly volume: Float64Array;
  /** Where inside its hour it falls; `null`: evenly. */
  readonly within: DrawWithin | null;
  /** Hours in which taps no warmer than the mains kept a draw from its heat. */
  readonly heldHours: number;
}

/**
 * Lays a design's draw out over the year: day shape, weekdays, holidays and the clock's shift, or the user's own record.
 *
 * A tapping profile keeps the heat of each draw where the design gives no volume: V = Q/(ρc (T_tap − T_mains)) with the mains of
 * the hour. Each draw starts at its minute and runs at its own flow.
 *
 * @param draw - From the design.
 * @param mains - Cold mains. Shape [8760]. [°C]
 */
export function drawSchedule(draw: DrawDesign, mains: Float64Array): DrawSchedule {
  if (draw.volumes !== null) return ownRecord(draw.volumes, draw.flow);
  const factors = dayFactors(draw.weekdayFactors, WEEKDAYS.indexOf(draw.firstWeekday), ranges(draw.holidays));
  const shift = clockShift(draw.summerTime === null ? null : readDayRange(draw.summerTime));
  const profile = draw.profile === null ? null : drawProfile(draw.profile);
  const energy = draw.keepsProfileHeat ? (profile?.dailyEnergy ?? 0) : null;
  const sum = draw.hourlyShares.reduce((total, share) => total + share, 0);
  const volume = new Float64Array(HOURS);
  const pattern = new Uint16Array(HOURS);
  let heldHours = 0;
  for (let hour = 0; hour < HOURS; hour++) {
    const clock = hour + shift[hour]!;
    const hourOfDay = clock % 24;
    const share = (factors[Math.trunc(clock / 24) % 365]! * draw.hourlyShares[hourOfDay]!) / sum;
    pattern[hour] = hourOfDay;
    if (energy === null) {
      volume[hour] = draw.dailyVolume * share;
    } else {
      const warming = draw.tapTemperature - mains[hour]!;
      volume[hour] = (energy * share) / (WATER_HEAT_CAPACITY * Math.max(warming, LEAST_WARMING));
      if (share > 0 && warming < LEAST_WARMING) heldHours++;
    }
  }
  const events = profile?.events ?? [];
  return { volume, within: events.length > 0 ? minutePatterns(events, pattern) : null, heldHours };
}

/** Whether draws have their place inside the hour: those of a tapping profile, and a record finer than hours. */
export function drawsWithinHours(draw: DrawDesign): boolean {
  if (draw.volumes !== null) return draw.volumes.length > HOURS;
  return draw.profile !== null && drawProfile(draw.profile).events.length > 0;
}

const ranges = (holidays: readonly string[]) => holidays.map((text) => readDayRange(text)!);

/** Draws of a day by minute: 24 patterns, one for each hour of the clock. */
function minutePatterns(events: readonly DrawEvent[], pattern: Uint16Array): DrawWithin {
  const heat = new Float64Array(24 * MINUTES);
  const heatFlow = new Float64Array(24 * MINUTES);
  for (const { start, energy, flow, volume } of events) {
    const first = start / 60;
    const length = volume / flow / 60;
    for (let minute = Math.trunc(first); minute < first + length; minute++) {
      const overlap = Math.min(minute + 1, first + length) - Math.max(minute, first);
      heat[minute]! += (energy * overlap) / length;
      heatFlow[minute]! += (energy * flow * overlap) / length;
    }
  }
  return accumulate(heat, heatFlow, MINUTES, pattern);
}

/** The user's own record: each hour its own pattern, none where it has one value an hour. */
function ownRecord(record: readonly number[], flow: number): DrawSchedule {
  const parts = record.length / HOURS;
  const volume = everyHour((hour) => {
    let sum = 0;
    for (let part = 0; part < parts; part++) sum += record[hour * parts + part]!;
    return sum;
  });
  const water = Float64Array.from(record);
  const fastest = (3600 / parts) * flow;
  const waterFlow = water.map((value) => value * Math.max(1, value / fastest) * flow);
  const pattern = Uint16Array.from({ length: HOURS }, (_, hour) => hour);
  return { volume, within: parts === 1 ? null : accumulate(water, waterFlow, parts, pattern), heldHours: 0 };
}

/** Running shares of each row of `parts` amounts. */
function accumulate(amount: Float64Array, amountFlow: Float64Array, parts: number, pattern: Uint16Array): DrawWithin {
  const rows = amount.length / parts;
  const drawn = new Float64Array(rows * (parts + 1));
  const flowDrawn = new Float64Array(rows * (parts + 1));
  for (let row = 0; row < rows; row++) {
    let total = 0;
    for (let part = 0; part < parts; part++) total += amount[row * parts + part]!;
    if (total <= 0) continue;
    const at = row * (parts + 1);
    for (let part = 0; part < parts; part++) {
      drawn[at + part + 1] = drawn[at + part]! + amount[row * parts + part]! / total;
      flowDrawn[at + part + 1] = flowDrawn[at + part]! + amountFlow[row * parts + part]! / total;
    }
    drawn[at + parts] = 1;
  }
  return { parts, pattern, drawn, flowDrawn };
}
