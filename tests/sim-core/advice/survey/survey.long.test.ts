import { describe, expect, it } from 'vitest';
import { DRAWN, draws, yardTests } from './seeded.ts';

// Fewer, in a second: rate.test.ts and yard.test.ts.
describe('limits of surveys and yard tests', () => {
  it.each(Object.entries(DRAWN))('1000 seeded draws, %s [requirement]', (_, input) => {
    for (const { end, inside, of } of draws(input, 1000)) {
      expect(inside, `${of} inside`).toBeGreaterThan(0.86);
      expect(inside, `${of} inside`).toBeLessThan(0.94);
      expect(end, of).toBeLessThan(0.2);
    }
  });

  it('300 seeded tests in a yard: the 90 % limits hold the truth in 85 to 95 of 100 [definition]', () => {
    const { told, held } = yardTests(300);
    expect(told).toBeGreaterThan(270);
    for (const share of held) {
      expect(share).toBeGreaterThan(0.85);
      expect(share).toBeLessThanOrEqual(0.95);
    }
  });
});
