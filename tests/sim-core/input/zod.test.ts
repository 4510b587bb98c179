import { describe, expect, it } from 'vitest';
import { answers, inputs } from './zod.ts';

// One of 5: zod.long.test.ts.
describe('our parts of zod against the whole library [requirement: same designs, same faults in the same words]', () => {
  it('answers alike to one of 131 of every field with every kind of value', async () => {
    const tried = inputs(131);
    const [ours, whole] = [await answers(tried, 'parts'), await answers(tried, 'whole')];
    expect(ours.filter((answer, at) => answer !== whole[at])).toEqual([]);
    expect(ours.filter((answer) => answer.includes('"assumptions"')).length).toBeGreaterThan(5);
    expect(new Set(ours).size).toBeGreaterThan(125);
  });
});
