/** What the live page and its engine say to each other. */
import type { SystemDesign } from '@noonloop/sim-core';
import type { SystemPart } from '../answer/system.ts';
import type { Answer } from '../answer/types.ts';
import type { CautionGroup } from '../model/types.ts';
import type { MoneyOptions, MoneySettings } from '../money/types.ts';
import type { PeriodSummary } from '../summary.ts';
import type { Units } from '../units.ts';

/** Plain data, as JSON has it. */
export type Plain = string | number | boolean | null | readonly Plain[] | { readonly [key: string]: Plain };

/**
 * What was turned, by place: fields of the design as they stand in its file (`array.tilt`), prices behind `prices.`, what is seen on
 * a used panel behind `survey.`. An empty text takes a field away, so that its default comes back.
 */
export type Turned = Readonly<Record<string, Plain>>;

/** Stands for a field that is left out. */
export const LEFT_OUT = '';

/** Prices of a page: those of a report for one design. */
export type LivePrices = Partial<Omit<MoneySettings, 'designs'>>;

/** A question with cases that set the knobs, for a class. */
export interface LiveExercise {
  /** Such as `Lesson 1: layers`. */
  readonly title: string;
  /** What is asked. */
  readonly question: string;
  /** Each is a link that sets the knobs; fields of the design by their places, and `page.week` for the first day of the week that plays, 0 to 358. */
  readonly cases: readonly { readonly label: string; readonly set: Turned }[];
}

/** What the page begins with. */
export interface LiveStart {
  /** Fields of the design as somebody wrote them. */
  readonly design: { readonly [key: string]: Plain };
  readonly prices: LivePrices | null;
}

/** The first message: everything that stays. */
export interface OpenRequest extends LiveStart {
  readonly kind: 'open';
  /** As `packWeather` gives it. */
  readonly weather: string;
}

/** The year of what is turned, and how it stands to others. */
export interface TurnRequest {
  readonly kind: 'turn';
  readonly id: number;
  readonly units: Units;
  readonly now: Turned;
  /** What changes are told against; `null` for nothing. */
  readonly against: Turned | null;
  readonly pins: readonly Turned[];
}

/** Seven days of the design that was run last, hour by hour. */
export interface WeekRequest {
  readonly kind: 'week';
  readonly id: number;
  readonly now: Turned;
  /** First day of the year, 0 to 358. */
  readonly day: number;
}

/** Something to take away. */
export interface TakeRequest {
  readonly kind: 'take';
  readonly id: number;
  readonly units: Units;
  readonly what: 'design' | 'prices' | 'months' | 'hours' | 'report';
  readonly now: Turned;
  readonly pins: readonly Turned[];
}

/** A message to the engine. */
export type LiveRequest = OpenRequest | TurnRequest | WeekRequest | TakeRequest;

/** A fault of a field, in the library's words. */
export interface LiveFault {
  /** Place as in {@link Turned}. */
  readonly path: string;
  readonly words: string;
}

/** A line of figures. */
export interface LiveRow {
  readonly group: 'saved' | 'cost' | 'heat';
  readonly label: string;
  readonly cell: string;
  readonly note: string;
}

/** A difference that can be told. */
export interface LiveChange {
  readonly label: string;
  /** With sign and unit. */
  readonly difference: string;
}

/** Designs side by side, the pinned ones first and the turned one last. */
export interface LiveComparison {
  readonly letters: readonly string[];
  readonly answer: Answer;
  readonly rows: readonly {
    readonly label: string;
    readonly cells: readonly string[];
    readonly notes: readonly string[];
  }[];
  readonly differs: string;
}

/** Everything the page shows of one year. */
export interface TurnReply {
  readonly kind: 'turn';
  readonly id: number;
  /** As it was simulated, every default written out. */
  readonly design: SystemDesign;
  readonly money: MoneyOptions | null;
  readonly answer: Answer;
  readonly season: readonly string[];
  readonly alarm: string;
  readonly cautions: readonly CautionGroup[];
  /** The system's line, part by part. */
  readonly parts: readonly SystemPart[];
  /** Share of the hot water that the sun makes, January first; `null` where none is asked for. [-] */
  readonly months: readonly (number | null)[];
  readonly monthsBefore: readonly (number | null)[] | null;
  readonly rows: readonly LiveRow[];
  /** What was turned since, in words; empty where nothing was. */
  readonly turned: string;
  readonly changes: readonly LiveChange[];
  readonly comparison: LiveComparison | null;
  /** Step of the heat scale of the hottest part of the tank, hour by hour. */
  readonly map: Uint8Array;
  /** Temperatures between the steps of the scale, as shown, and those that decide. */
  readonly key: { readonly ticks: readonly string[]; readonly unit: string; readonly marks: readonly string[] };
  /** First days of the hottest and of the coldest week. */
  readonly weeks: { readonly hottest: number; readonly coldest: number };
  /** Year and months in SI, as `summarize` has them. */
  readonly numbers: PeriodSummary;
  /** Prices that are not right, while the year itself is. */
  readonly faults: readonly LiveFault[];
}

/** One week, hour by hour; temperatures in °C, the rest in SI. */
export interface WeekReply {
  readonly kind: 'week';
  readonly id: number;
  readonly day: number;
  readonly nodes: number;
  /** Shape [168 × nodes], bottom first, at the end of each hour. [°C] */
  readonly tank: Float64Array;
  /** Columns of the run, 168 hours of each. */
  readonly columns: Readonly<Record<WeekColumn, Float64Array>>;
}

/** Columns of a week. */
export const WEEK_COLUMNS = [
  'irradiance',
  'ambientTemperature',
  'absorberTemperature',
  'loopFlow',
  'coilHeat',
  'tankMaximumTemperature',
  'tapVolume',
  'solarHeat',
  'heaterHeat',
  'tapTemperature',
  'reliefVolume',
  'reliefHeat',
  'stagnation',
  'boiling',
  'highLimit',
] as const;
/** One of {@link WEEK_COLUMNS}. */
export type WeekColumn = (typeof WEEK_COLUMNS)[number];

/** A text to be saved. */
export interface TakeReply {
  readonly kind: 'take';
  readonly id: number;
  readonly name: string;
  readonly type: string;
  readonly text: string;
}

/** Input that cannot be run. */
export interface RefusedReply {
  readonly kind: 'refused';
  readonly id: number;
  readonly faults: readonly LiveFault[];
}

/** An answer of the engine. */
export type LiveReply = TurnReply | WeekReply | TakeReply | RefusedReply | { readonly kind: 'open' };
