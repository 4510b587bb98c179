// Words and options of the command.
import { createRequire } from 'node:module';
import { Command, CommanderError } from 'commander';
import { wrap } from '../formats/table.ts';
import { EXIT, type ExitCode, Refusal } from './exit-codes.ts';
import { explain } from './in-words.ts';
import { STUDIES } from './study/names.ts';
import { coloured, harmless, type Terminal } from './terminal.ts';
import { addWord, type Word } from './word.ts';
import { completion } from './words/completion.ts';

const DESCRIPTION = `Simulates sun-heated domestic water hour by hour through a year of weather.

Results are calculations, not a design check. Hot water scalds, loops release steam, and roofs, gas, mains electricity and legionella hurt people: read the cautions of each report, and have the work done to local code by licensed people.`;

const CODES =
  'Exit codes: 0 all went well; 1 an input is wrong, or weather --strict found a fault; 2 the command was called wrongly; 3 a fault of the program; 4 the output could not be written; 130 and 143 ended from outside.';

const FIRST_STEPS = `First steps:
  noonloop draft --out house.yaml               a design to fill in
  noonloop draft months --out months.yaml       twelve monthly means to fill in
  noonloop make-weather months.yaml --out town.csv
  noonloop run house.yaml --weather town.csv    the year, as text`;

/** Words by name under the headings of the help; each is loaded when it is wanted. */
const WORDS: Readonly<Record<string, Readonly<Record<string, () => Promise<Word<never>>>>>> = {
  'Files to begin with': {
    draft: async () => (await import('./words/draft.ts')).draft,
    schema: async () => (await import('./words/schema.ts')).schema,
    change: async () => (await import('./words/change.ts')).change,
    'fill-in': async () => (await import('./words/fill-in.ts')).fillIn,
  },
  Weather: {
    'make-weather': async () => (await import('./words/make-weather.ts')).makeWeather,
    weather: async () => (await import('./words/weather.ts')).weather,
  },
  'Before buying': {
    rate: async () => (await import('./words/rate.ts')).rate,
    'yard-test': async () => (await import('./words/yard-test.ts')).yardTest,
    collectors: async () => (await import('./words/collectors.ts')).collectors,
  },
  'A year': {
    run: async () => (await import('./words/run.ts')).run,
    compare: async () => (await import('./words/compare.ts')).compare,
    live: async () => (await import('./words/live.ts')).live,
    years: async () => (await import('./words/years.ts')).years,
    picture: async () => (await import('./words/picture.ts')).picture,
    meter: async () => (await import('./words/meter.ts')).meter,
  },
  Sizes: {
    size: async () => (await import('./words/size.ts')).size,
  },
  Protection: {
    freezing: async () => (await import('./words/freezing.ts')).freezing,
    thinning: async () => (await import('./words/thinning.ts')).thinningWord,
    ageing: async () => (await import('./words/ageing.ts')).ageing,
    refractometer: async () => (await import('./words/refractometer.ts')).refractometer,
  },
  'A system at work': {
    upkeep: async () => (await import('./words/upkeep.ts')).upkeep,
    'check-log': async () => (await import('./words/check-log.ts')).checkLogWord,
    fit: async () => (await import('./words/fit.ts')).fit,
  },
  Studies: {
    study: async () => (await import('./words/study.ts')).study,
    merge: async () => (await import('./words/merge.ts')).merge,
  },
};

/**
 * Builds the command.
 *
 * @param done - Takes the exit code of a word that has one.
 * @param asked - First argument; where it is the name of a word, only that one is loaded.
 */
export async function buildProgram(
  terminal: Terminal,
  done: (exit: ExitCode) => void,
  asked?: string,
): Promise<Command> {
  const program = new Command('noonloop')
    .description(DESCRIPTION)
    .version((createRequire(import.meta.url)('../../package.json') as { version: string }).version)
    .usage('<word> [options]')
    .addHelpText('after', () => ['', ...wrap(CODES, terminal.width), '', FIRST_STEPS].join('\n'))
    .showHelpAfterError('Say --help after the word for its options.')
    .configureOutput({
      writeOut: terminal.out,
      writeErr: (text) => terminal.err(harmless(text)),
      outputError: (text, write) => write(text.replace(/^error: /, 'noonloop: ')),
      getOutHelpWidth: () => terminal.width,
      getErrHelpWidth: () => terminal.width,
    })
    .configureHelp({ subcommandTerm: (command) => command.name() })
    .exitOverride();
  const known = asked !== undefined && Object.values(WORDS).some((words) => Object.hasOwn(words, asked));
  for (const [heading, words] of Object.entries(WORDS)) {
    program.commandsGroup(`${heading}:`);
    for (const [name, load] of Object.entries(words))
      if (!known || name === asked) addWord(program, await load(), terminal, done);
  }
  program.commandsGroup('The shell:');
  addWord(program, completion(program), terminal, done);
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
  const done = (code: ExitCode) => {
    exit = code;
  };
  try {
    if ((STUDIES as readonly (string | undefined)[]).includes(words[0])) throw isStudy(words[0]!);
    const program = await buildProgram(terminal, done, words[0]);
    await program.parseAsync(words, { from: 'user' });
    return exit;
  } catch (error) {
    // The argument library has said what it had to say; help and version are no errors.
    if (error instanceof CommanderError) return error.exitCode === 0 ? EXIT.ok : EXIT.usage;
    const { exit: code, lines } = explain(error);
    for (const line of lines) terminal.err(`${coloured(terminal, 'red', 'noonloop:')} ${harmless(line)}\n`);
    if (code === EXIT.internal && process.env.NOONLOOP_DEBUG === '1' && error instanceof Error)
      terminal.err(`${error.stack}\n`);
    return code;
  }
}

/** The kinds of study share a word, for a file says which it is. */
const isStudy = (name: string): Refusal =>
  new Refusal(EXIT.usage, [
    `${name} is a kind of study, which a file describes. Say "noonloop draft study --out study.yaml", fill it in, then "noonloop study study.yaml --weather town.csv".`,
  ]);
