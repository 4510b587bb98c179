import { mkdtemp, readFile, rm, truncate, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { bestOf, collectRows, StudyError, type StudyProgress, shard, sweep } from '@noonloop/sim-core';
import { mergeResults, type ResultsHeader, readResults, resultsFile } from '@noonloop/sim-core/node';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readLine, writeLine } from '../../../packages/sim-core/src/study/node/lines.ts';
import { inventedValley, plainInput } from '../../examples.ts';
import { coarse, mostlyBadVolumes, onceEach } from './small.ts';

const weather = await inventedValley();
const runner = onceEach();
const study = sweep(plainInput, { 'tank.volume': mostlyBadVolumes }, weather, {
  ...coarse,
  monthly: ['deliveredEnergy'],
});

let folder = '';
let whole = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'noonloop-study-'));
  const path = join(folder, 'whole.jsonl');
  await study.outcome({ runner, store: resultsFile(path) });
  whole = await readFile(path, 'utf8');
});
afterAll(() => rm(folder, { recursive: true }));

/** A file with some text, and the run of the study over it. */
async function resume(name: string, text: string) {
  const path = join(folder, name);
  await writeFile(path, text);
  const told: StudyProgress[] = [];
  const rows = await collectRows(
    study.run({ runner, store: resultsFile(path), onProgress: (progress) => told.push(progress) }),
  );
  return { rows, text: await readFile(path, 'utf8'), resumed: told.at(-1)!.resumed };
}

const failure = (run: Promise<unknown>): Promise<StudyError> =>
  run.then(
    () => Promise.reject(new Error('nothing was refused')),
    (error: StudyError) => error,
  );

describe('a results file [requirement]', () => {
  it('has a header with units, and a line for each row, in JSON', async () => {
    const lines = whole
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line) as Record<string, unknown>);
    expect(lines).toHaveLength(1 + mostlyBadVolumes.length);
    expect(lines[0]!.header).toMatchObject({ total: 11, units: { deliveredEnergy: 'J', peakTankTemperature: '°C' } });
    expect(lines[1]!.row).toMatchObject({ index: 0, inputs: { 'tank.volume': 0.2 } });
    expect(lines[2]!.row).toMatchObject({ error: { name: 'DesignError' } });
  });

  it('reads back the rows that were handed out, to the bit', async () => {
    const rows = await collectRows(study.run({ runner }));
    const back = await readResults(join(folder, 'whole.jsonl'));
    expect(await collectRows(back)).toEqual(rows);
    expect(await collectRows(back)).toHaveLength(rows.length);
  });

  it('goes on after a crash at any place, torn lines dropped, to the same bytes', async () => {
    const lines = whole.split('\n');
    const upTo = (count: number): string =>
      lines
        .slice(0, count)
        .map((line) => `${line}\n`)
        .join('');
    for (const [name, text, resumed] of [
      ['fresh', '', 0],
      ['torn-header', whole.slice(0, 60), 0],
      ['header-alone', upTo(1), 0],
      ['whole-line', upTo(5), 4],
      ['torn-line', upTo(6) + lines[6]!.slice(0, 37), 5],
      ['finished', whole, 11],
    ] as const) {
      const outcome = await resume(`${name}.jsonl`, text);
      expect([name, outcome.resumed, outcome.text === whole]).toEqual([name, resumed, true]);
      expect(outcome.rows).toHaveLength(11);
    }
  });

  it('keeps what was handed out when the study is cancelled', async () => {
    const path = join(folder, 'cancelled.jsonl');
    const controller = new AbortController();
    const reading = (async () => {
      for await (const { index } of study.run({ runner, store: resultsFile(path), signal: controller.signal })) {
        if (index === 3) controller.abort();
      }
    })();
    await expect(reading).rejects.toHaveProperty('name', 'AbortError');
    expect(await collectRows(await readResults(path))).toHaveLength(4);
    expect((await resume('cancelled.jsonl', await readFile(path, 'utf8'))).text).toBe(whole);
  });

  it('refuses a damaged line and one that is missing, by number', async () => {
    const damaged = whole.replace('"tank.volume":-3', '"tank.volume":-8');
    const error = await failure(resume('damaged.jsonl', damaged));
    expect(error).toBeInstanceOf(StudyError);
    expect(error.message).toMatch(/damaged\.jsonl line 5: .*checksum/);
    const lines = whole.split('\n');
    lines.splice(3, 1);
    expect((await failure(resume('gap.jsonl', lines.join('\n')))).message).toMatch(
      /line 4: found row 3, expected row 2/,
    );
  });

  it('refuses another study in words that say what differs, and leaves the file as it is', async () => {
    const path = join(folder, 'whole.jsonl');
    const run = (changed: Parameters<typeof sweep>) =>
      failure(sweep(...changed).outcome({ runner, store: resultsFile(path) }));
    const axes = { 'tank.volume': mostlyBadVolumes };
    const options = { ...coarse, monthly: ['deliveredEnergy'] as const };
    const warmer = {
      ...weather,
      columns: { ...weather.columns, dryBulb: weather.columns.dryBulb.map((air) => air + 1) },
    };
    expect((await run([{ ...plainInput, name: 'other' }, axes, weather, options])).found).toContain(
      'another base design',
    );
    expect((await run([plainInput, axes, warmer, options])).found).toBe('results with other weather');
    expect((await run([plainInput, axes, weather, coarse])).found).toContain('other key figures');
    expect((await failure(shard(study, 0, 2).outcome({ runner, store: resultsFile(path) }))).found).toContain(
      'the whole study',
    );
    expect(await readFile(path, 'utf8')).toBe(whole);
  });

  it('never writes over a file that is none of its own', async () => {
    for (const [name, text] of [
      ['notes.txt', 'my notes, no line end'],
      ['table.csv', 'a,b\n1,2\n'],
    ] as const) {
      const error = await failure(resume(name, text));
      expect(error.message).toMatch(/line 1: .*Nothing was written/);
      expect(await readFile(join(folder, name), 'utf8')).toBe(text);
    }
  });
});

