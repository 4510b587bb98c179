// Numbers that repeat as weather does not: sensors that stand still, days that were copied.
import type { ColumnKey } from '../limits.ts';
import type { WeatherYear } from '../year.ts';
import type { Collector } from './collector.ts';
import { MANY_DAYS, MANY_HOURS } from './light.ts';

/**
 * Hours for which a quantity may stand still. Light above 50 W/m² follows the sun, and even under thick cloud changes within 4 h;
 * temperature and wind in tenths can stand for a night, humidity in whole per cents for a day of fog. Judgement, no source.
 */
const LONGEST_STAND: Readonly<Partial<Record<ColumnKey, number>>> = {
  ghi: 4,
  dni: 4,
  dhi: 5,
  dryBulb: 24,
  dewPoint: 36,
  relativeHumidity: 48,
  windSpeed: 24,
};

/** Light that must move; less may stand for hours in files of whole numbers. [W/m²] */
const BRIGHT = 50;

/** Hours with light that a day needs before its repetition says anything. */
const FEWEST_LIT = 4;

const LIGHT = new Set<ColumnKey>(['ghi', 'dni', 'dhi']);

/** Looks for values that stand still for longer than weather does, and for days whose light and temperature are those of another. */
export function checkRepeats({ columns }: WeatherYear, found: Collector): void {
  for (const [key, longest] of Object.entries(LONGEST_STAND) as [ColumnKey, number][]) {
    const values = columns[key];
    if (values === null) continue;
    for (let start = 0, hour = 1; hour <= values.length; hour++) {
      if (hour < values.length && values[hour] === values[start]) continue;
      const stands = hour - start;
      if (stands > longest && counts(key, values[start]!)) {
        for (let row = start; row < hour; row++)
          found.add('stuck', key, row, { value: values[row]!, limit: stands, unit: `stands for ${stands} h` }, stands);
      }
      start = hour;
    }
    found.close('stuck', key, 4 * MANY_HOURS, `${NAMES[key]} stands still for more than ${longest} h`, true);
  }
  checkDays(columns, found);
}

const NAMES: Readonly<Record<string, string>> = {
  ghi: 'Global irradiance',
  dni: 'Beam irradiance',
  dhi: 'Diffuse irradiance',
  dryBulb: 'Dry bulb',
  dewPoint: 'Dew point',
  relativeHumidity: 'Relative humidity',
  windSpeed: 'Wind speed',
};

/** Calm and saturated air may stand. */
function counts(key: ColumnKey, value: number): boolean {
  if (LIGHT.has(key)) return value > BRIGHT;
  if (key === 'windSpeed') return value > 0;
  return key !== 'relativeHumidity' || value < 0.99;
}

function checkDays({ ghi, dryBulb }: WeatherYear['columns'], found: Collector): void {
  const seen = new Map<string, number>();
  for (let day = 0; day < 365; day++) {
    const light = ghi.subarray(day * 24, day * 24 + 24);
    if (light.filter((value) => value > 0).length < FEWEST_LIT) continue;
    const key = `${light.join()} ${dryBulb.subarray(day * 24, day * 24 + 24).join()}`;
    const before = seen.get(key);
    if (before === undefined) seen.set(key, day);
    else found.addDay('repeated-day', day, day + 1, before + 1, '(day of the year)');
  }
  found.close('repeated-day', '', MANY_DAYS, 'Light and dry bulb of the whole day are those of an earlier day');
}
