// A settings file checked whole: names, values, and the library's own look at it, all faults at once.
import type * as z from 'zod';
import { EXIT, Refusal } from '../exit-codes.ts';
import { faultsOf, sentence } from '../in-words.ts';
import { asMap, type Settings } from '../settings-file.ts';
import { type JsonSchema, KIND_NAMES, KINDS, type KindName, publishedSchema } from './kinds.ts';
import { type FieldFault, unknownNames } from './names.ts';

/** Above so many faults the library is not asked for more. */
const ENOUGH = 20;

/**
 * Reads a settings file as one of its kinds.
 *
 * @param work - What the library makes of the fields; its faults are told together with those found here.
 * @throws Refusal with a line for each fault, or a hint where the file is of another kind.
 */
export async function checked<T>(
  settings: Settings,
  kind: KindName,
  work: (fields: Record<string, unknown>) => T | Promise<T>,
): Promise<T> {
  const fields = asMap(settings);
  requireKind(settings.path, fields, kind);
  const own = await ownFaults(fields, kind);
  if (own.length > ENOUGH) throw refusal(settings, own);
  let result: T;
  try {
    result = await work(fields);
  } catch (error) {
    const theirs = faultsOf(error) ?? [];
    // With a value of the wrong kind the library may stumble in any way: what was found here explains it.
    if (theirs.length === 0 && own.length === 0) throw error;
    const known = new Set(own.map(({ path }) => path));
    throw refusal(settings, [...own, ...theirs.filter(({ path }) => !known.has(path))]);
  }
  if (own.length > 0) throw refusal(settings, own);
  return result;
}

const refusal = (settings: Settings, faults: readonly FieldFault[]): Refusal =>
  new Refusal(
    EXIT.input,
    faults.slice(0, ENOUGH).map(({ path, words }) => sentence(settings, path, words)),
    faults.length,
  );

async function ownFaults(fields: Record<string, unknown>, kind: KindName): Promise<FieldFault[]> {
  const { schema } = KINDS[kind];
  // A design that was written out has more fields than one writes; the library knows them.
  if (kind === 'design' && Array.isArray(fields.assumptions)) return [];
  const names = unknownNames(fields, JSON.parse(await publishedSchema(kind)) as JsonSchema);
  if (schema === undefined || names.length > ENOUGH) return names;
  const outcome = (await schema()).safeParse(fields);
  if (outcome.success) return names;
  return [...names, ...outcome.error.issues.flatMap((issue) => valueFault(issue, fields))];
}

/** A validator's finding in our words; unknown names are told elsewhere. */
function valueFault(issue: z.core.$ZodIssue, fields: unknown): FieldFault[] {
  const path = issue.path.map(String).join('.');
  const value = issue.path.reduce<unknown>(
    (inner, key) =>
      typeof inner === 'object' && inner !== null && Object.hasOwn(inner, key)
        ? (inner as Record<PropertyKey, unknown>)[key]
        : undefined,
    fields,
  );
  const words = expectation(issue, value);
  if (words === null) return [];
  return [{ path, words: `found ${shown(value)}, expected ${words}` }];
}

function expectation(issue: z.core.$ZodIssue, value: unknown): string | null {
  const remedy = value === undefined ? 'Add it.' : 'Correct it.';
  switch (issue.code) {
    case 'unrecognized_keys':
      return null;
    case 'invalid_type':
      return `${TYPES[issue.expected] ?? 'a value'}. ${remedy}`;
    case 'invalid_value':
      return `one of ${issue.values.map(String).join(', ')}. ${remedy}`;
    case 'too_small':
      return `${issue.origin === 'array' ? `at least ${issue.minimum} values` : issue.origin === 'string' ? 'a text' : `a number of at least ${issue.minimum}`}. ${remedy}`;
    case 'too_big':
      return `${issue.origin === 'array' ? `at most ${issue.maximum} values` : issue.origin === 'string' ? `at most ${issue.maximum} characters` : `a number of at most ${issue.maximum}`}. ${remedy}`;
    default:
      return `one of the forms that it has. ${remedy} "noonloop schema" writes what each field takes.`;
  }
}

const TYPES: Readonly<Record<string, string>> = {
  number: 'a number',
  int: 'a whole number',
  string: 'a text',
  boolean: 'true or false',
  array: 'a list',
  object: 'fields with values',
  record: 'fields with values',
};

/** A value as an error shows it. */
function shown(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (typeof value === 'string') return JSON.stringify(value.slice(0, 40));
  if (typeof value !== 'object' || value === null) return String(value);
  return Array.isArray(value) ? `a list of ${value.length}` : 'fields';
}

/** Where a file lacks what its kind cannot be without and looks like another, a hint says which word reads that. */
function requireKind(path: string, fields: Record<string, unknown>, kind: KindName): void {
  const has = (name: string) => Object.hasOwn(fields, name);
  const { needs, words } = KINDS[kind];
  if (needs.length > 0 ? needs.some(has) : Object.keys(fields).length === 0) return;
  const other = KIND_NAMES.find(
    (name) => name !== kind && KINDS[name].needs.length > 0 && KINDS[name].needs.every(has),
  );
  if (other === undefined) return;
  const hint = `this looks like ${KINDS[other].words}, expected ${words}. It is read by: ${KINDS[other].use.replace('<file>', path)}.`;
  throw new Refusal(EXIT.input, [`${path}: ${hint}`]);
}
