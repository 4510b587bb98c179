// Words and options of the command.
import { createRequire } from 'node:module';
import { Command, CommanderError, Option } from 'commander';
import { NUMBER_KEYS } from '../definitions.ts';
import { wrap } from '../formats/table.ts';
import { CASE_KEYS } from '../money/definitions.ts';
import { EXIT, type ExitCode } from './exit-codes.ts';
import { explain } from './in-words.ts';
import { FORMATS } from './output.ts';
import { coloured, harmless, type Terminal } from './terminal.ts';

const DESCRIPTION = `Simulates sun-heated domestic water hour by hour through a year of weather.

Results are calculations, not a design check. Hot water scalds, loops release steam, and roofs, gas, mains electricity and legionella hurt people: read the cautions of each report, and have the work done to local code by licensed people.`;

const CODES =
  'Exit codes: 0 all went well; 1 an input is wrong, or weather --strict found a fault; 2 the command was called wrongly; 3 a fault of the program; 4 the output could not be written.';

const FIRST_STEPS = `First steps:
  noonloop draft --out house.yaml                  a design to fill in
  noonloop weather town.epw --picture town.svg     is the weather file sound?
  noonloop run house.yaml --weather town.epw       the year, as text
  noonloop run house.yaml --weather town.epw --out house.html`;

const choice = (flags: string, words: string, choices: readonly string[]) =>
  new Option(flags, words).choices([...choices]);

const outputOptions = (command: Command): Command =>
  command
    .option('-o, --out <file>', 'write to this file instead of standard output')
    .option('--force', 'replace a file that exists; without it nothing is replaced')
    .option('-q, --quiet', 'no progress, no notes: errors alone');

const weatherOptions = (command: Command): Command =>
  command
    .option('--layout <file>', 'YAML or JSON that says how a plain table of weather is laid out')
    .option('--fill-gaps', 'fill missing hours; what was filled is listed in the report');

const runningWeatherOptions = (command: Command): Command =>
  weatherOptions(command).option(
    '--insist-on-weather',
    'run on weather in which faults were found; the report lists them',
  );

const reportOptions = (command: Command): Command =>
  runningWeatherOptions(
    outputOptions(
      command.requiredOption('-w, --weather <file>', 'weather file: TMY3, EPW, PVGIS, NSRDB or noonloop’s plain CSV'),
    )
      .addOption(choice('-f, --format <format>', 'default by the ending of --out, else text', FORMATS))
      .addOption(choice('-u, --units <units>', 'units of every number', ['metric', 'us']).default('metric'))
      .addOption(choice('--detail <detail>', 'text: how much', ['short', 'full']).default('full'))
      .addOption(choice('--table <table>', 'csv: which table', ['months', 'hours', 'numbers', 'money']))
      .option('--hours', 'json: with every hour')
      .option('--draw <file>', 'YAML or JSON that names your own record of water used and its layout')
      .option('--prices <file>', 'YAML or JSON with prices; without it a report has no money in it'),
  );

