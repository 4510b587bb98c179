// A plausible hourly year for a place of which only twelve monthly means are known.

import { Faults } from '../errors.ts';
import { completeLight } from '../irradiance/complete.ts';
import { amount, type Said, said } from '../said.ts';
import { MONTH_DAYS } from '../time/calendar.ts';
import { HOURS_OF_YEAR, type WeatherAssumption, type WeatherYear } from '../year.ts';
import { dewPointOf, hourlyAir, hourlyHumidity, hourlyWind } from './air.ts';
import { hourlyCourse } from './course.ts';
import { dailyClearness } from './daily-clearness.ts';
import { hourlyLight } from './hourly-light.ts';
import { type CheckedInput, checkInput, type SyntheticInput } from './input.ts';
import { gaussFrom } from './random.ts';

/** Year of the synthetic calendar: one without a leap day. */
const CALENDAR_YEAR = 2023;

/** A month with less light than this at the top of the air is taken as polar night. [Wh/(m² d)] */
const DARK = 50;

/** Ångström's rule in the form of FAO-56 (Allen et al. 1998, eq. 35): K = 0.25 + 0.50 n/N. */
const clearnessOfSunshine = (fraction: number): number => 0.25 + 0.5 * fraction;

/**
 * Makes a plausible hourly year from twelve monthly means. The means come back; the hours are invented: no single hour, day or
 * storm of it ever was. The same input gives the same year.
 *
 * Daily clearness after Bendt et al. (1981) with the persistence of Graham et al. (1988); hours after Collares-Pereira & Rabl
 * (1979) with the noise of Aguiar & Collares-Pereira (1992); beam and diffuse after Erbs et al. (1982); temperature after
 * Erbs et al. (1983). docs/theory/weather-synthesis.md says more, and how far a simulation is off.
 *
 * @param input - Place, means and seed; see {@link SyntheticInput}.
 * @returns The year; its assumptions say that it is invented, and how.
 * @throws WeatherError with every number that cannot be.
 * @example
 * const weather = synthesizeYear({
 *   site: { latitude: 36.1 },
 *   monthly: {
 *     dailyGhi_kWh_per_m2: [2.4, 3.2, 4.3, 5.4, 5.9, 6.3, 6.1, 5.5, 4.6, 3.8, 2.7, 2.2],
 *     dryBulb: [3, 5, 9, 14, 19, 23, 25, 24, 21, 15, 10, 5],
 *   },
 * });
 * weather.columns.ghi.length; // 8760
 */
export function synthesizeYear(input: SyntheticInput): WeatherYear {
  const checked = checkInput(input);
  const { site, seed } = checked;
  const calendarYears = new Int16Array(HOURS_OF_YEAR).fill(CALENDAR_YEAR);
  const course = hourlyCourse({ site, calendarYears });
  const top = Float64Array.from({ length: 365 }, (_, day) => {
    let sum = 0;
    for (let hour = day * 24; hour < day * 24 + 24; hour++) sum += course.top[hour]!;
    return sum;
  });
  const months = clearnessOfMonths(checked, top);
  // One stream for each quantity: a range or humidity that is given as well leaves the light as it was.
  const stream = (index: number) => gaussFrom((seed + Math.imul(index, 0x632be5ab)) >>> 0);
  const clearness = dailyClearness(months, top, MONTH_DAYS, stream(1));
  const ghi = hourlyLight(clearness, course, stream(2));
  const sun = { site, calendarYears, irradianceMidpoint: 0.5 };
  const { dni, dhi } = completeLight({ ...sun, columns: { ghi, dni: null, dhi: null } }, []);
  const { dryBulb: means, dailyRange: ranges, relativeHumidity: humid, windSpeed: windy } = checked;
  const solarAhead = site.longitude / 15 - site.utcOffset;
  const dryBulb = hourlyAir({ means, ranges, clearness, solarAhead }, stream(3));
  const relativeHumidity = humid === null ? null : hourlyHumidity(dryBulb, humid);
  return {
    ...sun,
    format: 'plain',
    source: `synthetic year, seed ${seed}`,
    columns: {
      ghi,
      dni,
      dhi,
      dryBulb,
      dewPoint: relativeHumidity && dryBulb.map((air, hour) => dewPointOf(air, relativeHumidity[hour]!)),
      relativeHumidity,
      windSpeed: windy === null ? null : hourlyWind(windy, stream(4)),
      pressure: null,
      skyLongwave: null,
      cloudCover: null,
      albedo: null,
      snowDepth: null,
    },
    assumptions: assumptionsOf(checked, input),
  };
}

