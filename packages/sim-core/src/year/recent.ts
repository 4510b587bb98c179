/** Results that several runs share: computed once, the latest kept within a budget of memory. */
import type { WeatherYear } from '@noonloop/weather-io';

const MEGABYTE = 2 ** 20;

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
 * Hands out the kept result for a weather and whatever else it depends on, or computes it. What has not been asked for longest
 * goes first when the budget is full; the latest always stays.
 *
 * @param weather - Part of the key by identity: a weather year is not changed after its first use.
 * @param dependsOn - All else that the result depends on, of plain data.
 */
type Recent<T> = (weather: WeatherYear, dependsOn: unknown, compute: () => T) => T;

/**
 * Makes such a memory. Its results are read-only to all.
 *
 * @param budget_MB - Most that it keeps. [MB]
 * @param bytesOf - Size of one result. [B]
 */
export function recent<T>(budget_MB: number, bytesOf: (result: T) => number): Recent<T> {
  const known = new Map<string, T>();
  let bytes = 0;
  return (weather, dependsOn, compute) => {
    const key = `${numberOf(weather)} ${JSON.stringify(dependsOn)}`;
    const kept = known.get(key);
    if (kept !== undefined) {
      known.delete(key);
      known.set(key, kept);
      return kept;
    }
    const result = compute();
    known.set(key, result);
    bytes += bytesOf(result);
    for (const [oldest, value] of known) {
      if (bytes <= budget_MB * MEGABYTE || known.size === 1) break;
      known.delete(oldest);
      bytes -= bytesOf(value);
    }
    return result;
  };
}
