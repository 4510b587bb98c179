// What the sun does in each hour of a synthetic year.
import { extraterrestrialNormal } from '../sun/extraterrestrial.ts';
import { INSTANTS, sunInstants } from '../sun/instants.ts';
import { hourStarts } from '../time/hours.ts';
import type { WeatherYear } from '../year.ts';
import { type HourlyCourse, hourOverDay } from './hourly-light.ts';

const RAD = Math.PI / 180;

/** Course of the sun through the hours of a year whose rows are means ({@link WeatherYear.irradianceMidpoint} 0.5). */
export function hourlyCourse(year: Pick<WeatherYear, 'site' | 'calendarYears'>): HourlyCourse {
  const starts = hourStarts(year);
  const { latitude } = year.site;
  const positions = sunInstants({ ...year, irradianceMidpoint: 0.5 }, starts);
  const column = () => new Float64Array(starts.length);
  const course = { top: column(), shape: column(), sinHeight: column(), fromNoon: column() };
  const sinLatitude = Math.sin(latitude * RAD);
  const cosLatitude = Math.max(Math.cos(latitude * RAD), 1e-6);
  for (let hour = 0; hour < starts.length; hour++) {
    const normal = extraterrestrialNormal(starts[hour]!);
    let lit = 0;
    let cosines = 0;
    let shaped = 0;
    let away = 0;
    for (let step = 0; step < INSTANTS; step++) {
      const at = 2 * (INSTANTS * hour + step);
      const cosZenith = Math.cos(positions[at]! * RAD);
      if (!(cosZenith > 0)) continue;
      // Declination and hour angle back from zenith and azimuth, so that there is one sun only.
      const sinZenith = Math.sin(positions[at]! * RAD);
      const sinDeclination = sinLatitude * cosZenith + cosLatitude * sinZenith * Math.cos(positions[at + 1]! * RAD);
      const cosDeclination = Math.sqrt(1 - sinDeclination * sinDeclination);
      const cosHour = within((cosZenith - sinLatitude * sinDeclination) / (cosLatitude * cosDeclination));
      const sunset = Math.acos(within((-sinLatitude * sinDeclination) / (cosLatitude * cosDeclination)));
      lit++;
      cosines += cosZenith;
      shaped += cosZenith * Math.max(hourOverDay(cosHour, sunset), 0);
      away += Math.acos(cosHour) / (15 * RAD);
    }
    if (lit === 0) continue;
    course.top[hour] = (normal * cosines) / INSTANTS;
    course.shape[hour] = shaped / cosines;
    course.sinHeight[hour] = cosines / lit;
    course.fromNoon[hour] = away / lit;
  }
  return course;
}

const within = (cosine: number): number => Math.min(Math.max(cosine, -1), 1);
