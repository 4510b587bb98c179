/** What a collector does to a fluid that runs through it, solved along the flow. */
import { requireNumber } from '../../input/errors.ts';

/** A collector in steady sun; its coefficients hold for the local temperature of the fluid. */
export interface FlowingCollector {
  /** Area to which the coefficients refer. [m²] */
  readonly area: number;
  /** S: light turned into heat with no loss, η0 G after the incidence modifiers. [W/m²] */
  readonly absorbed: number;
  /** Linear heat loss coefficient. [W/(m²·K)] */
  readonly a1: number;
  /** Quadratic heat loss coefficient. [W/(m²·K²)] */
  readonly a2: number;
}

/**
 * Temperature of the fluid that leaves a collector in steady sun.
 *
 *     W dx/dA = S − a1 x − a2 x |x|,   x fluid over air, W = ṁ c_p
 *     x ≥ 0, a2 > 0:   x± = (−a1 ± D)/(2 a2), D = √(a1² + 4 a2 S),   (x − x₊)/(x − x₋) falls as e^(−D A/W)
 *     x ≥ 0, a2 = 0:   x = S/a1 + (x₀ − S/a1) e^(−a1 A/W)
 *
 * Below the air the loss is a gain, and the same with a2 taken negative. A fluid that passes the air's temperature is followed up to there, and on.
 *
 * @param collector - Area and coefficients.
 * @param inlet - [°C]
 * @param ambient - Outdoor air. [°C]
 * @param capacityRate - W. [W/K]
 * @returns [°C]
 * @throws {@link DesignError} for a number out of its range.
 * @see Closed form; Duffie & Beckman (2013) §6.5 for a2 = 0.
 */
export function collectorOutlet(
  collector: FlowingCollector,
  inlet: number,
  ambient: number,
  capacityRate: number,
): number {
  requireNumber('area', collector.area, 1e-6, 1e6, 'm²');
  requireNumber('absorbed', collector.absorbed, -1000, 2000, 'W/m²');
  requireNumber('a1', collector.a1, 0, 100, 'W/(m²·K)');
  requireNumber('a2', collector.a2, 0, 1, 'W/(m²·K²)');
  requireNumber('inlet', inlet, -100, 500, '°C');
  requireNumber('ambient', ambient, -90, 70, '°C');
  requireNumber('capacityRate', capacityRate, 1e-9, 1e9, 'W/K');
  return ambient + excessAfter(collector, inlet - ambient, collector.area / capacityRate);
}

/**
 * Excess over the air after a length z = A/W [m²·K/W] of flow; with A t/C for z, that of an absorber of heat capacity C that stands for t seconds.
 * @internal
 */
export function excessAfter({ absorbed, a1, a2 }: Omit<FlowingCollector, 'area'>, start: number, z: number): number {
  // The sign in which the fluid goes: from 0 the light decides.
  const sign = start === 0 ? Math.sign(absorbed) : Math.sign(start);
  if (sign === 0) return 0;
  const x = sign * start;
  const s = sign * absorbed;
  // Seen from the fluid's own side of the air the loss is a1 x + a2 x², and the light helps (s > 0) or hinders.
  const crossing = s < 0 ? lengthToAir(s, a1, a2, x) : Number.POSITIVE_INFINITY;
  if (z > crossing) return excessAfter({ absorbed, a1, a2 }, 0, z - crossing);
  return sign * excessOnOneSide(s, a1, a2, x, z);
}

/** x(z) of dx/dz = s − a1 x − a2 x², by the difference from the root that it tends to. */
function excessOnOneSide(s: number, a1: number, a2: number, x: number, z: number): number {
  if (a2 === 0) return a1 === 0 ? x + s * z : s / a1 + (x - s / a1) * Math.exp(-a1 * z);
  const square = a1 * a1 + 4 * a2 * s;
  if (square <= 0) {
    // No balance on this side: the tangent takes the place of the logarithm.
    const d = Math.max(Math.sqrt(-square), 1e-5 * a1);
    const angle = Math.atan((2 * a2 * x + a1) / d) - (d * z) / 2;
    return (d * Math.tan(angle) - a1) / (2 * a2);
  }
  const d = Math.sqrt(square);
  const high = (2 * s) / (a1 + d);
  const low = -(a1 + d) / (2 * a2);
  const e = ((x - high) / (x - low)) * Math.exp(-d * z);
  return (high - low * e) / (1 - e);
}

/** Length at which x has come down to 0, with s < 0. */
function lengthToAir(s: number, a1: number, a2: number, x: number): number {
  if (a2 === 0) return a1 === 0 ? -x / s : Math.log(1 - (a1 * x) / s) / a1;
  const square = a1 * a1 + 4 * a2 * s;
  if (square <= 0) {
    const d = Math.max(Math.sqrt(-square), 1e-5 * a1);
    return (2 / d) * (Math.atan((2 * a2 * x + a1) / d) - Math.atan(a1 / d));
  }
  const d = Math.sqrt(square);
  const high = (2 * s) / (a1 + d);
  const low = -(a1 + d) / (2 * a2);
  return Math.log(((x - high) / (x - low)) * (low / high)) / d;
}
