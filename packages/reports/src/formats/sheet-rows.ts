/** A row of the first sheet, and how its numbers are worded. */
import { currencyWords } from '../answer/words.ts';
import { wholeAmount } from '../money/prices.ts';

/** Which block of one design's sheet a row stands in. */
type SheetGroup = 'saved' | 'cost' | 'heat';

/** One line of the sheet: a number of every design. */
export interface SheetRow {
  readonly group: SheetGroup;
  /** On its own. */
  readonly label: string;
  /** Under the heading of its block. */
  readonly short: string;
  /** With unit, a design each. */
  readonly cells: readonly string[];
  /** Range of each, `35 to 70`; empty where none is known. */
  readonly ranges: readonly string[];
  /** More about each, such as when; empty where there is none. */
  readonly notes: readonly string[];
  /** Against the first design, from the second on; empty where it means nothing. */
  readonly differences: readonly string[];
}

/** Text of a number, and the number itself; differences are taken before rounding. */
export interface Shown {
  readonly text: string;
  readonly value: number | null;
}

/** As a row is made. */
interface Draft {
  readonly group: SheetGroup;
  readonly label: string;
  readonly short?: string;
  readonly shown: readonly Shown[];
  readonly ranges?: readonly string[];
  readonly notes?: readonly string[];
  /** Size of a difference in words. Default as an amount. */
  readonly difference?: (size: number) => string;
}

const signed = (value: number, words: (size: number) => string): string => {
  const size = words(Math.abs(value));
  return /[1-9]/.test(size) ? `${value > 0 ? '+' : '−'}${size}` : '=';
};

/** A row, its differences made. */
export function row({ group, label, short = label, shown, ranges, notes, difference = wholeAmount }: Draft): SheetRow {
  const first = shown[0]!.value;
  return {
    group,
    label,
    short,
    cells: shown.map(({ text }) => text),
    ranges: ranges ?? shown.map(() => ''),
    notes: notes ?? shown.map(() => ''),
    differences: shown.map(({ value }, index) =>
      index === 0 || value === null || first === null ? '' : signed(value - first, difference),
    ),
  };
}

/** An amount with its unit, few digits. */
export const amount = (value: number, unit: string): Shown => ({ text: `${wholeAmount(value)} ${unit}`, value });

/** Money in words. */
export const price = (value: number, currency: string): Shown => ({ text: currencyWords(value, currency), value });
