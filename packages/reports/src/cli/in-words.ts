// Errors in plain words, with file, line and field.
import { ReportError } from '../errors.ts';
import { EXIT, type ExitCode, Refusal } from './exit-codes.ts';
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

const issuesOf = (error: unknown): readonly Issue[] | null =>
  error instanceof Error && 'issues' in error && Array.isArray(error.issues) ? (error.issues as Issue[]) : null;

/** Runs what reads a settings file; faults of its fields come with its name and line. */
export async function blaming<T>(settings: Settings, work: () => T | Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    const issues = error instanceof Error && error.name === 'DesignError' ? issuesOf(error) : null;
    if (issues !== null) {
      throw new Refusal(
        EXIT.input,
        issues.map(({ path = '', found, expected, remedy }) =>
          sentence(settings, path, `found ${found}, expected ${expected}. ${remedy}`),
        ),
      );
    }
    if (error instanceof ReportError) {
      throw new Refusal(
        EXIT.input,
        error.issues.map(({ path, found, expected, remedy }) =>
          sentence(
            settings,
            path.replace(/^money(\[\d+\])?\.?/, ''),
            `found ${found}, expected ${expected}. ${remedy}`,
          ),
        ),
      );
    }
    throw error;
  }
}

/** Runs what reads a table by a layout; faults of the layout come with the name and line of its file. */
export async function blamingLayout<T>(settings: Settings | null, work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    const issues = issuesOf(error);
    if (issues === null || settings === null || !issues.every(({ code }) => code === 'bad-option')) throw error;
    throw new Refusal(
      EXIT.input,
      issues.map(({ column, value, expected, remedy }) =>
        sentence(settings, column ?? '', `found ${value ?? 'nothing'}, expected ${expected}. ${remedy}`),
      ),
    );
  }
}

function sentence(settings: Settings, field: string, words: string): string {
  const line = settings.lineOf(field);
  const place = line === null ? '' : `, line ${line}`;
  return `${settings.path}${place}${field === '' ? '' : `, ${field}`}: ${words}`;
}

/** What the libraries advise to those who script, by what the command has for it. */
const ADVICE: readonly (readonly [string, string])[] = [
  ["or read with gaps: 'keep' and call fillGaps.", 'or say --fill-gaps.'],
  ["or read it with gaps: 'keep' and call fillGaps, which lists what it fills.", 'or say --fill-gaps.'],
  ['or insist with vetWeather(year, { insist: true }).', 'or say --insist-on-weather.'],
  ['Read it with readWeatherYears, which gives each year by itself, or cut it.', 'Cut it into files of one year each.'],
  ['or give a layout with the option plain.', 'or say by --layout how this table is laid out.'],
  ['a layout (option plain) that says', 'a layout (--layout) that says'],
];

const forCommand = (words: string): string => ADVICE.reduce((text, [from, to]) => text.replaceAll(from, to), words);

/** Lines and exit code of whatever ended a command. */
export function explain(error: unknown): { readonly exit: ExitCode; readonly lines: readonly string[] } {
  if (error instanceof Refusal) return error;
  const known = ['WeatherError', 'DrawError', 'DesignError', 'ReportError'];
  if (error instanceof Error && known.includes(error.name))
    return { exit: EXIT.input, lines: forCommand(error.message).split('\n') };
  const words = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
  return {
    exit: EXIT.internal,
    lines: [
      `a fault of the program, not of your files: ${words}`,
      'Please report it with the command and the files. NOONLOOP_DEBUG=1 shows where it happened.',
    ],
  };
}
