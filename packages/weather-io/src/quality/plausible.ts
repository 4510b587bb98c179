// Whether a year as a whole can be weather: units, columns that changed places, signs, humidity, wind, height.

import { closureRms } from '../closure.ts';
import { amount, said } from '../said.ts';
import type { HourlySun } from '../sun/hourly.ts';
import { hourStarts } from '../time/hours.ts';
import { STANDARD_WIND_HEIGHT, type WeatherColumns, type WeatherYear } from '../year.ts';
import type { Collector } from './collector.ts';

/** Days that stand for the clear ones of a year. Judgement. */
const CLEAREST = 5;

/** Clearness of the clearest days below which there was no clear day, and below which that is doubtful. Judgement; files of six places have 0.67 to 0.82. [-] */
const NO_CLEAR_DAY = 0.5;
const FEW_CLEAR_DAYS = 0.6;

/** Clearness above which no day is, at sea level or on a mountain. Judgement. [-] */
const TOO_CLEAR = 0.92;

/** Share of the year's global light below which diffuse light, or beam, is none. Judgement; real years have 0.3 to 0.7 of either. [-] */
const NO_SHARE = 0.05;

/** Mean of GHI − DHI − DNI cos Z over hours of full sun. Judgement; real years have up to 1.5. [W/m²] */
const OFFSET = 6;

/** A year's light: how much, which column is which, and whether they add up. */
export function checkAmounts(year: WeatherYear, sun: HourlySun, found: Collector): void {
  const { ghi, dni, dhi } = year.columns;
  const clearest = clearestDays(ghi, sun);
  const percent = Math.round(clearest * 1000) / 10;
  const told = `The ${CLEAREST} clearest days have ${percent} % of the light at the top of the air, where clear days have 60 to 82 %`;
  if (clearest < NO_CLEAR_DAY) {
    const cause =
      clearest < 0.005 ? ': the unit may be kW/m², not W/m²' : ': light may be missing, halved or in another unit';
    found.addWhole('light-sum', 'fault', `${told}${cause}.`, { clearness: clearest });
  } else if (clearest < FEW_CLEAR_DAYS || clearest > TOO_CLEAR) {
    found.addWhole('light-sum', 'doubt', `${told}.`, { clearness: clearest });
  }
  let [global, diffuse, beam, rest, hours] = [0, 0, 0, 0, 0];
  for (let hour = 0; hour < ghi.length; hour++) {
    if (!(sun.lit[hour]! > 0.999)) continue;
    const direct = dni[hour]! * sun.light[hour]!;
    global += ghi[hour]!;
    diffuse += dhi[hour]!;
    beam += direct;
    rest += ghi[hour]! - dhi[hour]! - direct;
    hours++;
  }
  const whole = Math.max(global, diffuse + beam);
  if (whole === 0) return;
  for (const [name, part] of [
    ['global', global],
    ['beam', beam],
    ['diffuse', diffuse],
  ] as const) {
    if (part < NO_SHARE * whole)
      found.addWhole('column-empty', 'fault', `There is next to no ${name} irradiance all year.`, {
        share: part / whole,
      });
  }
  const mean = rest / hours;
  if (Math.abs(mean) > OFFSET) {
    const text = said`GHI is ${amount(Math.abs(mean), 'W/m²')} ${mean > 0 ? 'above' : 'below'} DHI + DNI cos Z in the mean of all sunlit hours.`;
    found.addWhole('light-offset', 'fault', text, { offset_W_per_m2: mean });
  }
  checkPlaces(year, found);
}

/** Mean clearness of the clearest days, of those with 1 kWh/m² or more at the top of the air. */
function clearestDays(ghi: Float64Array, { light, normal }: HourlySun): number {
  const days: number[] = [];
  for (let day = 0; day < 365; day++) {
    let [below, above] = [0, 0];
    for (let hour = day * 24; hour < day * 24 + 24; hour++) {
      below += ghi[hour]!;
      above += light[hour]! * normal[hour]!;
    }
    if (above > 1000) days.push(below / above);
  }
  const best = days.sort((a, b) => b - a).slice(0, CLEAREST);
  return best.reduce((sum, value) => sum + value, 0) / Math.max(best.length, 1);
}

/** Every seventh hour with light is enough to see which column is which. */
const STRIDE = 7;

/** Whether the three columns close with their places changed. */
function checkPlaces(year: WeatherYear, found: Collector): void {
  const { ghi, dni, dhi } = year.columns;
  const { latitude, longitude } = year.site;
  const starts = hourStarts(year);
  const rms = (columns: Pick<WeatherColumns, 'ghi' | 'dni' | 'dhi'>) =>
    closureRms({ columns, starts, latitude, longitude }, year.irradianceMidpoint, STRIDE);
  const stands = rms(year.columns);
  if (stands < 15) return;
  for (const [names, columns] of [
    ['DNI and DHI', { ghi, dni: dhi, dhi: dni }],
    ['GHI and DNI', { ghi: dni, dni: ghi, dhi }],
    ['GHI and DHI', { ghi: dhi, dni, dhi: ghi }],
  ] as const) {
    const swapped = rms(columns);
    if (swapped > 15 || swapped > stands / 2) continue;
    const text = said`${names} may have changed places: then the light closes to ${amount(swapped, 'W/m²')}, as it stands to ${amount(stands, 'W/m²')}.`;
    found.addWhole('columns-swapped', 'fault', text, { stands_W_per_m2: stands, swapped_W_per_m2: swapped });
    return;
  }
}

/** Wind at 10 m that few places have in the mean of a year, and that none where houses stand. Judgement. [m/s] */
const WINDY = 8;
const TOO_WINDY = 10;

/** Power law of the wind over open ground: common practice. [-] */
const WIND_POWER = 1 / 7;

/** How far the height by the mean pressure may lie from the stated one. Judgement; real files have up to 130 m. [m] */
const HEIGHT_OFF = 250;
const HEIGHT_WRONG = 500;

/** Wind and height of the place. */
export function checkPlace({ site, columns }: WeatherYear, found: Collector): void {
  const { windSpeed, pressure } = columns;
  if (windSpeed !== null) {
    const height = site.windHeight ?? STANDARD_WIND_HEIGHT;
    const mean = meanOf(windSpeed) * (STANDARD_WIND_HEIGHT / height) ** WIND_POWER;
    if (mean > WINDY) {
      const text = said`The wind is ${amount(mean, 'm/s', 1)} in the mean of the year at ${amount(10, 'm')}: the unit may be km/h, not m/s.`;
      found.addWhole('wind', mean > TOO_WINDY ? 'fault' : 'doubt', text, { wind_m_per_s: mean });
    }
  }
  if (pressure !== null) {
    const mean = meanOf(pressure);
    // Standard atmosphere, ISO 2533.
    const height = 44_330.8 * (1 - (mean / 101_325) ** 0.190263);
    const off = site.elevation - height;
    if (Math.abs(off) > HEIGHT_OFF) {
      const text = said`The mean pressure, ${amount(mean / 100, 'hPa')}, is that of ${amount(height, 'm')}; the elevation is stated as ${amount(site.elevation, 'm')}.`;
      found.addWhole('elevation', Math.abs(off) > HEIGHT_WRONG ? 'fault' : 'doubt', text, {
        elevation_m: site.elevation,
        byPressure_m: height,
      });
    }
  }
}

/** Mean of a column. */
export const meanOf = (values: Float64Array): number => values.reduce((sum, value) => sum + value, 0) / values.length;
