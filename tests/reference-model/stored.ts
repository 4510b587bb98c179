/**
 * The model's runs of all designs, kept in a file, for they take longer than all else that the quick tests do. The quick tests live through the first morning of
 * each design anew, the long ones through all ten days. Whoever changes the model, or a formula that it takes from the library, renews them:
 *
 *     NOONLOOP_KEEP=1 NOONLOOP_LONG=1 npx vitest run tests/reference-model
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { gunzipSync, gzipSync } from 'node:zlib';
import type { ReferenceRun } from './model.ts';

const file = new URL('runs.json.gz', import.meta.url);
/** Digits of a kept number: the tightest tolerance of a comparison is 1e-9 of the sum over 240 hours. */
const DIGITS = 8;

let runs: Readonly<Record<string, ReferenceRun>> | undefined;

/** The kept run of a design. */
export function storedRun(name: string): ReferenceRun {
  runs ??= JSON.parse(gunzipSync(new Uint8Array(readFileSync(file))).toString(), (key, value) =>
    key === 'columns'
      ? Object.fromEntries(Object.entries<number[]>(value).map(([column, list]) => [column, Float64Array.from(list)]))
      : value,
  ) as Record<string, ReferenceRun>;
  return runs[name]!;
}

/** Keeps runs by the names of their designs. */
export function storeRuns(of: Readonly<Record<string, ReferenceRun>>): void {
  const shorten = (_: string, value: unknown) =>
    value instanceof Float64Array ? Array.from(value, (number) => Number(number.toPrecision(DIGITS))) : value;
  writeFileSync(file, new Uint8Array(gzipSync(JSON.stringify(of, shorten), { level: 9 })));
}

/** Columns of two runs that differ in some hour by more than rounding to the kept digits, with that hour. */
export function differing(run: ReferenceRun, kept: ReferenceRun, hours: number): string[] {
  return Object.entries(run.columns).flatMap(([name, column]) => {
    const there = kept.columns[name as keyof typeof kept.columns];
    const at = column
      .subarray(0, hours)
      .findIndex((value, hour) => !(Math.abs(value - there[hour]!) <= 10 ** (1 - DIGITS) * Math.abs(value)));
    return at < 0 ? [] : [`${name}, hour ${at}: ${column[at]} instead of ${there[at]}`];
  });
}
