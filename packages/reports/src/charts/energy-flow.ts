/** Heat from sun and fuel to the taps as bands, each as wide as what flows in it. */
import { letterOf } from '../escape.ts';
import { formatQuantity } from '../units.ts';
import { type ChartContext, panelTitle, TEXT, TITLE_ROOM } from './context.ts';
import { type FlowGraph, flowGraph, throughNode } from './flow-model.ts';
import type { Drawing } from './frame.ts';

const STAGES = 6;
const BAR = 9; // [px] thickness of a node along the stream
/** Room across the stream for the words of a node, and the least of it where a stage is crowded. [px] */
const WORDS = { wide: [40, 40], narrow: [88, 68] } as const;
/** Across the stream, for the widest node. [px] */
const WIDEST = { wide: 230, narrow: 150 };
/** Between nodes of a stage. [px] */
const GAP = { wide: 10, narrow: 6 };
const STAGE_NARROW = 122; // [px] along the stream, on a telephone
/** For the words of the last stage. [px] */
const LAST_WORDS = 146;
const TOP = 8; // [px]

interface Box {
  /** Along the stream, start of the bar. [px] */
  readonly along: number;
  /** Across the stream. [px] */
  readonly across: number;
  readonly size: number;
  /** With the room for its words. [px] */
  readonly space: number;
}

/** Why a design has no picture, or `null`. */
export const flowMissing = ({ summaries }: ChartContext): string | null =>
  summaries.some((summary) => flowGraph(summary) !== null)
    ? null
    : 'The energy flow is not shown: a part gives back more heat over the year than it gets, which bands cannot show.';

/** Least share of the largest flow that has words beside it; the table has all. [-] */
const WORDED = 0.005;

/** Whether a node has words. */
const worded = (graph: FlowGraph, value: number): boolean =>
  value >= WORDED * Math.max(...graph.nodes.map((node) => node.value));

const nodesOf = (graph: FlowGraph, stage: number) => graph.nodes.filter((node) => node.stage === stage);

/** What a node is as wide as. [J] */
const widthOf = (graph: FlowGraph, id: string, value: number): number => {
  const through = throughNode(graph, id);
  return Math.max(value, through.in, through.out);
};

/** Room for words in a stage so that it fits into `limit`. [px] */
function wordRoom(graph: FlowGraph, stage: number, { narrow }: ChartContext, scale: number, limit: number): number {
  const [full, least] = narrow ? WORDS.narrow : WORDS.wide;
  for (let room: number = full; room > least; room -= 2)
    if (stageLength(graph, stage, narrow, scale, room) <= limit) return room;
  return least;
}

const spaceOf = (size: number, narrow: boolean, room: number, words: boolean): number =>
  Math.max(size + (narrow ? GAP.narrow : GAP.wide), words ? room : 0);

const stageLength = (graph: FlowGraph, stage: number, narrow: boolean, scale: number, room: number): number =>
  nodesOf(graph, stage).reduce(
    (sum, { id, value }) => sum + spaceOf(widthOf(graph, id, value) * scale, narrow, room, worded(graph, value)),
    0,
  );

/** Pixels for a joule, the same for all designs; less where a stage would not fit. */
function scaleOf(context: ChartContext): number {
  const { summaries, narrow, width } = context;
  const graphs = summaries.map(flowGraph).filter((graph) => graph !== null);
  const largest = Math.max(...graphs.flatMap(({ nodes }) => nodes.map(({ value }) => value)));
  let scale = (narrow ? WIDEST.narrow : WIDEST.wide) / largest;
  if (!narrow) return scale;
  const fits = (): boolean =>
    graphs.every((graph) =>
      Array.from({ length: STAGES }, (_, stage) => stage).every(
        (stage) => stageLength(graph, stage, true, scale, WORDS.narrow[1]) <= width - 8,
      ),
    );
  for (let step = 0; step < 40 && !fits(); step++) scale *= 0.95;
  return scale;
}

/** Puts nodes of each stage beside each other, the main stream first, with room for words. */
function placeBoxes(graph: FlowGraph, context: ChartContext, scale: number): [Map<string, Box>, number] {
  const { narrow, width } = context;
  const step = narrow ? STAGE_NARROW : (width - 8 - LAST_WORDS) / (STAGES - 1);
  const boxes = new Map<string, Box>();
  let across = 0;
  for (let stage = 0; stage < STAGES; stage++) {
    const room = wordRoom(graph, stage, context, scale, narrow ? width - 8 : Number.POSITIVE_INFINITY);
    let next = 0;
    for (const { id, value } of nodesOf(graph, stage)) {
      const size = widthOf(graph, id, value) * scale;
      const space = spaceOf(size, narrow, room, worded(graph, value));
      boxes.set(id, { along: stage * step, across: next, size, space });
      next += space;
    }
    across = Math.max(across, next);
  }
  return [boxes, across];
}

const px = (value: number): string => String(Math.round(value * 1e4) / 1e4);

