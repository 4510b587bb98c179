/** JSON Schema (draft 2020-12) of what {@link renderJson} writes, made from the same tables. */
import { NOTICE_CODES } from '@noonloop/sim-core';
import { COLUMN_KINDS, COLUMN_NAMES, SECOND_TANK_COLUMNS, siKey } from '../columns.ts';
import { DEFINITIONS, NUMBER_KEYS } from '../definitions.ts';
import { CASE_KEYS } from '../money/definitions.ts';
import { UNIT_WORDS } from '../money/fuels.ts';
import { CAUTION_WORDS } from '../words/cautions.ts';
import { differenceKind, JSON_SCHEMA_VERSION, keyOf } from './json.ts';

type Schema = Readonly<Record<string, unknown>>;

const number: Schema = { type: 'number' };
const text: Schema = { type: 'string' };
const maybe: Schema = { type: ['number', 'null'] };
const hourOfYear: Schema = { type: 'integer', minimum: 0, maximum: 8759 };
const list = (items: Schema, size?: number): Schema =>
  size === undefined ? { type: 'array', items } : { type: 'array', items, minItems: size, maxItems: size };
const maybeOf = (schema: Schema): Schema => ({ anyOf: [schema, { type: 'null' }] });

/** An object with these keys and no others; those in `optional` may be missing. */
const only = (properties: Record<string, Schema>, optional: readonly string[] = []): Schema => ({
  type: 'object',
  properties,
  required: Object.keys(properties).filter((key) => !optional.includes(key)),
  additionalProperties: false,
});
const each = (keys: readonly string[], schema: Schema): Record<string, Schema> =>
  Object.fromEntries(keys.map((key) => [key, schema]));

const MAY_BE_NULL: readonly string[] = ['sunShare', 'solarFraction', 'fuelSaving'];

const period = only({
  ...Object.fromEntries(
    NUMBER_KEYS.map((key) => [
      keyOf(key),
      { ...(MAY_BE_NULL.includes(key) ? maybe : number), description: DEFINITIONS[key].definition },
    ]),
  ),
  ...each(['peakTankHour', 'hottestAbsorberHour', 'coldestAbsorberHour'], hourOfYear),
});

const balance = only({
  ...each(['in_J', 'out_J', 'stored_J', 'residual_J', 'worst_relative'], number),
  worstHour: hourOfYear,
});

const loop = only({
  ...each(['lowestPressure_Pa', 'highestPressure_Pa', 'lost_m3', 'relieved_m3', 'madeUp_m3'], number),
  ...each(['circulationFailsHour', 'protectionEndsHour'], maybeOf(hourOfYear)),
  ...each(['coldestAbsorber_degC', 'coldestPipe_degC', 'deepestFreezing_K', 'burstPoint_degC'], number),
  ...each(['absorberFreezing_h', 'pipeFreezing_h', 'belowBurstPoint_h'], number),
  drain: {
    ...maybeOf(
      only({
        ...each(['times', 'flashes'], { type: 'integer', minimum: 0 }),
        ...each(['content_m3', 'heatLeft_J', 'heatBack_J', 'filling_s', 'liftedInVain_s'], number),
      }),
    ),
    description: 'What emptying and filling did in the year; null for a closed loop.',
  },
});

const facts = {
  type: 'object',
  description: 'The numbers in the sentences, by name: a value with its unit, or a word.',
  additionalProperties: { anyOf: [only({ value: number, unit: text }), text] },
};

const caution = only({
  code: { enum: Object.keys(CAUTION_WORDS) },
  severity: { enum: ['danger', 'warning', 'note'] },
  facts,
  ...each(['short', 'finding', 'advice', 'who', 'source'], text),
});

const money = only({
  currency: { type: 'string', pattern: '^[A-Z]{3}$' },
  fuel: only({
    word: text,
    unit: { enum: Object.keys(UNIT_WORDS) },
    with: number,
    ...each(['without', 'saved'], maybe),
    savedWords: maybeOf(text),
  }),
  ...each(['billWith', 'billWithout', 'energySaving', 'maintenance', 'life', 'worthOfSavings'], number),
  ...each(['levelisedCostOfFuelHeat_per_kWh', 'co2With_kg', 'co2Without_kg', 'co2Saved_kg'], maybe),
  cases: list(
    only({
      parts: { enum: ['new', 'used'] },
      ...each(['investment', 'netPresentValue'], number),
      ...each(
        ['simplePayback_a', 'discountedPayback_a', 'internalRateOfReturn_fraction', 'levelisedCostOfHeat_per_kWh'],
        maybe,
      ),
    }),
  ),
  years: list(
    only({
      year: { type: 'integer', minimum: 1 },
      ...each(['energySaving', 'maintenance', 'presentValue'], number),
    }),
  ),
  assumptions: list(text),
});

