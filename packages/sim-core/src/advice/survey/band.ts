/** A number with the limits that it stays within in about nine cases of ten. */
export interface Band {
  /** Lower limit. */
  readonly low: number;
  /** Best guess. */
  readonly likely: number;
  /** Upper limit. */
  readonly high: number;
}

/** What one uncertain input does to an output, at its low and at its high end, against the likely case. */
export interface Swing {
  /** Change of the output with the input at its lower limit. */
  readonly atLow: number;
  /** The same at its upper limit. */
  readonly atHigh: number;
}

/** The further of two changes downwards, 0 or less. */
const down = ({ atLow, atHigh }: Swing): number => Math.min(atLow, atHigh, 0);
/** The further of two changes upwards, 0 or more. */
const up = ({ atLow, atHigh }: Swing): number => Math.max(atLow, atHigh, 0);

/** Half of what an input does to an output from its worse to its better end: the size that inputs are ranked by. @internal */
export const swingSize = (swing: Swing): number => (up(swing) - down(swing)) / 2;

/**
 * Band of an output from the swings of independent inputs: each side the root of the sum of squares (first order, as in the Guide
 * to the Expression of Uncertainty in Measurement, with unequal sides kept apart).
 *
 * @internal
 */
export function combine(likely: number, swings: readonly Swing[]): Band {
  return {
    low: likely - Math.hypot(...swings.map(down)),
    likely,
    high: likely + Math.hypot(...swings.map(up)),
  };
}
