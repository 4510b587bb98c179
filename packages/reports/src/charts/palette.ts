/** Colours of the charts: our own, told apart by lightness as well as hue, so that they hold for colour-blind readers and in grey. */

/** What a colour stands for. */
export type ColourRole =
  | 'ink'
  | 'muted'
  | 'grid'
  | 'solar'
  | 'burner'
  | 'tankTop'
  | 'tankBottom'
  | 'absorber'
  | 'sun'
  | 'pump';

/** Colours of one theme. */
export type Palette = Readonly<Record<ColourRole, string>>;

/** On white paper and light screens. */
export const LIGHT: Palette = {
  ink: '#1f2328',
  muted: '#59606a',
  grid: '#dde1e6',
  solar: '#d98a00',
  burner: '#3a4f7a',
  tankTop: '#a3231f',
  tankBottom: '#0f7fa8',
  absorber: '#6e5a8c',
  sun: '#c99a1a',
  pump: '#2f6b4f',
};

/** On dark screens. */
export const DARK: Palette = {
  ink: '#e8eaed',
  muted: '#a4acb6',
  grid: '#3a4048',
  solar: '#f2b134',
  burner: '#7d96cf',
  tankTop: '#ff8a73',
  tankBottom: '#57bfe6',
  absorber: '#bda7e0',
  sun: '#e0b94a',
  pump: '#6fc39a',
};

/** CSS custom property of a role, as the HTML report defines it. */
export const cssVariable = (role: ColourRole): string =>
  `--nl-${role.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`;

/** Stops of the heat map, cold to hot; lightness rises all the way. */
const HEAT_STOPS = ['#17254f', '#473a82', '#8a3f86', '#c9506f', '#ec8350', '#f6c063', '#fdf3bf'];

/** One colour between the heat map's ends. @param share - 0 cold to 1 hot [-] */
export function heatColour(share: number): string {
  const at = Math.min(Math.max(share, 0), 1) * (HEAT_STOPS.length - 1);
  const below = Math.min(Math.floor(at), HEAT_STOPS.length - 2);
  const channel = (stop: string, index: number): number =>
    Number.parseInt(stop.slice(1 + 2 * index, 3 + 2 * index), 16);
  const mix = (index: number): string => {
    const from = channel(HEAT_STOPS[below]!, index);
    const to = channel(HEAT_STOPS[below + 1]!, index);
    return Math.round(from + (to - from) * (at - below))
      .toString(16)
      .padStart(2, '0');
  };
  return `#${mix(0)}${mix(1)}${mix(2)}`;
}