const run = only(
  {
    name: text,
    design: {
      type: 'object',
      description: 'The design with every default, in the plain names and SI units of the library.',
    },
    site: only({ name: text, ...each(['latitude_deg', 'longitude_deg', 'elevation_m', 'utcOffset_h'], number) }),
    weatherSource: text,
    weatherAssumptions: list(text),
    notices: list(only({ code: { enum: [...NOTICE_CODES] }, facts, hours: number, text })),
    ...each(['stepsPerHour', 'stagnationLimit_degC', 'freezingPoint_degC'], number),
    loop: { $ref: '#/$defs/loop' },
    groups: {
      ...list(only({ name: text, ...each(['area_m2', 'irradiation_J', 'heat_J'], number) })),
      description: 'Groups of the array along the flow; none where it is one.',
    },
    sunAloneMonths: list({ type: 'integer', minimum: 1, maximum: 12 }),
    year: { $ref: '#/$defs/period' },
    months: list({ $ref: '#/$defs/period' }, 12),
    balance: only(each(['collector', 'pipes', 'tank', 'heater', 'baseline', 'whole'], { $ref: '#/$defs/balance' })),
    cautions: list({ $ref: '#/$defs/caution' }),
    secondTank: {
      ...only({ ...each(['peak_degC', 'peakOfFirst_degC'], number), balance: { $ref: '#/$defs/balance' } }),
      description: 'A second solar tank; missing where there is none. The part `tank` of `balance` is both tanks.',
    },
    hours: only(
      each(
        [
          ...COLUMN_NAMES.map((name) => siKey(name, COLUMN_KINDS[name])),
          ...SECOND_TANK_COLUMNS.map(({ name, kind }) => siKey(name, kind)),
        ],
        list(number, 8760),
      ),
      SECOND_TANK_COLUMNS.map(({ name, kind }) => siKey(name, kind)),
    ),
    money: maybeOf({ $ref: '#/$defs/money' }),
    bands: maybeOf({
      ...only(each(NUMBER_KEYS.map(keyOf), { $ref: '#/$defs/band' }), NUMBER_KEYS.map(keyOf)),
      description: 'How sure the leading numbers are; null where it was not asked for.',
    }),
  },
  ['hours', 'secondTank'],
);

const band = only({
  ...each(['value', 'middle', 'low', 'high', 'share'], number),
  halfWidth: maybe,
  oneYear: { type: 'boolean' },
  water: { enum: ['meter', 'people', 'unknown'] },
  parts: list(only({ ...each(['name', 'source'], text), deviation: number })),
  text,
});

const comparison = only({
  against: { enum: ['first', 'previous'] },
  ranking: maybeOf(
    only({
      by: { enum: [...NUMBER_KEYS, ...CASE_KEYS] },
      first: { enum: ['highest', 'lowest'] },
      order: list({ type: 'integer', minimum: 0 }),
    }),
  ),
  rows: list({
    anyOf: NUMBER_KEYS.map((key) => {
      const { kind } = DEFINITIONS[key];
      return only({
        number: { const: key },
        [siKey('values', kind)]: list(maybe),
        [siKey('differences', differenceKind(kind))]: list(maybe),
        relativeDifferences: list(maybe),
      });
    }),
  }),
});

/** The schema; the published file is this. @internal */
export const REPORT_SCHEMA: Schema = {
  $schema: 'https://json-schema.org/draft/2020-12/schema',
  $id: `urn:noonloop:report:${JSON_SCHEMA_VERSION}`,
  title: 'Report of simulated years',
  ...only({
    schema: { const: 'noonloop-report' },
    schemaVersion: { const: JSON_SCHEMA_VERSION },
    runs: { type: 'array', items: { $ref: '#/$defs/run' }, minItems: 1 },
    comparison: maybeOf({ $ref: '#/$defs/comparison' }),
    definitions: only(each(NUMBER_KEYS.map(keyOf), { $ref: '#/$defs/definition' })),
  }),
  $defs: {
    run,
    period,
    balance,
    loop,
    caution,
    money,
    band,
    comparison,
    definition: only({ label: text, definition: text }),
  },
};
