import * as z from 'zod';
import type { SystemDesign } from '../../design/design.ts';
import { checkInput } from '../../input/check.ts';
import { quantity, quantityOr } from '../../input/field.ts';
import type { Quantity } from '../../input/quantity.ts';
import { line, show, type WorkingStep } from '../../input/working.ts';
import { compileFluid, fluidDensity, fluidViscosity } from '../../physics/fluid/compile.ts';
import { pipePressureDrop, pipeReynolds } from '../../physics/loop/friction.ts';
import { pipeLossConductance } from '../../physics/loop/pipe.ts';
import { GRAVITY } from '../../physics/loop/pump.ts';
import { COMMON_FLOW, L_PER_MIN, PRACTICE } from './working.ts';

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

/** A tube with the loop's flow in it. */
export interface PipeChoice {
  /** Outside. [m] */
  readonly outerDiameter: number;
  /** Bore. [m] */
  readonly innerDiameter: number;
  /** [m/s] */
  readonly velocity: number;
  /** Re of the warm fluid. [-] */
  readonly reynolds: number;
  /** Of the warm fluid, both ways, fittings included. [m] */
  readonly head: number;
  /** Of the cold fluid at the same flow. [m] */
  readonly coldHead: number;
  /** Both ways. [m³] */
  readonly content: number;
  /** Whether velocity and head keep their limits. */
  readonly fits: boolean;
}

/** A thickness of insulation. */
export interface InsulationChoice {
  /** [m] */
  readonly thickness: number;
  /** U'. [W/(m·K)] */
  readonly lossPerMetre: number;
  /** Both ways, warm fluid. [W] */
  readonly loss: number;
  /** Of full-sun heat. [-] */
  readonly share: number;
}

/** Which tube and how much insulation, and why. */
export interface PipeSizing {
  /** Smallest tube that keeps velocity and head; the widest where none does. */
  readonly pipe: PipeChoice;
  /** All tubes looked at. */
  readonly pipes: readonly PipeChoice[];
  /** Thinnest that keeps the loss; the thickest where none does. */
  readonly insulation: InsulationChoice;
  /** All thicknesses looked at, on that tube. */
  readonly insulations: readonly InsulationChoice[];
  /** The working. */
  readonly steps: readonly WorkingStep[];
  /** What to look at. */
  readonly notes: readonly string[];
}

/**
 * Tube and insulation of the loop's pipe.
 *
 *     v = 4 V̇/(π D²),   Δp = (f L/D + Σ K) ρ v²/2,   H = Δp/(ρ g)
 *     loss = U' L (t − t_air),   1/U' = ln(D_i/D)/(2 π k) + 1/(π D_i h)
 *
 * Length, fittings, fluid and the insulation's conductivity are the design's; its diameters and thickness are not looked at.
 *
 * @param design - From `defineSystem`.
 * @param options - Flow (by default 0.7 L/min for each m²) and limits.
 * @throws {@link DesignError} listing all faults of the options at once.
 * @see `pipePressureDrop`, `pipeLossConductance`.
 */
