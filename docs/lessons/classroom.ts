/** What the six lessons share: one house, one invented year, and a plain way to draw lines. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { defineSystem, type RunResult, type SystemInput, simulate } from '@noonloop/sim-core';
import { readWeather } from '@noonloop/weather-io';

/** The invented year. */
export const weather = await readWeather(new URL('../examples/weather/invented-valley.csv', import.meta.url).pathname);

/** The house of the lessons: two panels of 2 m², 300 L, 200 L a day at 45 °C, no high limit. */
export const house: SystemInput = {
  name: 'house of the lessons',
  array: { panels: 2, tilt: 40, azimuth: 180, collector: { area: '2 m2', eta0: 0.75, a1: 3.8, a2: 0.012 } },
  tank: { volume: '300 L' },
  draw: { dailyVolume: '200 L' },
  control: { highLimit: null },
};

/** A year of that house with something changed; each part given replaces that part. */
export const yearOf = (change: Partial<SystemInput> = {}): RunResult =>
  simulate(defineSystem({ ...house, ...change }), weather, { keepTankNodes: true });

/** Sum of a column over some hours, the year by default. */
export const total = (column: Float64Array, from = 0, to = 8760): number =>
  column.subarray(from, to).reduce((sum, value) => sum + value, 0);

/** The same in kWh. */
export const kWh = (column: Float64Array, from = 0, to = 8760): number => total(column, from, to) / 3.6e6;

/** Highest value of a column. */
export const highest = (column: Float64Array): number => column.reduce((high, value) => Math.max(high, value));

/** First hour of a day of the year; 0 is 1 January. */
export const hourOfDay = (day: number): number => 24 * day;

/** A line of a table in plain text: the first cell to the left, the others to the right. */
export const row = (cells: readonly (string | number)[], first = 26, width = 12): string =>
  cells.map((cell, index) => (index === 0 ? String(cell).padEnd(first) : String(cell).padStart(width))).join('');

/** One line of a picture. */
export interface Line {
  /** Name at its end. */
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
}

const COLOURS = ['#8a3b12', '#1f5fa6', '#6a3d9a', '#2f6f3e', '#b0741a', '#555555'];
const DASHES = ['', '7 3', '2 3', '10 3 2 3', '1 2', '12 4'];
const FRAME = { left: 58, top: 56, width: 480, height: 240 };

/** About five round steps from 0 or below to a highest value. */
function roundSteps(least: number, most: number): number[] {
  const rough = (most - least) / 5;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((factor) => factor * power).find((size) => size >= rough)!;
  const first = Math.floor(least / step) * step;
  return Array.from({ length: Math.ceil((most - first) / step + 1e-9) + 1 }, (_, index) => first + index * step);
}

const escaped = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');
const short = (value: number): string => String(Number(value.toPrecision(6)));

/** Writes a picture of lines as docs/lessons/pictures/<file>.svg. */
export function draw({ file, title, x, y, lines }: Picture): void {
  const all = lines.flatMap((line) => line.points);
  const across = all.map(([value]) => value);
  const up = roundSteps(Math.min(0, ...all.map(([, value]) => value)), Math.max(...all.map(([, value]) => value)));
  const [from, to] = [Math.min(...across), Math.max(...across)];
  const [low, high] = [up[0]!, up.at(-1)!];
  const placeX = (value: number) => FRAME.left + ((value - from) / (to - from)) * FRAME.width;
  const placeY = (value: number) => FRAME.top + FRAME.height - ((value - low) / (high - low)) * FRAME.height;
  const grid = up.map(
    (value) =>
      `<path d="M${FRAME.left} ${placeY(value).toFixed(1)}h${FRAME.width}" stroke="#ddd"/>` +
      `<text x="${FRAME.left - 8}" y="${(placeY(value) + 4).toFixed(1)}" text-anchor="end">${short(value)}</text>`,
  );
  const marks = roundSteps(from, to)
    .filter((value) => value >= from && value <= to)
    .map(
      (value) =>
        `<text x="${placeX(value).toFixed(1)}" y="${FRAME.top + FRAME.height + 18}" text-anchor="middle">${short(value)}</text>`,
    );
  const drawn = lines.map(({ points }, index) => {
    const way = points.map(([a, b], at) => `${at === 0 ? 'M' : 'L'}${placeX(a).toFixed(1)} ${placeY(b).toFixed(1)}`);
    const stroke = COLOURS[index % COLOURS.length]!;
    const dash = DASHES[index % DASHES.length]!;
    const key = FRAME.top + 14 + 20 * index;
    const style = `fill="none" stroke="${stroke}" stroke-width="2.2"${dash === '' ? '' : ` stroke-dasharray="${dash}"`}`;
    return (
      `<path d="${way.join('')}" ${style}/><path d="M556 ${key - 4}h28" ${style}/>` +
      `<text x="590" y="${key}">${escaped(lines[index]!.name)}</text>`
    );
  });
  const parts = [
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 720 350" font-family="system-ui, sans-serif" font-size="12" fill="#222" role="img">',
    `<title>${escaped(title)}</title>`,
    '<rect width="720" height="350" fill="#fff"/>',
    `<text x="12" y="20" font-size="14" font-weight="600">${escaped(title)}</text>`,
    `<text x="12" y="40">${escaped(y)}</text>`,
    ...grid,
    ...marks,
    `<text x="${FRAME.left + FRAME.width / 2}" y="336" text-anchor="middle">${escaped(x)}</text>`,
    ...drawn,
    '</svg>',
  ];
  const folder = new URL('./pictures/', import.meta.url);
  mkdirSync(folder, { recursive: true });
  writeFileSync(new URL(`${file}.svg`, folder), `${parts.join('\n')}\n`);
}
