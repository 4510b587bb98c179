import { describe, expect, it } from 'vitest';
import { mainsTemperature } from '../../packages/sim-core/src/physics/draw/mains.ts';

const MID_MONTHS = [15, 46, 74, 105, 135, 166, 196, 227, 258, 288, 319, 349];

describe('mainsTemperature, Burch & Christensen 2007', () => {
  it.each([
    [
      '10 °C, 25 K (50 °F, 45 °F), north',
      { annualMean: 10, monthlyRange: 25, southern: false },
      [8.285, 7.587, 8.333, 10.471, 13.306, 16.234, 18.307, 19.083, 18.262, 16.157, 13.218, 10.395],
    ],
    [
      '10 °C, 20 K, north',
      { annualMean: 10, monthlyRange: 20, southern: false },
      [9.294, 8.736, 9.333, 11.043, 13.311, 15.654, 17.312, 17.933, 17.276, 15.593, 13.241, 10.983],
    ],
    [
      '16 °C, 12 K, south',
      { annualMean: 16, monthlyRange: 12, southern: true },
      [22.576, 22.659, 21.935, 20.454, 18.72, 17.1, 16.12, 15.989, 16.787, 18.237, 20.03, 21.586],
    ],
  ])('%s: twelve mid-month days to 0.001 K [worked apart in °F]', (_, climate, expected) => {
    const ours = MID_MONTHS.map((day) => mainsTemperature(climate, day));
    ours.forEach((temperature, month) => {
      expect(Math.abs(temperature - expected[month]!)).toBeLessThan(6e-4);
    });
  });
});
