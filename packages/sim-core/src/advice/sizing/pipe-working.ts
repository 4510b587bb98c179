/** The working of tube and insulation, line by line. */
import type { SystemDesign } from '../../design/design.ts';
import { line, show, type WorkingStep } from '../../input/working.ts';
import type { PipeSizing } from './sizings.ts';
import { L_PER_MIN, PRACTICE } from './working.ts';

/** What was asked, in SI. */
interface PipeAsked {
  readonly flow: number;
  /** Whether the flow was given. */
  readonly given: boolean;
  /** Of all panels. [m²] */
  readonly area: number;
  readonly fluidTemperature: number;
  readonly coldFluid: number;
  readonly air: number;
  readonly highestVelocity: number;
}

const mm = (length: number) => `${show(length * 1000, 3)} mm`;

/** From the flow to what codes ask of the insulation. */
export function pipeSteps(
  { array, loop }: SystemDesign,
  { pipe, insulation, outdoorInsulation }: Pick<PipeSizing, 'pipe' | 'insulation' | 'outdoorInsulation'>,
  asked: PipeAsked,
): WorkingStep[] {
  const { flow, given, area, fluidTemperature: warm, coldFluid, air, highestVelocity } = asked;
  const outer = pipe.outerDiameter + 2 * insulation.thickness;
  return [
    line(
      'flow',
      given ? 'given' : 'V̇ = 0.7 L/(min·m²) × A',
      `${show(area)} m²: ${show(flow * L_PER_MIN)} L/min`,
      [flow, 'm³/s'],
      given ? 'given' : PRACTICE,
    ),
    line(
      'velocity',
      'v = 4 V̇/(π D²)',
      `4 × ${show(flow)}/(π × ${show(pipe.innerDiameter)}²), tube ${mm(pipe.outerDiameter)}`,
      [pipe.velocity, 'm/s'],
      `at most ${show(highestVelocity)} m/s: ${PRACTICE}`,
    ),
    line(
      'head',
      'H = (f L/D + Σ K) v²/(2 g)',
      `Re ${show(pipe.reynolds, 3)}, L ${show(loop.pipeLength)} m, Σ K ${show(loop.fittingLoss)}, fluid ${show(warm)} °C`,
      [pipe.head, 'm'],
      'Darcy–Weisbach, Haaland 1983',
    ),
    line(
      'head, fluid cold',
      'the same',
      `fluid ${show(coldFluid)} °C`,
      [pipe.coldHead, 'm'],
      'viscosity: Melinder 2010',
    ),
    line(
      'loss of a metre',
      "f/U' = ln(D_i/D)/(2 π k) + 1/(π D_i h)",
      `${show(loop.heatBridgeFactor)}/U' = ln(${show(outer)}/${show(pipe.outerDiameter)})/(2 π × ${show(loop.insulationConductivity)}) + 1/(π × ${show(outer)} × 10), ${mm(insulation.thickness)} of insulation`,
      [insulation.lossPerMetre, 'W/(m·K)'],
      'conduction through a shell; film 10 W/(m²·K) and factor f for heat bridges: judgement',
    ),
    line(
      'loss of the pipe',
      "U' L (t − t_air)",
      `${show(insulation.lossPerMetre)} × ${show(loop.pipeLength)} m × (${show(warm)} − ${show(air)}) K`,
      [insulation.loss, 'W'],
      'steady',
    ),
    line(
      'share of full-sun heat',
      'loss/(η0 1000 W/m² A)',
      `${show(insulation.loss)}/(${show(array.collector.eta0)} × 1000 × ${show(area)})`,
      [insulation.share, '-'],
      'judgement',
    ),
    line(
      'resistance of the insulation',
      'R = (D_i/2) ln(D_i/D)/k',
      `${show(outer / 2)} × ln(${show(outer)}/${show(pipe.outerDiameter)})/${show(loop.insulationConductivity)}; R-3 is 0.528`,
      [insulation.resistance, 'm²·K/W'],
      'US energy codes: R-3 above 105 °F, from memory',
    ),
    line(
      'insulation out of doors',
      'twice the tube’s outside, R-3, and the loss',
      `${mm(outdoorInsulation.thickness)} on ${mm(pipe.outerDiameter)}; indoors ${mm(insulation.thickness)}, once its outside`,
      [outdoorInsulation.thickness, 'm'],
      'European practice: 100 % of the tube indoors, 200 % out of doors, from memory',
    ),
  ];
}
