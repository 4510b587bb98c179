import { evaluateCase } from './evaluate.ts';
import type { StudyRunner } from './types.ts';

/** Time after which others get their turn. [ms] */
const PATIENCE = 20;

/** Simulates in this thread, one design at a time, and lets timers and events of the thread have their turn in between. */
export function inThisThread(): StudyRunner {
  let turn = performance.now();
  return {
    tasks: 1,
    designsPerTask: () => 1,
    run: async ({ cases, weathers, request }) => {
      if (performance.now() - turn > PATIENCE) {
        await new Promise((resolve) => setTimeout(resolve, 0));
        turn = performance.now();
      }
      return cases.map((one) => evaluateCase(one, weathers[one.weather]!, request));
    },
  };
}
