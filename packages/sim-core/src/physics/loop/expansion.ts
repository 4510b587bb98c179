import type { LoopFluid } from '../../design/design.ts';
import { DesignError, requireNumber } from '../../input/errors.ts';
import { line as step, type WorkingStep } from '../../input/working.ts';
import { fluidDensity } from '../fluid/compile.ts';
import { checkedFluid } from '../fluid/properties.ts';
import { endPressure, prechargePressure, reserveRule, SMALL_VESSEL } from './expansion-rules.ts';

/** Air pressure of EN 12828's formula. [Pa] */
const ATMOSPHERE = 1e5;

/** What {@link sizeExpansionVessel} is asked. Pressures are gauge. */
export interface ExpansionInput {
  /** Fluid of the loop. */
  readonly fluid: LoopFluid;
  /** Glycol by mass, 0 to 0.6; 0 (the default) for water. [-] */
  readonly glycolMassFraction?: number;
  /** All the liquid in the loop. [m³] */
  readonly systemVolume: number;
  /** At which the loop is filled, 10 by default. [°C] */
  readonly fillTemperature?: number;
  /** Highest mean temperature of the liquid. [°C] */
  readonly maximumTemperature: number;
  /** Liquid that steam may push out: collectors and what pipe the steam reaches; 0 by default. [m³] */
  readonly steamVolume?: number;
  /** Water reserve; by default EN 12828's. [m³] */
  readonly reserveVolume?: number;
  /** Of the empty vessel's gas; by default from {@link staticHeight}. [Pa] */
  readonly prechargePressure?: number;
  /** Highest point of the loop above the vessel; needed where no pre-charge is given. [m] */
  readonly staticHeight?: number;
  /** Highest in normal service; by default from {@link reliefPressure}. [Pa] */
  readonly endPressure?: number;
  /** At which the relief valve opens; needed where no end pressure is given. [Pa] */
  readonly reliefPressure?: number;
  /** A vessel at hand, whose pressures are wanted; by default the smallest that does. [m³] */
  readonly vesselVolume?: number;
}

/** A sized vessel. Pressures are gauge. */
export interface ExpansionVessel {
  /** e = ρ(fill)/ρ(hot) − 1. [-] */
  readonly expansionCoefficient: number;
  /** e × system volume. [m³] */
  readonly expansionVolume: number;
  /** Water reserve. [m³] */
  readonly reserveVolume: number;
  /** [Pa] */
  readonly prechargePressure: number;
  /** [Pa] */
  readonly endPressure: number;
  /** Smallest vessel that keeps the end pressure. [m³] */
  readonly minimumVolume: number;
  /** Vessel that the pressures below belong to. [m³] */
  readonly vesselVolume: number;
  /** To fill to, at the fill temperature. [Pa] */
  readonly fillPressure: number;
  /** Liquid hot, no steam. [Pa] */
  readonly hotPressure: number;
  /** Liquid hot and the steam volume pushed out. [Pa] */
  readonly steamPressure: number;
  /** The working, line by line. */
  readonly steps: readonly WorkingStep[];
}

/** An expansion vessel. */
export interface Vessel {
  /** V_N. [m³] */
  readonly volume: number;
  /** p_pre, gauge. [Pa] */
  readonly prechargePressure: number;
}

/**
 * Gauge pressure of a vessel with liquid in it, p = V_N (p_pre + 1 bar)/(V_N − w) − 1 bar (gas law, isothermal).
 *
 * @param vessel - Volume and pre-charge.
 * @param stored - Liquid in it, w, less than V_N. [m³]
 * @throws {@link DesignError} when the liquid does not fit.
 */
export function vesselPressure(vessel: Vessel, stored: number): number {
  requireNumber('vessel.volume', vessel.volume, 1e-6, 1e3, 'm³');
  requireNumber('vessel.prechargePressure', vessel.prechargePressure, 0, 1e7, 'Pa');
  requireNumber('stored', stored, 0, vessel.volume * (1 - 1e-9), 'm³ (less than the vessel holds)');
  return (vessel.volume * (vessel.prechargePressure + ATMOSPHERE)) / (vessel.volume - stored) - ATMOSPHERE;
}

/**
 * Size of a membrane expansion vessel, with its working.
 *
 *     e = ρ(T_fill)/ρ(T_max) − 1,   V_e = e V_system
 *     V_N ≥ (V_e + V_steam + V_reserve) (p_end + 1 bar)/(p_end − p_pre)
 *
 * @throws {@link DesignError} for a value out of range, and where the end pressure is not above the pre-charge.
 * @see EN 12828 (its details from memory); gas law; densities of {@link fluidProperties}.
 */
