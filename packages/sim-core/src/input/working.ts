/** Lines of a working, as data: their names, formulas and sources are those of `@noonloop/reports`. */
import type { Fact } from './saying.ts';
import type { StepCode } from './step-codes.ts';

/** What a line takes: a number, a code, or several numbers of one unit. */
export type StepFact =
  | Fact
  | {
      /** The numbers, in the unit beside them. */
      readonly values: readonly number[];
      /** Their unit. */
      readonly unit: string;
    };

/** One line of the working. */
export interface WorkingStep {
  /** Which quantity by which formula; `workingInWords` of `@noonloop/reports` has the words. */
  readonly code: StepCode;
  /** Numbers that the formula takes, by name, in the unit beside them. */
  readonly facts: Readonly<Record<string, StepFact>>;
  /** Result in SI. */
  readonly value: number;
  /** Unit of {@link value}. */
  readonly unit: string;
}

/** A number or numbers with their unit, or a code. */
type Given = readonly [value: number | readonly number[], unit: string] | string;

/** One line: which, its result, and the numbers that it takes. */
export function line(
  code: StepCode,
  [value, unit]: readonly [number, string],
  given: Readonly<Record<string, Given>> = {},
): WorkingStep {
  const facts = Object.entries(given).map(([name, one]) => {
    if (typeof one === 'string') return [name, one] as const;
    const [number, of] = one;
    return [name, typeof number === 'number' ? { value: number, unit: of } : { values: number, unit: of }] as const;
  });
  return { code, facts: Object.fromEntries(facts), value, unit };
}
