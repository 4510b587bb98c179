/** Hours and depth below freezing and bursting, from hourly columns; shared by site and run. */
import { fact, type Saying, say } from '../../input/saying.ts';
import { MONTH_STARTS } from '../../physics/calendar.ts';
import { highest, lowest } from '../../physics/column.ts';
import type { AdviceCode } from '../advice-codes.ts';

/** When a winter's cold begins and ends. */
export interface FreezeSeason {
  /** Hour of the year, 0 to 8759. */
  readonly first: number;
  /** Hour of the year, 0 to 8759; below {@link first} where the winter passes the turn of the year. */
  readonly last: number;
}

/** Cold against the fluid, through a year. */
export interface FreezeReport {
  /** Lowest temperature of absorber or outdoor pipe. [°C] */
  readonly coldest: number;
  /** Hour of it, 0 to 8759. */
  readonly coldestHour: number;
  /** Lowest air. [°C] */
  readonly coldestAir: number;
  /** Most that the absorber falls below the air under the sky. [K] */
  readonly deepestSkyCooling: number;
  /**
   * Coldest of absorber and outdoor pipe less the freezing point, in the hour in which that is least; negative: it freezes. What a
   * safe design has to spare. [K]
   */
  readonly margin: number;
  /** Hour of it, 0 to 8759. */
  readonly marginHour: number;
  /** Highest freezing point of the year: that of the thinnest fluid. [°C] */
  readonly freezingPoint: number;
  /** Highest burst point of the year, see `burstProtection`. [°C] */
  readonly burstPoint: number;
  /** Hours in which the coldest part is below the freezing point: slush, in which no pump should turn. [h] */
  readonly hoursBelowFreezing: number;
  /** Of these, hours in which the air alone is not that cold. [h] */
  readonly hoursBySky: number;
  /** Largest fall below the freezing point, 0 or more. [K] */
  readonly deepestBelowFreezing: number;
  /** Hours below the burst point: pipes may split. [h] */
  readonly hoursBelowBurst: number;
  /** Largest fall below the burst point, 0 or more. [K] */
  readonly deepestBelowBurst: number;
  /** Hours below the freezing point by month. Shape [12]. [h] */
  readonly monthsBelowFreezing: readonly number[];
  /** First and last hour below the freezing point, counted from 1 July so that a winter is whole; `null`: none. */
  readonly season: FreezeSeason | null;
  /** What hours below the burst point can lead to; empty where there are none. */
  readonly cautions: readonly Saying<AdviceCode>[];
}

/** Hourly columns, each [8760]. [°C] */
interface ColdColumns {
  /** Air. */
  readonly air: Float64Array;
  /** Coldest part of the absorber. */
  readonly absorber: Float64Array;
  /** Coldest outdoor pipe. */
  readonly pipe: Float64Array;
  /** Freezing point of the fluid. */
  readonly freezing: Float64Array;
  /** Burst point of the fluid. */
  readonly burst: Float64Array;
}

const HOURS = 8760;
const MIDSUMMER = 4344; // 1 July

/** Counts it all. @internal */
export function freezeReport({ air, absorber, pipe, freezing, burst }: ColdColumns, southern: boolean): FreezeReport {
  const months = new Array<number>(12).fill(0);
  let coldest = Number.POSITIVE_INFINITY;
  let coldestHour = 0;
  let margin = Number.POSITIVE_INFINITY;
  let marginHour = 0;
  let sky = 0;
  let below = 0;
  let bySky = 0;
  let depth = 0;
  let burstHours = 0;
  let burstDepth = 0;
  let month = 0;
  for (let hour = 0; hour < HOURS; hour++) {
    if (hour >= MONTH_STARTS[month + 1]!) month++;
    const cold = Math.min(absorber[hour]!, pipe[hour]!);
    if (cold < coldest) {
      coldest = cold;
      coldestHour = hour;
    }
    if (cold - freezing[hour]! < margin) {
      margin = cold - freezing[hour]!;
      marginHour = hour;
    }
    sky = Math.max(sky, air[hour]! - absorber[hour]!);
    if (cold < freezing[hour]!) {
      below++;
      months[month]!++;
      if (air[hour]! >= freezing[hour]!) bySky++;
      depth = Math.max(depth, freezing[hour]! - cold);
    }
    const bursting = Math.min(burst[hour]!, freezing[hour]!); // nothing splits before there is ice
    if (cold < bursting) {
      burstHours++;
      burstDepth = Math.max(burstDepth, bursting - cold);
    }
  }
  return {
    coldest,
    coldestHour,
    coldestAir: lowest(air),
    deepestSkyCooling: sky,
    margin,
    marginHour,
    freezingPoint: highest(freezing),
    burstPoint: highest(burst),
    hoursBelowFreezing: below,
    hoursBySky: bySky,
    deepestBelowFreezing: depth,
    hoursBelowBurst: burstHours,
    deepestBelowBurst: burstDepth,
    monthsBelowFreezing: months,
    season: seasonOf((hour) => Math.min(absorber[hour]!, pipe[hour]!) < freezing[hour]!, southern),
    cautions:
      burstHours > 0
        ? [say('fluid-may-split', { hours: fact(burstHours, 'h'), burst: fact(highest(burst), '°C') })]
        : [],
  };
}

/** First and last cold hour of a winter: years are cut at midsummer, in the south at the turn of the year. */
function seasonOf(isCold: (hour: number) => boolean, southern: boolean): FreezeReport['season'] {
  const cut = southern ? 0 : MIDSUMMER;
  let first: number | null = null;
  let last = 0;
  for (let at = 0; at < HOURS; at++) {
    const hour = (at + cut) % HOURS;
    if (!isCold(hour)) continue;
    first ??= hour;
    last = hour;
  }
  return first === null ? null : { first, last };
}
