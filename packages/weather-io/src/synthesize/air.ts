// Air through a synthetic year: temperature with its daily course, humidity, wind.
import { MONTH_DAYS } from '../time/calendar.ts';
import { monthlyMeans, rise } from './months.ts';
import { type Gauss, persistent } from './random.ts';

const HOURS = 8760;

/** Memory of daily mean temperature from day to day; Richardson (1981) has 0.62 to 0.67 (from memory). [-] */
const DAY_MEMORY = 0.65;

/** Memory of wind from hour to hour. Judgement. [-] */
const WIND_MEMORY = 0.9;

/** Least daily range that is made up. Judgement. [K] */
const LEAST_RANGE = 2;

/**
 * Mean daily course of air temperature, as departure from the day's mean in parts of the daily range:
 *
 *     0.4632 cos(t − 3.805) + 0.0984 cos(2t − 0.360) + 0.0168 cos(3t − 0.822) + 0.0138 cos(4t − 3.513),   t = 2π (hour − 1) / 24
 *
 * @param hour - Solar time. [h]
 * @see Erbs, Klein & Beckman (1983), Estimation of degree-days and ambient temperature bin data from monthly-average
 * temperatures, ASHRAE Journal 25(6) 60 (from memory).
 */
function dailyCourse(hour: number): number {
  const t = (2 * Math.PI * (hour - 1)) / 24;
  return (
    0.4632 * Math.cos(t - 3.805) +
    0.0984 * Math.cos(2 * t - 0.36) +
    0.0168 * Math.cos(3 * t - 0.822) +
    0.0138 * Math.cos(4 * t - 3.513)
  );
}

/** Daily range of temperature by clearness: 25.8 K − 5.21, not below 2 K. Erbs, Klein & Beckman (1983), from memory. [K] */
const rangeOfClearness = (clearness: number): number => Math.max(25.8 * clearness - 5.21, LEAST_RANGE);

/** What temperature is made from. */
interface AirInput {
  /** Mean of each month. [°C] */
  readonly means: ArrayLike<number>;
  /** Mean daily range of each month; `null`: by clearness. [K] */
  readonly ranges: ArrayLike<number> | null;
  /** Clearness of each day. Shape [365]. [-] */
  readonly clearness: Float64Array;
  /** Solar time less clock time. [h] */
  readonly solarAhead: number;
}

/**
 * Hourly dry bulb: the months' means joined smoothly, departures of days with memory, and a daily course whose range grows with
 * the clearness of the day. The mean of a day is not tied to its sun: Richardson (1981) has correlations of radiation with
 * the highest and the lowest temperature of +0.19 and −0.19 (from memory), which is a tie to the range.
 *
 * Departures: Erbs, Klein & Beckman (1983, from memory) give the spread of monthly means from year to year,
 * σm = 1.45 − 0.029 T + 0.0664 σyear; for days with memory φ that is σday = σm √(N (1 − φ)/(1 + φ)).
 *
 * @returns Shape [8760]; the mean of each month is that asked for. [°C]
 */
export function hourlyAir({ means, ranges, clearness, solarAhead }: AirInput, gauss: Gauss): Float64Array {
  const yearMean = Array.from(means).reduce((sum, value) => sum + value, 0) / 12;
  const yearSpread = Math.sqrt(Array.from(means).reduce((sum, value) => sum + (value - yearMean) ** 2, 0) / 11);
  const departure = persistent(365, DAY_MEMORY, gauss);
  const range = new Float64Array(365);
  for (let month = 0; month < 12; month++) {
    const from = MONTH_DAYS[month]!;
    const days = MONTH_DAYS[month + 1]! - from;
    const spread = Math.max(1.45 - 0.029 * means[month]! + 0.0664 * yearSpread, 0.5);
    const scale = spread * Math.sqrt((days * (1 - DAY_MEMORY)) / (1 + DAY_MEMORY));
    let sum = 0;
    for (let day = from; day < from + days; day++) {
      departure[day] = departure[day]! * scale;
      range[day] = rangeOfClearness(clearness[day]!);
      sum += range[day]!;
    }
    const factor = ranges === null ? 1 : (ranges[month]! * days) / sum;
    for (let day = from; day < from + days; day++) range[day] = range[day]! * factor;
  }
  const air = new Float64Array(HOURS);
  for (let hour = 0; hour < HOURS; hour++) {
    const course = dailyCourse((hour % 24) + 0.5 + solarAhead);
    air[hour] = betweenDays(departure, hour) + betweenDays(range, hour) * course;
  }
  return addMonths(air, means);
}

