// What a check of a weather year finds.
import type { Said } from '../said.ts';

/** Kinds of finding. */
export type QualityCode =
  | 'beyond-possible'
  | 'beyond-rare'
  | 'closure'
  | 'diffuse-above-global'
  | 'light-at-night'
  | 'no-light-by-day'
  | 'stuck'
  | 'repeated-day'
  | 'clock'
  | 'hemisphere'
  | 'light-sum'
  | 'light-offset'
  | 'column-empty'
  | 'columns-swapped'
  | 'air'
  | 'humidity'
  | 'dew-point'
  | 'wind'
  | 'elevation';

/** One row in which something was found. */
export interface QualityRow {
  /** Hour of the year, 0 to 8759, local standard time. */
  readonly hour: number;
  /** Start of the row as people write it, such as `3 Jul 14:00`. */
  readonly stamp: string;
  /** What stands there. */
  readonly value: number;
  /** What it was held against. */
  readonly limit: number;
  /** Unit of both. */
  readonly unit: string;
}

/** Something found, with how often and where it is worst. */
export interface QualityFinding {
  /** Kind, stable for programs. */
  readonly code: QualityCode;
  /**
   * `fault`: changes what a year gives, nothing should be run on it; `doubt`: may change it; `note`: hours too few to change it, as good
   * files have.
   */
  readonly weight: 'fault' | 'doubt' | 'note';
  /** Rows or days touched. */
  readonly count: number;
  /** What was counted: hours or days. */
  readonly counted: 'hours' | 'days';
  /** One sentence for a reader, in metric units. */
  readonly text: string;
  /** Its words and quantities, where it has quantities with units. */
  readonly parts?: Said['parts'];
  /** The worst rows, worst first, at most 10. */
  readonly worst: readonly QualityRow[];
  /** What was reckoned about the year as a whole; the unit stands after the underscore. */
  readonly numbers?: Readonly<Record<string, number>>;
}

/** Whether a year can be used. */
export interface WeatherVerdict {
  /** Whether there is no fault. */
  readonly usable: boolean;
  /** Number of faults. */
  readonly faults: number;
  /** Number of doubts. */
  readonly doubts: number;
  /** In words, such as `usable; one doubt`. */
  readonly text: string;
}

/** When the light comes, as against when the sun says. */
export interface ClockEstimate {
  /** How much later the light comes than the sun of the stated place and zone, −12 to 12; `null` where nothing tells. [h] */
  readonly late: number | null;
  /** Half width of the interval in which it lies with 95 % confidence. [h] */
  readonly uncertainty: number;
  /** Days of clear sky that told. */
  readonly clearDays: number;
  /** Shift that makes GHI = DHI + DNI cos Z close best; `null` where it says no more than the other. [h] */
  readonly lateByClosure: number | null;
  /** rms of the closure as the year stands, and at its best shift. [W/m²] */
  readonly closureRms: readonly [asItStands: number, best: number];
  /** What would explain the shift, the likeliest first; empty where there is none. */
  readonly causes: readonly string[];
}

/** What {@link checkWeather} returns. Nothing of the year is changed. */
export interface QualityReport {
  /** Where the year came from. */
  readonly source: string;
  /** Name of the place. */
  readonly site: string;
  /** Whether the year can be used, in a sentence. */
  readonly verdict: WeatherVerdict;
  /** What was found, faults first; empty for a year without doubt. */
  readonly findings: readonly QualityFinding[];
  /** The clock of the year, tested against the sun. */
  readonly clock: ClockEstimate;
  /** Correlation of daily light with that at the top of the air at this latitude, and at the opposite one. [-] */
  readonly season: readonly [here: number, opposite: number];
  /** Global irradiance for the picture; a copy. Shape [8760]. [W/m²] */
  readonly ghi: Float64Array;
  /** Sunrise and sunset of each day in clock time after midnight; `NaN` in polar day and night. Shape [365 × 2]. [h] */
  readonly sunriseSunset: Float64Array;
  /** Hours with a finding. Shape [8760]; 0 none, 1 rare, 2 cannot be weather. */
  readonly marks: Uint8Array;
}
