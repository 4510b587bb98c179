/** Pictures of the lessons, drawn by the charting library with the axes, colours and dashes of the reports. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { grid, levelAxis, type Scale, uprightAxis } from '../../packages/reports/src/charts/axes.ts';
import { niceAxis } from '../../packages/reports/src/charts/context.ts';
import { dashOf, designStyle } from '../../packages/reports/src/charts/designs.ts';
import { draw as render } from '../../packages/reports/src/charts/frame.ts';
import { LIGHT } from '../../packages/reports/src/charts/palette.ts';

/** One line of a picture. */
export interface Line {
  /** Name beside it. */
  readonly name: string;
  /** Points from left to right. */
  readonly points: readonly (readonly [x: number, y: number])[];
}

/** A picture of lines. */
export interface Picture {
  /** File name without ending. */
  readonly file: string;
  /** What it shows, in one sentence; read out by a screen reader too. */
  readonly title: string;
  /** Name and unit of each axis. */
  readonly x: string;
  readonly y: string;
  /** The lines. */
  readonly lines: readonly Line[];
  /** Values at which the level axis is marked, where round ones would not fit: days, hours, months. */
  readonly marks?: Scale;
}

const SIZE = { width: 720, height: 350 }; // [px]
const PLOT = { left: 48, top: 62, width: 470, height: 232 }; // [px]

/** Writes a picture of lines as docs/lessons/pictures/<file>.svg, on white paper. */
export async function draw({ file, title, x, y, lines, marks }: Picture): Promise<void> {
  const context = { palette: LIGHT, narrow: false };
  const all = lines.flatMap(({ points }) => points);
  const [across, up] = [all.map(([value]) => value), all.map(([, value]) => value)];
  const level = marks ?? { ...niceAxis(Math.min(...across), Math.max(...across), 8) };
  const option = {
    backgroundColor: LIGHT.page,
    title: { text: title, left: 4, top: 4, textStyle: { fontSize: 14, fontWeight: 600, color: LIGHT.ink } },
    legend: {
      orient: 'vertical',
      left: PLOT.left + PLOT.width + 16,
      top: PLOT.top - 4,
      itemWidth: 30,
      itemStyle: { opacity: 0 },
      textStyle: { fontSize: 12, color: LIGHT.ink },
      data: lines.map(({ name }) => name),
    },
    grid: [grid(PLOT)],
    xAxis: [levelAxis(context, 0, level, x)],
    yAxis: [uprightAxis(context, 0, niceAxis(Math.min(0, ...up), Math.max(...up), 5), y, PLOT.left)],
    series: lines.map(({ name, points }, index) => {
      const { colour, dash } = designStyle(LIGHT, index);
      return {
        name,
        type: 'line',
        showSymbol: false,
        data: points,
        color: colour,
        lineStyle: { width: 2.2, color: colour, type: dashOf(dash) },
      };
    }),
  };
  const svg = await render({ option, height: SIZE.height, label: title }, file, SIZE.width, 'light');
  const folder = new URL('./pictures/', import.meta.url);
  mkdirSync(folder, { recursive: true });
  writeFileSync(new URL(`${file}.svg`, folder), `${svg}\n`);
}
