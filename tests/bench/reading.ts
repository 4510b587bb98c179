// How long a reader takes beside papaparse alone on the same text. Run: node --import ./tests/typescript.mjs --conditions=@noonloop/source tests/bench/reading.ts
import { readFileSync } from 'node:fs';
import { parseWeather } from '@noonloop/weather-io';
import Papa from 'papaparse';
import { hasShared, sharedFile } from '../shared.ts';

const FILES = [
  'docs/examples/weather/invented-valley.csv',
  ...['tmy3-greensboro-nc.csv', 'pvgis-45N-8E.csv', 'pvgis-45N-8E.epw', 'nsrdb-40N-108W-2017-30min.csv']
    .filter((name) => hasShared(`weather/${name}`))
    .map((name) => sharedFile(`weather/${name}`)),
];
const ROUNDS = 15;

/** Median of the times of a call, after three calls that warm up. [ms] */
function median(call: () => unknown): number {
  for (let round = 0; round < 3; round++) call();
  const times: number[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    const start = performance.now();
    call();
    times.push(performance.now() - start);
  }
  return times.sort((a, b) => a - b)[ROUNDS >> 1]!;
}

for (const path of FILES) {
  const text = readFileSync(path, 'utf8');
  const alone = median(() => Papa.parse(text));
  const whole = median(() => parseWeather(text));
  const name = path.split('/').at(-1)!;
  console.log(`${name}: ${whole.toFixed(0)} ms, papaparse ${alone.toFixed(0)} ms, ratio ${(whole / alone).toFixed(2)}`);
}
