/** Shape of a report before it is laid out. Text in it is plain, not escaped for any format. */
import type { Answer } from '../answer/types.ts';
import type { CautionCode, CautionCount, CautionSeverity } from '../cautions/index.ts';
import type { Comparison } from '../compare.ts';
import type { NumberKey } from '../definitions.ts';
import type { Summary } from '../summary.ts';
import type { Units } from '../units.ts';

/** One cell of a number table. */
export interface NumberCell {
  /** The number, without its unit. */
  readonly text: string;
  /** Its range, such as `35 to 70`; empty where none is known. */
  readonly range: string;
  /** Difference with its sign, such as `+352`; `=` for none; empty where there is nothing to compare. */
  readonly difference: string;
  /** The difference in percent with its sign, such as `+18 %`; empty where it means nothing. */
  readonly relative: string;
  /** Date of an extreme; empty otherwise. */
  readonly note: string;
}

/** One number of every design. */
export interface NumberRow {
  readonly key: NumberKey;
  readonly label: string;
  readonly unit: string;
  readonly cells: readonly NumberCell[];
}

/** Plain table: first column is text, the others numbers. */
export interface PlainTable {
  readonly header: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** One value that a run rests on. */
export interface AssumptionLine {
  readonly path: string;
  readonly value: string;
  readonly source: string;
  /** Letters of the designs for which it holds; empty when for all. */
  readonly designs: string;
}

/** What is shown of one design. */
export interface RunModel {
  /** A, B, C, … where there are several. */
  readonly letter: string;
  readonly name: string;
  readonly summary: Summary;
  readonly months: PlainTable;
  readonly balance: PlainTable;
}

/** A caution of one design or several, its advice said once. */
export interface CautionGroup {
  readonly code: CautionCode;
  /** The gravest of the designs. */
  readonly severity: CautionSeverity;
  /** In a few words, by design where there are several: for the line of dangers on the first screen. */
  readonly short: readonly string[];
  /** What was found, by design where there are several. */
  readonly findings: readonly string[];
  /** Why and what to do; by design where that differs. */
  readonly advice: string;
  /** Who may do it. */
  readonly who: string;
  readonly source: string;
}

/** What prices make of the numbers. */
export interface MoneyModel {
  readonly table: PlainTable;
  /** Label and definition of each number. */
  readonly meanings: readonly (readonly [label: string, definition: string])[];
  /** Prices, rates and factors, a sentence each. */
  readonly grounds: readonly string[];
}

/** Designs in the order that the reader asked for. */
export interface RankingModel {
  /** What they are ranked by. */
  readonly label: string;
  /** A line each: letter, name and value, the best first. */
  readonly lines: readonly string[];
}

/** A report before it is laid out. */
export interface ReportModel {
  readonly title: string;
  /** The two sentences of the first screen. */
  readonly answer: Answer;
  /** `± 8 % on what is saved …`; `null` where nobody said. */
  readonly sure: string | null;
  /** The system in a line; of several what is the same in all. */
  readonly system: string;
  /** Of several, what differs: `2 panels / 3 panels`. */
  readonly differs: string;
  /** Where the weather was taken: its name, or degrees in words; of several designs each place once. */
  readonly site: string;
  readonly place: string;
  readonly units: Units;
  readonly runs: readonly RunModel[];
  readonly comparison: Comparison | null;
  /** The months in which the sun alone suffices and what the heater burns in them, by design where there are several. */
  readonly season: readonly string[];
  readonly sentences: readonly string[];
  /** `null` where none was asked for, or for one design. */
  readonly ranking: RankingModel | null;
  readonly numbers: readonly NumberRow[];
  readonly cautions: readonly CautionGroup[];
  /** How many dangers and cautions these are. */
  readonly cautionCount: CautionCount;
  /** `null` where no prices were given. */
  readonly money: MoneyModel | null;
  readonly assumptions: readonly AssumptionLine[];
  /** The limits by which hours are counted. */
  readonly limits: readonly string[];
  readonly notes: readonly string[];
}
