import type { WeatherYear } from '@noonloop/weather-io';
import type { SystemDesign } from '../../design/design.ts';
import { checkInput } from '../../input/check.ts';
import { choice, defaulted, quantity, quantityOr } from '../../input/field.ts';
import type { Quantity } from '../../input/quantity.ts';
import type { WorkingStep } from '../../input/working.ts';
import * as z from '../../input/zod.ts';
import { DAYS_OF_MONTH } from '../../physics/calendar.ts';
import { type MonthlyReckoning, reckonMonths } from './array-months.ts';
import { arraySteps } from './array-working.ts';
import { requireOneGroup } from './one-group.ts';
import { PRACTICE } from './working.ts';

const optionsSchema = z.strictObject({
  aim: defaulted(choice(['summer', 'year']), 'summer', '', 'judgement: no month with more sun than the house can take'),
  yearShare: quantityOr('fraction', 0.05, 0.95, 0.6, `a common aim where winters are mild, ${PRACTICE}`),
  fluidTemperature: quantity('temperature', 20, 95).optional(),
  difference: quantityOr('temperatureDifference', 0, 40, 10, `fluid over tank in full sun, 8 to 12 K, ${PRACTICE}`),
  systemShare: quantityOr(
    'fraction',
    0.3,
    1,
    0.8,
    'judgement: what pipes, idle mornings and the pump leave of the gain',
  ),
});

/** What {@link sizeArray} may be told; each has a default. */
export interface ArraySizingOptions {
  /** What the number is to cover: the sunniest month and no more (default), or a share of the year. */
  readonly aim?: 'summer' | 'year';
  /** Share of the year's demand for the aim `'year'`, 0.05 to 0.95. Default 0.6, common practice, no source. [-] */
  readonly yearShare?: Quantity;
  /** Mean of the fluid in the collectors all year, 20 to 95. Left out, it follows the tank, {@link difference} above it. [°C] */
  readonly fluidTemperature?: Quantity;
  /** Fluid in the collectors over the tank's mean, 0 to 40. Default 10; 8 to 12 are common practice, no source. [K] */
  readonly difference?: Quantity;
  /** What pipes, idle mornings and the pump leave of the collectors' gain, 0.3 to 1. Default 0.8, judgement. [-] */
  readonly systemShare?: Quantity;
}

/** One month of {@link ArraySizing}, a mean day. */
export interface ArrayMonth {
  /** 1 to 12. */
  readonly month: number;
  /** Light on the collector plane. [J/m²] */
  readonly light: number;
  /** Heat wanted at the taps. [J] */
  readonly demand: number;
  /** Heat that one panel brings into a tank that is as warm as the taps want. [J] */
  readonly perPanel: number;
  /** Panels that would cover the demand and what such a tank loses; `null` where a panel then brings nothing. [-] */
  readonly panelsToCover: number | null;
  /** Share of the demand that the panels chosen cover, at most 1. [-] */
  readonly covered: number;
}

/** How many panels, and why. */
export interface ArraySizing {
  /** Panels for the aim, at least 1. */
  readonly panels: number;
  /** Fewest panels that cover at least 95 % of the month with most surplus; more stand hot in it. [-] */
  readonly panelsForSummer: number;
  /** Fewest panels with which the year's share reaches the aim; `null` where 100 do not. [-] */
  readonly panelsForYear: number | null;
  /** Collector area of {@link panels}. [m²] */
  readonly area: number;
  /** Share of the year's demand that they cover, by this month-by-month reckoning. [-] */
  readonly yearShare: number;
  /** That share with 1, 2, … panels. Shape [12]. [-] */
  readonly yearShares: readonly number[];
  /** Best month's gain of a mean day into a tank as warm as the taps want, before the system's losses. [J/m²] */
  readonly bestDay: number;
  /** Shape [12]. */
  readonly months: readonly ArrayMonth[];
  /** The working. */
  readonly steps: readonly WorkingStep[];
}

/** Share of the best month's demand that counts as covered: a twentieth short is not felt; judgement. [-] */
const COVERED = 0.95;
const MOST_PANELS = 100;

/**
 * How many panels suit a household: demand of each month over what a panel brings in it.
 *
 *     n = [ρ c V (t_tap − t_mains) + UA (t_tap − t_room) 24 h]/(s A [η0 H_u − (a1 d + a2 d²) N_u]),   d = t_tap + 10 K − t_air
 *
 * H_u and N_u are light and time in which a panel at that temperature gains: behind horizon and obstacle, less what wind and sky take. With
 * fewer panels the tank stays colder and each brings more; `covered` follows the tank. With the aim `'summer'` the number covers
 * the month with most surplus and no more; with `'year'` the share of the year. A reckoning for choosing what to simulate: clouds
 * one after the other, stagnation and the heater's standby are not in it. The number of panels of the design plays no part; its
 * tank's loss does.
 *
 * @param design - Collector, plane, tank, draw and mains, from `defineSystem`.
 * @param weather - One year.
 * @param options - Aim and temperatures.
 * @throws {@link DesignError} listing all faults of the options at once; for an array of several groups.
 * @see Utilizability: Duffie & Beckman (2013) §2.22; ISO 9806 for the line.
 */
export function sizeArray(design: SystemDesign, weather: WeatherYear, options: ArraySizingOptions = {}): ArraySizing {
  const asked = checkInput(optionsSchema, options);
  requireOneGroup(design.array.groups, 'sizeArray');
  const reckoned = reckonMonths(design, weather, { ...asked, fluidTemperature: asked.fluidTemperature ?? null });
  const { light, demand, perPanel, toCover, covered, coveringFluid } = reckoned;
  const best = sunniest(toCover);
  const counts = Array.from({ length: MOST_PANELS }, (_, at) => at + 1);
  const panelsForSummer =
    toCover[best] === null ? 1 : (counts.find((panels) => covered(panels, best) >= COVERED) ?? MOST_PANELS);
  const panelsForYear = counts.find((panels) => shareOfYear(reckoned, panels) >= asked.yearShare) ?? null;
  const panels = asked.aim === 'summer' ? panelsForSummer : (panelsForYear ?? MOST_PANELS);
  const yearShare = shareOfYear(reckoned, panels);
  return {
    panels,
    panelsForSummer,
    panelsForYear,
    area: panels * design.array.collector.area,
    yearShare,
    yearShares: counts.slice(0, 12).map((count) => shareOfYear(reckoned, count)),
    bestDay: Math.max(...perPanel) / (asked.systemShare * design.array.collector.area),
    months: light.daily.map((daily, month) => ({
      month: month + 1,
      light: daily,
      demand: demand[month]!,
      perPanel: perPanel[month]!,
      panelsToCover: toCover[month]!,
      covered: covered(panels, month),
    })),
    steps: arraySteps(design, reckoned, {
      best,
      useful: light.useful(best, coveringFluid),
      systemShare: asked.systemShare,
      panels,
      panelsForSummer,
      yearShare,
    }),
  };
}

/** Month that the fewest panels cover; the first where none can. */
function sunniest(toCover: readonly (number | null)[]): number {
  return toCover.reduce<number>((at, value, month) => {
    const standing = toCover[at];
    return value !== null && (standing == null || value < standing) ? month : at;
  }, 0);
}

/** Share of the year's demand that a number of panels covers. [-] */
function shareOfYear({ demand, covered }: MonthlyReckoning, panels: number): number {
  let whole = 0;
  let met = 0;
  for (const [month, days] of DAYS_OF_MONTH.entries()) {
    whole += days * demand[month]!;
    met += days * demand[month]! * covered(panels, month);
  }
  return whole > 0 ? met / whole : 0;
}
