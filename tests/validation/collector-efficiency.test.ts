import { describe, expect, it } from 'vitest';
import {
  collectorEfficiency,
  stagnationTemperature,
  usefulPower,
} from '../../packages/sim-core/src/physics/collector/index.ts';

// Formulas of ISO 9806:2017 evaluated in double precision with invented inputs (collector-and-tank.json, ten digits).
const steady = [
  [0.78, 3.6, 0.014, 800, 20, 20, 0.78, 624],
  [0.78, 3.6, 0.014, 800, 20, 40, 0.683, 546.4],
  [0.78, 3.6, 0.014, 800, 20, 60, 0.572, 457.6],
  [0.78, 3.6, 0.014, 800, 20, 90, 0.37925, 303.4],
  [0.62, 1.1, 0.004, 600, 5, 65, 0.486, 291.6],
  [0.7, 5, 0, 500, 25, 55, 0.4, 200],
] as const;

describe('steady efficiency, ISO 9806:2017 [independent evaluation, ten digits]', () => {
  it.each(steady)('eta0 %f, a1 %f, a2 %f, %f W/m², air %f °C, fluid %f °C → %f, %f W/m²', (...row) => {
    const [eta0, a1, a2, irradiance, air, fluid, efficiency, flux] = row;
    const rating = { area: 1, eta0, a1, a2 };
    const conditions = { beamIrradiance: irradiance, meanFluidTemperature: fluid, ambientTemperature: air };
    expect(collectorEfficiency(rating, conditions)).toBeCloseTo(efficiency, 10);
    expect(usefulPower(rating, conditions)).toBeCloseTo(flux, 7);
  });
});

describe('stagnation temperature, closed form of the ISO 9806 quadratic [independent evaluation, ten digits]', () => {
  it.each([
    [0.78, 3.6, 0.014, 1000, 30, 170.2126817],
    [0.62, 1.1, 0.004, 1000, 30, 309.5206829],
    [0.7, 5, 0, 1000, 30, 170],
    [0.78, 3.6, 0.014, 450, -5, 70.39435487],
  ])('eta0 %f, a1 %f, a2 %f, %f W/m², air %f °C → %f °C', (eta0, a1, a2, irradiance, air, expected) => {
    expect(stagnationTemperature({ area: 2, eta0, a1, a2 }, irradiance, air)).toBeCloseTo(expected, 6);
  });
});

describe('quasi-dynamic form, ISO 9806:2017 from memory [independent evaluation, ten digits]', () => {
  it('glazed, wind 4.5 m/s, warming 0.002 K/s → 426.5271383 W/m²', () => {
    const rating = { area: 1, eta0: 0.77, a1: 3.4, a2: 0.012, a3: 0.05, a4: 0.2, a5: 8000, a6: 0.002, a7: 0 };
    const sun = { beamIrradiance: 650, diffuseIrradiance: 150, beamModifier: 0.98, diffuseModifier: 0.9 };
    const air = { ambientTemperature: 18, windSpeed: 4.5, longwaveIrradiance: 320 };
    const power = usefulPower(rating, { ...sun, ...air, meanFluidTemperature: 52, temperatureRate: 0.002 });
    expect(power).toBeCloseTo(426.5271383, 6);
  });

  it('unglazed at night, wind 2 m/s → −17.62452071 W/m²', () => {
    const rating = { area: 1, eta0: 0.91, a1: 10, a2: 0, a3: 1.5, a4: 0.5, a5: 15000, a6: 0.03, a7: 0.01 };
    const sun = { beamIrradiance: 0, diffuseIrradiance: 0, beamModifier: 1, diffuseModifier: 0.96 };
    const air = { ambientTemperature: 4, windSpeed: 2, longwaveIrradiance: 250 };
    expect(usefulPower(rating, { ...sun, ...air, meanFluidTemperature: 1 })).toBeCloseTo(-17.62452071, 7);
  });
});
