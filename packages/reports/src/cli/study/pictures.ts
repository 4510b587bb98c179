// The outcome of a study as a picture: bars of influence, bands of percentiles, a frontier, a search.
import type { Measure, Spread, StudyRow } from '@noonloop/sim-core';
import { escapeHtml } from '../../escape.ts';
import { converted, unitIn, withUnit } from '../../shown-units.ts';
import type { Units } from '../../units.ts';
import { axis, labelled, near, palette, svg, TEXT, text, title, WIDTH } from './frame.ts';
import { unitOf, wordsOf } from './measures.ts';

/** A bar of influence, in the unit of its key figure. */
export interface InfluenceBar {
  readonly name: string;
  readonly from: number;
  readonly to: number;
  readonly low?: number;
  readonly high?: number;
}

/** What each input does, the strongest on top. */
export function influencePicture(
  bars: readonly InfluenceBar[],
  words: string,
  unit: string,
  units: Units,
): Promise<string> {
  const kind = unit === '°C' ? 'K' : unit;
  const value = (number: number) => converted(number, kind, units);
  const ordered = [...bars].reverse();
  const names = ordered.map(({ name }) => name);
  const isTwoSided = ordered.some(({ from }) => from !== 0);
  const bar = (name: string, color: string, data: readonly number[]) => ({
    type: 'bar',
    name,
    stack: name,
    barGap: '-100%',
    barWidth: 18,
    color,
    data,
  });
  const whiskers = ordered.flatMap(({ name, low, high }) =>
    low === undefined || high === undefined
      ? []
      : [
          {
            type: 'line',
            symbol: 'none',
            lineStyle: { color: palette.ink, width: 1.5 },
            data: [
              [value(low), name],
              [value(high), name],
            ],
          },
        ],
  );
  return svg({
    height: 120 + 32 * Math.max(names.length, 1),
    label: `${words}: ${[...names].reverse().join(', ')}`,
    option: {
      title: title(`${words} [${unitIn(kind, units).symbol}]`),
      legend: isTwoSided
        ? { top: 26, left: 8, textStyle: text, itemWidth: 12, itemHeight: 12, itemGap: 26 }
        : { show: false },
      grid: { left: 200, right: 30, top: 60, bottom: 36 },
      xAxis: { type: 'value', ...axis },
      yAxis: { type: 'category', data: names, ...axis, axisLabel: { ...text, width: 180, overflow: 'truncate' } },
      series: [
        ...(isTwoSided
          ? [
              bar(
                'at its lowest',
                palette.designC,
                ordered.map(({ from }) => value(from)),
              ),
            ]
          : []),
        bar(
          isTwoSided ? 'at its highest' : 'influence',
          palette.solar,
          ordered.map(({ to }) => value(to)),
        ),
        ...whiskers,
      ],
    },
  });
}

/** Bands of percentiles, each key figure on a scale of its own. */
export async function bandPicture(spreads: readonly (readonly [Measure, Spread])[], units: Units): Promise<string> {
  const shownAs = (measure: Measure, value: number) => withUnit(value, unitOf(measure), units);
  const rows = spreads.filter(([measure, { p5, p95 }]) => shownAs(measure, p5) !== shownAs(measure, p95));
  const [left, right, step, top] = [240, WIDTH - 40, 58, 64];
  const parts = rows.map(([measure, spread], row) => {
    const y = top + row * step;
    const x = (value: number) => left + ((value - spread.p5) / (spread.p95 - spread.p5)) * (right - left);
    const box = (from: number, to: number, height: number, fill: string) =>
      `<rect x="${x(from).toFixed(1)}" y="${y - height / 2}" width="${(x(to) - x(from)).toFixed(1)}" height="${height}" fill="${fill}"/>`;
    const number = (value: number, anchor: string) =>
      `<text x="${x(value).toFixed(1)}" y="${y + 26}" text-anchor="${anchor}" font-size="12" fill="${palette.muted}">${escapeHtml(withUnit(value, unitOf(measure), units))}</text>`;
    const middle = `<line x1="${x(spread.p50).toFixed(1)}" x2="${x(spread.p50).toFixed(1)}" y1="${y - 11}" y2="${y + 11}" stroke="${palette.ink}" stroke-width="2.5"/>`;
    const room = 110;
    const inner = x(spread.p50) - left > room && right - x(spread.p50) > room ? number(spread.p50, 'middle') : '';
    return `<text x="8" y="${y + 4}" font-size="${TEXT}" fill="${palette.ink}">${escapeHtml(wordsOf(measure))}</text>${box(spread.p5, spread.p95, 8, palette.grid)}${box(spread.p25, spread.p75, 16, palette.solar)}${middle}${number(spread.p5, 'start')}${inner}${number(spread.p95, 'end')}`;
  });
  const words =
    'Thin: nine of ten designs; thick: half of them; stroke: the middle one. Each line has a scale of its own.';
  return svg({
    height: top + rows.length * step + 10,
    label: `Bands of percentiles: ${rows.map(([measure]) => wordsOf(measure)).join(', ')}`,
    option: {},
    front: `<text x="8" y="24" font-size="${TEXT}" fill="${palette.muted}">${words}</text>${parts.join('')}`,
  });
}

