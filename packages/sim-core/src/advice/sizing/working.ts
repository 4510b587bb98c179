/** What all sizing functions share. */

/** J → kWh. @internal */
export const KWH = 3.6e6;

/** m³/s → L/min. @internal */
export const L_PER_MIN = 60_000;

/** Words for what is common practice. @internal */
export const PRACTICE = 'common practice, no source';

/** First value of a list of stock sizes that is enough, or the last. @internal */
export const stockSize = (sizes: readonly number[], needed: number): number =>
  sizes.find((size) => size >= needed * (1 - 1e-9)) ?? sizes[sizes.length - 1]!;

/** Flow of a loop where none is given, common practice, no source. [m³/(s·m²)] @internal */
export const COMMON_FLOW = 0.7 / L_PER_MIN;

/** Relief valves as they are sold, common practice, no source. [Pa] @internal */
export const RELIEFS = [2.5e5, 3e5, 4e5, 6e5, 8e5, 10e5] as const;

/** Heat capacity of loop fluids by volume, within 6 %. [J/(m³·K)] @internal */
export const FLUID_HEAT = 3.9e6;
