// The types of a design as people write it, from its JSON Schema: an editor then shows meaning, unit, range, default and source.
type Schema = Record<string, unknown>;

const HEAD = `// Made by packages/sim-core/schema/write.ts from the schema that checks a design; not written by hand.
import type { Quantity } from '../input/quantity.ts';
`;

/** Source of \`define/system-input.ts\`. @param schema - From `designSchema`. */
export function inputTypes(schema: Schema): string {
  const interfaces: string[] = [];
  const intro =
    'What a user writes: quantities as numbers in the unit in brackets, or as strings with a unit. Needed are `array` (panels, tilt, ' +
    'azimuth and the collector’s area, eta0, a1, a2), `tank.volume` and a draw; all else has a default.';
  const { $schema: _, ...fields } = schema.properties as Record<string, Schema>;
  write('SystemInput', { ...schema, description: intro, properties: fields }, interfaces);
  return [HEAD, ...interfaces.reverse()].join('\n');
}

/** Adds the interface of an object, and those of the objects in it, inner ones first. */
function write(name: string, schema: Schema, interfaces: string[]): string {
  const required = (schema.required ?? []) as string[];
  const fields = Object.entries(schema.properties as Record<string, Schema>).map(([key, field]) => {
    const type = typeOf(field, inputName(key), interfaces);
    const optional = !required.includes(key);
    return `${comment(field, '  ')}  readonly ${key}${optional ? '?' : ''}: ${type}${optional ? ' | undefined' : ''};`;
  });
  const about = String(schema.description ?? '').split(/ (Default: |Left out, )/)[0];
  const text = `/** ${about} */\nexport interface ${name} {\n${fields.join('\n')}\n}\n`;
  const at = interfaces.findIndex((one) => one.includes(`\nexport interface ${name} {\n`));
  if (at < 0) interfaces.push(text);
  else {
    // One object in two places is one type; the place that says more of its defaults speaks for both.
    if (bare(interfaces[at]!) !== bare(text)) throw new Error(`two different objects would be called ${name}`);
    if (text.length > interfaces[at]!.length) interfaces[at] = text;
  }
  return name;
}

/** An interface without its comments. */
const bare = (text: string): string => text.replace(/^ *\/\*\*.*\*\/\n/gm, '');

const pascal = (key: string): string => `${key[0]!.toUpperCase()}${key.slice(1)}`;
/** Of a list, the name of its items. */
const inputName = (key: string): string => `${pascal(key.replace(/s$/, ''))}Input`;

function typeOf(schema: Schema, name: string, interfaces: string[]): string {
  if (isQuantity(schema)) return 'Quantity';
  if (Array.isArray(schema.enum)) return schema.enum.map(literal).join(' | ');
  if (schema.const !== undefined) return literal(schema.const);
  if (Array.isArray(schema.anyOf)) return typeOfForms(schema, name, interfaces);
  if (schema.type === 'array') return typeOfList(schema, name, interfaces);
  if (schema.type === 'object') return write(name, schema, interfaces);
  return schema.type === 'integer' ? 'number' : String(schema.type);
}

/** Forms of a field that takes several; objects among them are told apart by their first field. */
function typeOfForms({ anyOf, description }: Schema, name: string, interfaces: string[]): string {
  const forms = (anyOf as Schema[]).map((form): Schema => ({ description, ...form }));
  const objects = forms.filter((form) => form.type === 'object');
  const nameOf = (form: Schema) =>
    objects.length > 1 && form.type === 'object'
      ? `${name}By${pascal(Object.keys(form.properties as object)[0]!)}`
      : name;
  return [...new Set(forms.map((form) => typeOf(form, nameOf(form), interfaces)))].join(' | ');
}

function typeOfList(list: Schema, name: string, interfaces: string[]): string {
  const { description, items, maxItems, minItems } = list;
  const item = typeOf({ description, ...(items as Schema) }, name, interfaces);
  if (Number(maxItems) > 8760) return `readonly ${item}[] | Float64Array`; // long records may come as typed arrays
  if (minItems === 2 && maxItems === 2) return `readonly [${item}, ${item}]`;
  return item.includes(' ') ? `readonly (${item})[]` : `readonly ${item}[]`;
}

const literal = (value: unknown): string => `'${String(value)}'`;

/** A number in the field's unit, or a string with another. */
const isQuantity = ({ anyOf }: Schema): boolean => {
  const [number, text] = (anyOf ?? []) as Schema[];
  return number?.type === 'number' && text?.type === 'string' && typeof number.description === 'string';
};

/** Meaning, then what the field takes. */
function comment(schema: Schema, indent: string): string {
  const { description, default: value } = schema;
  const shown = value === undefined ? '' : ` Default ${JSON.stringify(value).replaceAll('"', "'")}: `;
  const words = [String(description ?? '').replace(' Default: ', shown), rangeOf(schema), example(schema)];
  const text = words.filter((part) => typeof part === 'string' && part !== '').join(' ');
  if (text === '') return '';
  return `${indent}/** ${text.replaceAll('*/', '* /')} */\n`;
}

/** Range of a field's number, "From 0 to 90." */
export function rangeOf(schema: Schema): string {
  const forms = [schema, ...((schema.anyOf ?? []) as Schema[]), ...flatForms(schema)];
  const number = forms.find(({ type }) => type === 'number' || type === 'integer');
  if (number?.minimum === undefined) return '';
  const { minimum, maximum } = number as { minimum: number; maximum?: number };
  return maximum === undefined ? `At least ${minimum}.` : `From ${minimum} to ${maximum}.`;
}

const flatForms = (schema: Schema): Schema[] =>
  ((schema.anyOf ?? []) as Schema[]).flatMap((form) => (form.anyOf ?? []) as Schema[]);

function example(schema: Schema): string | undefined {
  const text = [schema, ...((schema.anyOf ?? []) as Schema[]), ...flatForms(schema)].find(
    ({ type, examples }) => type === 'string' && examples !== undefined,
  );
  return text === undefined ? undefined : `For example "${(text.examples as string[])[0]}".`;
}
