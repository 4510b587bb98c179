// Looks a weather year over, and changes nothing.
import { extraterrestrialNormalOnDay } from '../sun/extraterrestrial.ts';
import { hourlySun } from '../sun/hourly.ts';
import { sunPositionInto } from '../sun/position.ts';
import { hourStarts } from '../time/hours.ts';
import type { WeatherYear } from '../year.ts';
import { checkAir, checkMoisture, correlation } from './air.ts';
import { checkClock } from './clock.ts';
import { Collector } from './collector.ts';
import { checkLight } from './light.ts';
import { checkAmounts, checkPlace } from './plausible.ts';
import { checkRepeats } from './repeats.ts';
import type { QualityFinding, QualityReport, WeatherVerdict } from './report.ts';

/** Latitude below which the two hemispheres have too like a year to tell them apart. Judgement. [°] */
const TROPICAL = 10;

/** How much better the opposite hemisphere must fit. Judgement. [-] */
const BETTER_FIT = 0.2;

/** Shift of the light from which a year on a slope to the south is changed too. Judgement. [h] */
const WRONG_CLOCK = 0.75;

const HOUR_MS = 3_600_000;

/**
 * Checks a weather year against the sun and against itself: limits of the Baseline Surface Radiation Network, closure, light at
 * night, sensors that stand still, days that repeat, whether clock, longitude and hemisphere are those of the light, and whether units,
 * columns and signs can be right. A fault changes what a year gives; {@link vetWeather} stops at one.
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
  const looked = lookOver(year);
  return {
    source: year.source,
    site: year.site.name,
    verdict: verdictOf(looked.findings),
    ...looked,
    ghi: year.columns.ghi.slice(),
    sunriseSunset: sunriseSunset(year),
  };
}

/** What a check finds, without what only its picture needs. */
export function lookOver(year: WeatherYear): Pick<QualityReport, 'findings' | 'clock' | 'season' | 'marks'> {
  const sun = hourlySun(year);
  const found = new Collector();
  const measured = !year.assumptions.some(({ code }) => code === 'split-by-erbs' || code === 'light-from-closure');
  const clock = checkClock(year, sun, measured);
  const top = daySums(sun.light.map((value, hour) => value * sun.normal[hour]!));
  const season = checkSeason(year, top, found);
  if (clock.causes.length > 0) {
    const text = `The light comes at another time than the sun: ${clock.causes.join('; or ')} (± ${clock.uncertainty.toFixed(2)} h, ${clock.clearDays} clear days).`;
    const late = clock.lateByClosure ?? clock.late ?? 0;
    const off = Math.max(Math.abs(late), Math.abs(clock.late ?? 0));
    found.addWhole('clock', off > WRONG_CLOCK ? 'fault' : 'doubt', text, { late_h: late });
  }
  checkAmounts(year, sun, found);
  checkLight(year, sun, found);
  // A hemisphere that is wrong explains a summer that is.
  const seasonIsRight = !found.findings.some(({ code }) => code === 'hemisphere');
  if (seasonIsRight) checkAir(year, top, clock.causes.length === 0, found);
  checkMoisture(year, found);
  checkPlace(year, found);
  checkRepeats(year, found);
  const findings = found.findings.toSorted((a, b) => WEIGHTS.indexOf(a.weight) - WEIGHTS.indexOf(b.weight));
  return { findings, clock, season, marks: found.marks };
}

const WEIGHTS: readonly QualityFinding['weight'][] = ['fault', 'doubt', 'note'];

/** A year's verdict in a sentence. */
function verdictOf(findings: readonly QualityFinding[]): WeatherVerdict {
  const faults = findings.filter(({ weight }) => weight === 'fault').length;
  const doubts = findings.filter(({ weight }) => weight === 'doubt').length;
  const many = (count: number, word: string) => `${count === 1 ? 'one' : count} ${word}${count === 1 ? '' : 's'}`;
  const counted = [faults > 0 ? many(faults, 'fault') : '', doubts > 0 ? many(doubts, 'doubt') : ''].filter(Boolean);
  const text = [faults > 0 ? 'not usable' : 'usable', counted.join(', ')].filter(Boolean).join('; ');
  return { usable: faults === 0, faults, doubts, text };
}

/** Whether the light of the year goes with the sun of the stated hemisphere. */
function checkSeason({ site, columns }: WeatherYear, top: Float64Array, found: Collector): [number, number] {
  const daily = daySums(columns.ghi);
  const here = correlation(daily, top);
  const opposite = correlation(
    daily,
    top.map((_, day) => dailyTop(-site.latitude, day + 1)),
  );
  if (Math.abs(site.latitude) > TROPICAL && opposite > here + BETTER_FIT) {
    const text =
      `The light of the year goes with the sun of latitude ${-site.latitude}° (correlation ${opposite.toFixed(2)}), not ` +
      `with that of ${site.latitude}° (${here.toFixed(2)}): the latitude may have the wrong sign, or the months begin in July.`;
    found.addWhole('hemisphere', 'fault', text, { here, opposite });
  }
  return [here, opposite];
}

/** Light of a day at the top of the air on the horizontal, by Cooper's declination. [Wh/m²] */
function dailyTop(latitude: number, day: number): number {
  const declination = (23.45 * Math.sin((2 * Math.PI * (284 + day)) / 365) * Math.PI) / 180;
  const phi = (latitude * Math.PI) / 180;
  const set = Math.acos(Math.min(Math.max(-Math.tan(phi) * Math.tan(declination), -1), 1));
  const mean = Math.cos(phi) * Math.cos(declination) * Math.sin(set) + set * Math.sin(phi) * Math.sin(declination);
  return (24 / Math.PI) * extraterrestrialNormalOnDay(day) * mean;
}

function daySums(hourly: Float64Array): Float64Array {
  const sums = new Float64Array(365);
  for (let hour = 0; hour < hourly.length; hour++) {
    const day = Math.floor(hour / 24);
    sums[day] = sums[day]! + hourly[hour]!;
  }
  return sums;
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
