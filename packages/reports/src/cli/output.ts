// Results to a file or to standard output.
import { extname } from 'node:path';
import type { RunResult } from '@noonloop/sim-core';
import type { CsvOptions } from '../formats/csv.ts';
import type { TextOptions } from '../formats/text.ts';
import type { ReportOptions } from '../options.ts';
import { EXIT, Refusal } from './exit-codes.ts';
import { type Target, writeWhole } from './files.ts';
import { harmless, type Terminal } from './terminal.ts';

/** Formats of a report. */
export const FORMATS = ['text', 'html', 'md', 'csv', 'json'] as const;

/** One of {@link FORMATS}. */
export type Format = (typeof FORMATS)[number];

const BY_ENDING: Readonly<Record<string, string>> = {
  '.txt': 'text',
  '.html': 'html',
  '.htm': 'html',
  '.md': 'md',
  '.markdown': 'md',
  '.csv': 'csv',
  '.json': 'json',
  '.yaml': 'yaml',
  '.yml': 'yaml',
  '.svg': 'svg',
};

/** The format that the ending of a file says, text for none. @param formats - Those to choose from. */
export function formatByEnding(out: string | undefined, formats: readonly string[]): string {
  if (out === undefined || out === '-') return 'text';
  const ending = extname(out).toLowerCase();
  const found = Object.hasOwn(BY_ENDING, ending) ? BY_ENDING[ending]! : '';
  if (formats.includes(found)) return found;
  const endings = Object.keys(BY_ENDING).filter((one) => formats.includes(BY_ENDING[one]!));
  throw new Refusal(EXIT.usage, [
    `${out}: the ending says no format. Take one of ${endings.join(', ')}, or say --format.`,
  ]);
}

/** The format of a report: asked for, else that of the file's ending, else text. */
export const formatOf = (format: Format | undefined, out: string | undefined): Format =>
  format ?? (formatByEnding(out, FORMATS) as Format);

/** Where results go: a file, or standard output for none and for `-`. */
export const targetOf = (out: string | undefined, force: boolean | undefined): Target | null =>
  out === undefined || out === '-' ? null : { path: out, force: force === true };

/** Hands results over. */
export async function deliver(text: string, target: Target | null, terminal: Terminal, quiet: boolean): Promise<void> {
  const whole = text.endsWith('\n') ? text : `${text}\n`;
  if (target === null) {
    terminal.out(whole);
    return;
  }
  await writeWhole(target, whole);
  if (!quiet) terminal.err(`written: ${harmless(target.path)}\n`);
}

/** What a report is made with. */
export interface RenderOptions extends ReportOptions {
  readonly table?: NonNullable<CsvOptions['table']>;
  readonly detail?: NonNullable<TextOptions['detail']>;
  readonly hours?: boolean;
  readonly width: number;
}

/** Renders runs; each format is loaded when it is wanted. */
export async function render(runs: readonly RunResult[], format: Format, options: RenderOptions): Promise<string> {
  const { table, detail, hours, width, ...report } = options;
  const { against, money, rankBy, units } = report;
  switch (format) {
    case 'html':
      return (await import('../formats/html.ts')).renderHtml(runs, report);
    case 'md':
      return (await import('../formats/markdown.ts')).renderMarkdown(runs, report);
    case 'csv':
      return (await import('../formats/csv.ts')).renderCsv(runs, {
        ...(units ? { units } : {}),
        ...(table ? { table } : {}),
        ...(money ? { money } : {}),
      });
    case 'json':
      return (await import('../formats/json.ts')).renderJson(runs, {
        ...(hours ? { hours } : {}),
        ...(against ? { against } : {}),
        ...(money ? { money } : {}),
        ...(rankBy ? { rankBy } : {}),
      });
    case 'text': {
      const { renderText } = await import('../formats/text.ts');
      // A name in a file must not steer the terminal.
      return harmless(renderText(runs, { ...report, width, ...(detail ? { detail } : {}) }));
    }
  }
}
