/** Month by month: what panels cover of a household's demand. */
import type { WeatherYear } from '@noonloop/weather-io';
import type { SystemDesign } from '../../design/design.ts';
import { monthlyMeans } from '../../physics/calendar.ts';
import { mainsColumn } from '../../physics/draw/mains.ts';
import { WATER_HEAT_CAPACITY } from '../../physics/tank/tank.ts';
import { bothTanks } from '../../physics/tank/tank-pair.ts';
import { type ArrayLight, arrayLight } from './array-light.ts';

const DAY = 86_400;
/** Halvings of the share; 2^-30 of it. */
const HALVINGS = 30;
/** Share of the demand at which the search for it ends: nothing above 1 is used. [-] */
const MOST_SHARE = 2;

/** Choices of the reckoning. */
interface Reckoning {
  /** Fluid in the collectors over the tank's mean. [K] */
  readonly difference: number;
  /** Fluid at one temperature all year in place of that; `null`: it follows the tank. [°C] */
  readonly fluidTemperature: number | null;
  /** What pipes, idle mornings and the pump leave of the collectors' gain. [-] */
  readonly systemShare: number;
}

/** Demand and gains by month, and what they make together. */
export interface MonthlyReckoning {
  readonly light: ArrayLight;
  /** Cold water. Shape [12]. [°C] */
  readonly mains: readonly number[];
  /** Heat wanted at the taps, a mean day. Shape [12]. [J] */
  readonly demand: readonly number[];
  /** Fluid in the collectors while they just cover the demand. [°C] */
  readonly coveringFluid: number;
  /** What the tank then loses, a day. [J] */
  readonly standingLoss: number;
  /** Heat that one panel then brings, a mean day. Shape [12]. [J] */
  readonly perPanel: readonly number[];
  /** Panels that just cover the demand; `null` where none can. Shape [12]. [-] */
  readonly toCover: readonly (number | null)[];
  /** Share of a month's demand that a number of panels covers, at most 1; month 0 to 11. [-] */
  readonly covered: (panels: number, month: number) => number;
}

/**
 * The tank's mean rises with the share c of the demand that it carries, t = t_mains + c (t_tap − t_mains); the fluid in the collectors stays
 * above it, and the tank loses what it does at that mean:
 *
 *     c Q = n s A q(t + Δ) − UA (t − t_room) 24 h
 *
 * The right side falls with c, so one c meets it. At c = 1 the tank is at the taps' temperature, and n follows in closed form.
 */
export function reckonMonths(design: SystemDesign, weather: WeatherYear, how: Reckoning): MonthlyReckoning {
  const { array, draw, tank } = design;
  const { lossCoefficient } = bothTanks(tank);
  const { systemShare } = how;
  const light = arrayLight(design, weather);
  const mains = monthlyMeans(mainsColumn(draw.mains, weather));
  const demand = mains.map((cold) => WATER_HEAT_CAPACITY * draw.dailyVolume * Math.max(draw.tapTemperature - cold, 0));
  const fluidAt = (water: number): number => how.fluidTemperature ?? water + how.difference;
  const lossAt = (water: number): number => lossCoefficient * (water - tank.roomTemperature) * DAY;
  const coveringFluid = fluidAt(draw.tapTemperature);
  const standingLoss = lossAt(draw.tapTemperature);
  const perPanel = mains.map(
    (_, month) => systemShare * array.collector.area * light.useful(month, coveringFluid).gain,
  );

  const covered = (panels: number, month: number): number => {
    const wanted = demand[month]!;
    if (wanted <= 0) return 1;
    const cold = mains[month]!;
    let low = 0;
    let high = MOST_SHARE;
    for (let round = 0; round < HALVINGS; round++) {
      const share = (low + high) / 2;
      const water = cold + share * (draw.tapTemperature - cold);
      const gained = panels * systemShare * array.collector.area * light.gain(month, fluidAt(water));
      if (gained - lossAt(water) > share * wanted) low = share;
      else high = share;
    }
    return Math.min(low, 1);
  };

  return {
    light,
    mains,
    demand,
    coveringFluid,
    standingLoss,
    perPanel,
    toCover: perPanel.map((heat, month) => (heat > 0 ? Math.max(demand[month]! + standingLoss, 0) / heat : null)),
    covered,
  };
}
