// Settings files: published schemas, drafts, examples, and what is said about faults.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Ajv, { type ValidateFunction } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { settingsSchemas } from '../../../packages/reports/schema/settings.ts';
import { DRAFTS } from '../../../packages/reports/src/cli/drafts/index.ts';
import { KIND_NAMES, type KindName, publishedSchema } from '../../../packages/reports/src/cli/settings/kinds.ts';
import { parseSettings } from '../../../packages/reports/src/cli/settings-file.ts';
import { STUDIES } from '../../../packages/reports/src/cli/study/names.ts';
import { surveySchemas } from '../../../packages/sim-core/schema/surveys.ts';
import { command, example, ownFolder } from './command.ts';

const folder = ownFolder();
const at = (name: string, text: string): string => {
  writeFileSync(join(folder, name), text);
  return join(folder, name);
};
const plain = (value: unknown): unknown => JSON.parse(JSON.stringify(value));
const ajv = new Ajv.default({
  allErrors: true,
  strict: true,
  strictTypes: false,
  allowUnionTypes: true,
  code: { optimize: false },
});
const compiled = new Map<KindName, ValidateFunction>();
/** What a published schema says of a value, compiled once. */
async function validator(kind: KindName): Promise<ValidateFunction> {
  const known = compiled.get(kind) ?? ajv.compile(JSON.parse(await publishedSchema(kind)));
  compiled.set(kind, known);
  return known;
}

describe('published schemas of settings', () => {
  it('are what the code says; run packages/*/schema/write.ts, then format, when they are not [requirement]', async () => {
    for (const [kind, schema] of Object.entries({ ...settingsSchemas(), ...surveySchemas() }))
      expect([kind, JSON.parse(await publishedSchema(kind as KindName))]).toEqual([kind, plain(schema)]);
    for (const name of ['reports', 'sim-core']) {
      const place = new URL(`../../../packages/${name}/`, import.meta.url);
      const { exports } = JSON.parse(readFileSync(new URL('package.json', place), 'utf8'));
      const files = readdirSync(new URL('schema/', place)).filter((file) => file.endsWith('.json'));
      for (const file of files) expect(exports[`./schema/${file}`]).toBe(`./schema/${file}`);
    }
  });

  it.each(KIND_NAMES)('takes both drafts of %s, and no field that it does not know [requirement]', async (kind) => {
    // A design's, the largest by far, are looked at where its schema is compiled: tests/sim-core/define/design-schema.test.ts.
    for (const text of kind === 'design' ? [] : DRAFTS[kind]) {
      const validate = await validator(kind);
      expect([validate(parse(text)), validate.errors]).toEqual([true, null]);
      expect(validate({ ...parse(text), misspelt: 1 })).toBe(false);
    }
    expect((await command(['schema', kind])).out.trim()).toBe((await publishedSchema(kind)).trim());
    expect((await command(['draft', kind, '--units', 'us'])).out).toContain(DRAFTS[kind][1]);
  });

  it.each(STUDIES)('drafts a study by its kind, %s [requirement]', async (kind) => {
    expect(await command(['draft', kind])).toEqual(await command(['draft', 'study']));
  });

  it('takes the examples [docs/examples/settings]', async () => {
    const kinds = { 'gauge-log': 'log', 'own-meter': 'meter', prices: 'prices', 'used-panel': 'survey' } as const;
    for (const [file, kind] of Object.entries(kinds)) {
      const validate = await validator(kind);
      const value = parse(readFileSync(example(`settings/${file}.yaml`), 'utf8'));
      expect([file, validate(value), validate.errors]).toEqual([file, true, null]);
    }
  });
});

