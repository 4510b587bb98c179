/** A study that cannot go on: not a fault of one of its designs. */
export class StudyError extends Error {
  /** Name of the error class. */
  override readonly name = 'StudyError';
  /** Where, such as `results.jsonl line 17`. */
  readonly place: string;
  /** What was there. */
  readonly found: string;
  /** What should have been there. */
  readonly expected: string;
  /** What to do about it. */
  readonly remedy: string;

  /** `file`: the system or another process stands in the way of a file; `study`: anything else. */
  readonly kind: 'file' | 'study';

  constructor(place: string, found: string, expected: string, remedy: string, kind: 'file' | 'study' = 'study') {
    super(`${place}: found ${found}, expected ${expected}. ${remedy}`);
    this.place = place;
    this.found = found;
    this.expected = expected;
    this.remedy = remedy;
    this.kind = kind;
  }
}
