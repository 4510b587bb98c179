import type { LoopDesign, SystemDesign } from '../../design/design.ts';
import { checkInput } from '../../input/check.ts';
import { DesignError } from '../../input/errors.ts';
import { quantity, quantityOr } from '../../input/field.ts';
import type { Quantity } from '../../input/quantity.ts';
import type { Saying } from '../../input/saying.ts';
import type { WorkingStep } from '../../input/working.ts';
import * as z from '../../input/zod.ts';
import { airPressureAt } from '../../physics/fluid/air-pressure.ts';
import { boilingPoint } from '../../physics/fluid/boiling.ts';
import { HIGHEST_TEMPERATURE } from '../../physics/fluid/compile.ts';
import { coilsOf } from '../../physics/loop/coils.ts';
import { gaugeOfVessel, prechargeFor, reserveIn, vesselSold } from '../../physics/loop/vessel.ts';
import { type SteamReach, steamReach, vesselFor, vesselNeed } from '../../physics/loop/vessel-need.ts';
import type { AdviceCode } from '../advice-codes.ts';
import { pressureCautions } from './pressure-advice.ts';
import { pressureSteps } from './pressure-working.ts';
import { RELIEFS } from './working.ts';

const optionsSchema = z.strictObject({
  topPressure: quantity('pressure', 0.1e5, 5e5).optional(),
  ratedPressure: quantity('pressure', 1e5, 3e6).optional(),
  maximumTemperature: quantity('temperature', 60, HIGHEST_TEMPERATURE).optional(),
  altitude: quantityOr('length', -500, 9000, 0, 'judgement: sea level'),
});

/** What {@link sizeLoopPressure} may be told; each has a default. */
export interface PressureSizingOptions {
  /** Gauge pressure at the top of the cold loop, 1e4 to 5e5. Default `loop.pressure` of the design. [Pa] */
  readonly topPressure?: Quantity;
  /**
   * Gauge pressure that the weakest part bears, 1e5 to 3e6: the relief valve is then the highest sold below it. Default: the
   * design's relief valve stands. [Pa]
   */
  readonly ratedPressure?: Quantity;
  /** Highest mean of the liquid, 60 to 140. Default `loop.fluidLimit` of the design. [°C] */
  readonly maximumTemperature?: Quantity;
  /** Site above sea level, −500 to 9000. Default 0. [m] */
  readonly altitude?: Quantity;
}

/** Pressures and vessel of a loop, and why. All gauge, at the vessel's height. */
export interface PressureSizing {
  /** Relief valve. [Pa] */
  readonly reliefPressure: number;
  /** Highest in normal service: below the relief valve by what it needs to stay shut. [Pa] */
  readonly endPressure: number;
  /** Of the vessel's gas, set before filling, vessel off the loop. [Pa] */
  readonly prechargePressure: number;
  /** Next vessel that is sold. [m³] */
  readonly vesselVolume: number;
  /** Liquid that this vessel holds when the loop is filled cold: its reserve. [m³] */
  readonly reserveVolume: number;
  /** Fill to this with the loop cold. [Pa] */
  readonly fillPressure: number;
  /** Liquid hot, no steam. [Pa] */
  readonly hotPressure: number;
  /** Liquid hot, collectors and the pipe that steam reaches full of it. [Pa] */
  readonly steamPressure: number;
  /** At which the fluid boils at the top of the loop with the pressure of a hot loop. [°C] */
  readonly boilingAtTop: number;
  /** How far steam gets, and what it pushes out. */
  readonly steam: SteamReach;
  /** The working. */
  readonly steps: readonly WorkingStep[];
  /** What can hurt someone. */
  readonly cautions: readonly Saying<AdviceCode>[];
}

/**
 * Relief setting, expansion vessel, pre-charge and fill pressure of a design's loop, by the rules of the design's own defaults: a
 * design that gives none of these has these very values.
 *
 *     fill:        p_fill = ρ g H + p_top
 *     gas:         V_gas = (V_e + V_steam)(p_end + p_air)/(p_end − p_fill)
 *     vessel:      the next size sold with V_gas and its reserve; V_reserve 20 % of a vessel of up to 15 L, else 3 L or more
 *     pre-charge:  p_pre = (p_fill + p_air)(1 − V_reserve/V_N) − p_air
 *
 * V_steam is the content of the collectors and of the pipe that steam reaches, see {@link steamReach}. Volumes, height and
 * fluid are the design's; its own vessel and pre-charge are not looked at.
 *
 * @param design - From `defineSystem`.
 * @param options - Pressure wanted at the top, rating of the weakest part, highest temperature, height of the site.
 * @throws {@link DesignError} listing all faults of the options at once, and where the height leaves no room below the relief
 *   valve.
 * @see EN 12828 (details from memory).
 */
export function sizeLoopPressure(design: SystemDesign, options: PressureSizingOptions = {}): PressureSizing {
  const { topPressure, ratedPressure, maximumTemperature, altitude } = checkInput(optionsSchema, options);
  const { coil, array, tank } = design;
  const coils = coilsOf(coil, tank.second);
  const air = airPressureAt(altitude);
  const pressure = topPressure ?? design.loop.pressure;
  const reliefPressure = ratedPressure === undefined ? design.loop.reliefPressure : highestRelief(ratedPressure);
  const asked = { ...design.loop, pressure, reliefPressure, fluidLimit: maximumTemperature ?? design.loop.fluidLimit };
  const need = vesselNeed(asked, coils, array, air);
  const fillPressure = need.column + pressure;
  const smallest = vesselFor(need, fillPressure, air);
  if (!Number.isFinite(smallest)) throw noRoom(fillPressure, need.endPressure);
  const vesselVolume = vesselSold(smallest);
  const reserveVolume = reserveIn(vesselVolume, need.systemVolume);
  const vesselPrecharge = prechargeFor(vesselVolume, fillPressure, need.systemVolume, air);
  const loop: LoopDesign = { ...asked, fillPressure, vesselVolume, vesselPrecharge };
  const steam = steamReach({ loop, coil, array, tank }, air);
  const hotPressure = gaugeOfVessel(vesselVolume, vesselPrecharge, reserveVolume + need.expansion, air);
  const boilingAtTop = boilingPoint(loop.fluid, loop.glycolMassFraction, hotPressure - need.column + air);
  const found = { need, air, smallest, reserveVolume, hotPressure, boilingAtTop };
  return {
    reliefPressure,
    endPressure: need.endPressure,
    prechargePressure: vesselPrecharge,
    vesselVolume,
    reserveVolume,
    fillPressure,
    hotPressure,
    steamPressure: steam.pressure,
    boilingAtTop,
    steam,
    steps: pressureSteps(loop, steam, ratedPressure, found),
    cautions: pressureCautions(steam),
  };
}

/** Highest relief valve sold that the weakest part bears; the part's own rating where none is that low. */
const highestRelief = (ratedPressure: number): number =>
  [...RELIEFS].reverse().find((setting) => setting <= ratedPressure) ?? ratedPressure;

const noRoom = (fillPressure: number, endPressure: number): DesignError =>
  new DesignError([
    {
      path: 'loop.reliefPressure',
      found: `a fill pressure of ${(fillPressure / 1e5).toFixed(2)} bar under an end pressure of ${(endPressure / 1e5).toFixed(2)} bar`,
      expected: 'an end pressure above the fill pressure',
      remedy: 'Choose a relief valve that opens later, less pressure at the top, or let the loop drain back.',
    },
  ]);
