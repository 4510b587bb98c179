/** The working of tube and insulation, line by line. */
import type { SystemDesign } from '../../design/design.ts';
import { line, type WorkingStep } from '../../input/working.ts';
import type { PipeSizing } from './sizings.ts';
import { COMMON_FLOW } from './working.ts';

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

/** From the flow to what codes ask of the insulation. */
export function pipeSteps(
  { array, loop }: SystemDesign,
  { pipe, insulation, outdoorInsulation }: Pick<PipeSizing, 'pipe' | 'insulation' | 'outdoorInsulation'>,
  asked: PipeAsked,
): WorkingStep[] {
  const { flow, given, area, fluidTemperature: warm, coldFluid, air, highestVelocity } = asked;
  const outer = pipe.outerDiameter + 2 * insulation.thickness;
  const bore = [pipe.innerDiameter, 'mm'] as const;
  const tube = [pipe.outerDiameter, 'mm'] as const;
  const length = [loop.pipeLength, 'm'] as const;
  const conductivity = [loop.insulationConductivity, 'W/(m·K)'] as const;
  const thickness = [insulation.thickness, 'mm'] as const;
  return [
    line(given ? 'pipe-flow-given' : 'pipe-flow-common', [flow, 'm³/s'], {
      area: [area, 'm²'],
      common: [COMMON_FLOW, 'm³/(s·m²)'],
    }),
    line('pipe-velocity', [pipe.velocity, 'm/s'], {
      flow: [flow, 'm³/s'],
      bore,
      tube,
      highest: [highestVelocity, 'm/s'],
    }),
    line('pipe-head', [pipe.head, 'm'], {
      reynolds: [pipe.reynolds, '1'],
      length,
      fittings: [loop.fittingLoss, '1'],
      fluid: [warm, '°C'],
    }),
    line('pipe-head-cold', [pipe.coldHead, 'm'], { fluid: [coldFluid, '°C'] }),
    line('pipe-loss-per-metre', [insulation.lossPerMetre, 'W/(m·K)'], {
      bridges: [loop.heatBridgeFactor, '1'],
      outer: [outer, 'mm'],
      tube,
      conductivity,
      thickness,
    }),
    line('pipe-loss', [insulation.loss, 'W'], {
      perMetre: [insulation.lossPerMetre, 'W/(m·K)'],
      length,
      fluid: [warm, '°C'],
      air: [air, '°C'],
    }),
    line('pipe-loss-share', [insulation.share, '-'], {
      loss: [insulation.loss, 'W'],
      eta0: [array.collector.eta0, '1'],
      area: [area, 'm²'],
    }),
    line('pipe-resistance', [insulation.resistance, 'm²·K/W'], {
      radius: [outer / 2, 'mm'],
      outer: [outer, 'mm'],
      tube,
      conductivity,
    }),
    line('pipe-outdoors', [outdoorInsulation.thickness, 'mm'], { tube, thickness }),
  ];
}
