import type { WeatherYear } from '@noonloop/weather-io';
import * as z from 'zod';
import type { SystemDesign } from '../../design/design.ts';
import { checkInput } from '../../input/check.ts';
import { choice, defaulted, quantityOr } from '../../input/field.ts';
import type { Quantity } from '../../input/quantity.ts';
import { line, show, type WorkingStep } from '../../input/working.ts';
import { DAYS_OF_MONTH, monthlyMeans } from '../../physics/draw/calendar.ts';
import { mainsColumn } from '../../physics/draw/mains.ts';
import { WATER_HEAT_CAPACITY } from '../../physics/tank/tank.ts';
import { usefulLight } from './array-light.ts';
import { KWH, PRACTICE } from './working.ts';

const optionsSchema = z.strictObject({
  aim: defaulted(choice(['summer', 'year']), 'summer', '', 'judgement: no month with more sun than the house can take'),
  yearShare: quantityOr('fraction', 0.05, 0.95, 0.6, `a common aim where winters are mild, ${PRACTICE}`),
  fluidTemperature: quantityOr(
    'temperature',
    20,
    95,
    50,
    'judgement: a tank half warmed, the coil some kelvin above it',
  ),
  systemShare: quantityOr(
    'fraction',
    0.3,
    1,
    0.8,
    'judgement: what pipes, tank and idle mornings leave of the collectors’ gain',
  ),
});

/** What {@link sizeArray} may be told; each has a default. */
export interface ArraySizingOptions {
  /** What the number is to cover: the sunniest month and no more (default), or a share of the year. */
  readonly aim?: 'summer' | 'year';
  /** Share of the year's demand for the aim `'year'`, 0.05 to 0.95. Default 0.6, common practice, no source. [-] */
  readonly yearShare?: Quantity;
  /**
   * Mean of the fluid in the collectors, 20 to 95. Default 50: a tank half warmed, the coil some kelvin above it; judgement.
   * [°C]
   */
  readonly fluidTemperature?: Quantity;
  /** What pipes, tank and idle mornings leave of the collectors' gain, 0.3 to 1. Default 0.8, judgement. [-] */
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
  /** Heat that one panel brings to the taps. [J] */
  readonly perPanel: number;
  /** Panels that would cover the demand; `null` where a panel brings nothing. [-] */
  readonly panelsToCover: number | null;
  /** Share of the demand that the panels chosen cover, at most 1. [-] */
  readonly covered: number;
}

/** How many panels, and why. */
export interface ArraySizing {
  /** Panels for the aim, at least 1. */
  readonly panels: number;
  /** Panels that just cover the demand of the month with most surplus; more stand hot in it. [-] */
  readonly panelsForSummer: number;
  /** Fewest panels with which the year's share reaches the aim; `null` where 100 do not. [-] */
  readonly panelsForYear: number | null;
  /** Collector area of {@link panels}. [m²] */
  readonly area: number;
  /** Share of the year's demand that they cover, by this month-by-month reckoning. [-] */
  readonly yearShare: number;
  /** Best month's gain of a mean day, before the system's losses. [J/m²] */
  readonly bestDay: number;
  /** Shape [12]. */
  readonly months: readonly ArrayMonth[];
  /** The working. */
  readonly steps: readonly WorkingStep[];
}

/**
 * How many panels suit a household: demand of each month over what a panel brings in it.
 *
 *     demand = ρ c V (t_tap − t_mains),   per panel = s A [η0 H_u − (a1 d + a2 d²) N_u],   d = t_fluid − t_air
 *
 * H_u and N_u are light and time of the hours in which a panel at the working temperature gains. With the aim `'summer'` the
 * number covers the month with most surplus and no more; with `'year'` the share of the year. A reckoning for choosing what to
 * simulate: it has no tank, no clouds one after the other, no stagnation, and holds the fluid at one temperature all year: it
 * errs low. The number of panels of the design plays no part; horizon and obstacles are left out.
 *
 * @param design - Collector, plane, draw and mains, from `defineSystem`.
 * @param weather - One year.
 * @param options - Aim and temperatures.
 * @throws {@link DesignError} listing all faults of the options at once.
 * @see Utilizability: Duffie & Beckman (2013) §2.22; ISO 9806 for the line.
 */
