import { type CompiledFluid, fluidDensity } from '../fluid/compile.ts';

const GRAVITY = 9.80665;

/** Coefficient of Turner's height of a turbulent fountain. [-] */
const FOUNTAIN = 1.85;

/**
 * Height to which a cold jet rises in warmer water before it falls back.
 *
 *     z = 1.85 M^(3/4) B^(−1/2),   M = V̇²/A,   B = g' V̇,   g' = g (ρ_jet − ρ_tank)/ρ_tank
 *
 * Turbulent round fountain in still water of one density: V̇ flow, A area of the nozzle. Below a Froude number of about 3 the flow is
 * laminar or bulges rather than jets, and the height is an order of magnitude.
 *
 * @param flow - V̇. [m³/s]
 * @param area - A. [m²]
 * @param buoyancy - g', > 0. [m/s²]
 * @returns z over the nozzle. [m]
 * @see J. S. Turner, Jets and plumes with negative or reversing buoyancy, J. Fluid Mech. 26 (1966) 779 (from memory).
 */
export const fountainHeight = (flow: number, area: number, buoyancy: number): number =>
  (FOUNTAIN * (flow / area) * area ** 0.25) / Math.sqrt(buoyancy);

/** Layers that differ by less are left as they are: each mixing rounds all of them, and hundreds an hour add up in the tank's balance. [K] */
const ALIKE = 1e-9;

/** An inlet that points upwards from the tank's floor. */
export interface InletJet {
  /** Area of its mouth. [m²] */
  readonly area: number;
  readonly water: CompiledFluid;
  /** Height of one node. [m] */
  readonly nodeHeight: number;
}

/**
 * Mixes the layers that the mains' jet stirs. Allocates nothing.
 *
 * The jet reaches a layer where the water up to it is, in the mean, not light enough against it to bring it down before the layer's
 * middle; the layers reached become one. Whole nodes, so that cutting a draw into more steps stirs no more.
 *
 * @param temperature - Nodes, bottom first, mains water already in; changed in place. [°C]
 * @param jet - The inlet.
 * @param flow - Flow through it while the tap runs. [m³/s]
 * @param mains - Its water. [°C]
 */
export function mixByJet(temperature: Float64Array, jet: InletJet, flow: number, mains: number): void {
  const { area, nodeHeight, water } = jet;
  const heavy = fluidDensity(water, mains);
  let nodes = 0;
  let sum = 0;
  let lightness = 0;
  while (nodes < temperature.length) {
    const here = temperature[nodes]!;
    lightness += heavy - fluidDensity(water, here);
    const mean = lightness / (nodes + 1);
    if (mean > 0 && fountainHeight(flow, area, (GRAVITY * mean) / heavy) < (nodes + 0.5) * nodeHeight) break;
    sum += here;
    nodes++;
  }
  if (nodes < 2 || Math.abs(temperature[nodes - 1]! - temperature[0]!) < ALIKE) return;
  const mixed = sum / nodes;
  for (let node = 0; node < nodes; node++) temperature[node] = mixed;
}
