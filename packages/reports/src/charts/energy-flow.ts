/** Heat from sun and fuel to the taps as bands, each as wide as what flows in it. */
import { formatNumber, formatQuantity } from '../units.ts';
import { type ChartContext, charactersIn, letterBefore, panelTitle, TEXT, TITLE_ROOM } from './context.ts';
import { BAR, type FlowRoom, isMain, largestOf, type PlacedNode, placeNodes, STAGES } from './flow-layout.ts';
import { type FlowGraph, flowGraph } from './flow-model.ts';
import type { Drawing } from './frame.ts';

/** Lying: stages from left to right, words of the main stream above it. Upright, on telephones: downwards, words to the left. */
const LYING = { edge: 52, start: 4, end: 104, across: 190, room: { words: 46, gap: 8, centred: true } };
const UPRIGHT = { edge: 86, start: 26, end: 66, step: 92, room: { words: 78, gap: 10, centred: false } };

const LINE = 14; // [px]

/** Why a design has no picture, or `null`. */
export const flowMissing = ({ summaries }: ChartContext): string | null =>
  summaries.some((summary) => flowGraph(summary) !== null)
    ? null
    : 'The energy flow is not shown: a part gives back more heat over the year than it gets, which bands cannot show.';

const roomOf = ({ narrow, width }: ChartContext): FlowRoom =>
  narrow
    ? { ...UPRIGHT.room, step: UPRIGHT.step }
    : { ...LYING.room, step: (width - LYING.start - LYING.end) / (STAGES - 1) };