export function sizeExpansionVessel(input: ExpansionInput): ExpansionVessel {
  const { fluid, glycolMassFraction = 0, systemVolume, maximumTemperature } = input;
  const { fillTemperature = 10, steamVolume = 0, vesselVolume: chosen } = input;
  const c = checkedFluid(fluid, glycolMassFraction);
  requireNumber('systemVolume', systemVolume, 1e-5, 1e3, 'm³');
  requireNumber('fillTemperature', fillTemperature, c.lowest, c.highest, '°C (liquid)');
  requireNumber('maximumTemperature', maximumTemperature, fillTemperature, c.highest, '°C');
  requireNumber('steamVolume', steamVolume, 0, systemVolume, 'm³');
  const rhoFill = fluidDensity(c, fillTemperature);
  const rhoHot = fluidDensity(c, maximumTemperature);
  const precharge = prechargePressure(input, rhoFill);
  const end = endPressure(input);
  if (!(end > precharge)) throw pressureError(end, precharge);

  const e = rhoFill / rhoHot - 1;
  const expansionVolume = e * systemVolume;
  const factor = (end + ATMOSPHERE) / (end - precharge);
  const moved = expansionVolume + steamVolume;
  const reserve = reserveRule(input.reserveVolume, systemVolume, moved, factor);
  const minimumVolume = (moved + reserve) * factor;
  const vesselVolume = chosen ?? minimumVolume;
  const vessel = { volume: vesselVolume, prechargePressure: precharge };
  const fillPressure = vesselPressure(vessel, reserve);
  const hotPressure = vesselPressure(vessel, reserve + expansionVolume);
  const steamPressure = vesselPressure(vessel, reserve + moved);

  const extrapolated = maximumTemperature > c.validTo ? `; extrapolated above ${c.validTo} °C` : '';
  const standard = 'EN 12828, from memory';
  const steps: WorkingStep[] = [
    step(
      'expansion coefficient',
      'e = ρ(T_fill)/ρ(T_max) − 1',
      `${rhoFill.toFixed(2)}/${rhoHot.toFixed(2)} − 1`,
      e,
      '',
      `${fluid === 'water' ? 'IAPWS SR6-08' : 'Melinder 2010'}${extrapolated}`,
    ),
    step(
      'expansion volume',
      'V_e = e V_system',
      `${e.toFixed(5)} × ${litres(systemVolume)}`,
      expansionVolume,
      'm³',
      standard,
    ),
    step(
      'water reserve',
      input.reserveVolume === undefined
        ? minimumVolume <= SMALL_VESSEL
          ? '20 % of V_N (vessels up to 15 L)'
          : '0.5 % of V_system, at least 3 L'
        : 'given',
      litres(reserve),
      reserve,
      'm³',
      standard,
    ),
    step(
      'smallest vessel',
      'V_N = (V_e + V_steam + V_reserve) (p_end + 1 bar)/(p_end − p_pre)',
      `(${litres(expansionVolume)} + ${litres(steamVolume)} + ${litres(reserve)}) × ${bar(end + ATMOSPHERE)}/(${bar(end)} − ${bar(precharge)})`,
      minimumVolume,
      'm³',
      `${standard}; steam volume: common practice`,
    ),
    step(
      'fill pressure',
      'p = V_N (p_pre + 1 bar)/(V_N − V_reserve) − 1 bar',
      `${litres(vesselVolume)} × ${bar(precharge + ATMOSPHERE)}/(${litres(vesselVolume)} − ${litres(reserve)}) − 1 bar`,
      fillPressure,
      'Pa',
      'gas law, isothermal',
    ),
  ];
  return {
    expansionCoefficient: e,
    expansionVolume,
    reserveVolume: reserve,
    prechargePressure: precharge,
    endPressure: end,
    minimumVolume,
    vesselVolume,
    fillPressure,
    hotPressure,
    steamPressure,
    steps,
  };
}

const litres = (volume: number): string => `${(volume * 1000).toFixed(2)} L`;
const bar = (pressure: number): string => `${(pressure / 1e5).toFixed(2)} bar`;

const pressureError = (end: number, precharge: number): DesignError =>
  new DesignError([
    {
      path: 'endPressure',
      found: `${bar(end)} with a pre-charge of ${bar(precharge)}`,
      expected: 'an end pressure above the pre-charge',
      remedy: 'Choose a relief valve that opens later, or less static height.',
    },
  ]);
