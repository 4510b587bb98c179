/** Lines of a working: what a result was made of, for whoever checks it by hand. */

/** One line of the working. */
export interface WorkingStep {
  /** What is computed. */
  readonly quantity: string;
  /** The formula in symbols. */
  readonly formula: string;
  /** The formula in numbers, in litres and bar. */
  readonly numbers: string;
  /** Result in SI. */
  readonly value: number;
  /** Unit of {@link value}. */
  readonly unit: string;
  /** Where the formula comes from. */
  readonly source: string;
}

/** One line, its parts in the order in which they are read. */
export const line = (
  quantity: string,
  formula: string,
  numbers: string,
  [value, unit]: readonly [number, string],
  source: string,
): WorkingStep => ({ quantity, formula, numbers, value, unit, source });

/** A number as a working shows it. */
export const show = (value: number, digits = 4): string => String(Number(value.toPrecision(digits)));