/** Builds the command. @param done - Takes the exit code of a subcommand that has one. */
function buildProgram(terminal: Terminal, done: (exit: ExitCode) => void): Command {
  const program = new Command('noonloop')
    .description(DESCRIPTION)
    .version((createRequire(import.meta.url)('../../package.json') as { version: string }).version)
    .addHelpText('after', ['', ...wrap(CODES, terminal.width), '', FIRST_STEPS].join('\n'))
    .showHelpAfterError('Say --help after the command for its options.')
    .configureOutput({
      writeOut: terminal.out,
      writeErr: (text) => terminal.err(harmless(text)),
      outputError: (text, write) => write(text.replace(/^error: /, 'noonloop: ')),
      getOutHelpWidth: () => terminal.width,
      getErrHelpWidth: () => terminal.width,
    })
    .exitOverride();
  reportOptions(program.command('run <design>'))
    .summary('simulate a design file and report')
    .description('Simulates a design, a YAML or JSON file, through the year of a weather file, and reports.')
    .action(async (design: string, options) => {
      await (await import('./commands/run.ts')).runDesigns([design], options, terminal);
    });
  reportOptions(program.command('compare <designs...>'))
    .summary('set two or more designs side by side')
    .description('Simulates two or more designs in the same weather and sets them side by side.')
    .addOption(
      choice('--against <design>', 'what differences are taken against', ['first', 'previous']).default('first'),
    )
    .addOption(choice('--rank-by <number>', 'number by which they are ranked', [...NUMBER_KEYS, ...CASE_KEYS]))
    .action(async (designs: string[], options) => {
      if (designs.length < 2) program.error('error: compare takes two designs or more');
      await (await import('./commands/run.ts')).runDesigns(designs, options, terminal);
    });
  weatherOptions(program.command('weather <file>'))
    .summary('check a weather file')
    .description('Checks a weather file against the sun and against itself, and says what was found.')
    .option('--strict', 'end with exit code 1 where a fault was found')
    .option('-p, --picture <file>', 'draw the light of the year as SVG; - for standard output')
    .option('--force', 'replace a picture that exists')
    .option('-q, --quiet', 'no notes')
    .action(async (file: string, options) => {
      done(await (await import('./commands/weather.ts')).checkWeatherFile(file, options, terminal));
    });
  outputOptions(program.command('rate <survey>'))
    .summary('rate a used panel from what can be measured on it')
    .description(
      'Rates a used flat panel from a survey, a YAML or JSON file: length, width and covers are needed, the more the better.',
    )
    .addOption(choice('-f, --format <format>', 'default by the ending of --out, else text', ['text', 'yaml', 'json']))
    .action(async (survey: string, options) => {
      await (await import('./commands/rate.ts')).ratePanel(survey, options, terminal);
    });
  runningWeatherOptions(
    outputOptions(
      program
        .command('check-log <design>')
        .requiredOption('-w, --weather <file>', 'weather of the very weeks of the log; a typical year will not do')
        .requiredOption('-l, --log <file>', 'YAML or JSON that names the table of readings and its layout'),
    ),
  )
    .summary('what may be wrong, by a notebook of gauge readings')
    .description('Sets gauge readings against what the model expects in their weather, and ranks what may be wrong.')
    .addOption(choice('-f, --format <format>', 'default by the ending of --out, else text', ['text', 'html', 'json']))
    .addOption(
      choice('-u, --units <units>', 'units of text, page and picture; json is in SI', ['metric', 'us']).default(
        'metric',
      ),
    )
    .option('-p, --picture <file>', 'draw readings, bands and causes as SVG; - for standard output')
    .action(async (design: string, options) => {
      await (await import('./commands/check-log.ts')).checkGauges(design, options, terminal);
    });
  outputOptions(program.command('draft'))
    .summary('a design to fill in')
    .description('Hands out a design in YAML to fill in.')
    .action(async (options) => (await import('./commands/start.ts')).draftDesign(options, terminal));
  outputOptions(program.command('schema'))
    .summary('the JSON Schema of a design')
    .description('Hands out the JSON Schema by which an editor explains and completes a design file.')
    .action(async (options) => (await import('./commands/start.ts')).designSchema(options, terminal));
  return program;
}

/**
 * Runs the command.
 *
 * @param words - Arguments, without program and script.
 * @param terminal - Where results and errors go.
 * @returns Exit code; nothing is thrown.
 */
export async function runCommand(words: readonly string[], terminal: Terminal): Promise<ExitCode> {
  let exit: ExitCode = EXIT.ok;
  const program = buildProgram(terminal, (code) => {
    exit = code;
  });
  try {
    await program.parseAsync(words, { from: 'user' });
    return exit;
  } catch (error) {
    // Commander has said what it had to say; help and version are no errors.
    if (error instanceof CommanderError) return error.exitCode === 0 ? EXIT.ok : EXIT.usage;
    const { exit: code, lines } = explain(error);
    for (const line of lines) terminal.err(`${coloured(terminal, 'red', 'noonloop:')} ${harmless(line)}\n`);
    if (code === EXIT.internal && process.env.NOONLOOP_DEBUG === '1' && error instanceof Error)
      terminal.err(`${error.stack}\n`);
    return code;
  }
}
