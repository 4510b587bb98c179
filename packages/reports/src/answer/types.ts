import type { Caution } from '../cautions/index.ts';
import type { Money, MoneyOptions } from '../money/types.ts';
import type { Summary } from '../summary.ts';
import type { Units } from '../units.ts';

/** Which rule made the two sentences. */
export type AnswerRule =
  | 'one-loses'
  | 'one-with-cost'
  | 'one-with-price'
  | 'one-without-prices'
  | 'not-comparable'
  | 'danger-in-some'
  | 'danger-in-each'
  | 'tie'
  | 'none-pays'
  | 'worth'
  | 'saving-with-price'
  | 'saving-without-prices';

/** The first thing that a reader wants to know. */
export interface Answer {
  /** Which rule made the sentences. */
  readonly rule: AnswerRule;
  /** What the system does, or which design is the one. */
  readonly does: string;
  /** What decides: when it has paid for itself, or what the next design would add. */
  readonly decides: string;
  /** The design that wins, by its place in the list; `null` where none does, and for one design. */
  readonly winner: number | null;
}

/** One design, with all that the rules look at. @internal */
export interface Candidate {
  readonly index: number;
  /** `A`, `B`. */
  readonly letter: string;
  readonly summary: Summary;
  /** `null` without prices. */
  readonly money: Money | null;
  readonly options: MoneyOptions | null;
  /** Dangers only. */
  readonly dangers: readonly Caution[];
}

/** What the rules work with. @internal */
export interface AnswerContext {
  readonly candidates: readonly Candidate[];
  readonly units: Units;
  /** Whether the prices say what each design costs. */
  readonly costed: boolean;
}
