import type { WeatherYear } from '@noonloop/weather-io';
import { shareSun } from './track.ts';

/** A weather year whose light, global, beam and diffuse alike, is multiplied by a factor of each day; that of its own step too. @internal */
export function scaledLight(weather: WeatherYear, factor: (day: number) => number): WeatherYear {
  const times = <T extends Record<'ghi' | 'dni' | 'dhi', Float64Array>>(light: T, perDay: number): T => {
    const scale = (column: Float64Array) => column.map((value, row) => value * factor(Math.trunc(row / perDay)));
    return { ...light, ghi: scale(light.ghi), dni: scale(light.dni), dhi: scale(light.dhi) };
  };
  const { columns, fineLight } = weather;
  const fine = fineLight && { fineLight: times(fineLight, 24 * fineLight.stepsPerHour) };
  const scaled = { ...weather, columns: times(columns, 24), ...fine };
  // A day without light has no sun in its track.
  if (Array.from({ length: 365 }, (_, day) => factor(day)).every((by) => by > 0)) shareSun(scaled, weather);
  return scaled;
}
