import { runCommand } from './program.ts';
import { processTerminal } from './terminal.ts';

/** Runs the command with the arguments of the process and sets its exit code; what is written is let out first. */
export async function runProcess(): Promise<void> {
  // A reader that goes early, as `head` does, is no fault.
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
    process.exit();
  });
  process.exitCode = await runCommand(process.argv.slice(2), processTerminal());
}
