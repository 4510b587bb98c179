/** How the water of an hour is spread inside it, for hours of several patterns. */
export interface DrawWithin {
  /** Equal parts of the hour in which a pattern is kept. */
  readonly parts: number;
  /** Pattern of each hour. Shape [8760]. */
  readonly pattern: Uint16Array;
  /** Share of the hour's water drawn by each boundary between parts. Shape [patterns × (parts + 1)]. [-] */
  readonly drawn: Float64Array;
  /** The same, each share times the flow at which it ran. Shape [patterns × (parts + 1)]. [m³/s] */
  readonly flowDrawn: Float64Array;
}

/**
 * Share of an hour's water that falls between two moments of it; linear inside a part. Allocates nothing.
 *
 * @param from - Share of the hour gone by. [-]
 * @param to - The same, later. [-]
 */
export const drawnBetween = (within: DrawWithin, hour: number, from: number, to: number): number =>
  between(within, within.drawn, hour, from, to);

/**
 * Mean flow of the water that falls between two moments, weighted by volume; 0 where none does. Allocates nothing.
 *
 * @returns Mixed flow while taps run. [m³/s]
 */
export function flowBetween(within: DrawWithin, hour: number, from: number, to: number): number {
  const share = drawnBetween(within, hour, from, to);
  return share > 0 ? between(within, within.flowDrawn, hour, from, to) / share : 0;
}

function between(within: DrawWithin, sums: Float64Array, hour: number, from: number, to: number): number {
  const { parts, pattern } = within;
  const start = pattern[hour]! * (parts + 1);
  return boundary(sums, start, to * parts, parts) - boundary(sums, start, from * parts, parts);
}

function boundary(sums: Float64Array, start: number, place: number, parts: number): number {
  const part = Math.min(Math.trunc(place), parts - 1);
  const below = sums[start + part]!;
  return below + (place - part) * (sums[start + part + 1]! - below);
}
