import { DesignError } from '@noonloop/sim-core';
import {
  lossFromStandbyShare,
  lossFromStandingLoss,
  lossFromUniformEnergyFactor,
  lossOfLabelClass,
} from '@noonloop/sim-core/formulas';
import { describe, expect, it } from 'vitest';
import { compileHeater, stepHeater } from '../../packages/sim-core/src/physics/backup/heater.ts';
import { WATER_HEAT_CAPACITY } from '../../packages/sim-core/src/physics/tank/tank.ts';
import { heaterDesign } from '../sim-core/physics/backup/parts.ts';

const gallon = 0.003785411784;
const celsius = (fahrenheit: number) => (fahrenheit - 32) / 1.8;

describe('standing loss of European tests at 45 K [definition: S/(24 h · 45 K)]', () => {
  it.each([
    [1.08, 1],
    [2, 1.85185],
    [2.7, 2.5],
  ])('%d kWh in 24 h → %d W/K', (energy_kWh, expected) => {
    expect(lossFromStandingLoss(energy_kWh * 3.6e6)).toBeCloseTo(expected, 5);
  });

  it('a heater at 65 °C in 20 °C with that coefficient loses the labelled energy in a day', () => {
    const heater = compileHeater(
      heaterDesign({
        kind: 'stored-electric',
        carrier: 'electricity',
        setTemperature: 65,
        burnerPower: 2000,
        burnerEfficiency: 1,
        lossCoefficient: lossFromStandingLoss(1.6 * 3.6e6),
      }),
    );
    let heat = 0;
    for (let hour = 0; hour < 24; hour++) {
      stepHeater(heater, 0, 0, 3600);
      heat += heater.burnerHeat;
    }
    expect(heat / 3.6e6).toBeCloseTo(1.6, 6);
  });
});

describe('US standby loss in per cent an hour [definition: share of the heat stored over the room]', () => {
  it('1 %/h of 50 gal → 2.18 W/K [by hand: 0.01 · 4.1468e6 · 0.18927/3600]', () => {
    expect(lossFromStandbyShare(0.01, 50 * gallon)).toBeCloseTo(2.1802, 3);
  });

  it('a burner’s label counts fuel: times its efficiency', () => {
    expect(lossFromStandbyShare(0.02, 0.3, 0.8)).toBeCloseTo(0.8 * lossFromStandbyShare(0.02, 0.3), 12);
  });
});

/** Water-heater analysis model, Lutz et al. 1998: UA of the label's fuel with the loss left out while firing. */
function wham(factor: number, efficiency: number, drawn_gal: number, fuelPower: number): number {
  const difference = celsius(125) - celsius(67.5);
  const heat = WATER_HEAT_CAPACITY * drawn_gal * gallon * (celsius(125) - celsius(58));
  return (1 / factor - 1 / efficiency) / (difference * (86_400 / heat - 1 / (efficiency * fuelPower)));
}

describe('US uniform energy factor', () => {
  it.each([
    ['gas, medium', 0.58, 0.78, 'medium', 55, 11_700],
    ['gas, high', 0.64, 0.8, 'high', 84, 11_700],
    ['electric, medium', 0.93, 0.98, 'medium', 55, 4592],
    ['electric, low', 0.92, 0.98, 'low', 38, 4592],
  ] as const)(
    '%s: a day of six draws by our heater gives the label back, and Lutz’s model agrees within 12 % [own balance; Lutz et al. 1998, from memory]',
    (_, factor, efficiency, pattern, drawn_gal, fuelPower) => {
      const lossCoefficient = lossFromUniformEnergyFactor(factor, efficiency, pattern);
      const set = celsius(125);
      const heater = compileHeater(
        heaterDesign({
          setTemperature: set,
          burnerPower: 1e6, // ample, so that the water leaves at its setting, as the test's delivery does
          burnerEfficiency: efficiency,
          lossCoefficient,
          roomTemperature: celsius(67.5),
        }),
      );
      let fuel = 0;
      let delivered = 0;
      for (let hour = 0; hour < 24; hour++) {
        const volume = hour < 6 ? (drawn_gal * gallon) / 6 : 0;
        stepHeater(heater, volume, celsius(58), 3600);
        fuel += heater.burnerHeat / efficiency;
        delivered += volume * WATER_HEAT_CAPACITY * (heater.outlet - celsius(58));
      }
      expect(delivered / fuel).toBeCloseTo(factor, 6);
      const theirs = wham(factor, efficiency, drawn_gal, fuelPower) * efficiency;
      expect(Math.abs(lossCoefficient / theirs - 1)).toBeLessThan(0.12);
    },
  );

  it('refuses an efficiency below the factor [requirement]', () => {
    expect(() => lossFromUniformEnergyFactor(0.9, 0.8, 'low')).toThrow(DesignError);
  });
});

describe('European label classes [Regulation (EU) No 812/2013, Annex II, Table 2, from memory]', () => {
  it('200 L: A below 43.9 W, B below 61.4 W, C below 86.0 W at 45 K [by hand: 200^0.4 = 8.3255]', () => {
    expect(lossOfLabelClass(0.2, 'A') * 45).toBeCloseTo(8.5 + 4.25 * 8.3255, 2);
    expect(lossOfLabelClass(0.2, 'B') * 45).toBeCloseTo(12 + 5.93 * 8.3255, 2);
    expect(lossOfLabelClass(0.2, 'C') * 45).toBeCloseTo(16.66 + 8.33 * 8.3255, 2);
  });
});
