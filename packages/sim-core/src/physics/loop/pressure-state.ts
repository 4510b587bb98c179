/** What a loop under pressure holds from one step to the next. */
import type { CompiledFluid } from '../fluid/compile.ts';
import type { SteamLine } from './steam.ts';

/** A loop under pressure: its state and what does not depend on it. Pressures are gauge. */
export interface LoopPressure {
  /** Of the loop; another one when it has thinned. */
  fluid: CompiledFluid;
  /** All the liquid in loop and vessel. [kg] */
  mass: number;
  /** Glycol in it. [kg] */
  glycol: number;
  /** At the gauge: vessel, pump and relief valve stand at one height. [Pa] */
  gauge: number;
  /** At the collectors. [Pa] */
  top: number;
  /** Of the saturated steam that could stand in the collectors; the boiling point by it. [Pa] */
  vapourPressure: number;
  /** In the collectors. [m³] */
  steam: number;
  /** In the pipes. [m³] */
  pipeSteam: number;
  /** Most of it since the loop was filled. [m³] */
  mostPipeSteam: number;
  /** Whether the relief valve has let out what nothing has replaced. */
  hasRelieved: boolean;
  /** Density in the vessel. [kg/m³] */
  vesselDensity: number;
  /** Mole fraction of water. [-] */
  waterShare: number;
  /** Of each collector node. [m³] */
  readonly collectorVolume: Float64Array;
  readonly pipeVolume: Float64Array;
  readonly coilVolume: number;
  readonly vesselVolume: number;
  readonly precharge: number;
  readonly airPressure: number;
  readonly steamLine: SteamLine;
  readonly vesselTemperature: number;
  readonly staticPressure: number;
  readonly fillPressure: number;
  readonly reliefPressure: number;
  /** Liquid in the vessel at which the relief valve opens. [m³] */
  readonly reliefStore: number;
  /** Liquid in the vessel at which it shuts. [m³] */
  readonly reseatStore: number;
  /** Liquid in loop and vessel as filled. [m³] */
  readonly fillVolume: number;
  readonly fillTemperature: number;
  /** Scratch: collector nodes that are done. */
  readonly boiled: Uint8Array;
}
