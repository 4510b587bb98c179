/** Conductance of the coil in the tank: inside film, wall, scale and outside film in series. */

import type { CoilDesign } from '../../design/design.ts';
import {
  type CompiledFluid,
  compileFluid,
  fluidConductivity,
  fluidDensity,
  fluidSpecificHeat,
  fluidViscosity,
} from '../fluid/compile.ts';
import { waterExpansion } from '../fluid/water.ts';
import { type CompiledCoilFilm, CYLINDER_REST, coilNusselt, compileCoilFilm, cylinderFactor } from './film.ts';
import { GRAVITY } from './pump.ts';

/** Tables have one row a kelvin or less; linear between rows, they differ by less than 0.1 % from the formulas. */
const ROWS = 180;

/**
 * Water expands ever less towards 4 °C, where the drive of natural convection changes sign; below this temperature its
 * expansion is held (judgement: a coil seldom works in water so cold). [°C]
 */
const LOWEST_EXPANSION = 8;

/** Tank water in the outside film. [°C] */
const WATER_LOWEST = 0;
const WATER_HIGHEST = 140;
const WATER_ROWS_PER_KELVIN = ROWS / (WATER_HIGHEST - WATER_LOWEST);

/** Made by {@link compileCoil}. */
export interface CompiledCoil {
  /** Curvature, worked in. */
  readonly film: CompiledCoilFilm;
  /** Scale and wall. [K/W] */
  readonly wallResistance: number;
  /** Outside film times its area in water of 40 °C with the surface 5 K warmer, from which the surface temperature is sought. [W/K] */
  readonly typicalOutside: number;
  /** First row of {@link inside}. [°C] */
  readonly lowest: number;
  /** Rows of {@link inside} per kelvin. [1/K] */
  readonly rowsPerKelvin: number;
  /** Re per flow [s/m³], Pr^(1/3) [-] and conductivity × π × length [W/K] of the loop's fluid. Shape [rows + 1, 3]. */
  readonly inside: Float64Array;
  /** Factor of (surface − water)^(1/6) [K^−1/6] and conductivity × π × length [W/K] of the tank's water. Shape [rows + 1, 2]. */
  readonly outside: Float64Array;
}

/**
 * Works a coil and the loop's fluid into tables, once a run. Checks nothing: the design is checked by `defineSystem`.
 *
 * @param coil - Tube, wall and scale.
 * @param fluid - In the tube.
 */
export function compileCoil(coil: CoilDesign, fluid: CompiledFluid): CompiledCoil {
  const { length, innerDiameter, outerDiameter, wallConductivity, fouling, windingDiameter } = coil;
  const span = fluid.highest - fluid.lowest;
  const inside = new Float64Array(3 * (ROWS + 1));
  const outside = new Float64Array(2 * (ROWS + 1));
  aroundTube ??= compileWater();
  const { rows, typical } = aroundTube;
  const rootDiameter = Math.sqrt(outerDiameter);
  for (let row = 0; row <= ROWS; row++) {
    const t = fluid.lowest + (span * row) / ROWS;
    const viscosity = fluidViscosity(fluid, t);
    const conductivity = fluidConductivity(fluid, t);
    inside[3 * row] = (4 * fluidDensity(fluid, t)) / (Math.PI * innerDiameter * viscosity);
    inside[3 * row + 1] = Math.cbrt((viscosity * fluidSpecificHeat(fluid, t)) / conductivity);
    inside[3 * row + 2] = conductivity * Math.PI * length;
    outside[2 * row] = rows[row]!.buoyancy * rootDiameter;
    outside[2 * row + 1] = rows[row]!.conductivity * Math.PI * length;
  }
  return {
    film: compileCoilFilm(innerDiameter / windingDiameter),
    wallResistance:
      Math.log(outerDiameter / innerDiameter) / (2 * Math.PI * wallConductivity * length) +
      fouling / (Math.PI * outerDiameter * length),
    typicalOutside:
      typical.conductivity * Math.PI * length * (CYLINDER_REST + typical.buoyancy * rootDiameter * 5 ** (1 / 6)) ** 2,
    lowest: fluid.lowest,
    rowsPerKelvin: ROWS / span,
    inside,
    outside,
  };
}

/** What the outside film takes of the water in the tank. */
interface WaterAround {
  /** cylinderFactor · (Ra/ΔT)^(1/6) on a diameter D, over √D. [K^−1/6·m^−1/2] */
  readonly buoyancy: number;
  /** [W/(m·K)] */
  readonly conductivity: number;
}

/** The same for every coil: worked out with the first. */
let aroundTube: { readonly rows: readonly WaterAround[]; readonly typical: WaterAround } | undefined;

function compileWater(): NonNullable<typeof aroundTube> {
  const water = compileFluid('water', 0);
  const rows = Array.from({ length: ROWS + 1 }, (_, row) =>
    waterAround(water, WATER_LOWEST + row / WATER_ROWS_PER_KELVIN),
  );
  return { rows, typical: waterAround(water, 40) };
}

