/** What of the design the pressure needs. */

import type { ArrayDesign, CoilDesign, LoopDesign, SystemDesign } from '../../design/design.ts';
import type { CompiledFluid } from '../fluid/compile.ts';
import { type Circuit, isIndoors, PIPE_SECTIONS } from './circuit-state.ts';
import { compilePressure, type LoopPressure } from './pressure.ts';

/** Volumes of liquid in a loop. [m³] */
export interface LoopVolumes {
  /** In all the collectors. */
  readonly collectors: number;
  /** In the pipe, there and back. */
  readonly pipe: number;
  /** In the coil, or in the plate exchanger. */
  readonly coil: number;
  /** All of these; the vessel's is not among them. */
  readonly whole: number;
  /** What steam may push out: collectors and outdoor pipe (common practice). */
  readonly steam: number;
}

/** Liquid of the loop in a small plate exchanger; judgement. [m³] */
const PLATE_CONTENT = 0.0005;

/** Volumes of liquid in a loop, from its dimensions. */
export function loopVolumes(
  loop: Pick<LoopDesign, 'exchanger' | 'outdoorShare' | 'pipeInnerDiameter' | 'pipeLength'>,
  tube: Pick<CoilDesign, 'innerDiameter' | 'length'>,
  array: ArrayDesign,
): LoopVolumes {
  const collectors = array.panels * array.collector.fluidContent;
  const pipe = (Math.PI / 4) * loop.pipeInnerDiameter ** 2 * loop.pipeLength;
  const coil = loop.exchanger === 'plate' ? PLATE_CONTENT : (Math.PI / 4) * tube.innerDiameter ** 2 * tube.length;
  return { collectors, pipe, coil, whole: collectors + pipe + coil, steam: collectors + pipe * loop.outdoorShare };
}

/** Share of its opening pressure at which a relief valve has shut again; EN ISO 4126 allows 0.8 (from memory), judgement. [-] */
const RESEAT_SHARE = 0.9;

/** The design's loop, filled and closed. */
export function compileLoopPressure(
  design: Pick<SystemDesign, 'array' | 'coil' | 'loop' | 'tank'>,
  fluid: CompiledFluid,
  circuit: Circuit,
): LoopPressure {
  const { array, coil, loop, tank } = design;
  const volumes = loopVolumes(loop, coil, array);
  const perSection = circuit.pipe.length / PIPE_SECTIONS;
  const outdoors = (volumes.pipe * loop.outdoorShare) / 2 / perSection;
  const indoors = volumes.pipe / 2 / perSection - outdoors;
  return compilePressure({
    fluid,
    nodeVolume: volumes.collectors / circuit.absorber.length,
    nodes: circuit.absorber.length,
    pipeVolume: circuit.pipe.map((_, at) => (isIndoors(at, circuit.pipe.length) ? indoors : outdoors)),
    coilVolume: volumes.coil,
    vesselVolume: loop.vesselVolume,
    precharge: loop.vesselPrecharge,
    vesselTemperature: tank.roomTemperature,
    fillPressure: loop.fillPressure,
    fillTemperature: loop.fillTemperature,
    reliefPressure: loop.reliefPressure,
    reseatShare: RESEAT_SHARE,
    staticPressure: loop.fillPressure - loop.pressure,
  });
}
