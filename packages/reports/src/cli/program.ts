// Words and options of the command.
import { createRequire } from 'node:module';
import { Command, CommanderError } from 'commander';
import { wrap } from '../formats/table.ts';
import { EXIT, type ExitCode } from './exit-codes.ts';
import { explain } from './in-words.ts';
import { coloured, harmless, type Terminal } from './terminal.ts';
import { addWord, type Word } from './word.ts';
import { ageing } from './words/ageing.ts';
import { change } from './words/change.ts';
import { checkLogWord } from './words/check-log.ts';
import { collectors } from './words/collectors.ts';
import { compare } from './words/compare.ts';
import { completion } from './words/completion.ts';
import { draft } from './words/draft.ts';
import { fillIn } from './words/fill-in.ts';
import { fit } from './words/fit.ts';
import { freezing } from './words/freezing.ts';
import { makeWeather } from './words/make-weather.ts';
import { merge } from './words/merge.ts';
import { meter } from './words/meter.ts';
import { picture } from './words/picture.ts';
import { rate } from './words/rate.ts';
import { refractometer } from './words/refractometer.ts';
import { run } from './words/run.ts';
import { schema } from './words/schema.ts';
import { size } from './words/size.ts';
import { study } from './words/study.ts';
import { thinningWord } from './words/thinning.ts';
import { upkeep } from './words/upkeep.ts';
import { weather } from './words/weather.ts';
import { yardTest } from './words/yard-test.ts';
import { years } from './words/years.ts';

const DESCRIPTION = `Simulates sun-heated domestic water hour by hour through a year of weather.

Results are calculations, not a design check. Hot water scalds, loops release steam, and roofs, gas, mains electricity and legionella hurt people: read the cautions of each report, and have the work done to local code by licensed people.`;

const CODES =
  'Exit codes: 0 all went well; 1 an input is wrong, or weather --strict found a fault; 2 the command was called wrongly; 3 a fault of the program; 4 the output could not be written; 130 and 143 ended from outside.';

const FIRST_STEPS = `First steps:
  noonloop draft --out house.yaml               a design to fill in
  noonloop draft months --out months.yaml       twelve monthly means to fill in
  noonloop make-weather months.yaml --out town.csv
  noonloop run house.yaml --weather town.csv    the year, as text`;

/** Words under the headings of the help. */
const WORDS: readonly (readonly [heading: string, words: readonly Word<never>[]])[] = [
  ['Files to begin with', [draft, schema, change, fillIn]],
  ['Weather', [makeWeather, weather]],
  ['Before buying', [rate, yardTest, collectors]],
  ['A year', [run, compare, years, picture, meter]],
  ['Sizes', [size]],
  ['Protection', [freezing, thinningWord, ageing, refractometer]],
  ['A system at work', [upkeep, checkLogWord, fit]],
  ['Studies', [study, merge]],
];

/** Builds the command. @param done - Takes the exit code of a word that has one. */
export function buildProgram(terminal: Terminal, done: (exit: ExitCode) => void): Command {
  const program = new Command('noonloop')
    .description(DESCRIPTION)
    .version((createRequire(import.meta.url)('../../package.json') as { version: string }).version)
    .usage('<word> [options]')
    .addHelpText('after', ['', ...wrap(CODES, terminal.width), '', FIRST_STEPS].join('\n'))
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
  for (const [heading, words] of WORDS) {
    program.commandsGroup(`${heading}:`);
    for (const word of words) addWord(program, word, terminal, done);
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
  const program = buildProgram(terminal, (code) => {
    exit = code;
  });
  try {
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
