/** Colours of a map in steps, and the key that explains them. */
import { roundTo, toDisplay, type UnitKind, type Units } from '../units.ts';
import { type ChartContext, TEXT } from './context.ts';
import { heatColour } from './palette.ts';

/** Equal steps of a shown quantity. */
export interface ColourSteps {
  /** Lower end of the lowest step, shown units. */
  readonly from: number;
  readonly step: number;
  readonly count: number;
}

/** Step in which a value in SI falls. */
export const levelOf =
  ({ from, step, count }: ColourSteps, kind: UnitKind, units: Units) =>
  (value: number): number =>
    Math.min(count - 1, Math.max(0, Math.floor((toDisplay(value, kind, units) - from) / step)));

/** Colour of a step. */
export const stepColour =
  ({ count }: ColourSteps) =>
  (at: number): string =>
    heatColour(count < 2 ? 0.5 : at / (count - 1));

/** Key over a map. @param left - where it starts [px] */
export function colourKey(
  { narrow, palette, width }: ChartContext,
  steps: ColourSteps,
  symbol: string,
  left: number,
): string {
  const colour = stepColour(steps);
  const size = Math.min(40, Math.floor((width - left - 20) / steps.count));
  const every = Math.ceil((narrow ? 28 : 30) / size);
  const boxes = Array.from(
    { length: steps.count },
    (_, at) => `<rect x="${left + at * size}" y="6" width="${size}" height="11" fill="${colour(at)}"/>`,
  );
  const words: string[] = [];
  for (let at = 0; at <= steps.count; at += every)
    words.push(
      `<text x="${left + at * size}" y="31" font-size="${TEXT}" text-anchor="middle" fill="${palette.muted}">${String(roundTo(steps.from + at * steps.step, 2)).replace('-', '−')}</text>`,
    );
  return `<text x="4" y="16" font-size="${TEXT}" fill="${palette.muted}">${symbol}</text>${boxes.join('')}${words.join('')}`;
}
