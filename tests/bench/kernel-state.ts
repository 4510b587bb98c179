/** What the small year of the bench is made of. */

const HOURS = 8760;
/** Layers of the tank. */
export const NODES = 20;
/** Parts of the ring; the first eight stand for the array. */
export const PARTS = 18;
/** Numbers of a part, side by side. */
export const WIDTH = 16;
const COLUMNS = 24;

/** State of the small year. */
export interface Kernel {
  readonly tank: { readonly temperature: Float64Array; readonly drift: Float64Array; readonly rise: Float64Array };
  readonly ring: Float64Array;
  readonly along: Float64Array;
  readonly heater: { temperature: number; outlet: number; heat: number; loss: number };
  readonly stream: { flow: number; rate: number; conductance: number; surface: number };
  readonly table: Float64Array;
  readonly columns: readonly Float64Array[];
  readonly light: Float64Array;
  readonly air: Float64Array;
  readonly draw: Float64Array;
  readonly books: { income: number; spent: number; stored: number; worst: number };
}

/** Opens the small year; its weather is made of sines. */
export function openKernel(): Kernel {
  const day = (hour: number) => Math.sin(((hour % 24) / 24 - 0.25) * 2 * Math.PI);
  const season = (hour: number) => Math.cos((hour / HOURS) * 2 * Math.PI);
  const ofHours = (value: (hour: number) => number) => Float64Array.from({ length: HOURS }, (_, hour) => value(hour));
  return {
    tank: {
      temperature: new Float64Array(NODES).fill(30),
      drift: new Float64Array(NODES),
      rise: new Float64Array(NODES),
    },
    ring: new Float64Array((PARTS + 1) * WIDTH).fill(20),
    along: new Float64Array(6),
    heater: { temperature: 60, outlet: 60, heat: 0, loss: 0 },
    stream: { flow: 0, rate: 0, conductance: 0, surface: 0.5 },
    table: Float64Array.from({ length: 3 * 257 }, (_, at) => 1 + 0.01 * at),
    columns: Array.from({ length: COLUMNS }, () => new Float64Array(HOURS)),
    light: ofHours((hour) => Math.max(900 * day(hour) * (0.7 - 0.2 * season(hour)) * (((hour * 7) % 11) / 10), 0)),
    air: ofHours((hour) => 12 - 8 * season(hour) + 4 * day(hour)),
    draw: ofHours((hour) => ([7, 8, 12, 18, 20, 21].includes(hour % 24) ? 0.8 + (hour % 3) : 0)),
    books: { income: 0, spent: 0, stored: 0, worst: 0 },
  };
}
