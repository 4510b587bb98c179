import { defineSystem, type RunResult, type SimulateOptions, type SystemInput, simulate } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { inventedValley, plainInput, sum } from '../../examples.ts';

const weather = await inventedValley();

function run(change: Partial<SystemInput>, panels = 2, options: SimulateOptions = {}): RunResult {
  const array = { ...plainInput.array, panels };
  return simulate(defineSystem({ ...plainInput, array, ...change }), weather, options);
}

const delivered = ({ columns }: RunResult) => sum(columns.solarHeat);

const booster = run({});
const direct = run({ pump: { drive: 'direct' } });
const mains = run({ pump: { drive: 'mains' } });

// Limits that the project sets itself: half the step moves the year's heat by less than 0.1 % and the peak by less than 0.2 K.
describe.each<[string, Partial<SystemInput>]>([
  ['direct drive', { pump: { drive: 'direct' } }],
  ['mains, temperature difference', { pump: { drive: 'mains' } }],
  [
    'mains, temperature difference, sensor on the pipe, no high limit',
    { pump: { drive: 'mains' }, control: { difference: { collectorSensor: 'pipe' }, highLimit: null } },
  ],
  ['booster, temperature difference', { control: { mode: 'difference' } }],
  ['mains, schedule', { pump: { drive: 'mains' }, control: { mode: 'schedule' } }],
])('%s', (_, change) => {
  it.each([2, 3])(
    '%d panels: half the step moves heat by less than 0.1 % and peak by less than 0.2 K [convergence]',
    (panels) => {
      const reference = run(change, panels);
      const finer = run(change, panels, { stepsPerHour: 12 });
      expect(Math.abs(delivered(finer) / delivered(reference) - 1)).toBeLessThan(0.001);
      const peak = ({ columns }: RunResult) => Math.max(...columns.tankMaximumTemperature);
      expect(Math.abs(peak(finer) - peak(reference))).toBeLessThan(0.2);
      // The pump's cycles are followed: its running time moves by less than one percent.
      const running = ({ columns }: RunResult) => sum(columns.pumpRunning);
      expect(Math.abs(running(finer) / running(reference) - 1)).toBeLessThan(0.01);
      for (const balance of Object.values(reference.balance)) expect(balance.worstRelative).toBeLessThan(1e-9);
    },
  );
});

describe('drives', () => {
  it('count the modules’ energy and the mains’ apart [requirement]', () => {
    for (const pvRun of [booster, direct]) {
      expect(sum(pvRun.columns.pumpElectricity)).toBe(0);
      expect(sum(pvRun.columns.pumpPvEnergy)).toBeGreaterThan(0);
    }
    expect(sum(mains.columns.pumpPvEnergy)).toBe(0);
    // Power at rated speed is between that with no flow and that at open flow.
    const mean = sum(mains.columns.pumpElectricity) / (3600 * sum(mains.columns.pumpRunning));
    expect(mean).toBeGreaterThan(mains.design.pump.shutOffPower);
    expect(mean).toBeLessThan(mains.design.pump.openFlowPower);
  });

  it('take no more from the module than its maximum power in the hour’s light [direction that physics demands]', () => {
    const { module } = booster.design.pv;
    // Cells below 25 °C give more than rated: less than 0.5 % for each kelvin.
    const rated = module.maximumPowerCurrent * module.maximumPowerVoltage;
    for (const { columns } of [booster, direct]) {
      columns.pumpPvEnergy.forEach((energy, hour) => {
        const cold = Math.max(0, 25 - columns.ambientTemperature[hour]!);
        const most = (rated * columns.pvIrradiance[hour]! * (1 + 0.005 * cold)) / 1000;
        expect(energy / 3600).toBeLessThanOrEqual(most * 1.02);
      });
    }
  });

  it('give the booster the longer day and the greater flow in weak sun [maximum power at any current]', () => {
    let weak = 0;
    for (let hour = 0; hour < 8760; hour++) {
      const light = booster.columns.pvIrradiance[hour]!;
      if (light < 150 || light > 300 || direct.columns.pumpRunning[hour]! < 1 - 1e-9) continue;
      weak++;
      expect(booster.columns.loopFlow[hour]).toBeGreaterThan(direct.columns.loopFlow[hour]!);
    }
    expect(weak).toBeGreaterThan(100);
  });

  it('collect about the same on the module and on the mains [common practice, no source: within some percent]', () => {
    expect(Math.abs(delivered(direct) / delivered(booster) - 1)).toBeLessThan(0.03);
    expect(Math.abs(delivered(mains) / delivered(booster) - 1)).toBeLessThan(0.05);
  });

  it('run a pump on the mains at night only where the clock says so [requirement]', () => {
    const night = ({ columns }: RunResult) =>
      sum(columns.pumpRunning.filter((_, hour) => columns.irradiance[hour] === 0));
    expect(night(booster)).toBe(0);
    expect(night(mains)).toBeLessThan(0.02 * sum(mains.columns.pumpRunning));
    const byClock = run({ pump: { drive: 'mains' }, control: { mode: 'schedule', schedule: [[2, 4]] } });
    expect(sum(byClock.columns.pumpRunning)).toBeCloseTo(2 * 365, 9);
    expect(sum(byClock.columns.coilHeat)).toBeLessThan(0); // the loop cools the tank
    expect(byClock.balance.whole.worstRelative).toBeLessThan(1e-9);
  });
});

