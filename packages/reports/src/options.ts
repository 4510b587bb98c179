import type { Bands, RunResult } from '@noonloop/sim-core';
import type { ComparisonReference } from './compare.ts';
import { ReportError, refuseAll } from './errors.ts';
import type { MoneyGiven } from './money/types.ts';
import { nearest } from './nearest.ts';
import type { RankKey } from './rank.ts';
import type { Units } from './units.ts';

/** A section of the caller's own, at the end of a report. Plain text: every format escapes it. */
export interface OwnSection {
  /** Heading. */
  readonly title: string;
  /** Paragraphs, above the table. */
  readonly paragraphs?: readonly string[];
  /** A table; every row has as many cells as the header. */
  readonly table?: {
    /** Headings of the columns. */
    readonly header: readonly string[];
    /** Cells; the first of a row is its name. */
    readonly rows: readonly (readonly string[])[];
  };
}

/** What every report for people takes. */
export interface ReportOptions {
  /** Units of every number. Default `metric`. */
  readonly units?: Units;
  /** With two or more designs: what differences are taken against. Default `first`. */
  readonly against?: ComparisonReference;
  /** Prices: one set for all designs, or one for each. Left out: the report has no money in it. */
  readonly money?: MoneyGiven;
  /** With two or more designs: number by which they are ranked. Left out: no ranking. */
  readonly rankBy?: RankKey;
  /**
   * Half width of the band around what is saved, 0.08 for ± 8 %, as `uncertainty` of a study finds it. Left out: reports do not say how sure they
   * are. [-]
   */
  readonly uncertainty?: number;
  /**
   * Bands of the leading numbers, from `bands` of `@noonloop/sim-core`: of the first design, or a list with one for each. They stand beside the
   * numbers as ranges, in place of {@link uncertainty}.
   */
  readonly bands?: Bands | readonly Bands[];
  /** Over the report: the reader's question or the house. Default: the design's name, or how many are compared. */
  readonly title?: string;
  /** For whom it was made. Default: nothing. */
  readonly client?: string;
  /** When, as it shall be read: `12 May 2026`. Default: nothing, so that the same input gives the same text. */
  readonly date?: string;
  /** A remark of the maker's own. Default: nothing. */
  readonly note?: string;
  /** Sections of the maker's own, behind all others. Default: none. */
  readonly ownSections?: readonly OwnSection[];
}

/** One run, or several to compare. */
export type Runs = RunResult | readonly RunResult[];

/** Names of {@link ReportOptions}. @internal */
export const REPORT_OPTIONS = [
  'units',
  'against',
  'money',
  'rankBy',
  'uncertainty',
  'bands',
  'title',
  'client',
  'date',
  'note',
  'ownSections',
] as const satisfies readonly (keyof ReportOptions)[];

/** Refuses options that a function does not know. @throws {@link ReportError} naming each. @internal */
export function checkOptions(options: object, known: readonly string[]): void {
  const wrong = Object.keys(options).filter((name) => !known.includes(name));
  refuseAll(
    wrong.map((name) => {
      const meant = nearest(name, known);
      const remedy = meant === null ? 'Leave it out.' : `You may mean ${meant}.`;
      return { path: `options.${name}`, found: 'an option of this name', expected: known.join(', '), remedy };
    }),
  );
}

const isRun = (value: unknown): boolean => typeof value === 'object' && value !== null && 'columns' in value;

/** Runs as a list. @throws {@link ReportError} when there is none, or what is given is no run. @internal */
export function listRuns(runs: Runs): readonly RunResult[] {
  const list: readonly unknown[] = Array.isArray(runs) ? runs : [runs];
  const remedy = 'Give the result of simulate().';
  if (list.length === 0) throw new ReportError('results', 'none', 'one run or more', remedy);
  const wrong = list.findIndex((one) => !isRun(one));
  if (wrong < 0) return list as readonly RunResult[];
  const value = list[wrong];
  const isPromise = value instanceof Promise;
  throw new ReportError(
    `results[${wrong}]`,
    isPromise ? 'a promise' : value == null ? String(value) : `a ${typeof value}`,
    'a run',
    isPromise ? 'Put await before it.' : remedy,
  );
}

/** Sections of the caller's own, looked over. @throws {@link ReportError} for one without a title, or a row of another length than the header. @internal */
export function listOwnSections({ ownSections = [] }: ReportOptions): readonly OwnSection[] {
  for (const [at, { title, table }] of ownSections.entries()) {
    const place = `ownSections[${at}]`;
    if (typeof title !== 'string' || title.trim() === '')
      throw new ReportError(`${place}.title`, JSON.stringify(title) ?? 'nothing', 'a heading', 'Give it a title.');
    const cells = table?.header.length ?? 0;
    const row = table?.rows.findIndex((one) => one.length !== cells) ?? -1;
    if (row >= 0)
      throw new ReportError(
        `${place}.table.rows[${row}]`,
        `${table!.rows[row]!.length} cells`,
        `${cells} as in the header`,
        'Give a text for every column, empty where there is none.',
      );
  }
  return ownSections;
}
