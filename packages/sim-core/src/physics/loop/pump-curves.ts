/** A pump by what was measured: flow, head and power at one or more voltages. */
import type { PumpCurveDesign } from '../../design/pump.ts';
import { DesignError, requireNumber } from '../../input/errors.ts';
import { cubicAt, type MonotoneCubic, monotoneCubic } from '../monotone-cubic.ts';
import { risingRoot } from '../root.ts';

/** Measured curves worked into smooth ones. */
interface CompiledCurves {
  /** Rising. [V] */
  readonly voltage: readonly number[];
  /** Head over flow at each voltage. [m], [m³/s] */
  readonly head: readonly MonotoneCubic[];
  /** Electrical power over flow. [W] */
  readonly power: readonly MonotoneCubic[];
  /** Most flow at each voltage: where the head, drawn on straight, is 0. [m³/s] */
  readonly openFlow: readonly number[];
}

// A table of the year's flow asks thousands of times for the same curves.
const compiled = new WeakMap<readonly PumpCurveDesign[], CompiledCurves>();

function curvesOf(curves: readonly PumpCurveDesign[]): CompiledCurves {
  const known = compiled.get(curves);
  if (known !== undefined) return known;
  const through = (of: 'head' | 'power') =>
    curves.map(({ points }) =>
      monotoneCubic(
        points.map(({ flow }) => flow),
        points.map((point) => point[of]),
      ),
    );
  const head = through('head');
  const made = {
    voltage: curves.map(({ voltage }) => voltage),
    head,
    power: through('power'),
    openFlow: head.map(
      ({ slope, x, y }) => x.at(-1)! + (y.at(-1)! > 0 ? y.at(-1)! / -Math.min(slope.at(-1)!, -1e-9) : 0),
    ),
  };
  compiled.set(curves, made);
  return made;
}

/** Highest voltage of the curves. [V] */
export const mostVoltage = (curves: readonly PumpCurveDesign[]): number => curves[curves.length - 1]!.voltage;

/** Flow without head at the highest voltage. [m³/s] */
export const openFlowOf = (curves: readonly PumpCurveDesign[]): number => curvesOf(curves).openFlow.at(-1)!;

/**
 * Head or power at a voltage: of the nearest curves below and above, each brought to it by affinity (Q ~ s, H ~ s², P ~ s³, s = V/V_i), blended
 * by the voltage; outside the measured voltages of the nearest curve alone.
 */
function valueAt(curves: readonly PumpCurveDesign[], of: 'head' | 'power', volts: number, flow: number): number {
  const made = curvesOf(curves);
  const { voltage } = made;
  const last = voltage.length - 1;
  const brought = (at: number): number => {
    const s = volts / voltage[at]!;
    const value = cubicAt(made[of][at]!, flow / s);
    return of === 'head' ? s * s * value : s * s * s * Math.max(value, 0);
  };
  if (volts <= voltage[0]!) return volts > 0 ? brought(0) : 0;
  if (volts >= voltage[last]!) return brought(last);
  let above = 1;
  while (voltage[above]! < volts) above++;
  const w = (volts - voltage[above - 1]!) / (voltage[above]! - voltage[above - 1]!);
  return (1 - w) * brought(above - 1) + w * brought(above);
}

/** Head at a voltage [V] and flow [m³/s]; negative past open flow. [m] */
export const curveHead = (curves: readonly PumpCurveDesign[], volts: number, flow: number): number =>
  valueAt(curves, 'head', volts, flow);

/** Electrical power at a voltage [V] and flow [m³/s]. [W] */
export const curvePower = (curves: readonly PumpCurveDesign[], volts: number, flow: number): number =>
  valueAt(curves, 'power', volts, flow);

