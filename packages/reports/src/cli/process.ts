import { setFlagsFromString } from 'node:v8';
import { EXIT } from './exit-codes.ts';
import { forgetAll } from './files.ts';
import { runCommand } from './program.ts';
import { processTerminal } from './terminal.ts';

/**
 * A year or two are over before dearer machine code has paid for itself: without these arts of V8 the first year takes a quarter less of the
 * processor, and each after the second a third more. Bits do not change.
 */
const LIGHT_COMPILING = [
  '--max-inlined-bytecode-size-cumulative=0',
  '--no-turbo-loop-peeling',
  '--no-turbo-loop-variable',
];

/**
 * A loop waits for its better code instead of running on in the poor one: a twenty-fifth less on Node 20, a fortieth on 22, but more on 24.
 */
const WAIT_FOR_CODE = '--no-concurrent-osr';

/** Versions of Node that know these flags; another would complain. */
const KNOW_THEM = /^(20|22|24)\./;

/** Whether a year or a few are all that is asked for. */
const isSoonOver = (words: readonly string[]): boolean =>
  /^(run|compare)$/.test(words[0] ?? '') && words.length < 12 && !words.includes('--how-sure');

/** Runs the command with the arguments of the process and sets its exit code; what is written is let out first. */
export async function runProcess(): Promise<void> {
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    // A reader that goes early, as `head` does, is no fault.
    if (error.code === 'EPIPE') process.exit();
    const words = `standard output cannot be written (${error.code ?? error.message}). Check where it goes and the free space there.`;
    process.stderr.write(`noonloop: ${words}\n`, () => process.exit(EXIT.output));
  });
  // Where nobody reads the errors there is nobody to tell.
  process.stderr.on('error', () => {});
  for (const [signal, number] of [
    ['SIGINT', 2],
    ['SIGTERM', 15],
    ['SIGHUP', 1],
  ] as const) {
    process.once(signal, () => {
      forgetAll();
      process.exit(128 + number);
    });
  }
  const words = process.argv.slice(2);
  const { node } = process.versions;
  if (isSoonOver(words) && KNOW_THEM.test(node))
    for (const flag of node < '24' ? [...LIGHT_COMPILING, WAIT_FOR_CODE] : LIGHT_COMPILING) setFlagsFromString(flag);
  const exit = await runCommand(words, processTerminal());
  process.exitCode ??= exit;
}
