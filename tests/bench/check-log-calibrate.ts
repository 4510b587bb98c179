// How often the intervals of calibrate hold the planted value. Prints the table of docs/theory/calibrate.md and writes it between its
// marks where asked to ("write"). Usage: check-log-calibrate.ts [logs of each season] [first seed] [write]
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { defineSystem } from '@noonloop/sim-core';
import { type FittedKey, fitLog } from '../../packages/sim-core/src/advice/check/calibrate-fit.ts';
import { buildLibrary } from '../../packages/sim-core/src/advice/check/library.ts';
import { noiseSchema, plainHouse, uncertaintySchema } from '../../packages/sim-core/src/advice/check/uncertainty.ts';
import { checkInput } from '../../packages/sim-core/src/input/check.ts';
import { inventedValley, plainInput } from '../examples.ts';
import { GAUGE_SETS, plant } from '../sim-core/advice/check/planted.ts';

const each = Number(process.argv[2] ?? 5);
let seed = Number(process.argv[3] ?? 1_000_000);
const page = fileURLToPath(new URL('../../docs/theory/calibrate.md', import.meta.url));
const KEYS: readonly FittedKey[] = ['eta0', 'collectorLoss', 'tankLoss', 'draw'];
const SEASONS = [2400, 4600, 6800];
const SETTLE = 240;

const weather = await inventedValley();
const design = defineSystem(plainInput);
const uncertainty = checkInput(uncertaintySchema, {});
const noise = checkInput(noiseSchema, {});
interface Score {
  count: number;
  within1: number;
  within2: number;
  narrowed: number;
  error: number;
}
const rows: string[] = [];
for (const set of ['all gauges', 'tank, both pipes, pump']) {
  const scores = KEYS.map((): Score => ({ count: 0, within1: 0, within2: 0, narrowed: 0, error: 0 }));
  for (const from of SEASONS) {
    const span = { from, to: from + SETTLE + 24 * 35 };
    const library = buildLibrary(design, weather, span, { uncertainty, members: 16, seed: 1, faults: false });
    for (let k = 0; k < each; k++) {
      seed++;
      const gauges = GAUGE_SETS[set]!;
      const planted = plant({
        ...{ design, weather, span, settle: SETTLE, uncertainty, noise, gauges, seed },
        cause: 'healthy',
        readings: 40,
      });
      const { values, covariance } = fitLog(plainHouse(design, weather), planted.log, library, KEYS, noise);
      KEYS.forEach((key, at) => {
        const truth = planted.differs[key]! / uncertainty[key];
        const deviation = Math.sqrt(covariance.get(at, at));
        const off = Math.abs(values[at]! - truth) / deviation;
        const score = scores[at]!;
        score.count++;
        score.within1 += off <= 1 ? 1 : 0;
        score.within2 += off <= 1.96 ? 1 : 0;
        score.narrowed += deviation;
        score.error += (values[at]! - truth) ** 2;
      });
    }
  }
  KEYS.forEach((key, at) => {
    const { count, within1, within2, narrowed, error } = scores[at]!;
    const percent = (part: number): string => `${Math.round((100 * part) / count)} %`;
    const sizes = [narrowed / count, Math.sqrt(error / count)].map((size) =>
      (size * 100 * uncertainty[key]).toFixed(1),
    );
    rows.push(
      `| ${[set, key, count, `${100 * uncertainty[key]} %`, `${sizes[0]} %`, `${sizes[1]} %`, percent(within1), percent(within2)].join(' | ')} |`,
    );
  });
  console.error(set);
}
const head = [
  '| gauges | value | logs | uncertain before | after, as stated | after, in fact (rms) | within 1 deviation (68 %) | within the 95 % interval |',
  '|---|---|---|---|---|---|---|---|',
];
const text = [...head, ...rows].join('\n');
console.log(text);
if (process.argv[4] === 'write') {
  const marks = /(<!-- coverage -->\n)[\s\S]*(<!-- end of coverage -->)/;
  const fill = (_: string, before: string, after: string): string => `${before}\n${text}\n\n${after}`;
  writeFileSync(page, readFileSync(page, 'utf8').replace(marks, fill));
}
