/**
 * Years of four designs on two real weather files against an independent model of the whole system: 20 s steps, 200 tank layers with exact plug
 * flow, coil by layer with its own content (whole-system.csv and its page). What stood as defaults when it ran is set here.
 */
import { defineSystem, type SystemInput, simulate } from '@noonloop/sim-core';
import { expect } from 'vitest';
import { sum } from '../examples.ts';
import { readRealAt } from '../weather-io/real-files.ts';
import { number, referenceTable } from './reference-table.ts';

const KWH = 3.6e6;
export const TABLE = 'reference/whole-system.csv';
const FILES = { gso: 'weather/tmy3-greensboro-nc.csv', pie: 'weather/pvgis-45N-8E.csv' } as const;

/** The settings that the page names; two or three panels. */
const settings = (panels: number): SystemInput => ({
  array: {
    panels,
    tilt: 40,
    azimuth: 180,
    collector: {
      area: 2,
      eta0: 0.75,
      a1: 3.8,
      a2: 0.012,
      incidenceModifier: { b0: 0.1 },
      heatCapacity: 8000,
      skyCoefficient: 0.178,
      ratedPressureDrop: 1000,
      ratedFlow: '2 L/min',
    },
  },
  loop: {
    fluid: 'propylene-glycol',
    glycolMassFraction: 0.4,
    pipeLength: 20,
    pipeInnerDiameter: 0.016,
    pipeOuterDiameter: 0.018,
    insulationThickness: 0.019,
    insulationConductivity: 0.04,
    heatBridgeFactor: 1,
    outdoorShare: 0.4,
    fittingLoss: 20,
  },
  coil: { length: 12, innerDiameter: 0.02, outerDiameter: 0.022, bottom: 0.05, top: 0.4, fouling: 1e-4 },
  tank: {
    volume: 0.3,
    height: 1.337,
    lossCoefficient: 2.451,
    verticalConductivity: 1.575,
    roomTemperature: 18,
    initialTemperature: 18,
    reliefTemperature: 99,
  },
  pump: { shutOffHead: 3, openFlow: '10 L/min', shutOffPower: 10, openFlowPower: 16 },
  draw: { profile: 'M', dailyVolume: 0.2 },
  heater: {
    volume: 0.15,
    lossCoefficient: 5,
    setTemperature: 60,
    burnerPower: 9000,
    burnerEfficiency: 0.77,
    roomTemperature: 18,
  },
  control: { highLimit: 85, highLimitHysteresis: 5 },
});

const booster = { drive: 'booster', boosterEfficiency: 0.9, startPower: 2, stopPower: 1.2 } as const;
const difference = { start: 6, stop: 3, minimumRunTime: 300 };

function design(name: string) {
  const input = settings(Number(name.at(-1)));
  return defineSystem(
    name.startsWith('base')
      ? { ...input, pump: { ...input.pump, ...booster } }
      : {
          ...input,
          pump: { ...input.pump, drive: 'mains' },
          control: { ...input.control, mode: 'difference', difference },
        },
  );
}

/** Rows of the table that hold a whole year. */
export const YEARS = referenceTable(TABLE)
  .filter(({ month }) => month === 'year' || month === 13)
  .map((row) => [String(row.design), String(row.site), row] as const);

/** Year that the quick run lives. The others: whole-system.long.test.ts. */
const QUICK = ['base2 pie'];
export const isQuick = ([name, site]: (typeof YEARS)[number]): boolean => QUICK.includes(`${name} ${site}`);

/** One year by the simulation, against its row. */
export async function compareYear(...[name, site, row]: (typeof YEARS)[number]): Promise<void> {
  const file = await readRealAt(FILES[site as keyof typeof FILES]);
  // The referee's sky is cloudless.
  const { columns } = simulate(design(name), { ...file, columns: { ...file.columns, cloudCover: null } });
  expect(Math.abs(sum(columns.solarHeat) / KWH / number(row, 'delivered_kWh') - 1)).toBeLessThan(0.005);
  expect(Math.abs(Math.max(...columns.tankMaximumTemperature) - number(row, 'peak_tank_C'))).toBeLessThan(0.5);
  expect(Math.abs(sum(columns.stagnation) - number(row, 'stagnation_h'))).toBeLessThan(8);
}
