/** A weather year in memory that all threads see at once. */
import type { WeatherColumns, WeatherYear } from '@noonloop/weather-io';

/**
 * A copy of a weather year whose columns lie in shared memory: a thread that is sent it gets a view and no copy.
 *
 * @param weather - One year; not changed.
 */
export function shareWeather(weather: WeatherYear): WeatherYear {
  const columns = Object.fromEntries(
    Object.entries(weather.columns).map(([name, column]: [string, Float64Array | null]) => [
      name,
      column === null ? null : sharedCopy(column),
    ]),
  ) as unknown as WeatherColumns;
  const years = new Int16Array(new SharedArrayBuffer(weather.calendarYears.byteLength));
  years.set(weather.calendarYears);
  const { fineLight } = weather;
  const fine = fineLight && {
    ...fineLight,
    ghi: sharedCopy(fineLight.ghi),
    dni: sharedCopy(fineLight.dni),
    dhi: sharedCopy(fineLight.dhi),
  };
  return { ...weather, columns, calendarYears: years, ...(fine && { fineLight: fine }) };
}

function sharedCopy(column: Float64Array): Float64Array {
  const copy = new Float64Array(new SharedArrayBuffer(column.byteLength));
  copy.set(column);
  return copy;
}