describe('a search with a results file [requirement]', () => {
  it('goes on where it stopped, to the same bytes and the same best', async () => {
    const ranges = { 'array.panels': { from: 1, to: 3, whole: true }, 'tank.volume': { from: 0.2, to: 0.3 } };
    const search = bestOf(plainInput, ranges, weather, { ...coarse, goal: { highest: 'fuelSaved' }, evaluations: 4 });
    const path = join(folder, 'search.jsonl');
    const found = await search.outcome({ runner, store: resultsFile(path) });
    const text = await readFile(path, 'utf8');
    await writeFile(path, text.split('\n').slice(0, 4).join('\n'));
    expect(await search.outcome({ runner, store: resultsFile(path) })).toEqual(found);
    expect(await readFile(path, 'utf8')).toBe(text);
  });
});

describe('merge [requirement]', () => {
  async function shards(count: number, prefix: string): Promise<string[]> {
    const paths = Array.from({ length: count }, (_, index) => join(folder, `${prefix}-${index}.jsonl`));
    for (const [index, path] of paths.entries())
      await shard(study, index, count).outcome({ runner, store: resultsFile(path) });
    return paths;
  }

  it('gives the same bytes from 1 shard, 7 shards and one run, whatever the order of the files', async () => {
    const target = join(folder, 'merged.jsonl');
    for (const count of [1, 7, 13]) {
      const paths = await shards(count, `of-${count}`);
      await mergeResults(paths.reverse(), target);
      expect(await readFile(target, 'utf8')).toBe(whole);
    }
  });

  it('names parts that are missing, doubled, unfinished or of another study', async () => {
    const paths = await shards(3, 'part');
    const target = join(folder, 'none.jsonl');
    expect((await failure(mergeResults(paths.slice(1), target))).found).toBe('no rows 0 to 2');
    expect((await failure(mergeResults([...paths, paths[0]!], target))).found).toContain('rows 0 to 2 twice');
    const bytes = (await readFile(paths[2]!)).length;
    await truncate(paths[2]!, bytes - 20);
    expect((await failure(mergeResults(paths, target))).message).toMatch(
      /3 rows, expected 4 rows.*Run this shard again/,
    );
    const other = sweep(plainInput, { 'tank.volume': [-1, -2, -3] }, weather);
    await other.outcome({ store: resultsFile(join(folder, 'other.jsonl')) });
    const mixed = await failure(mergeResults([paths[0]!, join(folder, 'other.jsonl')], target));
    expect(mixed.found).toContain('another base design');
    await expect(readFile(target)).rejects.toHaveProperty('code', 'ENOENT');
  });

  it.each([
    ['engine', 'another version or build of the simulation'],
    ['arithmetic', 'the arithmetic of another JavaScript engine'],
  ])('refuses parts of which one was computed by another %s', async (name, words) => {
    const paths = await shards(2, `by-${name}`);
    const target = join(folder, 'mixture.jsonl');
    const [head, ...rows] = (await readFile(paths[1]!, 'utf8')).split('\n');
    const header = readLine(head!, 'header') as ResultsHeader;
    const fingerprint = { ...header.fingerprint, [name]: 'of somebody else' };
    await writeFile(paths[1]!, [writeLine('header', { ...header, fingerprint }), rows.join('\n')].join(''));
    const { found, place } = await failure(mergeResults(paths, target));
    expect(found).toContain(words);
    expect(place).toBe(paths[1]);
    await expect(readFile(target)).rejects.toHaveProperty('code', 'ENOENT');
  });
});
