/** What of the design the plate exchanger needs. */
import type { SystemDesign } from '../../design/design.ts';
import { DesignError, quote } from '../../input/errors.ts';
import { emptyExchange } from './circuit-state.ts';
import { chargedDesign } from './coils.ts';
import { type Plate, platePieces } from './plate.ts';

/** Tank nodes times pieces of an hour of flow from which a year would take many minutes; judgement. */
const MOST_WORK = 100_000;

/** Refuses a tank whose nodes are so small that the exchanger's stream would pass thousands of them an hour. */
function requireFewPieces({ loop, tank }: SystemDesign): void {
  const perHour = platePieces(loop.plate.secondaryFlow, 3600, tank.volume / tank.nodes);
  const most = Math.max(4, Math.floor(tank.nodes * Math.sqrt(MOST_WORK / (perHour * tank.nodes))));
  if (perHour * tank.nodes <= MOST_WORK) return;
  throw new DesignError([
    {
      path: 'tank.nodes',
      found: quote(tank.nodes),
      expected: `at most ${most} with this secondary flow and volume, or a year would take many minutes`,
      remedy: 'Leave it out for its default; 20 nodes hold the year to 0.1 %.',
    },
  ]);
}

/**
 * Prepares the plate exchanger.
 *
 * @throws {@link DesignError} for a tank with more nodes than its stream can be followed through in minutes.
 */
export function compilePlate(design: SystemDesign): Plate {
  const { loop, tank } = design;
  requireFewPieces(design);
  const entry = Math.min(Math.floor(loop.plate.returnHeight * tank.nodes), tank.nodes - 1);
  return {
    conductance: loop.plate.conductance,
    secondaryFlow: loop.plate.secondaryFlow,
    entry,
    column: new Float64Array(entry + 1),
    piece: { conditions: { absorbed: 0, ambient: 0, room: 0, duration: 0 }, exchange: emptyExchange(0) },
  };
}

/** The design as the circuit sees it: with a plate exchanger, one coil piece in a tank of one node. */
export const circuitDesign = (design: SystemDesign): SystemDesign =>
  design.loop.exchanger === 'coil'
    ? chargedDesign(design)
    : { ...design, tank: { ...design.tank, nodes: 1 }, coil: { ...design.coil, bottom: 0, top: 1 } };
