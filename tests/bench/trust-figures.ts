// Writes the tables of docs/theory/validation.md (validation-figures.ts) and docs/guides/trust.md, between their marks: the former computed anew,
// the latter from them and from the validation tests themselves, which run with an ear on every comparison (trust-setup.ts). Needs the reference
// tables and real weather files.
//     node --import ./tests/typescript.mjs --conditions=@noonloop/source tests/bench/trust-figures.ts            writes both pages
//     node --import ./tests/typescript.mjs --conditions=@noonloop/source tests/bench/trust-figures.ts --check    fails where one is out of date
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { hasShared } from '../shared.ts';
import { measuredInShort } from './measured-tables.ts';
import { cellsOf, holds, NOUGHT, numeral, put, row, table } from './page-tables.ts';
import type { Comparison } from './trust-setup.ts';
import { validationPage } from './validation-figures.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const trustPage = `${root}docs/guides/trust.md`;
const validation = `${root}docs/theory/validation.md`;
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

/** Ends of the computed tables. @param text - docs/theory/validation.md as it is now. */
function wholeSystem(text: string): string {
  const referee = cellsOf(text, 'referee').map((cells) => cells.slice(1).map(numeral));
  const monthly = cellsOf(text, 'monthly');
  const differences = monthly.filter(([name]) => name !== 'mean').map((cells) => numeral(cells[5]!));
  const mean = monthly.find(([name]) => name === 'mean')![5]!;
  const worst = (column: number) => Math.max(...referee.map((cells) => cells[column]!)).toFixed(3);
  const most = differences.reduce((high, value) => (Math.abs(value) > Math.abs(high) ? value : high));
  const lines = [
    [
      'temperature of the tank over a clear day outside the hour after a jump, against an independent integration',
      `${worst(0)} K`,
      referee.length,
    ],
    [
      'the same in the hour after a jump: pump started or stopped, a fifth of the tank drawn at once',
      `${worst(2)} K`,
      referee.length,
    ],
    ['absorber and pipes in even running, the same', `${worst(1)} K`, referee.length],
    ['annual solar fraction against the monthly method of EN 15316-4-3, mean', `${mean} points`, differences.length],
    ['the same, largest', `${most > 0 ? '+' : '−'}${Math.abs(most).toFixed(1)} points`, differences.length],
  ];
  const head = ['whole system', 'how far off', 'cases'];
  return table(head, lines);
}

/** Rows of all tables by what they are about: their words and whole numbers before the first figure. */
const rowsOf = (text: string): Map<string, string[]> =>
  new Map(
    text
      .split('\n')
      .filter((line) => line.startsWith('| '))
      .map((line) => line.slice(2, -2).split(' | '))
      .map((cells) => [
        cells.length > 3 ? cells.slice(0, /^[\d.]+$/.test(cells[1]!) ? 3 : 2).join(' · ') : cells[0]!,
        cells,
      ]),
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
const outOfDate: string[] = [];
/** Writes a page, or says what is stale in it. */
function settle(page: string, now: string): void {
  if (check)
    outOfDate.push(...stale(readFileSync(page, 'utf8'), now).map((line) => `${page.slice(root.length)}: ${line}`));
  else writeFileSync(page, now);
}

const validationNow = await validationPage(readFileSync(validation, 'utf8'));
settle(validation, validationNow);
const checks = runChecks();
const comparisons = checks.reduce((sum, one) => sum + one.comparisons, 0);
let trust = put(readFileSync(trustPage, 'utf8'), 'whole', wholeSystem(validationNow));
if (hasShared('measured/README.md')) trust = put(trust, 'measured', measuredInShort());
trust = put(trust, 'checks', checksTable(checks));
trust = put(trust, 'sum', `${comparisons} comparisons in ${checks.length} checks, each within what its test allows.`);
settle(trustPage, trust);

for (const line of outOfDate) console.error(line);
if (outOfDate.length > 0) {
  console.error('run: pnpm run trust');
  process.exitCode = 1;
} else
  console.log(
    `docs/theory/validation.md and docs/guides/trust.md are up to date: ${comparisons} comparisons in ${checks.length} checks`,
  );
