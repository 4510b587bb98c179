/** Every lit hour of the year as a dot: light on the PV module against flow in the loop. */
import type { RunColumns } from '@noonloop/sim-core';
import { letterOf } from '../escape.ts';
import { displayUnit, formatNumber, formatQuantity, formatValue, toDisplay } from '../units.ts';
import { axisStyle, type ChartContext, legendEntry, niceAxis, panelTitle, TEXT, TITLE_ROOM } from './context.ts';
import type { Drawing } from './frame.ts';
import type { ColourRole } from './palette.ts';

const PANEL = { wide: 230, narrow: 200 }; // [px]
const LEFT = 52; // [px]
const AXIS_ROOM = 66; // [px]

/** How the pump spent an hour. */
type Manner = 'whole' | 'part' | 'limit' | 'still';
const MANNERS: readonly [manner: Manner, word: string, role: ColourRole][] = [
  ['still', 'stands', 'muted'],
  ['part', 'runs part of the hour', 'solar'],
  ['whole', 'runs all the hour', 'pump'],
  ['limit', 'stopped by the high limit', 'tankTop'],
];

/** How the pump spent an hour, `null` where it is dark and nothing moves. */
function mannerOf(columns: RunColumns, hour: number): Manner | null {
  const running = columns.pumpRunning[hour]!;
  if (columns.pvIrradiance[hour]! <= 0 && running <= 0) return null;
  if (columns.highLimit[hour]! > 0) return 'limit';
  return running >= 1 - 1e-9 ? 'whole' : running > 0 ? 'part' : 'still';
}

/**
 * Light on the module from which the pump runs: the least of an hour that it ran through, without a stop by the limit; `null`
 * where it never did, or where its drive is not the module's.
 */
export function pumpThreshold(columns: RunColumns, drive: string): number | null {
  if (drive === 'mains') return null;
  let least: number | null = null;
  for (let hour = 0; hour < 8760; hour++)
    if (mannerOf(columns, hour) === 'whole' && (least === null || columns.pvIrradiance[hour]! < least))
      least = columns.pvIrradiance[hour]!;
  return least;
}

/** Dots are placed to a tenth of a pixel, written as whole numbers. */
const FINENESS = 10;

/** Dots as lines of no length with round ends, each from the one before, left to right: half the text of separate marks. */
function dotPath(places: [x: number, y: number][]): string {
  let [lastX, lastY] = [0, 0];
  let path = '';
  for (const [x, y] of places.sort((a, b) => a[0] - b[0] || a[1] - b[1])) {
    const down = y - lastY;
    path += `m${x - lastX}${down < 0 ? '' : ' '}${down}h0`;
    [lastX, lastY] = [x, y];
  }
  return path;
}

