/** Pressure of the closed loop: what its liquid leaves of the expansion vessel's gas. */
import { highest } from '../column.ts';
import { boilsAt, waterMoleFraction } from '../fluid/boiling.ts';
import { type CompiledFluid, fluidDensity, liquidMass } from '../fluid/compile.ts';
import { mixtureDensity } from '../fluid/mixture.ts';
import type { LoopPressure } from './pressure-state.ts';
import { letOut, pushBySteam } from './pressure-steam.ts';
import { type SteamLine, TRIPLE_POINT } from './steam.ts';
import { gaugeOfVessel, vesselContent } from './vessel.ts';

/** What {@link compilePressure} is given; pressures are gauge. */
interface PressureParts {
  /** Of the loop. */
  readonly fluid: CompiledFluid;
  /** Liquid in each collector node. [m³] */
  readonly collectorVolume: Float64Array;
  /** Liquid in each pipe section. [m³] */
  readonly pipeVolume: Float64Array;
  /** Liquid in the coil. [m³] */
  readonly coilVolume: number;
  /** V_N. [m³] */
  readonly vesselVolume: number;
  /** Pressure of the air around the loop. [Pa] */
  readonly airPressure: number;
  /** Pipe that steam enters. */
  readonly steamLine: SteamLine;
  /** Of the empty vessel's gas. [Pa] */
  readonly precharge: number;
  /** Of the liquid in the vessel. [°C] */
  readonly vesselTemperature: number;
  /** At the gauge, when filled. [Pa] */
  readonly fillPressure: number;
  /** At which it is filled. [°C] */
  readonly fillTemperature: number;
  /** At which the valve opens. [Pa] */
  readonly reliefPressure: number;
  /** Share of {@link reliefPressure} at which the valve shuts again. [-] */
  readonly reseatShare: number;
  /** Column of liquid between gauge and collectors, at the fill temperature's density. [Pa] */
  readonly staticPressure: number;
}

/** Puts a loop under its fill pressure. Checks nothing: the design is checked by `defineSystem`. */
export function compilePressure(parts: PressureParts): LoopPressure {
  const { fluid, collectorVolume, pipeVolume, coilVolume, vesselVolume, precharge, reliefPressure, airPressure } =
    parts;
  const total = (sum: number, volume: number) => sum + volume;
  const inLoop = collectorVolume.reduce(total, 0) + coilVolume + pipeVolume.reduce(total, 0);
  const fillVolume = inLoop + Math.max(0, vesselContent(vesselVolume, precharge, parts.fillPressure, airPressure));
  const mass = fillVolume * fluidDensity(fluid, parts.fillTemperature);
  const state: LoopPressure = {
    fluid,
    mass,
    glycol: mass * fluid.glycolMassFraction,
    gauge: parts.fillPressure,
    top: parts.fillPressure - parts.staticPressure,
    vapourPressure: 0,
    steam: 0,
    pipeSteam: 0,
    mostPipeSteam: 0,
    hasRelieved: false,
    vesselDensity: 0,
    waterShare: 1,
    collectorVolume,
    pipeVolume,
    coilVolume,
    vesselVolume,
    precharge,
    airPressure,
    steamLine: parts.steamLine,
    vesselTemperature: parts.vesselTemperature,
    staticPressure: parts.staticPressure,
    fillPressure: parts.fillPressure,
    reliefPressure,
    reliefStore: vesselContent(vesselVolume, precharge, reliefPressure, airPressure),
    reseatStore: vesselContent(vesselVolume, precharge, reliefPressure * parts.reseatShare, airPressure),
    fillVolume,
    fillTemperature: parts.fillTemperature,
    boiled: new Uint8Array(collectorVolume.length),
  };
  changeFluid(state, fluid);
  return state;
}

/** Works another mixture into the state, its mass unchanged. */
export function changeFluid(state: LoopPressure, fluid: CompiledFluid): void {
  state.fluid = fluid;
  state.vesselDensity = fluidDensity(fluid, state.vesselTemperature);
  state.waterShare = waterMoleFraction(fluid.fluid, fluid.glycolMassFraction);
}

