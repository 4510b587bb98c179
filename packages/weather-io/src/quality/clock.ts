// Whether the light of a year comes when the sun says: by the symmetry of clear days about solar noon, and by the closure.
import { bestOffset, type ClosureInput, closureRms } from '../closure.ts';
import type { HourlySun } from '../sun/hourly.ts';
import { hourStarts, zoneName } from '../time/hours.ts';
import type { WeatherYear } from '../year.ts';
import type { ClockEstimate } from './report.ts';

/** Days that are taken as clear: the clearest of each month by light in their brightest hours. Judgement. */
const CLEAR_DAYS_A_MONTH = 8;

/** Least light of a clear day. [Wh/m²] */
const ENOUGH_LIGHT = 1000;

/** Longest shift that the closure is searched for, its step, and how many lit hours lie between two that are looked at. */
const CLOSURE_RANGE_h = 1.5;
const CLOSURE_STEP_h = 0.125;
const STRIDE = 3;

/** The clear days and how late their light is. */
interface Symmetry {
  readonly late: number | null;
  readonly uncertainty: number;
  readonly days: number;
}

/**
 * Centre of light of each day on the circle of 24 h, against the centre of the light at the top of the air. Haze dims the
 * morning as much as the evening of a clear day, so that the centres agree where the clock is right. The median over clear
 * days counts; its uncertainty is 1.96 times its standard error from the median absolute deviation, never below 0.05 h for
 * mornings that differ from evenings all year (judgement).
 */
function symmetry({ columns }: WeatherYear, { light, normal }: HourlySun): Symmetry {
  const { ghi } = columns;
  const angles = Array.from({ length: 24 }, (_, hour) => ((hour + 0.5) * Math.PI) / 12);
  const days = Array.from({ length: 365 }, (_, day) => {
    let [sum, east, north, top, topEast, topNorth] = [0, 0, 0, 0, 0, 0];
    for (let at = 0; at < 24; at++) {
      const value = ghi[day * 24 + at]!;
      const above = light[day * 24 + at]! * normal[day * 24 + at]!;
      const [sin, cos] = [Math.sin(angles[at]!), Math.cos(angles[at]!)];
      sum += value;
      east += value * sin;
      north += value * cos;
      top += above;
      topEast += above * sin;
      topNorth += above * cos;
    }
    const late = onClock(((Math.atan2(east, north) - Math.atan2(topEast, topNorth)) * 12) / Math.PI);
    const concentrated = Math.hypot(topEast, topNorth) > 0.05 * top; // in polar day the sun has no middle
    return { month: Math.floor(day / 30.42), sum, late, usable: top > 0 && concentrated };
  });
  const clear: number[] = [];
  for (let month = 0; month < 12; month++) {
    const best = days
      .filter((day) => day.month === month && day.usable && day.sum > ENOUGH_LIGHT)
      .sort((a, b) => b.sum - a.sum)
      .slice(0, CLEAR_DAYS_A_MONTH);
    clear.push(...best.map(({ late }) => late));
  }
  if (clear.length < 10) return { late: null, uncertainty: 12, days: clear.length };
  // Shifts of 12 h lie at both ends of the circle: turn it so that its mean is in the middle.
  const [sin, cos] = [0, 1].map((kind) =>
    clear.reduce((sum, late) => sum + (kind === 0 ? Math.sin : Math.cos)((late * Math.PI) / 12), 0),
  ) as [number, number];
  const middle = (Math.atan2(sin, cos) * 12) / Math.PI;
  const about = clear.map((late) => onClock(late - middle));
  const centre = median(about);
  const spread = 1.4826 * median(about.map((late) => Math.abs(late - centre)));
  const error = (1.96 * 1.2533 * spread) / Math.sqrt(clear.length);
  return { late: onClock(middle + centre), uncertainty: Math.max(error, 0.05), days: clear.length };
}

/** A difference of clock times, from −12 to below 12. [h] */
const onClock = (hours: number): number => ((((hours + 12) % 24) + 24) % 24) - 12;

function median(list: readonly number[]): number {
  const sorted = list.toSorted((a, b) => a - b);
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}

/** Tests the clock of a year. @param measured - Whether beam and diffuse were measured; made from GHI, they always close. */
export function checkClock(year: WeatherYear, sun: HourlySun, measured: boolean): ClockEstimate {
  const { late, uncertainty, days } = symmetry(year, sun);
  const { latitude, longitude } = year.site;
  const input: ClosureInput = { columns: year.columns, starts: hourStarts(year), latitude, longitude };
  const stands = closureRms(input, year.irradianceMidpoint, STRIDE);
  // A shift of the light to later is a sun that stands earlier in the row.
  const offsets: number[] = [];
  for (let shift = -CLOSURE_RANGE_h; shift <= CLOSURE_RANGE_h + 1e-9; shift += CLOSURE_STEP_h) {
    offsets.push(year.irradianceMidpoint - shift);
  }
  const best = bestOffset(input, offsets, STRIDE, stands);
  const told = measured && best.rms < stands / 2 && best.rms < stands - 2;
  const lateByClosure = told
    ? Number((year.irradianceMidpoint - best.offset).toFixed(6))
    : measured && stands < 10
      ? 0
      : null;
  const estimate =
    late !== null && lateByClosure !== null && Math.abs(late - lateByClosure) < 0.4 ? lateByClosure : late;
  return {
    late,
    uncertainty,
    clearDays: days,
    lateByClosure,
    closureRms: [stands, best.rms],
    causes: estimate === null ? [] : causesOf(year, estimate, Math.max(uncertainty, CLOSURE_STEP_h)),
  };
}

/** Shifts that are taken as none: mornings and evenings may differ by this much. Judgement. [h] */
const NO_SHIFT = 0.2;

/** What would make the light come so much later. */
function causesOf({ site }: WeatherYear, late: number, tolerance: number): string[] {
  if (Math.abs(late) < NO_SHIFT) return [];
  const causes: string[] = [];
  const near = (shift: number): boolean => Math.abs(onClock(late - shift)) <= tolerance + 0.1;
  const hours = Math.round(late);
  const direction = late > 0 ? 'later' : 'earlier';
  const size = Math.abs(Number(late.toFixed(2)));
  if (near(0.5) || near(-0.5))
    causes.push(
      `stamps that are half an hour off: the light comes ${size} h ${direction} than stated, as where the end of the hour was taken for its middle`,
    );
  if (hours !== 0 && near(hours)) {
    const offset = site.utcOffset + hours;
    if (Math.abs(hours) === 1)
      causes.push(
        `stamps that are an hour off: the light comes ${size} h ${direction}, as where the end of the hour was taken for its start, or clocks were on daylight saving time`,
      );
    if (offset >= -12 && offset <= 14)
      causes.push(`a wrong time zone: ${zoneName(offset)} would fit, ${zoneName(site.utcOffset)} is stated`);
  }
  if (Math.abs(site.longitude) > 1 && near((2 * site.longitude) / 15))
    causes.unshift(`a longitude of the wrong sign: ${-site.longitude}° would fit, ${site.longitude}° is stated`);
  if (causes.length === 0) {
    causes.push(
      `a clock or a longitude that is off: the light comes ${size} h ${direction} than the sun of ${site.longitude}° in ${zoneName(site.utcOffset)}`,
    );
  }
  return causes;
}
