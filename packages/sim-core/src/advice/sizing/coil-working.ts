/** The working of `sizeCoil`. */
import type { SystemDesign } from '../../design/design.ts';
import { line, show, type WorkingStep } from '../../input/working.ts';
import type { CoilConductance } from '../../physics/loop/coil-conductance.ts';
import type { CoilSizing } from './sizings.ts';
import { L_PER_MIN, PRACTICE } from './working.ts';

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
  const area = array.panels * array.collector.area;
  return [
    line('heat in full sun', 'P = q A', `${show(fluxPerArea)} W/m² × ${show(area)} m²`, [heat, 'W'], PRACTICE),
    line(
      'conductance of a metre',
      '1/UA = 1/(h_i A_i) + wall + scale + 1/(h_o A_o)',
      `h_i ${show(perMetre.insideCoefficient, 3)}, h_o ${show(perMetre.outsideCoefficient, 3)} W/(m²·K), Re ${show(perMetre.reynolds, 3)}, ${show(flow * L_PER_MIN, 3)} L/min at ${show(fluidTemperature)} °C`,
      [perMetre.conductance, 'W/(m·K)'],
      'VDI heat atlas inside, Churchill & Chu 1975 outside',
    ),
    line(
      'length',
      'L = P/(UA/m × Δt)',
      `${show(heat)}/(${show(perMetre.conductance)} × ${show(difference)})`,
      [length, 'm'],
      `Δt 8 to 12 K: ${PRACTICE}`,
    ),
    line(
      'outside surface',
      'π d_o L',
      `π × ${show(coil.outerDiameter)} × ${show(length)}`,
      [surface, 'm²'],
      'geometry',
    ),
    line(
      'surface for each m² of collector',
      'A_coil/A',
      `${show(surface)}/${show(area)}`,
      [surface / area, '-'],
      `0.15 to 0.3 for smooth tube: ${PRACTICE}`,
    ),
    line(
      'effectiveness',
      'ε = 1 − e^(−UA/(ρ c_p V̇))',
      `1 − e^(−${show(conductance)}/${show(capacityRate)})`,
      [effectiveness, '-'],
      'tank of one temperature around the coil',
    ),
    line(
      'what it leaves of the collectors’ heat',
      '1/[1 + (A F_R U_L/(ṁ c_p))(1/ε − 1)]',
      `F_R U_L ${show(removalLoss)}, A ${show(area)}, ṁ c_p ${show(capacityRate)}`,
      [collectorShare, '-'],
      'de Winter 1975',
    ),
  ];
}
