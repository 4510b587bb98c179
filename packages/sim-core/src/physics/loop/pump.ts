import type { PumpDesign } from '../../design/design.ts';
import { requireNumber } from '../../input/errors.ts';
import { curveHead, curvePower, curveVoltage, mostVoltage } from './pump-curves.ts';

/** Standard acceleration of gravity. [m/s²] */
export const GRAVITY = 9.80665;

/**
 * Head of a pump, H = s² H0 − (H0/Q0²) Q². A pump by measured curves has theirs; its speed is the voltage over the highest that was measured.
 *
 * @param pump - H0 shut-off head, Q0 open flow at rated speed.
 * @param speed - Speed over rated speed, s. [-]
 * @param flow - Q. [m³/s]
 * @returns H, of the liquid pumped; negative when more flows than the pump can push. [m]
 */
export function pumpHead(pump: PumpDesign, speed: number, flow: number): number {
  if (pump.curves !== null) return curveHead(pump.curves, speed * mostVoltage(pump.curves), flow);
  const openShare = flow / pump.openFlow;
  return pump.shutOffHead * (speed * speed - openShare * openShare);
}

/**
 * Electrical power of a pump by the affinity law of constant efficiency, P = s³ [P0 + (P1 − P0) Q/(s Q0)].
 *
 * @param pump - P0 shut-off power, P1 open-flow power, Q0 open flow at rated speed.
 * @param speed - Speed over rated speed, s. [-]
 * @param flow - Q. [m³/s]
 * @returns P. [W]
 */
export function pumpPower(pump: PumpDesign, speed: number, flow: number): number {
  if (pump.curves !== null) return curvePower(pump.curves, speed * mostVoltage(pump.curves), flow);
  const openShare = flow / pump.openFlow;
  return speed * speed * (speed * pump.shutOffPower + (pump.openFlowPower - pump.shutOffPower) * openShare);
}

/** Speed ratio at which a pump gives a head [m] at a flow [m³/s]: the inverse of {@link pumpHead}. [-] */
export function pumpSpeed(pump: PumpDesign, head: number, flow: number): number {
  if (pump.curves !== null) return curveVoltage(pump.curves, head, flow) / mostVoltage(pump.curves);
  const openShare = flow / pump.openFlow;
  return Math.sqrt(head / pump.shutOffHead + openShare * openShare);
}

/** Where a pump is looked at. */
export interface PumpPoint {
  /** Speed over rated speed, 0 to 1. [-] */
  readonly speed: number;
  /** 0 to speed × open flow. [m³/s] */
  readonly flow: number;
  /** Of the liquid. [kg/m³] */
  readonly density: number;
}

/** A pump at one speed and flow. */
export interface PumpState {
  /** Of the liquid pumped. [m] */
  readonly head: number;
  /** Taken from the booster. [W] */
  readonly electricalPower: number;
  /** ρ g Q H. [W] */
  readonly hydraulicPower: number;
}

/**
 * Head and powers of a pump at one speed and flow, by the affinity laws Q ~ s, H ~ s², P ~ s³.
 *
 * Left out: loss of efficiency at low speed and in cold, thick glycol, and the liquid's density in the electrical power.
 *
 * @param pump - Curve at rated speed.
 * @param point - Speed, flow and density.
 * @throws {@link DesignError} outside these ranges.
 * @see Affinity laws, any pump handbook.
 */
export function pumpState(pump: PumpDesign, point: PumpPoint): PumpState {
  const { speed, flow, density } = point;
  requireNumber('speed', speed, 0, 1, '');
  requireNumber('flow', flow, 0, speed * pump.openFlow, 'm³/s (open flow at this speed)');
  requireNumber('density', density, 500, 2000, 'kg/m³');
  const head = pumpHead(pump, speed, flow);
  return {
    head,
    electricalPower: pumpPower(pump, speed, flow),
    hydraulicPower: density * GRAVITY * flow * head,
  };
}
