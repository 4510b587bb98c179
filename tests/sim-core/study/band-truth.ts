/** Houses off in every cause at once, each simulated in full, and how many of them a band holds. For the long test and the table of docs/theory/studies.md. */
import { type Bands, collectRows, compare, defineSystem, type Measure, type SystemInput } from '@noonloop/sim-core';
import type { WeatherYear } from '@noonloop/weather-io';
import { houseAt, type KnownBy, movers } from '../../../packages/sim-core/src/study/band-parts.ts';
import { normalQuantile } from '../../../packages/sim-core/src/study/distributions.ts';
import { latinHypercube } from '../../../packages/sim-core/src/study/latin-hypercube.ts';

export const BANDED = [
  'fuelSaved',
  'fuelSaving',
  'sunShare',
  'deliveredEnergy',
  'stagnationHours',
  'highLimitHours',
  'peakTankTemperature',
  'hottestAbsorber',
] as const satisfies Measure[];
export type Banded = (typeof BANDED)[number];

interface BandCase {
  readonly base: SystemInput;
  readonly known: KnownBy;
}

const collector = { area: 2, eta0: 0.75, a1: 3.8, a2: 0.012 };
/** Designs of our own invention: a usual one, one for people, one with too many panels that stand often, one of which little is known. */
export const BAND_CASES: Readonly<Record<string, BandCase>> = {
  'litres, certificate, many years': {
    base: {
      array: { panels: 2, tilt: 40, azimuth: 180, collector },
      tank: { volume: 0.3 },
      draw: { dailyVolume: 0.2 },
    },
    known: { collector: 'certificate', water: 'meter', oneYear: false },
  },
  'people, certificate, one year': {
    base: { array: { panels: 3, tilt: 45, azimuth: 200, collector }, tank: { volume: 0.4 }, draw: { people: 4 } },
    known: { collector: 'certificate', water: 'people', oneYear: true },
  },
  'too many panels, survey, one year': {
    base: {
      array: { panels: 4, tilt: 30, azimuth: 180, collector },
      tank: { volume: 0.2 },
      draw: { dailyVolume: 0.15 },
    },
    known: { collector: 'survey', water: 'meter', oneYear: true },
  },
  'use unknown, survey, one year': {
    base: {
      array: { panels: 2, tilt: 50, azimuth: 150, collector },
      tank: { volume: 0.3, lossCoefficient: 2.2 },
      draw: { profile: 'M' },
    },
    known: { collector: 'survey', water: 'unknown', oneYear: true },
  },
};

export type Truth = Readonly<Record<Banded, number>>;

/** Houses of a Latin hypercube of their own, at random within its strata. */
export async function truths({ base, known }: BandCase, weather: WeatherYear, seed: number, count: number) {
  const list = movers(defineSystem(base), weather, known);
  const cube = latinHypercube(seed, count, list.length);
  const found: Truth[] = [];
  for (let house = 0; house < count; house++) {
    const at = list.map(({ mean, deviation }, cause) => mean + deviation * normalQuantile(cube(house, cause)));
    const { design, weather: year } = houseAt(base, weather, list, at);
    const [row] = await collectRows(compare([design], year, { measures: BANDED }));
    found.push(row!.measures as Truth);
  }
  return found;
}

/** Hours and kelvin are counted whole, as reports show them. */
const STEP: Readonly<Record<string, number>> = {
  stagnationHours: 1,
  highLimitHours: 1,
  peakTankTemperature: 1,
  hottestAbsorber: 1,
};

/**
 * Share of the houses that a band holds. Where many houses have the very same number (no hour of stagnation, a tank at its limit) and an end lies on
 * it, so many of them count as are due to that end: a band from 0 on would else hold all of them whatever it says. That is the mean of counting ties
 * by lot (randomised probability transform: Smith 1985; Czado, Gneiting & Held 2009). `null` where nine in ten are the same.
 */
export function heldBy(band: NonNullable<Bands[Measure]>, houses: readonly Truth[], measure: Banded): number | null {
  const whole = (value: number): number => {
    const step = STEP[measure];
    return step === undefined ? value : Math.round(value / step) * step;
  };
  const values = houses.map((house) => whole(house[measure]));
  const share = (holds: (value: number) => boolean): number => values.filter(holds).length / values.length;
  if (values.some((one) => share((value) => value === one) >= 0.9)) return null;
  const upTo = (end: number, due: number): number =>
    Math.min(
      Math.max(
        due,
        share((value) => value < end),
      ),
      share((value) => value <= end),
    );
  const tail = (1 - band.share) / 2;
  return upTo(whole(band.high), 1 - tail) - upTo(whole(band.low), tail);
}
