/** Flow that buoyancy alone drives through a loop without a check valve. */
import { requireNumber } from '../../input/errors.ts';
import { type CompiledFluid, fluidDensity, fluidViscosity } from '../fluid/compile.ts';
import { checkedFluid } from '../fluid/properties.ts';
import type { Tank } from '../tank/tank.ts';
import type { Circuit } from './circuit-state.ts';
import { type CompiledHydraulics, compileHydraulics, type HydraulicParts, loopHead } from './hydraulics.ts';
import { GRAVITY } from './pump.ts';

/** Flows below this are none: they carry about a watt. [m³/s] */
export const LEAST_FLOW = 1e-8;
/** Relative width of the bracket at which the flow is found. [-] */
const CLOSE = 1e-9;

/** How much each part of a loop rises along the forward flow (pump's direction), negative where it falls; they add up to 0. */
export interface LoopRises {
  /** Each collector node. [m] */
  readonly collector: number;
  /** Each pipe section, hot outdoors first. [m] */
  readonly pipe: Float64Array;
  /** The whole coil. [m] */
  readonly coil: number;
}

/**
 * Pressure by which buoyancy drives the forward flow.
 *
 *     Δp = −g Σ ρ(T_i) Δz_i
 *
 * The coil's fluid is taken at its tank water's temperature. Allocates nothing.
 *
 * @returns Negative where it drives backwards. [Pa]
 */
export function buoyancyPressure(rises: LoopRises, fluid: CompiledFluid, circuit: Circuit, tank: Tank): number {
  const { absorber, coil, pipe } = circuit;
  let weight = 0;
  for (let node = 0; node < absorber.length; node++) weight += rises.collector * fluidDensity(fluid, absorber[node]!);
  for (let at = 0; at < pipe.length; at++) weight += rises.pipe[at]! * fluidDensity(fluid, pipe[at]!);
  for (let piece = 0; piece < coil.share.length; piece++) {
    weight += rises.coil * coil.share[piece]! * fluidDensity(fluid, tank.temperature[coil.bottom + piece]!);
  }
  return -GRAVITY * weight;
}

/**
 * Flow at which the loop's friction takes up a driving pressure, Δp = R(Q). Allocates nothing.
 *
 * Laminar flow, Q = Δp/(μ Σ 128 L/(π d⁴)), bounds it from above; between that and 0 it is found by false position with the
 * Illinois rule. The standing pump's own resistance is left out.
 *
 * @param h - The loop.
 * @param pressure - 0 or more. [Pa]
 * @param density - Of the liquid. [kg/m³]
 * @param viscosity - Of the liquid. [Pa·s]
 * @returns [m³/s]
 */
export function buoyantFlow(h: CompiledHydraulics, pressure: number, density: number, viscosity: number): number {
  if (!(pressure > 0)) return 0;
  const laminar =
    64 * (h.pipeDrop * h.pipeReynolds + h.coil.drop * h.coil.reynolds) * viscosity + h.collectorLaminar * viscosity;
  const head = pressure / (density * GRAVITY);
  let low = 0;
  let high = pressure / laminar;
  let below = -head;
  let above = loopHead(h, high, density, viscosity) - head;
  let side = 0;
  for (let step = 0; step < 100 && above > CLOSE * head && high - low > CLOSE * high; step++) {
    // Every third step halves the bracket, so that it ends however crooked the friction is.
    const q = step % 3 === 2 ? (low + high) / 2 : high - (above * (high - low)) / (above - below);
    const excess = loopHead(h, q, density, viscosity) - head;
    if (excess < 0) {
      low = q;
      below = excess;
      if (side < 0) above /= 2;
      side = -1;
    } else {
      high = q;
      above = excess;
      if (side > 0) below /= 2;
      side = 1;
    }
  }
  return high < LEAST_FLOW ? 0 : high;
}

/** What {@link thermosiphonFlow} is asked. */
export interface ThermosiphonQuery {
  /** The loop. */
  readonly parts: HydraulicParts;
  /** Between the middle of the cold and that of the warm side, vertically: the height of the two columns. [m] */
  readonly height: number;
  /** Of the warm column, from the fluid's freezing point to 140. [°C] */
  readonly warm: number;
  /** Of the cold column. [°C] */
  readonly cold: number;
}

/**
 * Flow that two columns of liquid, one warm, one cold, drive round a loop: (ρ_cold − ρ_warm) g H = friction.
 *
 * @returns [m³/s]
 * @throws {@link DesignError} for a value out of range.
 */
export function thermosiphonFlow(query: ThermosiphonQuery): number {
  const { parts, height, warm, cold } = query;
  const fluid = checkedFluid(parts.loop.fluid, parts.loop.glycolMassFraction);
  requireNumber('height', height, 0, 200, 'm');
  requireNumber('warm', warm, fluid.lowest, fluid.highest, '°C');
  requireNumber('cold', cold, fluid.lowest, warm, '°C (no warmer than the warm column)');
  const pressure = (fluidDensity(fluid, cold) - fluidDensity(fluid, warm)) * GRAVITY * height;
  const mean = (warm + cold) / 2;
  const h = compileHydraulics(parts, fluid);
  return buoyantFlow(h, pressure, fluidDensity(fluid, mean), fluidViscosity(fluid, mean));
}
