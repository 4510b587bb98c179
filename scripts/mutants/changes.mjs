// The changes that Stryker's instrumenter makes of the year and of physics, and the sources with the switches of some of them.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { createInstrumenter } from '@stryker-mutator/instrumenter';
import { createInjector } from 'typed-inject';

const SOURCES = 'packages/sim-core/src';
const FOLDERS = [
  'year',
  ...['backup', 'collector', 'control', 'draw', 'fluid', 'loop', 'pv', 'tank'].map((name) => `physics/${name}`),
];
/** Lists of exports, tables of data, types, refusals, and words for people. */
const LEFT_OUT =
  /\/(index|tapping-data|result|loop-result|arguments|run-assumptions|expansion-working|labels|calendar)\.ts$/;
/** Refusals and their words are held by tests of bad input, in words that may change. */
const OF_WORDS = ['StringLiteral', 'ObjectLiteral', 'Regex'];

/** All changes of files whose path has `part`, and the instrumented text of each file. */
export async function changesOf(root, part) {
  const none = () => {};
  const logger = { info: none, debug: none, warn: none, trace: none, isDebugEnabled: () => false };
  const quiet = { ...logger, error: console.error, fatal: console.error };
  const instrumenter = createInjector()
    .provideValue('logger', quiet)
    .provideValue('getLogger', () => quiet)
    .injectFunction(createInstrumenter);
  const files = FOLDERS.flatMap((folder) =>
    readdirSync(join(root, SOURCES, folder)).map((name) => join(root, SOURCES, folder, name)),
  )
    .filter((name) => name.endsWith('.ts') && !LEFT_OUT.test(name) && name.includes(part))
    .map((name) => ({ name, mutate: true, content: readFileSync(name, 'utf8') }));
  const done = await instrumenter.instrument(files, {
    plugins: null,
    excludedMutations: OF_WORDS,
    ignorers: [],
    noHeader: true,
  });
  const lines = new Map(files.map(({ name, content }) => [name, content.split('\n')]));
  // Those left out by their kind are listed too, without a switch.
  const made = done.mutants.filter(({ status }) => status !== 'Ignored');
  const times = new Map();
  const changes = made.map(({ id, fileName, location: { start, end }, replacement }) => {
    const line = lines.get(fileName)[start.line];
    const to = start.line === end.line ? end.column : line.length;
    const marked = `${line.slice(0, start.column)}«${line.slice(start.column, to)}»${line.slice(to)}`.trim();
    const short = fileName.slice(join(root, SOURCES).length + 1);
    const change = `${short}: ${marked} → ${replacement.replaceAll(/\s+/g, ' ').slice(0, 90)}`;
    const nth = (times.get(change) ?? 0) + 1;
    times.set(change, nth);
    return {
      id: Number(id),
      file: short,
      folder: short.replace(/\/[^/]*$/, ''),
      line: start.line + 1,
      /** The same as long as its line is the same: lists of changes are kept by it. */
      name: nth === 1 ? change : `${change} (${nth})`,
    };
  });
  return { changes, texts: new Map(done.files.map(({ name, content }) => [name, content])) };
}

/** An instrumented text in which only some changes have a switch, so that the others cost nothing. */
export const thinned = (text, chosen) =>
  text
    .replaceAll(/stryMutAct_\w+\("(\d+)"\)/g, (_, id) =>
      chosen.has(Number(id)) ? `(__mutant === ${id} && __turn())` : 'false',
    )
    .replaceAll(/stryCov_\w+\(((?:"\d+"(?:, )?)+)\)/g, (_, list) => {
      const some = list.match(/\d+/g).filter((id) => chosen.has(Number(id)));
      return some.length === 0 ? '0' : `(${some.map((id) => `__reached[${id}] = 1`).join(', ')})`;
    });
