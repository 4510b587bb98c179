// What the words of one line of a working are.

/** Words of one line; `{name}` stands for a fact, `{5e4 Pa}` for a number of the formula itself. */
export interface LineWords {
  /** What is computed. */
  readonly quantity: string;
  /** The formula in symbols. */
  readonly formula: string;
  /** The formula in numbers; left out where the formula says all. */
  readonly numbers?: string;
  /** Where the formula comes from. */
  readonly source: string;
}
