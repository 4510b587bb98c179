// Whether the air of a year can be air: warm by day and in summer, and as moist as it says.
import { amount, said } from '../said.ts';
import type { WeatherYear } from '../year.ts';
import type { Collector } from './collector.ts';
import { meanOf } from './plausible.ts';

/** By how much afternoons may be colder than dawn in the mean of the year. Judgement; real years are 1.8 to 12 K warmer. [K] */
const UPSIDE_DOWN = 0.5;

/** Latitude from which summers are warmer than winters, and how far the air may go against the sun. Judgement. */
const SEASONAL = 23.5;
const AGAINST_SUN = -0.4;

/** Days by which the air follows the sun. Common practice. [d] */
const LAG = 30;

/** Departure below which the air does not change through the year. [K] */
const STILL = 0.5;

/** Departure of the dew point from that of air and humidity, in the median; files of five places have up to 0.1. Judgement. [K] */
const DEW_OFF = 2;

/** Share of the hours that speaks of the year. [-] */
const MOST = 0.9;
const SOME = 0.05;

/** Dry bulb by day and season. @param top - Daily light at the top of the air. [Wh/m²] */
export function checkAir(
  { site, columns }: WeatherYear,
  top: Float64Array,
  clockIsRight: boolean,
  found: Collector,
): void {
  const { dryBulb } = columns;
  const mean = meanOf(dryBulb);
  const spread = Math.sqrt(dryBulb.reduce((sum, value) => sum + (value - mean) ** 2, 0) / dryBulb.length);
  if (spread < STILL) {
    found.addWhole('air', 'fault', said`The dry bulb is ${amount(mean, '°C', 1)} all year.`, { mean_degC: mean });
    return;
  }
  const early = site.longitude / 15 - site.utcOffset;
  let [afternoon, dawn] = [0, 0];
  for (let hour = 0; hour < dryBulb.length; hour++) {
    const solar = ((((hour % 24) + 0.5 + early) % 24) + 24) % 24;
    if (solar >= 13 && solar < 16) afternoon += dryBulb[hour]! / (3 * 365);
    else if (solar >= 3 && solar < 6) dawn += dryBulb[hour]! / (3 * 365);
  }
  if (clockIsRight && afternoon < dawn - UPSIDE_DOWN) {
    const text = said`Afternoons are ${amount(dawn - afternoon, 'K', 1)} colder than the hours before sunrise: the dry bulb may have the wrong sign.`;
    found.addWhole('air', 'fault', text, { afternoon_degC: afternoon, dawn_degC: dawn });
    return;
  }
  const daily = Float64Array.from({ length: 365 }, (_, day) => meanOf(dryBulb.subarray(day * 24, day * 24 + 24)));
  const season = correlation(
    daily,
    top.map((_, day) => top[(day - LAG + 365) % 365]!),
  );
  if (Math.abs(site.latitude) > SEASONAL && season < AGAINST_SUN) {
    const text = `The air is warm when the sun is low (correlation ${season.toFixed(2)}): its months, its sign or the hemisphere may be wrong.`;
    found.addWhole('air', 'fault', text, { correlation: season });
  }
}

/** Dew point of moist air by Magnus's formula (Sonntag 1990). @param humidity - 0 to 1. @returns [°C] */
function dewPointOf(air: number, humidity: number): number {
  const gamma = Math.log(Math.max(humidity, 1e-4)) + (17.62 * air) / (243.12 + air);
  return (243.12 * gamma) / (17.62 - gamma);
}

/** Humidity, dew point and dry bulb against each other. */
export function checkMoisture({ columns }: WeatherYear, found: Collector): void {
  const { dryBulb, dewPoint, relativeHumidity } = columns;
  if (relativeHumidity !== null) {
    const highest = relativeHumidity.reduce((a, b) => Math.max(a, b));
    if (highest <= 0.05) {
      const text = `The relative humidity never passes ${(100 * highest).toFixed(1)} %: fractions may have been taken for per cent.`;
      found.addWhole('humidity', 'fault', text, { highest });
      return;
    }
  }
  if (dewPoint === null) return;
  let [alike, above] = [0, 0];
  for (let hour = 0; hour < dryBulb.length; hour++) {
    const difference = dryBulb[hour]! - dewPoint[hour]!;
    if (Math.abs(difference) < 0.05) alike++;
    else if (difference < -1) above++;
  }
  if (alike > MOST * dryBulb.length) {
    found.addWhole('dew-point', 'fault', 'The dry bulb is the dew point all year: one may stand for the other.', {
      hours: alike,
    });
    return;
  }
  if (above > SOME * dryBulb.length) {
    found.addWhole('dew-point', 'fault', `The dew point is above the dry bulb in ${above} hours.`, { hours: above });
    return;
  }
  if (relativeHumidity === null) return;
  const off = dewPoint
    .map((value, hour) => Math.abs(value - dewPointOf(dryBulb[hour]!, relativeHumidity[hour]!)))
    .sort();
  const median = off[off.length >> 1]!;
  if (median > DEW_OFF) {
    const text = said`Dry bulb, dew point and humidity do not go together: ${amount(median, 'K', 1)} apart in the median.`;
    found.addWhole('dew-point', 'fault', text, { median_K: median });
  }
}

/** Pearson's correlation; 0 where one of them does not vary. */
export function correlation(a: Float64Array, b: Float64Array): number {
  const [meanA, meanB] = [meanOf(a), meanOf(b)];
  let [product, squareA, squareB] = [0, 0, 0];
  for (let at = 0; at < a.length; at++) {
    product += (a[at]! - meanA) * (b[at]! - meanB);
    squareA += (a[at]! - meanA) ** 2;
    squareB += (b[at]! - meanB) ** 2;
  }
  return squareA > 0 && squareB > 0 ? product / Math.sqrt(squareA * squareB) : 0;
}
