// The command from its sources, without a build: pnpm run noonloop
import { runProcess } from '../src/cli/process.ts';

await runProcess();
