import type { SystemDesign } from '../../design/design.ts';
import { checkInput } from '../../input/check.ts';
import { DesignError } from '../../input/errors.ts';
import { count, defaulted, quantity } from '../../input/field.ts';
import type { Quantity } from '../../input/quantity.ts';
import { line, type WorkingStep } from '../../input/working.ts';
import * as z from '../../input/zod.ts';
import { STANDARD_ATMOSPHERE } from '../../physics/fluid/air-pressure.ts';
import { burstProtection } from '../../physics/fluid/burst.ts';
import { compileFluid, fluidDensity } from '../../physics/fluid/compile.ts';
import type { Glycol } from '../../physics/fluid/melinder.ts';
import { glycolMassForFreezing } from '../../physics/fluid/mixture.ts';
import { coilsOf } from '../../physics/loop/coils.ts';
import { loopVolumes, vesselHolds } from '../../physics/loop/loop-volumes.ts';
import { risingRoot } from '../../physics/root.ts';

const optionsSchema = z.strictObject({
  leak: quantity('flow', 1e-13, 1e-4),
  coldest: quantity('temperature', -60, -0.1),
  filledOn: defaulted(count(0, 364), 0, '', 'judgement: filled on 1 January'),
});

/** What {@link thinning} is told; `leak` and `coldest` are needed. */
export interface ThinningOptions {
  /** Liquid that seeps out and is made up, 1e-13 to 1e-4, such as `'0.05 L/day'`. [m³/s] */
  readonly leak: Quantity;
  /** That the fluid must bear, −60 to −0.1, such as `glycolForSite(...).coldest`. [°C] */
  readonly coldest: Quantity;
  /** Day of the year of filling, 0 for 1 January to 364. Default 0. [d] */
  readonly filledOn?: number;
}

/** A loop that thins, in one month. */
export interface ThinningMonth {
  /** Days after filling. [d] */
  readonly days: number;
  /** Glycol by mass. [-] */
  readonly massFraction: number;
  /** [°C] */
  readonly freezingPoint: number;
  /** [°C] */
  readonly burstPoint: number;
}

/** When a slow leak with automatic make-up has taken the protection. */
export interface Thinning {
  /** Days after filling until the fluid freezes at the coldest temperature; 0 where it does from the start. [d] */
  readonly daysToFreezing: number;
  /** Days until it may burst a pipe at it; `null` where the guide's rows do not reach that cold. [d] */
  readonly daysToBursting: number | null;
  /** Day of the year of the first, 0 for 1 January, counted on over the turn of the year. [d] */
  readonly dayOfYear: number;
  /** Stirred volume. [m³] */
  readonly volume: number;
  /** Share at which protection ends. [-] */
  readonly leastMassFraction: number;
  /** Every thirty days for two years. */
  readonly months: readonly ThinningMonth[];
  /** The working. */
  readonly steps: readonly WorkingStep[];
}

const DAY = 86_400;
/** To which a share is found. [-] */
const ROUNDING = 1e-12;

/**
 * Date on which a slow leak with automatic make-up has taken the frost protection: the loop as one stirred volume.
 *
 *     x ρ(x) = x_0 ρ(x_0) e^(−q t/V),   t* = (V/q) ln[x_0 ρ(x_0)/(x* ρ(x*))]
 *
 * V is collectors, pipe, coil and what the vessel holds when filled. In truth the vessel's liquid mixes slowly, so that the loop
 * thins sooner than this and the vessel later. A run with `loop.leak` and `loop.makeUp` follows the same hour by hour
 * (`result.loop.protectionEnds`).
 *
 * @param design - Fluid, share and volumes, from `defineSystem`; its own leak is not looked at.
 * @param options - Leak, coldest temperature (such as `glycolForSite(...).coldest`), day of filling.
 * @throws {@link DesignError} listing all faults of the options at once; and for water.
 * @see Stirred volume: mass balance, see the pressure page of the theory; Melinder (2010).
 */
export function thinning(design: SystemDesign, options: ThinningOptions): Thinning {
  const { leak, coldest, filledOn } = checkInput(optionsSchema, options);
  const { loop, coil, array, tank } = design;
  const { fluid, glycolMassFraction: start, fillTemperature } = loop;
  if (fluid === 'water') {
    throw new DesignError([
      {
        path: 'loop.fluid',
        found: '"water"',
        expected: 'a glycol that can thin',
        remedy: 'Water has no protection to lose.',
      },
    ]);
  }
  const held = vesselHolds(loop, STANDARD_ATMOSPHERE);
  const volume = loopVolumes(loop, coilsOf(coil, tank.second), array).whole + held;
  const partial = (x: number) => x * fluidDensity(compileFluid(fluid, x), fillTemperature);
  const daysTo = (x: number) =>
    x >= start
      ? 0
      : x <= 0
        ? Number.POSITIVE_INFINITY
        : ((volume / leak) * Math.log(partial(start) / partial(x))) / DAY;
  const strongest = compileFluid(fluid, 0.6).freezingPoint;
  const least = coldest <= strongest ? 0.6 : glycolMassForFreezing(fluid, coldest);
  const daysToFreezing = daysTo(least);
  const burstable = burstProtection(fluid, start) <= coldest ? shareForBurst(fluid, coldest, start) : start;
  const deepest = burstProtection(fluid, 0.6);
  const daysToBursting = coldest < deepest ? null : daysTo(burstable);
  const months = Array.from({ length: 25 }, (_, at): ThinningMonth => {
    const days = 30 * at;
    const massFraction = shareAfter(partial, start, Math.exp((-leak * days * DAY) / volume));
    return {
      days,
      massFraction,
      freezingPoint: compileFluid(fluid, massFraction).freezingPoint,
      burstPoint: burstProtection(fluid, massFraction),
    };
  });
  const steps = [
    line('thinning-volume', [volume, 'm³'], { parts: [volume - held, 'm³'], vessel: [held, 'm³'] }),
    line('thinning-least', [least, '-'], { coldest: [coldest, '°C'] }),
    line('thinning-days', [daysToFreezing, 'd'], {
      volume: [volume, 'm³'],
      leak: [leak * DAY, 'm³/d'],
      start: [partial(start), 'kg/m³'],
      end: [partial(least), 'kg/m³'],
    }),
  ];
  return {
    daysToFreezing,
    daysToBursting,
    dayOfYear: filledOn + daysToFreezing,
    volume,
    leastMassFraction: least,
    months,
    steps,
  };
}

/** Share whose mass of glycol in a litre is a part of that at the start. */
const shareAfter = (partial: (x: number) => number, start: number, part: number): number =>
  risingRoot((x) => partial(x) - part * partial(start), 0, start, ROUNDING);

/** Least share up to `highest` that does not burst at a temperature. */
const shareForBurst = (fluid: Glycol, temperature: number, highest: number): number =>
  risingRoot((x) => temperature - burstProtection(fluid, x), 0, highest, ROUNDING);
