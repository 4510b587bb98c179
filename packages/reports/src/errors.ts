/** One fault: where, what was there, what should be there, and what to do. */
export interface ReportIssue {
  /** Place of the fault, such as `money.fuel.per`. */
  readonly path: string;
  /** What was there. */
  readonly found: string;
  /** What should have been there. */
  readonly expected: string;
  /** What to do, a sentence. */
  readonly remedy: string;
}

/** Characters of what was found that an error shows. */
const MOST_SHOWN = 200;

/** A report that cannot be made. */
export class ReportError extends Error {
  /** Kind of the error. */
  override readonly name = 'ReportError';
  /** Place of the first fault, such as `results[1].columns.tapHeat`. */
  readonly path: string;
  /** All faults. */
  readonly issues: readonly ReportIssue[];

  /**
   * @param path - place of the fault
   * @param found - what was there
   * @param expected - what should have been there
   * @param remedy - what to do, a sentence
   */
  constructor(path: string, found: string, expected: string, remedy: string, others: readonly ReportIssue[] = []) {
    // Whoever gives a whole run in place of a name is not shown ten megabytes of it.
    const shown = found.length > MOST_SHOWN ? `${found.slice(0, MOST_SHOWN)}…` : found;
    const issues = [{ path, found: shown, expected, remedy }, ...others];
    super(issues.map((one) => `${one.path}: found ${one.found}, expected ${one.expected}. ${one.remedy}`).join('\n'));
    this.path = path;
    this.issues = issues;
  }
}

/** Throws all of several faults, if there are any. @internal */
export function refuseAll([first, ...others]: readonly ReportIssue[]): void {
  if (first !== undefined) throw new ReportError(first.path, first.found, first.expected, first.remedy, others);
}
