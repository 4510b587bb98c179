/** What of the design the plate exchanger needs. */
import type { SystemDesign } from '../../design/design.ts';
import type { Plate } from './plate.ts';

/** Prepares the plate exchanger. */
export function compilePlate(design: SystemDesign): Plate {
  const { loop, tank } = design;
  const entry = Math.min(Math.floor(loop.plate.returnHeight * tank.nodes), tank.nodes - 1);
  return {
    conductance: loop.plate.conductance,
    secondaryFlow: loop.plate.secondaryFlow,
    entry,
    column: new Float64Array(entry + 1),
    flows: new Float64Array(5),
    part: { absorbed: 0, ambient: 0, room: 0, duration: 0 },
  };
}

/** The design as the circuit sees it: with a plate exchanger, one coil piece in a tank of one node. */
export const circuitDesign = (design: SystemDesign): SystemDesign =>
  design.loop.exchanger === 'coil'
    ? design
    : { ...design, tank: { ...design.tank, nodes: 1 }, coil: { ...design.coil, bottom: 0, top: 1 } };
