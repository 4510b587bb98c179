import { calendarInWords } from '@noonloop/reports';
import {
  DesignError,
  defineSystem,
  type MaintenanceTask,
  maintenanceCalendar,
  type RunResult,
  simulate,
} from '@noonloop/sim-core';
import { DateTime } from 'luxon';
import { beforeAll, describe, expect, it } from 'vitest';
import { TASK_WORDS } from '../../../../packages/reports/src/words/tasks.ts';
import { nextSeason } from '../../../../packages/sim-core/src/advice/check/maintenance.ts';
import { swellOf } from '../../../../packages/sim-core/src/advice/check/wear.ts';
import { inventedValley, plainInput, withPanels } from '../../../examples.ts';

const day = (text: string): DateTime => DateTime.fromISO(text, { zone: 'utc' });

describe('days of the calendar', () => {
  it('a season comes on or after the day asked for [Gregorian calendar]', () => {
    expect(nextSeason(day('2025-03-02'), [2, 1]).toISODate()).toBe('2026-03-01');
    expect(nextSeason(day('2025-03-01'), [2, 1]).toISODate()).toBe('2025-03-01');
  });
});

describe('the maintenance calendar of a run', () => {
  let two: RunResult;
  let hot: RunResult;
  beforeAll(async () => {
    const weather = await inventedValley();
    two = simulate(withPanels(2), weather, { stepsPerHour: 2 });
    const draw = { ...plainInput.draw, holidays: ['06-15..08-15'] };
    hot = simulate(defineSystem({ ...plainInput, array: { ...plainInput.array, panels: 4 }, draw }), weather, {
      stepsPerHour: 2,
    });
  }, 180_000);
  const taskOf = (result: RunResult, code: string, extra = {}): MaintenanceTask | undefined =>
    maintenanceCalendar(result, { from: '2025-03-01', years: 20, ...extra }).tasks.find((task) => task.code === code);

  it('keeps its dates within the span, in order and as often as said [requirement]', () => {
    const calendar = maintenanceCalendar(two, { from: '2025-03-01', years: 5 });
    const { tasks, days } = calendar;
    for (const { dates, everyMonths } of tasks) {
      if (everyMonths === null) continue;
      expect(dates[0]! >= '2025-03-01' && dates.at(-1)! < '2030-03-01').toBe(true);
      dates.slice(1).forEach((date, at) => {
        const due = day(dates[0]!).plus({ months: (at + 1) * everyMonths });
        expect(due.toISODate()).toBe(date);
      });
    }
    for (const units of ['metric', 'us'] as const)
      for (const { what, why, basis, caution } of calendarInWords(calendar, units).tasks)
        for (const words of [what, why, basis, caution]) {
          expect(words.length).toBeGreaterThan(5);
          expect(words).not.toMatch(/[{}]|NaN|undefined/);
          if (units === 'us') expect(words).not.toMatch(/°C|\bbar\b|\bkPa\b/);
        }
    expect(days.flatMap(({ codes }) => codes).length).toBe(tasks.flatMap(({ dates }) => dates).length);
  });

  it('rests on the numbers of the run; what has boiled out does not age [requirement]', () => {
    const { wear } = maintenanceCalendar(hot, { from: '2025-03-01' });
    const { absorberTemperature, boiling, pumpRunning } = hot.columns;
    const limit = hot.design.loop.fluidLimit;
    let over = 0;
    absorberTemperature.forEach((value, hour) => {
      over += value > limit ? 1 - boiling[hour]! : 0;
    });
    expect(wear.hoursOverFluidLimit).toBeCloseTo(over, 9);
    // Requirement: boiled-dry hours are left out, and this run has some.
    expect(over).toBeLessThan(absorberTemperature.filter((value) => value > limit).length);
    expect(wear.pumpHours).toBeCloseTo(
      pumpRunning.reduce((sum, value) => sum + value, 0),
      6,
    );
    expect(taskOf(hot, 'glycol-test')!.reasons[0]).toMatchObject({
      code: 'over-limit',
      facts: { hours: { unit: 'h' } },
    });
  });

  it('asks for more where the loop gets hot, and ends the life of the fluid sooner [direction that physics demands]', () => {
    const interval = (result: RunResult, code: string): number => taskOf(result, code)!.everyMonths!;
    expect(maintenanceCalendar(hot, { from: '2025-03-01' }).wear.hoursOverFluidLimit).toBeGreaterThan(100);
    expect(interval(hot, 'glycol-test')).toBe(6);
    expect(interval(hot, 'vessel-precharge')).toBe(12);
    expect(interval(hot, 'glycol-change')).toBeLessThan(interval(two, 'glycol-change'));
  });

  it('knows hardness, anode, drive and fluid [requirement]', () => {
    const codes = (result: RunResult, extra = {}): string[] =>
      maintenanceCalendar(result, { from: '2025-03-01', ...extra }).tasks.map(({ code }) => code);
    expect(codes(two)).toContain('anode');
    expect(codes(two, { anode: 'none' })).not.toContain('anode');
    expect(codes(two, { anode: 'none' })).not.toContain('hydrogen');
    expect(codes(two, { anode: 'powered' })).toContain('powered-anode');
    expect(codes(two)).toContain('module-cleaning');
    const water = { ...two, design: { ...two.design, loop: { ...two.design.loop, fluid: 'water' as const } } };
    expect(codes(water)).not.toContain('glycol-test');
    expect([1, 3].map((waterHardness) => taskOf(two, 'flush', { waterHardness })!.everyMonths)).toEqual([12, 6]);
  });

  it('an overdue change of the fluid does not wait for its season [requirement]', () => {
    const { dates, reasons } = taskOf(two, 'glycol-change', { fluidAge: 30 })!;
    expect(dates[0]).toBe('2025-03-01');
    expect(reasons.map(({ code }) => code)).toContain('overdue');
  });

  it('the house is ready, and the fluid tested, before the first frost of the weather file [requirement]', async () => {
    const weather = await inventedValley();
    for (const frost of ['10-04', '12-01']) {
      // Cold from that day on to the end of February, mild before.
      const at = 24 * (day(`2023-${frost}`).ordinal - 1);
      const ambientTemperature = Float64Array.from({ length: 8760 }, (_, hour) =>
        hour >= at || hour < 1416 ? -2 : 12,
      );
      const columns = { ...two.columns, ambientTemperature };
      const shifted = { ...two, columns, site: weather.site } as RunResult;
      for (const [code, ahead] of [
        ['winter-look', 28],
        ['glycol-test', 49],
      ] as const) {
        const date = taskOf(shifted, code)!.dates.find((one) => one > '2025-07-15')!;
        expect(day(date).plus({ days: ahead }).toFormat('MM-dd'), code).toBe(frost);
      }
    }
  });

  it('owners look, listen, read and rinse; what opens a part under pressure is for the trade [requirement]', () => {
    const { tasks } = maintenanceCalendar(two, { from: '2025-03-01' });
    const owner = tasks.filter(({ who }) => who === 'owner').map(({ code }) => code);
    for (const code of ['strainer', 'flush', 'tank-relief-valve', 'mixing-valve', 'glycol-test'] as const)
      expect(owner).not.toContain(code);
    for (const code of owner.filter((one) => !['hydrogen', 'winter-look'].includes(one)))
      expect(TASK_WORDS[code].what, code).not.toMatch(/\b(open|unscrew|drain|bleed|vent the|lift|refill|turn it)\b/i);
  });

  it('nobody turns a mixing valve to both ends: its test shuts the cold supply [HTM 04-01 supplement D08, from memory]', () => {
    const { what, caution } = TASK_WORDS['mixing-valve'];
    expect(what).toMatch(/cold supply to the valve is shut/);
    expect(`${what} ${caution}`).not.toMatch(/both ends/);
  });

  it('the tank’s water swells: 300 L from 15 to 85 °C by 9.4 L [water densities of IAPWS-95: 999.10 and 968.6 kg/m³]', () => {
    expect(swellOf(0.3, 15, 85) * 1000).toBeCloseTo(9.4, 1);
    expect(taskOf(two, 'potable-expansion')).toMatchObject({ basis: 'expansion-codes', who: 'licensed trade' });
  });

  it('hydrogen is thought of on the day after a fortnight away, and not after a week [requirement]', () => {
    // holidays 15 June to 15 August
    expect(taskOf(hot, 'hydrogen')!.dates.slice(0, 2)).toEqual(['2025-08-16', '2026-08-16']);
    const week = { ...two, design: { ...two.design, draw: { ...two.design.draw, holidays: ['07-10..07-16'] } } };
    expect(taskOf(week, 'hydrogen')).toMatchObject({ dates: [], everyMonths: null });
  });

  it('burning heaters have flue and alarm looked at, electric ones not [requirement]', () => {
    expect(taskOf(two, 'flue')).toBeDefined();
    const heater = { ...two.design.heater, carrier: 'electricity' as const };
    const electric = { ...two, design: { ...two.design, heater } };
    expect(taskOf(electric, 'flue')).toBeUndefined();
    expect(taskOf(electric, 'carbon-monoxide-alarm')).toBeUndefined();
  });

  it('refuses options with every fault of them [requirement]', () => {
    const options = {
      from: '2025-02-30',
      years: 0,
      waterHardness: '16 dH',
      anode: 'gold',
      fluidAge: -1,
      dusty: 1,
      sock: 2,
    };
    let paths: string[] = [];
    try {
      maintenanceCalendar(two, options as never);
    } catch (error) {
      if (error instanceof DesignError) paths = error.issues.map(({ path }) => path);
    }
    expect(paths.sort()).toEqual(['anode', 'dusty', 'fluidAge', 'from', 'sock', 'waterHardness', 'years']);
  });
});
