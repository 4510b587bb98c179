// Studies from one small file [the studies themselves: tests/sim-core/study]; all settings are drafts or invented here.
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import * as core from '@noonloop/sim-core';
import { synthesizeYear, vetWeather, type WeatherYear } from '@noonloop/weather-io';
import { beforeAll, describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { DRAFTS } from '../../../packages/reports/src/cli/drafts/index.ts';
import { command, ownFolder } from './command.ts';

const folder = ownFolder();
const at = (name: string, text?: string) => {
  if (text !== undefined) writeFileSync(join(folder, name), text);
  return join(folder, name);
};
const input = parse(DRAFTS.design[0]) as core.SystemInput;
let weather: WeatherYear;
const plain = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

beforeAll(async () => {
  at('house.yaml', DRAFTS.design[0]);
  at('months.yaml', DRAFTS.months[0]);
  await command(['make-weather', at('months.yaml'), '--out', at('town.csv')]);
  weather = vetWeather(synthesizeYear(parse(DRAFTS.months[0]) as never));
});

const study = (name: string, text: string, ...more: readonly string[]) =>
  command(['study', at(`${name}.yaml`, text), '--weather', at('town.csv'), '--threads', '1', '--quiet', ...more]);

const SWEEP = `study: sweep
design: house.yaml
vary: { array.panels: [1, 2], tank.volume: [200 L, 80 gal] }
price: { fixed: 1000, array.panels: 400, tank.volume: { 200 L: 700, 80 gal: 900 } }
`;

describe('a study [requirement]', () => {
  it('sweep: the rows of the library; prices by the values as written; a frontier and its picture', async () => {
    const axes = { 'array.panels': [1, 2], 'tank.volume': ['200 L', '80 gal'] };
    const rows = await core.collectRows(core.sweep(input, axes as never, weather));
    const { exit, out } = await study('sweep', SWEEP, '--json', '--picture', at('sweep.svg'));
    expect(exit).toBe(0);
    const found = JSON.parse(out) as { rows: unknown; frontier: { cost: number }[] };
    expect(found.rows).toEqual(plain(rows));
    // The cheapest always stands; 1000 + 400 + 700 by hand.
    expect(found.frontier[0]!.cost).toBe(2100);
    expect(readFileSync(at('sweep.svg'), 'utf8')).toMatch(/^<svg .*by price/s);
    const csv = (await study('sweep', SWEEP, '--format', 'csv', '--table', 'rows')).out;
    expect(csv.split('\r\n')[0]).toMatch(/^design,array.panels,tank.volume,Energy delivered/); // one year of weather, no faults
    expect(csv.split('\r\n')[1]).toMatch(/^1,1,200 L,\d/);
    expect(csv.trim().split('\r\n')).toHaveLength(5);
  });

  it('a map of two axes, bars of influence, bands of percentiles, the course of a search', async () => {
    const head = 'design: house.yaml\n';
    const map = `study: sweep\n${head}vary: { array.tilt: { from: 30, to: 50, count: 2 }, array.azimuth: [150, 210] }\n`;
    const bars = `study: sensitivity\n${head}vary: { array.tilt: { from: 30, to: 50 }, tank.volume: { from: 200 L, to: 400 L } }\n`;
    const band = `study: uncertainty\n${head}samples: 10\nvary: { array.collector.eta0: { p10: 0.7, p90: 0.8 } }\n`;
    const best = `study: best-of\n${head}vary: { array.panels: { from: 1, to: 3, whole: true } }\ngoal: { highest: fuelSaved }\nevaluations: 3\n`;
    for (const [name, text, says] of [
      ['map', map, 'Map of Energy delivered'],
      ['bars', bars, 'Energy delivered, change'],
      ['band', band, 'Bands of percentiles'],
      ['best', best, 'every design that the search looked at'],
    ] as const) {
      const { exit, err } = await study(name, text, '--picture', at(`${name}.svg`));
      expect([exit, err]).toEqual([0, '']);
      expect(readFileSync(at(`${name}.svg`), 'utf8')).toContain(says);
    }
    const { out } = await study('bars', bars, '--json');
    const outcome = await core
      .sensitivity(
        input,
        { 'array.tilt': { from: 30, to: 50 }, 'tank.volume': { from: '200 L', to: '400 L' } },
        weather,
      )
      .outcome();
    expect(JSON.parse(out).changes).toEqual(plain(outcome.changes));
    await study('best', best, '--design-out', at('best-design.yaml'));
    expect(parse(readFileSync(at('best-design.yaml'), 'utf8')).array.panels).toBe(3); // more panels save more fuel
  });

  it('parts and their merge are the file of the whole, to the byte; a kept file is read back', async () => {
    const keep = (name: string, ...more: readonly string[]) => study('sweep', SWEEP, '--keep', at(name), ...more);
    const whole = await keep('whole.jsonl', '--json');
    for (const part of ['1/2', '2/2'])
      expect((await keep(`part-${part[0]}.jsonl`, '--part', part, '--json')).exit).toBe(0);
    await command(['merge', at('part-1.jsonl'), at('part-2.jsonl'), '--keep', at('merged.jsonl')]);
    expect(readFileSync(at('merged.jsonl'), 'utf8')).toBe(readFileSync(at('whole.jsonl'), 'utf8'));
    expect((await keep('merged.jsonl', '--json')).out).toBe(whole.out);
    expect(existsSync(at('whole.jsonl.lock'))).toBe(false);
    // A process that still runs, such as this one, holds its file.
    at('whole.jsonl.lock', `${process.ppid} ${hostname()}\n`);
    const held = await keep('whole.jsonl');
    expect([held.exit, held.err]).toEqual([
      4,
      expect.stringContaining(`process ${process.ppid} on ${hostname()} is writing rows there`),
    ]);
  });

  it.each<[string, string, RegExp]>([
    ['a misspelt place', SWEEP.replace('array.panels: [', 'array.panel: ['), /line 3, vary\.array\.panel: /],
    ['a misspelt word', SWEEP.replace('vary:', 'varry:'), /line 3, varry: .*Did you mean vary\?/],
    ['no such kind', SWEEP.replace('sweep', 'seep'), /line 1, study: found "seep", expected one of sweep, best-of/],
    ['a field of another kind', `${SWEEP}seed: 3\n`, /line 5, seed: not for the study "sweep"/],
    ['no such design', SWEEP.replace('house', 'horse'), /horse\.yaml: there is no such file/],
    ['a value without a price', SWEEP.replace('200 L: 700', '250 L: 700'), /line 4, price: found no price for/],
  ])('faults by file and line: %s', async (_, text, says) => {
    const { exit, err } = await study('bad', text);
    expect(exit).toBe(1);
    expect(err).toMatch(says);
  });
});
