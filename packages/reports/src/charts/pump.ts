/** Flow for the light on the PV module: what the pump did in each class of light. */
import type { RunColumns } from '@noonloop/sim-core';
import { displayUnit, formatNumber, formatQuantity, formatValue, toDisplay, type Units } from '../units.ts';
import { grid, levelAxis, uprightAxis } from './axes.ts';
import { type ChartContext, legendEntry, letterBefore, niceAxis, panelTitle, TEXT, TITLE_ROOM } from './context.ts';
import { CHARACTER, type Drawing } from './frame.ts';

const PANEL = { wide: 150, several: 112, narrow: 150 }; // [px]
const LEFT = 48; // [px]
const RIGHT = 24; // [px]
const UNIT_ROOM = 30; // [px]
const AXIS_ROOM = 52; // [px]
const LEGEND = 20; // [px]

/** Classes of light. */
const COUNT = 25;
const WIDTH: Readonly<Record<Units, number>> = { metric: 50, us: 15 };

/** Flow in the hours of one class of light. */
interface LightClass {
  /** Lower end, in shown units. */
  readonly from: number;
  readonly hours: number;
  /** Flow that 10, 50 and 90 % of these hours do not exceed. [m³/s] */
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

/** Hours with light on the module and not stopped by the high limit, by class of light; classes without hours are left out. */
export function lightClasses(columns: RunColumns, units: Units): LightClass[] {
  const flows = Array.from({ length: COUNT }, (): number[] => []);
  for (let hour = 0; hour < 8760; hour++) {
    const light = columns.pvIrradiance[hour]!;
    if (light <= 0 || columns.highLimit[hour]! > 0) continue;
    const at = Math.floor(toDisplay(light, 'irradiance', units) / WIDTH[units]);
    flows[Math.min(at, COUNT - 1)]!.push(columns.loopFlow[hour]!);
  }
  return flows.flatMap((unsorted, at) => {
    if (unsorted.length === 0) return [];
    const flow = unsorted.sort((a, b) => a - b);
    const rank = (share: number): number => flow[Math.max(0, Math.ceil(share * flow.length) - 1)]!;
    return [{ from: at * WIDTH[units], hours: flow.length, low: rank(0.1), middle: rank(0.5), high: rank(0.9) }];
  });
}

/**
 * Light on the module from which the pump runs: the least of an hour that it ran through, without a stop by the limit; `null`
 * where it never did, or where its drive is not the module's.
 */
export function pumpThreshold(columns: RunColumns, drive: string): number | null {
  if (drive === 'mains') return null;
  let least: number | null = null;
  for (let hour = 0; hour < 8760; hour++)
    if (
      columns.pumpRunning[hour]! >= 1 - 1e-9 &&
      columns.highLimit[hour]! === 0 &&
      (least === null || columns.pvIrradiance[hour]! < least)
    )
      least = columns.pvIrradiance[hour]!;
  return least;
}

/** One panel a design, all to one scale. */
export function pumpFlow(context: ChartContext): Drawing {
  const { results, units, palette, narrow, width } = context;
  const all = results.map(({ columns }) => lightClasses(columns, units));
  const flow = (value: number): number => toDisplay(value, 'flow', units);
  const half = WIDTH[units] / 2;
  const brightest = Math.max(WIDTH[units], ...all.flatMap((of) => of.map(({ from }) => from + 2 * half)));
  const across = niceAxis(0, brightest, narrow ? 4 : 8);
  const up = niceAxis(0, Math.max(1e-6, ...all.flatMap((of) => of.map(({ high }) => flow(high)))) * 1.1, 4);
  const title = results.length > 1 ? TITLE_ROOM : 0;
  const panel = narrow ? PANEL.narrow : title > 0 ? PANEL.several : PANEL.wide;
  const step = UNIT_ROOM + panel + AXIS_ROOM + title;
  const top = (index: number): number => LEGEND + index * step + title + UNIT_ROOM;
  const plot = width - LEFT - RIGHT;
  const thresholds = results.map(({ columns, design }) => pumpThreshold(columns, design.pump.drive));
  const marks = thresholds.map((threshold, index) => {
    if (threshold === null) return '';
    const x = LEFT + (toDisplay(threshold, 'irradiance', units) / across.max) * plot;
    const word = `runs through from ${formatQuantity(threshold, 'irradiance', units)}`;
    const room = word.length * CHARACTER * TEXT;
    const end = x + room + 6 > width;
    return `<path d="M${x.toFixed(1)} ${top(index)}v${panel}" stroke="${palette.ink}" stroke-dasharray="4 3"/><text x="${(x + (end ? -5 : 5)).toFixed(1)}" y="${top(index) + 13}" font-size="${TEXT}" text-anchor="${end ? 'end' : 'start'}" fill="${palette.ink}">${word}</text>`;
  });
  const [first, next] = legendEntry(4, 14, { colour: palette.ink, dash: '' }, 'middle', palette.ink);
  const [second] = legendEntry(
    next,
    14,
    { colour: palette.grid, line: palette.axis },
    'four hours of five',
    palette.ink,
  );
  const line = (of: readonly LightClass[], value: (one: LightClass) => number): [x: number, y: number][] =>
    of.map((one) => [one.from + half, flow(value(one))]);
  const bands = all.map((of, index) => {
    const corners = [...line(of, ({ high }) => high), ...line(of, ({ low }) => low).reverse()].map(
      ([x, y]) =>
        `${(LEFT + (x / across.max) * plot).toFixed(1)} ${(top(index) + panel * (1 - y / up.max)).toFixed(1)}`,
    );
    return `<path d="M${corners.join('L')}z" fill="${palette.grid}" stroke="${palette.axis}" stroke-width="0.8"/>`;
  });
  return {
    height: LEGEND + results.length * step,
    behind: bands.join(''),
    front: first + second + marks.join(''),
    label: results
      .map(({ design }, index) => {
        const from =
          thresholds[index] === null
            ? ''
            : `, runs through from ${formatQuantity(thresholds[index]!, 'irradiance', units)} on its module`;
        const most = Math.max(0, ...all[index]!.map(({ middle }) => middle));
        return `Flow for the light on the pump’s module, ${design.name}: up to ${formatQuantity(most, 'flow', units)} on the middle${from}`;
      })
      .join('. '),
    option: {
      title: title === 0 ? [] : results.map((_, index) => panelTitle(context, index, top(index) - UNIT_ROOM - 16)),
      grid: results.map((_, index) => grid({ left: LEFT, top: top(index), width: plot, height: panel })),
      xAxis: results.map((_, index) =>
        levelAxis(context, index, across, `light on the PV module, ${displayUnit('irradiance', units).symbol}`),
      ),
      yAxis: results.map((_, index) => uprightAxis(context, index, up, displayUnit('flow', units).symbol, LEFT)),
      series: all.map((of, index) => ({
        type: 'line',
        symbol: 'none',
        xAxisIndex: index,
        yAxisIndex: index,
        lineStyle: { color: palette.ink, width: 2 },
        data: line(of, ({ middle }) => middle),
      })),
    },
  };
}

/** The numbers of {@link pumpFlow}. */
export function pumpFlowTable(context: ChartContext): { header: string[]; rows: string[][] } {
  const { results, units } = context;
  const all = results.map(({ columns }) => lightClasses(columns, units));
  const { symbol } = displayUnit('flow', units);
  const froms = [...new Set(all.flatMap((of) => of.map(({ from }) => from)))].sort((a, b) => a - b);
  return {
    header: [
      `Light from [${displayUnit('irradiance', units).symbol}]`,
      ...results.flatMap((_, index) =>
        ['hours', `10 % [${symbol}]`, `middle [${symbol}]`, `90 % [${symbol}]`].map(
          (head) => letterBefore(context, index) + head,
        ),
      ),
    ],
    rows: froms.map((from) => [
      formatNumber(from, 0),
      ...all.flatMap((of) => {
        const found = of.find((one) => one.from === from);
        if (found === undefined) return ['0', '–', '–', '–'];
        const { hours, low, middle, high } = found;
        return [formatNumber(hours, 0), ...[low, middle, high].map((value) => formatValue(value, 'flow', units))];
      }),
    ]),
  };
}
