// What is wrong with a weather file, as data; the sentences are made here and nowhere else.

/** Kinds of fault in a weather file. */
export type WeatherIssueCode =
  | 'not-found'
  | 'not-a-file'
  | 'unreadable'
  | 'too-large'
  | 'empty'
  | 'binary'
  | 'encoding'
  | 'unknown-format'
  | 'mixed-formats'
  | 'bad-header'
  | 'bad-option'
  | 'missing-column'
  | 'row-length'
  | 'unclosed-quote'
  | 'bad-time'
  | 'repeated-hour'
  | 'missing-hour'
  | 'out-of-order'
  | 'truncated'
  | 'row-count'
  | 'not-a-number'
  | 'out-of-range'
  | 'missing-value'
  | 'too-many-gaps'
  | 'several-years'
  | 'repeated-year'
  | 'implausible';

/** One fault: where it is, what was found, what was expected and what to do. */
export interface WeatherIssue {
  /** Kind of fault, stable for programs. */
  readonly code: WeatherIssueCode;
  /** File name or label of the text. */
  readonly file: string;
  /** Line as an editor counts, from 1, header lines included; `null` for the file as a whole. */
  readonly line: number | null;
  /** Column as the file spells it; `null` where the fault is of a whole line or file. */
  readonly column: string | null;
  /** What stands there, quoted and cut at 40 characters; `null` where nothing does. */
  readonly value: string | null;
  /** What should stand there, with its unit and reason. */
  readonly expected: string;
  /** What to do about it. */
  readonly remedy: string;
}

/** Faults after which a reader stops looking. */
const MOST_ISSUES = 20;

/** Longest piece of a file or of a caller's value that is repeated. [characters] */
const QUOTE_LENGTH = 40;

/** A piece of text as errors show it: quoted, so that control characters are visible, and cut at 40 characters. */
export function quote(value: unknown): string {
  // What is nested is not gone through: it may be deeper than the stack.
  if (typeof value === 'object' && value !== null)
    return Array.isArray(value) ? `a list of ${value.length}` : 'an object';
  return JSON.stringify(String(value).slice(0, QUOTE_LENGTH));
}

function sentence(issue: WeatherIssue): string {
  const line = issue.line === null ? '' : `, line ${issue.line}`;
  const column = issue.column === null ? '' : `, column ${quote(issue.column)}`;
  const found = issue.value === null ? '' : `found ${issue.value}, `;
  return `${issue.file}${line}${column}: ${found}expected ${issue.expected}. ${issue.remedy}`;
}

/** A weather file that cannot be used. Carries every fault found (up to 20) as data; its message says them in words. */
export class WeatherError extends Error {
  /** `WeatherError`, by which it is known across realms and bundles. */
  override readonly name = 'WeatherError';
  /** The faults, in the order found; never empty. */
  readonly issues: readonly WeatherIssue[];

  /** @param issues - The faults, at least one. */
  constructor(issues: readonly WeatherIssue[]) {
    super(inWords(issues));
    this.issues = issues;
  }
}

/** Faults in words, one a line. */
export function inWords(issues: readonly WeatherIssue[]): string {
  const more = issues.length >= MOST_ISSUES ? [`Only the first ${MOST_ISSUES} faults are listed.`] : [];
  return [...issues.map(sentence), ...more].join('\n');
}

/** A fault before it is known which file it is in; what is left out is `null`. */
type Fault = Pick<WeatherIssue, 'code' | 'expected' | 'remedy'> &
  Partial<Pick<WeatherIssue, 'line' | 'column' | 'value'>>;

/** Collects the faults of one file, throws when 20 are there or when asked to. */
export class Faults {
  readonly #file: string;
  readonly #makeError: (issues: readonly WeatherIssue[]) => Error;
  readonly #issues: WeatherIssue[] = [];

  /** @param makeError - What is thrown; a {@link WeatherError} unless the table holds something else. */
  constructor(file: string, makeError = (issues: readonly WeatherIssue[]): Error => new WeatherError(issues)) {
    this.#file = file;
    this.#makeError = makeError;
  }

  /** Notes a fault; the twentieth throws. */
  add(fault: Fault): void {
    this.#issues.push({ line: null, column: null, value: null, ...fault, file: this.#file });
    if (this.#issues.length >= MOST_ISSUES) this.throwIfAny();
  }

  /** Throws what has been noted, if anything. */
  throwIfAny(): void {
    if (this.#issues.length > 0) throw this.#makeError(this.#issues);
  }

  /** Notes a last fault and throws all. */
  fail(fault: Fault): never {
    this.add(fault);
    throw this.#makeError(this.#issues);
  }
}
