// A design file with some of its fields changed; comments, order and other fields stay as they were.
import type { SystemInput } from '@noonloop/sim-core';
import { parseDocument, type Scalar, stringify } from 'yaml';
import { readText } from './files.ts';

/** A field with its new value; `undefined` takes it away. */
export interface FieldChange {
  /** Place, such as `tank.volume`. */
  readonly path: string;
  readonly value: unknown;
  /** The value as people read it, for a comment beside it. */
  readonly shown?: string;
}

/** The text of a design with fields changed. @param file - As given to the word; a report in JSON gives a plain design. */
export async function changedDesign(
  file: string,
  input: SystemInput,
  changes: readonly FieldChange[],
  name?: string,
): Promise<string> {
  const isReport = /#\d+$/.test(file) || 'assumptions' in input;
  const document = parseDocument(isReport ? stringify(input) : await readText(file));
  for (const { path, value, shown } of changes) {
    const keys = path.split('.');
    if (value === undefined) {
      document.deleteIn(keys);
      continue;
    }
    const scalar = document.createNode(value) as Scalar;
    if (shown !== undefined) scalar.comment = ` ${shown}`;
    // A comment beside the old value says what the field is; it stays where there is none to take its place.
    const old = document.getIn(keys, true) as Scalar | undefined;
    if (shown === undefined && typeof old?.comment === 'string') scalar.comment = old.comment;
    document.setIn(keys, scalar);
  }
  if (name !== undefined) document.setIn(['name'], name);
  return document.toString({ lineWidth: 0 });
}

/** The same on the fields themselves. */
export function changedInput(input: SystemInput, changes: readonly FieldChange[]): SystemInput {
  const copy = structuredClone(input) as unknown as Record<string, unknown>;
  for (const { path, value } of changes) {
    const keys = path.split('.');
    let fields = copy;
    for (const key of keys.slice(0, -1)) {
      fields[key] ??= {};
      fields = fields[key] as Record<string, unknown>;
    }
    if (value === undefined) delete fields[keys.at(-1)!];
    else fields[keys.at(-1)!] = value;
  }
  return copy as unknown as SystemInput;
}
