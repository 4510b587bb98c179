/** The heat scale: one colour for one temperature on all pages, and the key that explains it. */
import { formatNumber, toDisplay, type Units } from '../units.ts';
import { type ChartContext, TEXT } from './context.ts';
import { CHARACTER } from './frame.ts';
import { HEAT_COUNT, heatColour } from './palette.ts';

/** Where the second step begins, and how wide each is, in shown units: 20, 30, … 90 °C; 60, 80, … 200 °F. */
const STEPS: Readonly<Record<Units, { readonly from: number; readonly step: number }>> = {
  metric: { from: 20, step: 10 },
  us: { from: 60, step: 20 },
};

/** Step of the heat scale in which a temperature falls. @param value - [°C] @returns 0 to 8 */
export const heatStep =
  (units: Units) =>
  (value: number): number => {
    const { from, step } = STEPS[units];
    return Math.min(
      HEAT_COUNT - 1,
      Math.max(0, Math.floor((toDisplay(value, 'temperature', units) - from) / step) + 1),
    );
  };

/** What stands between the steps, as shown, and the unit. */
export function heatTicks(units: Units): { readonly ticks: readonly string[]; readonly unit: string } {
  const { from, step } = STEPS[units];
  const ticks = Array.from({ length: HEAT_COUNT - 1 }, (_, at) => formatNumber(from + at * step, 0));
  return { ticks, unit: units === 'us' ? '°F' : '°C' };
}

/** A temperature that the key points at. */
export interface KeyMark {
  readonly word: string;
  /** [°C] */
  readonly value: number;
}

/** Height of {@link heatKey}. [px] */
export const KEY_ROOM = 66;

/** Key over a map, with marks below it. @param left - where it starts [px] */
export function heatKey(context: ChartContext, marks: readonly KeyMark[], left: number): string {
  const { palette, units, width } = context;
  const { from, step } = STEPS[units];
  const ticks = heatTicks(units);
  const size = Math.min(48, Math.floor((width - left - 12) / HEAT_COUNT));
  const text = (x: number, y: number, anchor: string, word: string, colour: string): string =>
    `<text x="${x}" y="${y}" font-size="${TEXT}" text-anchor="${anchor}" fill="${colour}">${word}</text>`;
  const boxes = Array.from(
    { length: HEAT_COUNT },
    (_, at) =>
      `<rect x="${left + at * size}" y="18" width="${size}" height="12" fill="${heatColour(palette, at)}" stroke="${palette.grid}" stroke-width="0.5"/>`,
  );
  const numbers = ticks.ticks.map((word, at) => text(left + (at + 1) * size, 13, 'middle', word, palette.muted));
  const unit = text(4, 28, 'start', ticks.unit, palette.muted);
  let end = Number.NEGATIVE_INFINITY;
  let row = 0;
  const pointers = [...marks]
    .sort((a, b) => a.value - b.value)
    .map(({ word, value }) => {
      const share = (toDisplay(value, 'temperature', units) - from) / step + 1;
      const x = left + Math.min(HEAT_COUNT - 0.1, Math.max(0.1, share)) * size;
      const length = word.length * CHARACTER * TEXT;
      const start = Math.min(Math.max(4, x - length / 2), width - 4 - length);
      row = start < end + 8 ? 1 - row : 0;
      end = start + length;
      const y = 46 + row * 15;
      return `<path d="M${x.toFixed(1)} 30v${row === 0 ? 5 : 18}" stroke="${palette.ink}"/>${text(Math.round(start), y, 'start', word, palette.ink)}`;
    });
  return unit + boxes.join('') + numbers.join('') + pointers.join('');
}