function drawGraph(graph: FlowGraph, context: ChartContext, scale: number, top: number): [svg: string, end: number] {
  const { narrow, palette, units } = context;
  const [boxes, across] = placeBoxes(graph, context, scale);
  const taken = new Map<string, number>();
  const take = (key: string, size: number): number => {
    const start = taken.get(key) ?? 0;
    taken.set(key, start + size);
    return start;
  };
  /** A point along and across the stream; telephones have the stream run down. */
  const point = (along: number, sideways: number): string =>
    narrow ? `${px(sideways + 4)} ${px(along + top)}` : `${px(along + 4)} ${px(sideways + top)}`;
  const bands = graph.links.map(({ from, to, value, role }) => {
    const [a, b] = [boxes.get(from)!, boxes.get(to)!];
    const size = value * scale;
    const start = a.across + take(`${from}>`, size);
    const end = b.across + take(`>${to}`, size);
    const [x0, x1] = [a.along + BAR, b.along];
    const middle = (x0 + x1) / 2;
    return `<path data-flow="${from}-${to}" fill="${palette[role]}" fill-opacity="${role === 'muted' ? 0.28 : 0.5}" d="M${point(x0, start)}C${point(middle, start)} ${point(middle, end)} ${point(x1, end)}L${point(x1, end + size)}C${point(middle, end + size)} ${point(middle, start + size)} ${point(x0, start + size)}z"/>`;
  });
  const bars = graph.nodes.map(({ id, role }) => {
    const { along, across: side, size } = boxes.get(id)!;
    return `<path data-node="${id}" fill="${palette[role]}" d="M${point(along, side)}L${point(along + BAR, side)}L${point(along + BAR, side + size)}L${point(along, side + size)}z"/>`;
  });
  const words = graph.nodes.map(({ id, label, value }) => {
    if (!worded(graph, value)) return '';
    const { along, across: side, space } = boxes.get(id)!;
    const [x, y] = narrow ? [side + 4, along + top + BAR + 13] : [along + 4 + BAR + 4, side + top + 13];
    const lines = narrow ? breakLabel(label, Math.floor((space - 4) / 5.6)) : [label];
    const number = formatQuantity(value, 'energy', units);
    const text = lines.map((line, index) => `<tspan x="${px(x)}" y="${px(y + index * 13)}">${line}</tspan>`);
    return `<text font-size="${narrow ? 11 : TEXT}" fill="${palette.ink}">${text.join('')}<tspan x="${px(x)}" y="${px(y + lines.length * 14)}" font-weight="600">${number}</tspan></text>`;
  });
  const length = narrow ? (STAGES - 1) * STAGE_NARROW + BAR + 64 : across;
  return [bands.join('') + bars.join('') + words.join(''), top + length];
}

/** Lines of at most so many characters, where words allow. */
function breakLabel(label: string, characters: number): string[] {
  const lines: string[] = [];
  for (const word of label.split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= characters) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}

/** One picture a design, all to one scale. */
export function energyFlow(context: ChartContext): Drawing {
  const { summaries, units } = context;
  const scale = scaleOf(context);
  const several = summaries.length > 1;
  const titles: object[] = [];
  let front = '';
  let y = 0;
  summaries.forEach((summary, index) => {
    const graph = flowGraph(summary);
    if (graph === null) return;
    if (several) titles.push(panelTitle(context, index, y + 4));
    const [svg, end] = drawGraph(graph, context, scale, y + TOP + (several ? TITLE_ROOM : 0));
    front += svg;
    y = end + 12;
  });
  return {
    height: Math.ceil(y + 6),
    front,
    label: summaries
      .map(
        ({ design, year }) =>
          `Heat from the sun to the taps, ${design.name}: of ${formatQuantity(year.irradiation, 'energy', units)} sunlight ${formatQuantity(year.deliveredEnergy, 'energy', units)} are delivered; with the heater ${formatQuantity(year.tapHeat, 'energy', units)} come out at the taps`,
      )
      .join('. '),
    option: { title: titles, series: [] },
  };
}

/** The numbers of {@link energyFlow}. */
export function energyFlowTable({ summaries, units }: ChartContext): { header: string[]; rows: string[][] } {
  const graphs = summaries.map(flowGraph);
  const letter = (index: number): string => (summaries.length > 1 ? `${letterOf(index)}: ` : '');
  const rows = new Map<string, string[]>();
  graphs.forEach((graph, index) => {
    const name = new Map(graph?.nodes.map(({ id, label }) => [id, label]));
    for (const { from, to, value } of graph?.links ?? []) {
      const key = `${name.get(from)} → ${name.get(to)}`;
      const row = rows.get(key) ?? summaries.map(() => '–');
      row[index] = formatQuantity(value, 'energy', units);
      rows.set(key, row);
    }
  });
  return {
    header: ['From → to', ...summaries.map((_, index) => `${letter(index)}heat of the year`)],
    rows: [...rows].map(([name, cells]) => [name, ...cells]),
  };
}
