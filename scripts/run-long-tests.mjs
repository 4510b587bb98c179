// Runs the tests that take minutes, which the plain test command leaves out.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const { status } = spawnSync('node_modules/.bin/vitest', ['run'], {
  cwd: root,
  stdio: 'inherit',
  env: { ...process.env, NOONLOOP_LONG: '1' },
});
process.exit(status ?? 1);
