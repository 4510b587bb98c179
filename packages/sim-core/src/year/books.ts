import type { Heater } from '../physics/backup/heater.ts';
import { absorberHeat, type Circuit, pipeHeat } from '../physics/loop/circuit-design.ts';
import { type Tank, tankHeat, WATER_HEAT_CAPACITY } from '../physics/tank/tank.ts';
import { type BalanceKeeper, openBalance } from './balance.ts';
import type { BalancePart } from './result.ts';

/** The books of every part and of the whole. */
export type Books = Readonly<Record<BalancePart, BalanceKeeper>>;

/** Opens the books with what the parts hold before the first hour. */
export function openBooks(circuit: Circuit, tank: Tank, heater: Heater, baseline: Heater): Books {
  const ofArray = { heat: absorberHeat(circuit), capacity: circuit.absorberCapacity * circuit.absorber.length };
  const ofPipes = {
    heat: pipeHeat(circuit),
    capacity: circuit.pipeCapacity.reduce((sum, capacity) => sum + capacity, circuit.coilCapacity),
  };
  const ofTank = { heat: tankHeat(tank), capacity: tank.nodeCapacity * tank.temperature.length };
  const ofHeater = heaterBooks(heater);
  const ofBaseline = heaterBooks(baseline);
  const all = [ofArray, ofPipes, ofTank, ofHeater];
  const total = (key: 'heat' | 'capacity') => all.reduce((sum, part) => sum + part[key], 0);
  return {
    collector: openBalance(ofArray.heat, ofArray.capacity),
    pipes: openBalance(ofPipes.heat, ofPipes.capacity),
    tank: openBalance(ofTank.heat, ofTank.capacity),
    heater: openBalance(ofHeater.heat, ofHeater.capacity),
    baseline: openBalance(ofBaseline.heat, ofBaseline.capacity),
    whole: openBalance(total('heat'), total('capacity')),
  };
}

/** A heater without water of its own is measured against a litre. */
const heaterBooks = (heater: Heater) => ({
  heat: heater.capacity * heater.temperature,
  capacity: Math.max(heater.capacity, 1e-3 * WATER_HEAT_CAPACITY),
});