/** Value at an hour, on a line between the noons of the days about it; the year is a ring. */
function betweenDays(daily: Float64Array, hour: number): number {
  const at = (hour + 0.5 - 12) / 24;
  const day = Math.floor(at);
  const before = daily[(day + 365) % 365]!;
  return before + (at - day) * (daily[(day + 1) % 365]! - before);
}

/** Middle of each month. [h] */
const MIDDLES = Array.from({ length: 12 }, (_, month) => (MONTH_DAYS[month]! + MONTH_DAYS[month + 1]!) * 12);

/** Adds lines between mid-months such that the mean of each month is that asked for. */
function addMonths(air: Float64Array, means: ArrayLike<number>): Float64Array {
  // Where each hour lies: after the middle of which month, and how far on to the next.
  const after = new Uint8Array(HOURS);
  const share = new Float64Array(HOURS);
  for (let hour = 0; hour < HOURS; hour++) {
    const at = hour + 0.5;
    let month = 11;
    while (month >= 0 && MIDDLES[month]! > at) month--;
    const from = month < 0 ? MIDDLES[11]! - HOURS : MIDDLES[month]!;
    const to = month === 11 ? MIDDLES[0]! + HOURS : MIDDLES[month + 1]!;
    after[hour] = (month + 12) % 12;
    share[hour] = (at - from) / (to - from);
  }
  const nodes = Float64Array.from(means);
  const whole = new Float64Array(HOURS);
  // Each round takes off at least half of what is left: lines between nodes weigh a month's own node with about 3/4.
  for (let round = 0; round < 60; round++) {
    for (let hour = 0; hour < HOURS; hour++) {
      const before = nodes[after[hour]!]!;
      whole[hour] = air[hour]! + before + share[hour]! * (nodes[(after[hour]! + 1) % 12]! - before);
    }
    const found = monthlyMeans(whole);
    for (let month = 0; month < 12; month++) nodes[month] = nodes[month]! + means[month]! - found[month]!;
  }
  return whole;
}

/** Saturation pressure of water vapour over that at 0 °C. Alduchov & Eskridge (1996), 17.625 T / (243.04 + T). [-] */
const saturation = (air: number): number => Math.exp((17.625 * air) / (243.04 + air));

/**
 * Hourly relative humidity: vapour that changes from day to day only, so that humidity falls as the day warms; the mean of
 * each month is that asked for. The vapour follows the saturation at the mean of the 24 h about each hour.
 */
export function hourlyHumidity(air: Float64Array, means: ArrayLike<number>): Float64Array {
  const dayMean = new Float64Array(HOURS);
  let sum = 0;
  for (let hour = -12; hour < 12; hour++) sum += air[(hour + HOURS) % HOURS]!;
  for (let hour = 0; hour < HOURS; hour++) {
    dayMean[hour] = sum / 24;
    sum += air[(hour + 12) % HOURS]! - air[(hour - 12 + HOURS) % HOURS]!;
  }
  const [full, ofDay] = [air.map(saturation), dayMean.map(saturation)];
  const humidity = new Float64Array(HOURS);
  for (let month = 0; month < 12; month++) {
    const from = MONTH_DAYS[month]! * 24;
    const to = MONTH_DAYS[month + 1]! * 24;
    const fill = (vapour: number): number => {
      let total = 0;
      for (let hour = from; hour < to; hour++) {
        humidity[hour] = Math.min((vapour * ofDay[hour]!) / full[hour]!, 1);
        total += humidity[hour]!;
      }
      return total - means[month]! * (to - from);
    };
    fill(rise(fill, 0, 10));
  }
  return humidity;
}

/** Dew point of air with a relative humidity above 0.001; inverse of the saturation pressure above. [°C] */
export function dewPointOf(air: number, humidity: number): number {
  const x = Math.log(Math.max(humidity, 0.001)) + (17.625 * air) / (243.04 + air);
  return (243.04 * x) / (17.625 - x);
}

/** Hourly wind with a Rayleigh distribution, the length of two normal components with memory. Judgement, no source. */
export function hourlyWind(means: ArrayLike<number>, gauss: Gauss): Float64Array {
  const east = persistent(HOURS, WIND_MEMORY, gauss);
  const north = persistent(HOURS, WIND_MEMORY, gauss);
  const wind = east.map((value, hour) => Math.hypot(value, north[hour]!));
  const found = monthlyMeans(wind);
  for (let month = 0; month < 12; month++) {
    const factor = means[month]! / found[month]!;
    for (let hour = MONTH_DAYS[month]! * 24; hour < MONTH_DAYS[month + 1]! * 24; hour++)
      wind[hour] = wind[hour]! * factor;
  }
  return wind;
}
