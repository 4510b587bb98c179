/** Steam in collectors and pipes of a standing loop, and the liquid that it pushes into the vessel. */
import { saturationPressure } from '../fluid/boiling.ts';
import { fluidDensity } from '../fluid/compile.ts';
import type { LoopPressure } from './pressure-state.ts';
import { steamInPipe } from './steam.ts';
import { gaugeOfVessel, vesselContent } from './vessel.ts';

/** How near the steam in the pipes must come to what its pressure lets in. [-] */
const CLOSE = 1e-3;
const MOST_ROUNDS = 20;

/**
 * Liquid that has come to the vessel once the collectors boil, what the relief valve lets out of it included. The steam's way into the pipes
 * is the shorter, the higher the pressure that it makes itself: the volume that agrees with its own pressure is found by false position
 * (Illinois). Allocates nothing.
 *
 * @param state - Steam in collectors and pipes is written into it.
 * @param liquid - In the vessel before. [m³]
 * @returns [m³]
 */
export function pushBySteam(state: LoopPressure, absorber: Float64Array, liquid: number): number {
  const { steamLine } = state;
  let high = steamLine.bore * steamLine.length;
  let moved = fill(state, absorber, liquid, high);
  let over = high - allowed(state, moved);
  if (over <= 0) return moved;
  const close = CLOSE * high;
  let low = 0;
  let under = -allowed(state, fill(state, absorber, liquid, 0));
  if (under > -close) return fill(state, absorber, liquid, 0);
  for (let round = 0, side = 0; round < MOST_ROUNDS; round++) {
    const guess = (low * over - high * under) / (over - under);
    moved = fill(state, absorber, liquid, guess);
    const error = guess - allowed(state, moved);
    if (Math.abs(error) < close) return moved;
    if (error > 0) {
      high = guess;
      over = error;
      if (side > 0) under /= 2;
      side = 1;
    } else {
      low = guess;
      under = error;
      if (side < 0) over /= 2;
      side = -1;
    }
  }
  return moved;
}

/**
 * What the relief valve has let out once so much has come to the vessel. It opens at its setting and shuts when the same gulp is out, as often
 * as what comes takes the pressure there again: all of that may fall into one step.
 *
 * @param moved - Liquid in the vessel, had the valve stayed shut. [m³]
 * @returns [m³]
 */
export function letOut({ reliefStore, reseatStore }: LoopPressure, moved: number): number {
  if (moved <= reliefStore) return 0;
  const gulp = reliefStore - reseatStore;
  return Math.ceil((moved - reliefStore) / gulp) * gulp;
}

/** Content of the pipe that steam fills at the pressure that it makes, at most that at which the relief valve opens. [m³] */
function allowed(state: LoopPressure, moved: number): number {
  const stored = Math.min(Math.max(moved, 0), state.reliefStore);
  const gauge = gaugeOfVessel(state.vesselVolume, state.precharge, stored, state.airPressure);
  return steamInPipe(state.steamLine, gauge - state.staticPressure + state.airPressure);
}

/**
 * Turns nodes to steam, hottest first, each with its share of what steam takes of the pipe. One that boils at the relief valve's setting too
 * gives all its liquid: the valve holds the pressure down.
 *
 * @returns Liquid that has come to the vessel. [m³]
 */
function fill(state: LoopPressure, absorber: Float64Array, liquid: number, inPipe: number): number {
  const { airPressure, boiled, collectorVolume, precharge, reliefPressure, vesselVolume } = state;
  const share = inPipe / absorber.length;
  boiled.fill(0);
  state.steam = 0;
  state.pipeSteam = 0;
  let moved = liquid;
  for (let done = 0; done < absorber.length; done++) {
    let hottest = -1;
    for (let node = 0; node < absorber.length; node++) {
      if (boiled[node] === 0 && (hottest < 0 || absorber[node]! > absorber[hottest]!)) hottest = node;
    }
    boiled[hottest] = 1;
    const nodeVolume = collectorVolume[hottest]!;
    const temperature = absorber[hottest]!;
    const gauge = state.waterShare * saturationPressure(temperature) - airPressure + state.staticPressure;
    const room =
      gauge < reliefPressure
        ? vesselContent(vesselVolume, precharge, gauge, airPressure) - moved + letOut(state, moved)
        : Number.POSITIVE_INFINITY;
    if (room <= 0) break;
    const content = (nodeVolume * fluidDensity(state.fluid, temperature)) / state.vesselDensity + share;
    const pushed = Math.min(content, room);
    moved += pushed;
    state.steam += (pushed / content) * nodeVolume;
    state.pipeSteam += (pushed / content) * share;
  }
  return moved;
}
