import { defineSystem } from '@noonloop/sim-core';
import { expect, it } from 'vitest';
import { CAUSES } from '../../../../packages/sim-core/src/advice/check/causes.ts';
import { buildLibrary } from '../../../../packages/sim-core/src/advice/check/library.ts';
import { observe } from '../../../../packages/sim-core/src/advice/check/observe.ts';
import { noiseSchema, uncertaintySchema } from '../../../../packages/sim-core/src/advice/check/uncertainty.ts';
import { NAMED_FROM } from '../../../../packages/sim-core/src/advice/check/verdict.ts';
import { weigh } from '../../../../packages/sim-core/src/advice/check/weigh.ts';
import { checkInput } from '../../../../packages/sim-core/src/input/check.ts';
import { inventedValley, plainInput } from '../../../examples.ts';
import { GAUGE_SETS, plant } from './planted.ts';

// A small sample of the proof in docs/theory/check-log.md: bounds are its rates less three standard errors of so few logs.
it('thirty logs of a month of spring with all gauges: right first in two thirds of the faults, few false alarms [requirement]', async () => {
  const design = defineSystem(plainInput);
  const weather = await inventedValley();
  const uncertainty = checkInput(uncertaintySchema, {});
  const noise = checkInput(noiseSchema, {});
  const span = { from: 2700, to: 2700 + 240 + 28 * 24 };
  const library = buildLibrary(design, weather, span, { uncertainty, members: 12, seed: 1 });
  const gauges = GAUGE_SETS['all gauges']!;
  let seed = 8_000_000;
  const outcomes = CAUSES.flatMap((cause) =>
    Array.from({ length: cause === 'healthy' ? 12 : 2 }, () => {
      const common = { design, weather, span, settle: 240, uncertainty, noise, gauges, readings: 24 };
      const { weights } = weigh(library, observe(plant({ ...common, cause, seed: ++seed }).log), noise);
      const first = CAUSES.reduce((a, b) => (weights[b] > weights[a] ? b : a));
      return { cause, first, named: weights[first] >= NAMED_FROM };
    }),
  );
  const faulty = outcomes.filter(({ cause }) => cause !== 'healthy');
  const healthy = outcomes.filter(({ cause }) => cause === 'healthy');
  expect(faulty.filter(({ cause, first }) => first === cause).length).toBeGreaterThanOrEqual(9);
  expect(healthy.filter(({ first, named }) => named && first !== 'healthy').length).toBeLessThanOrEqual(2);
});
