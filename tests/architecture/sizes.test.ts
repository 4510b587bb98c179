import { describe, expect, it } from 'vitest';
import { circlesOf, readSources, sourceOf } from './sources.ts';

const sources = readSources();
const CORE = 'packages/sim-core/src/';

/** Lines of a file; [requirement]. */
const MOST_LINES = 250;
/** Made by code, and may be long. */
const MADE_BY_CODE = [`${CORE}define/system-input.ts`];

// Lines and parameters of functions are held by the linter, biome.json.
describe('sources of the packages [requirement: files that one reads at once]', () => {
  it('stand in no circle, types included', () => {
    expect(circlesOf(sources)).toEqual([]);
  });

  it('have at most 250 lines', () => {
    const long = sources.filter(({ lines }) => lines > MOST_LINES);
    expect(long.map(({ path }) => path)).toEqual(MADE_BY_CODE);
  });

  it('are seen as they are: lines, imports and circles of a sample [by hand]', () => {
    const text = [
      "import type { B } from './b.ts';",
      "import { readFileSync } from 'node:fs';",
      "export const six = (a: B) => [a, 'from six'];",
      'export {',
      '  d,',
      "} from '../d.ts';",
      "import './e.ts';",
      '',
    ].join('\n');
    const sample = sourceOf('packages/p/src/a.ts', text);
    expect(sample).toEqual({
      path: 'packages/p/src/a.ts',
      lines: 7,
      imports: ['packages/p/src/b.ts', 'packages/p/d.ts', 'packages/p/src/e.ts'],
    });
    const one = (path: string, from: string) => sourceOf(`packages/p/src/${path}`, `export * from '${from}';\n`);
    expect(circlesOf([sample, one('b.ts', './in/c.ts'), one('in/c.ts', '../a.ts'), one('d.ts', './a.ts')])).toEqual([
      ['packages/p/src/a.ts', 'packages/p/src/b.ts', 'packages/p/src/in/c.ts'],
    ]);
  });
});