/** Pixels for a joule, the same for all designs; less where a stage would not fit across a telephone. */
function scaleOf(context: ChartContext, graphs: readonly FlowGraph[]): number {
  const largest = Math.max(...graphs.map(largestOf));
  if (!context.narrow) return LYING.across / largest;
  const limit = context.width - UPRIGHT.edge - 2;
  let scale = limit / largest;
  for (let turn = 0; turn < 60; turn++) {
    if (graphs.every((graph) => placeNodes(graph, scale, roomOf(context))[1] <= limit)) break;
    scale *= 0.96;
  }
  return scale;
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

/** Words outside the bands: of the main stream over its edge, of the fuel before it, of losses where nothing flows on. */
function labelOf({ id, label, value, worded, size }: PlacedNode, context: ChartContext): object {
  if (!worded) return { show: false };
  const { narrow, palette, units } = context;
  const step = roomOf(context).step - BAR - 6;
  const room = narrow
    ? isMain(id)
      ? UPRIGHT.edge
      : UPRIGHT.room.words
    : id === 'taps' || id === 'heater'
      ? LYING.end
      : step;
  const fontSize = narrow ? 11 : TEXT;
  const lines = [
    ...breakLabel(label, charactersIn(room + 6, fontSize)).map((line) => `{w|${line}}`),
    `{n|${formatQuantity(value, 'energy', units)}}`,
  ];
  const own = narrow
    ? isMain(id)
      ? { position: 'left', align: 'right', distance: 6 }
      : { position: id === 'fuel' ? [0, -lines.length * LINE - 2] : [0, BAR + 4], align: 'left' }
    : isMain(id)
      ? { position: [0, -lines.length * LINE - 4], align: 'left' }
      : id === 'fuel'
        ? { position: 'left', align: 'right', distance: 5 }
        : { position: [BAR + 5, (size - lines.length * LINE) / 2], align: 'left', verticalAlign: 'top' };
  const text = { fontSize, lineHeight: LINE, fill: palette.ink, color: palette.ink };
  return {
    show: true,
    verticalAlign: Array.isArray(own.position) ? 'top' : 'middle',
    ...own,
    formatter: lines.join('\n'),
    rich: { w: text, n: { ...text, fontWeight: 600 } },
  };
}

/** One design as a series of the charting library. @param top - over it [px] */
function seriesOf(graph: FlowGraph, context: ChartContext, scale: number, top: number): [series: object, end: number] {
  const { narrow, palette } = context;
  const [nodes, reach] = placeNodes(graph, scale, roomOf(context));
  // The library takes the scale from the fullest stage: the box is made as wide as that stage is at ours.
  const sums = Array.from({ length: STAGES }, (_, stage) =>
    nodes.reduce((sum, { stage: of, size }) => (of === stage ? sum + size : sum), 0),
  );
  const across = Math.max(...sums);
  const along = roomOf(context).step * (STAGES - 1) + BAR;
  const box = narrow
    ? { left: UPRIGHT.edge, top: top + UPRIGHT.start, width: across, height: along }
    : { left: LYING.start, top: top + LYING.edge, width: along, height: across };
  const known = new Set(nodes.map(({ id }) => id));
  const series = {
    type: 'sankey',
    ...box,
    orient: narrow ? 'vertical' : 'horizontal',
    nodeWidth: BAR,
    nodeGap: 0,
    layoutIterations: 0,
    silent: true,
    data: nodes.map((node) => ({
      name: node.id,
      depth: node.stage,
      value: node.size,
      localX: narrow ? node.across / across : node.along / along,
      localY: narrow ? node.along / along : node.across / across,
      itemStyle: { color: palette[node.role], borderWidth: 0 },
      label: labelOf(node, context),
    })),
    links: graph.links
      .filter(({ from, to }) => known.has(from) && known.has(to))
      .map(({ from, to, value, role }) => ({
        source: from,
        target: to,
        value: value * scale,
        lineStyle: { color: palette[role], opacity: role === 'loss' ? 0.4 : 0.62, curveness: 0.5 },
      })),
  };
  const end = narrow ? box.top + along + UPRIGHT.end : box.top + reach + 12;
  return [series, end];
}

/** One picture a design, all to one scale. */
export function energyFlow(context: ChartContext): Drawing {
  const { summaries, units } = context;
  const graphs = summaries.map(flowGraph);
  const scale = scaleOf(
    context,
    graphs.filter((graph) => graph !== null),
  );
  const titles: object[] = [];
  const series: object[] = [];
  let y = 0;
  graphs.forEach((graph, index) => {
    if (graph === null) return;
    if (summaries.length > 1) titles.push(panelTitle(context, index, y + 4));
    const [one, end] = seriesOf(graph, context, scale, y + (summaries.length > 1 ? TITLE_ROOM : 0));
    series.push(one);
    y = end;
  });
  return {
    height: Math.ceil(y),
    label: summaries
      .map(
        ({ design, year }) =>
          `Heat from the sun to the taps, ${design.name}: of ${formatQuantity(year.irradiation, 'energy', units)} sunlight ${formatQuantity(year.deliveredEnergy, 'energy', units)} are delivered; with the heater ${formatQuantity(year.tapHeat, 'energy', units)} come out at the taps`,
      )
      .join('. '),
    option: { title: titles, series },
  };
}

/** The numbers of {@link energyFlow}. */
export function energyFlowTable(context: ChartContext): { header: string[]; rows: string[][] } {
  const { summaries, units } = context;
  const rows = new Map<string, string[]>();
  summaries.map(flowGraph).forEach((graph, index) => {
    const name = new Map(graph?.nodes.map(({ id, label }) => [id, label]));
    for (const { from, to, value } of graph?.links ?? []) {
      const key = `${name.get(from)} → ${name.get(to)}`;
      const row = rows.get(key) ?? summaries.flatMap(() => ['–', '–']);
      row[2 * index] = formatQuantity(value, 'energy', units);
      row[2 * index + 1] = `${formatNumber((100 * value) / summaries[index]!.year.irradiation, 1)} %`;
      rows.set(key, row);
    }
  });
  return {
    header: [
      'From → to',
      ...summaries.flatMap((_, index) =>
        ['heat of the year', 'of the sun on the panels'].map((head) => letterBefore(context, index) + head),
      ),
    ],
    rows: [...rows].map(([name, cells]) => [name, ...cells]),
  };
}
