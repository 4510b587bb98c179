// The guides by commands, from an empty folder to the last answer, in both systems of units [requirement]; from the sources.
import { chmodSync, existsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { GUIDES, runGuide } from '../../../scripts/packages/guides.mjs';
import { ownFolder } from './command.ts';

const root = fileURLToPath(new URL('../../../', import.meta.url));
const folder = ownFolder();

describe('guides by commands [requirement]', () => {
  it.each(GUIDES.flatMap((guide) => ['metric', 'us'].map((units) => [guide, units] as const)))(
    '%s in %s units',
    async (guide, units) => {
      const program = join(folder, 'noonloop');
      const call = `"${root}node_modules/.bin/tsx" --conditions=@noonloop/source "${root}packages/reports/bin/from-source.ts" "$@"`;
      writeFileSync(program, `#!/bin/sh\nexec ${call}\n`);
      chmodSync(program, 0o755);
      const { cwd, times } = await runGuide(root, guide, { folder, bin: folder, units });
      expect(times.length).toBeGreaterThan(30);
      expect(existsSync(join(cwd, 'fitted.yaml'))).toBe(true);
    },
    900_000,
  );
});
