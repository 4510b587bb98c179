import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { afterAll, describe, expect, it, vi } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));
// Inside the checkout, so that the packages are found; `out` is not committed.
const folder = `${root}out/guide-snippets`;
const guide = readFileSync(`${root}docs/guides/weather.md`, 'utf8');
const snippets = [...guide.matchAll(/```ts\n([\s\S]*?)```/g)].map(([, code]) => code!);

afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('docs/guides/weather.md [requirement]', () => {
  it('has a snippet for each kind of reader', () => expect(snippets).toHaveLength(4));

  // In this process, by the loader that the tests run on: a process of its own takes longer to start than they to run.
  it.each(snippets.map((code, index) => [index, code] as const))(
    'snippet %i runs and prints something',
    async (index, code) => {
      mkdirSync(folder, { recursive: true });
      const path = `${folder}/snippet-${index}.mts`;
      writeFileSync(path, code);
      const said = {
        log: vi.spyOn(console, 'log'),
        error: vi.spyOn(console, 'error'),
        warn: vi.spyOn(console, 'warn'),
      };
      for (const spy of Object.values(said)) spy.mockImplementation(() => {});
      try {
        await import(pathToFileURL(path).href);
        expect(said.log.mock.calls.flat().map(String).join('\n').length).toBeGreaterThan(10);
        expect([...said.error.mock.calls, ...said.warn.mock.calls]).toEqual([]);
      } finally {
        for (const spy of Object.values(said)) spy.mockRestore();
      }
    },
  );
});
