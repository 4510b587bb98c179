/** Colour of a temperature: dark is cold, light is hot, so that it reads in grey too. */
const STOPS: readonly (readonly [celsius: number, red: number, green: number, blue: number])[] = [
  [5, 20, 38, 84],
  [25, 58, 64, 152],
  [45, 130, 72, 170],
  [65, 206, 86, 120],
  [85, 246, 148, 78],
  [100, 252, 222, 120],
];

/** Temperatures at the ends of the scale. [°C] */
export const COLDEST = STOPS[0]![0];
export const HOTTEST = STOPS.at(-1)![0];

/** A colour for CSS. */
export function colourOf(celsius: number): string {
  const held = Math.min(Math.max(celsius, COLDEST), HOTTEST);
  const above = Math.max(
    1,
    STOPS.findIndex(([stop]) => stop >= held),
  );
  const [low, ...from] = STOPS[above - 1]!;
  const [high, ...to] = STOPS[above]!;
  const share = (held - low) / (high - low);
  return `rgb(${from.map((part, index) => Math.round(part + share * (to[index]! - part))).join(' ')})`;
}
