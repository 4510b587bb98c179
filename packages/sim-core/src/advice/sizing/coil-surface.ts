import type { SystemDesign } from '../../design/design.ts';
import { arrayArea } from '../../physics/collector/groups.ts';

/** Surface of a smooth coil for each m² of collector, 0.15 to 0.3: common practice, no source. [-] */
const COMMON = 0.2;
/** Below it a coil is called small; the lower end of the same. [-] */
const LEAST = 0.15;

/** A coil's surface beside the array that it serves. */
export interface CoilSurface {
  /** Outside surface. [m²] */
  readonly surface: number;
  /** For each m² of collector. [-] */
  readonly surfacePerArea: number;
  /** Surface that is common for such an array, 0.2 m² for each m². [m²] */
  readonly common: number;
  /** What the coil lacks of it where it has less than 0.15 m² for each m²; else 0. [m²] */
  readonly short: number;
}

/**
 * A coil's surface beside the array that it serves. A small one works, but the collectors run hotter and bring less.
 *
 * @param design - From `defineSystem`.
 * @returns `null` for a plate exchanger.
 * @see Common practice, no source; `sizeCoil` for the length that an array wants.
 */
export function coilSurface({ array, coil, loop }: SystemDesign): CoilSurface | null {
  if (loop.exchanger === 'plate') return null;
  const area = arrayArea(array);
  const surface = Math.PI * coil.outerDiameter * coil.length;
  const surfacePerArea = surface / area;
  const common = COMMON * area;
  return { surface, surfacePerArea, common, short: surfacePerArea < LEAST ? common - surface : 0 };
}
