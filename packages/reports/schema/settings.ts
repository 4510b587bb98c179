// JSON Schemas (draft 2020-12) of the settings files that the command checks itself.
import * as z from 'zod';
import { collectorsSchema, sizingSchema, studySchema } from '../src/cli/settings/job-kinds.ts';
import { pricesSchema } from '../src/cli/settings/price-kind.ts';
import { logSchema, meterSchema } from '../src/cli/settings/record-kinds.ts';
import { layoutSchema, monthsSchema } from '../src/cli/settings/weather-kinds.ts';

const KINDS = {
  months: monthsSchema,
  layout: layoutSchema,
  meter: meterSchema,
  log: logSchema,
  prices: pricesSchema,
  collectors: collectorsSchema,
  sizing: sizingSchema,
  study: studySchema,
} as const;

/** Schemas by kind, as they are published. */
export function settingsSchemas(): Record<string, Record<string, unknown>> {
  return Object.fromEntries(Object.entries(KINDS).map(([kind, schema]) => [kind, published(kind, schema)]));
}

function published(kind: string, schema: z.ZodType): Record<string, unknown> {
  const made = z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' }) as Record<string, unknown>;
  const { $schema, description, properties, ...rest } = made;
  return {
    $schema,
    $id: `urn:noonloop:${kind}:1`,
    description,
    ...rest,
    properties: {
      $schema: { type: 'string', description: 'Address of this schema, for editors; not part of the settings.' },
      ...(properties as Record<string, unknown>),
    },
  };
}
