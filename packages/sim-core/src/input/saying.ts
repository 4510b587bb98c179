/** What is to be said, as data: the sentences are those of `@noonloop/reports`, in metric or US units. */

/** A number with its unit, or the code of something that has a name, such as a gauge. */
export type Fact =
  | {
      /** The number, in the unit beside it. */
      readonly value: number;
      /** Its unit, as in docstrings: `K`, `°C`, `h`. */
      readonly unit: string;
    }
  | string;

/** Facts by the name that they have in a sentence. */
export type Facts = Readonly<Record<string, Fact>>;

/** Something to say: which sentence, and what stands in it. */
export interface Saying<Code extends string = string> {
  /** Stable short code of the sentence. */
  readonly code: Code;
  /** What stands in it, by name: numbers in the unit beside them, names as codes. */
  readonly facts: Facts;
}

/** A saying. @internal */
export const say = <Code extends string>(code: Code, facts: Facts = {}): Saying<Code> => ({ code, facts });

/** A number with its unit. @internal */
export const fact = (value: number, unit: string): Fact => ({ value, unit });
