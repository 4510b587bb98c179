/** Liquid in the parts of a loop. */
import type { ArrayDesign, CoilDesign, LoopDesign } from '../../design/design.ts';
import { groupsOf } from '../collector/groups.ts';
import { vesselContent } from './vessel.ts';

/** Volumes of liquid in a loop. [m³] */
interface LoopVolumes {
  /** In all the collectors. */
  readonly collectors: number;
  /** In the pipe, there and back. */
  readonly pipe: number;
  /** In the coils, or in the plate exchanger. */
  readonly coil: number;
  /** All of these; the vessel's is not among them. */
  readonly whole: number;
}

/** Liquid of the loop in a small plate exchanger; judgement. [m³] */
const PLATE_CONTENT = 0.0005;

/** Volumes of liquid in a loop, from its dimensions. */
export function loopVolumes(
  loop: Pick<LoopDesign, 'exchanger' | 'pipeInnerDiameter' | 'pipeLength'>,
  tubes: readonly Pick<CoilDesign, 'innerDiameter' | 'length'>[],
  array: ArrayDesign,
): LoopVolumes {
  const collectors = groupsOf(array).reduce((sum, { collector, panels }) => sum + panels * collector.fluidContent, 0);
  const pipe = (Math.PI / 4) * loop.pipeInnerDiameter ** 2 * loop.pipeLength;
  const inCoils = tubes.reduce(
    (sum, { innerDiameter, length }) => sum + (Math.PI / 4) * innerDiameter ** 2 * length,
    0,
  );
  const coil = loop.exchanger === 'plate' ? PLATE_CONTENT : inCoils;
  return { collectors, pipe, coil, whole: collectors + pipe + coil };
}

/** Liquid in the vessel when the loop is filled cold. @param air - Pressure of the air. [Pa] @returns [m³] */
export const vesselHolds = (
  {
    vesselVolume,
    vesselPrecharge,
    fillPressure,
  }: Pick<LoopDesign, 'fillPressure' | 'vesselPrecharge' | 'vesselVolume'>,
  air: number,
): number => Math.max(0, vesselContent(vesselVolume, vesselPrecharge, fillPressure, air));