describe('too much module on the motor', () => {
  it('is said in a notice: two modules of 20 W on a motor of 16 W [requirement]', () => {
    const codes = ({ notices }: RunResult) => notices.map(({ code }) => code);
    expect(codes(run({ pump: { drive: 'direct' }, pv: { modules: 2 } }))).toContain('motor-overloaded');
    expect(codes(direct)).not.toContain('motor-overloaded');
    expect(codes(booster)).not.toContain('motor-overloaded');
  });
});

describe('the module’s area', () => {
  it('takes the power out of the cells’ heat: a little more for the pump [NOCT, Duffie & Beckman §23.3]', () => {
    const known = run({ pv: { module: { area: 0.16 } } });
    const gain = sum(known.columns.pumpPvEnergy) / sum(booster.columns.pumpPvEnergy) - 1;
    expect(gain).toBeGreaterThan(0.001);
    expect(gain).toBeLessThan(0.03);
  });
});

describe('light or cells beyond the module’s tables', () => {
  it('are held, and a notice says in how many hours [requirement]', () => {
    const hotAir = { ...weather, columns: { ...weather.columns, dryBulb: weather.columns.dryBulb.map((t) => t + 45) } };
    const notice = simulate(defineSystem(plainInput), hotAir).notices.find(({ code }) => code === 'module-tables-held');
    expect(notice?.hours).toBeGreaterThan(0);
    expect(booster.notices.map(({ code }) => code)).not.toContain('module-tables-held');
  });
});

describe('outages', () => {
  const week = { from: '07-10', to: '07-16' };
  const hours = [190 * 24, 197 * 24] as const;
  const inWeek = (column: Float64Array) => sum(column.slice(...hours));

  it('a week of pump failure in July stands in the sun and stagnates [requirement]', () => {
    const failed = run({ control: { outages: [{ ...week, kind: 'pump' }] } });
    expect(inWeek(failed.columns.pumpRunning)).toBe(0);
    expect(sum(booster.columns.stagnation)).toBe(0);
    expect(inWeek(failed.columns.stagnation)).toBeGreaterThan(10);
    expect(sum(failed.columns.stagnation)).toBe(inWeek(failed.columns.stagnation));
    expect(delivered(failed)).toBeLessThan(delivered(booster));
    expect(failed.columns.solarHeat.slice(0, hours[0])).toEqual(booster.columns.solarHeat.slice(0, hours[0]));
    for (const balance of Object.values(failed.balance)) expect(balance.worstRelative).toBeLessThan(1e-9);
  });

  it('a blackout stops a pump on the mains, and leaves one on its own module alone [requirement]', () => {
    const outages = [{ ...week, kind: 'power' as const }];
    expect(run({ control: { outages } }).columns.solarHeat).toEqual(booster.columns.solarHeat);
    const dark = run({ pump: { drive: 'mains' }, control: { outages } });
    expect(inWeek(dark.columns.pumpRunning)).toBe(0);
    expect(inWeek(dark.columns.pumpElectricity)).toBe(0);
    expect(inWeek(dark.columns.stagnation)).toBeGreaterThan(10);
  });
});

describe('a blackout and the heater', () => {
  const outages = [{ from: '01-10', to: '01-12', kind: 'power' as const }];
  const hours = [9 * 24, 12 * 24] as const;

  it.each(['stored-electric', 'instantaneous-electric', 'element'] as const)('leaves %s cold [requirement]', (kind) => {
    const { columns, balance } = run({ heater: { kind }, control: { outages } });
    expect(sum(columns.heaterFuel.slice(...hours))).toBe(0);
    expect(sum(columns.baselineFuel.slice(...hours))).toBe(0);
    expect(sum(columns.heaterFuel.slice(hours[1], hours[1] + 72))).toBeGreaterThan(0);
    expect(sum(columns.tapHeat.slice(...hours))).toBeLessThan(0.8 * sum(columns.tapHeatAsked.slice(...hours)));
    for (const part of Object.values(balance)) expect(part.worstRelative).toBeLessThan(1e-9);
  });

  it('leaves a gas store with a pilot light alone [requirement]', () => {
    expect(run({ control: { outages } }).columns.heaterFuel).toEqual(booster.columns.heaterFuel);
  });
});

describe('a cold morning with half glycol', () => {
  it('starts with less flow than the same power moves at noon [direction that physics demands]', () => {
    const { columns } = run({ loop: { glycolMassFraction: 0.5 } });
    // Hours in which the pump turns all through, by what it takes.
    const full = Array.from({ length: 8760 }, (_, hour) => hour).filter((hour) => columns.pumpRunning[hour]! > 0.999);
    const cold = full.filter((hour) => hour % 24 <= 9 && columns.ambientTemperature[hour]! < -5);
    let pairs = 0;
    for (const morning of cold) {
      if (columns.pumpRunning[morning - 2]! > 0) continue; // among the first of its day
      const noons = full.filter(
        (hour) =>
          [11, 12, 13].includes(hour % 24) &&
          columns.ambientTemperature[hour]! > 10 &&
          Math.abs(columns.pumpPvEnergy[hour]! / columns.pumpPvEnergy[morning]! - 1) < 0.03,
      );
      for (const noon of noons) {
        pairs++;
        expect(columns.loopFlow[morning]! / columns.loopFlow[noon]!).toBeLessThan(0.95);
      }
    }
    expect(pairs).toBeGreaterThan(20);
  });
});
