// What the command keeps of its script between calls. Requirement: only what was made of just this script is taken, and only from a folder
// that is the caller's alone.
import { chmodSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test, vi } from 'vitest';

const temporary = mkdtempSync(join(tmpdir(), 'noonloop-kept-'));
vi.stubEnv('TMPDIR', temporary);
vi.stubEnv('TEMP', temporary);
const { readKept, writeKept } = (await import('../../../packages/reports/bin/kept.js' as string)) as {
  readKept(kind: string, source: Buffer): Buffer | undefined;
  writeKept(kind: string, source: Buffer, make: () => Buffer): void;
};
afterAll(() => {
  vi.unstubAllEnvs(); // of files that come after it in the same process
  rmSync(temporary, { recursive: true });
});

const script = Buffer.from('the script');
const made = Buffer.from('what was made of it');
const folder = (): string => join(temporary, readdirSync(temporary)[0]!);
const file = (): string => join(folder(), readdirSync(folder())[0]!);

test('what was kept comes back for the same script and kind (requirement)', () => {
  expect(readKept('light', script)).toBeUndefined();
  writeKept('light', script, () => made);
  expect(readKept('light', script)).toEqual(made);
  expect(readKept('usual', script)).toBeUndefined();
  expect(readKept('light', Buffer.from('the scripT'))).toBeUndefined();
  expect(readdirSync(folder())).toHaveLength(1);
});

test('one changed byte, and half a file, are not taken (requirement)', () => {
  const whole = new Uint8Array(readFileSync(file()));
  const changed = whole.slice();
  changed[changed.length - 1]! ^= 1;
  for (const bytes of [changed, whole.slice(0, 12), whole.slice(0, 3), new Uint8Array(0)]) {
    writeFileSync(file(), bytes);
    expect(readKept('light', script)).toBeUndefined();
  }
  writeKept('light', script, () => made);
  expect(readKept('light', script)).toEqual(made);
});

test.skipIf(process.getuid === undefined)(
  'a folder that others may write, and a link to one, are left alone (requirement)',
  () => {
    const own = folder();
    chmodSync(own, 0o777);
    expect(readKept('light', script)).toBeUndefined();
    const before = readFileSync(file());
    writeKept('light', script, () => Buffer.from('other'));
    expect(readFileSync(file())).toEqual(before);
    chmodSync(own, 0o700);
    expect(readKept('light', script)).toEqual(made);
    const elsewhere = mkdtempSync(join(tmpdir(), 'elsewhere-'));
    rmSync(own, { recursive: true });
    symlinkSync(elsewhere, own);
    writeKept('light', script, () => made);
    expect(readdirSync(elsewhere)).toEqual([]);
    rmSync(elsewhere, { recursive: true });
  },
);
