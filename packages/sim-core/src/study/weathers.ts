import type { WeatherYear } from '@noonloop/weather-io';
import type { DesignIssue } from '../input/errors.ts';
import { issue } from './request.ts';

const HOURS = 8760;

/** One weather year or several, as a list; what is none becomes a fault. */
export function weatherList(
  issues: DesignIssue[],
  weather: WeatherYear | readonly WeatherYear[],
): readonly WeatherYear[] {
  const list: readonly WeatherYear[] = Array.isArray(weather) ? weather : [weather as WeatherYear];
  const expected = 'a weather year of 8760 hours';
  const remedy = 'Give what readWeather or synthesizeYear returns.';
  if (list.length === 0) issues.push(issue('weather', list, 'at least one weather year', remedy));
  list.forEach((year, index) => {
    if (year?.columns?.dryBulb?.length !== HOURS) issues.push(issue(`weather[${index}]`, year, expected, remedy));
  });
  return list;
}
