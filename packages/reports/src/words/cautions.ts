/** All sentences of all cautions, by code: the rules find, these say. */
import { GENERAL_WORDS } from './cautions-general.ts';
import { LOOP_WORDS } from './cautions-loop.ts';
import { WATER_WORDS } from './cautions-water.ts';

/** What is said of one kind of caution; `{name}` stands for a fact of the run. */
export interface CautionText {
  /** How grave it can be, the gravest first. */
  readonly severity: readonly ('danger' | 'warning' | 'note')[];
  /** What raises it, for the table of all cautions. */
  readonly raised: string;
  /** In a few words, to go on a sentence with. */
  readonly short: string;
  /** Its sentences; the rule says which are spoken. */
  readonly says: Readonly<Record<string, string>>;
  /** Who may do what it asks for. */
  readonly who: string;
  /** Where the threshold is from. */
  readonly source: string;
}

/** All cautions. */
export const CAUTION_WORDS = { ...WATER_WORDS, ...LOOP_WORDS, ...GENERAL_WORDS };

/** Code of a caution. */
export type CautionCode = keyof typeof CAUTION_WORDS;

/** Code of one of its sentences. */
export type SentenceOf<Code extends CautionCode> = keyof (typeof CAUTION_WORDS)[Code]['says'] & string;

/** Severities that a caution can have. */
export type SeverityOf<Code extends CautionCode> = (typeof CAUTION_WORDS)[Code]['severity'][number];

/** Said after each caution. */
export const LOCAL_CODE = 'Follow the local code.';
