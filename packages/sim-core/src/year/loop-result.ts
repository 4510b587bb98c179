import type { SteamReach } from '../physics/loop/vessel-need.ts';

/** What a loop that empties did in a year. */
export interface DrainYear {
  /** Times that it emptied. */
  readonly times: number;
  /** Fillings of collectors so hot that water flashed to steam. */
  readonly flashes: number;
  /** Water that drains each time. [m³] */
  readonly content: number;
  /** Heat above the air that stayed outside in metal and low spots: lost. [J] */
  readonly heatLeft: number;
  /** Heat above the vessel's temperature that came back with the water. [J] */
  readonly heatBack: number;
  /** Time that the pump took to fill from the vessel; 0 where fresh water fills. [s] */
  readonly fillingTime: number;
  /** Time in which the pump turned and did not lift the water to the collectors' top. [s] */
  readonly liftedInVain: number;
}

/** What a year does to the loop's fluid and pressure. */
export interface LoopYear {
  /** What emptying and filling did; left out for a closed loop. */
  readonly drain?: DrainYear;
  /** Pressure of the air at the site: the mean of the weather's column, or by its height. [Pa] */
  readonly airPressure: number;
  /** How far steam gets when the array stands in full sun, and the vessel that it needs, at that pressure of the air. */
  readonly steam: SteamReach;
  /** Longest pipe, there and back, that steam fills in this year. [m] */
  readonly longestSteam: number;
  /** At the gauge, at the end of an hour. [Pa gauge] */
  readonly lowestPressure: number;
  /** At the gauge. [Pa gauge] */
  readonly highestPressure: number;
  /** Liquid lost by the leak. [m³] */
  readonly lost: number;
  /** Liquid let out by the loop's relief valve. [m³] */
  readonly relieved: number;
  /** Mains water that replaced it. [m³] */
  readonly madeUp: number;
  /** First hour in which the pump would run and the loop has too little pressure; `null`: none. */
  readonly circulationFails: number | null;
  /**
   * First hour from which the fluid would freeze at the lowest temperature that absorber or outdoor pipes reach in the whole
   * year; 0 where it does from the start, `null`: never.
   */
  readonly protectionEnds: number | null;
  /** Lowest temperature of the absorber. [°C] */
  readonly coldestAbsorber: number;
  /** Lowest temperature of the outdoor pipes. [°C] */
  readonly coldestPipe: number;
  /**
   * Coldest of absorber and outdoor pipes less the freezing point, in the hour in which that is least; negative: it freezes.
   * [K]
   */
  readonly freezeMargin: number;
  /** Hour of the year with the least margin, 0 to 8759. */
  readonly freezeMarginHour: number;
  /** Hours in which the absorber falls below the freezing point. */
  readonly absorberFreezingHours: number;
  /** Hours in which the outdoor pipes fall below the freezing point. */
  readonly pipeFreezingHours: number;
  /** Largest fall of either below it. [K] */
  readonly deepestFreezing: number;
  /** Temperature down to which the mixture of the year's end bursts no pipe, see `burstProtection`. [°C] */
  readonly burstPoint: number;
  /** Hours in which absorber or outdoor pipes fall below the burst point of the mixture of that hour. */
  readonly burstHours: number;
}
