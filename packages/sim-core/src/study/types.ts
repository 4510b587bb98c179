/** What goes into a study and what comes out of it, row by row: plain data that files and threads can carry. */
import type { WeatherYear } from '@noonloop/weather-io';
import type { SystemInput } from '../define/system-input.ts';
import type { SystemDesign } from '../design/design.ts';
import type { DesignIssue } from '../input/errors.ts';
import type { StepOptions } from '../year/stepping.ts';
import type { DefaultMeasure, Measure, PeriodSummary } from './measures.ts';

/** Plain data, as a field of a design takes it. */
export type StudyValue =
  | number
  | string
  | boolean
  | null
  | readonly StudyValue[]
  | { readonly [field: string]: StudyValue };

/** One design of a study, before it is simulated. */
export interface StudyCase {
  /** Place in the study, 0 for the first. */
  readonly index: number;
  /** What was chosen for this design, by axis. */
  readonly inputs: Readonly<Record<string, StudyValue>>;
  /**
   * The whole design, as written or defined.
   *
   * @hidden its type is long, and `SystemInput` tells it
   */
  readonly design: SystemInput | SystemDesign;
  /** Which of the study's weather years. */
  readonly weather: number;
  /** How this one is stepped, where not as the study asks. */
  readonly steps?: StepOptions;
}

/** Why a design gave no numbers. */
export interface RowError {
  /** Class of the error, such as `DesignError`. */
  readonly name: string;
  /** In words. */
  readonly message: string;
  /** Every fault of the design, where it was the design's. */
  readonly issues?: readonly DesignIssue[];
}

/** One design of a study, simulated. */
export interface StudyRow {
  /** Place in the study, 0 for the first. */
  readonly index: number;
  /** What was chosen for this design, by axis. */
  readonly inputs: Readonly<Record<string, StudyValue>>;
  /** Which of the study's weather years, 0 for the first. */
  readonly weather: number;
  /** Key figures of the year; empty where the design failed. [SI with °C, see MEASURE_UNITS] */
  readonly measures: Readonly<Partial<Record<Measure, number | null>>>;
  /** Key figures of the months, January first; present where asked for. Each of shape [12]. */
  readonly months?: Readonly<Partial<Record<Measure, readonly (number | null)[]>>>;
  /** Why there are no numbers; present where the design failed. */
  readonly error?: RowError;
}

/**
 * A row as the compiler knows it: the key figures asked for and those that every row has, or an error and none of them. Ask for the error first;
 * behind it the figures are numbers.
 */
export type RowWith<Asked extends Measure> = Omit<StudyRow, 'measures' | 'error'> &
  (
    | {
        /** Key figures of the year. [SI with °C, see MEASURE_UNITS] */
        readonly measures: Readonly<Pick<PeriodSummary, Asked | DefaultMeasure>>;
        /** Absent: the design was simulated. */
        readonly error?: never;
      }
    | {
        /** Empty: there are none. */
        readonly measures: { readonly [Key in Measure]?: never };
        /** Why there are no numbers. */
        readonly error: RowError;
      }
  );

/** What is kept of each design, and how finely it is stepped. */
export interface StudyOptions<Asked extends Measure = Measure> {
  /** Key figures besides {@link DEFAULT_MEASURES}, by name. Default none. */
  readonly measures?: readonly Asked[];
  /** Key figures to keep month by month. Default none. */
  readonly monthly?: readonly Measure[];
  /** How the year is stepped. Default: as `simulate`. */
  readonly steps?: StepOptions;
}

/** The same, every default written out. */
export interface RowRequest {
  /** Key figures of the year, in the order of the rows. */
  readonly measures: readonly Measure[];
  /** Key figures of the months. */
  readonly monthly: readonly Measure[];
  /** How the year is stepped. */
  readonly steps: StepOptions;
}

/** A few neighbouring designs, sent to one thread together. */
export interface StudyTask {
  /** The designs. */
  readonly cases: readonly StudyCase[];
  /** Every weather year of the study. */
  readonly weathers: readonly WeatherYear[];
  /** What to keep. */
  readonly request: RowRequest;
}

/** Where designs are simulated: in this thread, or in a pool (`startPool` of `@noonloop/sim-core/node`). */
export interface StudyRunner {
  /** Tasks that are kept waiting or under way at once. */
  readonly tasks: number;
  /** Designs in a task, given how many there are. */
  readonly designsPerTask: (count: number) => number;
  /** Simulates a task; its rows in the order of its cases. */
  readonly run: (task: StudyTask) => Promise<StudyRow[]>;
}

/** How far a study has come. */
export interface StudyProgress {
  /** Rows so far, those read back from a file included. */
  readonly done: number;
  /** Rows of the study or shard; for a search the most that it may ask for. */
  readonly total: number;
  /** Rows whose design failed. */
  readonly failed: number;
  /** Rows read back from a results file. */
  readonly resumed: number;
  /** Time since the start. [s] */
  readonly elapsed: number;
  /** Designs simulated a second since the start; 0 before the first. [1/s] */
  readonly rate: number;
  /** At this rate; `null` before the first design. [s] */
  readonly timeLeft: number | null;
}

/** Where rows are kept as they come, so that a study may go on after a crash; `resultsFile` of `@noonloop/sim-core/node`. */
export interface ResultsStore {
  /**
   * Opens it for a study.
   *
   * @returns The rows that are there already, from the first on without a gap.
   * @throws StudyError when what is there belongs to another study.
   */
  readonly open: (study: StudyPlan) => AsyncIterable<StudyRow> | Promise<AsyncIterable<StudyRow>>;
  /** Adds rows behind the last. */
  readonly append: (rows: readonly StudyRow[]) => Promise<void>;
  /** Ends the writing. */
  readonly close: () => Promise<void>;
}

/** How a study is run. Nothing here changes a number. */
export interface RunOptions {
  /** Where designs are simulated. Default: in this thread, which is left to others every few hundredths of a second. */
  readonly runner?: StudyRunner;
  /** Ends the study early; what was kept in a results file stays. */
  readonly signal?: AbortSignal;
  /** Called after every row. */
  readonly onProgress?: (progress: StudyProgress) => void;
  /** Where rows are kept; a study that finds rows there goes on behind them. */
  readonly store?: ResultsStore;
}

/** Kinds of study. */
export type StudyKind =
  | 'compare'
  | 'sweep'
  | 'one-at-a-time'
  | 'morris'
  | 'sobol'
  | 'uncertainty'
  | 'bands'
  | 'best-of';

/** All that decides the rows of a study: what a results file is checked against. */
export interface StudyPlan {
  /** What kind of study it is. */
  readonly kind: StudyKind;
  /** All that was given, as plain data, besides the weather. */
  readonly description: StudyValue;
  /** The weather years. */
  readonly weathers: readonly WeatherYear[];
  /** What is kept of each design. */
  readonly request: RowRequest;
  /** Designs of the whole study. */
  readonly total: number;
  /** First design of this shard; 0 where the study is whole. */
  readonly first: number;
  /** Designs of this shard; {@link total} where the study is whole. */
  readonly count: number;
  /** Which shard this is; `null` where the study is whole. */
  readonly shard: {
    /** Which of them, 0 for the first. */
    readonly index: number;
    /** How many there are. */
    readonly count: number;
  } | null;
}
