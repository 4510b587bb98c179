import { describe, expect, it } from 'vitest';
import { circlesOf, readSources, sourceOf } from './sources.ts';

const sources = readSources();
const CORE = 'packages/sim-core/src/';

/** Lines of a file; [requirement]. */
const MOST_LINES = 250;
/** Lines of a function in the year, whose phases are read on one screen, and elsewhere; [requirement]. */
const MOST_OF_A_FUNCTION = { year: 68, elsewhere: 100 };
/** Parameters of a function; [requirement]. */
const MOST_PARAMETERS = 5;

/** Made by code, and may be long. */
const MADE_BY_CODE = [`${CORE}define/system-input.ts`];

describe('sources of the packages, by the compiler’s own parser [requirement: files and functions that one reads at once]', () => {
  it('stand in no circle, types included', () => {
    expect(circlesOf(sources)).toEqual([]);
  });

  it('have at most 250 lines', () => {
    const long = sources.filter(({ lines }) => lines > MOST_LINES);
    expect(long.map(({ path }) => path)).toEqual(MADE_BY_CODE);
  });

  it('have functions of at most 68 lines in the year and 100 elsewhere', () => {
    const long = sources.flatMap(({ path, functions }) => {
      const most = path.startsWith(`${CORE}year/`) ? MOST_OF_A_FUNCTION.year : MOST_OF_A_FUNCTION.elsewhere;
      return functions.filter(({ lines }) => lines > most);
    });
    expect(long.map(({ name }) => name)).toEqual([]);
  });

  it('have functions of at most 5 parameters', () => {
    const many = sources.flatMap(({ functions }) => functions).filter(({ parameters }) => parameters > MOST_PARAMETERS);
    expect(many.map(({ name }) => name)).toEqual([]);
  });

  it('are seen as they are: lines, functions, parameters and circles of a sample [by hand]', () => {
    const text = [
      "import type { B } from './b.ts';",
      'export function add(a: number, b: number): number {',
      '  return a + b;',
      '}',
      'export const six = (a: B, b: B, c: B, d: B, e: B, f: B) => [a, b, c, d, e, f];',
      '',
    ].join('\n');
    const sample = sourceOf('packages/p/src/a.ts', text);
    expect(sample).toEqual({
      path: 'packages/p/src/a.ts',
      lines: 5,
      functions: [
        { name: 'add', lines: 3, parameters: 2 },
        { name: 'six', lines: 1, parameters: 6 },
      ],
      imports: ['packages/p/src/b.ts'],
    });
    const one = (path: string, from: string) => sourceOf(`packages/p/src/${path}`, `export * from '${from}';\n`);
    expect(circlesOf([sample, one('b.ts', './in/c.ts'), one('in/c.ts', '../a.ts'), one('d.ts', './a.ts')])).toEqual([
      ['packages/p/src/a.ts', 'packages/p/src/b.ts', 'packages/p/src/in/c.ts'],
    ]);
  });
});
