// The sun of a year is computed once, for all years of the same place and calendar.
import { describe, expect, it } from 'vitest';
import { keptInstants, sunInstants } from '../../packages/weather-io/src/sun/instants.ts';
import { sunPosition } from '../../packages/weather-io/src/sun/position.ts';

const site = { name: 'invented', latitude: 41, longitude: -77.5, elevation: 300, utcOffset: -5 };
const year = (changed: object = {}, calendarYear = 2023) => ({
  site: { ...site, ...changed },
  calendarYears: new Int16Array(8760).fill(calendarYear),
  irradianceMidpoint: 0.5,
});

describe('instants of the sun', () => {
  const first = year();
  const positions = sunInstants(first);

  it('are those of the year that asked before, where place and calendar are the same [requirement]', () => {
    const second = year();
    expect(keptInstants(second)).toBeUndefined();
    expect(sunInstants(second)).toBe(positions);
    expect(keptInstants(second)).toBe(positions);
  });

  it.each([
    ['latitude', year({ latitude: 40 })],
    ['longitude', year({ longitude: -77 })],
    ['zone', year({ utcOffset: -6 })],
    ['calendar', year({}, 2022)],
    ['midpoint', { ...year(), irradianceMidpoint: 0 }],
  ])('are anew those of another %s [requirement: as the sun’s place by itself]', (_, other) => {
    sunInstants(first);
    const { calendarYears, irradianceMidpoint, site } = other;
    // The first of six parts of noon on the first day.
    const middle = Date.UTC(calendarYears[0]!, 0, 1) + (12 - site.utcOffset + irradianceMidpoint) * 3_600_000;
    const { zenith } = sunPosition({ ...site, time: middle - (5 / 12) * 3_600_000 });
    expect(sunInstants(other)[2 * 6 * 12]).toBeCloseTo(zenith, 9);
  });
});
