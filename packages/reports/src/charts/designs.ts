/** Designs told apart where they share one picture: by colour, and by dash once colours run out. */
import { cut, escapeHtml, letterOf, plainText } from '../escape.ts';
import { type ChartContext, legendEntry } from './context.ts';
import type { ColourRole, Palette } from './palette.ts';

const ROLES: readonly ColourRole[] = ['burner', 'solar', 'tankBottom', 'tankTop', 'pump', 'absorber'];
const DASHES = ['', '7 4', '2 3'];

/** Colour and dash of a design. */
export const designStyle = (palette: Palette, index: number): { readonly colour: string; readonly dash: string } => ({
  colour: palette[ROLES[index % ROLES.length]!],
  dash: DASHES[Math.floor(index / ROLES.length) % DASHES.length]!,
});

/** Height of one line of {@link designLegend}. [px] */
const LINE = 20;

/** Letters and names of all designs with their colours, in as many lines as they need. */
export function designLegend({ results, palette, narrow, width }: ChartContext): [svg: string, height: number] {
  let svg = '';
  let x = 4;
  let line = 0;
  results.forEach(({ design }, index) => {
    const word = `${letterOf(index)}  ${cut(plainText(design.name), narrow ? 36 : 44)}`;
    const room = 30 + word.length * 6.4;
    if (x > 4 && x + room > width) {
      line++;
      x = 4;
    }
    const { colour } = designStyle(palette, index);
    const [entry, next] = legendEntry(x, 14 + line * LINE, { colour }, escapeHtml(word), palette.ink);
    svg += entry;
    x = next;
  });
  return [svg, (line + 1) * LINE];
}
