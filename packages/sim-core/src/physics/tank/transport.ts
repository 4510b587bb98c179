/**
 * Share of the slope between two nodes that the face between them takes: van Leer's limiter, 2r/(1 + r) for r > 0.
 *
 * @see B. van Leer, Towards the ultimate conservative difference scheme II, J. Comput. Phys. 14 (1974)
 */
const limitedSlope = (below: number, above: number): number => {
  const product = below * above;
  return product > 0 ? (2 * product) / (below + above) : 0;
};

/**
 * Pushes water through the tank from the bottom to the top and says how warm it came out. Allocates nothing.
 *
 *     ∂T/∂t + w ∂T/∂z = 0
 *
 * Plug flow in finite volumes: the temperature at the face above node i is T_i + ½ (1 − c) φ, with the Courant number c and
 * the limited slope φ (second order where the profile is smooth, no new extremes anywhere). Upwind nodes alone would smear a
 * front as that many stirred tanks in series do. Volumes above one node go in several passes, each with c ≤ 1; a pass of
 * exactly one node moves the profile without any smear.
 *
 * @param temperature - Nodes, bottom first; changed in place. Shape [nodes]. [°C]
 * @param volumes - Water drawn, in node volumes, ≥ 0. [-]
 * @param inlet - Water that enters at the bottom. [°C]
 * @param sharpness - 1: second order; 0: upwind, each node a stirred tank, for comparison. [-]
 * @returns Mean temperature of the water that left at the top; the inlet's where none was drawn. [°C]
 */
export function drawThrough(temperature: Float64Array, volumes: number, inlet: number, sharpness = 1): number {
  if (volumes <= 0) return inlet;
  const passes = Math.ceil(volumes);
  const courant = volumes / passes;
  const reach = 0.5 * (1 - courant) * sharpness;
  const top = temperature.length - 1;
  let outlet = 0;
  for (let pass = 0; pass < passes; pass++) {
    let faceBelow = inlet;
    let below = inlet;
    for (let node = 0; node < top; node++) {
      const here = temperature[node]!;
      const face = here + reach * limitedSlope(here - below, temperature[node + 1]! - here);
      temperature[node] = here + courant * (faceBelow - face);
      faceBelow = face;
      below = here;
    }
    const here = temperature[top]!;
    temperature[top] = here + courant * (faceBelow - here);
    outlet += here;
  }
  return outlet / passes;
}