/** One panel a design, all to one scale. */
export function pumpMap(context: ChartContext): Drawing {
  const { results, units, palette, narrow, width } = context;
  const light = (value: number): number => toDisplay(value, 'irradiance', units);
  const flow = (value: number): number => toDisplay(value, 'flow', units);
  const peak = (column: 'pvIrradiance' | 'loopFlow'): number =>
    Math.max(...results.map(({ columns }) => columns[column].reduce((a, b) => Math.max(a, b), 0)));
  const xAxis = niceAxis(0, Math.max(1, light(peak('pvIrradiance'))), narrow ? 4 : 8);
  const yAxis = niceAxis(0, Math.max(1e-6, flow(peak('loopFlow'))), 4);
  const several = results.length > 1;
  const title = several ? TITLE_ROOM : 0;
  const panel = narrow ? PANEL.narrow : PANEL.wide;
  const legendRoom = narrow ? 62 : 40;
  const step = panel + AXIS_ROOM + title;
  const top = (index: number): number => legendRoom + 14 + index * step + title;
  const plot = width - LEFT - 24;
  const place = (index: number, hour: number): [x: number, y: number] => {
    const { columns } = results[index]!;
    const x = LEFT + (light(columns.pvIrradiance[hour]!) / xAxis.max) * plot;
    const y = top(index) + panel - (flow(columns.loopFlow[hour]!) / yAxis.max) * panel;
    return [Math.round(x * FINENESS), Math.round(y * FINENESS)];
  };
  const marks = results.map(({ columns, design }, index) => {
    const places: Record<Manner, [x: number, y: number][]> = { whole: [], part: [], limit: [], still: [] };
    for (let hour = 0; hour < 8760; hour++) {
      const manner = mannerOf(columns, hour);
      if (manner !== null) places[manner].push(place(index, hour));
    }
    const dots = MANNERS.map(([manner, , role]) =>
      places[manner].length === 0
        ? ''
        : `<path data-dots="${manner}" d="${dotPath(places[manner])}" transform="scale(${1 / FINENESS})" fill="none" stroke="${palette[role]}" stroke-width="${3 * FINENESS}" stroke-linecap="round" stroke-opacity="0.55"/>`,
    );
    const threshold = pumpThreshold(columns, design.pump.drive);
    if (threshold === null) return dots.join('');
    const x = LEFT + (light(threshold) / xAxis.max) * plot;
    const right = x > LEFT + plot * 0.6;
    const line = `<path d="M${x.toFixed(1)} ${top(index)}v${panel}" stroke="${palette.ink}" stroke-dasharray="4 3"/>`;
    const word = `<text x="${(x + (right ? -5 : 5)).toFixed(1)}" y="${top(index) + 12}" font-size="${TEXT}" text-anchor="${right ? 'end' : 'start'}" fill="${palette.ink}">runs through from ${formatQuantity(threshold, 'irradiance', units)}</text>`;
    return dots.join('') + line + word;
  });
  let x = 4;
  let y = 14;
  let legend = '';
  for (const [, word, role] of [...MANNERS].reverse()) {
    if (x > 4 && x + 24 + word.length * 6.4 > width) {
      x = 4;
      y += 20;
    }
    const [entry, next] = legendEntry(x, y, { colour: palette[role] }, word, palette.ink);
    legend += entry;
    x = next;
  }
  const style = axisStyle(context);
  const number = (value: number): string => formatNumber(value, value % 1 === 0 ? 0 : 1);
  return {
    height: legendRoom + 14 + results.length * step,
    front: marks.join('') + legend,
    label: results
      .map(({ design, columns }) => {
        const threshold = pumpThreshold(columns, design.pump.drive);
        const from =
          threshold === null
            ? ''
            : `, runs through from ${formatQuantity(threshold, 'irradiance', units)} on its module`;
        return `Flow against light on the pump’s module, ${design.name}: up to ${formatQuantity(
          columns.loopFlow.reduce((a, b) => Math.max(a, b)),
          'flow',
          units,
        )}${from}`;
      })
      .join('. '),
    option: {
      title: several ? results.map((_, index) => panelTitle(context, index, top(index) - title - 16)) : [],
      grid: results.map((_, index) => ({
        left: LEFT,
        top: top(index),
        width: plot,
        height: panel,
        outerBoundsMode: 'none',
      })),
      xAxis: results.map((_, index) => ({
        ...style,
        ...xAxis,
        gridIndex: index,
        type: 'value',
        name: `light on the PV module, ${displayUnit('irradiance', units).symbol}`,
        nameLocation: 'middle',
        nameGap: 28,
        splitLine: { show: false },
        axisLabel: { ...style.axisLabel, formatter: number },
      })),
      yAxis: results.map((_, index) => ({
        ...style,
        ...yAxis,
        gridIndex: index,
        type: 'value',
        name: displayUnit('flow', units).symbol,
        nameLocation: 'end',
        nameGap: 8,
        axisLabel: { ...style.axisLabel, formatter: number },
      })),
      series: [],
    },
  };
}

/** Light is sorted into classes this wide. [W/m²] */
const CLASS = 100;

/** The numbers of {@link pumpMap}: hours and mean flow by class of light. */
export function pumpMapTable({ results, units }: ChartContext): { header: string[]; rows: string[][] } {
  const letter = (index: number): string => (results.length > 1 ? `${letterOf(index)}: ` : '');
  const classes = new Set<number>();
  const sums = results.map(({ columns }) => {
    const found = new Map<number, { hours: number; running: number; flow: number }>();
    for (let hour = 0; hour < 8760; hour++) {
      if (mannerOf(columns, hour) === null) continue;
      const of = Math.floor(columns.pvIrradiance[hour]! / CLASS);
      classes.add(of);
      const sum = found.get(of) ?? { hours: 0, running: 0, flow: 0 };
      sum.hours++;
      sum.running += columns.pumpRunning[hour]!;
      sum.flow += columns.loopFlow[hour]!;
      found.set(of, sum);
    }
    return found;
  });
  return {
    header: [
      `Light from [${displayUnit('irradiance', units).symbol}]`,
      ...results.flatMap((_, index) => [
        `${letter(index)}hours`,
        `${letter(index)}pump runs [h]`,
        `${letter(index)}mean flow [${displayUnit('flow', units).symbol}]`,
      ]),
    ],
    rows: [...classes]
      .sort((a, b) => a - b)
      .map((of) => [
        formatValue(of * CLASS, 'irradiance', units),
        ...sums.flatMap((found) => {
          const sum = found.get(of);
          if (sum === undefined) return ['0', '0.0', '–'];
          return [
            formatNumber(sum.hours, 0),
            formatNumber(sum.running, 1),
            formatValue(sum.flow / sum.hours, 'flow', units),
          ];
        }),
      ]),
  };
}
