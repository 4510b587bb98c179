import { defineSystem, simulate } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { compileHeater, stepHeater } from '../../packages/sim-core/src/physics/backup/heater.ts';
import { heaterOffHours } from '../../packages/sim-core/src/physics/backup/hours.ts';
import { inventedValley } from '../examples.ts';
import { heaterDesign } from '../sim-core/physics/backup/parts.ts';
import { hasMoreCases, moreCases } from './more-cases.ts';

interface TimerCase {
  readonly mass_kg: number;
  readonly UA_W_K: number;
  readonly T_room_C: number;
  readonly power_W: number;
  readonly T_set_C: number;
  readonly T_start_C: number;
  readonly T_cold_C: number;
  readonly cp_J_kgK: number;
  readonly windows: readonly [number, number][];
  readonly draws: readonly [number, number][];
  readonly T_at_h: readonly { readonly h: number; readonly T_C: number }[];
  readonly heat_kWh: number;
  readonly loss_kWh: number;
}

/** Step of the heater [s]: it ends on the thermostat, so the reference's perfect one is met within the last of its steps. */
const STEP = 6;

function dayOf(given: TimerCase) {
  const capacity = given.mass_kg * given.cp_J_kgK;
  const heater = {
    ...compileHeater(
      heaterDesign({
        setTemperature: given.T_set_C,
        burnerPower: given.power_W,
        lossCoefficient: given.UA_W_K,
        roomTemperature: given.T_room_C,
        heatingHours: given.windows,
      }),
    ),
    capacity,
    temperature: given.T_start_C,
  };
  const off = heaterOffHours(heater.design, null)!;
  const steps = 3600 / STEP;
  const found = { heat: 0, loss: 0, at: new Map<number, number>([[0, given.T_start_C]]) };
  for (let step = 0; step < 24 * steps; step++) {
    heater.most = off[Math.trunc(step / steps)]! > 0 ? 0 : given.power_W;
    stepHeater(heater, 0, 0, STEP);
    found.heat += heater.burnerHeat / 3.6e6;
    found.loss += heater.loss / 3.6e6;
    const hour = (step + 1) / steps;
    for (const [when, mass] of given.draws)
      if (when === hour) heater.temperature -= (mass / given.mass_kg) * (heater.temperature - given.T_cold_C);
    found.at.set(hour, heater.temperature);
  }
  return found;
}

describe.skipIf(!hasMoreCases)(
  'a store on a timer [exponentials from event to event, shared cases, heater.timer]',
  () => {
    it.each(moreCases<TimerCase>('heater', 'timer'))('windows $windows', (given) => {
      const { heat, loss, at } = dayOf(given);
      for (const { h, T_C } of given.T_at_h) expect(at.get(h)).toBeCloseTo(T_C, 4);
      expect(heat).toBeCloseTo(given.heat_kWh, 5);
      expect(loss).toBeCloseTo(given.loss_kWh, 5);
    });
  },
);

describe('hours in which a heater may not heat [requirement]', () => {
  it('days include both ends and pass the turn of the year; the timer follows the house’s clock', () => {
    const summer = heaterOffHours({ offDays: ['12-31..01-01'], heatingHours: null }, null)!;
    expect(summer.reduce((sum, off) => sum + (off > 0 ? 1 : 0), 0)).toBe(48);
    expect([summer[23], summer[24], summer[8735], summer[8736]]).toEqual([2, 0, 0, 2]);
    const timer = heaterOffHours({ offDays: [], heatingHours: [[5, 7]] }, '03-31..10-27')!;
    expect([...timer.subarray(0, 9)]).toEqual([1, 1, 1, 1, 1, 0, 0, 1, 1]);
    const july = 24 * 190; // clocks an hour ahead: from 4 to 6 standard time
    expect([...timer.subarray(july, july + 8)]).toEqual([1, 1, 1, 1, 0, 0, 1, 1]);
    expect(heaterOffHours({ offDays: [], heatingHours: null }, null)).toBeNull();
  });
});

const weather = await inventedValley();
/** Enough for sums of hours. */
const COARSE = { stepsPerHour: 2 };

describe('a year with the heater off from May to September [requirement]', () => {
  const system = (heater: object) =>
    defineSystem({
      array: { panels: 2, tilt: 40, azimuth: 180, collector: { area: 2, eta0: 0.75, a1: 3.8, a2: 0.012 } },
      tank: { volume: 0.3 },
      draw: { dailyVolume: 0.2 },
      heater,
    });
  const may = 24 * 120;
  const october = 24 * 273;
  const within = (hour: number) => hour >= may && hour < october;
  const amount = (fact: unknown) => (fact as { readonly value: number }).value;
  const sum = (column: Float64Array, counts: (hour: number) => boolean) =>
    column.reduce((total, value, hour) => total + (counts(hour) ? value : 0), 0);

  it.each(['stored-gas', 'instantaneous-electric', 'element'] as const)('%s', (kind) => {
    const { balance, columns, notices } = simulate(system({ kind, offDays: ['05-01..09-30'] }), weather, COARSE);
    expect(sum(columns.heaterFuel, within)).toBe(0);
    expect(sum(columns.heaterElectricity, within)).toBe(0);
    expect(sum(columns.baselineFuel, within)).toBeGreaterThan(1e9);
    expect(balance.whole.worstRelative).toBeLessThan(1e-6);
    const said = notices.find(({ code }) => code === 'heater-off')!;
    const lacked = columns.tapHeatAsked.map((asked, hour) => Math.max(asked - columns.tapHeat[hour]!, 0));
    expect(amount(said.facts.missing)).toBeCloseTo(sum(lacked, within), 0);
    expect(amount(said.facts.hot)).toBeCloseTo(sum(columns.hotVolume, within), 9);
    expect(notices.some(({ code }) => code === 'heater-not-firing')).toBe(false);
  });

  it('a timer keeps the burner out of its other hours, with the sun and without', () => {
    const { columns } = simulate(
      system({
        heatingHours: [
          [5, 8],
          [17, 21],
        ],
      }),
      weather,
      COARSE,
    );
    const outside = (hour: number) => !((hour % 24 >= 5 && hour % 24 < 8) || (hour % 24 >= 17 && hour % 24 < 21));
    expect(sum(columns.heaterFuel, outside)).toBe(0);
    expect(sum(columns.baselineFuel, outside)).toBe(0);
    expect(sum(columns.baselineFuel, () => true)).toBeGreaterThan(5e9);
  });
});
