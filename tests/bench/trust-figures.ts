// Writes the tables of docs/guides/trust.md, between their marks, from the validation tests themselves: they run with an ear on
// every comparison (trust-setup.ts). The tables that take minutes are those of docs/theory/validation.md, which
// tests/bench/validation-figures.ts writes; their ends are taken from there. Needs the reference tables and real weather files.
//     tsx --conditions=@noonloop/source tests/bench/trust-figures.ts            writes the page
//     tsx --conditions=@noonloop/source tests/bench/trust-figures.ts --check    fails where the page is out of date
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { hasShared } from '../shared.ts';
import { measuredInShort } from './measured-tables.ts';
import type { Comparison } from './trust-setup.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const page = `${root}docs/guides/trust.md`;
/** A written figure may differ so much from today's before the page is out of date: rounding of machines and compilers moves small ones. */
const STALE = 1.5;
/** Figures that count as nought: rounding of doubles. */
const NOUGHT = 1e-12;

/** One check: a describe block of a test file. */
interface Check {
  readonly file: string;
  readonly what: string;
  readonly comparisons: number;
  readonly figure: number;
  readonly limit: number;
}

function runChecks(): Check[] {
  const folder = mkdtempSync(join(tmpdir(), 'noonloop-trust-'));
  const heard = join(folder, 'heard.jsonl');
  writeFileSync(heard, '');
  const run = spawnSync('node_modules/.bin/vitest', ['run', '--config', 'vitest.trust.config.ts', 'tests/validation'], {
    cwd: root,
    encoding: 'utf8',
    maxBuffer: 1 << 26,
    env: { ...process.env, NOONLOOP_TRUST: heard },
  });
  if (run.status !== 0) throw new Error(`a check failed:\n${run.stdout.slice(-4000)}`);
  const lines = readFileSync(heard, 'utf8').split('\n').filter(Boolean);
  rmSync(folder, { recursive: true });
  const checks = new Map<string, Check>();
  for (const { file, name, figure, limit } of lines.map((line) => JSON.parse(line) as Comparison)) {
    const what = name.split(' > ')[0]!;
    const key = `${file} ${what}`;
    const before = checks.get(key) ?? { file, what, comparisons: 0, figure: 0, limit: Number.POSITIVE_INFINITY };
    const tighter = figure / limit >= before.figure / before.limit || before.comparisons === 0;
    checks.set(key, { ...before, comparisons: before.comparisons + 1, ...(tighter ? { figure, limit } : {}) });
  }
  return [...checks.values()].sort((a, b) => a.file.localeCompare(b.file));
}

/** Two digits, in figures that people read. */
function digits(value: number): string {
  return value >= 1e-3 && value < 1e4 ? String(Number(value.toPrecision(2))) : value.toExponential(1);
}

const row = (cells: readonly (string | number)[]): string => `| ${cells.join(' | ')} |`;

function checksTable(checks: readonly Check[]): string {
  const head = ['check [source]', 'in tests/validation', 'comparisons', 'closest call', 'allowed'];
  const rows = checks.map(({ what, file, comparisons, figure, limit }) =>
    row([
      what.replaceAll('|', '\\|'),
      file.replace('validation/', '').replace('.test.ts', ''),
      comparisons,
      figure < NOUGHT ? '0' : digits(figure),
      digits(limit),
    ]),
  );
  return [row(head), row(head.map(() => '---')), ...rows].join('\n');
}

/** Cells of a table of docs/theory/validation.md by its mark. */
function tableOf(name: string): string[][] {
  const text = readFileSync(`${root}docs/theory/validation.md`, 'utf8');
  const part = text.split(`<!-- ${name}:`)[1]!.split(`<!-- end of ${name} -->`)[0]!;
  const lines = part.split('\n').filter((line) => line.startsWith('| ') && !line.startsWith('| ---'));
  return lines.slice(1).map((line) => line.slice(2, -2).split(' | '));
}

const numeral = (cell: string): number => Number(cell.replace('−', '-').replace('+', ''));

