// The help of every word: within the width, and its example runs as it stands, in a folder of drafts.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { DRAFTS, TABLES } from '../../../packages/reports/src/cli/drafts/index.ts';
import { buildProgram } from '../../../packages/reports/src/cli/program.ts';
import { command, ownFolder } from './command.ts';

const folder = ownFolder();
const silent = { out: () => {}, err: () => {}, width: 80, isWatched: false, hasColours: false };
const words = (await buildProgram(silent, () => {})).commands.map((word) => word.name());

/** Names by which examples call the drafts. */
const CALLED: Readonly<Record<string, keyof typeof DRAFTS>> = {
  'months.yaml': 'months',
  'prices.yaml': 'prices',
  'panel.yaml': 'survey',
  'yard.yaml': 'yard-test',
  'panels.yaml': 'collectors',
  'study.yaml': 'study',
  'log.yaml': 'log',
  'meter.yaml': 'meter',
};

/** Words of an example, file names in the folder; lines that go on are one. */
function callOf(help: string): string[] {
  const example = help
    .split('Example:\n')[1]!
    .replaceAll(/\\\n */g, '')
    .trim();
  const parts = [...example.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, bare]) => quoted ?? bare!);
  expect(parts[0]).toBe('noonloop');
  return parts.slice(1).map((part) => (/\.(yaml|csv|json|html|svg|jsonl)$/.test(part) ? join(folder, part) : part));
}

describe('help [requirement]', () => {
  it.each([[''], ...words.map((word) => [word])])('of %s is within the width', async (word) => {
    const { exit, out, err } = await command([...(word === '' ? [] : [word]), '--help']);
    expect([exit, err]).toEqual([0, '']);
    expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
  });

  it('has an example of every word, and each runs', async () => {
    for (const [file, kind] of Object.entries(CALLED)) writeFileSync(join(folder, file), DRAFTS[kind][0]);
    writeFileSync(join(folder, 'readings.csv'), TABLES.readings);
    writeFileSync(join(folder, 'meter.csv'), TABLES['meter-table']);
    const small = DRAFTS.study[0].replace('[1, 2, 3]', '[1, 2]').replace('[200 L, 300 L, 400 L]', '[200 L]');
    writeFileSync(join(folder, 'study.yaml'), small);
    const first = ['draft', 'make-weather', 'change'];
    for (const word of [...first, ...words.filter((name) => !first.includes(name))]) {
      const call = callOf((await command([word, '--help'])).out);
      expect(call[0]).toBe(word);
      if (word === 'merge') {
        for (const part of [1, 2])
          await command([
            ...[
              'study',
              join(folder, 'study.yaml'),
              '--weather',
              join(folder, 'town.csv'),
              '--threads',
              '1',
              '--quiet',
            ],
            ...['--part', `${part}/2`, '--keep', join(folder, `part-${part}.jsonl`)],
          ]);
      }
      if (word === 'years')
        for (const seed of ['2', '3'])
          await command([
            'make-weather',
            join(folder, 'months.yaml'),
            '--seed',
            seed,
            '--out',
            join(folder, `town-${seed}.csv`),
          ]);
      const { exit, err } = await command(word === 'study' ? [...call, '--threads', '1'] : call);
      expect([word, exit, /^(written|note): /.test(err) || err === '' ? '' : err]).toEqual([word, 0, '']);
    }
  }, 300_000);

  it('completion knows every word', async () => {
    for (const shell of ['bash', 'zsh', 'fish']) {
      const { out } = await command(['completion', shell]);
      for (const word of words) expect(out).toContain(word);
    }
    expect((await command(['completion', 'powershell'])).exit).toBe(2);
  });
});
