import { drawThrough } from './transport.ts';

/**
 * Pushes water down through the lower part of a tank: it enters at one node and leaves at the bottom. Allocates nothing; the
 * same plug flow as {@link drawThrough}, seen from above.
 *
 * @param temperature - Nodes, bottom first; those up to the entry are changed in place. [°C]
 * @param entry - Node into which the water comes.
 * @param share - Water pushed, in node volumes, 0 to 1; what leaves is then the bottom node's water. [-]
 * @param inlet - Water that enters. [°C]
 * @param column - Scratch of entry + 1 nodes.
 */
export function chargeDown(
  temperature: Float64Array,
  entry: number,
  share: number,
  inlet: number,
  column: Float64Array,
): void {
  for (let node = 0; node <= entry; node++) column[entry - node] = temperature[node]!;
  drawThrough(column, share, inlet);
  for (let node = 0; node <= entry; node++) temperature[node] = column[entry - node]!;
}
