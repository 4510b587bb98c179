// Fields that a kind of file does not have, each with the name that was likely meant.
import { nearest } from '../../nearest.ts';
import type { JsonSchema } from './kinds.ts';

/** A fault of a field. */
export interface FieldFault {
  /** Place, such as `tank.volume`. */
  readonly path: string;
  /** What is wrong and what to do, in a sentence or two. */
  readonly words: string;
}

/** Faults that are told in words; the others are counted. */
const MOST_WORDS = 20;

/** Every name that the schema does not have at its place. */
export function unknownNames(value: unknown, schema: JsonSchema): FieldFault[] {
  const faults: FieldFault[] = [];
  const everywhere = new Map<string, string>();
  collectPlaces(schema, '', everywhere);
  walk(value, [schema], '', (path, name, known) => {
    faults.push({ path, words: faults.length < MOST_WORDS ? unknown(name, known, everywhere) : '' });
  });
  return faults;
}

type Report = (path: string, name: string, known: readonly string[]) => void;

function walk(value: unknown, schemas: readonly JsonSchema[], path: string, report: Report): void {
  const forms = schemas.flatMap((schema) => [schema, ...(schema.anyOf ?? [])]);
  if (Array.isArray(value)) {
    const items = forms.flatMap(({ items }) => (items === undefined ? [] : [items]));
    if (items.some((item) => item.properties ?? item.anyOf))
      value.forEach((one, at) => {
        walk(one, items, `${path}.${at}`, report);
      });
    return;
  }
  if (typeof value !== 'object' || value === null) return;
  const known = new Map<string, JsonSchema[]>();
  for (const { properties = {} } of forms)
    for (const [name, field] of Object.entries(properties)) known.set(name, [...(known.get(name) ?? []), field]);
  const others = forms.map(({ additionalProperties }) => additionalProperties);
  const open = others.find((other) => typeof other === 'object') as JsonSchema | undefined;
  const takesAny = known.size === 0 || others.includes(true) || (open === undefined && !others.includes(false));
  for (const [name, field] of Object.entries(value)) {
    const below = path === '' ? name : `${path}.${name}`;
    const fields = known.get(name);
    if (fields !== undefined) walk(field, fields, below, report);
    else if (open !== undefined) walk(field, [open], below, report);
    else if (!takesAny) report(below, name, [...known.keys()]);
  }
}

/** Every name of the schema and where it belongs. */
function collectPlaces(schema: JsonSchema, path: string, places: Map<string, string>): void {
  for (const [name, field] of Object.entries(schema.properties ?? {})) {
    const below = path === '' ? name : `${path}.${name}`;
    if (!places.has(name)) places.set(name, below);
    collectPlaces(field, below, places);
  }
  for (const form of schema.anyOf ?? []) collectPlaces(form, path, places);
  if (schema.items !== undefined) collectPlaces(schema.items, path, places);
}

function unknown(name: string, known: readonly string[], everywhere: ReadonlyMap<string, string>): string {
  const said = 'found a field of this name, expected one of the documented fields.';
  const here = nearest(name, known);
  if (here !== null) return `${said} Did you mean ${here}?`;
  const elsewhere = everywhere.get(name) ?? everywhere.get(nearest(name, [...everywhere.keys()]) ?? '');
  if (elsewhere?.includes('.')) return `${said} Did you mean ${elsewhere}?`;
  if (known.length <= 8) return `${said} Here may stand: ${known.join(', ')}.`;
  return `${said} Check the spelling, or remove it.`;
}
