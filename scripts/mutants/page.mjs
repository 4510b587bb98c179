// What samples found, kept in samples.tsv by seed and folder, and the table of all of them in the page that tells of it.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { put, table } from '../../tests/bench/page-tables.ts';

const HEADS = [
  'folder',
  'changes',
  'change nothing',
  'reached',
  'noticed at first',
  'noticed now',
  'first by kept numbers',
];
const added = (one, other) => one.map((value, at) => value + other[at]);

/** Keeps the rows of a sample, what was noticed at first as it was, and writes the page's table anew. */
export function writeSample(root, seed, found) {
  const file = join(root, 'scripts/mutants/samples.tsv');
  const lines = readFileSync(file, 'utf8').trim().split('\n');
  const kept = lines.map((line) => line.split('\t'));
  const first = (folder) => kept.find(([sample, name]) => sample === seed && name === folder)?.[5];
  const others = kept.filter(([sample]) => sample !== seed);
  const own = found.map(([folder, tried, equivalent, reached, noticed, byKept]) =>
    [seed, folder, tried, equivalent, reached, first(folder) ?? noticed, noticed, byKept].map(String),
  );
  const all = [...others, ...own];
  writeFileSync(file, `${all.map((cells) => cells.join('\t')).join('\n')}\n`);
  const sums = new Map();
  const none = HEADS.slice(1).map(() => 0);
  for (const [, folder, ...numbers] of all)
    for (const key of [folder, 'all']) sums.set(key, added(sums.get(key) ?? none, numbers.map(Number)));
  const total = sums.get('all');
  sums.delete('all');
  const page = join(root, 'docs/theory/robustness.md');
  const rows = [...sums].sort().map((row) => row.flat());
  writeFileSync(page, put(readFileSync(page, 'utf8'), 'folders', table(HEADS, [...rows, ['all', ...total]])));
}