/** Voltage at which the pump gives a head [m] at a flow [m³/s]. [V] */
export function curveVoltage(curves: readonly PumpCurveDesign[], head: number, flow: number): number {
  if (!(head > 0) && !(flow > 0)) return 0;
  const excess = (volts: number): number => curveHead(curves, volts, flow) - head;
  let high = mostVoltage(curves);
  while (excess(high) < 0 && high < 1e6) high *= 2;
  return risingRoot(excess, 0, high, 1e-12 * high);
}

/** Whether a flow [m³/s] at a voltage [V] lies before the first or beyond the last point of one of the curves that it is read from. */
export function isOffPoints(curves: readonly PumpCurveDesign[], volts: number, flow: number): boolean {
  const last = curves.length - 1;
  let above = 0;
  while (above < last && curves[above]!.voltage < volts) above++;
  const below = curves[above]!.voltage > volts && above > 0 ? above - 1 : above;
  for (let at = below; at <= above; at++) {
    const { points, voltage } = curves[at]!;
    const there = (flow * voltage) / volts;
    if (there < points[0]!.flow || there > points[points.length - 1]!.flow) return true;
  }
  return false;
}

/** Where a measured pump and what hangs on it meet. */
export interface PumpCurvePoint {
  /** [m³/s] */
  readonly flow: number;
  /** Of the liquid pumped. [m] */
  readonly head: number;
  /** [W] */
  readonly electricalPower: number;
}

/**
 * The point at which a pump by measured points works at a voltage: its head is that of the system. Between the points lies a monotone cubic
 * (`throughPoints`), between the voltages the blend of both neighbours brought there by affinity; beyond the last point the curves go on straight.
 *
 * @param curves - Measured, by rising voltage.
 * @param voltage - At the pump. [V]
 * @param systemHead - Head that the system asks for at a flow [m³/s], rising; at no flow its lift. [m]
 * @throws {@link DesignError} for curves that are none, or a voltage out of range.
 */
export function pumpCurvePoint(
  curves: readonly PumpCurveDesign[],
  voltage: number,
  systemHead: (flow: number) => number,
): PumpCurvePoint {
  requireCurves(curves);
  requireNumber('voltage', voltage, 1e-3, 1000, 'V');
  const most = Math.max(...curvesOf(curves).openFlow) * (voltage / curves[0]!.voltage) + 1e-9;
  const flow = risingRoot((at) => systemHead(at) - curveHead(curves, voltage, at), 0, most, 1e-13 * most);
  return { flow, head: curveHead(curves, voltage, flow), electricalPower: curvePower(curves, voltage, flow) };
}

/** What is wrong with measured curves, in the words of an issue; `null` for nothing. */
export function faultOfCurves(curves: readonly PumpCurveDesign[]): { found: string; expected: string } | null {
  const rising = (values: readonly number[]) => values.every((value, at) => at === 0 || value > values[at - 1]!);
  if (curves.length === 0) return { found: 'no curve', expected: 'one voltage or more' };
  if (!rising(curves.map(({ voltage }) => voltage)))
    return { found: curves.map(({ voltage }) => `${voltage} V`).join(', '), expected: 'voltages that rise' };
  for (const { points, voltage } of curves) {
    if (points.length < 2) return { found: `${points.length} points at ${voltage} V`, expected: 'two points or more' };
    if (!rising(points.map(({ flow }) => flow)))
      return { found: `flows at ${voltage} V that do not rise`, expected: 'points from the least flow to the most' };
    if (!rising(points.map(({ head }) => -head)))
      return { found: `heads at ${voltage} V that do not fall`, expected: 'less head the more flows' };
    const gives = points.findIndex(({ flow, head, power }) => 1000 * 9.80665 * flow * head > power);
    if (gives >= 0)
      return {
        found: `point ${gives + 1} at ${voltage} V`,
        expected: 'a pump that takes more power than it gives the water',
      };
  }
  return null;
}

function requireCurves(curves: readonly PumpCurveDesign[]): void {
  const fault = faultOfCurves(curves);
  if (fault !== null) throw new DesignError([{ path: 'curves', ...fault, remedy: 'Sort and check the points.' }]);
}
