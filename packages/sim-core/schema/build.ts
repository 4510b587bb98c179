// JSON Schema (draft 2020-12) of a design as people write it, from the schemas that check it and the docstrings of its fields.
import * as z from 'zod';
import { defineSystem } from '../src/define/define.ts';
import { systemSchema } from '../src/define/schema/system.ts';
import type { SystemInput } from '../src/define/system-input.ts';
import { provenance } from '../src/input/field.ts';
import { shapeOf } from '../src/input/shape.ts';
import { designDocstrings } from './docstrings.ts';

type Schema = Record<string, unknown>;

/** Version in the name of the published file; it rises when a file that passed may fail. */
export const DESIGN_SCHEMA_VERSION = 1;

/** Words for fields that a design does not keep, or keeps otherwise than people write them. */
const WRITTEN: Readonly<Record<string, string>> = {
  'draw.profile': 'Day by name: a tapping profile of EU regulation 812/2013 (3XS to XXL), or a household’s shape.',
  'draw.dailyVolume': 'Mixed water at the taps on a day with factor 1; beside no volumes and no people. [m³]',
  'heater.netEfficiency':
    'Heat into the water over fuel by net calorific value, as European boilers’ papers often have it; instead of burnerEfficiency, beside fuel. [-]',
  'draw.people': 'How many live in the house; instead of dailyVolume.',
  'draw.volumePerPerson': 'Mixed water a head and day, beside people. [m³]',
  'draw.volumes':
    'Your own record of mixed water: 8760 values from 1 January 00:00 standard time, or 8760 times a divisor of 60. [m³]',
  'heater.kind': 'A store with burner or element, a flow-through heater, or an element in the top of the solar tank.',
  'heater.baselineVolume':
    'With kind "element": water in the heater that the same house would have without the sun. [m³]',
};

/** Builds the schema. */
export function designSchema(): Schema {
  const docs = designDocstrings();
  const derived = derivedSources();
  const schema = z.toJSONSchema(systemSchema, {
    io: 'input',
    unrepresentable: 'any',
    override: ({ zodSchema, jsonSchema }) => {
      const shape = shapeOf(zodSchema);
      if (shape !== undefined) Object.assign(jsonSchema, shape);
      const known = provenance.get(zodSchema as never);
      // Defaults are given here, for a number in SI is a valid input; the library leaves out those of fields that it transforms.
      if (known !== undefined && zodSchema instanceof z.ZodDefault)
        Object.assign(jsonSchema, { $comment: known.source, default: zodSchema._zod.def.defaultValue });
    },
  }) as Schema;
  describe(schema, '', docs, derived);
  const { $schema: _, ...rest } = schema;
  const properties = rest.properties as Schema;
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    $id: `urn:noonloop:design:${DESIGN_SCHEMA_VERSION}`,
    title: 'Design of a sun-heated water system',
    description:
      'What noonloop simulates. Needed are array (panels, tilt, azimuth and the collector’s area, eta0, a1, a2), tank.volume and a draw; all else has a default. A bare number is in the unit in brackets; a string may carry another, such as "80 gal".',
    ...rest,
    properties: {
      $schema: { type: 'string', description: 'Address of this schema, for editors; not part of the design.' },
      ...properties,
    },
  };
}

/** Sources of the defaults that follow from other fields, by path; those of the usual kind where kinds differ. */
function derivedSources(): Map<string, string> {
  const array = { panels: 2, tilt: 40, azimuth: 180, collector: { area: 2, eta0: 0.75, a1: 3.8, a2: 0.012 } };
  const least = { array, tank: { volume: 0.3 }, draw: { dailyVolume: 0.2 } };
  const designs: SystemInput[] = [
    least,
    { ...least, draw: { people: 4 } },
    { ...least, pump: { drive: 'direct' } },
    { ...least, heater: { kind: 'instantaneous-gas' } },
    { ...least, heater: { kind: 'element' } },
  ];
  const found = new Map<string, string>();
  for (const design of designs)
    for (const { path, source } of defineSystem(design).assumptions) if (!found.has(path)) found.set(path, source);
  return found;
}

/** Puts words to every field: its docstring, and what happens when it is left out. */
function describe(schema: Schema, path: string, docs: Map<string, string>, derived: Map<string, string>): void {
  const { $comment: source, ...rest } = schema;
  for (const key of Object.keys(schema)) delete schema[key];
  const words = WRITTEN[path] ?? docs.get(path);
  const left = typeof source === 'string' ? source : 'default' in rest ? undefined : derived.get(path);
  const tail = left === undefined ? '' : 'default' in rest ? ` Default: ${left}.` : ` Left out, it follows: ${left}.`;
  if (words !== undefined) schema.description = words + tail;
  Object.assign(schema, rest);
  for (const [key, field] of Object.entries((schema.properties ?? {}) as Record<string, Schema>))
    describe(field, path === '' ? key : `${path}.${key}`, docs, derived);
  // Forms of a field, and items of its list, have the fields that its docstring's type names.
  const forms = [...((schema.anyOf ?? []) as Schema[]), ...(isObject(schema.items) ? [schema.items] : [])];
  for (const form of forms) {
    const inner = form.properties ?? (isObject(form.items) ? form.items.properties : undefined);
    for (const [key, field] of Object.entries((inner ?? {}) as Record<string, Schema>))
      describe(field, `${path}.${key}`, docs, derived);
  }
}

const isObject = (value: unknown): value is Schema =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
