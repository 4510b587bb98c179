import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));
mkdirSync(`${root}out`, { recursive: true });
const folder = mkdtempSync(`${root}out/architecture-`);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Runs the rules on the packages of a folder; names and files of what they find. */
function broken(at: string): string[] {
  const config = `${root}.dependency-cruiser.cjs`;
  const args = ['--config', config, '--output-type', 'json', 'packages'];
  const { stdout, stderr } = spawnSync(`${root}node_modules/.bin/depcruise`, args, {
    cwd: at,
    encoding: 'utf8',
    maxBuffer: 1 << 28,
  });
  if (stdout === '') throw new Error(stderr);
  const { violations, totalCruised } = JSON.parse(stdout).summary as {
    violations: { rule: { name: string }; from: string; to: string }[];
    totalCruised: number;
  };
  expect(totalCruised).toBeGreaterThan(5);
  return violations.map(({ rule, from, to }) => `${rule.name}: ${from} → ${to}`);
}

describe('imports of the packages [dependency-cruiser 17.3.9, rules of the architecture]', () => {
  it('keep the direction weather-io ← sim-core ← reports, without cycles, without Node where a browser runs', () => {
    expect(broken(root)).toEqual([]);
  });

  it('are refused where they break a rule: each rule bites on a sample that breaks it', () => {
    const files: Record<string, string> = {
      'weather-io/package.json': '{ "name": "w", "dependencies": {} }',
      'weather-io/src/index.ts': "export const year = 1;\nexport * from './tanks.ts';",
      'weather-io/src/tanks.ts': "export { step } from '../../sim-core/src/index.ts';",
      'weather-io/src/inner.ts': 'export const inner = 1;',
      'sim-core/package.json': '{ "name": "s", "dependencies": {} }',
      'sim-core/src/index.ts':
        "export const step = 1;\nexport * from './files.ts';\nexport * from './ring.ts';\nexport * from './up.ts';",
      'sim-core/src/files.ts': "import { readFileSync } from 'node:fs';\nexport const read = readFileSync;",
      'sim-core/src/ring.ts': "import { back } from './back.ts';\nexport const ring = () => back;",
      'sim-core/src/back.ts': "import { ring } from './ring.ts';\nexport const back = () => ring;",
      'sim-core/src/up.ts':
        "import { page } from '../../reports/src/index.ts';\nimport { inner } from '../../weather-io/src/inner.ts';\nimport { gone } from './gone.ts';\nimport zod from 'zod';\nexport const up = [page, inner, gone, zod];",
      'sim-core/src/physics/part.ts': "import { hour } from '../year/hour.ts';\nexport const part = hour;",
      'sim-core/src/year/hour.ts': 'export const hour = 1;',
      'sim-core/src/design/shape.ts': "import type { Word } from '../input/word.ts';\nexport type Shape = Word;",
      'sim-core/src/input/word.ts': 'export type Word = string;',
      'sim-core/src/lost.ts': 'export const lost = 1;',
      'reports/src/index.ts': "import { helper } from '../../../tests/helper.ts';\nexport const page = helper;",
      '../tests/helper.ts': 'export const helper = 1;',
    };
    for (const [path, text] of Object.entries(files)) {
      const file = `${folder}/packages/${path}`;
      mkdirSync(dirname(file), { recursive: true });
      writeFileSync(file, text);
    }
    const rules = new Set(broken(folder).map((line) => line.split(':')[0]));
    expect([...rules].sort()).toEqual([
      'by-the-front-door',
      'ground-floor-stands-alone',
      'no-cycle',
      'no-import-upwards-physics',
      'no-test-in-a-package',
      'nothing-lost',
      'nothing-unlisted',
      'nothing-unresolved',
      'physics-knows-no-reports',
      'runs-in-a-browser',
      'weather-at-run-time-is-sun-and-calendar',
      'weather-knows-no-tanks',
    ]);
  });
});
