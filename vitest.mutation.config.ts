import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

/** Reference tables beside the checkout: Stryker's copy lies three folders deeper (out/mutation/sandbox). */
const inCopy = import.meta.url.includes('/out/mutation/');
const shared = fileURLToPath(new URL(inCopy ? '../../../../shared' : '../shared', import.meta.url));

// For Stryker, which changes a copy of the sources: packages are named by their place in that copy.
const source = (path: string): string => fileURLToPath(new URL(`./packages/${path}`, import.meta.url));

export default defineConfig({
  resolve: {
    alias: [
      { find: '@noonloop/weather-io/calendar', replacement: source('weather-io/src/time/calendar.ts') },
      { find: '@noonloop/weather-io/sun', replacement: source('weather-io/src/sun/index.ts') },
      { find: '@noonloop/weather-io', replacement: source('weather-io/src/index.ts') },
      { find: '@noonloop/sim-core/formulas', replacement: source('sim-core/src/formulas.ts') },
      { find: '@noonloop/sim-core', replacement: source('sim-core/src/index.ts') },
      { find: '@noonloop/reports', replacement: source('reports/src/index.ts') },
    ],
  },
  test: {
    // Without it the copy finds no tables, and every test that reads one is skipped.
    env: { NOONLOOP_SHARED: process.env.NOONLOOP_SHARED ?? shared },
    // Tests of single formulas, of single steps and of ten days, some hundredths of a second each; whole years would take days with each of thousands of changes.
    include: [
      'tests/reference-model/*.test.ts',
      'tests/sim-core/physics/{backup,control,fluid}/*.test.ts',
      'tests/sim-core/physics/tank/{charge,inlet-jet,inversion,losses,transport}.test.ts',
      'tests/sim-core/physics/collector/{cold-start,efficiency,incidence,night-sky}.test.ts',
      'tests/sim-core/physics/draw/{days,mains,profile,schedule}.test.ts',
      'tests/sim-core/physics/loop/{circuit,coil-conductance,coil-step,exchanger,expansion,pressure}.test.ts',
      'tests/sim-core/physics/pv/{datasheet,operating-point,power-table,single-diode}.test.ts',
      'tests/sim-core/ranges.test.ts',
      'tests/validation/{biaxial-modifier,collector-efficiency,collector-flow,collector-tables,fluids}.test.ts',
      'tests/validation/{friction,heat-exchanger,heat-transfer-films,heater-labels,incidence-modifier}.test.ts',
      'tests/validation/{mains,pump,single-diode,tank,tapping-profiles}.test.ts',
    ],
    testTimeout: 60_000,
  },
});
