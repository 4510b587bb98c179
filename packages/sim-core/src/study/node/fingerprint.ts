/** What tells one study from another. */
import { readFileSync } from 'node:fs';
import type { WeatherYear } from '@noonloop/weather-io';
import type { StudyPlan } from '../types.ts';
import { arithmeticPrint, digest, enginePrint } from './engine.ts';

const manifest = JSON.parse(readFileSync(new URL('../../../package.json', import.meta.url), 'utf8')) as {
  readonly version: string;
};

/** Parts of a study of which each has its own print, so that a refusal can name what has changed. */
export interface Fingerprint {
  /** Version of sim-core, and a print of the sources that compute: they change between versions too. */
  readonly engine: string;
  /** What `Math` of the JavaScript engine gives, to the bit: Node 20 and 22 agree, 24 differs in last bits. */
  readonly arithmetic: string;
  /** Kind of study. */
  readonly kind: string;
  /** Base design, axes, ranges, seeds and sizes. */
  readonly description: string;
  /** Every weather year: site, columns, clock. */
  readonly weather: string;
  /** Key figures kept, and how the year is stepped. */
  readonly request: string;
}

/** Prints of a plan; a shard's are those of the whole study. */
export const fingerprintOf = (plan: StudyPlan): Fingerprint => ({
  engine: `${manifest.version} ${enginePrint()}`,
  arithmetic: arithmeticPrint(),
  kind: plan.kind,
  description: digest([JSON.stringify(plan.description)]),
  weather: digest(plan.weathers.flatMap(weatherParts)),
  request: digest([JSON.stringify(plan.request)]),
});

function weatherParts(weather: WeatherYear): (string | Uint8Array)[] {
  const { columns, calendarYears, fineLight, irradianceMidpoint, site } = weather;
  const bytes = (column: Float64Array | Int16Array) =>
    new Uint8Array(column.buffer, column.byteOffset, column.byteLength);
  const named = Object.entries(columns) as [string, Float64Array | null][];
  const present = named.filter((entry): entry is [string, Float64Array] => entry[1] !== null);
  present.sort(([one], [other]) => (one < other ? -1 : 1));
  const { latitude, longitude, elevation, utcOffset, windHeight } = site;
  return [
    JSON.stringify({ latitude, longitude, elevation, utcOffset, windHeight, irradianceMidpoint }),
    ...present.flatMap(([name, column]) => [name, bytes(column)]),
    bytes(calendarYears),
    ...(fineLight === undefined
      ? []
      : [
          `fine ${fineLight.stepsPerHour} ${fineLight.midpoint}`,
          ...[fineLight.ghi, fineLight.dni, fineLight.dhi].map(bytes),
        ]),
  ];
}
