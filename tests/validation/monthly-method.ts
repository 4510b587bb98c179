/**
 * The monthly method for solar water heating of EN 15316-4-3:2007, method B, water heating only: an outside check on annual
 * fractions, not part of the packages. Written from the formulas of public implementations of two national codes built on it.
 */
export interface MonthlyInput {
  /** Collector reference area. [m²] */
  readonly area: number;
  readonly eta0: number;
  /** [W/(m²·K)], [W/(m²·K²)] */
  readonly a1: number;
  readonly a2: number;
  /** Modifier for hemispherical light: flat glazed 0.94, tubes 1. [-] */
  readonly modifier: number;
  /** Efficiency of the loop, given or by the exchanger's conductance [W/K]. */
  readonly loop: { readonly efficiency: number } | { readonly exchanger: number };
  /** Loss of the pipes, 5 + 0.5 A if unknown. [W/K] */
  readonly pipeLoss?: number;
  /** Tank, and the share of it that a heater keeps hot. [L], [-] */
  readonly tankVolume_L: number;
  readonly heatedShare?: number;
  /** Hot water wanted; the standard takes 40. [°C] */
  readonly wanted: number;
  /** Twelve means each: cold water [°C], outdoor air [°C], irradiance on the plane over all hours [W/m²]; heat of the hot water [kWh]. */
  readonly cold: readonly number[];
  readonly air: readonly number[];
  readonly irradiance: readonly number[];
  readonly use_kWh: readonly number[];
}

/** One month of the result. */
export interface MonthlyRow {
  readonly x: number;
  readonly y: number;
  /** Before the limits 0 and 1. [-] */
  readonly raw: number;
  readonly solar_kWh: number;
}

/** Hours of each month. */
export const MONTH_HOURS: readonly number[] = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31].map((days) => 24 * days);

/** Coefficients of the method for one system. */
export function monthlyCoefficients(input: MonthlyInput) {
  const { area, eta0, a1, a2, loop, tankVolume_L, heatedShare = 0, pipeLoss = 5 + 0.5 * area } = input;
  return {
    loss: a1 + 40 * a2 + pipeLoss / area,
    efficiency: 'efficiency' in loop ? loop.efficiency : 1 - (eta0 * area * a1) / loop.exchanger,
    storage: ((75 * area) / (tankVolume_L * (1 - heatedShare))) ** 0.25,
  };
}

/** Twelve months of the method. */
export function monthlyMethod(input: MonthlyInput): MonthlyRow[] {
  const { loss, efficiency, storage } = monthlyCoefficients(input);
  return MONTH_HOURS.map((hours, month) => {
    const air = input.air[month]!;
    const use = input.use_kWh[month]!;
    const reference = 11.6 + 1.18 * input.wanted + 3.86 * input.cold[month]! - 1.32 * air;
    const perUse = (input.area * efficiency * hours) / (1000 * use);
    const x = Math.min(Math.max(perUse * loss * (reference - air) * storage, 0), 18);
    const y = Math.max(perUse * input.modifier * input.eta0 * input.irradiance[month]!, 0);
    const raw = 1.029 * y - 0.065 * x - 0.245 * y ** 2 + 0.0018 * x ** 2 + 0.0215 * y ** 3;
    return { x, y, raw, solar_kWh: use * Math.min(Math.max(raw, 0), 1) };
  });
}

/** Solar heat of the year over the heat asked. [-] */
export function monthlyFraction(input: MonthlyInput): number {
  const total = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0);
  return total(monthlyMethod(input).map((row) => row.solar_kWh)) / total(input.use_kWh);
}
