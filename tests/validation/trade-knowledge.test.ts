import type { WeatherYear } from '@noonloop/weather-io';
import { describe, expect, it } from 'vitest';
import { usefulPower } from '../../packages/sim-core/src/physics/collector/index.ts';
import { inventedValley } from '../examples.ts';
import { hasShared } from '../shared.ts';
import { readRealAt } from '../weather-io/real-files.ts';
import { CLIMATES } from './standard-system.ts';
import { blackPlate, middle, plateShares, pumpOfModule, summerPeak } from './trade-knowledge.ts';

const [, greensboroFile] = CLIMATES[0];
const years: [string, () => Promise<WeatherYear>][] = [['invented valley', inventedValley]];
if (hasShared(greensboroFile)) years.push(['Greensboro', () => readRealAt(greensboroFile)]);

describe('large black-painted single-glazed flat plate [common practice, no source: 0.6 to 0.75 kW/m² in full sun with a cool tank]', () => {
  it.each([0, 5, 10])('gives it with fluid %f K above the air in 1000 W/m²', (over) => {
    const conditions = { beamIrradiance: 1000, meanFluidTemperature: 20 + over, ambientTemperature: 20 };
    const perArea = usefulPower(blackPlate, conditions) / blackPlate.area;
    expect(perArea).toBeGreaterThan(600);
    expect(perArea).toBeLessThan(750);
  });

  it.each(years)(
    'gives it in the hours of full sun from March to June in %s, tank no warmer than the air',
    async (_, year) => {
      const shares = plateShares(await year(), [59, 181]);
      expect(shares.length).toBeGreaterThan(20);
      expect(middle(shares)).toBeGreaterThan(0.6);
      expect(Math.max(...shares)).toBeLessThan(0.75);
    },
  );
});

describe('a module of 10 to 20 W runs the pump of a small domestic array [common practice, no source]', () => {
  it.each(years.flatMap(([name, year]) => [10, 20].map((watts) => [watts, name, year] as const)))(
    '%i W, %s, January to March: nearly always in sun above 300 W/m², 1 L/min and more for each of 4 m² in bright sun',
    async (watts, _, year) => {
      const { running, flow_L_per_min } = pumpOfModule(await year(), watts, [0, 90]);
      expect(running).toBeGreaterThan(0.98);
      expect(flow_L_per_min / 4).toBeGreaterThan(1);
    },
  );
});

describe('a generous array on a PV-run pump without a high limit takes its tank past 85 °C in summer [common practice, no source]', () => {
  it.each(years)('8 m² on 300 L, %s', async (_, year) => {
    expect(summerPeak(await year(), 4)).toBeGreaterThan(85);
  });
});
