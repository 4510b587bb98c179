// Ten days of nine designs by default against the explicit model, whose runs are kept; in steps of a minute, and the model through all ten days: the long test.
import type { RunColumns, SystemDesign } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { yearOf } from '../examples.ts';
import { type Lived, liveSpan } from '../property/span.ts';
import { COLUMN_NAMES } from './books.ts';
import { HOURS, tenDays } from './days.ts';
import { DESIGNS } from './designs.ts';
import { DEFAULT, faults } from './limits.ts';
import { referenceRun } from './model.ts';
import { differing, storedRun } from './stored.ts';

const weather = tenDays();

/** Hours in which every loop has begun to turn. */
const MORNING = 9;

/** Columns of parts that the model does not have: 0 in its designs, and held to closed forms in tests of their own (docs/theory/draw.md). */
const NOT_MODELLED: readonly (keyof RunColumns)[] = ['ringLoss', 'hotPipeLoss', 'loadHeat'];

const runs = new Map<SystemDesign, Lived>();
/** The ten days by default, lived through once. */
function byDefault(design: SystemDesign): Lived {
  const known = runs.get(design) ?? liveSpan(design, weather, 0, HOURS);
  runs.set(design, known);
  return known;
}

describe('a year hour by hour against an explicit model in 30 s steps [docs/theory, written apart; see the head of model.ts]', () => {
  it('the model holds every column of a result', () => {
    const { columns } = yearOf(DESIGNS[0]![1], weather);
    expect(Object.keys(columns).sort()).toEqual([...COLUMN_NAMES, ...NOT_MODELLED].sort());
    for (const name of NOT_MODELLED)
      expect(
        columns[name].every((value) => value === 0),
        name,
      ).toBe(true);
  });

  // Designs that take most from the library; all of them, all ten days: the long test.
  it.each(DESIGNS.filter(([name]) => /^(direct|plate|no check|unglazed|tubes)/.test(name)))(
    '%s: the model says of the first morning what is kept of it',
    (name, design) => {
      expect(differing(referenceRun(design, weather, MORNING), storedRun(name), MORNING)).toEqual([]);
    },
  );

  it('a simulated year begins with these hours', () => {
    const { columns } = yearOf(DESIGNS[0]![1], weather);
    const span = byDefault(DESIGNS[0]![1]);
    for (const name of COLUMN_NAMES) expect(columns[name].subarray(0, HOURS), name).toEqual(span.columns[name]);
  });

  it('between them the designs use every column', () => {
    const used = new Set<string>();
    for (const [, design] of DESIGNS) {
      const { columns } = byDefault(design);
      for (const name of COLUMN_NAMES) if (columns[name].some((value) => value !== 0)) used.add(name);
    }
    expect(COLUMN_NAMES.filter((name) => !used.has(name))).toEqual([]);
  });

  it.each(DESIGNS)('%s, by default', (name, design) => {
    const run = byDefault(design);
    expect(faults(name, run, storedRun(name), DEFAULT)).toEqual([]);
    for (const [part, { worstRelative }] of Object.entries(run.balance)) expect(worstRelative, part).toBeLessThan(1e-9);
  });
});