describe('faults of settings [requirement]', () => {
  const run = (text: string) => command(['run', at('design.yaml', text), '-w', example('weather/invented-valley.csv')]);
  const design = DRAFTS.design[0];

  it.each<[string, string, string, RegExp]>([
    ['letters changed about', 'tilt:', 'tlit:', /line 6, array\.tlit: .* Did you mean tilt\?/],
    ['a letter missing', 'volume:', 'volme:', /tank\.volme: .* Did you mean volume\?/],
    ['in another place', 'name: my house', 'tilt: 40', /line \d+, tilt: .* Did you mean array\.tilt\?/],
  ])('a misspelt field: %s', async (_, from, to, says) => {
    const { exit, err } = await run(design.replace(from, to));
    expect(exit).toBe(1);
    expect(err).toMatch(says);
  });

  it('a file of another kind is told which word reads it', async () => {
    for (const [kind, word] of [
      ['survey', 'noonloop rate'],
      ['months', 'noonloop make-weather'],
      ['prices', '--prices'],
      ['study', 'noonloop study'],
      ['yard-test', 'noonloop yard-test'],
      ['log', 'noonloop check-log'],
    ] as const) {
      const { err } = await run(DRAFTS[kind][0]);
      expect(err.trim().split('\n')).toHaveLength(1);
      expect(err).toContain(word);
    }
    expect((await command(['rate', at('house.yaml', design)])).err).toMatch(
      /this looks like a design, expected a survey/,
    );
  });

  it('all at once, one line each, at most twenty and a count', async () => {
    const many = Array.from({ length: 57 }, (_, at) => `strange${at}: 1\n`).join('');
    const { err } = await run(design + many);
    const lines = err.trim().split('\n');
    expect(lines).toHaveLength(21);
    expect(lines.at(-1)).toContain('and 37 more faults');
    const both = await run(design.replace('volume: 300 L', 'volume: big').replace('tilt:', 'tlit:'));
    expect(both.err).toMatch(/array\.tlit: .*\n.*array\.tilt: found nothing.*\n.*tank\.volume: found "big"/);
  });

  it('of a layout, a record, months, candidates: misspelt fields and wrong kinds of value', async () => {
    const weather = example('weather/invented-valley.csv');
    const layout = at(
      'layout.yaml',
      DRAFTS.layout[0].replace('stamps: start', 'stamps: begin\nirradianceMidpont: 0.5'),
    );
    const { err } = await command(['weather', weather, '--layout', layout]);
    expect(err).toMatch(/irradianceMidpont: .*Did you mean irradianceMidpoint\?/);
    expect(err).toMatch(/stamps: found "begin", expected one of start, end, instant/);
    // What would make the reader stumble is told, not passed on as a fault of the program.
    for (const [from, to] of [
      ['ghi: { column: global, unit: W/m2 }', 'ghi: null'],
      ['stamps: start', 'stamps: start\nirradianceMidpoint: "0.5"'],
    ] as const) {
      const wrong = at('wrong.yaml', DRAFTS.layout[0].replace(from, to));
      expect((await command(['weather', weather, '--layout', wrong])).exit).toBe(1);
    }
    const months = at('months.yaml', DRAFTS.months[0].replace('[2.4, ', '["2.4", ').replace('latitude', 'lattitude'));
    const made = (await command(['make-weather', months])).err;
    expect(made).toMatch(/site\.lattitude: .*Did you mean latitude\?/);
    expect(made).toMatch(/monthly\.dailyGhi_kWh_per_m2\.0: found "2\.4", expected a number/);
  });

  it('names twice are refused at any length; a long file is read in seconds', () => {
    const twice = (text: string) => () => parseSettings(text, 'x.json');
    expect(twice('{"a":1,"a":2}')).toThrow(/found "a" a second time/);
    const long = `"list":[${'1,'.repeat(300_000)}1]`;
    const alike = `"b":"\\"c\\":","c":{"d":{}},"e":[{"d":1},{"d":1}]`;
    expect(twice(`{${alike}}`)).not.toThrow();
    expect(twice(`{${long},${alike},"f":{"c":1,"c":2}}`)).toThrow(/x\.json, line 1: found "c" a second time/);
    // Of a length between, read as JSON: lines and names as of a short one.
    const note = `"note":"${'x'.repeat(25_000)}"`;
    const { lineOf, value } = parseSettings(`{${note},\n"f":\n{"c":1}}`, 'x.json');
    expect([lineOf('f.c'), (value as { f: unknown }).f]).toEqual([3, { c: 1 }]);
    expect(twice(`{${note},\n"f":{"c":1,"c":2}}`)).toThrow(/x\.json, line 2, column 12: found "c" a second time/);
    const before = process.cpuUsage();
    const lines = Array.from({ length: 8750 }, (_, at) => `key${at}: 1\n`).join(''); // 90 kB
    parseSettings(lines, 'x.yaml');
    const { user } = process.cpuUsage(before);
    expect(user / 1e6).toBeLessThan(1); // four times as many took 27 s when every name was compared with every other, so these 1.7 s
  });
});
