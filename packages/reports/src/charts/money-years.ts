/** When a system pays: the present worth of its savings, less what it cost, year by year. */
import { letterOf } from '../escape.ts';
import { moneyOf } from '../money/rows.ts';
import type { Money, MoneyCase } from '../money/types.ts';
import { formatNumber } from '../units.ts';
import { grid, levelAxis, uprightAxis } from './axes.ts';
import { type ChartContext, niceAxis, TEXT } from './context.ts';
import { dashOf, designLegend, designStyle } from './designs.ts';
import { CHARACTER, type Drawing } from './frame.ts';

const PLOT = { wide: 190, narrow: 190 }; // [px]
const LEFT = 60; // [px]
const UNIT_ROOM = 30; // [px]
const AXIS_ROOM = 52; // [px]

const moneyOfAll = ({ results, money }: ChartContext): readonly Money[] => moneyOf(results, money!);

/** Why there is no picture, or `null`. */
export const moneyMissing = (context: ChartContext): string | null => {
  if (context.money === null) return 'No prices were given.';
  return moneyOfAll(context).every(({ cases }) => cases.length > 0)
    ? null
    : 'Money over the years is not shown: what the system costs was not given for every design.';
};

/** Worth at the end of each year, the start first. Shape [life + 1]. [currency] */
export const worthByYear = ({ years }: Money, { investment }: MoneyCase): number[] => {
  let sum = -investment;
  return [sum, ...years.map(({ presentValue }) => (sum += presentValue))];
};

/** A line a design, with what it is worth in the end; the years until it pays on the zero line. */
export function moneyYears(context: ChartContext): Drawing {
  const { results, palette, narrow, width } = context;
  const all = moneyOfAll(context);
  const lines = all.map((one) => worthByYear(one, one.cases[0]!));
  const life = Math.max(...lines.map((line) => line.length)) - 1;
  const scale = niceAxis(Math.min(0, ...lines.flat()), Math.max(0, ...lines.flat()), 5);
  const { currency } = all[0]!;
  const plot = narrow ? PLOT.narrow : PLOT.wide;
  const [legend, legendRoom] = results.length > 1 ? designLegend(context) : ['', 0];
  const top = legendRoom + UNIT_ROOM;
  const ends = lines.map((line) => `${formatNumber(line.at(-1)!, 0)}`);
  const right = Math.max(...ends.map((end) => end.length)) * CHARACTER * TEXT + (results.length > 1 ? 26 : 12);
  const y = (value: number): number => top + plot * (1 - (value - scale.min) / (scale.max - scale.min));
  // End values keep a line of text apart, the highest first.
  let last = Number.NEGATIVE_INFINITY;
  const words = [...lines.keys()]
    .sort((a, b) => lines[b]!.at(-1)! - lines[a]!.at(-1)!)
    .map((index) => {
      last = Math.max(y(lines[index]!.at(-1)!) + 4, last + 14);
      const letter = results.length > 1 ? `${letterOf(index)} ` : '';
      return `<text x="${width - right + 6}" y="${last.toFixed(1)}" font-size="${TEXT}" fill="${palette.ink}">${letter}${ends[index]}</text>`;
    });
  return {
    height: top + plot + AXIS_ROOM,
    front: legend + words.join(''),
    label: all
      .map((one, index) => {
        const { discountedPayback, netPresentValue } = one.cases[0]!;
        const paid =
          discountedPayback === null ? 'not paid back' : `paid back in ${formatNumber(discountedPayback, 1)} years`;
        return `Money over the years, ${results[index]!.design.name}: ${paid}, ${formatNumber(netPresentValue, 0)} ${currency} in the end`;
      })
      .join('. '),
    option: {
      grid: grid({ left: LEFT, top, width: width - LEFT - right, height: plot }),
      xAxis: levelAxis(context, 0, { min: 0, max: life, interval: life > 12 ? 5 : life > 6 ? 2 : 1 }, 'years'),
      yAxis: uprightAxis(context, 0, scale, currency, LEFT),
      series: lines.map((line, index) => ({
        type: 'line',
        symbol: 'none',
        lineStyle: {
          color: designStyle(palette, index).colour,
          width: 2,
          type: dashOf(designStyle(palette, index).dash),
        },
        data: line.map((value, year) => [year, value]),
        markLine: {
          silent: true,
          symbol: 'none',
          label: { show: false },
          lineStyle: { color: palette.ink, width: 1, type: 'solid' },
          data: index === 0 ? [{ yAxis: 0 }] : [],
        },
      })),
    },
  };
}

/** The numbers of {@link moneyYears}. */
export function moneyYearsTable(context: ChartContext): { header: string[]; rows: string[][] } {
  const all = moneyOfAll(context);
  const lines = all.map((one) => worthByYear(one, one.cases[0]!));
  const letter = (index: number): string => (all.length > 1 ? `${letterOf(index)}: ` : '');
  return {
    header: ['End of year', ...all.map(({ currency }, index) => `${letter(index)}worth [${currency}]`)],
    rows: Array.from({ length: Math.max(...lines.map((line) => line.length)) }, (_, year) => [
      String(year),
      ...lines.map((line) => (line[year] === undefined ? '–' : formatNumber(line[year], 0))),
    ]),
  };
}
