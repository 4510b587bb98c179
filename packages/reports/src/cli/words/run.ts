// Designs through a year, to a report.

import type { Bands, RunResult } from '@noonloop/sim-core';
import type { Command } from 'commander';
import type { ComparisonReference } from '../../compare.ts';
import type { CsvOptions } from '../../formats/csv.ts';
import { moneyOptions } from '../../money/rows.ts';
import type { MoneyGiven } from '../../money/types.ts';
import type { RankKey } from '../../rank.ts';
import type { Units } from '../../units.ts';
import { noticeWords } from '../../words/notices.ts';
import { drawOf, writtenDesign } from '../designs.ts';
import { EXIT, Refusal } from '../exit-codes.ts';
import { checkTarget } from '../files.ts';
import { blaming } from '../in-words.ts';
import { namesApart } from '../names-apart.ts';
import { deliver, FORMATS, type Format, formatOf, type RenderOptions, render, targetOf } from '../output.ts';
import { checked } from '../settings/check.ts';
import { readSettings } from '../settings-file.ts';
import { coloured, harmless, type Terminal } from '../terminal.ts';
import { weatherOf } from '../weather.ts';
import { type Call, choice, outputOptions, unitsOption, type Word, weatherOptions } from '../word.ts';

/** Options of `run` and `compare`. */
export interface RunOptions {
  readonly format?: Format;
  readonly detail?: 'short' | 'full';
  readonly table?: NonNullable<CsvOptions['table']>;
  readonly hours?: boolean;
  readonly stepDays?: string;
  readonly draw?: string;
  readonly prices?: string;
  readonly title?: string;
  readonly client?: string;
  readonly date?: string;
  readonly note?: string;
  readonly howSure?: boolean;
  readonly against?: ComparisonReference;
  readonly rankBy?: RankKey;
}

/** Options of both words. */
export const reportOptions = (command: Command): Command =>
  weatherOptions(unitsOption(outputOptions(command)))
    .addOption(choice('-f, --format <format>', 'default by the ending of --out, else text', FORMATS))
    .option('--json', 'for machines: short for --format json, in SI')
    .addOption(choice('--detail <detail>', 'text: how much (default: full)', ['short', 'full']))
    .addOption(choice('--table <table>', 'csv: which table', ['months', 'hours', 'steps', 'numbers', 'money']))
    .option('--hours', 'json: with every hour')
    .option('--step-days <days>', 'csv, table steps: days at the run’s own step, such as 06-20..06-22')
    .option('--draw <file>', 'YAML or JSON that names your own record of water used and its layout')
    .option('--prices <file>', 'YAML or JSON with prices; without it a report has no money in it')
    .option('--how-sure', 'say how sure the numbers are, as ranges, from some 30 quick years of each design')
    .option('--title <words>', "over the report (default: the question, or the design's name)")
    .option('--client <name>', 'for whom it was made')
    .option('--date <words>', 'when, as it shall be read')
    .option('--note <words>', 'a remark of your own');

/** One design. */
export const run: Word<RunOptions> = {
  usage: 'run <design>',
  summary: 'simulate a design file and report',
  description:
    'Simulates a design, a YAML or JSON file, through the year of a weather file, and reports. A report in JSON is a design file too.',
  example: 'noonloop run house.yaml --weather town.csv --prices prices.yaml --out house.html',
  needs: ['weather'],
  options: reportOptions,
  run: runDesigns,
};

