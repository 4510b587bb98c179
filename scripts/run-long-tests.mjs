// Runs the tests that take minutes, which the plain test command leaves out, and a sample of mutants of the year.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const { status } = spawnSync('node_modules/.bin/vitest', ['run'], {
  cwd: root,
  stdio: 'inherit',
  env: { ...process.env, NOONLOOP_LONG: '1' },
});
if (status !== 0) process.exit(status ?? 1);
const mutants = spawnSync(
  process.execPath,
  ['--import', './tests/typescript.mjs', 'scripts/mutants.mjs', '60', '5', '1'],
  {
    cwd: root,
    stdio: 'inherit',
  },
);
process.exit(mutants.status ?? 1);
