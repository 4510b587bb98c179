import { meanDecay } from '../relaxation.ts';
import { boilNode } from './boil.ts';
import { CIRCUIT, type Circuit, isIndoors, sourceAt } from './circuit-state.ts';

/**
 * One step with the fluid standing: each collector node and pipe section follows its own balance. Allocates nothing; exact but
 * for the quadratic loss, which goes along the line between start and end of the step.
 *
 * @param stepsPerHour - One of those that the circuit was compiled for.
 */
export function standStill(
  circuit: Circuit,
  stepsPerHour: number,
  absorbed: number,
  ambient: number,
  room: number,
): void {
  const { absorber, pipe, absorberCapacity, boilingPoint, nodeArea, a1, a2, pipeCapacity, flows } = circuit;
  const duration = 3600 / stepsPerHour;
  let lost = 0;
  for (let node = 0; node < absorber.length; node++) {
    const start = absorber[node]!;
    // First about the start; then along the line from there to where that ends.
    const tangent = nodeArea * (a1 + 2 * a2 * Math.abs(start - ambient));
    const towards = sourceAt(start, tangent, absorbed, ambient, nodeArea, a1, a2) / tangent;
    const foreseen = towards + (start - towards) * Math.exp((-tangent * duration) / absorberCapacity);
    const slope = nodeArea * (a1 + a2 * (Math.abs(start - ambient) + Math.abs(foreseen - ambient)));
    const limit = sourceAt(start, slope, absorbed, ambient, nodeArea, a1, a2) / slope;
    const exponent = (slope * duration) / absorberCapacity;
    const decay = Math.exp(-exponent);
    const end = limit + (start - limit) * decay;
    if (start > boilingPoint || end > boilingPoint) {
      lost += boilNode(circuit, node, limit, slope, duration) / duration;
      continue;
    }
    absorber[node] = end;
    // slope·(mean − limit) is what the node loses beyond the light it absorbs.
    lost += slope * (start - limit) * meanDecay(exponent, decay);
  }
  const light = absorbed * nodeArea * absorber.length;
  flows[CIRCUIT.absorbed] = light * duration;
  flows[CIRCUIT.collectorLoss] = (light + lost) * duration;
  flows[CIRCUIT.collectorHeat] = 0;

  const decays = circuit.pipeDecay.get(stepsPerHour)!;
  let pipeLoss = 0;
  for (let at = 0; at < pipe.length; at++) {
    const around = isIndoors(at, pipe.length) ? room : ambient;
    const over = pipe[at]! - around;
    const left = over * decays[at]!;
    pipe[at] = around + left;
    pipeLoss += (over - left) * pipeCapacity[at]!;
  }
  flows[CIRCUIT.pipeLoss] = pipeLoss;
  flows[CIRCUIT.coilHeat] = 0;
}
