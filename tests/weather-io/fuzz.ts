// Mutated copies of a good file, each of which must read to what its text says or be refused with its place; and a second, simple
// reading of the text that says what it says.
import { parseWeather, type ReadOptions, WeatherError, type WeatherYear } from '@noonloop/weather-io';

type Key = 'ghi' | 'dni' | 'dhi' | 'dryBulb' | 'dewPoint' | 'relativeHumidity' | 'windSpeed' | 'pressure';

/** How a simple reader finds the numbers of a format. */
export interface FuzzLayout {
  /** Lines before the hours. */
  readonly header: number;
  /** Line of the headers, from 0; null where the format has none. */
  readonly names: number | null;
  /** Cell of each quantity and what one of its units is in the unit of a weather year. */
  readonly cells: Readonly<Partial<Record<Key, readonly [cell: number, scale: number]>>>;
  /** Numbers from which on all mean "missing" in a column, besides the marks of all formats. */
  readonly marks?: Readonly<Partial<Record<Key, number>>>;
  /** Rows in an hour. */
  readonly steps: number;
  readonly options: ReadOptions;
}

/** A file to be mutated. */
export interface FuzzFile {
  readonly name: string;
  readonly lines: readonly string[];
  readonly layout: FuzzLayout;
}

/** What became of a mutated copy. */
export interface FuzzCounts {
  readAlike: number;
  readAsChanged: number;
  refused: number;
}

/** A copy that did what it may not. */
export interface FuzzFinding {
  readonly file: string;
  readonly round: number;
  readonly mutation: string;
  readonly what: string;
}

/** Longest processor time that a copy may take; time on the wall would find the machine's other work. [ms] */
const HANG = 5000;

const PIECES = [
  '',
  ',',
  ',,',
  ';',
  '\n',
  '\r\n',
  '\r',
  '"',
  '""',
  '-',
  '.',
  '-9900',
  '-9999',
  '9999',
  '99.9',
  '0',
  '1',
  '7',
  'NaN',
  'Infinity',
  '1e400',
  '1e2',
  '0x10',
  '1,5',
  ' ',
  '\t',
  '\u00a0',
  '−',
  '\ufeff',
  '\0',
  '__proto__',
  'constructor',
  '#',
  ':',
  '24',
  '29',
  '1e-320',
  '٣',
  '😀',
];

/** Whole numbers below `n`, the same for the same seed. */
function dice(seed: number): (n: number) => number {
  let state = (seed ^ 0x9e3779b9) >>> 0;
  return (n) => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) % n;
  };
}

