import type { SystemDesign } from '../../design/design.ts';
import { checkInput } from '../../input/check.ts';
import { DesignError } from '../../input/errors.ts';
import { quantity, quantityOr } from '../../input/field.ts';
import type { Quantity } from '../../input/quantity.ts';
import * as z from '../../input/zod.ts';
import { exchangerRatio } from '../../physics/collector/flow-correction.ts';
import { arrayArea } from '../../physics/collector/groups.ts';
import { compileFluid, fluidDensity, fluidSpecificHeat } from '../../physics/fluid/compile.ts';
import { coilConductance } from '../../physics/loop/coil-conductance.ts';
import { coilEffectiveness } from '../../physics/loop/exchanger.ts';
import { coilSteps } from './coil-working.ts';
import type { CoilSizing } from './sizings.ts';
import { COMMON_FLOW, PRACTICE } from './working.ts';

const optionsSchema = z.strictObject({
  flow: quantity('flow', 1e-6, 1e-2).optional(),
  tankTemperature: quantityOr('temperature', 5, 90, 40, 'judgement: lower part of a tank at work'),
  difference: quantityOr('temperatureDifference', 1, 40, 10, `fluid over tank in full sun, 8 to 12 K, ${PRACTICE}`),
  fluxPerArea: quantityOr('irradiance', 100, 1000, 600, `gain in full sun with a tank at work, ${PRACTICE}`),
});

/** What {@link sizeCoil} may be told; each has a default. */
export interface CoilSizingOptions {
  /** Through the coil, 1e-6 to 1e-2. Default 0.7 L/min for each m² of collector, common practice, no source. [m³/s] */
  readonly flow?: Quantity;
  /** Water around the coil, 5 to 90. Default 40, judgement. [°C] */
  readonly tankTemperature?: Quantity;
  /** Mean of the fluid over the tank in full sun, 1 to 40. Default 10; 8 to 12 are common practice, no source. [K] */
  readonly difference?: Quantity;
  /** Gain of the collectors in full sun, 100 to 1000. Default 600, common practice, no source. [W/m²] */
  readonly fluxPerArea?: Quantity;
}

/** Longest coil looked at. [m] */
const LONGEST = 200;

/**
 * Length of coil that hands over the array's full-sun heat at a mean difference between fluid and tank.
 *
 *     P = UA(L) Δt_mean,   UA by the films of `coilConductance`
 *
 * The tube's diameters, wall and scale are the design's; its length is not looked at.
 *
 * @param design - From `defineSystem`, with a coil.
 * @param options - Flow (by default 0.7 L/min for each m²), temperatures, heat.
 * @throws {@link DesignError} listing all faults of the options at once, for a design with a plate exchanger, and where 200 m
 *   of coil do not do.
 * @see `coilConductance`; de Winter (1975) for the collectors' share.
 */
export function sizeCoil(design: SystemDesign, options: CoilSizingOptions = {}): CoilSizing {
  const asked = checkInput(optionsSchema, options);
  const { coil, loop, array } = design;
  if (loop.exchanger === 'plate') {
    throw fault(
      'loop.exchanger',
      '"plate"',
      'a design with a coil',
      'Size a plate exchanger by its rated point, plateConductance.',
    );
  }
  const area = arrayArea(array);
  const flow = asked.flow ?? COMMON_FLOW * area;
  const heat = asked.fluxPerArea * area;
  const { tankTemperature, difference } = asked;
  const fluidTemperature = tankTemperature + difference;
  const conductanceOf = (length: number) =>
    coilConductance({
      coil: { ...coil, length },
      fluid: loop.fluid,
      glycolMassFraction: loop.glycolMassFraction,
      flow,
      fluidTemperature,
      tankTemperature,
    });
  // Films depend on flow and temperatures and not on the length: UA is in proportion to it.
  const perMetre = conductanceOf(1);
  const length = heat / (perMetre.conductance * difference);
  if (!(length <= LONGEST)) {
    throw fault(
      'difference',
      `${difference} K`,
      `a difference that ${LONGEST} m of this tube can work with`,
      'Allow more, or take a wider tube or more flow.',
    );
  }
  const fluid = compileFluid(loop.fluid, loop.glycolMassFraction);
  const capacityRate = fluidDensity(fluid, fluidTemperature) * fluidSpecificHeat(fluid, fluidTemperature) * flow;
  const conductance = perMetre.conductance * length;
  const effectiveness = coilEffectiveness(conductance / capacityRate);
  const surface = Math.PI * coil.outerDiameter * length;
  const a = array.collector.a1 + array.collector.a2 * 30;
  const removalLoss = a / (1 + (a * area) / (2 * capacityRate));
  const collectorShare = exchangerRatio(
    { area, removalLoss, capacityRate },
    { effectiveness, minimumRate: capacityRate },
  );
  const found = { length, surface, surfacePerArea: surface / area, conductance, effectiveness, collectorShare };
  return {
    ...found,
    differenceAsDesigned: heat / (perMetre.conductance * coil.length),
    steps: coilSteps(design, { ...asked, flow, fluidTemperature, heat, perMetre, capacityRate, removalLoss, ...found }),
  };
}

const fault = (path: string, found: string, expected: string, remedy: string): DesignError =>
  new DesignError([{ path, found, expected, remedy }]);
