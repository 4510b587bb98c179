// Light against what the sun allows: limits, closure, night.
import { LIGHT_LIMITS, lightLimit } from '../irradiance/limits.ts';
import type { HourlySun } from '../sun/hourly.ts';
import type { WeatherYear } from '../year.ts';
import type { Collector } from './collector.ts';

/** Sun 15° high: below, limits of the closure are wider. BSRN, from memory. [-] */
const COS_75 = Math.cos((75 * Math.PI) / 180);

/** Hours with less light are not held to the closure. BSRN, from memory. [W/m²] */
const ENOUGH_LIGHT = 50;

/** Light in the dark that an offset of the instrument may leave. Judgement. [W/m²] */
const DARK_LIGHT = 5;

/** Clearness below which a day has no light: no cloud takes 98 %. Judgement. [-] */
const NO_LIGHT = 0.02;

/** A value that was set to its limit is within it. [-] */
const ROUNDING = 1e-9;

/** Hours of the year that must be wrong before its result is: 1 % of all, 2 % of those with light. Judgement. */
export const MANY_HOURS = 88;

/** One lit hour in seven: files whose beam is modelled, and hours made of several rows, close less well. Judgement. */
const CLOSURE_HOURS = 600;

/** One night hour in sixteen: hours next to sunrise and sunset may be lit by their stamps. Judgement. */
const NIGHT_HOURS = 250;

/** Days of the same weight: a week; a file with three has a doubt. Judgement. */
export const MANY_DAYS = 6;

const WORDS = { ghi: 'Global irradiance', dni: 'Beam irradiance', dhi: 'Diffuse irradiance' } as const;

/**
 * Limits of the Baseline Surface Radiation Network on hours, closure and ratio of diffuse to global, light at night, days
 * without light. An hour in which the sun rises or sets is held against the sun of its brighter side, so that an instant or
 * a mean of it passes.
 */
export function checkLight({ columns }: WeatherYear, sun: HourlySun, found: Collector): void {
  const { ghi, dni, dhi } = columns;
  const { light, lit, highest, normal } = sun;
  for (const key of ['ghi', 'dni', 'dhi'] as const) {
    const values = columns[key];
    for (let hour = 0; hour < values.length; hour++) {
      const up = lit[hour]! > 0.999 ? light[hour]! : highest[hour]!;
      const possible = lightLimit(LIGHT_LIMITS[key].possible, normal[hour]!, up);
      const rare = lightLimit(LIGHT_LIMITS[key].rare, normal[hour]!, up);
      const value = values[hour]!;
      if (value > possible * (1 + ROUNDING))
        found.add('beyond-possible', key, hour, { value: value, limit: possible, unit: 'W/m²' });
      else if (value > rare * (1 + ROUNDING))
        found.add('beyond-rare', key, hour, { value: value, limit: rare, unit: 'W/m²' });
    }
    const text = (which: string) =>
      `${WORDS[key]} is above the ${which} limit of the Baseline Surface Radiation Network`;
    found.close('beyond-possible', key, MANY_HOURS, text('physically possible'));
    found.close('beyond-rare', key, MANY_HOURS, text('extremely rare'), true);
  }
  for (let hour = 0; hour < ghi.length; hour++) {
    const whole = lit[hour]! > 0.999;
    const global = ghi[hour]!;
    if (lit[hour] === 0) {
      const brightest = Math.max(global, dni[hour]!, dhi[hour]!);
      if (brightest > DARK_LIGHT)
        found.add('light-at-night', '', hour, { value: brightest, limit: DARK_LIGHT, unit: 'W/m²' });
      continue;
    }
    if (!whole) continue;
    const sum = dhi[hour]! + dni[hour]! * light[hour]!;
    const low = light[hour]! < COS_75;
    if (sum > ENOUGH_LIGHT) {
      const share = low ? 0.15 : 0.08;
      if (Math.abs(global / sum - 1) > share)
        found.add('closure', '', hour, { value: global, limit: sum, unit: 'W/m²' }, Math.abs(global - sum));
    }
    if (global > ENOUGH_LIGHT && dhi[hour]! > global * (low ? 1.1 : 1.05)) {
      found.add('diffuse-above-global', '', hour, { value: dhi[hour]!, limit: global, unit: 'W/m²' });
    }
  }
  found.close('light-at-night', '', NIGHT_HOURS, 'There is light while the sun is down through the whole hour');
  found.close('closure', '', CLOSURE_HOURS, 'GHI is not DHI + DNI cos Z within 8 % (15 % with the sun below 15°)');
  found.close('diffuse-above-global', '', 2 * MANY_HOURS, 'Diffuse irradiance is above global');
  for (let day = 0; day < 365; day++) {
    let [global, above] = [0, 0];
    for (let hour = day * 24; hour < day * 24 + 24; hour++) {
      global += ghi[hour]!;
      above += normal[hour]! * light[hour]!;
    }
    // Only where the day has 0.5 kWh/m² at the top of the air: polar dusk is dark by nature.
    if (above > 500 && global < NO_LIGHT * above) found.addDay('no-light-by-day', day, global / above, NO_LIGHT, '');
  }
  found.close('no-light-by-day', '', MANY_DAYS, 'The day has less than 2 % of the light at the top of the air');
}
