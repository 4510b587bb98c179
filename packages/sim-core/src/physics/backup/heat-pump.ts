import type { CopCurve } from '../../design/design.ts';
import { requireNumber } from '../../input/errors.ts';
import { cubicAt, type MonotoneCubic, monotoneCubic } from '../monotone-cubic.ts';

/** A heat pump's coefficient of performance is held between these in a run; judgement: less is an element, more no machine. [-] */
const COP_HELD = { least: 1, most: 20 } as const;
/** Least lift with which the share of Carnot is taken; judgement. [K] */
const LEAST_LIFT = 1;
const ZERO = 273.15;

/** A curve ready for use: one form for all, so that a step looks up nothing by name. */
export interface CompiledCop {
  /** Which formula. */
  readonly form: 'straight' | 'carnot' | 'lines' | 'curve';
  /** Straight: COP = constant + perAir T_air + perWater T_water; Carnot: constant is its share. */
  readonly constant: number;
  readonly perAir: number;
  readonly perWater: number;
  readonly points: MonotoneCubic | null;
}

const straight = (constant: number, perAir: number, perWater: number): CompiledCop => ({
  form: 'straight',
  constant,
  perAir,
  perWater,
  points: null,
});

/** Prepares a curve. @internal */
export function compileCop(curve: CopCurve): CompiledCop {
  if ('perAirKelvin' in curve) return straight(curve.atZero, curve.perAirKelvin, 0);
  if ('perLiftKelvin' in curve) return straight(curve.atNoLift, curve.perLiftKelvin, -curve.perLiftKelvin);
  if ('carnotShare' in curve) return { ...straight(curve.carnotShare, 0, 0), form: 'carnot' };
  const form = curve.between === 'curve' ? 'curve' : 'lines';
  return { ...straight(0, 0, 0), form, points: monotoneCubic(curve.airTemperatures, curve.values) };
}

/** Straight lines between the points. */
function linesAt({ x, y }: MonotoneCubic, at: number): number {
  let k = 0;
  while (k < x.length - 2 && at >= x[k + 1]!) k++;
  return y[k]! + ((at - x[k]!) / (x[k + 1]! - x[k]!)) * (y[k + 1]! - y[k]!);
}

/** COP by a prepared curve, not held. Allocates nothing. @internal */
function copAt({ form, constant, perAir, perWater, points }: CompiledCop, air: number, water: number): number {
  if (form === 'straight') return constant + perAir * air + perWater * water;
  if (form === 'carnot') return (constant * (water + ZERO)) / Math.max(water - air, LEAST_LIFT);
  const { x } = points!;
  const within = Math.min(Math.max(air, x[0]!), x[x.length - 1]!);
  return form === 'curve' ? cubicAt(points!, within) : linesAt(points!, within);
}

/** The same, held as a run holds it. Allocates nothing. @internal */
export const heldCopAt = (curve: CompiledCop, air: number, water: number): number =>
  Math.min(Math.max(copAt(curve, air, water), COP_HELD.least), COP_HELD.most);

/**
 * Coefficient of performance of a heat pump, heat over electricity, by one of four curves.
 *
 *     over the air         COP = c₀ + c₁ T_air
 *     over the lift        COP = c₀ − c₁ (T_water − T_air)
 *     share of Carnot      COP = e (T_water + 273.15 K)/(T_water − T_air), the lift taken as 1 K at least
 *     by points            of T_air, straight lines or a monotone cubic between them, the end values beyond
 *
 * @param curve - As in `heater.cop`.
 * @param air - Air that it takes heat from, −60 to 60. [°C]
 * @param water - Water that it heats, 0 to 100. [°C]
 * @returns COP, as the curve has it; a run holds it from 1 to 20. [-]
 * @throws {@link DesignError} for a temperature out of range.
 */
export function heatPumpCop(curve: CopCurve, air: number, water: number): number {
  requireNumber('air', air, -60, 60, '°C');
  requireNumber('water', water, 0, 100, '°C');
  return copAt(compileCop(curve), air, water);
}
