/** Where the nodes of the energy flow stand: the main stream along one edge, losses beside it, with room for words outside the bands. */
import { type FlowGraph, type FlowNode, throughNode } from './flow-model.ts';

/** From the sun to the taps. */
export const STAGES = 7;
/** Thickness of a node along the stream. [px] */
export const BAR = 9;

/** Nodes of the main stream: their words stand outside the edge. */
const MAIN = new Set(['sun', 'collected', 'coil', 'delivered', 'hot', 'taps']);

/** Whether a node is of the main stream. */
export const isMain = (id: string): boolean => MAIN.has(id);

/** Measures of one picture. [px] */
export interface FlowRoom {
  /** Room that the words of a loss or of the fuel take across the stream. */
  readonly words: number;
  /** Between nodes of a stage. */
  readonly gap: number;
  /** From stage to stage. */
  readonly step: number;
  /** Whether a loss stands in the middle of its words' room. */
  readonly centred: boolean;
}

/** A node, drawn. [px] */
export interface PlacedNode extends FlowNode {
  readonly along: number;
  readonly across: number;
  readonly size: number;
  /** Whether it has words. */
  readonly worded: boolean;
}

/** Least share of the largest flow that has words beside it, and least width that is drawn; the table has all. */
const WORDED = 0.015;
const THINNEST = 2; // [px]

/** What a node is as wide as. [J] */
export const widthOf = (graph: FlowGraph, { id, value }: FlowNode): number => {
  const through = throughNode(graph, id);
  return Math.max(value, through.in, through.out);
};

/** Largest node of a year. [J] */
export const largestOf = ({ nodes }: FlowGraph): number => Math.max(...nodes.map(({ value }) => value));

/**
 * Nodes in their places. The fuel joins a stage after the tank's losses and below their words, so that no band runs through them.
 *
 * @param scale - of the widths [px/J]
 * @returns nodes, the thinnest left out, and how far they reach across [px]
 */
export function placeNodes(
  graph: FlowGraph,
  scale: number,
  { words, gap, step, centred }: FlowRoom,
): [PlacedNode[], number] {
  const largest = largestOf(graph);
  const placed: PlacedNode[] = [];
  let reach = 0;
  let lossesEnd = 0;
  for (let stage = 0; stage < STAGES; stage++) {
    const main = graph.nodes.find((node) => node.stage === stage && isMain(node.id));
    const passing = stage === 4 ? graph.nodes.find(({ id }) => id === 'delivered') : undefined;
    let next = passing === undefined ? 0 : widthOf(graph, passing) * scale + gap;
    if (stage === 4) next = Math.max(next, lossesEnd);
    if (main !== undefined) {
      const size = widthOf(graph, main) * scale;
      placed.push({ ...main, along: stage * step, across: 0, size, worded: true });
      next = size + gap;
    }
    for (const node of graph.nodes.filter((one) => one.stage === stage && one !== main)) {
      const size = widthOf(graph, node) * scale;
      if (size < THINNEST) continue;
      const worded = node.value >= WORDED * largest;
      const slot = worded ? Math.max(size, words) : size;
      placed.push({ ...node, along: stage * step, across: next + (centred ? (slot - size) / 2 : 0), size, worded });
      next += slot + gap;
    }
    if (stage === 3) lossesEnd = next;
    reach = Math.max(reach, next - gap);
  }
  return [placed, reach];
}