/** A design by what it costs and saves. */
interface PricedPoint {
  readonly cost: number;
  readonly value: number;
}

/** All designs, and a line through those that no cheaper one beats. */
export function frontierPicture(
  all: readonly PricedPoint[],
  best: readonly PricedPoint[],
  measure: Measure,
  units: Units,
): Promise<string> {
  const point = ({ cost, value }: PricedPoint) => [cost, converted(value, unitOf(measure), units)];
  return svg({
    height: 420,
    label: `${labelled(measure, units)} by price; a line through the designs that no cheaper one beats`,
    option: {
      title: title(`${labelled(measure, units)} by price`),
      legend: { top: 26, left: 8, textStyle: text, itemGap: 26 },
      grid: { left: 70, right: 30, top: 60, bottom: 60 },
      xAxis: { type: 'value', name: 'price', nameGap: 32, ...near, ...axis },
      yAxis: { type: 'value', ...near, ...axis },
      series: [
        { type: 'scatter', name: 'all designs', symbolSize: 7, color: palette.designC, data: all.map(point) },
        {
          type: 'line',
          name: 'beaten by no cheaper one',
          step: 'end',
          symbolSize: 9,
          color: palette.solar,
          lineStyle: { width: 2.5 },
          data: best.map(point),
        },
      ],
    },
  });
}

/** A search: every design looked at, and the best so far. */
export function searchPicture(
  rows: readonly StudyRow[],
  measure: Measure,
  units: Units,
  goal: { readonly isLowest: boolean; readonly keeps: (row: StudyRow) => boolean },
): Promise<string> {
  const points = rows.flatMap((row) => {
    const value = row.measures[measure] ?? null;
    if (value === null) return [];
    return [{ at: row.index + 1, value: converted(value, unitOf(measure), units), keeps: goal.keeps(row) }];
  });
  let best: number | null = null;
  const course = points.map(({ at, value, keeps }) => {
    if (keeps) best = best === null ? value : goal.isLowest ? Math.min(best, value) : Math.max(best, value);
    return [at, best];
  });
  return svg({
    height: 400,
    label: `${labelled(measure, units)} of every design that the search looked at`,
    option: {
      title: title(labelled(measure, units)),
      legend: { top: 26, left: 8, textStyle: text, itemGap: 26 },
      grid: { left: 70, right: 30, top: 60, bottom: 60 },
      xAxis: { type: 'value', name: 'design looked at', nameGap: 32, ...axis },
      yAxis: { type: 'value', ...near, ...axis },
      series: [
        {
          type: 'scatter',
          name: 'designs',
          symbolSize: 6,
          color: palette.designC,
          data: points.map(({ at, value }) => [at, value]),
        },
        {
          type: 'line',
          name: 'best so far within the limits',
          symbol: 'none',
          step: 'end',
          color: palette.solar,
          lineStyle: { width: 2.5 },
          data: course,
        },
      ],
    },
  });
}
