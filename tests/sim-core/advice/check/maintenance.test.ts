import { DesignError, defineSystem, maintenanceCalendar, type RunResult, simulate } from '@noonloop/sim-core';
import { beforeAll, describe, expect, it } from 'vitest';
import {
  dayNumber,
  dayText,
  monthsLater,
  nextMonthDay,
} from '../../../../packages/sim-core/src/advice/check/calendar-days.ts';
import { inventedValley, plainInput, withPanels } from '../../../examples.ts';

describe('days of the calendar', () => {
  it('months and leap years [Gregorian calendar]', () => {
    const day = (text: string): number => dayNumber(text)!;
    expect(dayText(monthsLater(day('2024-01-31'), 1))).toBe('2024-02-29');
    expect(dayText(monthsLater(day('2025-11-30'), 15))).toBe('2027-02-28');
    expect(dayText(nextMonthDay(day('2025-03-02'), 2, 1))).toBe('2026-03-01');
    expect(dayText(nextMonthDay(day('2025-03-01'), 2, 1))).toBe('2025-03-01');
    expect(['2025-02-29', '2025-1-1', 'soon', 7].map(dayNumber)).toEqual([null, null, null, null]);
  });
});

describe('the maintenance calendar of a run', () => {
  let two: RunResult;
  let hot: RunResult;
  beforeAll(async () => {
    const weather = await inventedValley();
    two = simulate(withPanels(2), weather);
    const draw = { ...plainInput.draw, holidays: ['06-15..08-15'] };
    hot = simulate(defineSystem({ ...plainInput, array: { ...plainInput.array, panels: 4 }, draw }), weather);
  }, 180_000);

  it('keeps its dates within the span, in order and as often as said', () => {
    const { tasks, days } = maintenanceCalendar(two, { from: '2025-03-01', years: 5 });
    for (const { dates, everyMonths, reason, basis, caution } of tasks) {
      expect(dates[0]! >= '2025-03-01' && dates.at(-1)! < '2030-03-01').toBe(true);
      dates.slice(1).forEach((date, at) => {
        expect(dayText(monthsLater(dayNumber(dates[0])!, (at + 1) * everyMonths))).toBe(date);
      });
      for (const words of [reason, basis, caution]) expect(words.length).toBeGreaterThan(5);
    }
    expect(days.flatMap(({ codes }) => codes).length).toBe(tasks.flatMap(({ dates }) => dates).length);
  });

  it('rests on the numbers of the run', () => {
    const { tasks, wear } = maintenanceCalendar(hot, { from: '2025-03-01' });
    const { absorberTemperature, pumpRunning } = hot.columns;
    // Dry collectors age no fluid.
    const over = absorberTemperature.reduce(
      (sum, value, hour) => sum + (value > hot.design.loop.fluidLimit ? 1 - hot.columns.boiling[hour]! : 0),
      0,
    );
    expect(wear.hoursOverFluidLimit).toBe(over);
    expect(over).toBeLessThan(absorberTemperature.filter((value) => value > hot.design.loop.fluidLimit).length);
    expect(wear.pumpHours).toBeCloseTo(
      pumpRunning.reduce((sum, value) => sum + value, 0),
      6,
    );
    expect(tasks.find(({ code }) => code === 'glycol-test')!.reason).toContain(`${Math.round(over)} h`);
  });

  it('asks for more where the loop gets hot, and ends the life of the fluid sooner', () => {
    const interval = (result: RunResult, code: string): number =>
      maintenanceCalendar(result, { from: '2025-03-01', years: 20 }).tasks.find((task) => task.code === code)!
        .everyMonths;
    expect(maintenanceCalendar(hot, { from: '2025-03-01' }).wear.hoursOverFluidLimit).toBeGreaterThan(150);
    expect(interval(hot, 'glycol-test')).toBe(6);
    expect(interval(hot, 'vessel-precharge')).toBe(12);
    expect(interval(hot, 'glycol-change')).toBeLessThan(interval(two, 'glycol-change'));
  });

  it('knows hardness, anode, drive and fluid', () => {
    const codes = (result: RunResult, extra = {}): string[] =>
      maintenanceCalendar(result, { from: '2025-03-01', ...extra }).tasks.map(({ code }) => code);
    expect(codes(two)).toContain('anode');
    expect(codes(two, { anode: 'none' })).not.toContain('anode');
    expect(codes(two)).toContain('module-cleaning');
    const water = { ...two, design: { ...two.design, loop: { ...two.design.loop, fluid: 'water' as const } } };
    expect(codes(water)).not.toContain('glycol-test');
    const flush = (waterHardness: number): number =>
      maintenanceCalendar(two, { from: '2025-03-01', waterHardness }).tasks.find(({ code }) => code === 'flush')!
        .everyMonths;
    expect([flush(1), flush(3)]).toEqual([12, 6]);
  });

  it('old fluid is due in the first autumn', () => {
    const { tasks } = maintenanceCalendar(two, { from: '2025-03-01', fluidAge: 30 });
    expect(tasks.find(({ code }) => code === 'glycol-change')!.dates[0]!.slice(0, 4)).toBe('2025');
  });

  it('refuses options with every fault of them', () => {
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
