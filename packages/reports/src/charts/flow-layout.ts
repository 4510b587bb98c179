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
const widthOf = (graph: FlowGraph, { id, value }: FlowNode): number => {
  const through = throughNode(graph, id);
  return Math.max(value, through.in, through.out);
};

/** Largest node of a year. [J] */
export const largestOf = ({ nodes }: FlowGraph): number => Math.max(...nodes.map(({ value }) => value));

/** Stages in the order in which they are placed: each after the one that it flows into; the fuel after the losses before it. */
const PLACING = [6, 5, 3, 2, 1, 0, 4];

/**
 * Nodes in their places. The main stream stands along the edge. A loss stands beyond the losses of the next stage, so that no band on
 * its way there runs through its words; the fuel beyond the words of the losses before it.
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
  /** Where the last node of a stage ends, and where its words end. [px] */
  const ends = new Map<number, { readonly nodes: number; readonly words: number }>();
  for (const stage of PLACING) {
    const main = graph.nodes.find((node) => node.stage === stage && isMain(node.id));
    const passing = stage === 4 ? graph.nodes.find(({ id }) => id === 'delivered') : main;
    const size = passing === undefined ? 0 : widthOf(graph, passing) * scale;
    if (main !== undefined) placed.push({ ...main, along: stage * step, across: 0, size, worded: true });
    let nodes = size;
    let next = Math.max(size, (stage === 4 ? ends.get(3)?.words : ends.get(stage + 1)?.nodes) ?? 0);
    for (const node of graph.nodes.filter((one) => one.stage === stage && one !== main)) {
      const own = widthOf(graph, node) * scale;
      if (own < THINNEST) continue;
      const worded = node.value >= WORDED * largest;
      const slot = worded ? Math.max(own, words) : own;
      const across = next + gap + (centred ? (slot - own) / 2 : 0);
      placed.push({ ...node, along: stage * step, across, size: own, worded });
      next += gap + slot;
      nodes = across + own;
    }
    ends.set(stage, { nodes, words: next });
  }
  placed.sort((a, b) => a.stage - b.stage || a.across - b.across);
  return [placed, Math.max(...[...ends.values()].map(({ words: end }) => end))];
}
