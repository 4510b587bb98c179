/** The working of `sizeCoil`. */
import type { SystemDesign } from '../../design/design.ts';
import { line, type WorkingStep } from '../../input/working.ts';
import { arrayArea } from '../../physics/collector/groups.ts';
import type { CoilConductance } from '../../physics/loop/coil-conductance.ts';
import type { CoilSizing } from './sizings.ts';

/** What was asked and found, in SI. */
interface Found extends Omit<CoilSizing, 'steps' | 'differenceAsDesigned'> {
  readonly flow: number;
  readonly fluidTemperature: number;
  readonly difference: number;
  readonly fluxPerArea: number;
  readonly heat: number;
  readonly perMetre: CoilConductance;
  readonly capacityRate: number;
  readonly removalLoss: number;
}

/** Lines of the working. */
export function coilSteps({ array, coil }: SystemDesign, found: Found): WorkingStep[] {
  const { collectorShare, conductance, difference, effectiveness, fluidTemperature, fluxPerArea, length } = found;
  const { capacityRate, flow, heat, perMetre, removalLoss, surface } = found;
  const area = arrayArea(array);
  return [
    line('coil-heat', [heat, 'W'], { flux: [fluxPerArea, 'W/m²'], area: [area, 'm²'] }),
    line('coil-per-metre', [perMetre.conductance, 'W/(m·K)'], {
      inside: [perMetre.insideCoefficient, 'W/(m²·K)'],
      outside: [perMetre.outsideCoefficient, 'W/(m²·K)'],
      reynolds: [perMetre.reynolds, '1'],
      flow: [flow, 'm³/s'],
      fluid: [fluidTemperature, '°C'],
    }),
    line('coil-length', [length, 'm'], {
      heat: [heat, 'W'],
      conductance: [perMetre.conductance, 'W/(m·K)'],
      difference: [difference, 'K'],
    }),
    line('coil-surface', [surface, 'm²'], { diameter: [coil.outerDiameter, 'mm'], length: [length, 'm'] }),
    line('coil-surface-per-area', [surface / area, '-'], { surface: [surface, 'm²'], area: [area, 'm²'] }),
    line('coil-effectiveness', [effectiveness, '-'], {
      conductance: [conductance, 'W/K'],
      capacityRate: [capacityRate, 'W/K'],
    }),
    line('coil-collector-share', [collectorShare, '-'], {
      loss: [removalLoss, 'W/(m²·K)'],
      area: [area, 'm²'],
      capacityRate: [capacityRate, 'W/K'],
    }),
  ];
}
