/** Factors of the implicit conduction step for one step length; made by {@link conductionFactors}. */
export interface ConductionFactors {
  /** Number of one step of conduction between neighbours: k Δt/(ρc Δz²). [-] */
  readonly ratio: number;
  /** Upper diagonal after elimination. Shape [nodes]. */
  readonly upper: Float64Array;
  /** Reciprocal pivots. Shape [nodes]. */
  readonly pivot: Float64Array;
}

/**
 * Eliminates the conduction matrix once for a step length.
 *
 * @param diffusivity - Vertical, water and wall together. [m²/s]
 * @param spacing - Height of one node. [m]
 * @param duration - Length of the step. [s]
 * @param nodes - Number of equal nodes.
 */
export function conductionFactors(
  diffusivity: number,
  spacing: number,
  duration: number,
  nodes: number,
): ConductionFactors {
  const ratio = (diffusivity * duration) / spacing ** 2;
  const upper = new Float64Array(nodes);
  const pivot = new Float64Array(nodes);
  for (let node = 0; node < nodes; node++) {
    const neighbours = (node > 0 ? 1 : 0) + (node < nodes - 1 ? 1 : 0);
    const eliminated = node > 0 ? ratio * upper[node - 1]! : 0;
    pivot[node] = 1 / (1 + neighbours * ratio - eliminated);
    upper[node] = node < nodes - 1 ? ratio * pivot[node]! : 0;
  }
  return { ratio, upper, pivot };
}

/**
 * Conducts heat along the column for one step, floor and lid adiabatic. Allocates nothing.
 *
 *     ∂T/∂t = a ∂²T/∂z²
 *
 * Backward Euler: stable and free of overshoot for any step; the sum of the nodes is kept to rounding.
 *
 * @param temperature - Nodes, bottom first; changed in place. Shape [nodes]. [°C]
 * @param factors - From {@link conductionFactors}, for this step length.
 */
export function conduct(temperature: Float64Array, factors: ConductionFactors): void {
  const { ratio, upper, pivot } = factors;
  const top = temperature.length - 1;
  let carried = 0;
  for (let node = 0; node <= top; node++) {
    carried = (temperature[node]! + ratio * carried) * pivot[node]!;
    temperature[node] = carried;
  }
  for (let node = top - 1; node >= 0; node--) {
    carried = temperature[node]! + upper[node]! * carried;
    temperature[node] = carried;
  }
}
