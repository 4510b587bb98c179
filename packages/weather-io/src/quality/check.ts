// Looks a weather year over, and changes nothing.
import { hourlySun } from '../sun/hourly.ts';
import { sunPositionInto } from '../sun/position.ts';
import { hourStarts } from '../time/hours.ts';
import type { WeatherYear } from '../year.ts';
import { checkClock } from './clock.ts';
import { Collector } from './collector.ts';
import { checkLight } from './light.ts';
import { checkRepeats } from './repeats.ts';
import type { QualityReport } from './report.ts';

/** Latitude below which the two hemispheres have too like a year to tell them apart. Judgement. [°] */
const TROPICAL = 10;

/** How much better the opposite hemisphere must fit. Judgement. [-] */
const BETTER_FIT = 0.2;

const HOUR_MS = 3_600_000;

/**
 * Checks a weather year against the sun and against itself: limits of the Baseline Surface Radiation Network, closure, light at
 * night, sensors that stand still, days that repeat, and whether clock, longitude and hemisphere are those of the light.
 *
 * Made for years from files. A file whose beam and diffuse were split from its global irradiance closes by itself, so that
 * its clock is tested by the symmetry of clear days alone.
 *
 * @param year - Not changed.
 * @returns Findings with counts and worst rows; `qualityChart` draws them.
 * @example
 * const report = checkWeather(await readWeather('docs/examples/weather/invented-valley.csv'));
 * report.clock.causes; // [], the clock is right
 */
export function checkWeather(year: WeatherYear): QualityReport {
  const sun = hourlySun(year);
  const found = new Collector();
  const measured = !year.assumptions.some(({ code }) => code === 'split-by-erbs' || code === 'light-from-closure');
  const clock = checkClock(year, sun, measured);
  const season = checkSeason(year, sun, found);
  if (clock.causes.length > 0) {
    const text = `The light comes at another time than the sun: ${clock.causes.join('; or ')} (± ${clock.uncertainty.toFixed(2)} h, ${clock.clearDays} clear days).`;
    found.addWhole('clock', text);
  }
  checkLight(year, sun, found);
  checkRepeats(year, found);
  return {
    source: year.source,
    site: year.site.name,
    findings: found.findings,
    clock,
    season,
    ghi: year.columns.ghi.slice(),
    sunriseSunset: sunriseSunset(year),
    marks: found.marks,
  };
}

/** Whether the light of the year goes with the sun of the stated hemisphere. */
function checkSeason(year: WeatherYear, sun: ReturnType<typeof hourlySun>, found: Collector): [number, number] {
  const { site } = year;
  const daily = daySums(year.columns.ghi);
  const mirrored = hourlySun({ ...year, site: { ...site, latitude: -site.latitude } });
  const topOf = ({ light, normal }: typeof sun) => daySums(light.map((value, hour) => value * normal[hour]!));
  const here = correlation(daily, topOf(sun));
  const opposite = correlation(daily, topOf(mirrored));
  if (Math.abs(site.latitude) > TROPICAL && opposite > here + BETTER_FIT) {
    const text =
      `The light of the year goes with the sun of latitude ${-site.latitude}° (correlation ${opposite.toFixed(2)}), not ` +
      `with that of ${site.latitude}° (${here.toFixed(2)}): the latitude may have the wrong sign, or the months begin in July.`;
    found.addWhole('hemisphere', text);
  }
  return [here, opposite];
}

function daySums(hourly: Float64Array): Float64Array {
  const sums = new Float64Array(365);
  for (let hour = 0; hour < hourly.length; hour++) {
    const day = Math.floor(hour / 24);
    sums[day] = sums[day]! + hourly[hour]!;
  }
  return sums;
}

/** Pearson's correlation; 0 where one of them does not vary. */
function correlation(a: Float64Array, b: Float64Array): number {
  const mean = (list: Float64Array) => list.reduce((sum, value) => sum + value, 0) / list.length;
  const [meanA, meanB] = [mean(a), mean(b)];
  let [product, squareA, squareB] = [0, 0, 0];
  for (let at = 0; at < a.length; at++) {
    product += (a[at]! - meanA) * (b[at]! - meanB);
    squareA += (a[at]! - meanA) ** 2;
    squareB += (b[at]! - meanB) ** 2;
  }
  return squareA > 0 && squareB > 0 ? product / Math.sqrt(squareA * squareB) : 0;
}

/** Clock times at which the true altitude of the sun's centre passes 0, from cos Z at whole hours. */
function sunriseSunset(year: WeatherYear): Float64Array {
  const starts = hourStarts(year);
  const { latitude, longitude } = year.site;
  const times = new Float64Array(730).fill(Number.NaN);
  const position = new Float64Array(2);
  for (let day = 0; day < 365; day++) {
    let before = 0;
    for (let hour = 0; hour <= 24; hour++) {
      sunPositionInto(position, 0, starts[day * 24]! + hour * HOUR_MS, latitude, longitude);
      const height = 90 - position[0]!;
      if (hour > 0 && height >= 0 !== before >= 0) {
        times[2 * day + (height >= 0 ? 0 : 1)] = hour - 1 + before / (before - height);
      }
      before = height;
    }
  }
  return times;
}
