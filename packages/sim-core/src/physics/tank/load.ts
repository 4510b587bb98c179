/**
 * Takes heat out of a tank at one height, down to a floor. Allocates nothing.
 *
 * Cooled water sinks and mixes with what lies below, so the heat lowers the layers from the outlet downwards to one level L, the
 * mirror of a heating element:
 *
 *     C Σ_i max(0, T_i − L) = Q,   L ≥ T_floor
 *
 * @param temperature - Nodes in order, bottom first; changed in place. Shape [nodes]. [°C]
 * @param highest - Node at which the load takes its heat.
 * @param nodeCapacity - Heat capacity of one node. [J/K]
 * @param wanted - Most heat that the load takes in the step. [J]
 * @param floor - Temperature below which it takes none. [°C]
 * @returns Heat taken. [J]
 */
export function coolByLoad(
  temperature: Float64Array,
  highest: number,
  nodeCapacity: number,
  wanted: number,
  floor: number,
): number {
  let room = wanted / nodeCapacity;
  let level = temperature[highest]!;
  if (level <= floor || room <= 0) return 0;
  let lowered = 0;
  for (let node = highest; node >= 0 && room > 0 && level > floor; node--) {
    lowered++;
    const next = node > 0 ? Math.max(temperature[node - 1]!, floor) : floor;
    const most = Math.max(level - next, 0) * lowered;
    if (most >= room) {
      level -= room / lowered;
      room = 0;
    } else {
      // The very temperature: rounding must not leave the level above the floor and take in a layer that lies below it.
      level = Math.min(level, next);
      room -= most;
    }
  }
  let taken = 0;
  for (let node = highest; node > highest - lowered; node--) {
    taken += temperature[node]! - level;
    temperature[node] = level;
  }
  return taken * nodeCapacity;
}
