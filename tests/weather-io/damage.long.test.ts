import { checkWeather } from '@noonloop/weather-io';
import { describe, expect, it } from 'vitest';
import { climateYear } from './damage.ts';

describe('more years that are no fault of anyone [synthetic climates]', () => {
  it.each([
    [22, 26, 5, 0.65, 0.4],
    [50, 9, 9, 0.3, 0.85],
    [58, 5, 3, 0.35, 0.85],
  ] as const)('latitude %f°: usable, no doubt', (latitude, mean, swing, clearness, humidity) => {
    expect(checkWeather(climateYear(latitude, mean, swing, clearness, humidity)).verdict.text).toBe('usable');
  });
});
