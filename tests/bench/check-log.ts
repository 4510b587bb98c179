// How often checkLog is right: logs with a planted fault, or with a slip of the writing. Prints the tables of docs/theory/check-log.md
// and writes them between its marks where asked to ("write"). Each season is a process of its own.
// Usage: check-log.ts [cases of each fault and gauge set and season] [first seed] [write] [folder]
// A season takes some four minutes of a core. A folder keeps what check-log-season.ts printed, as season-0.json to season-3.json.
import { execFile } from 'node:child_process';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { confusion, type Outcome, percent, rates, SEASONS, type Slip, slipTable } from './check-log-tables.ts';

const each = Number(process.argv[2] ?? 5);
const firstSeed = Number(process.argv[3] ?? 1_000_000);
/** Seeds of one season. */
const APART = 10_000;
const page = fileURLToPath(new URL('../../docs/theory/check-log.md', import.meta.url));
const script = fileURLToPath(new URL('./check-log-season.ts', import.meta.url));

interface SeasonResult {
  readonly outcomes: readonly Outcome[];
  readonly slips: readonly Slip[];
  readonly lastSeed: number;
}

const folder = process.argv[5];
const results = await Promise.all(
  Object.keys(SEASONS).map(async (season, at): Promise<SeasonResult> => {
    const kept = `${folder}/season-${at}.json`;
    if (folder !== undefined && existsSync(kept)) return JSON.parse(readFileSync(kept, 'utf8'));
    const options = [season, each, firstSeed + at * APART].map(String);
    const run = promisify(execFile)(process.execPath, [...process.execArgv, script, ...options], {
      maxBuffer: 2 ** 26,
    });
    return JSON.parse((await run).stdout);
  }),
);
const outcomes = results.flatMap((result) => result.outcomes);
const slips = results.flatMap((result) => result.slips);
const sets = [...new Set(outcomes.map(({ set }) => set))];
const doubted = percent(outcomes.filter((outcome) => outcome.doubted).length, outcomes.length);
const seeds = results.map(({ lastSeed }, at) => `${firstSeed + at * APART + 1} to ${lastSeed}`).join(', ');
const text = [
  `${outcomes.length} logs, seeds ${seeds}, printed by \`tests/bench/check-log.ts\`.`,
  rates(outcomes, 'set'),
  rates(outcomes, 'season'),
  ...sets.map((set) => `Named, with ${set}:\n\n${confusion(outcomes, set)}`),
  `Slips of the writing, in ${slips.length} more logs with all gauges, healthy and faulty in turn; in the logs above, which have none, one was seen in ${doubted}:\n\n${slipTable(slips)}`,
].join('\n\n');
console.log(text);
if (process.argv[4] === 'write') {
  const marks = /(<!-- rates -->\n)[\s\S]*(<!-- end of rates -->)/;
  writeFileSync(
    page,
    readFileSync(page, 'utf8').replace(marks, (_, before: string, after: string) => `${before}\n${text}\n\n${after}`),
  );
}
