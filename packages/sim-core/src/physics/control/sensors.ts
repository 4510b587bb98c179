import type { DifferenceControlDesign } from '../../design/control.ts';
import { type Circuit, outletEnd } from '../loop/circuit-state.ts';
import type { Tank } from '../tank/tank.ts';

/**
 * What a controller by temperature difference reads: the collector's sensor over the tank's. Allocates nothing.
 *
 * A sensor in the absorber's outlet end reads its last node; with several groups each has one, and the hottest counts. One on the outlet pipe reads the pipe while the fluid moves; while it
 * stands, conduction and slow movement bring it a share of the absorber's excess (a judgement, stated in the design).
 *
 * @param running - Whether the fluid moves.
 * @returns Collector over tank. [K]
 */
export function sensedDifference(
  circuit: Circuit,
  tank: Tank,
  design: DifferenceControlDesign,
  running: boolean,
): number {
  const { pipe } = circuit;
  let collector = outletEnd(circuit);
  if (design.collectorSensor === 'pipe') {
    const contact = running ? 0 : design.pipeSensorContact;
    collector = pipe[0]! + contact * (collector - pipe[0]!);
  }
  return collector - temperatureAtHeight(tank.temperature, design.tankSensorHeight);
}

/** Water at a share of the tank's height, linear between the middles of the layers. [°C] */
function temperatureAtHeight(temperature: Float64Array, share: number): number {
  const last = temperature.length - 1;
  const place = Math.min(Math.max(share * (last + 1) - 0.5, 0), last);
  const below = Math.min(place | 0, last - 1);
  return temperature[below]! + (place - below) * (temperature[below + 1]! - temperature[below]!);
}
