/** What the turning pump meets in a step: one object of a run, filled anew in each. */
export interface PumpOffer {
  /** Power offered by the booster, infinite with the mains; not used by the direct drive. [W] */
  supply: number;
  /** On the module. [W/m²] */
  irradiance: number;
  /** Of the module. [°C] */
  cellTemperature: number;
  /** Mean of the loop. [°C] */
  fluidTemperature: number;
}

/** What the pump does with it: one object of a run, written anew. */
export interface PumpAnswer {
  /** [m³/s] */
  flow: number;
  /** Electrical, at the module or from the mains. [W] */
  power: number;
}
