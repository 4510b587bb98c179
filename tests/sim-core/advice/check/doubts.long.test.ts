import { defineSystem } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { weighAndDoubt } from '../../../../packages/sim-core/src/advice/check/doubts.ts';
import { buildLibrary } from '../../../../packages/sim-core/src/advice/check/library.ts';
import { observe } from '../../../../packages/sim-core/src/advice/check/observe.ts';
import { runSpan } from '../../../../packages/sim-core/src/advice/check/span-run.ts';
import { noiseSchema, uncertaintySchema } from '../../../../packages/sim-core/src/advice/check/uncertainty.ts';
import { checkInput } from '../../../../packages/sim-core/src/input/check.ts';
import { inventedValley, plainInput } from '../../../examples.ts';
import { first, logOf, readingsOf } from './readings.ts';

const design = defineSystem(plainInput);
const span = { from: 3000, to: 3000 + 240 + 14 * 24 };

// Ten millimetres, with the gauges of any household: doubts.test.ts.
describe('lime that a coil has in practice', () => {
  it('2 mm are found with good thermometers [0.002 m over 2.2 W/(m·K), handbook value from memory]', async () => {
    const weather = await inventedValley();
    const known = checkInput(uncertaintySchema, {
      ...{ eta0: 0.01, collectorLoss: 0.03, tankLoss: 0.05, draw: 0.02, dailyDraw: 0.02, sun: 0.01, dailySun: 0.01 },
      ...{ mains: 0.3, room: 0.5, thermometer: 0.2, model: 0.3, heaterLoss: 0.05 },
    });
    const sharp = checkInput(noiseSchema, { temperature: 0.3, time: 60 });
    const good = buildLibrary(design, weather, span, { uncertainty: known, members: 4, seed: 1 });
    const limed = { ...design, coil: { ...design.coil, fouling: design.coil.fouling + 0.002 / 2.2 } };
    // Mornings, noons and afternoons; the gauges some tenths off in turn.
    const hours = Array.from(
      { length: 42 },
      (_, at) => span.from + 240 + 24 * Math.trunc(at / 3) + [10, 12, 14][at % 3]!,
    );
    const off = (at: number) => [at % 2 === 0 ? 0.3 : -0.3, at % 3 === 0 ? 0.3 : -0.2, at % 5 === 0 ? 0.4 : -0.1, 2000];
    const observations = observe(
      logOf(readingsOf(runSpan(limed, weather, span, undefined, { stepsPerHour: 12 }), hours, off)),
    );
    const { weighing } = weighAndDoubt(good, observations, sharp);
    expect(first(weighing)).toBe('scaled-coil');
    const { thickness } = weighing.best.get('scaled-coil')!.form.facts;
    expect((thickness as { value: number }).value).toBeGreaterThanOrEqual(0.001);
    expect((thickness as { value: number }).value).toBeLessThanOrEqual(0.004);
  });
});
