/** In how many hours of the year the tank is hotter than a temperature. */
import { letterOf } from '../escape.ts';
import { displayUnit, formatNumber, formatQuantity, formatValue, toDisplay } from '../units.ts';
import { grid, levelAxis, uprightAxis } from './axes.ts';
import { type ChartContext, niceAxis, TEXT } from './context.ts';
import { dashOf, designLegend, designStyle } from './designs.ts';
import { CHARACTER, type Drawing } from './frame.ts';
import { keyMarks } from './year-map.ts';

const PLOT = { wide: 190, narrow: 200 }; // [px]
const LEFT = 44; // [px]
const RIGHT = 14; // [px]
const UNIT_ROOM = 30; // [px]
const AXIS_ROOM = 52; // [px]
/** Every how many ranks the line has a point. [h] */
const EVERY = 24;

interface Curve {
  readonly word: string;
  readonly colour: string;
  readonly dash: string;
  /** Highest first. Shape [8760]. [°C] */
  readonly sorted: Float64Array;
}

const descending = (column: Float64Array): Float64Array => Float64Array.from(column).sort().reverse();

/** One design: hottest and bottom of the tank; several: the hottest of each. */
function curves({ results, palette }: ChartContext): Curve[] {
  if (results.length === 1) {
    const { columns } = results[0]!;
    return [
      { word: 'hottest part', colour: palette.tankTop, dash: '', sorted: descending(columns.tankMaximumTemperature) },
      { word: 'bottom', colour: palette.tankBottom, dash: '6 3', sorted: descending(columns.tankBottomTemperature) },
    ];
  }
  return results.map(({ columns }, index) => ({
    word: letterOf(index),
    ...designStyle(palette, index),
    sorted: descending(columns.tankMaximumTemperature),
  }));
}

/** Rank at which a curve is farthest from all others, away from the ends. */
function apart(all: readonly Curve[], of: number): number {
  let best = 4380;
  let widest = -1;
  for (let rank = 800; rank <= 7960; rank += 200) {
    const distance = Math.min(
      ...all.map(({ sorted }, index) =>
        index === of ? Number.POSITIVE_INFINITY : Math.abs(sorted[rank]! - all[of]!.sorted[rank]!),
      ),
    );
    if (distance > widest) [best, widest] = [rank, distance];
  }
  return best;
}

/** Where the word of a mark is clear of all curves: over its line at the right, under it at the left; else it has none. */
function labelAt(word: string, value: number, all: readonly Curve[], room: number): object {
  const rank = Math.ceil((8760 * (word.length * CHARACTER * TEXT + 12)) / room);
  if (all.every(({ sorted }) => sorted[Math.max(0, 8759 - rank)]! < value)) return { position: 'insideEndTop' };
  const under = value - 10; // [°C] about the height of the word
  if (all.every(({ sorted }) => sorted[Math.min(8759, rank)]! > value || sorted[0]! < under))
    return { position: 'insideStartBottom' };
  return { show: false };
}

/** Sorted curves, for one design with their words where they are farthest apart; designs have a legend. */
export function tankDuration(context: ChartContext): Drawing {
  const { results, units, palette, narrow, width } = context;
  const all = curves(context);
  const shown = (value: number): number => toDisplay(value, 'temperature', units);
  const lowest = Math.min(...all.map(({ sorted }) => shown(sorted[8759]!)));
  const highest = Math.max(...all.map(({ sorted }) => shown(sorted[0]!)));
  const scale = niceAxis(lowest, highest, 6);
  const plot = narrow ? PLOT.narrow : PLOT.wide;
  const [legend, legendRoom] = results.length > 1 ? designLegend(context) : ['', 0];
  const top = legendRoom + UNIT_ROOM;
  const room = width - LEFT - RIGHT;
  const words =
    results.length > 1
      ? ''
      : all
          .map(({ word, sorted }, index) => {
            const rank = apart(all, index);
            const x = LEFT + (rank / 8760) * room;
            const y = top + plot - ((shown(sorted[rank]!) - scale.min) / (scale.max - scale.min)) * plot;
            // Lines fall: to the right of its point a word above the line is clear of it, a word below to the left.
            const above = index === 0;
            return `<text x="${Math.round(x + (above ? 6 : -6))}" y="${Math.round(y + (above ? -7 : 17))}" font-size="${TEXT}" text-anchor="${above ? 'start' : 'end'}" fill="${palette.ink}">${word}</text>`;
          })
          .join('');
  const marks = keyMarks(context)
    .filter(({ value }) => shown(value) > scale.min && shown(value) < scale.max)
    .map(({ word, value }) => ({
      yAxis: shown(value),
      label: { ...labelAt(word, value, all, room), formatter: word },
    }));
  return {
    height: top + plot + AXIS_ROOM,
    front: legend + words,
    label: results
      .map(
        ({ design, columns }) =>
          `Hours in which the tank is hotter than a temperature, ${design.name}: above ${formatQuantity(60, 'temperature', units)} in ${columns.tankMaximumTemperature.filter((value) => value > 60).length} h`,
      )
      .join('. '),
    option: {
      grid: grid({ left: LEFT, top, width: room, height: plot }),
      xAxis: levelAxis(
        context,
        0,
        { min: 0, max: 8760, interval: narrow ? 2000 : 1000 },
        'hours of the year at or above',
      ),
      yAxis: uprightAxis(context, 0, scale, displayUnit('temperature', units).symbol, LEFT),
      series: [
        ...all.map(({ colour, dash, sorted }) => ({
          type: 'line',
          symbol: 'none',
          lineStyle: { color: colour, width: 2, type: dashOf(dash) },
          data: Array.from({ length: 8760 / EVERY + 1 }, (_, point) => [
            point * EVERY,
            shown(sorted[Math.min(8759, point * EVERY)]!),
          ]),
        })),
        {
          type: 'line',
          data: [],
          markLine: {
            silent: true,
            symbol: 'none',
            lineStyle: { color: palette.axis, width: 1, type: [2, 3] },
            label: { color: palette.muted, fontSize: TEXT, distance: [4, 2] },
            data: marks,
          },
        },
      ],
    },
  };
}

/** The numbers of {@link tankDuration}: the temperature held in some hours. */
export function tankDurationTable(context: ChartContext): { header: string[]; rows: string[][] } {
  const { units } = context;
  const all = curves(context);
  const { symbol } = displayUnit('temperature', units);
  const ranks = [1, 10, 100, 500, 1000, 2000, 3000, 4000, 5000, 6000, 7000, 8000, 8760];
  return {
    header: ['Hours of the year', ...all.map(({ word }) => `${word}, at least [${symbol}]`)],
    rows: ranks.map((rank) => [
      formatNumber(rank, 0),
      ...all.map(({ sorted }) => formatValue(sorted[rank - 1]!, 'temperature', units)),
    ]),
  };
}
