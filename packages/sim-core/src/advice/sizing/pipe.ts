import type { LoopDesign, SystemDesign } from '../../design/design.ts';
import { checkInput } from '../../input/check.ts';
import { quantity, quantityOr } from '../../input/field.ts';
import type { Quantity } from '../../input/quantity.ts';
import * as z from '../../input/zod.ts';
import { arrayArea } from '../../physics/collector/groups.ts';
import { type CompiledFluid, compileFluid, fluidDensity, fluidViscosity } from '../../physics/fluid/compile.ts';
import { pipePressureDrop, pipeReynolds } from '../../physics/loop/friction.ts';
import { insulationResistance, pipeLossConductance } from '../../physics/loop/pipe.ts';
import { GRAVITY } from '../../physics/loop/pump.ts';
import { pipeNotes } from './pipe-advice.ts';
import { pipeSteps } from './pipe-working.ts';
import type { InsulationChoice, PipeChoice, PipeSizing } from './sizings.ts';
import { COMMON_FLOW, PRACTICE } from './working.ts';

const optionsSchema = z.strictObject({
  flow: quantity('flow', 1e-6, 1e-2).optional(),
  highestVelocity: quantityOr('speed', 0.1, 3, 0.7, `quiet, and easy on elbows, ${PRACTICE}`),
  lowestVelocity: quantityOr('speed', 0, 1, 0.25, `carries air to the vent, ${PRACTICE}`),
  highestHead: quantityOr('length', 0.05, 20, 1, 'judgement: a third of a small pump’s head'),
  fluidTemperature: quantityOr('temperature', 5, 95, 45, 'judgement: loop of a working system'),
  coldFluid: quantityOr('temperature', -30, 40, 5, 'judgement: loop on a winter morning'),
  air: quantityOr('temperature', -40, 40, 10, 'judgement: mean of the year out of doors'),
  lossShare: quantityOr('fraction', 0.005, 0.5, 0.05, 'judgement: a twentieth of full-sun heat lost on the way'),
});

/** What {@link sizePipe} may be told; each has a default. */
export interface PipeSizingOptions {
  /** Through the whole array, 1e-6 to 1e-2. Default 0.7 L/min for each m² of collector, common practice, no source. [m³/s] */
  readonly flow?: Quantity;
  /** Limit for quiet and elbows, 0.1 to 3. Default 0.7, common practice, no source. [m/s] */
  readonly highestVelocity?: Quantity;
  /** Below it a note says that air is not carried along, 0 to 1. Default 0.25, common practice, no source. [m/s] */
  readonly lowestVelocity?: Quantity;
  /** Limit of the pipe's head, fluid warm, 0.05 to 20. Default 1, judgement. [m] */
  readonly highestHead?: Quantity;
  /** Loop of a working system, 5 to 95. Default 45, judgement. [°C] */
  readonly fluidTemperature?: Quantity;
  /** Loop on a winter morning, −30 to 40. Default 5, judgement. [°C] */
  readonly coldFluid?: Quantity;
  /** Around the pipe, −40 to 40. Default 10, judgement. [°C] */
  readonly air?: Quantity;
  /** Loss of the pipe over full-sun heat, 0.005 to 0.5. Default 0.05, judgement. [-] */
  readonly lossShare?: Quantity;
}

/** Copper tubes of EN 1057 as they are sold, outside by wall; common sizes, from memory. [m] */
const TUBES = [
  [0.01, 0.0008],
  [0.012, 0.0008],
  [0.015, 0.001],
  [0.018, 0.001],
  [0.022, 0.001],
  [0.028, 0.0015],
  [0.035, 0.0015],
] as const;

/** Insulation as it is sold, common practice, no source. [m] */
const THICKNESSES = [0.009, 0.013, 0.019, 0.025, 0.032, 0.04, 0.05] as const;

/**
 * R-3 (3 ft²·°F·h/Btu), which US energy codes ask of hot pipes above 105 °F; European ones ask for the tube's diameter in
 * thickness, and twice that out of doors. Both from memory. [m²·K/W]
 */
const LEAST_RESISTANCE = 3 * 0.17611;

