/** The tank in layers, from docs/theory/tank.md: plug flow, losses, conduction, turnover, relief valve. */
import type { SystemDesign } from '@noonloop/sim-core';

/** Water's constant heat capacity. [J/(m³·K)] */
export const WATER = 4.1468e6;

/** A tank: nodes from the bottom. [°C] */
export interface ReferenceTank {
  readonly nodes: number[];
  readonly volume: number;
  readonly capacity: number;
  readonly losses: readonly number[];
  readonly conduction: number;
}

export function tankOf({ tank }: { readonly tank: Omit<SystemDesign['tank'], 'second'> }): ReferenceTank {
  const { height, nodes, volume } = tank;
  const floor = volume / height;
  const side = Math.PI * Math.sqrt((4 * floor) / Math.PI) * height;
  const perArea = tank.lossCoefficient / (side + 2 * floor);
  return {
    nodes: new Array<number>(nodes).fill(tank.initialTemperature),
    volume: volume / nodes,
    capacity: (volume / nodes) * WATER,
    losses: Array.from(
      { length: nodes },
      (_, at) => perArea * (side / nodes + (at === 0 ? floor : 0) + (at === nodes - 1 ? floor : 0)),
    ),
    conduction: (tank.verticalConductivity * floor) / (height / nodes),
  };
}

/** Plug flow from the first node of a list to the last, van Leer's slopes; in pieces of one node at most. @returns What left, mean. [°C] */
export function plugFlow(nodes: number[], volumes: number, inlet: number): number {
  if (volumes <= 0) return inlet;
  const pieces = Math.ceil(volumes);
  const c = volumes / pieces;
  let left = 0;
  for (let piece = 0; piece < pieces; piece++) {
    const old = [...nodes];
    const face = (at: number): number => {
      if (at < 0) return inlet;
      if (at === old.length - 1) return old[at]!;
      const below = old[at]! - (at === 0 ? inlet : old[at - 1]!);
      const above = old[at + 1]! - old[at]!;
      const slope = below * above > 0 ? (2 * below * above) / (below + above) : 0;
      return old[at]! + 0.5 * (1 - c) * slope;
    };
    for (let at = 0; at < old.length; at++) nodes[at] = old[at]! + c * (face(at - 1) - face(at));
    left += old[old.length - 1]! / pieces;
  }
  return left;
}

/** Water pushed down from one node to the bottom. */
export function plugFlowDown(nodes: number[], entry: number, volumes: number, inlet: number): void {
  const column = nodes.slice(0, entry + 1).reverse();
  plugFlow(column, volumes, inlet);
  for (let at = 0; at <= entry; at++) nodes[at] = column[entry - at]!;
}

/** Warm water rises: the mean of two neighbours, again and again, until none is warmer than the one above it. */
export function turnOver(nodes: number[]): void {
  if (nodes.every((node, at) => at === 0 || nodes[at - 1]! <= node)) return;
  const pools: { sum: number; count: number }[] = [];
  for (const node of nodes) {
    let pool = { sum: node, count: 1 };
    for (
      let last = pools.at(-1);
      last !== undefined && last.sum / last.count > pool.sum / pool.count;
      last = pools.at(-1)
    ) {
      pool = { sum: pool.sum + last.sum, count: pool.count + last.count };
      pools.pop();
    }
    pools.push(pool);
  }
  let at = 0;
  for (const { sum, count } of pools) for (let node = 0; node < count; node++) nodes[at++] = sum / count;
}

/** Losses to the room and conduction in an explicit step. @returns Heat lost. [J] */
export function rest(tank: ReferenceTank, room: number, seconds: number): number {
  const { capacity, conduction, losses, nodes } = tank;
  const old = [...nodes];
  let lost = 0;
  for (let at = 0; at < old.length; at++) {
    const loss = losses[at]! * (old[at]! - room);
    const below = at > 0 ? conduction * (old[at - 1]! - old[at]!) : 0;
    const above = at < old.length - 1 ? conduction * (old[at + 1]! - old[at]!) : 0;
    nodes[at] = old[at]! + ((below + above - loss) * seconds) / capacity;
    lost += loss * seconds;
  }
  return lost;
}

/** Relief valve: what is beyond its setting leaves as water of that temperature, then whole nodes until the top has fallen by 5 K. */
export function relieve(tank: ReferenceTank, opens: number, mains: number): { volume: number; heat: number } {
  const { capacity, nodes, volume } = tank;
  const top = nodes.length - 1;
  if (nodes[top]! < opens) return { volume: 0, heat: 0 };
  let beyond = 0;
  for (let at = 0; at <= top; at++) {
    beyond += Math.max(nodes[at]! - opens, 0);
    nodes[at] = Math.min(nodes[at]!, opens);
  }
  let litres = beyond / (opens - mains);
  let heat = beyond;
  for (let out = 0; out <= top && nodes[top]! > opens - 5; out++) {
    heat += plugFlow(nodes, 1, mains) - mains;
    litres += 1;
  }
  return { volume: litres * volume, heat: heat * capacity };
}

/** Element: heat lifts the coldest layers from its height upwards to one level, at most the setting. @returns Heat given. [J] */
export function heatFrom(tank: ReferenceTank, lowest: number, most: number, setting: number): number {
  const { capacity, nodes } = tank;
  const needed = (level: number) =>
    nodes.slice(lowest).reduce((sum, node) => sum + Math.max(0, level - node) * capacity, 0);
  if (nodes[lowest]! >= setting) return 0;
  let [low, high] = [nodes[lowest]!, setting];
  if (needed(setting) > most) {
    for (let halving = 0; halving < 50; halving++) {
      const middle = 0.5 * (low + high);
      if (needed(middle) > most) high = middle;
      else low = middle;
    }
  }
  const given = needed(high);
  for (let at = lowest; at < nodes.length; at++) nodes[at] = Math.max(nodes[at]!, high);
  return given;
}
