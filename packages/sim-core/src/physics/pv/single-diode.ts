/**
 * Current and voltage of a PV module by the single-diode equation.
 *
 *     I = I_L − I_0 (e^(V_d/a) − 1) − G_sh V_d,   V = V_d − I R_s
 *
 * V_d is the voltage at the diode. Both I and V follow from it in closed form, so each solver looks for V_d: functions of
 * it are smooth, of one curvature, and Newton from the right of the root falls onto it without overshoot.
 */

/** The five numbers of the equation at one irradiance and cell temperature. */
export interface DiodeParameters {
  /** I_L. [A] */
  readonly photocurrent: number;
  /** I_0. [A] */
  readonly saturationCurrent: number;
  /** R_s. [Ω] */
  readonly seriesResistance: number;
  /** G_sh, one over the shunt resistance; 0 where there is no leak. [S] */
  readonly shuntConductance: number;
  /** a: ideality × cells in series × thermal voltage. [V] */
  readonly modifiedIdeality: number;
}

/** Parameters as the kernels take them: a typed array in this order. */
export const PHOTOCURRENT = 0;
export const SATURATION_CURRENT = 1;
export const SERIES_RESISTANCE = 2;
export const SHUNT_CONDUCTANCE = 3;
export const MODIFIED_IDEALITY = 4;

/** More Newton steps than any start needs (at most 12 were seen). */
const MAXIMUM_STEPS = 100;

/** Parameters in the order of the kernels. @internal */
export const packDiode = (p: DiodeParameters): Float64Array =>
  Float64Array.of(p.photocurrent, p.saturationCurrent, p.seriesResistance, p.shuntConductance, p.modifiedIdeality);

/** Current at a diode voltage. [A] @internal */
export const diodeCurrent = (p: Float64Array, diodeVoltage: number): number =>
  p[PHOTOCURRENT]! -
  p[SATURATION_CURRENT]! * Math.expm1(diodeVoltage / p[MODIFIED_IDEALITY]!) -
  p[SHUNT_CONDUCTANCE]! * diodeVoltage;

/** dI/dV_d, negative. [S] @internal */
const diodeSlope = (p: Float64Array, diodeVoltage: number): number =>
  (-p[SATURATION_CURRENT]! / p[MODIFIED_IDEALITY]!) * Math.exp(diodeVoltage / p[MODIFIED_IDEALITY]!) -
  p[SHUNT_CONDUCTANCE]!;

/**
 * Diode voltage when the module works on a source of `voltage` behind `outerResistance`.
 *
 * A fixed voltage is E = V with no resistance, a resistor E = 0, a DC motor its back-EMF and winding resistance: the
 * outer resistance only adds to R_s. Root of g = V_d − R I(V_d) − E, rising and convex. @internal
 */
export function diodeVoltageOnLoad(p: Float64Array, voltage: number, outerResistance: number): number {
  const resistance = p[SERIES_RESISTANCE]! + outerResistance;
  if (resistance === 0) return voltage;
  // Not below the root: I ≤ I_L, and the diode alone cannot take more than the whole drive does.
  const drive = voltage + resistance * p[PHOTOCURRENT]!;
  let v = drive;
  if (v > 0) {
    const byDiode = p[MODIFIED_IDEALITY]! * Math.log1p(drive / (resistance * p[SATURATION_CURRENT]!));
    if (byDiode < v) v = byDiode;
  } else {
    v = 0; // reverse bias: the equation is close to a line there
  }
  for (let step = 0; step < MAXIMUM_STEPS; step++) {
    const excess = v - resistance * diodeCurrent(p, v) - voltage;
    const change = excess / (1 - resistance * diodeSlope(p, v));
    v -= change;
    if (Math.abs(change) <= 1e-13 * (1 + Math.abs(v))) break;
  }
  return v;
}

/** Voltage with nothing connected: the root of the falling, concave I(V_d). [V] @internal */
export function openCircuitVoltage(p: Float64Array): number {
  if (!(p[PHOTOCURRENT]! > 0)) return 0;
  let v = p[MODIFIED_IDEALITY]! * Math.log1p(p[PHOTOCURRENT]! / p[SATURATION_CURRENT]!);
  for (let step = 0; step < MAXIMUM_STEPS; step++) {
    const change = diodeCurrent(p, v) / diodeSlope(p, v);
    v -= change;
    if (Math.abs(change) <= 1e-13 * (1 + v)) break;
  }
  return v;
}

/**
 * Diode voltage at maximum power: the root of dP/dV_d = I + I' (V_d − 2 R_s I), between short and open circuit. Newton,
 * kept in the bracket by bisection. @internal
 */
export function diodeVoltageAtMaximumPower(p: Float64Array): number {
  if (!(p[PHOTOCURRENT]! > 0)) return 0;
  const a = p[MODIFIED_IDEALITY]!;
  const rs = p[SERIES_RESISTANCE]!;
  let high = openCircuitVoltage(p);
  let low = 0;
  // Without resistances e^x (1 + x) = I_L/I_0 + 1 with x = V_d/a; about right with them.
  const x = high / a;
  let v = high - a * Math.log1p(x);
  for (let step = 0; step < MAXIMUM_STEPS; step++) {
    const current = diodeCurrent(p, v);
    const slope = diodeSlope(p, v);
    const arm = v - 2 * rs * current;
    const value = current + slope * arm;
    if (value > 0) low = v;
    else high = v;
    const bend = (slope + p[SHUNT_CONDUCTANCE]!) / a;
    const change = value / (slope + bend * arm + slope * (1 - 2 * rs * slope));
    let next = v - change;
    if (!(next >= low && next <= high)) next = (low + high) / 2;
    const moved = Math.abs(next - v);
    v = next;
    if (moved <= 1e-13 * (1 + v)) break;
  }
  return v;
}

/** Maximum power. [W] @internal */
export function maximumPower(p: Float64Array): number {
  const v = diodeVoltageAtMaximumPower(p);
  const current = diodeCurrent(p, v);
  return current * (v - current * p[SERIES_RESISTANCE]!);
}
