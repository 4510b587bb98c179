/** How a flow is shared out among ways side by side: all have one pressure drop. */

/** A way's drop = laminar μ Q + turbulent ρ Q², and its share of the flow. */
export interface Way {
  readonly laminar: number;
  readonly turbulent: number;
  /** Set by {@link splitFlow}. [-] */
  share: number;
}

/** What flows through all ways together. */
export interface Shared {
  /** [m³/s] */
  flow: number;
  /** [kg/m³] */
  density: number;
  /** [Pa·s] */
  viscosity: number;
}

const MOST_STEPS = 60;

/**
 * Shares a flow out among the ways from `start` up to `end`, by Newton's method in their common drop:
 *
 *     Σ Q_i(Δp) = Q,   Q_i = [−l + √(l² + 4 t Δp)]/(2 t),   l = laminar μ, t = turbulent ρ
 *
 * The sum is concave in Δp, so from below each step lands below the root or on it. A way without resistance takes all.
 *
 * @returns Δp. [Pa]
 */
export function splitFlow(ways: readonly Way[], start: number, end: number, shared: Shared): number {
  const { density, flow, viscosity } = shared;
  if (end - start === 1) {
    ways[start]!.share = 1;
    return wayDrop(ways[start]!, flow, shared);
  }
  let free = 0;
  for (let at = start; at < end; at++) if (isFree(ways[at]!)) free++;
  if (free > 0) {
    for (let at = start; at < end; at++) ways[at]!.share = isFree(ways[at]!) ? 1 / free : 0;
    return 0;
  }
  if (!(flow > 0)) {
    for (let at = start; at < end; at++) ways[at]!.share = 1 / (end - start);
    return 0;
  }
  // Below the root: no way takes more than all of the flow at the least of the drops of an even share.
  let drop = Number.POSITIVE_INFINITY;
  for (let at = start; at < end; at++) {
    drop = Math.min(drop, wayDrop(ways[at]!, flow / (end - start), shared));
  }
  for (let step = 0; step < MOST_STEPS; step++) {
    let sum = 0;
    let slope = 0;
    for (let at = start; at < end; at++) {
      const l = ways[at]!.laminar * viscosity;
      const t = ways[at]!.turbulent * density;
      const root = Math.sqrt(l * l + 4 * t * drop);
      sum += (2 * drop) / (l + root);
      slope += 1 / root;
    }
    const change = (flow - sum) / slope;
    drop += change;
    if (Math.abs(change) <= 1e-14 * drop) break;
  }
  let sum = 0;
  for (let at = start; at < end; at++) {
    const l = ways[at]!.laminar * viscosity;
    ways[at]!.share = (2 * drop) / (l + Math.sqrt(l * l + 4 * ways[at]!.turbulent * density * drop));
    sum += ways[at]!.share;
  }
  for (let at = start; at < end; at++) ways[at]!.share /= sum;
  return drop;
}

const isFree = ({ laminar, turbulent }: Way): boolean => laminar === 0 && turbulent === 0;

/** Drop of a way that all of a flow goes through. [Pa] */
const wayDrop = ({ laminar, turbulent }: Way, flow: number, { density, viscosity }: Shared): number =>
  (laminar * viscosity + turbulent * density * flow) * flow;
