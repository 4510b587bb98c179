// How often checkLog is right: logs with a planted fault from houses that differ at random from the model. Prints the tables of
// docs/theory/check-log.md and writes them between its marks where asked to ("write").
// Usage: check-log.ts [cases of each fault and gauge set and season] [first seed] [write]
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { defineSystem } from '@noonloop/sim-core';
import { CAUSES, type CauseCode } from '../../packages/sim-core/src/advice/check/causes.ts';
import { buildLibrary } from '../../packages/sim-core/src/advice/check/library.ts';
import { observe } from '../../packages/sim-core/src/advice/check/observe.ts';
import { noiseSchema, uncertaintySchema } from '../../packages/sim-core/src/advice/check/uncertainty.ts';
import { NAMED_FROM } from '../../packages/sim-core/src/advice/check/verdict.ts';
import { weigh } from '../../packages/sim-core/src/advice/check/weigh.ts';
import { inventedValley, plainInput } from '../examples.ts';
import { GAUGE_SETS, plant } from '../sim-core/advice/check/planted.ts';

const each = Number(process.argv[2] ?? 5);
const firstSeed = Number(process.argv[3] ?? 1_000_000);
const page = fileURLToPath(new URL('../../docs/theory/check-log.md', import.meta.url));

/** First hours of the runs: late winter, spring, summer, autumn. */
const SEASONS = { 'from February': 1000, 'from April': 2400, 'from July': 4600, 'from October': 6800 };
const SETTLE = 240;
const LENGTH = 24 * 35;
const READINGS = 30;
/** Sound logs for one of each fault. */
const HEALTHY = 6;

interface Outcome {
  readonly set: string;
  readonly season: string;
  readonly cause: CauseCode;
  readonly first: CauseCode;
  readonly named: CauseCode | 'cannot tell';
  readonly inFirstTwo: boolean;
}

const weather = await inventedValley();
const design = defineSystem(plainInput);
const uncertainty = uncertaintySchema.parse({});
const noise = noiseSchema.parse({});
const outcomes: Outcome[] = [];
let seed = firstSeed;
for (const [season, start] of Object.entries(SEASONS)) {
  const span = { from: start, to: start + SETTLE + LENGTH };
  const library = buildLibrary(design, weather, span, { uncertainty, members: 12, seed: 1 });
  for (const [set, gauges] of Object.entries(GAUGE_SETS)) {
    for (const cause of CAUSES) {
      for (let k = 0; k < each * (cause === 'healthy' ? HEALTHY : 1); k++) {
        seed++;
        const options = {
          design,
          weather,
          span,
          settle: SETTLE,
          uncertainty,
          noise,
          cause,
          gauges,
          readings: READINGS,
          seed,
        };
        const { weights } = weigh(library, observe(plant(options).log), noise);
        const ranked = [...CAUSES].sort((a, b) => weights[b] - weights[a]);
        const first = ranked[0]!;
        const named = weights[first] >= NAMED_FROM ? first : 'cannot tell';
        outcomes.push({ set, season, cause, first, named, inFirstTwo: ranked.indexOf(cause) < 2 });
      }
    }
  }
  console.error(`${season}: ${outcomes.length} cases`);
}

const row = (cells: readonly (string | number)[]): string => `| ${cells.join(' | ')} |`;
const table = (head: readonly string[], rows: readonly (readonly (string | number)[])[]): string =>
  [row(head), row(head.map(() => '---')), ...rows.map(row)].join('\n');
const percent = (part: number, whole: number): string => (whole === 0 ? '–' : `${Math.round((100 * part) / whole)} %`);
const count = (of: readonly Outcome[], test: (outcome: Outcome) => boolean): number => of.filter(test).length;

function rates(by: 'set' | 'season', names: readonly string[]): string {
  const rows = names.map((name) => {
    const all = outcomes.filter((outcome) => outcome[by] === name);
    const faulty = all.filter(({ cause }) => cause !== 'healthy');
    const healthy = all.filter(({ cause }) => cause === 'healthy');
    return [
      name,
      faulty.length,
      percent(
        count(faulty, ({ cause, first }) => first === cause),
        faulty.length,
      ),
      percent(
        count(faulty, ({ inFirstTwo }) => inFirstTwo),
        faulty.length,
      ),
      percent(
        count(faulty, ({ cause, named }) => named === cause),
        faulty.length,
      ),
      percent(
        count(faulty, ({ cause, named }) => named !== cause && named !== 'cannot tell' && named !== 'healthy'),
        faulty.length,
      ),
      percent(
        count(faulty, ({ named }) => named === 'healthy'),
        faulty.length,
      ),
      percent(
        count(faulty, ({ named }) => named === 'cannot tell'),
        faulty.length,
      ),
      healthy.length,
      percent(
        count(healthy, ({ named }) => named === 'healthy'),
        healthy.length,
      ),
      percent(
        count(healthy, ({ named }) => named === 'cannot tell'),
        healthy.length,
      ),
      percent(
        count(healthy, ({ named }) => named !== 'healthy' && named !== 'cannot tell'),
        healthy.length,
      ),
    ];
  });
  const head = [
    by === 'set' ? 'gauges' : 'readings',
    'faulty logs',
    'right first',
    'among first two',
    'named, right',
    'named, another fault',
    'called healthy',
    'cannot tell',
    'healthy logs',
    'called healthy',
    'cannot tell',
    'false alarm',
  ];
  return table(head, rows);
}

function confusion(set: string): string {
  const named = [...CAUSES, 'cannot tell'] as const;
  const rows = CAUSES.map((cause) => {
    const all = outcomes.filter((outcome) => outcome.set === set && outcome.cause === cause);
    return [cause, ...named.map((name) => count(all, (outcome) => outcome.named === name) || '')];
  });
  return table(['planted ↓, named →', ...named], rows);
}

const sets = Object.keys(GAUGE_SETS);
const text = [
  `${outcomes.length} logs, seeds ${firstSeed + 1} to ${seed}, printed by \`tests/bench/check-log.ts\`.`,
  rates('set', sets),
  rates('season', Object.keys(SEASONS)),
  ...sets.map((set) => `Named, with ${set}:\n\n${confusion(set)}`),
].join('\n\n');
console.log(text);
if (process.argv[4] === 'write') {
  const marks = /(<!-- rates -->\n)[\s\S]*(<!-- end of rates -->)/;
  writeFileSync(
    page,
    readFileSync(page, 'utf8').replace(marks, (_, before: string, after: string) => `${before}\n${text}\n\n${after}`),
  );
}