function waterAround(water: CompiledFluid, t: number): WaterAround {
  const viscosity = fluidViscosity(water, t);
  const heat = fluidSpecificHeat(water, t);
  const conductivity = fluidConductivity(water, t);
  const expansion = waterExpansion(Math.max(t, LOWEST_EXPANSION));
  const rayleighPerKelvin = (GRAVITY * expansion * fluidDensity(water, t) ** 2 * heat) / (viscosity * conductivity);
  return { buoyancy: cylinderFactor((viscosity * heat) / conductivity) * rayleighPerKelvin ** (1 / 6), conductivity };
}

/** Re in the tube; for reports, the kernels below compute their own. [-] */
export function coilReynolds(c: CompiledCoil, flow: number, fluidTemperature: number): number {
  const y = Math.min(Math.max((fluidTemperature - c.lowest) * c.rowsPerKelvin, 0), ROWS);
  const row = Math.min(Math.floor(y), ROWS - 1);
  const below = c.inside[3 * row]!;
  return flow * (below + (c.inside[3 * row + 3]! - below) * (y - row));
}

/** Conductance from the fluid to the outer surface of the scale. [W/K] */
export function insideConductance(c: CompiledCoil, flow: number, fluidTemperature: number): number {
  const y = Math.min(Math.max((fluidTemperature - c.lowest) * c.rowsPerKelvin, 0), ROWS);
  const row = y < ROWS ? y | 0 : ROWS - 1;
  const f = y - row;
  const at = 3 * row;
  const { inside } = c;
  const reynolds = flow * (inside[at]! + (inside[at + 3]! - inside[at]!) * f);
  const rootPrandtl = inside[at + 1]! + (inside[at + 4]! - inside[at + 1]!) * f;
  const conductivity = inside[at + 2]! + (inside[at + 5]! - inside[at + 2]!) * f;
  const film = coilNusselt(c.film, reynolds, rootPrandtl) * conductivity;
  return film / (1 + film * c.wallResistance);
}

/** A Newton step of the surface's share that moves it by less is the last: the next would move it by some 1e-5. [-] */
const SURFACE_CLOSE = 0.01;
/** Newton steps at most. */
const MOST_PASSES = 4;

/** Where the surface stands with a typical outside film. [-] */
export const typicalShare = (c: CompiledCoil, inside: number): number => inside / (inside + c.typicalOutside);

/**
 * Where the outer surface stands between tank (0) and fluid (1).
 *
 * The outside film depends on the surface temperature that it sets: G (1 − r) = h(r) r. Newton steps; with h ~ r^n, n ≤ 1/3, the equation is
 * nearly straight, and from the share of a step before one is enough as a rule. [-]
 *
 * @param start - Where to begin.
 */
export function surfaceShare(
  c: CompiledCoil,
  inside: number,
  fluidTemperature: number,
  tankTemperature: number,
  start = typicalShare(c, inside),
): number {
  const { outside } = c;
  const difference = fluidTemperature - tankTemperature;
  const size = Math.abs(difference);
  let r = start;
  for (let pass = 0; pass < MOST_PASSES; pass++) {
    const y = Math.min(
      Math.max((tankTemperature + 0.5 * r * difference - WATER_LOWEST) * WATER_ROWS_PER_KELVIN, 0),
      ROWS,
    );
    const row = y < ROWS ? y | 0 : ROWS - 1;
    const f = y - row;
    const at = 2 * row;
    const rise = (outside[at]! + (outside[at + 2]! - outside[at]!) * f) * Math.cbrt(Math.sqrt(size * r));
    const sum = CYLINDER_REST + rise;
    const film = (outside[at + 1]! + (outside[at + 3]! - outside[at + 1]!) * f) * sum * sum;
    const move = (inside * (1 - r) - film * r) / (inside + film * (1 + rise / (3 * sum)));
    r += move;
    if (Math.abs(move) < SURFACE_CLOSE) break;
  }
  return r;
}

/**
 * Conductance of the whole coil from its fluid to the tank water, UA = 1/(1/(h_i A_i) + wall + scale + 1/(h_o A_o)).
 *
 * Allocates nothing; continuous in all its inputs. At standstill it is that of Nu = 3.66: the caller multiplies by what flows.
 *
 * @param c - From {@link compileCoil}.
 * @param flow - Through the tube, 0 or more. [m³/s]
 * @param fluidTemperature - Mean in the tube; held at the ends of the fluid's range. [°C]
 * @param tankTemperature - Mean of the water around it. [°C]
 * @returns UA. [W/K]
 */
export function coilUA(c: CompiledCoil, flow: number, fluidTemperature: number, tankTemperature: number): number {
  const inside = insideConductance(c, flow, fluidTemperature);
  return inside * (1 - surfaceShare(c, inside, fluidTemperature, tankTemperature));
}