export function sizePipe(design: SystemDesign, options: PipeSizingOptions = {}): PipeSizing {
  const asked = checkInput(optionsSchema, options);
  const { loop, array } = design;
  const area = array.panels * array.collector.area;
  const flow = asked.flow ?? COMMON_FLOW * area;
  const fluid = compileFluid(loop.fluid, loop.glycolMassFraction);
  const headOf = (bore: number, temperature: number): number => {
    const density = fluidDensity(fluid, temperature);
    const drop = pipePressureDrop({
      flow,
      length: loop.pipeLength,
      innerDiameter: bore,
      fittingLoss: loop.fittingLoss,
      density,
      dynamicViscosity: fluidViscosity(fluid, temperature),
    });
    return drop / (density * GRAVITY);
  };
  const warm = asked.fluidTemperature;
  const pipes = TUBES.map(([outer, wall]): PipeChoice => {
    const bore = outer - 2 * wall;
    const section = (Math.PI / 4) * bore * bore;
    const velocity = flow / section;
    const head = headOf(bore, warm);
    return {
      outerDiameter: outer,
      innerDiameter: bore,
      velocity,
      reynolds: pipeReynolds(flow, bore, fluidDensity(fluid, warm), fluidViscosity(fluid, warm)),
      head,
      coldHead: headOf(bore, asked.coldFluid),
      content: section * loop.pipeLength,
      fits: velocity <= asked.highestVelocity && head <= asked.highestHead,
    };
  });
  const pipe = pipes.find(({ fits }) => fits) ?? pipes[pipes.length - 1]!;
  const heat = array.collector.eta0 * 1000 * area;
  const insulations = THICKNESSES.map((thickness): InsulationChoice => {
    const lossPerMetre = pipeLossConductance({
      pipeOuterDiameter: pipe.outerDiameter,
      insulationThickness: thickness,
      insulationConductivity: loop.insulationConductivity,
    });
    const loss = lossPerMetre * loop.pipeLength * Math.max(warm - asked.air, 0);
    return { thickness, lossPerMetre, loss, share: loss / heat };
  });
  const insulation = insulations.find(({ share }) => share <= asked.lossShare) ?? insulations[insulations.length - 1]!;
  const mm = (length: number) => `${show(length * 1000, 3)} mm`;
  const outer = pipe.outerDiameter + 2 * insulation.thickness;
  const steps = [
    line(
      'flow',
      asked.flow === undefined ? 'V̇ = 0.7 L/(min·m²) × A' : 'given',
      `${show(area)} m²: ${show(flow * L_PER_MIN)} L/min`,
      flow,
      'm³/s',
      asked.flow === undefined ? PRACTICE : 'given',
    ),
    line(
      'velocity',
      'v = 4 V̇/(π D²)',
      `4 × ${show(flow)}/(π × ${show(pipe.innerDiameter)}²), tube ${mm(pipe.outerDiameter)}`,
      pipe.velocity,
      'm/s',
      `at most ${show(asked.highestVelocity)} m/s: ${PRACTICE}`,
    ),
    line(
      'head',
      'H = (f L/D + Σ K) v²/(2 g)',
      `Re ${show(pipe.reynolds, 3)}, L ${show(loop.pipeLength)} m, Σ K ${show(loop.fittingLoss)}, fluid ${show(warm)} °C`,
      pipe.head,
      'm',
      'Darcy–Weisbach, Haaland 1983',
    ),
    line(
      'head, fluid cold',
      'the same',
      `fluid ${show(asked.coldFluid)} °C`,
      pipe.coldHead,
      'm',
      'viscosity: Melinder 2010',
    ),
    line(
      'loss of a metre',
      "1/U' = ln(D_i/D)/(2 π k) + 1/(π D_i h)",
      `1/U' = ln(${show(outer)}/${show(pipe.outerDiameter)})/(2 π × ${show(loop.insulationConductivity)}) + 1/(π × ${show(outer)} × 10), ${mm(insulation.thickness)} of insulation`,
      insulation.lossPerMetre,
      'W/(m·K)',
      'conduction through a shell; film 10 W/(m²·K): judgement',
    ),
    line(
      'loss of the pipe',
      "U' L (t − t_air)",
      `${show(insulation.lossPerMetre)} × ${show(loop.pipeLength)} m × (${show(warm)} − ${show(asked.air)}) K`,
      insulation.loss,
      'W',
      'steady',
    ),
    line(
      'share of full-sun heat',
      'loss/(η0 1000 W/m² A)',
      `${show(insulation.loss)}/(${show(array.collector.eta0)} × 1000 × ${show(area)})`,
      insulation.share,
      '-',
      'judgement',
    ),
  ];
  const notes: string[] = [];
  if (!pipe.fits) notes.push('No common tube keeps velocity and head: run two tubes, or ask for less flow.');
  if (pipe.velocity < asked.lowestVelocity)
    notes.push(
      `The fluid runs at ${pipe.velocity.toFixed(2)} m/s: too slow to carry air along; give the highest point a vent that can be shut.`,
    );
  if (insulation.share > asked.lossShare)
    notes.push('No common thickness keeps the loss: shorten the pipe, or take it indoors.');
  notes.push(
    'Insulation near the collectors must bear their stagnation temperature, and out of doors the sun and birds.',
  );
  return { pipe, pipes, insulation, insulations, steps, notes };
}
