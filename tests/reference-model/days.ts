/** Invented weather: ten days of different kinds at the start of a year in the south, where January has a high sun; the rest is dark. */
import type { WeatherYear } from '@noonloop/weather-io';

/** Hours that are compared. */
export const HOURS = 240;

interface Kind {
  /** In words. */
  readonly name: string;
  /** Beam at noon and its share left by the hour of the day. [W/m²] */
  readonly beam: (hour: number) => number;
  /** Diffuse light at noon. [W/m²] */
  readonly diffuse: number;
  /** Air before sunrise and in the afternoon. [°C] */
  readonly air: readonly [number, number];
  /** Under the air. [K] */
  readonly dry: number;
  /** [m/s] */
  readonly wind: number;
}

const clear = () => 850;
const KINDS: readonly Kind[] = [
  { name: 'clear and mild', beam: clear, diffuse: 90, air: [8, 21], dry: 9, wind: 2 },
  { name: 'overcast', beam: () => 0, diffuse: 160, air: [9, 13], dry: 2, wind: 4 },
  { name: 'broken clouds', beam: (hour) => (hour % 2 === 0 ? 750 : 90), diffuse: 230, air: [10, 18], dry: 6, wind: 5 },
  { name: 'clear frost', beam: clear, diffuse: 80, air: [-14, -3], dry: 7, wind: 1 },
  { name: 'storm', beam: () => 300, diffuse: 260, air: [1, 6], dry: 3, wind: 19 },
  { name: 'light that hardly drives a pump', beam: () => 0, diffuse: 55, air: [3, 6], dry: 1, wind: 3 },
  { name: 'clear, the pump has failed', beam: clear, diffuse: 100, air: [12, 27], dry: 12, wind: 1 },
  {
    name: 'clear after noon, the mains are out',
    beam: (hour) => (hour < 12 ? 60 : 880),
    diffuse: 140,
    air: [13, 25],
    dry: 9,
    wind: 3,
  },
  { name: 'hot, nobody at home', beam: () => 930, diffuse: 110, air: [18, 34], dry: 15, wind: 2 },
  { name: 'showers', beam: (hour) => (hour % 3 === 0 ? 600 : 0), diffuse: 190, air: [7, 12], dry: 2, wind: 7 },
];

/** Dates of the designs' outages and holidays on these days. */
export const PUMP_FAILS = '01-07';
export const MAINS_FAIL = '01-08';
export const NOBODY_HOME = '01-09..01-09';

/** The year that they begin. */
export function tenDays(): WeatherYear {
  const column = () => new Float64Array(8760);
  const [ghi, dni, dhi, dryBulb, dewPoint, windSpeed] = [column(), column(), column(), column(), column(), column()];
  for (let row = 0; row < 8760; row++) {
    const { beam, diffuse, air, dry, wind } = KINDS[row < HOURS ? Math.trunc(row / 24) : 1]!;
    const hour = row % 24;
    // Light from six to eight in the evening, as high as a sine; the last and first hour hold a sunrise or sunset.
    const height = Math.max(0, Math.sin((Math.PI * (hour + 0.5 - 4.6)) / 15));
    const swing = 0.5 - 0.5 * Math.cos((2 * Math.PI * (hour - 3)) / 24);
    dryBulb[row] = air[0] + (air[1] - air[0]) * swing;
    dewPoint[row] = dryBulb[row]! - dry;
    windSpeed[row] = wind * (0.6 + 0.4 * swing);
    // What is not compared stays dark, which costs next to nothing.
    if (row >= HOURS || hour < 5 || hour > 19) continue;
    dni[row] = beam(hour) * Math.sqrt(height);
    dhi[row] = diffuse * (0.15 + 0.85 * height);
    ghi[row] = dhi[row]! + dni[row]! * height * 0.95;
  }
  return {
    site: { name: 'ten invented days', latitude: -38, longitude: 146, elevation: 300, utcOffset: 10 },
    format: 'plain',
    source: 'invented',
    columns: {
      ghi,
      dni,
      dhi,
      dryBulb,
      dewPoint,
      windSpeed,
      relativeHumidity: null,
      pressure: null,
      skyLongwave: null,
      cloudCover: null,
      albedo: null,
      snowDepth: null,
    },
    irradianceMidpoint: 0.5,
    calendarYears: new Int16Array(8760).fill(2021),
    assumptions: [],
  };
}
