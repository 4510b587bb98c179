import { summarize } from '@noonloop/reports';
import {
  compare,
  DEFAULT_MEASURES,
  defineSystem,
  MEASURE_UNITS,
  type Measure,
  simulate,
  sweep,
} from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { inventedValley, plainInput, withPanels } from '../../examples.ts';
import { coarse } from './small.ts';

const weather = await inventedValley();

const issuesOf = (make: () => unknown): { path: string; expected: string }[] => {
  try {
    make();
  } catch (error) {
    return (error as { issues: { path: string; expected: string }[] }).issues;
  }
  throw new Error('nothing was refused');
};

describe('order of a sweep [definition]', () => {
  it('turns the last axis fastest, weather slowest, and sets what the row says', () => {
    const other = { ...weather, source: 'another' };
    const study = sweep(
      plainInput,
      {
        'array.tilt': { from: '20 deg', to: 60, count: 3 },
        size: { variants: { small: { 'array.panels': 2, 'tank.volume': '200 L' }, large: { 'array.panels': 4 } } },
        'draw.dailyVolume': ['150 L', 0.25],
      },
      [weather, other],
    );
    expect(study.total).toBe(24);
    expect(study.caseAt(3)).toMatchObject({
      inputs: { 'array.tilt': 20, size: 'large', 'draw.dailyVolume': 0.25 },
      design: { array: { tilt: 20, panels: 4, collector: { area: 2 } }, tank: { volume: 0.3 } },
      weather: 0,
    });
    expect(study.caseAt(12 + 4)).toMatchObject({
      inputs: { 'array.tilt': 40, size: 'small', 'draw.dailyVolume': 0.15 },
      design: { array: { panels: 2 }, tank: { volume: '200 L' } },
      weather: 1,
    });
    expect(plainInput.array.tilt).toBe(40);
  });
});

describe('rows', () => {
  it('have the numbers of the report, to the bit, by year and month [equality]', async () => {
    const all = Object.keys(MEASURE_UNITS) as Measure[];
    const design = withPanels(3);
    const [row] = await compare([design], weather, { ...coarse, measures: all, monthly: all }).outcome();
    const summary = summarize(simulate(design, weather, coarse.steps));
    for (const measure of all) {
      expect(row!.measures[measure]).toBe(summary.year[measure]);
      expect(row!.months![measure]).toEqual(summary.months.map((month) => month[measure]));
    }
    expect(row!.inputs).toEqual({ design: '3 panels' });
  });

  it('carry the error of a design that cannot be simulated, and the study goes on [requirement]', async () => {
    const study = sweep(plainInput, { 'tank.volume': [-1, 0.3, '3 kWh'] }, weather, coarse);
    const rows = await study.outcome();
    expect(rows.map(({ error }) => error?.issues?.[0]?.path)).toEqual(['tank.volume', undefined, 'tank.volume']);
    expect(rows[0]!.measures).toEqual({});
    expect(Object.keys(rows[1]!.measures)).toEqual([...DEFAULT_MEASURES]);
  });

  it('are the same whether a design is written or defined [equality]', async () => {
    const rows = await compare([plainInput, defineSystem(plainInput)], weather, coarse).outcome();
    expect(rows[1]!.measures).toEqual(rows[0]!.measures);
  });
});

describe('what rows show of their inputs [requirement]', () => {
  it('quantities of a list are numbers in the unit of their field, so that a cost can be made of them', () => {
    const study = sweep(plainInput, { 'tank.volume': ['200 L', 0.3, '80 gal'], 'array.skyModel': ['perez'] }, weather);
    const shown = [0, 1, 2].map((index) => study.caseAt(index).inputs);
    // 80 US gallons of 231 cubic inches of 25.4 mm each
    const gallons = 80 * 231 * 0.0254 ** 3;
    expect(shown.map((inputs) => inputs['tank.volume'])).toEqual([0.2, 0.3, expect.closeTo(gallons, 12)]);
    expect(shown[0]!['array.skyModel']).toBe('perez');
  });

  it('the compiler knows the figures asked for, behind the error', async () => {
    const [row] = await sweep(plainInput, { 'array.panels': [2] }, weather, {
      ...coarse,
      measures: ['pumpHours', 'reliefHeat'],
    }).outcome();
    if (row?.error !== undefined) throw new Error(row.error.message);
    const relief: number | undefined = row?.measures.reliefHeat;
    expect(relief).toBe(0);
    // @ts-expect-error: this one was not asked for
    expect(row?.measures.burnerLoss).toBe(undefined);
  });

  it('a value that the field refuses stays as it was written', () => {
    const study = sweep(plainInput, { 'tank.volume': ['200 L', '9 kg'] }, weather);
    expect(study.caseAt(1).inputs['tank.volume']).toBe('9 kg');
  });
});

describe('what a study refuses before it starts [requirement]', () => {
  it('names places that no design has, all at once', () => {
    const issues = issuesOf(() =>
      // @ts-expect-error: the compiler refuses them too
      sweep(plainInput, { 'array.tild': [1], 'tank.volume': [0.3], nothing: [2], 'array. tilt': [3] }, weather),
    );
    expect(issues.map(({ path }) => path).sort()).toEqual(['array. tilt', 'array.tild', 'nothing']);
  });

  it('names faults of the base that no axis mends, and lets an axis mend what is missing', () => {
    const { tank: _, ...noTank } = plainInput;
    const bad = { ...noTank, draw: { dailyVolume: -1 } } as unknown as typeof plainInput;
    const issues = issuesOf(() => sweep(bad, { 'tank.volume': [0.3] }, weather));
    expect(issues.map(({ path }) => path)).toEqual(['draw.dailyVolume']);
    expect(sweep(noTank as typeof plainInput, { 'tank.volume': [0.3] }, weather).total).toBe(1);
  });

  it('wants a design as written for a base, axes with values, known options and key figures', () => {
    const axes = { 'tank.volume': [0.3] };
    expect(issuesOf(() => sweep(defineSystem(plainInput) as never, axes, weather))[0]!.path).toBe('base');
    expect(issuesOf(() => sweep(plainInput, {}, weather))[0]!.path).toBe('axes');
    expect(issuesOf(() => sweep(plainInput, { 'tank.volume': [] }, weather))[0]!.path).toBe('axes.tank.volume');
    expect(issuesOf(() => sweep(plainInput, axes, weather, { step: {} } as never))[0]!.path).toBe('options.step');
    expect(issuesOf(() => sweep(plainInput, axes, weather, { measures: ['joy' as never] }))[0]!.path).toBe(
      'measures.0',
    );
    expect(issuesOf(() => sweep(plainInput, axes, {} as never))[0]!.path).toBe('weather[0]');
    const steps = { 'array.collector.name': { from: 1, to: 2, count: 3 } };
    expect(issuesOf(() => sweep(plainInput, steps as never, weather)).length).toBeGreaterThan(0);
  });

  it('takes no field through the prototype', () => {
    const issues = issuesOf(() => sweep(plainInput, { 'constructor.prototype.panels': [9] } as never, weather));
    expect(issues[0]!.path).toContain('constructor');
    expect(({} as { panels?: number }).panels).toBeUndefined();
  });
});