function wholeSystem(): string {
  const referee = tableOf('referee').map((cells) => cells.slice(1).map(numeral));
  const monthly = tableOf('monthly');
  const differences = monthly.filter(([name]) => name !== 'mean').map((cells) => numeral(cells[5]!));
  const mean = monthly.find(([name]) => name === 'mean')![5]!;
  const worst = (column: number) => Math.max(...referee.map((cells) => cells[column]!)).toFixed(3);
  const most = differences.reduce((high, value) => (Math.abs(value) > Math.abs(high) ? value : high));
  const lines = [
    ['temperature of the tank over a clear day, against an independent integration', `${worst(0)} K`, referee.length],
    ['absorber and pipes in even running, the same', `${worst(1)} K`, referee.length],
    ['annual solar fraction against the monthly method of EN 15316-4-3, mean', `${mean} points`, differences.length],
    ['the same, largest', `${most > 0 ? '+' : '−'}${Math.abs(most).toFixed(1)} points`, differences.length],
  ];
  const head = ['whole system', 'how far off', 'cases'];
  return [row(head), row(head.map(() => '---')), ...lines.map(row)].join('\n');
}

/** Puts a text between the marks of its name. */
function put(text: string, name: string, figures: string): string {
  const marks = new RegExp(`(<!-- ${name}: [^>]*-->\\n)[\\s\\S]*?(<!-- end of ${name} -->)`);
  if (!marks.test(text)) throw new Error(`no marks "${name}" in ${page}`);
  return text.replace(marks, (_, from: string, to: string) => `${from}\n${figures}\n\n${to}`);
}

/** Whether a written cell still says what is so. */
function holds(written: string, now: string): boolean {
  const [a, b] = [written, now].map((cell) => Math.abs(numeral(cell.split(' ')[0]!)));
  if (written === now) return true;
  if (!Number.isFinite(a) || !Number.isFinite(b)) return false;
  return Math.max(a!, b!) < NOUGHT || (a! <= STALE * b! && b! <= STALE * a!);
}

/** Rows of all tables by what they are about: first two cells. */
const rowsOf = (text: string): Map<string, string[]> =>
  new Map(
    text
      .split('\n')
      .filter((line) => line.startsWith('| '))
      .map((line) => line.slice(2, -2).split(' | '))
      .map((cells) => [cells.length > 3 ? `${cells[0]} (${cells[1]})` : cells[0]!, cells]),
  );

/** What is out of date, in words: a check that is gone, another limit, or a figure that moved. New checks are only told of. */
function stale(written: string, now: string): string[] {
  const [before, after] = [rowsOf(written), rowsOf(now)];
  const fresh = [...after.keys()].filter((key) => !before.has(key));
  if (fresh.length > 0) console.log(`not on the page yet: ${fresh.join('; ')}`);
  return [...before].flatMap(([key, cells]) => {
    const today = after.get(key);
    if (today === undefined) return [`gone: ${key}`];
    // How many comparisons a check makes may grow; what it found and allows must stand.
    const alike = cells.every((cell, at) => (cells.length > 3 && at === 2) || holds(cell, today[at]!));
    return alike ? [] : [`"${cells.join(' | ')}" is now "${today.join(' | ')}"`];
  });
}

const check = process.argv.includes('--check');
if (!hasShared('reference/fluids.csv')) {
  console.log('skipped: the reference tables are not there');
  process.exit(check ? 0 : 1);
}
const checks = runChecks();
const written = readFileSync(page, 'utf8');
let text = put(written, 'whole', wholeSystem());
if (hasShared('measured/README.md')) text = put(text, 'measured', measuredInShort());
text = put(text, 'checks', checksTable(checks));
const comparisons = checks.reduce((sum, check) => sum + check.comparisons, 0);
text = put(text, 'sum', `${comparisons} comparisons in ${checks.length} checks, each within what its test allows.`);
if (check) {
  const found = stale(written, text);
  for (const line of found) console.error(line);
  if (found.length > 0) {
    console.error('docs/guides/trust.md is out of date; run: pnpm run trust');
    process.exitCode = 1;
  } else console.log(`docs/guides/trust.md is up to date: ${comparisons} comparisons in ${checks.length} checks`);
} else writeFileSync(page, text);
