import { describe, expect, it } from 'vitest';
import { answers, inputs } from './zod.ts';

// All 33 721 were tried once; one of 131, which takes seconds: zod.test.ts.
describe('our parts of zod against the whole library [requirement: same designs, same faults in the same words]', () => {
  it('answers alike to one of 5 of every field with every kind of value', async () => {
    const tried = inputs(5);
    const [ours, whole] = [await answers(tried, 'parts'), await answers(tried, 'whole')];
    expect(ours.filter((answer, at) => answer !== whole[at])).toEqual([]);
    expect(ours.filter((answer) => answer.includes('"assumptions"')).length).toBeGreaterThan(150);
    expect(new Set(ours).size).toBeGreaterThan(3000);
  });
});
