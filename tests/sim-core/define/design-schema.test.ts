import { readdirSync, readFileSync } from 'node:fs';
import { DesignError, defineSystem, type SystemInput } from '@noonloop/sim-core';
import Ajv from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { DRAFTS } from '../../../packages/reports/src/cli/drafts/index.ts';
import { designSchema } from '../../../packages/sim-core/schema/build.ts';
import { plainInput } from '../../examples.ts';

type Schema = Record<string, unknown>;

const folder = new URL('../../../packages/sim-core/', import.meta.url);
const published = JSON.parse(readFileSync(new URL('schema/design-1.json', folder), 'utf8')) as Schema;
// Without a second look at the code that it makes, which takes as long as making it.
const ajv = new Ajv.default({ allErrors: true, strict: true, strictTypes: false, code: { optimize: false } });
const validate = ajv.compile(published);
const accepts = (input: unknown): boolean => {
  try {
    defineSystem(input as SystemInput);
    return true;
  } catch (error) {
    if (error instanceof DesignError) return false;
    throw error;
  }
};

/** Calls back for every field, with its path. */
function eachField(schema: Schema, path: string, visit: (path: string, field: Schema) => void): void {
  for (const [key, field] of Object.entries((schema.properties ?? {}) as Record<string, Schema>)) {
    visit(`${path}${key}`, field);
    eachField(field, `${path}${key}.`, visit);
  }
  for (const form of [...((schema.anyOf ?? []) as Schema[]), schema.items])
    if (form) eachField(form as Schema, path, visit);
}

describe('the published JSON Schema of a design', () => {
  it('is what the code says; run packages/sim-core/schema/write.ts, then format, when it is not [requirement]', () => {
    expect(published).toEqual(JSON.parse(JSON.stringify(designSchema())));
    const { exports } = JSON.parse(readFileSync(new URL('package.json', folder), 'utf8'));
    expect(exports['./schema/design-1.json']).toBe('./schema/design-1.json');
  });

  it('describes every field, and says what it takes [judgement: an editor shows no less]', () => {
    const bare: string[] = [];
    let fields = 0;
    eachField(published, '', (path, field) => {
      fields++;
      const takes = field.type ?? field.anyOf ?? field.enum ?? field.const;
      if (typeof field.description !== 'string' || takes === undefined) bare.push(path);
    });
    expect(bare).toEqual([]);
    expect(fields).toBeGreaterThan(150);
  });

  it('names the unit of every number that has one [requirement]', () => {
    const unitless: string[] = [];
    eachField(published, '', (path, { anyOf, description }) => {
      const [number, text] = (anyOf ?? []) as Schema[];
      if (number?.type === 'number' && text?.type === 'string' && !/\[.+\]/.test(String(description)))
        unitless.push(path);
    });
    expect(unitless).toEqual([]);
  });

  it('has every default of a design that the code has [requirement]', () => {
    const defaults = new Map<string, unknown>();
    eachField(published, '', (path, field) => defaults.set(path, field.default));
    const plain = defineSystem(plainInput).assumptions.filter(({ path }) => defaults.get(path) !== undefined);
    expect(plain.length).toBeGreaterThan(50);
    for (const { path, value } of plain) {
      const stated = defaults.get(path);
      const isStructure = typeof value === 'string' && typeof stated === 'object';
      expect(isStructure ? JSON.stringify(stated) : stated, path).toEqual(value);
    }
  });

  const files = readdirSync(new URL('../../../docs/examples/design-files/', import.meta.url));
  it.each(files)('accepts the example %s, as defineSystem does [requirement]', (name) => {
    const text = readFileSync(new URL(`../../../docs/examples/design-files/${name}`, import.meta.url), 'utf8');
    const input = parse(text) as Schema;
    expect(validate(input), JSON.stringify(validate.errors)).toBe(true);
    const { $schema: _, ...design } = input;
    expect(accepts(design)).toBe(true);
  });

  it('takes both drafts of the command, and no field that it does not know [requirement]', () => {
    for (const text of DRAFTS.design) {
      expect([validate(parse(text)), validate.errors]).toEqual([true, null]);
      expect(validate({ ...parse(text), misspelt: 1 })).toBe(false);
    }
  });

  const { array, tank, draw } = plainInput;
  const { collector } = array;
  const more = (fields: object) => ({ ...plainInput, ...fields });
  it.each<[string, unknown]>([
    ['what is needed alone', plainInput],
    ['units', more({ tank: { volume: '80 gal', roomTemperature: '65 degF' } })],
    ['percent', more({ array: { ...array, groundAlbedo: '35 %' } })],
    ['twelve albedos', more({ array: { ...array, groundAlbedo: new Array(12).fill(0.3) } })],
    ['no limit', more({ control: { highLimit: null } })],
    [
      'a table of modifiers',
      more({
        array: { ...array, collector: { ...collector, incidenceModifier: { angles: [0, 60], values: [1, 0.9] } } },
      }),
    ],
    ['mains by month', more({ draw: { ...draw, mains: new Array(12).fill(10) } })],
    ['a record', more({ draw: { volumes: new Array(8760).fill(0.01) } })],
    ['people', more({ draw: { people: 2.5, volumePerPerson: '40 L' } })],
    [
      'spans',
      more({
        control: {
          mode: 'schedule',
          schedule: [
            [6, 9],
            [17, 20],
          ],
        },
      }),
    ],
    ['an outage', more({ control: { outages: [{ from: '07-01', to: '07-14', kind: 'power' }] } })],
  ])('accepts, as defineSystem does: %s [requirement]', (_, input) => {
    expect(accepts(input)).toBe(true);
    expect(validate(input), JSON.stringify(validate.errors)).toBe(true);
  });

  it.each<[string, unknown]>([
    ['nothing', {}],
    ['a list', []],
    ['no tank', { array, draw }],
    ['a misspelt field', more({ tank: { ...tank, volumne: 1 } })],
    ['a misspelt group', more({ tnak: {} })],
    ['too many panels', more({ array: { ...array, panels: 101 } })],
    ['half a panel', more({ array: { ...array, panels: 1.5 } })],
    ['a tilt beyond upright', more({ array: { ...array, tilt: 91 } })],
    ['a word for a number', more({ tank: { volume: 'big' } })],
    ['an unknown word', more({ heater: { kind: 'coal' } })],
    ['yes for true', more({ loop: { checkValve: 'yes' } })],
    ['six weekdays', more({ draw: { ...draw, weekdayFactors: [1, 1, 1, 1, 1, 1] } })],
    ['a range of days', more({ draw: { ...draw, holidays: ['10 July'] } })],
    ['a short record', more({ draw: { volumes: [0.1] } })],
    ['an empty name', more({ name: '' })],
    ['a modifier of neither form', more({ array: { ...array, collector: { ...collector, incidenceModifier: {} } } })],
  ])('refuses, as defineSystem does: %s [requirement]', (_, input) => {
    expect(accepts(input)).toBe(false);
    expect(validate(input)).toBe(false);
  });
});