/** One mutation of the lines: new lines, and words for it. */
function mutate(lines: readonly string[], header: number, roll: (n: number) => number): [string[], string] {
  const copy = lines.slice();
  const row = () => (roll(5) === 0 ? roll(header) : header + roll(lines.length - header));
  const at = row();
  const line = lines[at]!;
  const piece = PIECES[roll(PIECES.length)]!;
  const show = JSON.stringify(piece);
  switch (roll(12)) {
    case 0: {
      const cells = line.split(',');
      const cell = roll(cells.length);
      cells[cell] = piece;
      copy[at] = cells.join(',');
      return [copy, `cell ${cell + 1} of line ${at + 1} becomes ${show}`];
    }
    case 1: {
      const cells = line.split(',');
      const cell = roll(cells.length);
      const value = String((roll(40_000) - 5000) / [1, 10, 100][roll(3)]!);
      cells[cell] = value;
      copy[at] = cells.join(',');
      return [copy, `cell ${cell + 1} of line ${at + 1} becomes ${value}`];
    }
    case 2:
    case 3: {
      const place = roll(line.length + 1);
      copy[at] = line.slice(0, place) + piece + line.slice(place);
      return [copy, `${show} goes into line ${at + 1} at ${place}`];
    }
    case 4: {
      const place = roll(Math.max(line.length, 1));
      const length = 1 + roll(4);
      copy[at] = line.slice(0, place) + line.slice(place + length);
      return [copy, `line ${at + 1} loses ${length} letters at ${place}`];
    }
    case 5: {
      const place = roll(Math.max(line.length, 1));
      const letter = String.fromCharCode(line.charCodeAt(place) ^ (1 << roll(7)));
      copy[at] = line.slice(0, place) + letter + line.slice(place + 1);
      return [copy, `a bit of line ${at + 1} turns over at ${place}`];
    }
    case 6: {
      const count = 1 + roll(roll(2) === 0 ? 3 : 3000);
      copy.splice(at, count);
      return [copy, `${count} lines are gone from line ${at + 1} on`];
    }
    case 7: {
      const count = 1 + roll(roll(2) === 0 ? 3 : 3000);
      copy.splice(row(), 0, ...lines.slice(at, at + count));
      return [copy, `${count} lines from line ${at + 1} on stand twice`];
    }
    case 8: {
      const other = row();
      copy[at] = lines[other]!;
      copy[other] = line;
      return [copy, `lines ${at + 1} and ${other + 1} change places`];
    }
    case 9: {
      copy.length = at;
      copy.push(line.slice(0, roll(line.length + 1)));
      return [copy, `the text ends in line ${at + 1}`];
    }
    case 10: {
      const cells = line.split(',');
      const [a, b] = [roll(cells.length), roll(cells.length)];
      [cells[a], cells[b]] = [cells[b]!, cells[a]!];
      copy[at] = cells.join(',');
      return [copy, `cells ${a + 1} and ${b + 1} of line ${at + 1} change places`];
    }
    default: {
      copy.splice(at, 0, roll(2) === 0 ? '' : ','.repeat(roll(80)));
      return [copy, `an empty line comes before line ${at + 1}`];
    }
  }
}

/** A cell as a simple reader takes it. */
function numberIn(cell: string | undefined): number {
  const bare = (cell ?? '')
    .trim()
    .replace(/^"(.*)"$/, '$1')
    .trim();
  return bare === '' ? Number.NaN : Number(bare);
}

/** Sums of a text's columns over lines that are rows of hours, by a simple second reader. */
class SimpleReader {
  readonly #file: FuzzFile;
  readonly #values: Map<Key, Float64Array>;

  constructor(file: FuzzFile) {
    this.#file = file;
    const rows = file.lines.slice(file.layout.header).map((line) => line.split(','));
    this.#values = new Map(
      (Object.entries(file.layout.cells) as [Key, readonly [number, number]][]).map(([key, [cell]]) => [
        key,
        Float64Array.from(rows, (row) => numberIn(row[cell])),
      ]),
    );
  }

  /**
   * Values of a column in the rows of a copy, from line `first` on; those of lines that are as they were are not read again.
   */
  values(key: Key, lines: readonly string[], first: number): Float64Array {
    const { header } = this.#file.layout;
    const original = this.#file.lines;
    const [cell] = this.#file.layout.cells[key]!;
    const known = this.#values.get(key)!;
    const out: number[] = [];
    for (let at = first; at < lines.length; at++) {
      const line = lines[at]!;
      if (at >= header && line === original[at]) out.push(known[at - header]!);
      else if (line.replace(/[\s,]/g, '') !== '') out.push(numberIn(line.split(',')[cell]));
    }
    return Float64Array.from(out);
  }
}

/** Index of the first row of hours in a copy: after the line of headers, by its first header, or after DATA PERIODS; null if neither is there. */
function firstRow(copy: readonly string[], { lines, layout }: FuzzFile): number | null {
  const mark = lines[layout.header - 1]!.split(',')[layout.names === 0 ? 1 : 0]!.trim();
  const at = copy.slice(0, 60).findIndex((line) => line.split(',')[layout.names === 0 ? 1 : 0]?.trim() === mark);
  return at < 0 ? null : at + 1;
}