/**
 * Tube and insulation of the loop's pipe.
 *
 *     v = 4 V̇/(π D²),   Δp = (f L/D + Σ K) ρ v²/2,   H = Δp/(ρ g)
 *     loss = U' L (t − t_air),   f/U' = ln(D_i/D)/(2 π k) + 1/(π D_i h)
 *     R = (D_i/2) ln(D_i/D)/k
 *
 * Length, fittings, fluid, the insulation's conductivity and the factor f for heat bridges are the design's; its diameters and
 * thickness are not looked at.
 *
 * @param design - From `defineSystem`.
 * @param options - Flow (by default 0.7 L/min for each m²) and limits.
 * @throws {@link DesignError} listing all faults of the options at once.
 * @see `pipePressureDrop`, `pipeLossConductance`.
 */
export function sizePipe(design: SystemDesign, options: PipeSizingOptions = {}): PipeSizing {
  const asked = checkInput(optionsSchema, options);
  const { loop, array } = design;
  const area = arrayArea(array);
  const flow = asked.flow ?? COMMON_FLOW * area;
  const fluid = compileFluid(loop.fluid, loop.glycolMassFraction);
  const pipes = TUBES.map(([outer, wall]) => tubeWithFlow(loop, fluid, [outer, outer - 2 * wall], { ...asked, flow }));
  const pipe = pipes.find(({ fits }) => fits) ?? pipes[pipes.length - 1]!;
  const excess = Math.max(asked.fluidTemperature - asked.air, 0);
  const heat = array.collector.eta0 * 1000 * area;
  const insulations = THICKNESSES.map((thickness) =>
    insulationOn(loop, pipe.outerDiameter, thickness, { excess, heat }),
  );
  const thickest = insulations[insulations.length - 1]!;
  const keeps = ({ share }: InsulationChoice) => share <= asked.lossShare;
  const insulation = insulations.find((choice) => choice.meetsCode && keeps(choice)) ?? thickest;
  const outdoorInsulation = insulations.find((choice) => choice.meetsCodeOutdoors && keeps(choice)) ?? thickest;
  const sized = { pipe, pipes, insulation, outdoorInsulation, insulations };
  const steps = pipeSteps(design, sized, { ...asked, flow, area, given: asked.flow !== undefined });
  return { ...sized, steps, notes: pipeNotes(sized, asked.lowestVelocity, asked.lossShare) };
}

/** Limits and temperatures that a tube is looked at with, in SI. */
interface PipeLimits {
  readonly flow: number;
  readonly fluidTemperature: number;
  readonly coldFluid: number;
  readonly highestVelocity: number;
  readonly highestHead: number;
}

/** A tube, outside and bore, with a flow in it. */
function tubeWithFlow(
  loop: LoopDesign,
  fluid: CompiledFluid,
  [outerDiameter, innerDiameter]: readonly [number, number],
  { flow, fluidTemperature: warm, coldFluid, highestVelocity, highestHead }: PipeLimits,
): PipeChoice {
  const headAt = (temperature: number): number => {
    const density = fluidDensity(fluid, temperature);
    const dynamicViscosity = fluidViscosity(fluid, temperature);
    const { pipeLength: length, fittingLoss } = loop;
    return (
      pipePressureDrop({ flow, length, innerDiameter, fittingLoss, density, dynamicViscosity }) / (density * GRAVITY)
    );
  };
  const section = (Math.PI / 4) * innerDiameter * innerDiameter;
  const velocity = flow / section;
  const head = headAt(warm);
  return {
    outerDiameter,
    innerDiameter,
    velocity,
    reynolds: pipeReynolds(flow, innerDiameter, fluidDensity(fluid, warm), fluidViscosity(fluid, warm)),
    head,
    coldHead: headAt(coldFluid),
    content: section * loop.pipeLength,
    fits: velocity <= highestVelocity && head <= highestHead,
  };
}

/** A thickness of insulation on a tube, with the loop so much warmer than the air, against the heat of full sun. */
function insulationOn(
  { heatBridgeFactor, insulationConductivity, pipeLength }: LoopDesign,
  pipeOuterDiameter: number,
  insulationThickness: number,
  { excess, heat }: { readonly excess: number; readonly heat: number },
): InsulationChoice {
  const shell = { pipeOuterDiameter, insulationThickness, insulationConductivity, heatBridgeFactor };
  const lossPerMetre = pipeLossConductance(shell);
  const loss = lossPerMetre * pipeLength * excess;
  const resistance = insulationResistance(shell);
  const overTube = insulationThickness / pipeOuterDiameter;
  const resists = resistance >= LEAST_RESISTANCE;
  return {
    thickness: insulationThickness,
    lossPerMetre,
    loss,
    share: loss / heat,
    resistance,
    overTube,
    meetsCode: resists && overTube >= 1,
    meetsCodeOutdoors: resists && overTube >= 2,
  };
}
