// What reader and run took for granted about the weather, in the units of a report.
import type { RunAssumptionCode, RunResult, Saying } from '@noonloop/sim-core';
import type { Said } from '@noonloop/weather-io';
import { converted, unitIn } from '../shown-units.ts';
import { formatNumber, type Units } from '../units.ts';
import { sayingWords, type Words } from './fill.ts';

/** By code. */
export const RUN_ASSUMPTION_WORDS: Words<RunAssumptionCode> = {
  'sky-longwave': 'Sky: long-wave irradiance from the weather file.',
  'sky-cloudless': 'Sky: taken as cloudless, from {moisture} (Berdahl & Martin 1984).',
  'sky-cloudless-dry': 'Sky: taken as cloudless, from a dew point {spread} below air (Berdahl & Martin 1984).',
  'sky-cloudy': 'Sky: by the file’s cloud cover, from {moisture} (Clark & Allen 1978, Walton 1983).',
  'sky-cloudy-dry':
    'Sky: by the file’s cloud cover, from a dew point {spread} below air (Clark & Allen 1978, Walton 1983).',
  'albedo-of-design':
    'Ground reflectance: array.groundAlbedo and snowAlbedo, as the design asks; the weather’s own column is ignored.',
  'albedo-of-weather': 'Ground reflectance: the weather’s own column, in place of array.groundAlbedo and snowAlbedo.',
  'no-snow-depth': 'Snow on panels: the weather has no depth; none is taken.',
  'no-wind': 'Wind: the weather has none; the collectors’ wind terms stand at their values for {3 m/s}.',
  'wind-along-collectors':
    'Wind along the collectors: {factor} of that at {10 m} over open ground, {share} of the file’s at {height}.',
};

const NAMES = { humidity: 'humidity', 'dew-point': 'dew point' };

/** The sentence of what a run assumed. */
export const assumptionWords = (saying: Saying<RunAssumptionCode>, units: Units): string =>
  sayingWords(saying, RUN_ASSUMPTION_WORDS, units, NAMES);

/** A sentence of weather-io, its quantities in the units asked for. */
export function weatherWords({ text, parts }: Pick<Said, 'text'> & Partial<Said>, units: Units): string {
  if (units === 'metric' || parts === undefined) return text;
  return parts
    .map((part) => {
      if (typeof part === 'string') return part;
      const { symbol } = unitIn(part.unit, units);
      return `${formatNumber(converted(part.value, part.unit, units), part.digits)} ${symbol}`;
    })
    .join('');
}

/** All sentences about a run’s weather. */
export const weatherNotes = (
  { assumptions, weatherAssumptions }: Pick<RunResult, 'assumptions' | 'weatherAssumptions'>,
  units: Units,
): string[] => [
  ...weatherAssumptions.map((note) => weatherWords(note, units)),
  ...assumptions.map((one) => assumptionWords(one, units)),
];
