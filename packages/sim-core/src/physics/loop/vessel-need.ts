/** The vessel that a loop's expansion and steam ask for. Pressures are gauge. */
import type { ArrayDesign, CoilDesign, LoopDesign, SystemDesign } from '../../design/design.ts';
import { arrayArea } from '../collector/groups.ts';
import { compileFluid, fluidDensity, HIGHEST_TEMPERATURE } from '../fluid/compile.ts';
import { coilsOf } from './coils.ts';
import { endPressureFor } from './expansion-rules.ts';
import { loopVolumes } from './loop-volumes.ts';
import { GRAVITY } from './pump.ts';
import { steamInPipe, steamLength, steamLine, steamLossPerMetre, steamTemperature } from './steam.ts';
import { gasNeeded, gaugeOfVessel, smallestVessel, vesselContent, vesselSold } from './vessel.ts';

/** A loop whose vessel is not chosen yet. */
type LoopWithoutVessel = Omit<LoopDesign, 'vesselPrecharge' | 'vesselVolume'>;

/** What a loop pushes into its vessel when it stands in the sun. */
export interface VesselNeed {
  /** Liquid of collectors, pipe and coil. [m³] */
  readonly systemVolume: number;
  /** Growth of that liquid from the fill temperature to {@link LoopDesign.fluidLimit}. [m³] */
  readonly expansion: number;
  /** Liquid that steam pushes out of collectors and pipe. [m³] */
  readonly steam: number;
  /** Highest pressure in normal service: the relief valve's, less half a bar, above 5 bar less a tenth. [Pa] */
  readonly endPressure: number;
  /** Column of liquid between gauge and collectors. [Pa] */
  readonly column: number;
  /** Of the steam at the end pressure. [°C] */
  readonly steamTemperature: number;
  /** Length of pipe, there and back, that the steam would fill; longer than the pipe where it gets to the pump. [m] */
  readonly steamLength: number;
  /** Power of the steam that arrives at pump and vessel. [W] */
  readonly powerLeft: number;
}

/** @param air - Pressure of the air. [Pa] */
export function vesselNeed(
  loop: LoopWithoutVessel,
  coils: readonly CoilDesign[],
  array: ArrayDesign,
  air: number,
): VesselNeed {
  const { collectors, whole } = loopVolumes(loop, coils, array);
  const fluid = compileFluid(loop.fluid, loop.glycolMassFraction);
  const hottest = Math.min(Math.max(loop.fluidLimit, loop.fillTemperature), HIGHEST_TEMPERATURE);
  const density = fluidDensity(fluid, loop.fillTemperature);
  const column = density * GRAVITY * loop.staticHeight;
  const endPressure = endPressureFor(loop.reliefPressure);
  const line = steamLine(loop, array);
  const top = endPressure - column + air;
  return {
    systemVolume: whole,
    expansion: (density / fluidDensity(fluid, hottest) - 1) * whole,
    steam: collectors + steamInPipe(line, top),
    endPressure,
    column,
    steamTemperature: steamTemperature(top),
    steamLength: steamLength(line, top),
    powerLeft: Math.max(0, line.power - line.length * steamLossPerMetre(line, top)),
  };
}

/** Smallest vessel for that need with the reserve of its size; infinite where the fill pressure leaves no room. [m³] */
export function vesselFor(need: VesselNeed, fillPressure: number, air: number): number {
  if (need.endPressure <= fillPressure) return Number.POSITIVE_INFINITY;
  return smallestVessel(gasNeeded(need.expansion + need.steam, fillPressure, need.endPressure, air), need.systemVolume);
}

/** Whether a loop's vessel takes what the standing loop pushes into it, and how far steam gets. */
export interface SteamReach {
  /** Length of pipe, there and back, that steam fills at the end pressure before it has condensed. [m] */
  readonly length: number;
  /** The loop's pipe, there and back: from there on steam is at pump and vessel. [m] */
  readonly pipeLength: number;
  /** Of the steam. [°C] */
  readonly temperature: number;
  /** Heat of the steam that leaves the collectors. [W] */
  readonly power: number;
  /** What of it arrives at pump and vessel; a cooling vessel before the expansion vessel must take it. [W] */
  readonly powerLeft: number;
  /** Liquid that steam pushes out of collectors and pipe. [m³] */
  readonly volume: number;
  /** Growth of the liquid from the fill temperature to the fluid's limit. [m³] */
  readonly expansion: number;
  /** The design's vessel. [m³] */
  readonly vessel: number;
  /** Smallest vessel that stays at the end pressure, its reserve included. [m³] */
  readonly vesselNeeded: number;
  /** Next vessel that is sold. [m³] */
  readonly vesselSold: number;
  /** Gauge pressure with expansion and steam in the design's vessel; infinite where they do not fit. [Pa gauge] */
  readonly pressure: number;
  /** Highest in normal service. [Pa gauge] */
  readonly endPressure: number;
}

/**
 * How far the steam of a standing array gets, and whether the design's vessel takes what it pushes out.
 *
 *     L = P A/[U' (T_s − 30 °C)],   p = V_N (p_pre + p_air)/(V_N − V_cold − V_e − V_steam) − p_air
 *
 * P is `loop.steamPower`, T_s water's boiling point at the end pressure, less the column up to the collectors. V_steam is the
 * content of the collectors and of L metres of pipe.
 *
 * @param design - Loop, coils and array of a design.
 * @param air - Pressure of the air, see `airPressureAt`. [Pa]
 * @see Steam power: IEA SHC Task 26, Hausner & Fink, from memory. EN 12828, from memory.
 */
export function steamReach(
  design: Pick<SystemDesign, 'array' | 'coil' | 'loop'> & Partial<Pick<SystemDesign, 'tank'>>,
  air: number,
): SteamReach {
  const { loop, coil, array, tank } = design;
  const need = vesselNeed(loop, coilsOf(coil, tank?.second ?? null), array, air);
  const { vesselVolume: vessel, vesselPrecharge: precharge, fillPressure } = loop;
  const cold = Math.max(0, vesselContent(vessel, precharge, fillPressure, air));
  const stored = cold + need.expansion + need.steam;
  const needed = vesselFor(need, fillPressure, air);
  return {
    length: need.steamLength,
    pipeLength: loop.pipeLength,
    temperature: need.steamTemperature,
    power: loop.steamPower * arrayArea(array),
    powerLeft: need.powerLeft,
    volume: need.steam,
    expansion: need.expansion,
    vessel,
    vesselNeeded: needed,
    vesselSold: vesselSold(needed),
    pressure: stored < vessel ? gaugeOfVessel(vessel, precharge, stored, air) : Number.POSITIVE_INFINITY,
    endPressure: need.endPressure,
  };
}
