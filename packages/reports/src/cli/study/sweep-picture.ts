// A sweep as a picture: a map over two axes, else a line.
import type { Measure, StudyRow } from '@noonloop/sim-core';
import { HEAT_COUNT, heatColour } from '../../charts/palette.ts';
import { converted, digits } from '../../shown-units.ts';
import type { Units } from '../../units.ts';
import { axis, labelled, near, palette, svg, TEXT, title } from './frame.ts';
import { unitOf } from './measures.ts';
import type { WrittenAs } from './written.ts';

/** A sweep: a map over two axes, lines over one, else bars of every design. */
export async function sweepPicture(
  places: readonly string[],
  rows: readonly StudyRow[],
  measure: Measure,
  { units, written }: { readonly units: Units; readonly written: WrittenAs },
): Promise<string> {
  const said = (row: StudyRow, place: string) => shown(written(place, row.inputs[place]));
  const value = (row: StudyRow) => converted(row.measures[measure]!, unitOf(measure), units);
  const of = (place: string) => [...new Set(rows.map((row) => said(row, place)))];
  const first = rows.filter(({ weather }) => weather === 0);
  if (places.length === 2) {
    const [down, across] = places as [string, string];
    const cells = first.map((row) => [said(row, across), said(row, down), value(row)] as const);
    return map(cells, { across: of(across), down: of(down), names: [across, down], words: labelled(measure, units) });
  }
  const names = first.map((row) => places.map((place) => said(row, place)).join(', '));
  return svg({
    height: 380,
    label: `${labelled(measure, units)} by ${places.join(', ')}`,
    option: {
      title: title(labelled(measure, units)),
      grid: { left: 70, right: 20, top: 44, bottom: 60 },
      xAxis: { type: 'category', data: names, name: places.join(', '), nameGap: 34, ...axis },
      yAxis: { type: 'value', ...near, ...axis },
      series: [
        { type: 'line', symbolSize: 7, color: palette.solar, lineStyle: { width: 2.5 }, data: first.map(value) },
      ],
    },
  });
}

const shown = (value: unknown): string => (typeof value === 'number' ? digits(value) : String(value));

interface MapFrame {
  readonly across: readonly string[];
  readonly down: readonly string[];
  readonly names: readonly [string, string];
  readonly words: string;
}

function map(cells: readonly (readonly [string, string, number])[], frame: MapFrame): Promise<string> {
  const { across, down, names, words } = frame;
  const values = cells.map(([, , number]) => number);
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const share = (number: number) => (high > low ? (number - low) / (high - low) : 1);
  return svg({
    height: 110 + 44 * down.length,
    label: `Map of ${words} over ${names.join(' and ')}`,
    option: {
      title: title(words),
      grid: { left: 90, right: 20, top: 44, bottom: 60 },
      xAxis: { type: 'category', data: across, name: names[0], nameGap: 32, ...axis },
      yAxis: { type: 'category', data: down, name: names[1], nameGap: 64, ...axis },
      visualMap: { show: false, min: low, max: high > low ? high : low + 1, inRange: { color: STEPS } },
      series: [
        {
          type: 'heatmap',
          data: cells.map(([x, y, number]) => ({
            value: [x, y, number],
            label: {
              show: across.length <= 14,
              formatter: digits(Number(number.toPrecision(3))),
              color: share(number) > 0.5 ? palette.page : palette.ink,
              fontSize: TEXT,
            },
            itemStyle: { borderColor: palette.page, borderWidth: 1 },
          })),
        },
      ],
    },
  });
}

const STEPS = Array.from({ length: HEAT_COUNT }, (_, step) => heatColour(palette, step));