export function sizeArray(design: SystemDesign, weather: WeatherYear, options: ArraySizingOptions = {}): ArraySizing {
  const { aim, yearShare: wanted, fluidTemperature, systemShare } = checkInput(optionsSchema, options);
  const { draw, array } = design;
  const { collector } = array;
  const mains = monthlyMeans(mainsColumn(draw.mains, weather));
  const light = usefulLight(design, weather, fluidTemperature);
  const demands = mains.map((cold) => WATER_HEAT_CAPACITY * draw.dailyVolume * Math.max(draw.tapTemperature - cold, 0));
  const perPanel = light.map(({ gain }) => systemShare * collector.area * gain);
  const toCover = perPanel.map((heat, month) => (heat > 0 ? demands[month]! / heat : null));
  const best = toCover.reduce<number>((at, value, month) => {
    const standing = toCover[at];
    return value !== null && (standing == null || value < standing) ? month : at;
  }, 0);
  const least = toCover[best] ?? null;
  const panelsForSummer = least === null ? 1 : Math.max(1, Math.round(least));
  const shareOf = (panels: number): number => {
    let covered = 0;
    let whole = 0;
    for (let month = 0; month < 12; month++) {
      covered += DAYS_OF_MONTH[month]! * Math.min(demands[month]!, panels * perPanel[month]!);
      whole += DAYS_OF_MONTH[month]! * demands[month]!;
    }
    return whole > 0 ? covered / whole : 0;
  };
  const counts = Array.from({ length: 100 }, (_, at) => at + 1);
  const panelsForYear = counts.find((panels) => shareOf(panels) >= wanted) ?? null;
  const panels = aim === 'summer' ? panelsForSummer : (panelsForYear ?? 100);
  const yearShare = shareOf(panels);
  const { usefulDaily, usefulTime, air, gain } = light[best]!;
  const d = fluidTemperature - air;
  const month = best + 1;
  const steps = [
    line(
      `demand of a day in month ${month}`,
      'Q = ρ c V (t_tap − t_mains)',
      `${show(WATER_HEAT_CAPACITY / KWH, 5)} kWh/(m³·K) × ${show(draw.dailyVolume)} m³ × (${show(draw.tapTemperature)} − ${show(mains[best]!)}) K`,
      demands[best]!,
      'J',
      'heat of water; mains as in the design',
    ),
    line(
      `gain of 1 m² in month ${month}`,
      'q = η0 H_u − (a1 d + a2 d²) N_u',
      `${show(collector.eta0)} × ${show(usefulDaily / KWH)} kWh − (${show(collector.a1)} × ${show(d)} + ${show(collector.a2)} × ${show(d)}²) × ${show(usefulTime / 3600)} h/1000`,
      gain,
      'J/m²',
      'ISO 9806 line over the hours with gain; d at the mean air of those hours, the value hour by hour',
    ),
    line(
      'heat of one panel',
      's A q',
      `${show(systemShare)} × ${show(collector.area)} m² × ${show(gain / KWH)} kWh/m²`,
      perPanel[best]!,
      'J',
      's: judgement',
    ),
    line(
      'panels for that month',
      'n = Q/(s A q), rounded',
      `${show(demands[best]! / KWH)} kWh/${show(perPanel[best]! / KWH)} kWh = ${least === null ? 'none' : show(least, 3)}`,
      panelsForSummer,
      '-',
      'the month with most surplus: more panels stand hot in it',
    ),
    line(
      'share of the year',
      'Σ days min(Q, n s A q)/Σ days Q',
      `${panels} panels, twelve months`,
      yearShare,
      '-',
      'month by month; a simulation has the last word',
    ),
  ];
  const months = light.map(
    ({ daily }, at): ArrayMonth => ({
      month: at + 1,
      light: daily,
      demand: demands[at]!,
      perPanel: perPanel[at]!,
      panelsToCover: toCover[at]!,
      covered: demands[at]! > 0 ? Math.min(1, (panels * perPanel[at]!) / demands[at]!) : 1,
    }),
  );
  const bestDay = Math.max(...light.map((of) => of.gain));
  return { panels, panelsForSummer, panelsForYear, area: panels * collector.area, yearShare, bestDay, months, steps };
}
