// How many of some hundred houses, off in every cause at once and each simulated in full, a band of 90 % holds: the table of docs/theory/studies.md.
// Needs the weather of ../shared besides the committed one. Each house is a year; a folder keeps them, for bands that have changed.
//     node --import ./tests/typescript.mjs --conditions=@noonloop/source tests/bench/band-coverage.ts [houses] [folder]
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { bands } from '@noonloop/sim-core';
import { readWeather } from '@noonloop/weather-io';
import { inventedValley } from '../examples.ts';
import { sharedFile } from '../shared.ts';
import { BAND_CASES, BANDED, heldBy, type Truth, truths } from '../sim-core/study/band-truth.ts';
import { put, sharesLike, table } from './page-tables.ts';

const count = Number(process.argv[2] ?? 200);
const folder = process.argv[3];
const page = fileURLToPath(new URL('../../docs/theory/studies.md', import.meta.url));
const NAMES = [
  'fuel saved',
  'fuel saving',
  'by the sun',
  'heat',
  'stagnation',
  'at the limit',
  'tank peak',
  'absorber',
];
const WEATHERS = {
  'invented valley': inventedValley,
  'northern Italy': () => readWeather(sharedFile('weather/pvgis-45N-8E.csv')),
};

async function kept(path: string | null, make: () => Promise<Truth[]>): Promise<Truth[]> {
  if (path !== null && existsSync(path)) return JSON.parse(readFileSync(path, 'utf8')) as Truth[];
  const made = await make();
  if (path !== null) writeFileSync(path, JSON.stringify(made));
  return made;
}

const percent = (share: number): string => (100 * share).toFixed(0);
const rows: string[][] = [];
const shares = BANDED.map((): number[] => []);
let seed = 700;
for (const [place, read] of Object.entries(WEATHERS)) {
  const weather = await read();
  for (const [name, one] of Object.entries(BAND_CASES)) {
    seed++;
    const own = seed;
    const houses = await kept(folder === undefined ? null : `${folder}/truth-${own}.json`, () =>
      truths(one, weather, own, count),
    );
    const found = await bands(one.base, weather, { ...one.known, measures: BANDED }).outcome();
    const held = BANDED.map((measure) => heldBy(found[measure]!, houses, measure));
    for (const [at, share] of held.entries()) if (share !== null) shares[at]!.push(share);
    rows.push([place, name, ...held.map((share) => (share === null ? '–' : percent(share)))]);
    console.error(rows.at(-1)!.join(' | '));
  }
}
const together = shares.map((list) => list.reduce((sum, share) => sum + share, 0) / list.length);
const likely = together.map((share, at) =>
  sharesLike(share, count * shares[at]!.length)
    .map(percent)
    .join(' to '),
);
rows.push(['all', 'together', ...together.map(percent)], ['', 'likely (95 %)', ...likely]);
const text = table(['weather', 'design', ...NAMES], rows);
console.log(text);
writeFileSync(page, put(readFileSync(page, 'utf8'), 'coverage', `${count} houses a row, %:\n\n${text}`));
