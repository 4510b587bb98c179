import { defineConfig } from 'vitest/config';
import plain from './vitest.config.ts';

// The validation tests once more, with an ear on what they compare: tests/bench/trust-figures.ts. Of the long ones those that go on with a quick one.
export default defineConfig({
  ...plain,
  test: {
    ...plain.test,
    exclude: ['tests/**/!(whole-system).long.test.ts'],
    setupFiles: [...[plain.test?.setupFiles ?? []].flat(), 'tests/bench/trust-setup.ts'],
  },
});
