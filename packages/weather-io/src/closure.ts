// When the irradiance was taken: only at the right instant does GHI = DHI + DNI cos Z close.
import { sunPositionInto } from './sun/position.ts';
import type { WeatherColumns } from './year.ts';

/** Hours with less light say nothing about the sun. [W/m²] */
const ENOUGH_LIGHT = 20;

const HOUR_MS = 3_600_000;

/** What the closure is computed from. */
export interface ClosureInput {
  /** Irradiance, one value an hour. */
  readonly columns: Pick<WeatherColumns, 'ghi' | 'dni' | 'dhi'>;
  /** Instant from which offsets count, one an hour. [ms] */
  readonly starts: Float64Array;
  /** North positive. [°] */
  readonly latitude: number;
  /** East positive. [°] */
  readonly longitude: number;
}

/**
 * Root mean square of GHI − DHI − DNI max(cos Z, 0) over hours with more than 20 W/m², the sun standing where it stands
 * at start + offset.
 *
 * @param offset - From `starts` to the sun's instant. [h]
 * @param stride - Looks at each `stride`-th such hour only.
 * @returns rms [W/m²]; 0 where no hour has light.
 */
export function closureRms(input: ClosureInput, offset: number, stride = 1): number {
  const { ghi, dni, dhi } = input.columns;
  const position = new Float64Array(2);
  let sum = 0;
  let count = 0;
  let lit = 0;
  for (let row = 0; row < ghi.length; row++) {
    if (!(ghi[row]! > ENOUGH_LIGHT)) continue;
    if (lit++ % stride !== 0) continue;
    sunPositionInto(position, 0, input.starts[row]! + offset * HOUR_MS, input.latitude, input.longitude);
    const cosine = Math.max(0, Math.cos((position[0]! * Math.PI) / 180));
    const rest = ghi[row]! - dhi[row]! - dni[row]! * cosine;
    if (Number.isNaN(rest)) continue; // a gap
    sum += rest * rest;
    count++;
  }
  return count === 0 ? 0 : Math.sqrt(sum / count);
}

/** An instant and how well the file closes there. */
interface ClosureFit {
  /** From `starts` to the sun's instant. [h] */
  readonly offset: number;
  /** See {@link closureRms}. [W/m²] */
  readonly rms: number;
}

/** Candidate with the least rms; the first of equals. */
export function bestOffset(input: ClosureInput, offsets: readonly number[], stride = 1): ClosureFit {
  let best: ClosureFit | undefined;
  for (const offset of offsets) {
    const rms = closureRms(input, offset, stride);
    if (best === undefined || rms < best.rms) best = { offset, rms };
  }
  return best!;
}

/** How much better an instant must close before it speaks against another: half the rms and 5 W/m². Judgement. */
export const contradicts = (better: ClosureFit, assumed: ClosureFit): boolean =>
  better.rms < assumed.rms / 2 && better.rms < assumed.rms - 5;
