/** What of the design the pressure needs. */

import type { ArrayDesign, SystemDesign } from '../../design/design.ts';
import { groupsAlongFlow } from '../collector/groups.ts';
import type { CompiledFluid } from '../fluid/compile.ts';
import { type Circuit, isIndoors, PIPE_SECTIONS } from './circuit-state.ts';
import { coilsOf } from './coils.ts';
import { loopVolumes } from './loop-volumes.ts';
import { compilePressure } from './pressure.ts';
import type { LoopPressure } from './pressure-state.ts';
import { steamLine } from './steam.ts';

/** Share of its opening pressure at which a relief valve has shut again; EN ISO 4126 allows 0.8 (from memory), judgement. [-] */
const RESEAT_SHARE = 0.9;

/** The design's loop, filled and closed. @param airPressure - At the site. [Pa] */
export function compileLoopPressure(
  design: Pick<SystemDesign, 'array' | 'coil' | 'loop' | 'tank'>,
  fluid: CompiledFluid,
  circuit: Circuit,
  airPressure: number,
): LoopPressure {
  const { array, coil, loop, tank } = design;
  const volumes = loopVolumes(loop, coilsOf(coil, tank.second), array);
  const perSection = circuit.pipe.length / PIPE_SECTIONS;
  const outdoors = (volumes.pipe * loop.outdoorShare) / 2 / perSection;
  const indoors = volumes.pipe / 2 / perSection - outdoors;
  return compilePressure({
    fluid,
    collectorVolume: collectorVolumes(array, circuit, volumes.collectors),
    pipeVolume: circuit.pipe.map((_, at) => (isIndoors(at, circuit.pipe.length) ? indoors : outdoors)),
    coilVolume: volumes.coil,
    vesselVolume: loop.vesselVolume,
    airPressure,
    steamLine: steamLine(loop, array),
    precharge: loop.vesselPrecharge,
    vesselTemperature: tank.roomTemperature,
    fillPressure: loop.fillPressure,
    fillTemperature: loop.fillTemperature,
    reliefPressure: loop.reliefPressure,
    reseatShare: RESEAT_SHARE,
    staticPressure: loop.fillPressure - loop.pressure,
  });
}

/** Liquid in each collector node. [m³] */
function collectorVolumes(array: ArrayDesign, { absorber, branches }: Circuit, whole: number): Float64Array {
  const volume = new Float64Array(absorber.length).fill(whole / absorber.length);
  if (branches === null) return volume;
  groupsAlongFlow(array).forEach(({ collector, panels }, at) => {
    const { end, first } = branches[at]!;
    volume.fill((panels * collector.fluidContent) / (end - first), first, end);
  });
  return volume;
}
