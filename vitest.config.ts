import { defineConfig } from 'vitest/config';
import ClosingLine from './tests/closing-line.ts';
import LongestFirst from './tests/longest-first.ts';

// Tests that simulate dozens of years or read thousands of files take minutes; they are a run of their own: `pnpm run vitest:long`.
const long = process.env.NOONLOOP_LONG === '1';

// Years live briefly and are large: with V8's own small heap a tenth of the time goes into collecting them. [MB]
const ROOM = ['--min-semi-space-size=32', '--max-semi-space-size=64', '--initial-old-space-size=1024'];

export default defineConfig({
  test: {
    include: [long ? 'tests/**/*.long.test.ts' : 'tests/**/*.test.ts'],
    exclude: long ? [] : ['tests/**/*.long.test.ts'],
    testTimeout: 180_000,
    hookTimeout: 180_000,
    // Tests run on the packages' sources, so no build comes before them, and as Node runs them: through Vite's own imports a year takes twice as long.
    execArgv: [
      '--conditions=@noonloop/source',
      '--import',
      new URL('tests/typescript.mjs', import.meta.url).href,
      ...ROOM,
    ],
    experimental: { viteModuleRunner: false, nodeLoader: false },
    // Files share what they import and no state; both cores of a small machine work.
    maxWorkers: '100%',
    isolate: false,
    sequence: { sequencer: LongestFirst },
    setupFiles: ['tests/same-bits.ts'],
    reporters: ['default', new ClosingLine(!long)],
  },
});
