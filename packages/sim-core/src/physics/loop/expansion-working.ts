/** The working of an expansion vessel, line by line. */
import { line, type WorkingStep } from '../../input/working.ts';
import type { CompiledFluid } from '../fluid/compile.ts';
import type { ExpansionInput } from './expansion-rules.ts';
import { SMALL_VESSEL } from './vessel.ts';

/** What the lines show; pressures are gauge. */
interface ExpansionQuantities {
  readonly rhoFill: number;
  readonly rhoHot: number;
  readonly e: number;
  readonly precharge: number;
  readonly end: number;
  readonly fillPressure: number;
  readonly air: number;
  readonly expansionVolume: number;
  readonly steamVolume: number;
  readonly reserve: number;
  readonly minimumVolume: number;
  readonly vesselVolume: number;
}

/** Expansion, reserve, vessel, fill pressure. */
export function expansionSteps(
  { fluid, maximumTemperature, reserveVolume, systemVolume }: ExpansionInput,
  { validTo }: CompiledFluid,
  q: ExpansionQuantities,
): WorkingStep[] {
  const rule = q.minimumVolume <= SMALL_VESSEL ? 'vessel-reserve-small' : 'vessel-reserve';
  const expansion = [q.expansionVolume, 'm³'] as const;
  const reserve = [q.reserve, 'm³'] as const;
  return [
    line(maximumTemperature > validTo ? 'vessel-coefficient-beyond' : 'vessel-coefficient', [q.e, '-'], {
      fillDensity: [q.rhoFill, 'kg/m³'],
      hotDensity: [q.rhoHot, 'kg/m³'],
      validTo: [validTo, '°C'],
      fluid,
    }),
    line('vessel-expansion', expansion, { coefficient: [q.e, '1'], volume: [systemVolume, 'm³'] }),
    line(reserveVolume === undefined ? rule : 'vessel-reserve-given', reserve),
    line('vessel-smallest', [q.minimumVolume, 'm³'], {
      expansion,
      steam: [q.steamVolume, 'm³'],
      reserve,
      endAbsolute: [q.end + q.air, 'Pa'],
      end: [q.end, 'Pa'],
      precharge: [q.precharge, 'Pa'],
    }),
    line('vessel-fill', [q.fillPressure, 'Pa'], {
      vessel: [q.vesselVolume, 'm³'],
      precharge: [q.precharge + q.air, 'Pa'],
      reserve,
      air: [q.air, 'Pa'],
    }),
  ];
}
