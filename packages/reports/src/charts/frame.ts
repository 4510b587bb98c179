/// <reference path="./echarts-bundle.d.ts" />
/** From an echarts option to a small, stable, accessible SVG. */
import type { EChartsOption } from 'echarts';
import { escapeHtml } from '../escape.ts';
import { type ColourRole, cssVariable, DARK, LIGHT, type Palette } from './palette.ts';

/** Colours of a chart: fixed light or dark ones, or those of the page that defines the CSS variables. */
export type ChartTheme = 'light' | 'dark' | 'page';

/** Font of all chart text. */
const FONT = 'system-ui, sans-serif';

/** Narrow charts are for telephones. [px] */
export const isNarrow = (width: number): boolean => width < 600;

/** Width of a character over the size of the text, about; wide rather than narrow, so that nothing is cut. [-] */
export const CHARACTER = 0.6;

/** What a chart hands to {@link draw}. */
export interface Drawing {
  readonly option: object;
  /** [px] */
  readonly height: number;
  /** SVG behind the axes, made by us. */
  readonly behind?: string;
  /** SVG over everything, made by us. */
  readonly front?: string;
  /** The chart in one sentence, for those who do not see it. */
  readonly label: string;
}

type Engine = typeof import('echarts');

let engine: Promise<Engine> | undefined;

/**
 * Loaded with the first chart, so that tables and data never wait for it; as one file, because its several hundred modules
 * take five times as long (0.9 s against 0.17 s). Text has no font to be measured by: its width is estimated.
 */
function loadEngine(): Promise<Engine> {
  engine ??= import('echarts/dist/echarts.esm.min.mjs').then((echarts: Engine) => {
    echarts.setPlatformAPI({
      measureText: (text: string, font?: string) => ({
        width: CHARACTER * Number(/([\d.]+)px/.exec(font ?? '')?.[1] ?? 12) * [...text].length,
      }),
    });
    return echarts;
  });
  return engine;
}

/** Colours while drawing; the page's are put in afterwards. */
export const paletteOf = (theme: ChartTheme): Palette => (theme === 'dark' ? DARK : LIGHT);

const ROLES = Object.entries(LIGHT) as [ColourRole, string][];

const colourByPage = (svg: string): string =>
  ROLES.reduce((text, [role, colour]) => text.replaceAll(`"${colour}"`, `"var(${cssVariable(role)})"`), svg);

/** Fuel is hatched, so that it is told from the sun's heat in grey. */
function hatchFuel(svg: string, id: string, { fuel, page }: Palette): string {
  const solid = `fill="${fuel}"`;
  if (!svg.includes(solid)) return svg;
  const pattern = `<defs><pattern id="${id}-fuel" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path d="M0 0h5v5h-5z" fill="${fuel}"/><path d="M0 0h1.2v5h-1.2z" fill="${page}"/></pattern></defs>`;
  return pattern + svg.replaceAll(solid, `fill="url(#${id}-fuel)"`);
}

/**
 * Renders on the server side. What a still picture does not need (hover styles, event marks, counters, hundredths of a pixel) is
 * taken out, and ids are renamed, so that the same chart is the same text every time.
 *
 * @param id - prefix of ids, unique on the page
 * @param width - [px]
 */
export async function draw(drawing: Drawing, id: string, width: number, theme: ChartTheme): Promise<string> {
  const { init } = await loadEngine();
  const { height } = drawing;
  const chart = init(null, null, { renderer: 'svg', ssr: true, width, height });
  try {
    chart.setOption({ animation: false, textStyle: { fontFamily: FONT }, ...drawing.option } as EChartsOption);
    let inner = chart
      .renderToSVGString()
      .replace(/^<svg[^>]*>\s*/, '')
      .replace(/<\/svg>\s*$/, '')
      .replace(/<style[\s\S]*?<\/style>/g, '')
      .replace(/ (?:class|ecmeta_\w+|pointer-events)="[^"]*"/g, '')
      .replace(/font-family:[^;"]*;/g, '')
      .replace(/<rect [^>]*fill="none"><\/rect>\s*/, '')
      .replace(/ d="[^"]*"/g, (path) =>
        path.replace(/\d+\.\d{2,}/g, (number) => String(Math.round(10 * Number(number)) / 10)),
      )
      .replace(/\n+/g, '\n');
    const ids = [...new Set(inner.match(/zr\d+-[a-z]+\d+/g) ?? [])];
    ids.forEach((old, index) => {
      inner = inner.replaceAll(new RegExp(`\\b${old}\\b`, 'g'), `${id}-${index}`);
    });
    const content = hatchFuel(
      (drawing.behind ?? '') + inner + (drawing.front ?? ''),
      id,
      theme === 'dark' ? DARK : LIGHT,
    );
    const svg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" font-family="${FONT}" role="img" aria-label="${escapeHtml(drawing.label)}">${content}</svg>`;
    return theme === 'page' ? colourByPage(svg) : svg;
  } finally {
    chart.dispose();
  }
}
