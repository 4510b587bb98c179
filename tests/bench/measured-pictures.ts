/** Pictures of docs/theory/measured.md: measured beside modelled. */

import { drawProfile } from '@noonloop/sim-core/formulas';
import { draw } from '../../packages/reports/src/charts/frame.ts';
import { LIGHT } from '../../packages/reports/src/charts/palette.ts';
import { fitCollector, foretellOutlet } from '../validation/measured/collector.ts';
import { fittedTankLoss, nightEnds } from '../validation/measured/house.ts';
import { MAINS_WAYS, mainsReadings } from '../validation/measured/mains.ts';
import { planePairs } from '../validation/measured/planes.ts';
import type { Pairs } from '../validation/measured/sets.ts';
import { SENSORS, storeDay } from '../validation/measured/store.ts';
import { hourShares } from '../validation/measured/taps.ts';

const WIDTH = 720;
const HEIGHT = 350;

type Points = readonly (readonly [number, number])[];
interface Series {
  readonly name: string;
  readonly points: Points;
  readonly colour: string;
  readonly kind: 'dots' | 'line' | 'dashes';
}
interface Picture {
  readonly label: string;
  readonly x: { readonly name: string; readonly min: number; readonly max: number };
  readonly y: { readonly name: string; readonly min: number; readonly max: number };
  readonly series: readonly Series[];
}

const axis = (name: string, min: number, max: number, upright: boolean) => ({
  type: 'value',
  name,
  min,
  max,
  nameLocation: upright ? 'end' : 'middle',
  nameGap: upright ? 10 : 26,
  nameTextStyle: { color: LIGHT.muted, fontSize: 12, align: upright ? 'left' : 'center' },
  axisLine: { show: true, onZero: false, lineStyle: { color: LIGHT.axis } },
  axisLabel: { color: LIGHT.muted, fontSize: 12 },
  splitLine: { lineStyle: { color: LIGHT.grid } },
});

const seriesOf = ({ name, points, colour, kind }: Series) => ({
  name,
  data: points,
  silent: true,
  ...(kind === 'dots'
    ? { type: 'scatter', symbolSize: 5, itemStyle: { color: colour, opacity: 0.75 } }
    : {
        type: 'line',
        showSymbol: false,
        itemStyle: { color: colour },
        lineStyle: { color: colour, width: 1.6, type: kind === 'dashes' ? 'dashed' : 'solid' },
      }),
});

const render = (name: string, { label, x, y, series }: Picture): Promise<string> =>
  draw(
    {
      height: HEIGHT,
      label,
      option: {
        backgroundColor: LIGHT.page,
        grid: { left: 56, right: 24, top: 76, bottom: 44 },
        legend: { left: 52, top: 4, textStyle: { color: LIGHT.ink, fontSize: 12 } },
        xAxis: axis(x.name, x.min, x.max, false),
        yAxis: axis(y.name, y.min, y.max, true),
        series: series.map(seriesOf),
      },
    },
    `nl-${name}`,
    WIDTH,
    'light',
  );

const round = (value: number): number => Math.round(value * 100) / 100;
const pairsOf = ({ measured, modelled }: Pairs): Points =>
  measured.map((value, at) => [round(value), round(modelled[at]!)]);
const same = (from: number, to: number): Series => ({
  name: 'the same',
  points: [
    [from, from],
    [to, to],
  ],
  colour: LIGHT.axis,
  kind: 'dashes',
});

const PLANES: Picture = {
  label:
    'Hourly light on two planes at Golden: computed over measured, near the line of equals; the south wall scatters more.',
  x: { name: 'measured, W/m²', min: 0, max: 1200 },
  y: { name: 'by Perez, W/m²', min: 0, max: 1200 },
  get series() {
    return [
      same(0, 1200),
      { name: '40° south', points: pairsOf(planePairs(0, 'perez', true)), colour: LIGHT.solar, kind: 'dots' },
      { name: 'wall, south', points: pairsOf(planePairs(3, 'perez', true)), colour: LIGHT.tankTop, kind: 'dots' },
    ] as const;
  },
};

