// JSON Schemas (draft 2020-12) of what is found on a panel: a survey, and the readings of a yard test.
import { readFileSync } from 'node:fs';
import * as z from 'zod';
import { surveySchema } from '../src/advice/survey/schema.ts';
import { yardSchema } from '../src/advice/survey/yard-schema.ts';
import { provenance } from '../src/input/field.ts';
import { shapeOf } from '../src/input/shape.ts';
import { docstringsOf } from './docstrings.ts';

type Schema = Record<string, unknown>;

const folder = new URL('../src/advice/survey/', import.meta.url);
const read = (file: string) => readFileSync(new URL(file, folder), 'utf8');

/** Schemas by kind of file. */
export const surveySchemas = (): Record<string, Schema> => ({
  survey: published(
    'survey',
    surveySchema,
    'A used panel as a tape measure and an eye find it.',
    'SurveyInput',
    'schema.ts',
  ),
  'yard-test': published(
    'yard-test',
    yardSchema,
    'Readings of a panel in the yard.',
    'YardTestInput',
    'yard-schema.ts',
  ),
});

function published(kind: string, schema: z.ZodType, words: string, name: string, file: string): Schema {
  const made = z.toJSONSchema(schema, {
    io: 'input',
    unrepresentable: 'any',
    override: ({ zodSchema, jsonSchema }) => {
      const shape = shapeOf(zodSchema);
      if (shape !== undefined) Object.assign(jsonSchema, shape);
      const known = provenance.get(zodSchema as never);
      if (known !== undefined && zodSchema instanceof z.ZodDefault)
        Object.assign(jsonSchema, { default: zodSchema._zod.def.defaultValue });
    },
  }) as Schema;
  describe(made, '', docstringsOf([read(file)], name));
  const { $schema, properties, ...rest } = made;
  return {
    $schema,
    $id: `urn:noonloop:${kind}:1`,
    description: words,
    ...rest,
    properties: {
      $schema: { type: 'string', description: 'Address of this schema, for editors; not part of the settings.' },
      ...(properties as Schema),
    },
  };
}

/** Puts its docstring to every field. */
function describe(schema: Schema, path: string, docs: ReadonlyMap<string, string>): void {
  for (const [key, field] of Object.entries((schema.properties ?? {}) as Record<string, Schema>)) {
    const below = path === '' ? key : `${path}.${key}`;
    const words = docs.get(below);
    if (words !== undefined) field.description = words;
    describe(field, below, docs);
    if (typeof field.items === 'object' && field.items !== null) describe(field.items as Schema, below, docs);
  }
}
