import type { WeatherYear } from '@noonloop/weather-io';
import type { SystemDesign } from '../../design/design.ts';
import { checkInput } from '../../input/check.ts';
import { DesignError } from '../../input/errors.ts';
import { quantityOr } from '../../input/field.ts';
import type { Quantity } from '../../input/quantity.ts';
import type { Saying } from '../../input/saying.ts';
import type { WorkingStep } from '../../input/working.ts';
import * as z from '../../input/zod.ts';
import { siteAirPressure } from '../../physics/fluid/air-pressure.ts';
import { burstProtection } from '../../physics/fluid/burst.ts';
import { compileFluid } from '../../physics/fluid/compile.ts';
import { type Glycol, MAXIMUM_MASS_FRACTION } from '../../physics/fluid/melinder.ts';
import { glycolMassForFreezing, glycolMassFromVolume, glycolVolumeFromMass } from '../../physics/fluid/mixture.ts';
import { coilsOf } from '../../physics/loop/coils.ts';
import { loopVolumes, vesselHolds } from '../../physics/loop/loop-volumes.ts';
import { risingRoot } from '../../physics/root.ts';
import type { AdviceCode } from '../advice-codes.ts';
import { shareNotes, shareSteps } from './share-working.ts';
import { coldAbsorber } from './site.ts';

const optionsSchema = z.strictObject({
  margin: quantityOr('temperatureDifference', 0, 30, 5, 'design practice adds 3 to 5 K, common practice, no source'),
  leastVolumeFraction: quantityOr(
    'fraction',
    0,
    0.6,
    0.25,
    'below about a quarter inhibitor and biocide are too thin, common practice, no source; read the maker’s sheet',
  ),
});

/** What {@link glycolForSite} may be told; each has a default. */
export interface GlycolShareOptions {
  /** Freezing point below the coldest hour, 0 to 30. Default 5; 3 to 5 K are common practice, no source. [K] */
  readonly margin?: Quantity;
  /** Least share by volume that keeps inhibitor and biocide working, 0 to 0.6. Default 0.25, common practice, no source. [-] */
  readonly leastVolumeFraction?: Quantity;
}

/** How much glycol, and why. */
export interface GlycolShare {
  /** Glycol by mass, for `loop.glycolMassFraction`. [-] */
  readonly massFraction: number;
  /** Volumes before mixing at 20 °C, as dealers speak. [-] */
  readonly volumeFraction: number;
  /** Glycol to pour in: for {@link loopVolume} and {@link vesselVolume}. [m³] */
  readonly glycolVolume: number;
  /** Liquid of collectors, pipe and coil. [m³] */
  readonly loopVolume: number;
  /** Liquid that the vessel holds at the fill pressure. [m³] */
  readonly vesselVolume: number;
  /** First ice of the mixture. [°C] */
  readonly freezingPoint: number;
  /** Down to which it bursts no pipe. [°C] */
  readonly burstPoint: number;
  /** Coldest that the absorber gets in the year, night sky included. [°C] */
  readonly coldest: number;
  /** Hour of it, 0 to 8759. */
  readonly coldestHour: number;
  /** Share by volume that would only keep pipes whole, as slush; nothing circulates in such a night. [-] */
  readonly burstOnlyVolumeFraction: number;
  /** The working. */
  readonly steps: readonly WorkingStep[];
  /** What to look at. */
  readonly notes: readonly Saying<AdviceCode>[];
}

/**
 * Share of glycol for the coldest hour of a site, with a margin.
 *
 *     T_min = min over the hours of (T_air − s D/a1 by night),   x: freezing point(x) = T_min − margin
 *
 * @param design - Collector, plane, fluid and volumes, from `defineSystem`.
 * @param weather - One year; a typical year has no hundred-year night, which the margin is for.
 * @param options - Margin, and the least share that keeps the inhibitor working.
 * @throws {@link DesignError} listing all faults of the options at once, for water, and for a cold that no mixture of up to
 *   0.6 bears.
 * @see Melinder (2010); `burstProtection` (from memory); Berdahl & Martin (1984).
 */
export function glycolForSite(
  design: SystemDesign,
  weather: WeatherYear,
  options: GlycolShareOptions = {},
): GlycolShare {
  const { margin, leastVolumeFraction } = checkInput(optionsSchema, options);
  const { loop, coil, array, tank } = design;
  const { fluid } = loop;
  if (fluid === 'water') {
    throw new DesignError([
      {
        path: 'loop.fluid',
        found: '"water"',
        expected: '"propylene-glycol" or "ethylene-glycol"',
        remedy: 'Name the glycol.',
      },
    ]);
  }
  const absorber = coldAbsorber(design, weather);
  let coldestHour = 0;
  for (let hour = 1; hour < absorber.length; hour++) if (absorber[hour]! < absorber[coldestHour]!) coldestHour = hour;
  const coldest = absorber[coldestHour]!;
  const air = weather.columns.dryBulb[coldestHour]!;
  const target = coldest - margin;
  const strongest = compileFluid(fluid, MAXIMUM_MASS_FRACTION).freezingPoint;
  if (target < strongest) {
    throw new DesignError([
      {
        path: 'margin',
        found: `${margin} K below a coldest hour of ${coldest.toFixed(1)} °C`,
        expected: `not below ${strongest.toFixed(1)} °C, the strongest mixture’s freezing point`,
        remedy: 'Take less margin, or let the loop drain back into a warm room.',
      },
    ]);
  }
  const weakest = compileFluid(fluid, 0).freezingPoint;
  const needed = target < weakest ? glycolMassForFreezing(fluid, target) : 0;
  const leastMass = Math.min(glycolMassFromVolume(fluid, leastVolumeFraction), MAXIMUM_MASS_FRACTION);
  const massFraction = Math.max(needed, leastMass);
  const volumeFraction = glycolVolumeFromMass(fluid, massFraction);
  const { whole } = loopVolumes(loop, coilsOf(coil, tank.second), array);
  const held = vesselHolds(loop, siteAirPressure(weather.site.elevation, weather.columns.pressure));
  const burstOnlyVolumeFraction = burstShare(fluid, target);
  const freezingPoint = compileFluid(fluid, massFraction).freezingPoint;
  const burstPoint = burstProtection(fluid, massFraction);
  const found = { air, coldest, coldestHour, target, margin, needed, leastMass, volumeFraction, whole, held };
  return {
    massFraction,
    volumeFraction,
    glycolVolume: volumeFraction * (whole + held),
    loopVolume: whole,
    vesselVolume: held,
    freezingPoint,
    burstPoint,
    coldest,
    coldestHour,
    burstOnlyVolumeFraction,
    steps: shareSteps(found),
    notes: shareNotes(fluid, needed < leastMass),
  };
}

/** Least share by volume before mixing whose burst point is at or below a temperature; that of the last row where none is. */
const burstShare = (fluid: Glycol, temperature: number): number =>
  glycolVolumeFromMass(
    fluid,
    risingRoot((x) => temperature - burstProtection(fluid, x), 0, MAXIMUM_MASS_FRACTION, 1e-7),
  );
