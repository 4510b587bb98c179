import type { Reporter, TestModule } from 'vitest/node';

/** Ends a run with one plain line, "N passed, N failed, N skipped", for logs that are read by tools. */
export default class ClosingLine implements Reporter {
  onTestRunEnd(modules: readonly TestModule[]): void {
    const count = { passed: 0, failed: 0, skipped: 0, pending: 0 };
    for (const module of modules) {
      if (module.state() === 'failed' && [...module.children.allTests()].length === 0) count.failed++;
      for (const test of module.children.allTests()) count[test.result().state]++;
    }
    process.stdout.write(
      `\n${count.passed} passed, ${count.failed} failed, ${count.skipped + count.pending} skipped\n`,
    );
  }
}
