import type { Tank } from './tank.ts';
import { drawThrough } from './transport.ts';

/** Fall of the top node below the opening temperature at which the relief valve shuts again; judgement. [K] */
const RELIEF_RESEAT = 5;

/** What the relief valve let out in a step. */
export interface Relieved {
  /** Water. [m³] */
  reliefVolume: number;
  /** Its heat above mains. [J] */
  reliefHeat: number;
  /** Heat above mains of what took its place: out of a tank before this one; 0 without one. [J] */
  followingHeat: number;
}

/**
 * Lets hot water out while the top is too hot: from the opening temperature until the top has fallen by 5 K, at most the whole
 * tank at once. The valve's capacity is far above what the sun brings, so the event takes no time here, and no water is ever hotter than
 * its setting: what a step brought beyond it has left as water of that temperature.
 *
 * @param relieved - Receives what left.
 * @param before - Tank from which water follows; by default it comes from the mains.
 * @returns Whether the valve opened.
 */
export function relieveTank(tank: Tank, mains: number, relieved: Relieved, before: Tank | null = null): boolean {
  const { nodeCapacity, nodeVolume, reliefTemperature, temperature } = tank;
  const top = temperature.length - 1;
  relieved.reliefVolume = 0;
  relieved.reliefHeat = 0;
  relieved.followingHeat = 0;
  if (temperature[top]! < reliefTemperature) return false;
  let beyond = 0;
  for (let node = top; node >= 0 && temperature[node]! > reliefTemperature; node--) {
    beyond += temperature[node]! - reliefTemperature;
    temperature[node] = reliefTemperature;
  }
  let nodes = 0;
  let fallen = beyond;
  while (nodes <= top && temperature[top]! > reliefTemperature - RELIEF_RESEAT) {
    const inlet = before === null ? mains : drawThrough(before.temperature, nodeVolume / before.nodeVolume, mains);
    relieved.followingHeat += nodeCapacity * (inlet - mains);
    fallen += drawThrough(temperature, 1, inlet) - mains;
    nodes++;
  }
  relieved.reliefVolume = nodeVolume * (nodes + beyond / Math.max(reliefTemperature - mains, RELIEF_RESEAT));
  relieved.reliefHeat = nodeCapacity * fallen;
  return true;
}
