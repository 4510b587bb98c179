import { simulate } from '@noonloop/sim-core';
import { readWeather } from '@noonloop/weather-io';
import { describe, expect, it } from 'vitest';
import { sum, withPanels } from '../../examples.ts';
import { hasShared, sharedFile } from '../../shared.ts';

// Real typical years, end to end: file → year → run. Skipped where the files are not at hand.
describe.each([
  'weather/tmy3-greensboro-nc.csv',
  'weather/tmy3-sand-point-ak.csv',
  'weather/pvgis-45N-8E.csv',
  'weather/pvgis-45N-8E.epw',
])('%s', (file) => {
  it.skipIf(!hasShared(file))(
    'runs with two and three panels: finite, balanced, and three deliver more [conservation]',
    async () => {
      const weather = await readWeather(sharedFile(file));
      const [two, three] = [2, 3].map((panels) => simulate(withPanels(panels), weather));
      for (const result of [two!, three!]) {
        for (const [name, column] of Object.entries(result.columns))
          expect(column.every(Number.isFinite), name).toBe(true);
        for (const [part, { worstRelative }] of Object.entries(result.balance))
          expect(worstRelative, part).toBeLessThan(1e-9);
      }
      expect(sum(three!.columns.solarHeat)).toBeGreaterThan(sum(two!.columns.solarHeat));
      expect(sum(three!.columns.heaterFuel)).toBeLessThan(sum(two!.columns.heaterFuel));
    },
  );
});

it.skipIf(!hasShared('weather/pvgis-45N-8E.epw'))(
  'the same rows as EPW and as PVGIS CSV give the same year within 0.1 % [requirement]',
  async () => {
    const [epw, csv] = await Promise.all(
      ['epw', 'csv'].map((ending) => readWeather(sharedFile(`weather/pvgis-45N-8E.${ending}`))),
    );
    const [first, second] = [epw!, csv!].map((weather) => sum(simulate(withPanels(2), weather).columns.solarHeat));
    // The EPW rounds wind and carries a dew point; the CSV has neither: nothing else may differ.
    expect(Math.abs(first! / second! - 1)).toBeLessThan(1e-3);
  },
);
