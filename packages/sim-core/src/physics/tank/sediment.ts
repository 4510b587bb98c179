import type { SystemDesign } from '../../design/design.ts';
import { coilShares } from '../loop/coil-shares.ts';

/** Conductivity of settled lime sludge, between water's and compact scale's; judgement. [W/(m·K)] */
const SLUDGE_CONDUCTIVITY = 1;
/** Coil in clear water, on its outside, against which the sludge's resistance counts; judgement. [W/(m²·K)] */
const CLEAR_COIL = 400;

/**
 * What a buried tube still passes, as a share of what it passes in clear water.
 *
 *     R' = arcosh(2 z/d)/(2π k),   share = 1/(1 + U π d R')
 *
 * R' is the resistance per metre of a cylinder at depth z under a plane (conduction shape factor). [-]
 *
 * @param diameter - d, outside of the tube. [m]
 * @param depth - z, its axis under the sediment's surface; at least d/2 counts. [m]
 * @see any heat transfer textbook: shape factor of a horizontal cylinder in a semi-infinite medium.
 */
export function buriedShare(diameter: number, depth: number): number {
  const resistance = Math.acosh(Math.max((2 * depth) / diameter, 1)) / (2 * Math.PI * SLUDGE_CONDUCTIVITY);
  return 1 / (1 + CLEAR_COIL * Math.PI * diameter * resistance);
}

/**
 * Share of the coil's conductance in each node that it passes. Sediment makes the water column start higher; the buried part of
 * the coil works on the bottom node through the sludge, so that the shares add up to less than 1.
 *
 * @returns The lowest node touched, and the shares from there upwards.
 */
export function coilInWater(design: SystemDesign): { bottom: number; shares: Float64Array } {
  const { coil, tank } = design;
  if (tank.sedimentDepth === 0) return coilShares(coil.bottom, coil.top, tank.nodes);
  const floor = tank.sedimentDepth / tank.height;
  const overFloor = (share: number) => Math.max(share - floor, 0) / (1 - floor);
  const buried = Math.min(Math.max(floor - coil.bottom, 0) / (coil.top - coil.bottom), 1);
  const through = buried * buriedShare(coil.outerDiameter, (buried * (coil.top - coil.bottom) * tank.height) / 2);
  if (buried === 1) return { bottom: 0, shares: Float64Array.of(through) };
  const clear = coilShares(overFloor(coil.bottom), overFloor(coil.top), tank.nodes);
  const shares = clear.shares.map((share) => share * (1 - buried));
  if (buried > 0) shares[0]! += through;
  return { bottom: clear.bottom, shares };
}
