import type { Heater } from '../physics/backup/heater.ts';
import { absorberHeat, pipeHeat } from '../physics/loop/circuit-design.ts';
import type { Circuit } from '../physics/loop/circuit-state.ts';
import { type Tank, tankHeat, WATER_HEAT_CAPACITY } from '../physics/tank/tank.ts';
import { type BalanceEntry, type BalanceKeeper, openBalance } from './balance.ts';
import type { BalancePart } from './part-balance.ts';

/** The books of a run, and what they need of an hour besides the columns that a result shows. */
export interface Books {
  /** Of every part and of the whole. */
  readonly balance: Readonly<Record<BalancePart, BalanceKeeper>>;
  /** Scratch: the entry of a part, and the whole's, to which the parts add. */
  readonly entry: BalanceEntry;
  readonly whole: BalanceEntry;
  /** Light turned into heat in the absorber. Shape [8760]. [J] */
  readonly absorbed: Float64Array;
  /** Heat lost by the array to air and sky. Shape [8760]. [J] */
  readonly collectorLoss: Float64Array;
  /** Heat at the taps of the house without the solar system, above mains. Shape [8760]. [J] */
  readonly baselineTapHeat: Float64Array;
  /** Standby loss of the heater of that house. Shape [8760]. [J] */
  readonly baselineLoss: Float64Array;
}

/** Opens the books with what the parts hold before the first hour. */
export function openBooks(
  circuit: Circuit,
  tank: Tank,
  second: Tank | null,
  { baseline, heater }: { readonly baseline: Heater; readonly heater: Heater },
): Books {
  const ofArray = { heat: absorberHeat(circuit), capacity: circuit.nodeCapacity * circuit.absorber.length };
  const ofPipes = {
    heat: pipeHeat(circuit),
    capacity: circuit.pipeCapacity.reduce((sum, capacity) => sum + capacity, circuit.coil.capacity),
  };
  const tanks = second === null ? [tank] : [tank, second];
  const ofTank = {
    heat: tanks.reduce((sum, one) => sum + tankHeat(one), 0),
    capacity: tanks.reduce((sum, { nodeCapacity, temperature }) => sum + nodeCapacity * temperature.length, 0),
  };
  const ofHeater = heaterBooks(heater);
  const ofBaseline = heaterBooks(baseline);
  const all = [ofArray, ofPipes, ofTank, ofHeater];
  const total = (key: 'heat' | 'capacity') => all.reduce((sum, part) => sum + part[key], 0);
  const column = () => new Float64Array(8760);
  return {
    balance: {
      collector: openBalance(ofArray.heat, ofArray.capacity),
      pipes: openBalance(ofPipes.heat, ofPipes.capacity),
      tank: openBalance(ofTank.heat, ofTank.capacity),
      heater: openBalance(ofHeater.heat, ofHeater.capacity),
      baseline: openBalance(ofBaseline.heat, ofBaseline.capacity),
      whole: openBalance(total('heat'), total('capacity')),
    },
    entry: { income: 0, spent: 0, through: 0, stored: 0 },
    whole: { income: 0, spent: 0, through: 0, stored: 0 },
    absorbed: column(),
    collectorLoss: column(),
    baselineTapHeat: column(),
    baselineLoss: column(),
  };
}

/** A heater without water of its own is measured against a litre. */
const heaterBooks = (heater: Heater) => ({
  heat: heater.capacity * heater.temperature,
  capacity: Math.max(heater.capacity, 1e-3 * WATER_HEAT_CAPACITY),
});
