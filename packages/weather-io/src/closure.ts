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
export const closureRms = (input: ClosureInput, offset: number, stride = 1): number =>
  rmsOver(input, litRows(input, stride), offset, Number.POSITIVE_INFINITY);

/** Each `stride`-th hour with light; those with a gap are left out. */
function litRows({ columns: { ghi, dni, dhi } }: ClosureInput, stride: number): Int32Array {
  const rows = new Int32Array(Math.ceil(ghi.length / stride));
  let lit = 0;
  let count = 0;
  for (let row = 0; row < ghi.length; row++) {
    if (!(ghi[row]! > ENOUGH_LIGHT) || lit++ % stride !== 0) continue;
    if (!Number.isNaN(dhi[row]! + dni[row]!)) rows[count++] = row;
  }
  return rows.subarray(0, count);
}

/** Rounding of a sum, so that equals are never taken for worse. */
const ROUNDING = 1 + 1e-9;

/** Infinite as soon as it is sure to be more than `atMost`: most of a wrong instant's sun need not be computed. */
function rmsOver(input: ClosureInput, rows: Int32Array, offset: number, atMost: number): number {
  const { ghi, dni, dhi } = input.columns;
  const position = new Float64Array(2);
  const most = atMost * atMost * rows.length * ROUNDING;
  let sum = 0;
  for (const row of rows) {
    let rest = ghi[row]! - dhi[row]!;
    // Without beam it is all the same where the sun stands.
    if (dni[row] !== 0) {
      sunPositionInto(position, 0, input.starts[row]! + offset * HOUR_MS, input.latitude, input.longitude);
      rest -= dni[row]! * Math.max(0, Math.cos((position[0]! * Math.PI) / 180));
    }
    sum += rest * rest;
    if (sum > most) return Number.POSITIVE_INFINITY;
  }
  return rows.length === 0 ? 0 : Math.sqrt(sum / rows.length);
}

/** An instant and how well the file closes there. */
interface ClosureFit {
  /** From `starts` to the sun's instant. [h] */
  readonly offset: number;
  /** See {@link closureRms}. [W/m²] */
  readonly rms: number;
}

/** Candidate with the least rms; the first of equals. @param atMost - What is more is of no interest, and given as infinite. [W/m²] */
export function bestOffset(
  input: ClosureInput,
  offsets: readonly number[],
  stride = 1,
  atMost = Number.POSITIVE_INFINITY,
): ClosureFit {
  const rows = litRows(input, stride);
  let best: ClosureFit | undefined;
  for (const offset of offsets) {
    const rms = rmsOver(input, rows, offset, Math.min(atMost, best?.rms ?? atMost));
    if (best === undefined || rms < best.rms) best = { offset, rms };
  }
  return best!;
}

/** How much better an instant must close before it speaks against another: half the rms and 5 W/m². Judgement. */
export const contradicts = (better: ClosureFit, assumed: ClosureFit): boolean =>
  better.rms < assumed.rms / 2 && better.rms < assumed.rms - 5;
