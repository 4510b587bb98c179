import { inWords, type WeatherIssue } from '../errors.ts';

/** A file of water used that cannot be taken. Carries every fault found (up to 20) as data; its message says them in words. */
export class DrawError extends Error {
  /** `DrawError`, by which it is known across realms and bundles. */
  override readonly name = 'DrawError';
  /** The faults, in the order found; never empty. */
  readonly issues: readonly WeatherIssue[];

  /** @param issues - The faults, at least one. */
  constructor(issues: readonly WeatherIssue[]) {
    super(inWords(issues));
    this.issues = issues;
  }
}
