/**
 * Colours by meaning: one thing has one colour on all pages. Contrast against page and card, and what tells colours apart for
 * colour-blind readers and in grey (lightness, dash, shape, hatch), are tested.
 */

/** Steps of the heat scale, cold to hot. */
export const HEAT_COUNT = 9;

/** What a colour stands for. */
export type ColourRole =
  | 'page'
  | 'card'
  | 'ink'
  | 'muted'
  | 'axis'
  | 'grid'
  | 'link'
  | 'sun'
  | 'sunLine'
  | 'solar'
  | 'fuel'
  | 'loss'
  | 'tankTop'
  | 'tankBottom'
  | 'danger'
  | 'dangerTint'
  | 'caution'
  | 'cautionTint'
  | `design${'A' | 'B' | 'C' | 'D'}`
  | `heat${0 | 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8}`;

/** Colours of one theme. */
export type Palette = Readonly<Record<ColourRole, string>>;

/** Stops of the heat scale: hotter is more ink on paper, and more light on a dark screen. */
const HEAT_LIGHT = ['#e9f0f6', '#cddbe6', '#e8c583', '#dd9a49', '#c4652c', '#933521', '#541420'];
const HEAT_DARK = ['#1d2b3d', '#2c4258', '#6b4a2c', '#a8602a', '#dd8a3c', '#f3bd6a', '#fdf0c4'];

/** Colour between stops. @param share - 0 cold to 1 hot [-] */
function mix(stops: readonly string[], share: number): string {
  const at = share * (stops.length - 1);
  const below = Math.min(Math.floor(at), stops.length - 2);
  const channel = (stop: string, index: number): number =>
    Number.parseInt(stop.slice(1 + 2 * index, 3 + 2 * index), 16);
  return `#${[0, 1, 2]
    .map((index) => {
      const [from, to] = [channel(stops[below]!, index), channel(stops[below + 1]!, index)];
      return Math.round(from + (to - from) * (at - below))
        .toString(16)
        .padStart(2, '0');
    })
    .join('')}`;
}

const heat = (stops: readonly string[]) =>
  Object.fromEntries(
    Array.from({ length: HEAT_COUNT }, (_, at) => [`heat${at}`, mix(stops, at / (HEAT_COUNT - 1))]),
  ) as Record<`heat${0 | 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8}`, string>;

/** On white paper and light screens. */
export const LIGHT: Palette = {
  page: '#ffffff',
  card: '#f5f6f8',
  ink: '#1f2328',
  muted: '#59606a',
  axis: '#6f7680',
  grid: '#dde1e6',
  link: '#1d5c96',
  sun: '#f2cf5b',
  sunLine: '#7a5c00',
  solar: '#ad5600',
  fuel: '#4c2263',
  loss: '#868d97',
  tankTop: '#1468a8',
  tankBottom: '#438fc6',
  danger: '#9e1313',
  dangerTint: '#fdecea',
  caution: '#876000',
  cautionTint: '#fff4dc',
  designA: '#1c222b',
  designB: '#08523a',
  designC: '#00778f',
  designD: '#779259',
  ...heat(HEAT_LIGHT),
};

/** On dark screens. */
export const DARK: Palette = {
  page: '#15181c',
  card: '#1e2329',
  ink: '#e8eaed',
  muted: '#a4acb6',
  axis: '#7f8893',
  grid: '#3a4048',
  link: '#7db7ee',
  sun: '#f3d774',
  sunLine: '#f3d774',
  solar: '#dd7a1a',
  fuel: '#845aa8',
  loss: '#757d88',
  tankTop: '#5fb0ee',
  tankBottom: '#a9d6f7',
  danger: '#ff9a92',
  dangerTint: '#3a1c1a',
  caution: '#f0c766',
  cautionTint: '#33290f',
  designA: '#f4f6f8',
  designB: '#57cfa3',
  designC: '#2f9db5',
  designD: '#66753f',
  ...heat(HEAT_DARK),
};

/** Colour of a step of the heat scale. @param step - 0 cold to 8 hot */
export const heatColour = (palette: Palette, step: number): string =>
  palette[`heat${Math.min(Math.max(Math.round(step), 0), HEAT_COUNT - 1)}` as ColourRole];

/** CSS custom property of a role, as the pages define it. */
export const cssVariable = (role: ColourRole): string =>
  `--nl-${role.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`;
