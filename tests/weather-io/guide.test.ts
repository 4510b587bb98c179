import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));
// Inside the checkout, so that the packages are found; `out` is not committed.
const folder = `${root}out/guide-snippets`;
const guide = readFileSync(`${root}docs/guides/weather.md`, 'utf8');
const snippets = [...guide.matchAll(/```ts\n([\s\S]*?)```/g)].map(([, code], index) => ({ index, code: code! }));

afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('docs/guides/weather.md [requirement]', () => {
  it('has a snippet for each kind of reader', () => expect(snippets).toHaveLength(4));

  it('each snippet runs and prints something', () => {
    mkdirSync(folder, { recursive: true });
    // One after the other in one process, which takes longer to start than they to run.
    const all = snippets.map(({ index, code }) => {
      writeFileSync(`${folder}/snippet-${index}.mts`, code);
      return `console.log('<snippet>');\nawait import('./snippet-${index}.mts');\n`;
    });
    const path = `${folder}/all.mts`;
    writeFileSync(path, all.join(''));
    const run = spawnSync(process.execPath, [...process.execArgv, path], { cwd: root, encoding: 'utf8' });
    expect(run.stderr).toBe('');
    expect(run.status).toBe(0);
    const printed = run.stdout.split('<snippet>\n').slice(1);
    expect(printed).toHaveLength(snippets.length);
    for (const text of printed) expect(text.length).toBeGreaterThan(10);
    if (process.env.SHOW !== undefined) console.log(run.stdout);
  });
});
