import { describe, expect, it } from 'vitest';
import {
  beamEfficiency,
  collectorEfficiency,
  collectorOutlet,
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

  // 2 m² × 1e-6 × 30⁴ = 1.62 W above the air, and as much gained as far below it.
  it('loses a8 (t_m − t_a)⁴ where it is given [ISO 9806:2017, by hand]', () => {
    const lost = (fluid: number) => {
      const at = { ...noon, meanFluidTemperature: fluid };
      return usefulPower(panel, at) - usefulPower({ ...panel, a8: 1e-6 }, at);
    };
    expect(lost(50)).toBeCloseTo(1.62, 9);
    expect(lost(-10)).toBeCloseTo(-1.62, 9);
    expect(lost(120)).toBeCloseTo(200, 9);
  });

  it('refuses what is no number, a negative sun and an eta0 of 78 [requirement]', () => {
    expect(() => usefulPower(panel, { ...noon, ambientTemperature: Number.NaN })).toThrow(
      /ambientTemperature: found NaN/,
    );
    expect(() => usefulPower(panel, { ...noon, beamIrradiance: -5 })).toThrow(/beamIrradiance: found -5/);
    expect(() => usefulPower({ ...panel, eta0: 78 }, noon)).toThrow(/eta0: found 78.*0 to 1/);
  });
});

// Two certificates of ../shared/reference, invented, η0,hem by hand: 0.77 × 0.985 and 0.91 × 0.994.
describe('beamEfficiency [ISO 9806:2017, from memory: η0,hem = η0,b (0.85 + 0.15 K_d)]', () => {
  it.each([
    [0.75845, 0.9, 0.77],
    [0.90454, 0.96, 0.91],
  ])('η0,hem %f with K_d %f: η0,b %f', (hemispherical, diffuse, beam) => {
    expect(beamEfficiency(hemispherical, diffuse)).toBeCloseTo(beam, 12);
  });

  it('refuses a percentage', () => {
    expect(() => beamEfficiency(76, 0.9)).toThrow(/hemispherical: found 76/);
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

  it('in the dark is the air’s, and is refused for a collector without loss [requirement]', () => {
    expect(stagnationTemperature(panel, 0, 10)).toBe(10);
    expect(() => stagnationTemperature({ ...panel, a1: 0, a2: 0 }, 500, 10)).toThrow(/a1: found 0, with a2 0/);
  });
});

describe('collectorEfficiency', () => {
  it('in the dark is refused: there is none [requirement]', () => {
    expect(() => collectorEfficiency(panel, { ...noon, beamIrradiance: 0 })).toThrow(/more than 0 W\/m²/);
  });
});

describe('collectorOutlet', () => {
  it('without any loss all light warms the stream [closed form: 20 °C + 700 W/m² × 2 m²/(70 W/K) = 40 °C]', () => {
    expect(collectorOutlet({ area: 2, absorbed: 700, a1: 0, a2: 0 }, 20, 10, 70)).toBeCloseTo(40, 12);
    // The same where losses are too small to count.
    expect(collectorOutlet({ area: 2, absorbed: 700, a1: 1e-7, a2: 0 }, 20, 10, 70)).toBeCloseTo(40, 5);
  });
});
