/**
 * Spreads a tank's loss coefficient over its nodes by outside area: each node its share of the side, the end nodes also the
 * floor and the lid.
 *
 * @param total - Loss coefficient of the tank. [W/K]
 * @param volume - Water. [m³]
 * @param height - Inside height. [m]
 * @param nodes - Number of equal nodes.
 * @returns Conductance of each node, bottom first. Shape [nodes]. [W/K]
 */
export function nodeConductances(total: number, volume: number, height: number, nodes: number): Float64Array {
  const diameter = Math.sqrt((4 * volume) / (Math.PI * height));
  const side = (Math.PI * diameter * height) / nodes;
  const end = (Math.PI / 4) * diameter ** 2;
  const whole = side * nodes + 2 * end;
  const conductance = new Float64Array(nodes).fill((total * side) / whole);
  conductance[0]! += (total * end) / whole;
  conductance[nodes - 1]! += (total * end) / whole;
  return conductance;
}

/**
 * Decay of each node's excess over the room in one step, e^(−UA Δt/C).
 *
 * @param conductance - Of each node. Shape [nodes]. [W/K]
 * @param capacity - Heat capacity of one node. [J/K]
 * @param duration - Length of the step. [s]
 */
export const nodeDecays = (conductance: Float64Array, capacity: number, duration: number): Float64Array =>
  conductance.map((value) => Math.exp((-value * duration) / capacity));

/**
 * Cools every node towards the room for one step and returns what left the water. Allocates nothing.
 *
 *     C dT/dt = −UA (T − T_room);   T(t + Δt) = T_room + (T − T_room) e^(−UA Δt/C)
 *
 * Exact for a constant room, so no step is too long for it.
 *
 * @param temperature - Nodes, bottom first; changed in place. Shape [nodes]. [°C]
 * @param decay - From {@link nodeDecays}. Shape [nodes]. [-]
 * @param capacity - Heat capacity of one node. [J/K]
 * @param room - Air around the tank. [°C]
 * @returns Heat lost in the step, positive when the room gains. [J]
 */
export function loseToRoom(temperature: Float64Array, decay: Float64Array, capacity: number, room: number): number {
  let fallen = 0;
  for (let node = 0; node < temperature.length; node++) {
    const fall = (temperature[node]! - room) * (1 - decay[node]!);
    temperature[node]! -= fall;
    fallen += fall;
  }
  return capacity * fallen;
}
