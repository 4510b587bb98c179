/** All sentences of all cautions, by code: the rules find, these say. */
import { GENERAL_WORDS } from './cautions-general.ts';
import { LOOP_WORDS } from './cautions-loop.ts';
import { ROOF_WORDS } from './cautions-roofs.ts';
import { WATER_WORDS } from './cautions-water.ts';

/** All cautions. */
export const CAUTION_WORDS = { ...WATER_WORDS, ...LOOP_WORDS, ...ROOF_WORDS, ...GENERAL_WORDS };

/** Code of a caution. */
export type CautionCode = keyof typeof CAUTION_WORDS;

/** Code of one of its sentences. */
export type SentenceOf<Code extends CautionCode> = keyof (typeof CAUTION_WORDS)[Code]['says'] & string;

/** Severities that a caution can have. */
export type SeverityOf<Code extends CautionCode> = (typeof CAUTION_WORDS)[Code]['severity'][number];

/** Said after each caution. */
export const LOCAL_CODE = 'Follow the local code.';
