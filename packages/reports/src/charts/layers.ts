/** Layers of the tank through the summer week: hours on x, height on y, temperature as colour. */
import { formatDay, formatHour } from '../calendar.ts';
import { letterOf } from '../escape.ts';
import { displayUnit, formatNumber, formatQuantity, formatValue, toDisplay } from '../units.ts';
import { chooseWeek } from './choose-week.ts';
import { type ColourSteps, colourKey, levelOf, stepColour } from './colour-steps.ts';
import { axisStyle, type ChartContext, panelTitle, TITLE_ROOM } from './context.ts';
import type { Drawing } from './frame.ts';

const HOURS = 168;
const PANEL = { wide: 190, narrow: 150 }; // [px]
const LEFT = 44; // [px]
const KEY_ROOM = 62; // [px]
const AXIS_ROOM = 34; // [px]
const STEP = { metric: 5, us: 10 }; // [°C or °F]
/** Hours of the table. [h] */
const EVERY = 6;

/** Designs whose layers were kept. */
const kept = ({ results }: ChartContext): number[] =>
  results.flatMap((result, index) => (result.tankNodes.length > 0 ? [index] : []));

/** Why there is no picture, or `null`. */
export const layersMissing = (context: ChartContext): string | null =>
  kept(context).length > 0
    ? null
    : 'The layers of the tank are not shown: the run did not keep them (option keepTankNodes of simulate).';

interface Week {
  readonly first: number;
  /** Node `n`, bottom first, at the end of hour `h` of the week. [°C] */
  readonly at: (index: number, hour: number, node: number) => number;
  readonly nodes: (index: number) => number;
}

function readWeek({ results }: ChartContext): Week {
  const first = chooseWeek(results[0]!, 'summer') * 24;
  const nodes = (index: number): number => results[index]!.tankNodes.length / 8760;
  return { first, nodes, at: (index, hour, node) => results[index]!.tankNodes[(first + hour) * nodes(index) + node]! };
}

/** One path a colour step of the runs of equal colour in each hour; one unit is an hour and a node, bottom first. */
export function layerPaths(nodes: number, level: (hour: number, node: number) => number, count: number): string[] {
  const paths = Array.from({ length: count }, () => '');
  for (let hour = 0; hour < HOURS; hour++) {
    let start = 0;
    for (let node = 1; node <= nodes; node++) {
      const current = level(hour, start);
      if (node < nodes && level(hour, node) === current) continue;
      paths[current] += `M${hour} ${nodes - node}h1v${node - start}h-1z`;
      start = node;
    }
  }
  return paths;
}

/** One panel a design, all in the same colours. */
export function tankLayers(context: ChartContext): Drawing {
  const { results, units, narrow, palette, width } = context;
  const shown = kept(context);
  const { first, at, nodes } = readWeek(context);
  const title = results.length > 1 ? TITLE_ROOM : 0;
  const panel = narrow ? PANEL.narrow : PANEL.wide;
  const step = panel + AXIS_ROOM + title;
  const top = (place: number): number => KEY_ROOM + place * step + title;
  const plot = width - LEFT - 8;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const index of shown)
    for (let hour = 0; hour < HOURS; hour++)
      for (let node = 0; node < nodes(index); node++) {
        low = Math.min(low, at(index, hour, node));
        high = Math.max(high, at(index, hour, node));
      }
  const size = STEP[units];
  const from = Math.floor(toDisplay(low, 'temperature', units) / size) * size;
  const count = Math.floor((toDisplay(high, 'temperature', units) - from) / size) + 1;
  const steps: ColourSteps = { from, step: size, count };
  const level = levelOf(steps, 'temperature', units);
  const colour = stepColour(steps);
  const pictures = shown.map((index, place) => {
    const paths = layerPaths(nodes(index), (hour, node) => level(at(index, hour, node)), count);
    const marks = paths.map((path, one) => (path === '' ? '' : `<path fill="${colour(one)}" d="${path}"/>`)).join('');
    return `<g shape-rendering="crispEdges" transform="translate(${LEFT} ${top(place)}) scale(${plot / HOURS} ${panel / nodes(index)})">${marks}</g>`;
  });
  const style = axisStyle(context);
  return {
    height: KEY_ROOM + shown.length * step,
    behind: pictures.join(''),
    front: colourKey(context, steps, displayUnit('temperature', units).symbol, LEFT),
    label: `Layers of the tank by height, ${formatDay(first / 24)} to ${formatDay(first / 24 + 6)}. ${shown
      .map((index) => {
        let top = Number.NEGATIVE_INFINITY;
        for (let hour = 0; hour < HOURS; hour++) top = Math.max(top, at(index, hour, nodes(index) - 1));
        return `${results[index]!.design.name}: top up to ${formatQuantity(top, 'temperature', units)}`;
      })
      .join('. ')}`,
    option: {
      title: results.length > 1 ? shown.map((index, place) => panelTitle(context, index, top(place) - 36)) : [],
      grid: shown.map((_, place) => ({
        left: LEFT,
        top: top(place),
        width: plot,
        height: panel,
        outerBoundsMode: 'none',
      })),
      xAxis: shown.map((_, place) => ({
        ...style,
        gridIndex: place,
        type: 'value',
        min: 0,
        max: HOURS,
        interval: 24,
        axisLine: { show: true, onZero: false, lineStyle: { color: palette.muted } },
        splitLine: { show: false },
        axisLabel: {
          ...style.axisLabel,
          customValues: Array.from({ length: 7 }, (_unused, day) => day * 24 + 12),
          formatter: (hour: number) => {
            const day = formatDay(first / 24 + Math.floor(hour / 24));
            return narrow ? day.split(' ')[0]! : day;
          },
        },
      })),
      yAxis: shown.map((_, place) => ({
        ...style,
        gridIndex: place,
        type: 'value',
        min: 0,
        max: 1,
        interval: 0.5,
        name: 'height',
        nameLocation: 'end',
        nameGap: 7,
        axisLine: { show: false },
        splitLine: { show: false },
        axisLabel: { ...style.axisLabel, formatter: (share: number) => `${formatNumber(100 * share, 0)}%` },
      })),
      series: [],
    },
  };
}

/** The numbers of {@link tankLayers}, every sixth hour, bottom node first. */
export function tankLayersTable(context: ChartContext): { header: string[]; rows: string[][] } {
  const { results, units } = context;
  const shown = kept(context);
  const { first, at, nodes } = readWeek(context);
  const { symbol } = displayUnit('temperature', units);
  const letter = (index: number): string => (results.length > 1 ? `${letterOf(index)}: ` : '');
  const node = (index: number, one: number): string =>
    one === 0 ? 'bottom' : one === nodes(index) - 1 ? 'top' : `layer ${one + 1}`;
  return {
    header: [
      'End of hour from',
      ...shown.flatMap((index) =>
        Array.from({ length: nodes(index) }, (_, one) => `${letter(index)}${node(index, one)} [${symbol}]`),
      ),
    ],
    rows: Array.from({ length: HOURS / EVERY }, (_, row) => {
      const hour = row * EVERY + EVERY - 1;
      return [
        formatHour(first + hour),
        ...shown.flatMap((index) =>
          Array.from({ length: nodes(index) }, (_, one) => formatValue(at(index, hour, one), 'temperature', units)),
        ),
      ];
    }),
  };
}
