/**
 * Heats a tank from a heating element until its thermostat, at the element's height, is satisfied. Allocates nothing.
 *
 * Warmed water rises and mixes with what lies above, so the heat lifts the layers from the element upwards to one level L, as
 * water fills a stepped vessel:
 *
 *     C Σ_i max(0, L − T_i) = Q,   L ≤ T_set
 *
 * Water below the element stays as it is. No dead band: the power is the constant one that just reaches the set temperature at
 * the step's end, at most the element's own.
 *
 * @param temperature - Nodes in order, bottom first; changed in place. Shape [nodes]. [°C]
 * @param lowest - Node of the element and its thermostat.
 * @param nodeCapacity - Heat capacity of one node. [J/K]
 * @param available - Most heat that the element can give in the step. [J]
 * @param setTemperature - Thermostat. [°C]
 * @returns Heat given. [J]
 */
export function heatByElement(
  temperature: Float64Array,
  lowest: number,
  nodeCapacity: number,
  available: number,
  setTemperature: number,
): number {
  let room = available / nodeCapacity;
  let level = temperature[lowest]!;
  if (level >= setTemperature || room <= 0) return 0;
  let lifted = 0;
  let given = 0;
  for (let node = lowest; node < temperature.length && room > 0 && level < setTemperature; node++) {
    lifted++;
    const next = node + 1 < temperature.length ? Math.min(temperature[node + 1]!, setTemperature) : setTemperature;
    const wanted = Math.max(next - level, 0) * lifted;
    if (wanted >= room) {
      level += room / lifted;
      room = 0;
    } else {
      level += wanted / lifted;
      room -= wanted;
    }
  }
  for (let node = lowest; node < lowest + lifted; node++) {
    given += level - temperature[node]!;
    temperature[node] = level;
  }
  return given * nodeCapacity;
}
