/**
 * DC motor with permanent magnets on the pump's shaft.
 *
 *     V = E + R I,   E = E_r s,   k I = T_friction + T_pump   →   I = I_f + s² (I_r(q) − I_f)
 *
 * s speed over rated speed; E back-EMF; R winding; I_f current of the constant friction torque; q = Q/(s Q0) share of open flow.
 * The pump's torque follows its affinity law s² at the same q. I_r(q), the current at rated speed, is that at which the motor
 * takes the power of the pump's curve: R I_r² + E_r I_r = P0 + (P1 − P0) q.
 *
 * Rated point: open flow at rated voltage V_r, so rated current I_1 = P1/V_r and E_r = V_r − R I_1. Iron and commutator losses are
 * in the friction; k does not change with temperature or current (judgements).
 */
import type { PumpDesign } from '../../design/design.ts';
import { pumpPower } from './pump.ts';
import { mostVoltage } from './pump-curves.ts';

/** A motor worked into what its kernel needs. */
export interface CompiledMotor {
  /** As designed. */
  readonly pump: PumpDesign;
  /** R. [Ω] */
  readonly resistance: number;
  /** E_r, back-EMF at rated speed. [V] */
  readonly ratedBackEmf: number;
  /** I_f. [A] */
  readonly frictionCurrent: number;
  /** Voltage besides that of the winding that a start takes: 0, or a measured pump's start voltage. [V] */
  readonly startBackEmf: number;
}

/** Works a pump's motor into its kernel's constants. Checks nothing. */
export function compileMotor(pump: PumpDesign): CompiledMotor {
  const { ratedVoltage, windingResistance, frictionCurrent } = pump.motor;
  if (pump.curves !== null) {
    // A measured pump is seen from its terminals: the winding is in its curves.
    const ratedBackEmf = mostVoltage(pump.curves);
    return { pump, resistance: 0, ratedBackEmf, frictionCurrent, startBackEmf: pump.startVoltage };
  }
  return {
    pump,
    resistance: windingResistance,
    ratedBackEmf: ratedVoltage - (windingResistance * pump.openFlowPower) / ratedVoltage,
    frictionCurrent,
    startBackEmf: 0,
  };
}

/** I_r(q): current at rated speed and a share q of open flow. [A] */
export function ratedSpeedCurrent(motor: CompiledMotor, openShare: number): number {
  const { pump, ratedBackEmf, resistance } = motor;
  const power = pump.shutOffPower + (pump.openFlowPower - pump.shutOffPower) * openShare;
  return (2 * power) / (ratedBackEmf + Math.sqrt(ratedBackEmf * ratedBackEmf + 4 * resistance * power));
}

/** Current that turns the pump at a speed ratio s and flow [m³/s]; I_f at standstill. [A] */
export function motorCurrent(motor: CompiledMotor, speed: number, flow: number): number {
  if (!(speed > 0)) return motor.frictionCurrent;
  if (motor.pump.curves !== null) return pumpPower(motor.pump, speed, flow) / (motor.ratedBackEmf * speed);
  const openShare = flow / (speed * motor.pump.openFlow);
  return motor.frictionCurrent + speed * speed * (ratedSpeedCurrent(motor, openShare) - motor.frictionCurrent);
}
