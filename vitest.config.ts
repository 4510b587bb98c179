import { defineConfig } from 'vitest/config';

// Tests run on the packages' sources, so no build comes before them.
const conditions = ['@noonloop/source'];

export default defineConfig({
  resolve: { conditions: [...conditions, 'node', 'import', 'module', 'default'] },
  ssr: {
    resolve: { conditions: [...conditions, 'node', 'import', 'module', 'default'], externalConditions: conditions },
  },
  test: {
    include: ['tests/**/*.test.ts'],
    testTimeout: 180_000,
    reporters: ['default', './tests/closing-line.ts'],
  },
});
