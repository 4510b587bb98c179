import type { Reporter, TestModule } from 'vitest/node';

/** Tests of the quick run should be done sooner: together they have two minutes on two cores. [ms] */
const SLOW = 3000;

/**
 * Ends a run with the tests that take longest, and one plain line, "N passed, N failed, N skipped", for logs that are read by tools. A slow test fails
 * nothing, for machines differ.
 */
export default class ClosingLine implements Reporter {
  readonly #looksForSlow: boolean;

  constructor(looksForSlow: boolean) {
    this.#looksForSlow = looksForSlow;
  }

  onTestRunEnd(modules: readonly TestModule[]): void {
    const count = { passed: 0, failed: 0, skipped: 0, pending: 0 };
    const slow: [number, string][] = [];
    for (const module of modules) {
      if (module.state() === 'failed' && [...module.children.allTests()].length === 0) count.failed++;
      for (const test of module.children.allTests()) {
        count[test.result().state]++;
        const duration = test.diagnostic()?.duration ?? 0;
        if (duration > SLOW) slow.push([duration, `${module.relativeModuleId}: ${test.name}`]);
      }
    }
    if (this.#looksForSlow && slow.length > 0) {
      const lines = slow
        .sort(([a], [b]) => b - a)
        .map(([ms, name]) => `${(ms / 1000).toFixed(1).padStart(6)} s  ${name}\n`);
      process.stdout.write(
        `\nSlower than ${SLOW / 1000} s; on a quiet machine such a test wants fewer hours, or the long run:\n${lines.join('')}`,
      );
    }
    process.stdout.write(
      `\n${count.passed} passed, ${count.failed} failed, ${count.skipped + count.pending} skipped\n`,
    );
  }
}
