import { readFileSync } from 'node:fs';
import { hasShared, sharedFile } from '../shared.ts';

/** One row of a reference table by column name; text that is no number stays text. */
export type ReferenceRow = Readonly<Record<string, number | string>>;

/** Rows of a comma-separated table in the shared folder; none where it is absent. Empty cells are NaN. */
export function referenceTable(path: string): ReferenceRow[] {
  if (!hasShared(path)) return [];
  const [header, ...lines] = readFileSync(sharedFile(path), 'utf8').trim().split(/\r?\n/);
  const names = header!.split(',');
  return lines.map((line) => {
    const cells = line.split(',');
    return Object.fromEntries(names.map((name, column) => [name, cell(cells[column]!)]));
  });
}

/** A number of a row. */
export const number = (row: ReferenceRow, name: string): number => {
  const value = row[name];
  if (typeof value !== 'number')
    throw new Error(`reference column "${name}" has ${JSON.stringify(value)}, not a number`);
  return value;
};

function cell(text: string): number | string {
  if (text === '') return Number.NaN;
  const value = Number(text);
  return Number.isNaN(value) ? text : value;
}
