/**
 * Cold water of a kitchen tap in Kingston upon Thames, 22 readings 2008 to 2010 in whole degrees: Earth Notes, a published table. Nothing is fitted.
 * London's air: mean of the year 11.3 °C, warmest month 13.4 K over the coldest (normals 1981 to 2010, from memory).
 */
import { mainsTemperature } from '@noonloop/sim-core/formulas';
import type { WeatherYear } from '@noonloop/weather-io';
import { mainsColumn } from '../../../packages/sim-core/src/physics/draw/mains.ts';
import { measuredRows, type Pairs } from './sets.ts';

export const MAINS_FILE = 'mains/mains-london-2008-2010.csv';
const LONDON = { annualMean: 11.3, monthlyRange: 13.4, southern: false };

const dayOf = (date: string): number => (Date.parse(date) - Date.UTC(Number(date.slice(0, 4)), 0, 1)) / 86_400_000 + 1;

/** Cold water of British houses by month, January first: national calculation method of the UK, SAP 2012, table J1 (from memory). [°C] */
const BRITISH = [11.1, 10.8, 11.8, 14.7, 16.1, 18.2, 21.3, 19.2, 18.8, 16.3, 13.3, 11.8];

/** How deep a main lies in frost-free ground, and what soil lets through: handbook values (from memory). [m], [m²/d] */
const DEPTH = 0.75;
const DIFFUSIVITY = 0.05;
/** Coldest day of the air. [d] */
const COLDEST = 20;

/** Undisturbed ground at the depth of a main: Kusuda & Achenbach (1965), ASHRAE Transactions 71 (from memory). [°C] */
function ground(day: number): number {
  const reach = DEPTH * Math.sqrt(Math.PI / (365 * DIFFUSIVITY));
  const { annualMean, monthlyRange } = LONDON;
  const angle = (2 * Math.PI * (day - COLDEST)) / 365 - reach;
  return annualMean - (monthlyRange / 2) * Math.exp(-reach) * Math.cos(angle);
}

/** What a design makes of mean and swing; London's air, nothing fitted. */
const waveColumn = mainsColumn({ mean: LONDON.annualMean, swing: LONDON.monthlyRange }, {
  site: { latitude: 51.4 },
} as WeatherYear);

export const MAINS_WAYS = {
  'correlation with the air (a design’s default)': (day: number) => mainsTemperature(LONDON, day),
  'twelve values of the national method': (day: number) => {
    const place = (day / 365) * 12 - 0.5;
    const month = Math.floor(place);
    const [from, to] = [BRITISH[(month + 12) % 12]!, BRITISH[(month + 13) % 12]!];
    return from + (place - month) * (to - from);
  },
  'mean and swing of the air as a wave': (day: number) => waveColumn[24 * Math.min(364, Math.floor(day - 1))]!,
  'ground at 0.75 m': ground,
} as const;

export interface MainsReading {
  readonly day: number;
  readonly temperature: number;
}

export const mainsReadings = (): MainsReading[] =>
  measuredRows(MAINS_FILE).map(({ date, mains_C }) => ({ day: dayOf(date!), temperature: Number(mains_C) }));

export function mainsPairs(way: keyof typeof MAINS_WAYS): Pairs {
  const readings = mainsReadings();
  return {
    measured: readings.map(({ temperature }) => temperature),
    modelled: readings.map(({ day }) => MAINS_WAYS[way](day)),
  };
}
