// Designs through a year, to a report.
import type { RunResult } from '@noonloop/sim-core';
import type { ComparisonReference } from '../../compare.ts';
import type { CsvOptions } from '../../formats/csv.ts';
import { moneyOptions } from '../../money/rows.ts';
import type { MoneyGiven } from '../../money/types.ts';
import type { RankKey } from '../../rank.ts';
import type { Units } from '../../units.ts';
import { designOf, drawOf } from '../designs.ts';
import { checkTarget } from '../files.ts';
import { blaming } from '../in-words.ts';
import { deliver, type Format, formatOf, type RenderOptions, render, targetOf } from '../output.ts';
import { asMap, readSettings } from '../settings-file.ts';
import { coloured, harmless, Progress, type Terminal } from '../terminal.ts';
import { type WeatherOptions, weatherOf } from '../weather.ts';

/** Options of `run` and `compare`. */
export interface RunOptions extends WeatherOptions {
  readonly weather: string;
  readonly out?: string;
  readonly format?: Format;
  readonly force?: boolean;
  readonly units?: Units;
  readonly detail?: 'short' | 'full';
  readonly table?: NonNullable<CsvOptions['table']>;
  readonly hours?: boolean;
  readonly draw?: string;
  readonly prices?: string;
  readonly against?: ComparisonReference;
  readonly rankBy?: RankKey;
  readonly quiet?: boolean;
}

/** Simulates each design and hands the report over. */
export async function runDesigns(files: readonly string[], options: RunOptions, terminal: Terminal): Promise<void> {
  const { quiet = false } = options;
  const format = formatOf(options.format, options.out);
  const target = targetOf(options.out, options.force);
  if (target !== null) await checkTarget(target);
  const progress = new Progress(terminal, quiet);
  try {
    // All input is read before anything is simulated, so that a fault in the last file does not cost minutes.
    await progress.show('reading the designs');
    const record = options.draw === undefined ? null : await drawOf(options.draw);
    const designs = [];
    for (const file of files) designs.push(await designOf(file, record));
    const prices = options.prices === undefined ? null : await readSettings(options.prices);
    const money = prices === null ? {} : { money: asMap(prices) as unknown as MoneyGiven };
    if (prices !== null)
      await blaming(prices, () => moneyOptions(asMap(prices) as unknown as MoneyGiven, files.length));
    await progress.show('reading the weather');
    const weather = await weatherOf(options.weather, options);
    const { simulate } = await import('@noonloop/sim-core');
    const runs: RunResult[] = [];
    for (const [index, design] of designs.entries()) {
      await progress.show(`simulating ${index + 1} of ${designs.length}: ${design.name}`);
      const run = simulate(design, weather);
      const assumptions = (record?.assumptions ?? []).map(({ text }) => `${record!.source}: ${text}`);
      runs.push(record === null ? run : { ...run, weatherAssumptions: [...run.weatherAssumptions, ...assumptions] });
    }
    await progress.show('writing the report');
    const { units, detail, table, hours, against, rankBy } = options;
    const settings: RenderOptions = {
      width: terminal.width,
      ...(units ? { units } : {}),
      ...(detail ? { detail } : {}),
      ...(table ? { table } : {}),
      ...(hours ? { hours } : {}),
      ...(against ? { against } : {}),
      ...(rankBy ? { rankBy } : {}),
      ...money,
    };
    const work = () => render(runs, format, settings);
    const text = prices === null ? await work() : await blaming(prices, work);
    progress.clear();
    if (!quiet) warn(runs, terminal);
    await deliver(text, target, terminal, quiet);
  } finally {
    progress.clear();
  }
}

/** Notices of the runs, which must not hide in a file. */
function warn(runs: readonly RunResult[], terminal: Terminal): void {
  for (const { design, notices } of runs) {
    for (const { text } of notices) {
      terminal.err(`${coloured(terminal, 'yellow', 'note:')} ${harmless(`${design.name}: ${text}`)}\n`);
    }
  }
}
