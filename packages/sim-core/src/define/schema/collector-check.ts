/** What the coefficients of a collector must have in common for any panel to have them. */

import { quote } from '../../input/errors.ts';
import { fault } from '../../input/field.ts';
import { numberShape, shaped } from '../../input/shape.ts';
import * as z from '../../input/zod.ts';

/** Wind to which a1, a4 and eta0 refer (ISO 9806:2017, from memory). [m/s] */
const WIND_OF_TEST = 3;
/** Least loss coefficient that a run can step with. [W/(m²·K)] */
const LEAST_LOSS = 0.1;
/**
 * What a black surface loses by radiation alone, per kelvin below air of 25 °C, under a sky that sends 100 W/m² less than that air:
 * 100 W/m² over the 18.2 K down to where it sends as little. [W/(m²·K)]
 */
export const RADIATION_PER_KELVIN = 5.5;
/** Rounding of sums of coefficients. */
const ROUNDING = 1e-9;

/** a8: taken at 0, so that a report can be copied whole; anything else is refused, with the reason. */
export const neverCounted = shaped(
  z
    .custom<number>(() => true)
    .transform((value, context): number => {
      if (value === 0) return 0;
      fault(
        context,
        quote(value),
        '0: a run counts losses by a1 and a2 alone',
        'Give a1 and a2 of a fit to the same test without a8.',
      );
      return z.NEVER;
    }),
  numberShape(0, 0),
);

/** The coefficients that are looked at together. */
interface Coefficients {
  readonly eta0: number;
  readonly a1: number;
  readonly a3: number;
  readonly a4?: number | null | undefined;
  readonly a6: number;
  readonly a7: number;
  readonly glazed: boolean;
  readonly skyCoefficient?: number | undefined;
}

/** Refuses coefficients that contradict each other; those of the sky are judged once the others agree. */
export function checkCollector(collector: Coefficients, context: z.core.$RefinementCtx): void {
  const { a1, a3, a4, a6, a7, eta0, glazed, skyCoefficient } = collector;
  const restingLoss = a1 - WIND_OF_TEST * a3;
  let sound = true;
  const refuse = (field: string, found: string, expected: string, remedy: string): void => {
    sound = false;
    fault(context, found, expected, remedy, [field]);
  };
  if (restingLoss < LEAST_LOSS) {
    const expected = `at most (a1 − ${LEAST_LOSS})/${WIND_OF_TEST}: without wind a loss must be left`;
    refuse('a3', String(a3), expected, 'Take a1 and a3 from one test report.');
  }
  if (eta0 + WIND_OF_TEST * a6 > 1 + ROUNDING) {
    const expected = 'at most (1 − eta0)/3: without wind no panel takes up more light than falls on it';
    refuse('a6', String(a6), expected, 'Take eta0 and a6 from one test report.');
  }
  if (typeof a4 === 'number' && skyCoefficient !== undefined) {
    const found = `${skyCoefficient} beside a4 ${a4}`;
    refuse('skyCoefficient', found, 'one of the two', 'a4 acts day and night; leave skyCoefficient out.');
  }
  if (!glazed && a4 === null) {
    refuse('a4', 'null', 'a number for an unglazed collector', 'Leave it out for a black absorber.');
  }
  if (a7 > 0 && typeof a4 !== 'number') {
    refuse('a7', String(a7), '0 without a4', 'Give a4 of the same test report, which a7 changes with wind.');
  }
  const sky = (a4 ?? (glazed ? (skyCoefficient ?? 0) : eta0)) + WIND_OF_TEST * a7;
  if (sky > 1 + ROUNDING) {
    const expected = 'at most (1 − a4)/3: without wind no panel sends out more than a black one';
    refuse('a7', String(a7), expected, 'Take a4 and a7 from one test report.');
  }
  if (sound && restingLoss < RADIATION_PER_KELVIN * sky - ROUNDING) refuseCold(restingLoss, sky, collector, context);
}

/** A loss that cannot hold the radiation to the sky: the absorber would come out colder than the sky itself. */
function refuseCold(
  restingLoss: number,
  sky: number,
  { a4, glazed }: Coefficients,
  context: z.core.$RefinementCtx,
): void {
  const share = Number(sky.toPrecision(3));
  const least = Number((RADIATION_PER_KELVIN * sky).toPrecision(3));
  const expected = `at least ${least} W/(m²·K) without wind: a panel that sends ${share} of a black one’s radiation to the sky loses that much by it alone`;
  const remedy =
    typeof a4 === 'number'
      ? 'Take a1, a3 and a4 from one test report.'
      : glazed
        ? `Give a skyCoefficient of at most ${(restingLoss / RADIATION_PER_KELVIN).toFixed(2)}, or leave it out.`
        : 'Say glazed: true where the panel has a cover; else take a1, a3 and a4 from its test report.';
  fault(context, `${Number(restingLoss.toPrecision(3))} W/(m²·K)`, expected, remedy, ['a1']);
}
