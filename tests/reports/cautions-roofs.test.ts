import { cautions } from '@noonloop/reports';
import type { PvDesign, RunResult } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { fixture } from './fixture.ts';

/** The run with another number of modules in series. */
const inSeries = (count: number): RunResult => {
  const run = fixture();
  const pv: PvDesign = { ...run.design.pv, inSeries: count };
  return { ...run, design: { ...run.design, pv } };
};
const voltage = (run: RunResult) => cautions(run).find(({ code }) => code === 'module-voltage');

describe('modules in series', () => {
  it('are a danger from 60 V in the cold: 3 × (21.6 V + 35 K × 0.075 V/K) are 72.68 V, two are 48.45 V [by hand]', () => {
    expect(voltage(inSeries(1))).toBeUndefined();
    expect(voltage(inSeries(2))).toBeUndefined();
    expect(voltage(inSeries(3))).toMatchObject({ severity: 'danger', who: 'A licensed electrician.' });
    expect(voltage(inSeries(3))!.finding).toContain('72.68 V');
  });
});
