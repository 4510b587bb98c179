import {
  boilingPoint,
  type CollectorConditions,
  type CollectorRating,
  collectorEfficiency,
  DesignError,
  glycolMassFromVolume,
  mainsTemperature,
  stagnationTemperature,
  usefulPower,
} from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';

// Names and units in an error are for the reader alone: no formula would miss them, so they are looked at here.
const rating: CollectorRating = { area: 2, eta0: 0.75, a1: 3.5, a2: 0.015 };
const instant: CollectorConditions = { beamIrradiance: 800, meanFluidTemperature: 50, ambientTemperature: 20 };
const climate = { annualMean: 10, monthlyRange: 20, southern: false };
const rate = (change: Partial<CollectorRating>) => () => usefulPower({ ...rating, ...change }, instant);
const at = (change: Partial<CollectorConditions>) => () => usefulPower(rating, { ...instant, ...change });

const faults: readonly (readonly [string, string, () => unknown])[] = [
  ['area', 'm²', rate({ area: 0 })],
  ['eta0', '1', rate({ eta0: 1.1 })],
  ['a1', 'W/(m²·K)', rate({ a1: -1 })],
  ['a2', 'W/(m²·K²)', rate({ a2: 2 })],
  ['beamIrradiance', 'W/m²', at({ beamIrradiance: -1 })],
  ['diffuseIrradiance', 'W/m²', at({ diffuseIrradiance: 3000 })],
  ['beamModifier', '2', at({ beamModifier: 3 })],
  ['diffuseModifier', '2', at({ diffuseModifier: -0.1 })],
  ['meanFluidTemperature', '°C', at({ meanFluidTemperature: 501 })],
  ['ambientTemperature', '°C', at({ ambientTemperature: -91 })],
  ['windSpeed', 'm/s', at({ windSpeed: -1 })],
  ['longwaveIrradiance', 'W/m²', at({ longwaveIrradiance: 1001 })],
  ['temperatureRate', 'K/s', at({ temperatureRate: 11 })],
  ['irradiance', 'W/m²', () => stagnationTemperature(rating, -1, 20)],
  ['ambient', '°C', () => stagnationTemperature(rating, 800, 71)],
  ['glycolMassFraction', '0 to 0', () => boilingPoint('water', 0.1, 1e5)],
  ['absolutePressure', 'Pa', () => boilingPoint('propylene-glycol', 0.4, 22.0e6)],
  ['volumeFraction', '0 to 1', () => glycolMassFromVolume('propylene-glycol', 1.2)],
  ['annualMean', '°C', () => mainsTemperature({ ...climate, annualMean: 61 }, 10)],
  ['monthlyRange', 'K', () => mainsTemperature({ ...climate, monthlyRange: -1 }, 10)],
  ['dayOfYear', '1 to 366 d', () => mainsTemperature(climate, 367)],
];

describe('a number out of its range', () => {
  it.each(faults)('%s is named, with its unit %s', (path, unit, call) => {
    let caught: unknown;
    try {
      call();
    } catch (error) {
      caught = error;
    }
    expect(caught).toBeInstanceOf(DesignError);
    const [issue] = (caught as DesignError).issues;
    expect(issue).toMatchObject({ path });
    expect(issue!.expected).toContain(unit);
    expect(issue!.expected.trimEnd()).toBe(issue!.expected);
  });
});

describe('what only an instant with more than beam shows', () => {
  it('efficiency is over all the light, beam and diffuse [definition]', () => {
    const conditions = { ...instant, diffuseIrradiance: 200 };
    expect(collectorEfficiency(rating, conditions)).toBeCloseTo(usefulPower(rating, conditions) / (2 * 1000), 12);
  });

  it('without a long-wave value the sky is taken as black at the air’s temperature: a4 then does nothing [by hand]', () => {
    expect(usefulPower({ ...rating, a4: 0.9 }, instant)).toBeCloseTo(usefulPower(rating, instant), 9);
  });

  it('stagnation without light is the air’s temperature, also without a linear loss [by hand]', () => {
    expect(stagnationTemperature({ ...rating, a1: 0 }, 0, 15)).toBe(15);
  });
});