/** What is wrong with a year that was read from a copy, or null. */
function differs(year: WeatherYear, copy: readonly string[], reader: SimpleReader, file: FuzzFile): string | null {
  const { names, cells, steps } = file.layout;
  const first = firstRow(copy, file);
  const codes = new Set(year.assumptions.map(({ code }) => code));
  for (const key of Object.keys(cells) as Key[]) {
    const values = year.columns[key];
    const [cell, scale] = cells[key]!;
    if (values === null) {
      if (codes.has('column-left-out') || codes.has('column-absent') || codes.has('column-not-read')) continue;
      return `${key} is gone and nothing says so`;
    }
    if (values.length !== 8760 || !values.every(Number.isFinite)) return `${key} has a hole`;
    // A column whose header moved is read from another cell: this simple reader cannot follow.
    if (
      first === null ||
      (names !== null && copy[first - 1]!.split(',')[cell]?.trim() !== file.lines[names]!.split(',')[cell]!.trim())
    )
      continue;
    const text = reader.values(key, copy, first);
    if (text.some(Number.isNaN)) {
      if (codes.has('gaps-bridged') || ((key === 'dni' || key === 'dhi') && text.every(Number.isNaN))) continue;
      return `${key} reads, but its text has cells that are no numbers`;
    }
    if (text.length !== 8760 * steps) return `${text.length} rows read as a year`;
    let expected = 0;
    let marks = 0;
    for (const value of text) {
      const own = value * scale;
      const light = key === 'ghi' || key === 'dni' || key === 'dhi';
      if (
        value === -9900 ||
        value === -9999 ||
        value === -999 ||
        value >= (file.layout.marks?.[key] ?? Number.POSITIVE_INFINITY)
      )
        marks++;
      expected += light ? Math.max(own, 0) : key === 'relativeHumidity' ? Math.min(own, 1) : own;
    }
    if (marks > 0) {
      if (codes.has('gaps-bridged')) continue;
      return `${key} reads over a mark for missing`;
    }
    let sum = 0;
    for (const value of values) sum += value;
    if (Math.abs(sum * steps - expected) > 1e-9 * Math.abs(expected) + 1e-6) {
      return `${key} sums to ${sum * steps}, its text to ${expected}`;
    }
  }
  return null;
}

/** Reads a number of mutated copies and gives what each may not have done. */
export function fuzz(
  file: FuzzFile,
  count: number,
  seed: number,
): { counts: FuzzCounts; findings: FuzzFinding[]; slowest: number } {
  const counts: FuzzCounts = { readAlike: 0, readAsChanged: 0, refused: 0 };
  const findings: FuzzFinding[] = [];
  const reader = new SimpleReader(file);
  let slowest = 0;
  for (let round = 0; round < count; round++) {
    const roll = dice(seed + round);
    const [lines, mutation] = mutate(file.lines, file.layout.header, roll);
    const text = lines.join('\n');
    const find = (what: string) => findings.push({ file: file.name, round, mutation, what });
    const before = process.cpuUsage();
    try {
      const year = parseWeather(text, file.layout.options);
      // The text as the reader saw it, for the simple one.
      const seen = text
        .replace(/^\ufeff/, '')
        .replace(/\r\n?/g, '\n')
        .split('\n');
      while (seen.length > 0 && seen.at(-1)!.trim() === '') seen.pop();
      const wrong = differs(year, seen, reader, file);
      if (wrong !== null) find(wrong);
      if (text === file.lines.join('\n')) counts.readAlike++;
      else counts.readAsChanged++;
    } catch (error) {
      if (!(error instanceof WeatherError)) find(`crash: ${String(error).slice(0, 200)}`);
      else {
        counts.refused++;
        const [issue] = error.issues;
        if (issue === undefined) find('refused without an issue');
        else if (issue.line === null && !['binary', 'empty'].includes(issue.code))
          find(`refused without a line: ${issue.code} ${issue.column}`);
        else if (['not-a-number', 'out-of-range', 'missing-value'].includes(issue.code) && issue.column === null)
          find(`refused without a column: ${issue.code}`);
      }
    }
    const used = process.cpuUsage(before);
    const took = (used.user + used.system) / 1000;
    slowest = Math.max(slowest, took);
    if (took > HANG) find(`took ${took.toFixed(0)} ms of processor time`);
  }
  return { counts, findings, slowest };
}
