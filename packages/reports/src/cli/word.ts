// What a word of the command is, and the options that mean the same everywhere.
import { type Command, Option } from 'commander';
import { EXIT, type ExitCode, Refusal } from './exit-codes.ts';
import { checkTarget } from './files.ts';
import { deliver, formatByEnding, targetOf } from './output.ts';
import type { Answer } from './sheet/model.ts';
import { renderAnswer, SHEET_FORMATS } from './sheet/render.ts';
import { Progress, type Terminal } from './terminal.ts';

/** Options that every word may have. */
export interface CommonOptions {
  readonly out?: string;
  readonly force?: boolean;
  readonly quiet?: boolean;
  readonly format?: string;
  readonly json?: boolean;
  readonly units?: 'metric' | 'us';
  readonly table?: string;
  readonly weather?: string;
  readonly layout?: string;
  readonly fillGaps?: boolean;
  readonly ownStep?: boolean;
  readonly insistOnWeather?: boolean;
}

/** A call of a word. */
export interface Call<Options = CommonOptions> {
  /** Files and words, in order. */
  readonly files: readonly string[];
  readonly options: Options & CommonOptions;
  readonly units: 'metric' | 'us';
  readonly terminal: Terminal;
  readonly progress: Progress;
}

/** A word of the command. */
export interface Word<Options = CommonOptions> {
  /** Its name and what follows it, such as `run <design>`. */
  readonly usage: string;
  /** In the list of words. */
  readonly summary: string;
  /** Above its options. */
  readonly description: string;
  /** A call that runs, for its help. */
  readonly example: string;
  /** Adds its own options. */
  readonly options?: (command: Command) => Command;
  /** Options without which it does not go, by their long name without dashes. */
  readonly needs?: readonly string[];
  /** Formats of its answer besides those of every answer; a word that has none writes on its own. */
  readonly formats?: readonly string[];
  /** Options that name files to be written besides `--out`. */
  readonly writes?: readonly string[];
  /** Answers. A word that writes on its own gives its exit code or nothing. */
  readonly run: (call: Call<Options>) => Promise<Answer | ExitCode | undefined>;
}

/** A choice among words. */
export const choice = (flags: string, words: string, choices: readonly string[]) =>
  new Option(flags, words).choices([...choices]);

/** Where results go. */
export const outputOptions = (command: Command): Command =>
  command
    .option('-o, --out <file>', 'write to this file instead of standard output')
    .option('--force', 'replace a file that exists; without it nothing is replaced')
    .option('-q, --quiet', 'no progress, no notes: errors alone');

/** The year of weather. */
export const weatherOptions = (command: Command): Command =>
  runningOptions(
    command.option('-w, --weather <file>', 'weather file: TMY3, EPW, PVGIS, NSRDB or noonloop’s plain CSV'),
  );

/** How weather is read that something is to run on. */
export const runningOptions = (command: Command): Command =>
  readingOptions(command).option(
    '--insist-on-weather',
    'run on weather in which faults were found; the report lists them',
  );

/** How a file of weather is read. */
export const readingOptions = (command: Command): Command =>
  command
    .option('--layout <file>', 'YAML or JSON that says how a plain table of weather is laid out')
    .option('--own-step', 'take the light of a file of 5 to 30 minutes at its own step, not by hours')
    .option('--fill-gaps', 'fill missing hours; what was filled is listed in the report');

/** Units of every number. */
export const unitsOption = (command: Command): Command =>
  command.addOption(
    choice('-u, --units <units>', 'units of every number (default: NOONLOOP_UNITS, else metric)', ['metric', 'us']),
  );

/** What every answer has: output, format, units. */
const answerOptions = (command: Command, extra: readonly string[]): Command =>
  unitsOption(outputOptions(command))
    .addOption(
      choice('-f, --format <format>', 'default by the ending of --out, else text', [...SHEET_FORMATS, ...extra]),
    )
    .option('--json', 'for machines: short for --format json, in SI')
    .option('--table <name>', 'csv: which table of the answer (default: its first)');