/** Clearness of each month, from whichever way its light was given. */
function clearnessOfMonths({ light }: CheckedInput, top: Float64Array): Float64Array {
  const { form, values } = light;
  if (form === 'clearness') return values;
  if (form === 'sunshineFraction') return values.map(clearnessOfSunshine);
  const faults = new Faults('synthesizeYear');
  const clearness = values.map((daily_kWh, month) => {
    const days = MONTH_DAYS[month + 1]! - MONTH_DAYS[month]!;
    let above = 0;
    for (let day = MONTH_DAYS[month]!; day < MONTH_DAYS[month + 1]!; day++) above += top[day]! / days;
    const ratio = (daily_kWh * 1000) / above;
    if (above < DARK) return Math.min(daily_kWh > 0 ? ratio : 0.05, 0.85);
    if (!(ratio >= 0.05 && ratio <= 0.85)) {
      const unit = form === 'dailyGhi_MJ_per_m2' ? { name: 'MJ', size: 3.6 } : { name: 'kWh', size: 1 };
      const bound = (share: number) => ((share * above * unit.size) / 1000).toFixed(2);
      faults.add({
        code: 'bad-option',
        column: `monthly.${form}[${month}]`,
        value: (daily_kWh * unit.size).toFixed(2),
        expected: `${bound(0.05)} to ${bound(0.85)} ${unit.name}/(m² d): 5 to 85 % of what reaches the top of the air here in this month`,
        remedy: 'Check the unit, the latitude and its sign, and that the months begin with January.',
      });
    }
    return ratio;
  });
  faults.throwIfAny();
  return clearness;
}

/** What was guessed, in words. */
function assumptionsOf(checked: CheckedInput, { site }: SyntheticInput): WeatherAssumption[] {
  const { light, dailyRange, relativeHumidity, windSpeed, seed } = checked;
  const list: WeatherAssumption[] = [];
  const say = (code: string, words: string | Said) =>
    list.push({ code, ...(typeof words === 'string' ? { text: words } : words) });
  say(
    'synthetic-year',
    `The hours are INVENTED from twelve monthly means (seed ${seed}); the means are kept, no hour is a measurement. ` +
      'Extremes, long spells of bad weather and single days are only plausible.',
  );
  if (light.form === 'sunshineFraction') {
    say(
      'light-from-sunshine',
      'Light was guessed from sunshine: K = 0.25 + 0.50 n/N (FAO-56); a single place may differ by 10 % or more.',
    );
  }
  say(
    'split-by-erbs',
    'Beam and diffuse were split from global irradiance hour by hour by the correlation of Erbs et al. (1982).',
  );
  if (dailyRange === null) {
    say('range-from-clearness', 'The daily range of temperature was guessed from clearness: near the sea too large.');
  }
  if (relativeHumidity === null) say('no-humidity', 'No humidity was given; the year has none.');
  if (windSpeed === null) say('no-wind', 'No wind was given; the year has none.');
  if (site.longitude === undefined) {
    say(
      'longitude-from-zone',
      `No longitude was given; ${checked.site.longitude}° was taken, where noon is at 12:00 on the mean.`,
    );
  } else if (site.utcOffset === undefined) {
    say(
      'zone-from-longitude',
      `No time zone was given; UTC${checked.site.utcOffset < 0 ? '' : '+'}${checked.site.utcOffset} was taken from the longitude.`,
    );
  }
  if (site.elevation === undefined)
    say('elevation-unknown', said`No elevation was given; ${amount(0, 'm')} was taken.`);
  return list;
}
