/** A report that cannot be made. */
export class ReportError extends Error {
  override readonly name = 'ReportError';
  /** Place of the fault, such as `results[1].columns.tapHeat`. */
  readonly path: string;

  constructor(path: string, found: string, expected: string, remedy: string) {
    super(`${path}: found ${found}, expected ${expected}. ${remedy}`);
    this.path = path;
  }
}
