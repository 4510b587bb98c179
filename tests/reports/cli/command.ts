import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll } from 'vitest';
import { runCommand } from '../../../packages/reports/src/cli/program.ts';
import type { Terminal } from '../../../packages/reports/src/cli/terminal.ts';

/** What a command did. */
export interface Outcome {
  readonly exit: number;
  readonly out: string;
  readonly err: string;
}

/** Runs the command in this process and catches what it says. */
export async function command(words: readonly string[], terminal: Partial<Terminal> = {}): Promise<Outcome> {
  let out = '';
  let err = '';
  const exit = await runCommand(words, {
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
    width: 80,
    isWatched: false,
    hasColours: false,
    ...terminal,
  });
  return { exit, out, err };
}

/** Path of an example. */
export const example = (name: string): string =>
  fileURLToPath(new URL(`../../../docs/examples/${name}`, import.meta.url));

/** An empty folder of its own for the tests of a file, removed after them. */
export function ownFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'noonloop-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}
