import { DesignError, requireNumber, show } from '../../input/errors.ts';
import type { WorkingStep } from '../../input/working.ts';
import { fluidDensity } from '../fluid/compile.ts';
import { checkedFluid } from '../fluid/properties.ts';
import { type ExpansionInput, endPressure, prechargePressure, reserveRule } from './expansion-rules.ts';
import { expansionSteps } from './expansion-working.ts';
import { EN_12828_AIR, gaugeOfVessel } from './vessel.ts';

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
 * Gauge pressure of a vessel with liquid in it, p = V_N (p_pre + p_air)/(V_N − w) − p_air (gas law, isothermal).
 *
 * @param vessel - Volume and pre-charge.
 * @param stored - Liquid in it, w, less than V_N. [m³]
 * @param air - Pressure of the air; by default EN 12828's 1 bar. [Pa]
 * @throws {@link DesignError} when the liquid does not fit.
 */
export function vesselPressure(vessel: Vessel, stored: number, air: number = EN_12828_AIR): number {
  requireNumber('vessel.volume', vessel.volume, 1e-6, 1e3, 'm³');
  requireNumber('vessel.prechargePressure', vessel.prechargePressure, 0, 1e7, 'Pa');
  requireNumber('stored', stored, 0, vessel.volume * (1 - 1e-9), 'm³ (less than the vessel holds)');
  requireNumber('air', air, 1e3, 2e5, 'Pa');
  return gaugeOfVessel(vessel.volume, vessel.prechargePressure, stored, air);
}

/**
 * Size of a membrane expansion vessel, with its working.
 *
 *     e = ρ(T_fill)/ρ(T_max) − 1,   V_e = e V_system
 *     V_N ≥ (V_e + V_steam + V_reserve) (p_end + p_air)/(p_end − p_pre)
 *
 * @throws {@link DesignError} for a value out of range, and where the end pressure is not above the pre-charge.
 * @see EN 12828 (its details from memory); gas law; densities of `fluidProperties`.
 */
export function sizeExpansionVessel(input: ExpansionInput): ExpansionVessel {
  const { fluid, glycolMassFraction = 0, systemVolume, maximumTemperature } = input;
  const { fillTemperature = 10, steamVolume = 0, vesselVolume: chosen, airPressure: air = EN_12828_AIR } = input;
  const c = checkedFluid(fluid, glycolMassFraction);
  requireNumber('systemVolume', systemVolume, 1e-5, 1e3, 'm³');
  requireNumber('fillTemperature', fillTemperature, c.lowest, c.highest, '°C (liquid)');
  requireNumber('maximumTemperature', maximumTemperature, fillTemperature, c.highest, '°C');
  requireNumber('steamVolume', steamVolume, 0, systemVolume, 'm³');
  requireNumber('airPressure', air, 1e3, 2e5, 'Pa');
  const rhoFill = fluidDensity(c, fillTemperature);
  const rhoHot = fluidDensity(c, maximumTemperature);
  const precharge = prechargePressure(input, rhoFill);
  const end = endPressure(input);
  if (!(end > precharge)) throw pressureError(end, precharge);

  const e = rhoFill / rhoHot - 1;
  const expansionVolume = e * systemVolume;
  const factor = (end + air) / (end - precharge);
  const moved = expansionVolume + steamVolume;
  const reserve = reserveRule(input.reserveVolume, systemVolume, moved, factor);
  const minimumVolume = (moved + reserve) * factor;
  const vesselVolume = chosen ?? minimumVolume;
  const filled = (reserve + moved) * (1 + 1e-8);
  requireNumber('vesselVolume', vesselVolume, filled, 1e3, 'm³ (more than reserve, expansion and steam fill)');
  const vessel = { volume: vesselVolume, prechargePressure: precharge };
  const fillPressure = vesselPressure(vessel, reserve, air);
  const hotPressure = vesselPressure(vessel, reserve + expansionVolume, air);
  const steamPressure = vesselPressure(vessel, reserve + moved, air);

  const volumes = { expansionVolume, steamVolume, reserve, minimumVolume, vesselVolume };
  const steps = expansionSteps(input, c, { rhoFill, rhoHot, e, precharge, end, fillPressure, air, ...volumes });
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

const pressureError = (end: number, precharge: number): DesignError =>
  new DesignError([
    {
      path: 'endPressure',
      found: `${show(end)} Pa with a pre-charge of ${show(precharge)} Pa`,
      expected: 'an end pressure above the pre-charge',
      remedy: 'Choose a relief valve that opens later, or less static height.',
    },
  ]);
