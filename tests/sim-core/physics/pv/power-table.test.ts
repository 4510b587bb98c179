import { describe, expect, it } from 'vitest';
import { type PvModuleParameters, pvOperatingPoint } from '../../../../packages/sim-core/src/physics/pv/index.ts';
import { compilePvPower, tablePower } from '../../../../packages/sim-core/src/physics/pv/power-table.ts';

// The invented "10W" and "50W" modules of pv.csv.
const modules: readonly (readonly [string, PvModuleParameters])[] = [
  [
    '10 W',
    {
      photocurrent: 0.61130714,
      saturationCurrent: 1.5138248e-10,
      seriesResistance: 0.9,
      shuntConductance: 1 / 420,
      modifiedIdeality: 0.98042882,
      currentTemperatureCoefficient: 0.0003,
    },
  ],
  [
    '50 W',
    {
      photocurrent: 3.054575,
      saturationCurrent: 4.1678522e-10,
      seriesResistance: 0.21,
      shuntConductance: 1 / 140,
      modifiedIdeality: 0.96193016,
      currentTemperatureCoefficient: 0.0016,
    },
  ],
];

const exact = (module: PvModuleParameters, irradiance: number, cellTemperature: number): number =>
  pvOperatingPoint(module, { irradiance, cellTemperature }, { kind: 'maximum-power' }).power;

describe('tablePower', () => {
  it.each(modules)(
    'of the %s module is within 0.1 percent of rated power of the exact solver [ours, the bound that its docstring states]',
    (_name, module) => {
      const table = compilePvPower(module);
      const rated = exact(module, 1000, 25);
      let worst = 0;
      for (let irradiance = 0; irradiance <= 1500; irradiance += 3.7) {
        for (let cell = -40; cell <= 100; cell += 1.3) {
          const error = Math.abs(tablePower(table, irradiance, cell) - exact(module, irradiance, cell)) / rated;
          if (!(error <= worst)) worst = error;
        }
      }
      expect(worst).toBeLessThan(1e-3);
    },
  );

  it('is clamped at its edges: 1500 W/m², −40 and 100 °C; 0 without light [requirement]', () => {
    const [, module] = modules[0]!;
    const table = compilePvPower(module);
    expect(tablePower(table, 1600, 25)).toBe(tablePower(table, 1500, 25));
    expect(tablePower(table, 800, -60)).toBe(tablePower(table, 800, -40));
    expect(tablePower(table, 800, 120)).toBe(tablePower(table, 800, 100));
    expect(tablePower(table, 1500, 100)).toBeCloseTo(exact(module, 1500, 100), 12);
    expect(tablePower(table, 0, 25)).toBe(0);
    expect(tablePower(table, -3, 25)).toBe(0);
  });
});
