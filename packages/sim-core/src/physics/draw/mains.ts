import type { WeatherYear } from '@noonloop/weather-io';
import type { MainsDesign, MainsWave } from '../../design/mains.ts';
import { DesignError, quote, requireNumber } from '../../input/errors.ts';
import { MONTH_STARTS, monthlyMeans } from '../calendar.ts';
import { everyHour } from '../column.ts';

/** Coldest water that the correlation is let to give: colder is no water (judgement). [°C] */
export const MAINS_FLOOR = 1;

const HOURS = 8760;

/** What the correlation of mains temperature rests on. */
export interface MainsClimate {
  /** Annual mean of the outdoor air. [°C] */
  readonly annualMean: number;
  /** Warmest less coldest monthly mean of the outdoor air, 0 or more. [K] */
  readonly monthlyRange: number;
  /** Whether the site lies south of the equator. */
  readonly southern: boolean;
}

/**
 * Cold mains on a day of the year.
 *
 *     T = T_avg + 3.333 K + ratio (ΔT/2) sin(0.986 (n − 15 − lag) − 90°),   + 90° in the south
 *     ratio = 0.4 + 0.018 (T_avg − 6.667),   lag = 35 − 1.8 (T_avg − 6.667) days
 *
 * T_avg annual mean of the air, ΔT between its warmest and coldest month, n day of the year. The ratio is kept at 0 or above
 * (below T_avg = −15.6 °C it would turn the seasons round), the result at {@link MAINS_FLOOR} or above. Fitted to the contiguous
 * United States. Left out: depth of the pipes, wells, what the water picks up indoors.
 *
 * @param climate - See {@link MainsClimate}.
 * @param dayOfYear - n, 1 on 1 January, to 365. [d]
 * @returns T. [°C]
 * @throws {@link DesignError} for a value out of range.
 * @see Burch & Christensen, Towards Development of an Algorithm for Mains Water Temperature, ASES 2007 (constants read in two
 *   public implementations that cite it).
 */
export function mainsTemperature(climate: MainsClimate, dayOfYear: number): number {
  requireNumber('annualMean', climate.annualMean, -60, 60, '°C');
  requireNumber('monthlyRange', climate.monthlyRange, 0, 100, 'K');
  requireNumber('dayOfYear', dayOfYear, 1, 366, 'd');
  return burchChristensen(climate, dayOfYear);
}

function burchChristensen({ annualMean, monthlyRange, southern }: MainsClimate, day: number): number {
  const above = annualMean - 20 / 3; // over 44 °F
  const ratio = Math.max(0.4 + 0.018 * above, 0);
  const lag = 35 - 1.8 * above;
  const angle = 0.986 * (day - 15 - lag) + (southern ? 90 : -90);
  const temperature = annualMean + 10 / 3 + ratio * (monthlyRange / 2) * Math.sin((angle * Math.PI) / 180);
  return Math.max(temperature, MAINS_FLOOR);
}

/** Annual mean, range of the monthly means and hemisphere of a weather year. */
export function mainsClimate(weather: WeatherYear): MainsClimate {
  const months = monthlyMeans(weather.columns.dryBulb);
  let sum = 0;
  for (const temperature of weather.columns.dryBulb) sum += temperature;
  return {
    annualMean: sum / HOURS,
    monthlyRange: Math.max(...months) - Math.min(...months),
    southern: weather.site.latitude < 0,
  };
}

/**
 * Cold mains in each hour of the year.
 *
 * `'from-weather'`: {@link mainsTemperature} day by day. One number: constant. Twelve monthly means: linear between the middles of
 * the months and around the turn of the year; the mean over a month then leans towards its neighbours (weights about 1/8, 6/8,
 * 1/8), so the warmest and coldest months are flattened a little while the year's mean moves by less than 0.1 K. A wave:
 * mean − swing/2 · cos(2π (n − coldestDay)/365).
 *
 * @param mains - From the design.
 * @param weather - Its air temperatures and latitude; used by `'from-weather'` alone.
 * @returns Shape [8760]. [°C]
 * @throws {@link DesignError} for a temperature that is not from 0 to 40 °C, or a list not of twelve.
 */
export function mainsColumn(mains: MainsDesign, weather: WeatherYear): Float64Array {
  if (mains === 'from-weather') {
    const climate = mainsClimate(weather);
    requireNumber('weather.dryBulb', climate.annualMean, -60, 60, '°C (mean of the year)');
    const days = Float64Array.from({ length: HOURS / 24 }, (_, day) => burchChristensen(climate, day + 1));
    return everyHour((hour) => days[Math.floor(hour / 24)]!);
  }
  if (typeof mains === 'number') {
    requireNumber('draw.mains', mains, 0, 40, '°C');
    return new Float64Array(HOURS).fill(mains);
  }
  if (typeof mains === 'object' && mains !== null && 'mean' in mains) return wave(mains, weather.site.latitude < 0);
  return betweenMonths(mains);
}

/** Coldest day where none is given: where the correlation has it at 10 °C. [d] */
const COLDEST = { north: 45, south: 228 } as const;

function wave({ mean, swing, coldestDay }: MainsWave, southern: boolean): Float64Array {
  requireNumber('draw.mains.mean', mean, swing / 2, 40 - swing / 2, '°C');
  const coldest = coldestDay ?? (southern ? COLDEST.south : COLDEST.north);
  return everyHour((hour) => {
    const day = 1 + Math.floor(hour / 24);
    return mean - (swing / 2) * Math.cos((2 * Math.PI * (day - coldest)) / 365);
  });
}

function betweenMonths(months: readonly number[]): Float64Array {
  if (!Array.isArray(months) || months.length !== 12) {
    throw new DesignError([
      {
        path: 'draw.mains',
        found: quote(months),
        expected: '"from-weather", one temperature, twelve from January [°C], or { mean, swing }',
        remedy: 'Give one of the four.',
      },
    ]);
  }
  months.forEach((temperature, month) => {
    requireNumber(`draw.mains[${month}]`, temperature, 0, 40, '°C');
  });
  // Middles of December before, January to December, January after.
  const middle = (month: number): number => (MONTH_STARTS[month]! + MONTH_STARTS[month + 1]!) / 2;
  const times = [middle(11) - HOURS, ...months.map((_, month) => middle(month)), middle(0) + HOURS];
  const values = [months[11]!, ...months, months[0]!];
  let at = 0;
  return everyHour((hour) => {
    const time = hour + 0.5;
    while (time > times[at + 1]!) at++;
    const share = (time - times[at]!) / (times[at + 1]! - times[at]!);
    return values[at]! + share * (values[at + 1]! - values[at]!);
  });
}
