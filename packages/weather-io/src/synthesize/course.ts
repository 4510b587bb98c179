// What the sun does in each hour of a synthetic year.
import { extraterrestrialNormal } from '../sun/extraterrestrial.ts';
import { sunPositionInto } from '../sun/position.ts';
import { hourStarts } from '../time/hours.ts';
import type { WeatherYear } from '../year.ts';
import { type HourlyCourse, hourOverDay } from './hourly-light.ts';

const RAD = Math.PI / 180;
const HOUR_MS = 3_600_000;

/** Instants in an hour at which the sun is looked at: as many as where an hour is split into beam and diffuse. */
const STEPS = 6;

/** Course of the sun through the hours of a year whose rows are means ({@link WeatherYear.irradianceMidpoint} 0.5). */
export function hourlyCourse(year: Pick<WeatherYear, 'site' | 'calendarYears'>): HourlyCourse {
  const starts = hourStarts(year);
  const { latitude, longitude } = year.site;
  const column = () => new Float64Array(starts.length);
  const course = { top: column(), shape: column(), sinHeight: column(), fromNoon: column() };
  const position = new Float64Array(2);
  const sinLatitude = Math.sin(latitude * RAD);
  const cosLatitude = Math.max(Math.cos(latitude * RAD), 1e-6);
  for (let hour = 0; hour < starts.length; hour++) {
    const normal = extraterrestrialNormal(starts[hour]!);
    let lit = 0;
    let cosines = 0;
    let shaped = 0;
    let away = 0;
    for (let step = 0; step < STEPS; step++) {
      sunPositionInto(position, 0, starts[hour]! + ((step + 0.5) / STEPS) * HOUR_MS, latitude, longitude);
      const cosZenith = Math.cos(position[0]! * RAD);
      if (!(cosZenith > 0)) continue;
      // Declination and hour angle back from zenith and azimuth, so that there is one sun only.
      const sinZenith = Math.sin(position[0]! * RAD);
      const sinDeclination = sinLatitude * cosZenith + cosLatitude * sinZenith * Math.cos(position[1]! * RAD);
      const cosDeclination = Math.sqrt(1 - sinDeclination * sinDeclination);
      const cosHour = within((cosZenith - sinLatitude * sinDeclination) / (cosLatitude * cosDeclination));
      const sunset = Math.acos(within((-sinLatitude * sinDeclination) / (cosLatitude * cosDeclination)));
      lit++;
      cosines += cosZenith;
      shaped += cosZenith * Math.max(hourOverDay(cosHour, sunset), 0);
      away += Math.acos(cosHour) / (15 * RAD);
    }
    if (lit === 0) continue;
    course.top[hour] = (normal * cosines) / STEPS;
    course.shape[hour] = shaped / cosines;
    course.sinHeight[hour] = cosines / lit;
    course.fromNoon[hour] = away / lit;
  }
  return course;
}

const within = (cosine: number): number => Math.min(Math.max(cosine, -1), 1);
