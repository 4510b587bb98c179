import { mergeConfig } from 'vitest/config';
import plain from './vitest.config.ts';

// The validation tests once more, with an ear on what they compare: tests/bench/trust-figures.ts.
export default mergeConfig(plain, { test: { setupFiles: ['tests/bench/trust-setup.ts'] } });
