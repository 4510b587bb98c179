import type { HeaterDesign } from '../../design/design.ts';
import { meanOfRise } from '../relaxation.ts';
import { WATER_HEAT_CAPACITY } from '../tank/tank.ts';
import { type CompiledCop, compileCop, heldCopAt } from './heat-pump.ts';

/** A heater ready to be stepped, and what its last step did. */
export interface Heater {
  /** Stored: its water, taken as mixed. Instantaneous: the outlet that it aims at. [°C] */
  temperature: number;
  /** Mean outlet temperature of the last step. [°C] */
  outlet: number;
  /** Stored: how much the last step, made or tried, warms its water. [K] */
  rise: number;
  /** Heat from the burner in the last step. [J] */
  burnerHeat: number;
  /** Standby loss of the last step. [J] */
  loss: number;
  /** Whether it gave all that it could in the last step: electric, beside spare PV. */
  behind: boolean;
  /** How long taps ran since then. [s] */
  drawnFor: number;
  /** Whether an instantaneous heater fires in this step. */
  firing: boolean;
  /** Whether it cannot heat: it needs the mains, and they are out, or {@link off} says so. */
  out: boolean;
  /** Loss of its recirculation ring in this hour, per kelvin over {@link ringRoom}; 0: none. [W/K] */
  ring: number;
  /** Air around the ring. [°C] */
  ringRoom: number;
  /** Loss of the ring in the last step. [J] */
  ringLoss: number;
  /** Most heat that it may put into the water now: its own, what spare PV gives where the mains may not, or none. [W] */
  most: number;
  /** Heat pump: electricity of the last step. [J] */
  electricity: number;
  /** Heat pump: its air in this hour. [°C] */
  air: number;
  /** Heat pump: its curve; `null` with other kinds. */
  readonly cop: CompiledCop | null;
  /** Why it may not heat in this hour, bits of `HEATER_OFF`; 0: it may. */
  off: number;
  /** Whether it heats by electricity, or has electrics that light its gas. */
  readonly needsMains: boolean;
  /** Whether it holds water of its own. */
  readonly stored: boolean;
  /** Whether it heats the water only as it flows. Neither: an element in the tank. */
  readonly instantaneous: boolean;
  /** Heat capacity of its water; 0 where it has none. [J/K] */
  readonly capacity: number;
  readonly design: HeaterDesign;
}

/** Whether it heats the solar tank itself and no water behind it. @internal */
export const heatsInTank = ({ kind }: Pick<HeaterDesign, 'kind'>): boolean =>
  kind === 'element' || kind === 'boiler-coil';

/** Prepares a heater at its set temperature. @param ringRoom - Air around the ring that it keeps warm. [°C] */
export const compileHeater = (design: HeaterDesign, ringRoom = 0): Heater => ({
  temperature: design.setTemperature,
  outlet: design.setTemperature,
  rise: 0,
  burnerHeat: 0,
  loss: 0,
  behind: false,
  drawnFor: 0,
  firing: false,
  out: false,
  off: 0,
  ring: 0,
  ringRoom,
  ringLoss: 0,
  most: design.burnerPower,
  electricity: 0,
  air: design.roomTemperature,
  cop: design.cop === null ? null : compileCop(design.cop),
  needsMains: design.carrier === 'electricity' || design.standbyPower > 0,
  stored: design.volume > 0,
  instantaneous: design.kind === 'instantaneous-gas' || design.kind === 'instantaneous-electric',
  capacity: design.volume * WATER_HEAT_CAPACITY,
  design,
});

/**
 * One step of a stored heater with water flowing through it. Allocates nothing.
 *
 *     C dT/dt = W (T_in − T) − UA (T − T_room) − UA_ring (T − T_a) + Q
 *
 * Linear with constant coefficients over the step, so solved exactly; Q is the constant burner power that ends the step at
 * the set temperature, between nothing and {@link Heater.most}. A heat pump's electricity is Q over its COP at the mean of the step. The step's mean temperature is the outlet, so heat in, out, lost
 * and stored add up to rounding.
 *
 * @param heater - Changed in place: temperature, outlet, burnerHeat, loss, ringLoss, electricity.
 * @param volume - Water that flows through. [m³]
 * @param inlet - Its temperature. [°C]
 * @param duration - Length of the step. [s]
 */
export function stepHeater(heater: Heater, volume: number, inlet: number, duration: number): void {
  const { design } = heater;
  heater.burnerHeat = tryStep(heater, volume, inlet, duration) * duration;
  heater.temperature += heater.rise;
  const mean = heater.outlet;
  heater.loss = design.lossCoefficient * (mean - design.roomTemperature) * duration;
  heater.ringLoss = heater.ring * (mean - heater.ringRoom) * duration;
  if (heater.cop !== null) heater.electricity = heater.burnerHeat / heldCopAt(heater.cop, heater.air, mean);
}

/**
 * Solves the step of {@link stepHeater} without making it. Allocates nothing.
 *
 * @param heater - Its outlet and rise are written.
 * @returns Power of the burner. [W]
 */
export function tryStep(heater: Heater, volume: number, inlet: number, duration: number): number {
  const { capacity, design } = heater;
  const start = heater.temperature;
  const flow = (volume * WATER_HEAT_CAPACITY) / duration;
  const total = flow + design.lossCoefficient + heater.ring;
  const source = flow * inlet + design.lossCoefficient * design.roomTemperature + heater.ring * heater.ringRoom;
  const exponent = (total * duration) / capacity;
  const late = meanOfRise(exponent);
  const risen = 1 - exponent * late;

  // K that one watt, held for the step, adds to its end.
  const perWatt = (duration / capacity) * risen;
  const free = start + (source - total * start) * perWatt;
  const power = Math.min(Math.max((design.setTemperature - free) / perWatt, 0), heater.most);
  const rate = (source + power - total * start) * (duration / capacity);
  heater.outlet = start + rate * late;
  heater.rise = rate * risen;
  return power;
}
