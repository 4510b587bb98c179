import { describe, expect, it } from 'vitest';
import {
  collectorEfficiency,
  stagnationTemperature,
  usefulPower,
} from '../../../../packages/sim-core/src/physics/collector/index.ts';

const panel = { area: 2, eta0: 0.75, a1: 3.5, a2: 0.015 }; // invented
const noon = { beamIrradiance: 800, meanFluidTemperature: 50, ambientTemperature: 20 };

describe('usefulPower', () => {
  it('of the documentation’s example is 963 W [arithmetic: 2 (600 − 105 − 13.5)]', () => {
    expect(usefulPower(panel, noon)).toBeCloseTo(963, 9);
  });

  it('below ambient gains by a2 what it loses above it: d |d| [ours]', () => {
    const dark = { beamIrradiance: 0, ambientTemperature: 20 };
    const warm = usefulPower(panel, { ...dark, meanFluidTemperature: 35 });
    const cold = usefulPower(panel, { ...dark, meanFluidTemperature: 5 });
    expect(warm).toBeLessThan(0);
    expect(cold).toBeCloseTo(-warm, 9);
  });

  it('loses a8 (T⁴ − Ta⁴) where it is given [arithmetic]', () => {
    const lost = usefulPower(panel, noon) - usefulPower({ ...panel, a8: 1e-8 }, noon);
    expect(lost).toBeCloseTo(2e-8 * (323.15 ** 4 - 293.15 ** 4), 9);
  });

  it('refuses what is no number, a negative sun and an eta0 of 78', () => {
    expect(() => usefulPower(panel, { ...noon, ambientTemperature: Number.NaN })).toThrow(
      /ambientTemperature: found NaN/,
    );
    expect(() => usefulPower(panel, { ...noon, beamIrradiance: -5 })).toThrow(/beamIrradiance: found -5/);
    expect(() => usefulPower({ ...panel, eta0: 78 }, noon)).toThrow(/eta0: found 78.*0 to 1/);
  });
});

describe('stagnationTemperature', () => {
  it('is where the useful power is 0, with circumstances of all kinds [definition]', () => {
    for (const irradiance of [1, 300, 1200]) {
      for (const rating of [panel, { ...panel, a2: 0 }, { ...panel, a1: 0 }]) {
        const temperature = stagnationTemperature(rating, irradiance, 10);
        const still = { beamIrradiance: irradiance, meanFluidTemperature: temperature, ambientTemperature: 10 };
        expect(usefulPower(rating, still)).toBeCloseTo(0, 8);
      }
    }
  });

  it('in the dark is the air’s, and is refused for a collector without loss', () => {
    expect(stagnationTemperature(panel, 0, 10)).toBe(10);
    expect(() => stagnationTemperature({ ...panel, a1: 0, a2: 0 }, 500, 10)).toThrow(/a1: found 0, with a2 0/);
  });
});

describe('collectorEfficiency', () => {
  it('in the dark is refused: there is none', () => {
    expect(() => collectorEfficiency(panel, { ...noon, beamIrradiance: 0 })).toThrow(/more than 0 W\/m²/);
  });
});
