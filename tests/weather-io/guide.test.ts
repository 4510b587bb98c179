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

  it.each(snippets)('snippet $index runs and prints something', ({ index, code }) => {
    mkdirSync(folder, { recursive: true });
    const path = `${folder}/snippet-${index}.mts`;
    writeFileSync(path, code);
    const run = spawnSync(process.execPath, [...process.execArgv, path], {
      cwd: root,
      encoding: 'utf8',
    });
    expect(run.stderr).toBe('');
    expect(run.status).toBe(0);
    expect(run.stdout.length).toBeGreaterThan(10);
    if (process.env.SHOW !== undefined) console.log(run.stdout);
  });
});
