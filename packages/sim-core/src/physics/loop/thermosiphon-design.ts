/** What of the design a loop without a check valve needs. */
import type { SystemDesign } from '../../design/design.ts';
import { mirrorOf } from './circuit-design.ts';
import { type Circuit, PIPE_SECTIONS } from './circuit-state.ts';
import type { CompiledHydraulics } from './hydraulics.ts';
import type { LoopRises } from './thermosiphon.ts';

/** A loop whose fluid may run without the pump, either way. */
export interface Thermosiphon {
  readonly rises: LoopRises;
  /** Friction; renewed with the fluid. */
  hydraulics: CompiledHydraulics;
  /** The circuit seen against the flow: its state is copied in and out for a step backwards. */
  readonly mirror: Circuit;
  /** Flow of the last step, from which the next is sought; negative backwards. [m³/s] */
  flow: number;
}

/** Prepares a loop to run without the pump. @param circuit - Forwards. */
export const compileThermosiphon = (
  design: SystemDesign,
  circuit: Circuit,
  hydraulics: CompiledHydraulics,
): Thermosiphon => ({
  rises: loopRises(design, circuit.absorber.length, circuit.pipe.length),
  hydraulics,
  mirror: mirrorOf(circuit),
  flow: 0,
});

/** Length of a panel over its width; judgement. [-] */
const PANEL_SLENDERNESS = 2;

/**
 * Rises of the parts. The tank stands at the gauge's height. A panel twice as long as wide stands upright in the array's plane,
 * its outlet at `staticHeight`; pipes rise evenly along their length.
 */
export function loopRises(design: SystemDesign, collectorNodes: number, pipeNodes: number): LoopRises {
  const { array, coil, loop, tank } = design;
  const panel = Math.sqrt(PANEL_SLENDERNESS * array.collector.area) * Math.sin((array.tilt * Math.PI) / 180);
  const bottom = coil.bottom * tank.height;
  const top = coil.top * tank.height;
  const hot = top - loop.staticHeight;
  const cold = loop.staticHeight - panel - bottom;
  const outdoors = loop.outdoorShare;
  const sections = [hot * outdoors, hot * (1 - outdoors), cold * (1 - outdoors), cold * outdoors];
  const perSection = pipeNodes / PIPE_SECTIONS;
  return {
    collector: panel / collectorNodes,
    pipe: Float64Array.from({ length: pipeNodes }, (_, at) => sections[Math.trunc(at / perSection)]! / perSection),
    coil: bottom - top,
  };
}
