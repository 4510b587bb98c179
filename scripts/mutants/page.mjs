// What samples found, kept in samples.tsv by seed and folder, and the table of all of them in the page that tells of it.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const HEADS = [
  'folder',
  'changes',
  'change nothing',
  'reached',
  'noticed at first',
  'noticed now',
  'first by kept numbers',
];
const asRow = (cells) => `| ${cells.join(' | ')} |`;
const added = (one, other) => one.map((value, at) => value + other[at]);

/** Keeps the rows of a sample, what was noticed at first as it was, and writes the page's table anew. */
export function writeSample(root, seed, rows) {
  const file = join(root, 'scripts/mutants/samples.tsv');
  const lines = readFileSync(file, 'utf8').trim().split('\n');
  const kept = lines.map((line) => line.split('\t'));
  const first = (folder) => kept.find(([sample, name]) => sample === seed && name === folder)?.[5];
  const others = kept.filter(([sample]) => sample !== seed);
  const own = rows.map(([folder, tried, equivalent, reached, noticed, byKept]) =>
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
  const table = [HEADS, HEADS.map(() => '---'), ...[...sums].sort().map((row) => row.flat()), ['all', ...total]];
  const text = readFileSync(page, 'utf8');
  const marked = /(<!-- mutation: by folder -->\n)[\s\S]*?(?=<!-- end of folders -->)/;
  if (!marked.test(text)) throw new Error(`${page} has lost the marks of its table`);
  writeFileSync(
    page,
    text.replace(marked, (_, mark) => `${mark}\n${table.map(asRow).join('\n')}\n\n`),
  );
}
