import {
  type Circuit,
  type CoilWater,
  emptyExchange,
  type LoopExchange,
  type LoopStep,
  type StepConditions,
} from '../../../../packages/sim-core/src/physics/loop/circuit-state.ts';
import { circulate } from '../../../../packages/sim-core/src/physics/loop/coil-step.ts';
import { standStill } from '../../../../packages/sim-core/src/physics/loop/standing.ts';
import type { Tank } from '../../../../packages/sim-core/src/physics/tank/tank.ts';

/** Light turned into heat [W/m²], outdoor air [°C], room [°C] and length of the step [s]. */
export const conditions = (absorbed: number, ambient: number, room: number, duration: number): StepConditions => ({
  absorbed,
  ambient,
  room,
  duration,
});

/** A step with a flow [m³/s] of some capacity rate, and some conductance of the coil where it has no films [W/K]. */
export const loopStep = (
  water: CoilWater,
  at: StepConditions,
  [flow, capacityRate, conductance]: readonly [number, number, number],
): LoopStep => ({
  water,
  conditions: at,
  stream: { flow, power: 0, capacityRate, conductance },
  exchange: emptyExchange(water.temperature.length),
  further: null,
});

/**
 * One step with a flow of that capacity rate through a coil of that conductance, its heat put into the tank as it lies.
 *
 * @param stream - Capacity rate and conductance of the coil. [W/K]
 * @returns What it exchanged.
 */
export function goRound(
  circuit: Circuit,
  tank: Tank,
  [capacityRate, conductance]: readonly [number, number],
  at: StepConditions,
): LoopExchange {
  circuit.coil.films = null;
  const step = loopStep(tank, at, [0, capacityRate, conductance]);
  circulate(circuit, step);
  step.exchange.coilRise.forEach((rise, node) => {
    tank.temperature[node]! += rise;
  });
  return step.exchange;
}

/** One step with the fluid standing. @returns What it exchanged. */
export function stand(circuit: Circuit, stepsPerHour: number, at: StepConditions): LoopExchange {
  const exchange = emptyExchange(0);
  standStill(circuit, stepsPerHour, at, exchange);
  return exchange;
}
