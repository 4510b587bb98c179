/** The hours in which the system stood in the sun: by day and hour, with what kept it standing. */
import type { RunColumns } from '@noonloop/sim-core';
import { MONTH_NAMES, MONTH_STARTS } from '../calendar.ts';
import { letterOf } from '../escape.ts';
import { formatNumber } from '../units.ts';
import { type ChartContext, legendLines, letterBefore } from './context.ts';
import type { Drawing } from './frame.ts';
import type { Palette } from './palette.ts';
import { heatPaths, yearPanels } from './year-map.ts';

/** Kinds, the gravest last: it is what an hour with several is drawn as. */
const KINDS = [
  { word: 'stopped by the high limit', role: 'heat3', of: ({ highLimit }: RunColumns, h: number) => highLimit[h]! },
  { word: 'stagnation', role: 'heat6', of: ({ stagnation }: RunColumns, h: number) => stagnation[h]! },
  { word: 'boiling', role: 'ink', of: ({ boiling }: RunColumns, h: number) => boiling[h]! },
] as const satisfies readonly {
  word: string;
  role: keyof Palette;
  of: (columns: RunColumns, hour: number) => number;
}[];

/** Hours of a kind between two hours of the year, shares added up; by the limit only while the sun shines. [h] */
function hoursOf(columns: RunColumns, kind: number, from = 0, to = 8760): number {
  let sum = 0;
  for (let hour = from; hour < to; hour++) if (columns.irradiance[hour]! > 0) sum += KINDS[kind]!.of(columns, hour);
  return sum;
}

/** Gravest kind of each hour, −1 for none. */
const kindsOf = (columns: RunColumns): Float64Array =>
  Float64Array.from({ length: 8760 }, (_, hour) =>
    columns.irradiance[hour]! > 0 ? KINDS.findLastIndex(({ of }) => of(columns, hour) > 0) : -1,
  );

/** Designs that stood in the sun at all. */
const hardDesigns = (results: ChartContext['results']): number[] =>
  results.flatMap(({ columns }, index) => (kindsOf(columns).some((kind) => kind >= 0) ? [index] : []));

/** Why there is no picture, or `null`. */
export const hardHoursMissing = ({ results }: ChartContext): string | null =>
  hardDesigns(results).length > 0
    ? null
    : 'The system never stood in the sun for heat: no stop by the high limit, no stagnation, no boiling.';

/** Letters of the designs that never did, where others did. */
export const hardHoursNone = ({ results }: ChartContext): string[] => {
  const hard = hardDesigns(results);
  return [...results.keys()].filter((index) => !hard.includes(index)).map(letterOf);
};

const count = (columns: RunColumns): string =>
  KINDS.map(({ word }, kind) => {
    const hours = hoursOf(columns, kind);
    return `${word} ${hours === 0 ? 'none' : `about ${formatNumber(Math.max(1, hours), 0)} h`}`;
  }).join(', ');

/** One panel a design. */
export function hardHours(context: ChartContext): Drawing {
  const { results, palette } = context;
  const [legend, legendRoom] = legendLines(
    KINDS.map(({ word, role }) => ({ colour: palette[role], line: palette.axis, word })),
    context,
  );
  const { height, marks, option } = yearPanels(context, legendRoom + 12, hardDesigns(results), (index) =>
    heatPaths(kindsOf(results[index]!.columns), (kind) => kind, KINDS.length)
      .map((path, kind) => (path === '' ? '' : `<path fill="${palette[KINDS[kind]!.role]}" d="${path}"/>`))
      .join(''),
  );
  return {
    height,
    behind: marks,
    front: legend,
    label: results
      .map(({ design, columns }) => `Hours in the sun without flow, ${design.name}: ${count(columns)}`)
      .join('. '),
    option,
  };
}

/** Hours a month by kind. */
export function hardHoursTable(context: ChartContext): { header: string[]; rows: string[][] } {
  const { results } = context;
  const cells = (from: number, to: number): string[] =>
    results.flatMap(({ columns }) => KINDS.map((_, kind) => formatNumber(hoursOf(columns, kind, from, to), 0)));
  return {
    header: [
      'Month',
      ...results.flatMap((_, index) => KINDS.map(({ word }) => `${letterBefore(context, index)}${word} [h]`)),
    ],
    rows: [
      ...MONTH_NAMES.map((name, month) => [name, ...cells(24 * MONTH_STARTS[month]!, 24 * MONTH_STARTS[month + 1]!)]),
      ['Year', ...cells(0, 8760)],
    ],
  };
}