/** Simulates each design and hands the report over. */
export async function runDesigns(call: Call<RunOptions>): Promise<undefined> {
  const { files, options, units, terminal, progress } = call;
  const { quiet = false, stepDays } = options;
  const format = requireFormat(options);
  const target = targetOf(options.out, options.force);
  if (target !== null) await checkTarget(target);
  // All input is read before anything is simulated, so that a fault in the last file does not cost minutes.
  await progress.show('reading the designs');
  const record = options.draw === undefined ? null : await drawOf(options.draw);
  const written = [];
  for (const file of files) written.push(await writtenDesign(file, record));
  const designs = namesApart(
    written.map(({ design }) => design),
    units,
  );
  const prices = options.prices === undefined ? null : await readSettings(options.prices);
  const money: Pick<RenderOptions, 'money'> =
    prices === null
      ? {}
      : await checked(prices, 'prices', (fields) => {
          const given = fields as unknown as MoneyGiven;
          moneyOptions(given, designs.length); // refuses what is wrong before a year is simulated
          return { money: given };
        });
  await progress.show('reading the weather');
  const weather = await weatherOf(options.weather!, options);
  const { simulate } = await import('../core.ts');
  const runs: RunResult[] = [];
  for (const [index, design] of designs.entries()) {
    await progress.show(`simulating ${index + 1} of ${designs.length}: ${design.name}`);
    const result = simulate(design, weather, stepDays === undefined ? {} : { stepDays });
    const opening = `${record?.source}: `;
    const assumptions = (record?.assumptions ?? []).map(({ code, text, parts }) => ({
      code,
      text: opening + text,
      ...(parts === undefined ? {} : { parts: [opening, ...parts] }),
    }));
    runs.push(
      record === null ? result : { ...result, weatherAssumptions: [...result.weatherAssumptions, ...assumptions] },
    );
  }
  const found: Bands[] = [];
  if (options.howSure === true) {
    const { bands } = await import('@noonloop/sim-core');
    for (const [index, { input }] of written.entries()) {
      await progress.show(`looking how sure it is, ${index + 1} of ${written.length}`);
      found.push(await bands(input, weather, { oneYear: false }).outcome());
    }
  }
  await progress.show('writing the report');
  const settings = settingsOf(call, found, money);
  const work = () => render(runs, format, settings);
  const text = prices === null ? await work() : await blaming(prices, work);
  progress.clear();
  if (!quiet) warn(runs, units, terminal);
  await deliver(text, target, terminal, quiet);
  return undefined;
}

/** What a report is told: what was said on the line, bands of the designs where they were asked for, and prices. @internal */
export function settingsOf(
  { options, units, terminal }: Pick<Call<RunOptions>, 'options' | 'units' | 'terminal'>,
  found: readonly Bands[],
  money: Pick<RenderOptions, 'money'>,
): RenderOptions {
  const { detail, table, hours, against, rankBy, title, client, date, note } = options;
  return {
    width: terminal.width,
    units,
    ...(detail ? { detail } : {}),
    ...(table ? { table } : {}),
    ...(hours ? { hours } : {}),
    ...(against ? { against } : {}),
    ...(rankBy ? { rankBy } : {}),
    ...(title ? { title } : {}),
    ...(client ? { client } : {}),
    ...(date ? { date } : {}),
    ...(note ? { note } : {}),
    ...(found.length > 0 ? { bands: found } : {}),
    ...money,
  };
}

/** The format; options of another are refused, not passed over. */
function requireFormat({ json, format, out, detail, table, hours }: Call<RunOptions>['options']): Format {
  if (json === true && format !== undefined && format !== 'json')
    throw new Refusal(EXIT.usage, ['--json and --format say two things. Take one of them.']);
  const chosen = json === true ? 'json' : formatOf(format, out);
  const given = { detail: ['text', detail], table: ['csv', table], hours: ['json', hours] } as const;
  for (const [name, [needed, value]] of Object.entries(given)) {
    if (value === undefined || needed === chosen) continue;
    throw new Refusal(EXIT.usage, [`--${name} is for ${needed}; this report is ${chosen}. Say --format ${needed}.`]);
  }
  return chosen;
}

/** Notices of the runs, which must not hide in a file; what holds for all designs alike is said once. */
function warn(runs: readonly RunResult[], units: Units, terminal: Terminal): void {
  const said = new Map<string, string[]>();
  for (const { design, notices } of runs)
    for (const notice of notices) {
      const text = noticeWords(notice, units);
      said.set(text, [...(said.get(text) ?? []), design.name]);
    }
  for (const [text, names] of said) {
    const whose = runs.length > 1 && names.length === runs.length ? 'all designs' : names.join(', ');
    terminal.err(`${coloured(terminal, 'yellow', 'note:')} ${harmless(`${whose}: ${text}`)}\n`);
  }
}
