import { parseWeather, type ReadOptions, WeatherError, type WeatherIssue } from '@noonloop/weather-io';

/** Faults that reading a text gives; fails the test when it reads, or throws something else. */
export function faultsOf(text: string, options?: ReadOptions): readonly WeatherIssue[] {
  try {
    parseWeather(text, options);
  } catch (error) {
    if (error instanceof WeatherError) return error.issues;
    throw error;
  }
  throw new Error('The text was read, though it is faulty.');
}
