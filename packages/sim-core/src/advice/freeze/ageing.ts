import { checkInput } from '../../input/check.ts';
import { requireNumber } from '../../input/errors.ts';
import { quantity, quantityOr } from '../../input/field.ts';
import type { Quantity } from '../../input/quantity.ts';
import { type Saying, say } from '../../input/saying.ts';
import { line, type WorkingStep } from '../../input/working.ts';
import * as z from '../../input/zod.ts';
import { boilingPoint } from '../../physics/fluid/boiling.ts';
import type { RunResult } from '../../year/result.ts';
import type { AdviceCode } from '../advice-codes.ts';

const optionsSchema = z.strictObject({
  limit: quantity('temperature', 80, 300).optional(),
  doubling: quantityOr(
    'temperatureDifference',
    5,
    30,
    10,
    'reactions double their pace every 10 K or so: rule of thumb',
  ),
  hoursToTest: quantityOr('duration', 3600, 3.6e7, 50 * 3600, 'judgement: fifty hours at the limit are worth a look'),
});

/** What {@link glycolAgeing} may be told; each has a default. */
export interface GlycolAgeingOptions {
  /** Temperature from which the fluid ages fast, 80 to 300. Default `loop.fluidLimit` of the design. [°C] */
  readonly limit?: Quantity;
  /** Warming that doubles the pace, 5 to 30. Default 10, rule of thumb. [K] */
  readonly doubling?: Quantity;
  /** Time at the limit that is worth a test, 3600 to 3.6e7. Default 1.8e5 (fifty hours), judgement. [s] */
  readonly hoursToTest?: Quantity;
}

/** Hours above a temperature. */
export interface HoursAbove {
  /** [°C] */
  readonly temperature: number;
  /** [h] */
  readonly hours: number;
}

/** Heat that a loop's glycol has borne in a year, and when to test it. */
export interface GlycolAgeing {
  /** Temperature from which it ages fast. [°C] */
  readonly limit: number;
  /** Hours in which the hottest part passes each temperature, fluid in it. */
  readonly hoursAbove: readonly HoursAbove[];
  /** Hours in which fluid had boiled out of the collectors. [h] */
  readonly boilingHours: number;
  /** Hours at the limit that would age it as much as the year did, Σ 2^((T − limit)/10 K), boiled-out hours included. [h] */
  readonly equivalentHours: number;
  /** Months after which pH and reserve should be tested: twelve at most, three at least. */
  readonly monthsToTest: number;
  /** Hours of the year at which another test's worth of heat has gathered, at most eleven; then a yearly one. */
  readonly testHours: readonly number[];
  /** The working. */
  readonly steps: readonly WorkingStep[];
  /** What to test, and what the values mean. */
  readonly notes: readonly Saying<AdviceCode>[];
}

/** Colder than this below the limit, ageing is left out: a sixteenth of the pace. [K] */
const REACH = 40;
const MARKS = [100, 110, 120, 140, 170, 200] as const;

/**
 * What a simulated year's heat does to the glycol, and when to test it.
 *
 *     equivalent hours = Σ 2^((T − limit)/10 K),   T ≥ limit − 40 K
 *
 * T is the hottest part of the absorber in the hour, so that a passing peak counts for the whole hour. For the share of an hour
 * in which fluid has boiled out, T is at most the boiling point at the relief valve's pressure: what is left under the steam is no hotter.
 * Both are on the safe side. The film that dries on a hot absorber is not counted: it cracks, and leaves flakes. The pace is a
 * rule of thumb, and how much heat a fluid bears is its maker's to say; the count tells one design from another and a hot summer
 * from a mild one.
 *
 * @param run - From `simulate`.
 * @param options - Limit (by default `loop.fluidLimit` of the design), pace, heat worth a test.
 * @throws {@link DesignError} listing all faults of the options at once.
 * @see Limits of 120 to 140 °C for ordinary propylene glycol, 170 °C for fluids for tubes: makers' guidance, from memory.
 */
export function glycolAgeing(run: RunResult, options: GlycolAgeingOptions = {}): GlycolAgeing {
  const { limit = run.design.loop.fluidLimit, doubling, hoursToTest } = checkInput(optionsSchema, options);
  const { absorberTemperature, boiling } = run.columns;
  const { loop } = run.design;
  const hottestLiquid = boilingPoint(loop.fluid, loop.glycolMassFraction, loop.reliefPressure + run.loop.airPressure);
  const worth = hoursToTest / 3600;
  const testHours: number[] = [];
  let equivalent = 0;
  let boilingHours = 0;
  const above = MARKS.map(() => 0);
  for (let hour = 0; hour < absorberTemperature.length; hour++) {
    const temperature = absorberTemperature[hour]!;
    const wet = 1 - boiling[hour]!;
    boilingHours += boiling[hour]!;
    MARKS.forEach((mark, at) => {
      if (temperature > mark) above[at]! += wet;
    });
    if (temperature < limit - REACH) continue;
    const pace = (at: number) => 2 ** ((at - limit) / doubling);
    equivalent += wet * pace(temperature) + (1 - wet) * pace(Math.min(temperature, hottestLiquid));
    if (testHours.length < 11 && equivalent >= worth * (testHours.length + 1)) testHours.push(hour);
  }
  const monthsToTest = Math.round(Math.min(12, Math.max(3, (12 * worth) / Math.max(equivalent, 1e-9))));
  return {
    limit,
    hoursAbove: MARKS.map((temperature, at) => ({ temperature, hours: above[at]! })),
    boilingHours,
    equivalentHours: equivalent,
    monthsToTest,
    testHours,
    steps: [
      line('ageing-hours', [equivalent, 'h'], {
        limit: [limit, '°C'],
        doubling: [doubling, 'K'],
        hottest: [hottestLiquid, '°C'],
      }),
      line('ageing-next-test', [monthsToTest, 'months'], { worth: [worth, 'h'], hours: [equivalent, 'h'] }),
    ],
    notes: [say('test-ph'), say('test-reserve'), say('test-strength'), say('sample-cold')],
  };
}

/** Most that fresh fluid has: makers’ sheets, from memory. [-] */
const HIGHEST_PH = 10;

/** What a pH says. */
export type GlycolVerdict = 'doubtful' | 'fresh' | 'in use' | 'renew soon' | 'renew now';

/**
 * What a measured pH says of a loop's glycol: 8.5 to 10 fresh, from 8 in use, from 7 renew soon, below renew now. Above 10 is
 * doubtful: makers fill at 8 to 10 (from memory), so the strip is wrong or something else is in the loop.
 *
 * @param pH - 2 to 12. [-]
 * @throws {@link DesignError} outside it.
 * @see A trade magazine's page, as in the safety values; the maker's sheet goes before it.
 */
export function glycolVerdict(pH: number): GlycolVerdict {
  requireNumber('pH', pH, 2, 12, '');
  if (pH > HIGHEST_PH) return 'doubtful';
  if (pH >= 8.5) return 'fresh';
  if (pH >= 8) return 'in use';
  return pH >= 7 ? 'renew soon' : 'renew now';
}