/** Puts a word into the program. @param done - Takes its exit code. */
export function addWord<O>(program: Command, word: Word<O>, terminal: Terminal, done: (exit: ExitCode) => void): void {
  const command = program
    .command(word.usage)
    .summary(word.summary)
    .description(word.description)
    .addHelpText('after', `\nExample:\n${pasted(word.example, terminal.width)}`);
  if (word.formats !== undefined) answerOptions(command, word.formats);
  word.options?.(command);
  command.action(async (...given: unknown[]) => {
    const options = given.at(-2) as O & CommonOptions;
    const files = given
      .slice(0, -2)
      .flat()
      .filter((file) => file !== undefined) as string[];
    for (const name of word.needs ?? []) requireOption(command, options, name);
    const units = options.units ?? usualUnits();
    const progress = new Progress(terminal, options.quiet === true);
    const call: Call<O> = { files, options, units, terminal, progress };
    try {
      const exit = await (word.formats === undefined ? word.run(call) : answer(word, call));
      if (typeof exit === 'number') done(exit);
    } finally {
      progress.clear();
    }
  });
}

/** Units where none were asked for: those of the environment, else metric. */
function usualUnits(): 'metric' | 'us' {
  const { NOONLOOP_UNITS: usual = '' } = process.env;
  if (usual === '' || usual === 'metric') return 'metric';
  if (usual === 'us') return 'us';
  throw new Refusal(EXIT.usage, [`NOONLOOP_UNITS: found "${usual.slice(0, 40)}", expected metric or us.`]);
}

/** A call over several lines, so that it can be pasted as it stands. */
function pasted(example: string, width: number): string {
  const lines = [' '];
  for (const part of example.match(/--?[a-z-]+ (?:"[^"]*"|[^-\s]\S*)|\S+/g) ?? []) {
    if (`${lines.at(-1)} ${part} \\`.length > width) lines.push('   ');
    lines[lines.length - 1] += ` ${part}`;
  }
  return lines.join(' \\\n');
}

/** Asked for here and not by the argument library, which would not look at a misspelt option first. */
function requireOption(command: Command, options: object, name: string): void {
  const key = camel(name);
  if ((options as Record<string, unknown>)[key] !== undefined) return;
  const flags = command.options.find(({ long }) => long === `--${name}`)?.flags ?? `--${name}`;
  throw new Refusal(EXIT.usage, [
    `${command.name()} needs the option ${flags}. Say --help after the word for all of them.`,
  ]);
}

async function answer<O>(word: Word<O>, call: Call<O>): Promise<ExitCode | undefined> {
  const { options, units, terminal, progress } = call;
  const format = formatFor(word, options);
  const target = targetOf(options.out, options.force);
  if (target !== null) await checkTarget(target);
  const others = new Map<string, NonNullable<typeof target>>();
  for (const name of word.writes ?? []) {
    const path = (options as Record<string, unknown>)[camel(name)] as string | undefined;
    if (path === undefined) continue;
    const other = targetOf(path, options.force);
    if (other === null) continue;
    await checkTarget(other);
    others.set(name, other);
  }
  const found = (await word.run(call)) as Answer;
  const width = terminal.width;
  const text = await renderAnswer(found, format, { units, width, ...(options.table ? { table: options.table } : {}) });
  progress.clear();
  const quiet = options.quiet === true;
  // A file for standard output has it to itself.
  const alone = (found.files ?? []).find(({ option }) => (options as Record<string, unknown>)[camel(option)] === '-');
  if (alone !== undefined) await deliver(alone.text, null, terminal, quiet);
  if (target !== null || alone === undefined) await deliver(text, target, terminal, quiet);
  for (const { option, text: other } of found.files ?? []) {
    const place = others.get(option);
    if (place !== undefined) await deliver(other, place, terminal, quiet);
  }
  return found.exit;
}

const camel = (name: string): string => name.replace(/-(\w)/g, (_, letter: string) => letter.toUpperCase());

function formatFor(word: Word<never> | Word<unknown>, { json, format, out, table }: CommonOptions): string {
  if (json === true && format !== undefined && format !== 'json')
    throw new Refusal(EXIT.usage, ['--json and --format say two things. Take one of them.']);
  const chosen = json === true ? 'json' : (format ?? formatByEnding(out, [...SHEET_FORMATS, ...(word.formats ?? [])]));
  if (table !== undefined && chosen !== 'csv')
    throw new Refusal(EXIT.usage, [`--table is for csv; this answer is ${chosen}. Say --format csv.`]);
  return chosen;
}
