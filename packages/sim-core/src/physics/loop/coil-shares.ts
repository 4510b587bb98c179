/** Part of a node that the coil must pass to count there: what only grazes one would exchange next to nothing. [-] */
const SLIVER = 1e-6;

/** Share of the coil in each tank node that it passes, from its lowest node upwards; they add up to 1. */
export function coilShares(bottom: number, top: number, nodes: number): { bottom: number; shares: Float64Array } {
  const first = Math.min(Math.floor(bottom * nodes + SLIVER), nodes - 1);
  const last = Math.min(Math.max(Math.ceil(top * nodes - SLIVER) - 1, first), nodes - 1);
  if (first === last) return { bottom: first, shares: Float64Array.of(1) };
  const passed = Float64Array.from({ length: last - first + 1 }, (_, index) => {
    const node = first + index;
    return Math.min(top * nodes, node + 1) - Math.max(bottom * nodes, node);
  });
  const whole = passed.reduce((sum, part) => sum + part, 0);
  return { bottom: first, shares: passed.map((part) => part / whole) };
}
