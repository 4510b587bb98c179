// Runs every example; one that fails, fails the run.
import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const examples = readdirSync(`${root}docs/examples`).filter((file) => file.endsWith('.ts'));
if (examples.length === 0) throw new Error('no examples found in docs/examples');

for (const example of examples) {
  console.log(`\n== docs/examples/${example}`);
  const { status } = spawnSync('node_modules/.bin/tsx', ['--conditions=@noonloop/source', `docs/examples/${example}`], {
    cwd: root,
    stdio: 'inherit',
  });
  if (status !== 0) throw new Error(`docs/examples/${example} ended with ${status}`);
}
console.log(`\n${examples.length} examples ran`);
