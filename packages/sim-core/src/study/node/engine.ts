/** What computes the rows: our sources and the arithmetic of the JavaScript engine. */
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Folder of the package: of its sources, and of what is built of them. */
const HOME = fileURLToPath(new URL('../../../', import.meta.url));
/** Written when the package is built, from the same sources. */
const BUILT = 'dist/engine.txt';

/** What in `src` computes no row of a study: advice, files and threads, and lists of exports. */
const COMPUTES_NOTHING = ['advice', 'study/node', 'index.ts', 'formulas.ts'];

/** Half a SHA-256 in hexadecimal: enough that no two share it by chance. */
export const digest = (parts: Iterable<string | Uint8Array>): string => {
  const hash = createHash('sha256');
  for (const part of parts) hash.update(part);
  return hash.digest('hex').slice(0, 32);
};

/** Files of a folder and those in it, in order of their names; places begin at the folder. */
function filesIn(folder: string, within = ''): string[] {
  const entries = readdirSync(join(folder, within), { withFileTypes: true });
  return entries
    .map((entry) => ({ entry, place: within === '' ? entry.name : `${within}/${entry.name}` }))
    .filter(({ place }) => !COMPUTES_NOTHING.includes(place))
    .sort((one, other) => (one.place < other.place ? -1 : 1))
    .flatMap(({ entry, place }) => (entry.isDirectory() ? filesIn(folder, place) : [place]));
}

/**
 * Print of all sources that compute, comments included: those of this package, and the sun's of weather-io where they lie beside it.
 *
 * @param home - Folder of the package; it holds `src`.
 */
export function printOfSources(home: string = HOME): string {
  const folders = [join(home, 'src'), join(home, '../weather-io/src/sun')].filter(existsSync);
  return digest(
    folders.flatMap((folder) =>
      filesIn(folder).flatMap((place) => [
        `\n${place}\n`,
        readFileSync(join(folder, place), 'utf8').replaceAll('\r\n', '\n'),
      ]),
    ),
  );
}

let known: string | undefined;

/** Print of the sources that this code was built from, or is. */
export function enginePrint(): string {
  const built = join(HOME, BUILT);
  const isBuilt = import.meta.url.endsWith('.js') && existsSync(built);
  known ??= isBuilt ? readFileSync(built, 'utf8').trim() : printOfSources();
  return known;
}

/** Functions of `Math` that engines round differently, each with its range; roots and the four operations are the same everywhere. */
const FUNCTIONS = [
  ['sin', 3],
  ['cos', 3],
  ['tan', 1.5],
  ['asin', 1],
  ['acos', 1],
  ['atan', 20],
  ['exp', 20],
  ['expm1', 10],
  ['tanh', 5],
  ['cbrt', 20],
  ['log', 0],
  ['log10', 0],
  ['log1p', 0],
] as const;
const ARGUMENTS = 200;

/** The functions of an engine. */
type Arithmetic = Pick<Math, (typeof FUNCTIONS)[number][0] | 'atan2' | 'pow'>;

/** Print of what an engine's functions give for 3000 numbers: two with one print give the same bits. Node 20 and 22 do, 24 does not. */
export function arithmeticPrint(engine: Arithmetic = Math): string {
  const results = new Float64Array((FUNCTIONS.length + 2) * ARGUMENTS);
  let at = 0;
  for (let index = 0; index < ARGUMENTS; index++) {
    const share = (index + 0.5) / ARGUMENTS;
    for (const [name, range] of FUNCTIONS) {
      results[at++] = engine[name](range === 0 ? 50 * share : range * (2 * share - 1));
    }
    results[at++] = engine.atan2(share - 0.4, 0.7 - share);
    results[at++] = engine.pow(0.01 + 30 * share, 0.1 + 3 * share);
  }
  return digest([new Uint8Array(results.buffer)]);
}
