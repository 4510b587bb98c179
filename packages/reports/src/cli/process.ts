import { EXIT } from './exit-codes.ts';
import { forgetAll } from './files.ts';
import { runCommand } from './program.ts';
import { processTerminal } from './terminal.ts';

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
  const exit = await runCommand(process.argv.slice(2), processTerminal());
  process.exitCode ??= exit;
}
