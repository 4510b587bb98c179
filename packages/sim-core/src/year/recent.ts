/** Results that several runs in one weather share. */
import type { WeatherYear } from '@noonloop/weather-io';
import { latest } from '../physics/latest.ts';

const numbers = new WeakMap<WeatherYear, number>();
let nextNumber = 0;

/** A number for each weather object, so that keys name a weather without keeping it alive. */
function numberOf(weather: WeatherYear): number {
  let number = numbers.get(weather);
  if (number === undefined) {
    number = nextNumber++;
    numbers.set(weather, number);
  }
  return number;
}

/**
 * Hands out the kept result for a weather and whatever else it depends on, or computes it.
 *
 * @param weather - Part of the key by identity: a weather year is not changed after its first use.
 * @param dependsOn - All else that the result depends on, of plain data.
 */
type Recent<T> = (weather: WeatherYear, dependsOn: unknown, compute: () => T) => T;

/** A memory as {@link latest} makes, of results that depend on the weather too; they are read-only to all. */
export function recent<T>(budget_MB: number, bytesOf: (result: T) => number): Recent<T> {
  const keep = latest(budget_MB, bytesOf);
  return (weather, dependsOn, compute) => keep([numberOf(weather), dependsOn], compute);
}
