// Listens to the tests' own comparisons: how far off each was, and what it was allowed. Used by tests/bench/trust-figures.ts alone.
import { appendFileSync } from 'node:fs';
import { afterAll, expect } from 'vitest';

/** One comparison of a test: how far off, and the limit that the test sets. */
export interface Comparison {
  /** Test file. */
  readonly file: string;
  /** Names of describe blocks and test, joined by " > ". */
  readonly name: string;
  /** What came out, or by how much it differs. */
  readonly figure: number;
  /** What the test allows. */
  readonly limit: number;
}

const heard: Comparison[] = [];

function hear(
  state: { currentTestName?: string | undefined; testPath?: string | undefined },
  figure: number,
  limit: number,
) {
  const file = state.testPath?.split('/tests/').at(-1) ?? '';
  heard.push({ file, name: state.currentTestName ?? '', figure, limit });
}

/** A matcher that hears the two numbers and judges as the plain one does. */
const bound = (judge: (received: number, limit: number) => boolean, sign: string, upper: boolean) =>
  function (this: { currentTestName?: string; testPath?: string; isNot: boolean }, received: number, limit: number) {
    if (upper && typeof received === 'number' && received >= 0 && limit > 0 && !this.isNot) hear(this, received, limit);
    return {
      pass: judge(received, limit),
      message: () => `expected ${received} to be ${this.isNot ? 'not ' : ''}${sign} ${limit}`,
    };
  };

expect.extend({
  toBeLessThan: bound((received, limit) => received < limit, 'below', true),
  toBeLessThanOrEqual: bound((received, limit) => received <= limit, 'at most', true),
  toBeCloseTo(received: number, expected: number, digits = 2) {
    const limit = 10 ** -digits / 2;
    const figure = Math.abs(received - expected);
    if (!this.isNot) hear(this, figure, limit);
    const pass = received === expected || figure < limit;
    return {
      pass,
      message: () => `expected ${received} to be ${this.isNot ? 'not ' : ''}within ${limit} of ${expected}`,
    };
  },
});

afterAll(() => {
  const file = process.env.NOONLOOP_TRUST;
  if (file !== undefined)
    appendFileSync(
      file,
      heard
        .splice(0)
        .map((one) => `${JSON.stringify(one)}\n`)
        .join(''),
    );
});
