import { defineConfig } from 'vitest/config';

// Tests run on the packages' sources, so no build comes before them.
const conditions = ['@noonloop/source'];

// Tests that simulate dozens of years or read thousands of files take minutes; they are a run of their own: `pnpm run vitest:long`.
const long = process.env.NOONLOOP_LONG === '1';

export default defineConfig({
  resolve: { conditions: [...conditions, 'node', 'import', 'module', 'default'] },
  ssr: {
    resolve: { conditions: [...conditions, 'node', 'import', 'module', 'default'], externalConditions: conditions },
  },
  test: {
    include: [long ? 'tests/**/*.long.test.ts' : 'tests/**/*.test.ts'],
    exclude: long ? [] : ['tests/**/*.long.test.ts'],
    testTimeout: 180_000,
    hookTimeout: 180_000,
    // Files share what they import and no state; both cores of a small machine work.
    maxWorkers: '100%',
    isolate: false,
    reporters: ['default', './tests/closing-line.ts'],
  },
});
