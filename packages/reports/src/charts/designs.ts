/** Designs told apart by letter, colour, dash and mark, the same everywhere. */
import { cut, escapeHtml, letterOf, plainText } from '../escape.ts';
import { type ChartContext, charactersIn, legendLines } from './context.ts';
import type { ColourRole, Palette } from './palette.ts';

/** Mark, colour and dash of the first four; from the fifth on they come again with a finer dash. */
const STYLES = [
  { role: 'designA', mark: '●', dash: '' },
  { role: 'designB', mark: '■', dash: '8 3' },
  { role: 'designC', mark: '▲', dash: '2 3' },
  { role: 'designD', mark: '◆', dash: '8 3 2 3' },
] as const satisfies readonly { role: ColourRole; mark: string; dash: string }[];
const FINER = ['4 2', '12 4', '1 2', '12 3 4 3'];

/** Mark before a design's letter. */
export const designMark = (index: number): string => STYLES[index % STYLES.length]!.mark;

/** Colour and dash of a design. */
export function designStyle(palette: Palette, index: number): { readonly colour: string; readonly dash: string } {
  const at = index % STYLES.length;
  const { role, dash } = STYLES[at]!;
  return { colour: palette[role], dash: index < STYLES.length ? dash : FINER[at]! };
}

/** Dash of a line as echarts takes it. */
export const dashOf = (dash: string): 'solid' | number[] => (dash === '' ? 'solid' : dash.split(' ').map(Number));

/** Letters and names of all designs with their lines, in as many lines as they need. */
export const designLegend = (context: ChartContext): [svg: string, height: number] =>
  legendLines(
    context.results.map(({ design }, index) => ({
      ...designStyle(context.palette, index),
      word: escapeHtml(`${letterOf(index)}  ${cut(plainText(design.name), charactersIn(context.width - 60))}`),
    })),
    context,
  );
