// What a band is.
import type { BandPart, KnownBy } from './band-parts.ts';
import type { Measure } from './measures.ts';

/** What one cause adds to the band of a key figure. */
export interface BandShare extends Pick<BandPart, 'name' | 'source'> {
  /** Standard deviation of the key figure from this cause alone. [unit of the key figure] */
  readonly deviation: number;
}

/** Band of one key figure. [unit of the key figure] */
export interface MeasureBand {
  /** As the design is written. */
  readonly value: number;
  /** Half the cases lie below; it may lie off {@link value}, for some causes pull one way. */
  readonly middle: number;
  /** Lower end. */
  readonly low: number;
  /** Upper end. */
  readonly high: number;
  /** Half the band over {@link value}, which reports take as `uncertainty`; `null` where the value is 0. [-] */
  readonly halfWidth: number | null;
  /** Share of the cases that it holds. [-] */
  readonly share: number;
  /** Whether it is for one year to come, and not for the mean of many. */
  readonly oneYear: boolean;
  /** How the water use is known. */
  readonly water: KnownBy['water'];
  /** Causes, the greatest first. */
  readonly parts: readonly BandShare[];
}

/** Outcome of {@link bands}: a band by key figure; one without a number in every year is left out. */
export type Bands = Readonly<Partial<Record<Measure, MeasureBand>>>;
