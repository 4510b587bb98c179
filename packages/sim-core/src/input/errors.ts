/** One fault of an input. */
export interface DesignIssue {
  /** Place of the fault, such as `tank.volume`; empty for the input as a whole. */
  readonly path: string;
  /** What was there, quoted and cut short. */
  readonly found: string;
  /** What should have been there, with its unit. */
  readonly expected: string;
  /** What to do about it. */
  readonly remedy: string;
}

const sentence = (issue: DesignIssue): string =>
  `${issue.path === '' ? 'input' : issue.path}: found ${issue.found}, expected ${issue.expected}. ${issue.remedy}`;

/** Input that cannot be simulated. Carries every fault at once, as data; its message says them in words. */
export class DesignError extends Error {
  /** Name of the error class. */
  override readonly name = 'DesignError';
  /** Every fault found, in the order of the design. */
  readonly issues: readonly DesignIssue[];

  constructor(issues: readonly DesignIssue[]) {
    super(issues.map(sentence).join('\n'));
    this.issues = issues;
  }
}

/** Longest piece of a caller's value that an error repeats. */
const QUOTE_LENGTH = 40;

/** A caller's value as an error shows it: quoted, cut at 40 characters, never evaluated. */
export function quote(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (typeof value === 'number' || typeof value === 'boolean' || value === null) return String(value);
  if (typeof value === 'string') return JSON.stringify(value.slice(0, QUOTE_LENGTH));
  if (Array.isArray(value)) return `a list of ${value.length}`;
  return typeof value === 'object' ? 'an object' : `a ${typeof value}`;
}

/**
 * Throws unless a value is a finite number within bounds; for the checked face of a formula.
 *
 * @throws {@link DesignError} naming the path, the bounds and the unit.
 * @internal
 */
export function requireNumber(path: string, value: number, minimum: number, maximum: number, unit: string): void {
  if (typeof value === 'number' && value >= minimum && value <= maximum) return;
  throw new DesignError([
    {
      path,
      found: quote(value),
      expected: `a number from ${minimum} to ${maximum}${unit === '' ? '' : ` ${unit}`}`,
      remedy: 'Give a value in this range.',
    },
  ]);
}

/** A number with few digits, for a sentence. @internal */
export const show = (value: number, digits = 4): string => String(Number(value.toPrecision(digits)));
