/** A report that cannot be made. */
export class ReportError extends Error {
  /** Kind of the error. */
  override readonly name = 'ReportError';
  /** Place of the fault, such as `results[1].columns.tapHeat`. */
  readonly path: string;

  /**
   * @param path - place of the fault
   * @param found - what was there
   * @param expected - what should have been there
   * @param remedy - what to do, a sentence
   */
  constructor(path: string, found: string, expected: string, remedy: string) {
    super(`${path}: found ${found}, expected ${expected}. ${remedy}`);
    this.path = path;
  }
}
