// Errors in plain words, with file, line and field.
import { EXIT, type ExitCode, Refusal } from './exit-codes.ts';
import type { FieldFault } from './settings/names.ts';
import type { Settings } from './settings-file.ts';

/** A fault as the libraries give it: of a design by path, of a table by line and column. */
interface Issue {
  readonly code?: string;
  readonly path?: string;
  readonly file?: string;
  readonly line?: number | null;
  readonly column?: string | null;
  readonly found?: string;
  readonly value?: string | null;
  readonly expected: string;
  readonly remedy: string;
}

/** Faults told; more come as a count. */
const MOST_LINES = 20;

const issuesOf = (error: unknown): readonly Issue[] | null =>
  error instanceof Error && 'issues' in error && Array.isArray(error.issues) ? (error.issues as Issue[]) : null;

/** Faults of fields that a library found, by place; `null` for what is no fault of fields. */
export function faultsOf(error: unknown): readonly FieldFault[] | null {
  if (!(error instanceof Error)) return null;
  const issues = issuesOf(error);
  if (error.name === 'DesignError' && issues !== null) {
    return issues.map(({ path = '', found, expected, remedy }) => ({
      path,
      words: `found ${found}, expected ${expected}. ${remedy}`,
    }));
  }
  // A layout's faults have a place in the settings; those of a table have a line in the table.
  if (issues?.every(({ code }) => code === 'bad-option')) {
    return issues.map(({ column, value, expected, remedy }) => ({
      path: column ?? '',
      words: `found ${value ?? 'nothing'}, expected ${expected}. ${remedy}`,
    }));
  }
  if (error.name === 'ReportError' && issues !== null) {
    return issues.map(({ path = '', found, expected, remedy }) => ({
      path: ofMoney(path),
      words: `found ${found}, expected ${expected}. ${remedy}`,
    }));
  }
  if (error.name === 'ReportError' && 'path' in error) {
    const path = String(error.path);
    return [{ path: ofMoney(path), words: error.message.slice(path.length + 2) }];
  }
  return null;
}

const ofMoney = (path: string): string => path.replace(/^money(\[\d+\])?\.?/, '');

/** Runs what reads a settings file; faults of its fields come with its name and line. */
export async function blaming<T>(settings: Settings, work: () => T | Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    const faults = faultsOf(error);
    if (faults === null) throw error;
    const lines = faults.slice(0, MOST_LINES).map(({ path, words }) => sentence(settings, path, words));
    throw new Refusal(EXIT.input, lines, faults.length);
  }
}

/** A fault of a field with file and line. */
export function sentence(settings: Settings, field: string, words: string): string {
  const line = settings.lineOf(field);
  const place = line === null ? '' : `, line ${line}`;
  return `${settings.path}${place}${field === '' ? '' : `, ${field}`}: ${forCommand(words)}`;
}

/** What the libraries advise to those who script, by what the command has for it. */
const ADVICE: readonly (readonly [string | RegExp, string])[] = [
  ["or read with gaps: 'keep' and call fillGaps.", 'or say --fill-gaps.'],
  ["or read it with gaps: 'keep' and call fillGaps, which lists what it fills.", 'or say --fill-gaps.'],
  ['or insist with vetWeather(year, { insist: true }).', 'or say --insist-on-weather.'],
  ['Read it with readWeatherYears, which gives each year by itself, or cut it.', 'Cut it into files of one year each.'],
  ['or give a layout with the option plain.', 'or say by --layout how this table is laid out.'],
  ['a layout (option plain) that says', 'a layout (--layout) that says'],
  ['Correct the option plain.', 'Correct the layout.'],
  ["or say gaps: 'zero' where", 'or write "gaps: zero" where'],
  [/Give the option money[^.,]*/, 'Say --prices'],
  [/[Cc]orrect the option (\w+)/, 'Correct $1'],
  [/or raise the option limit and/, 'or raise the limit and'],
  [/, or raise the option maxBytes/, ''],
  ['or the option step', 'or the field step'],
  ['or the option dateOrder', 'or the field dateOrder'],
];

const forCommand = (words: string): string =>
  ADVICE.reduce(
    (text, [from, to]) => text.replaceAll(typeof from === 'string' ? from : new RegExp(from, 'g'), to),
    words,
  );

/** Lines and exit code of whatever ended a command. */
export function explain(error: unknown): { readonly exit: ExitCode; readonly lines: readonly string[] } {
  if (error instanceof Refusal) return { exit: error.exit, lines: atMost(error.lines, error.count) };
  const known = ['WeatherError', 'DrawError', 'LogError', 'DesignError', 'ReportError', 'StudyError'];
  if (error instanceof Error && known.includes(error.name)) {
    const lines = forCommand(error.message).split('\n');
    const ofFile = 'kind' in error && error.kind === 'file';
    return { exit: ofFile ? EXIT.output : EXIT.input, lines: atMost(lines, lines.length) };
  }
  const code = error instanceof Error && 'syscall' in error ? (error as NodeJS.ErrnoException).code : undefined;
  if (code !== undefined) {
    const path = (error as NodeJS.ErrnoException).path ?? 'a file';
    return {
      exit: EXIT.output,
      lines: [`${path}: it cannot be written or read (${code}). Check permissions and free space.`],
    };
  }
  const words = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
  return {
    exit: EXIT.internal,
    lines: [
      `a fault of the program, not of your files: ${words}`,
      'Please report it with the command and the files. NOONLOOP_DEBUG=1 shows where it happened.',
    ],
  };
}

/** At most twenty lines, and how many there are in all. */
function atMost(lines: readonly string[], count: number): readonly string[] {
  if (count <= MOST_LINES) return lines;
  return [...lines.slice(0, MOST_LINES), `and ${count - MOST_LINES} more faults; these are the first ${MOST_LINES}.`];
}
