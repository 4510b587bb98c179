import type { PartBalance } from './part-balance.ts';

/** Hourly columns of a second tank, each of 8760 values, like those of the same matter in `RunColumns`. */
export interface SecondTankColumns {
  /** Its uppermost layer at the end of the hour. [°C] */
  readonly topTemperature: Float64Array;
  /** Its lowest layer at the end of the hour. [°C] */
  readonly bottomTemperature: Float64Array;
  /** Its mean at the end of the hour. [°C] */
  readonly meanTemperature: Float64Array;
  /** Its hottest layer, highest in the hour. [°C] */
  readonly maximumTemperature: Float64Array;
  /** Heat lost to its room; part of `tankLoss`. [J] */
  readonly loss: Float64Array;
  /** Heat from its coil; part of `coilHeat`. [J] */
  readonly coilHeat: Float64Array;
}

/**
 * What a second tank did in a year. In `RunColumns` and in the balance of the part `tank`, heat and water are those of both tanks,
 * `tankMaximumTemperature` is the hotter's, and the other temperatures are the first's.
 */
export interface SecondTankYear {
  /** Hourly columns. */
  readonly columns: SecondTankColumns;
  /** Its energy balance: heat of its coil in; loss, relief and what went into the first tank above mains out. */
  readonly balance: PartBalance;
  /** Hottest that it was. [°C] */
  readonly peak: number;
  /** Hottest that the first tank was. [°C] */
  readonly peakOfFirst: number;
}
