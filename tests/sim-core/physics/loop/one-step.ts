import type { Circuit, StepConditions } from '../../../../packages/sim-core/src/physics/loop/circuit-state.ts';
import { circulate } from '../../../../packages/sim-core/src/physics/loop/coil-step.ts';
import type { Tank } from '../../../../packages/sim-core/src/physics/tank/tank.ts';

/** Light turned into heat [W/m²], outdoor air [°C], room [°C] and length of the step [s]. */
export const conditions = (absorbed: number, ambient: number, room: number, duration: number): StepConditions => ({
  absorbed,
  ambient,
  room,
  duration,
});

/**
 * One step with a flow of that capacity rate through a coil of that conductance, its heat put into the tank as it lies.
 *
 * @param stream - Capacity rate and conductance of the coil. [W/K]
 * @returns Fluid that leaves the array. [°C]
 */
export function goRound(circuit: Circuit, tank: Tank, stream: readonly [number, number], at: StepConditions): number {
  const [capacityRate, conductance] = stream;
  const outlet = circulate(circuit, tank, { flow: 0, capacityRate, conductance }, at);
  circuit.coilRise.forEach((rise, node) => {
    tank.temperature[node]! += rise;
  });
  return outlet;
}
