import { DesignError } from '../../input/errors.ts';

/**
 * Refuses an array of several groups where panels of one kind on one plane are counted.
 *
 * @param groups - `array.groups` of the design. @param what - Who counts.
 * @throws DesignError
 */
export function requireOneGroup(groups: readonly unknown[], what: string): void {
  if (groups.length === 0) return;
  const found = `${groups.length} beside the array itself`;
  const expected = `none: ${what} counts panels of one kind on one plane`;
  const remedy = 'Leave the groups out to count, then simulate the year with them.';
  throw new DesignError([{ path: 'array.groups', found, expected, remedy }]);
}
