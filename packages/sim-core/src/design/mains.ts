// How cold the mains are.

/** Cold water as a wave through the year: a supplier's mean and swing, or those of the air where rivers feed the network. */
export interface MainsWave {
  /** Mean of the year. [°C] */
  readonly mean: number;
  /** Warmest day less coldest day. [K] */
  readonly swing: number;
  /** Coldest day, 1 on 1 January; left out: 45 (14 February), south of the equator 228, as the correlation has it at 10 °C. [d] */
  readonly coldestDay?: number | undefined;
}

/**
 * Cold water by a correlation of the United States with the weather (Burch & Christensen 2007), by one number, by twelve monthly means, or as a
 * wave.
 */
export type MainsDesign = 'from-weather' | number | readonly number[] | MainsWave;
