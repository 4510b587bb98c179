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

const STANDARD = 'EN 12828, from memory';

const litres = (volume: number): string => `${(volume * 1000).toFixed(2)} L`;

/** A pressure in a working. */
export const inBar = (pressure: number): string => `${(pressure / 1e5).toFixed(2)} bar`;

/** Expansion, reserve, vessel, fill pressure. */
export function expansionSteps(
  { fluid, maximumTemperature, reserveVolume, systemVolume }: ExpansionInput,
  { validTo }: CompiledFluid,
  q: ExpansionQuantities,
): WorkingStep[] {
  const extrapolated = maximumTemperature > validTo ? `; extrapolated above ${validTo} °C` : '';
  const rule = q.minimumVolume <= SMALL_VESSEL ? '20 % of V_N (vessels up to 15 L)' : '0.5 % of V_system, at least 3 L';
  return [
    line(
      'expansion coefficient',
      'e = ρ(T_fill)/ρ(T_max) − 1',
      `${q.rhoFill.toFixed(2)}/${q.rhoHot.toFixed(2)} − 1`,
      [q.e, ''],
      `${fluid === 'water' ? 'IAPWS SR6-08' : 'Melinder 2010'}${extrapolated}`,
    ),
    line(
      'expansion volume',
      'V_e = e V_system',
      `${q.e.toFixed(5)} × ${litres(systemVolume)}`,
      [q.expansionVolume, 'm³'],
      STANDARD,
    ),
    line('water reserve', reserveVolume === undefined ? rule : 'given', litres(q.reserve), [q.reserve, 'm³'], STANDARD),
    line(
      'smallest vessel',
      'V_N = (V_e + V_steam + V_reserve) (p_end + p_air)/(p_end − p_pre)',
      `(${litres(q.expansionVolume)} + ${litres(q.steamVolume)} + ${litres(q.reserve)}) × ${inBar(q.end + q.air)}/(${inBar(q.end)} − ${inBar(q.precharge)})`,
      [q.minimumVolume, 'm³'],
      `${STANDARD}; steam volume: common practice`,
    ),
    line(
      'fill pressure',
      'p = V_N (p_pre + p_air)/(V_N − V_reserve) − p_air',
      `${litres(q.vesselVolume)} × ${inBar(q.precharge + q.air)}/(${litres(q.vesselVolume)} − ${litres(q.reserve)}) − ${inBar(q.air)}`,
      [q.fillPressure, 'Pa'],
      'gas law, isothermal',
    ),
  ];
}