/**
 * Finds the pressure at which loop and vessel hold all the liquid. Allocates nothing.
 *
 *     w = [M − Σ ρ(T_i) V_i]/ρ(T_v),   p = V_N (p_pre + p_air)/(V_N − w) − p_air
 *
 * M mass of liquid, T_i and V_i of collector nodes, pipe sections and coil, w what is left for the vessel. Where the fluid
 * stands, a collector node above its boiling point turns to steam and pushes its liquid into the vessel, hottest first, and with
 * it its share of the pipe that steam fills ({@link steamLength}), until the pressure has risen so far that the node just boils
 * (or all of it is steam): p_top = y p_sat(T). With the vessel empty (w < 0) the gas carries nothing, and the top of the loop
 * falls to a vacuum. Above the relief pressure the valve lets out liquid until it shuts, as often as the step takes it there
 * ({@link letOut}).
 *
 * Metal, stretch of the pipes, mass and heat of the steam are left out, and so is the pump's head.
 *
 * @param state - Changed in place.
 * @param absorber - Collector nodes. [°C]
 * @param pipe - Pipe sections. [°C]
 * @param coil - Fluid in the coil. [°C]
 * @param standing - Whether the fluid stands; steam forms only then.
 * @returns Liquid let out by the relief valve. [m³]
 * @see Gas law, isothermal; EN 12828's form of it (from memory). {@link fluidDensity}; IAPWS IF97 region 4, Raoult.
 */
export function settlePressure(
  state: LoopPressure,
  absorber: Float64Array,
  pipe: Float64Array,
  coil: number,
  standing: boolean,
): number {
  const { fluid } = state;
  const inLoop =
    state.coilVolume * fluidDensity(fluid, coil) +
    liquidMass(fluid, pipe, state.pipeVolume) +
    liquidMass(fluid, absorber, state.collectorVolume);
  let moved = (state.mass - inLoop) / state.vesselDensity;
  state.steam = 0;
  state.pipeSteam = 0;
  setPressure(state, moved - letOut(state, moved));
  if (standing && boilsAt(state.vapourPressure, highest(absorber))) {
    moved = pushBySteam(state, absorber, moved);
    setPressure(state, moved - letOut(state, moved));
    if (state.pipeSteam > state.mostPipeSteam) state.mostPipeSteam = state.pipeSteam;
  }
  const lost = letOut(state, moved);
  if (lost > 0) {
    takeOut(state, lost * state.vesselDensity);
    state.hasRelieved = true;
  }
  return lost;
}

/** Share of what was filled that stays in an emptied loop, so that it always holds some mixture; judgement. [-] */
const LAST_DREGS = 1e-3;

/** Removes liquid of the loop's mixture, at most nearly all of it. @param mass - [kg] @returns What left. [kg] */
export function takeOut(state: LoopPressure, mass: number): number {
  const lost = Math.min(mass, Math.max(state.mass - LAST_DREGS * state.fillVolume * state.vesselDensity, 0));
  state.glycol *= 1 - lost / state.mass;
  state.mass -= lost;
  return lost;
}

/** What is missing by less than this is rounding. [m³] */
const NOTHING = 1e-12;

/**
 * Make-up: as much water comes in as mixture leaks, x ρ = x_0 ρ_0 e^(−v/V), and once the loop has fallen below its fill pressure, at which the
 * filling valve opens, what else is missing of the volume that was filled.
 *
 * @param leaked - v, while the make-up holds the pressure. [m³]
 * @returns Water that came in. [m³]
 */
export function makeUpWith(state: LoopPressure, leaked: number): number {
  const { fillPressure, fillTemperature, fillVolume, gauge } = state;
  const kind = state.fluid.fluid;
  const held = state.mass / mixtureDensity(kind, state.glycol / state.mass, fillTemperature);
  const lacks = fillVolume - held > NOTHING;
  const isShut = lacks && gauge >= fillPressure;
  const missing = lacks && !isShut ? fillVolume - held : 0;
  if (missing > 0) state.hasRelieved = false;
  if (leaked + missing <= 0) return 0;
  state.glycol *= Math.exp(-leaked / held);
  const volume = isShut ? held : fillVolume;
  // Mass and share settle together: density moves by a thirtieth of what the share does.
  for (let round = 0; round < 6; round++)
    state.mass = volume * mixtureDensity(kind, state.glycol / state.mass, fillTemperature);
  return leaked + missing;
}

function setPressure(state: LoopPressure, stored: number): void {
  state.gauge =
    stored >= 0
      ? gaugeOfVessel(state.vesselVolume, state.precharge, stored, state.airPressure)
      : state.staticPressure - state.airPressure;
  state.top = state.gauge - state.staticPressure;
  state.vapourPressure = Math.max(state.top + state.airPressure, TRIPLE_POINT) / state.waterShare;
}