function collector(): Picture {
  const minutes = foretellOutlet(fitCollector());
  const line = (of: (minute: (typeof minutes)[number]) => number): Points =>
    minutes.map((minute) => [round(minute.hour), round(of(minute))]);
  return {
    label:
      'Outlet of a collector loop on a day that was not fitted: the foretold line follows the measured one within a kelvin or two, through the cloud after 14 h too.',
    x: { name: 'hour, UTC', min: 9, max: 15 },
    y: { name: 'outlet, °C', min: 80, max: 120 },
    series: [
      { name: 'measured', points: line(({ measured }) => measured), colour: LIGHT.ink, kind: 'line' },
      { name: 'foretold', points: line(({ modelled }) => modelled), colour: LIGHT.solar, kind: 'dashes' },
    ],
  };
}

function store(): Picture {
  const minutes = storeDay().filter((_, at) => at % 5 === 0);
  const colours = [LIGHT.tankBottom, LIGHT.fuel, LIGHT.solar];
  return {
    label:
      'Three sensors of a store over a day, measured and computed: the middle agrees, the top falls too far around noon, the bottom cools faster than computed in the evening.',
    x: { name: 'hour, UTC', min: 7, max: 19 },
    y: { name: 'water, °C', min: 80, max: 100 },
    series: SENSORS.flatMap((name, at): Series[] => [
      {
        name: `${name}, measured`,
        points: minutes.map(({ hour, measured }) => [round(hour), round(measured[at]!)]),
        colour: colours[at]!,
        kind: 'line',
      },
      {
        name: `${name}, computed`,
        points: minutes.map(({ hour, modelled }) => [round(hour), round(modelled[at]!)]),
        colour: colours[at]!,
        kind: 'dashes',
      },
    ]),
  };
}

function nights(): Picture {
  const ends = nightEnds(fittedTankLoss());
  return {
    label:
      'Tank at the end of quiet nights that were not fitted: bottom and top computed over measured, near the line of equals.',
    x: { name: 'measured at 5 h, °C', min: 20, max: 70 },
    y: { name: 'computed, °C', min: 20, max: 70 },
    series: [
      same(20, 70),
      { name: 'bottom', points: pairsOf(ends.bottom), colour: LIGHT.tankBottom, kind: 'dots' },
      { name: 'top', points: pairsOf(ends.top), colour: LIGHT.solar, kind: 'dots' },
    ],
  };
}

function taps(): Picture {
  const percent = (shares: readonly number[]): Points => shares.map((share, hour) => [hour + 0.5, round(100 * share)]);
  const shape = (name: 'level' | 'morning' | 'M', colour: string): Series => ({
    name,
    points: percent(drawProfile(name).hourlyShares),
    colour,
    kind: 'dashes',
  });
  return {
    label:
      'Share of a day’s water by hour: one flat measured, two households and tapping profile M; the flat is flatter than any but the level shape.',
    x: { name: 'hour of the day', min: 0, max: 24 },
    y: { name: 'share of the water, %', min: 0, max: 30 },
    series: [
      { name: 'measured', points: percent(hourShares()), colour: LIGHT.ink, kind: 'line' },
      shape('level', LIGHT.tankTop),
      shape('morning', LIGHT.designC),
      shape('M', LIGHT.solar),
    ],
  };
}

function mains(): Picture {
  const colours = [LIGHT.solar, LIGHT.tankTop, LIGHT.loss];
  const days = Array.from({ length: 74 }, (_, at) => 5 * at);
  return {
    label:
      'Cold water of a London tap through the year with three ways to compute it: the correlation swings half as far as the readings.',
    x: { name: 'day of the year', min: 0, max: 365 },
    y: { name: 'cold water, °C', min: 0, max: 25 },
    series: [
      {
        name: 'measured',
        points: mainsReadings().map(({ day, temperature }) => [day, temperature]),
        colour: LIGHT.ink,
        kind: 'dots',
      },
      ...Object.entries(MAINS_WAYS).map(
        ([name, way], at): Series => ({
          name: name.replace(/ \(.*/, ''),
          points: days.map((day) => [day, round(way(Math.max(day, 1)))]),
          colour: colours[at]!,
          kind: at === 0 ? 'line' : 'dashes',
        }),
      ),
    ],
  };
}

/** Pictures by name, as SVG text. */
export async function measuredPictures(): Promise<Record<string, string>> {
  const pictures: Record<string, Picture> = {
    planes: PLANES,
    collector: collector(),
    store: store(),
    nights: nights(),
    taps: taps(),
    mains: mains(),
  };
  const drawn = await Promise.all(
    Object.entries(pictures).map(async ([name, picture]) => [
      `measured-${name}.svg`,
      `${await render(`measured-${name}`, picture)}\n`,
    ]),
  );
  return Object.fromEntries(drawn);
}
