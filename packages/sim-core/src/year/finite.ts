/** A number of a run that is not finite: never the design's fault, and never handed on. */
export class RunFault extends Error {
  /** Name of the error class. */
  override readonly name = 'RunFault';
  /** Column of `RunColumns` in which it stands. */
  readonly column: string;
  /** Hour of the year, 0 to 8759, the first in any column. */
  readonly hour: number;

  constructor(column: string, hour: number, found: number) {
    super(
      `${column}, hour ${hour}: found ${found}, expected a finite number. This is a fault of the program, not of the design: report it with design and weather.`,
    );
    this.column = column;
    this.hour = hour;
  }
}

/**
 * Looks through some hours of all columns.
 *
 * @throws {@link RunFault} for the first hour that holds a number that is not finite.
 */
export function requireFinite<T extends Readonly<Record<keyof T, Float64Array>>>(
  columns: T,
  from: number,
  to: number,
): void {
  let name = '';
  let first = to;
  for (const key of Object.keys(columns) as (keyof T & string)[]) {
    const column = columns[key];
    // A sum is finite only where all of its numbers are: one look a column as a rule.
    let even = 0; // two sums, neither of which waits for the other
    let odd = 0;
    for (let hour = from; hour < first; hour++) {
      even += column[hour]!;
      if (++hour < first) odd += column[hour]!;
    }
    if (Number.isFinite(even + odd)) continue;
    const hour = column.subarray(from, first).findIndex((value) => !Number.isFinite(value));
    if (hour < 0) continue;
    name = key;
    first = from + hour;
  }
  if (name !== '') throw new RunFault(name, first, columns[name as keyof T][first]!);
}
