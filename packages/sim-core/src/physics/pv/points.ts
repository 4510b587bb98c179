/** A module by measured points of its current and voltage. */
import type { PvModuleDesign, PvPointDesign } from '../../design/pump.ts';
import { cubicAt, type MonotoneCubic, monotoneCubic } from '../monotone-cubic.ts';

/** Least points; and how far from open or short circuit the ends may lie, as a share of the whole. Judgement. */
const LEAST = 4;
const NEAR = 0.25;
/** Parts in which the best point is sought. */
const PARTS = 20_000;
/** Of them that are left out together where none can be the best. */
const BLOCK = 200;

/** What is wrong with points, in words; `null` for nothing. */
export function faultOfPoints(points: readonly PvPointDesign[]): string | null {
  if (points.length < LEAST) return `${points.length} points`;
  const falls = points.every(
    ({ current, voltage }, at) => at === 0 || (voltage > points[at - 1]!.voltage && current <= points[at - 1]!.current),
  );
  if (!falls) return 'voltages that do not rise, or currents that rise with them';
  const first = points[0]!;
  const last = points[points.length - 1]!;
  if (first.voltage > NEAR * last.voltage) return `${first.voltage} V as the least`;
  return last.current > NEAR * first.current ? `${last.current} A as the least` : null;
}

/** What a plate would say of the module: the curve through the points, drawn on straight to both ends. */
export function plateOf(
  points: readonly PvPointDesign[],
): Pick<PvModuleDesign, 'maximumPowerCurrent' | 'maximumPowerVoltage' | 'openCircuitVoltage' | 'shortCircuitCurrent'> {
  const curve = monotoneCubic(
    points.map(({ voltage }) => voltage),
    points.map(({ current }) => current),
  );
  const last = points[points.length - 1]!;
  const slope = curve.slope[curve.slope.length - 1]!;
  const openCircuitVoltage = last.current > 0 ? last.voltage - last.current / Math.min(slope, -1e-6) : last.voltage;
  const best = bestVoltage(curve, openCircuitVoltage);
  return {
    shortCircuitCurrent: cubicAt(curve, 0),
    openCircuitVoltage,
    maximumPowerVoltage: best,
    maximumPowerCurrent: cubicAt(curve, best),
  };
}

/** Voltage of most power among the parts. The current falls, so that a block's power is at most its last voltage times its first current. */
function bestVoltage(curve: MonotoneCubic, openCircuitVoltage: number): number {
  const at = (part: number): number => (openCircuitVoltage * part) / PARTS;
  const power = (voltage: number): number => voltage * cubicAt(curve, voltage);
  let reached = 0;
  for (let part = BLOCK; part < PARTS; part += BLOCK) reached = Math.max(reached, power(at(part)));
  const wanted = reached * (1 - 1e-9); // rounding of a flat curve
  let best = 0;
  for (let from = 0; from < PARTS; from += BLOCK) {
    if (at(from + BLOCK) * cubicAt(curve, at(from)) < wanted) continue;
    for (let part = Math.max(from, 1); part < from + BLOCK; part++) if (power(at(part)) > power(best)) best = at(part);
  }
  return best;
}
