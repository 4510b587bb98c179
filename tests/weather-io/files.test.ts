import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type ReadOptions, readWeather, WeatherError, type WeatherIssue } from '@noonloop/weather-io';
import { afterAll, describe, expect, it } from 'vitest';
import { faultsOf } from './faults.ts';
import { sampleYear, tmy3Lines } from './samples.ts';

const folder = mkdtempSync(join(tmpdir(), 'weather-'));
afterAll(() => rmSync(folder, { recursive: true }));

const good = tmy3Lines().join('\n');

/** Little-endian UTF-16. */
const utf16 = (text: string): Uint8Array =>
  Uint8Array.from({ length: 2 * text.length }, (_, at) => (text.charCodeAt(at >> 1) >> (8 * (at % 2))) & 255);

/** Writes a file and gives its path. */
function file(name: string, content: string | Uint8Array): string {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
}

async function faultsOfFile(path: string, options?: ReadOptions): Promise<readonly WeatherIssue[]> {
  const error: unknown = await readWeather(path, options).catch((thrown: unknown) => thrown);
  if (error instanceof WeatherError) return error.issues;
  throw new Error('The file was read, though it is faulty.');
}

describe('readWeather, files as such [ours: invented files]', () => {
  it('recognizes by content, whatever the name', async () => {
    const year = await readWeather(file('year.epw', good));
    expect([year.format, year.source]).toEqual(['tmy3', 'year.epw']);
  });

  it('names the label that the caller gives', async () => {
    expect((await readWeather(file('a.csv', good), { source: 'my roof' })).source).toBe('my roof');
  });

  it.each([
    ['a file that is not there', 'nowhere.csv', 'not-found'],
    ['a folder', '.', 'not-a-file'],
  ])('%s', async (_, name, code) => {
    const path = join(folder, name);
    expect(await faultsOfFile(path)).toMatchObject([{ code, file: path, line: null, column: null }]);
  });

  it('a file above the limit, before it is read', async () => {
    expect(await faultsOfFile(file('big.csv', good), { maxBytes: 10_000 })).toMatchObject([
      { code: 'too-large', value: `${good.length} bytes`, expected: 'at most 10000 bytes' },
    ]);
  });

  it.each([
    ['an empty file', '', 'empty'],
    ['a file of blanks', ' \n\n', 'empty'],
    ['bytes with NUL', Uint8Array.of(80, 75, 3, 4, 0, 0), 'binary'],
    ['control characters', 'a\u0001b,c', 'binary'],
    ['UTF-16 cut inside a letter', utf16(`\ufeff${good}`).subarray(0, 1001), 'encoding'],
    ['UTF-16 without mark', utf16(good), 'binary'],
  ])('%s', async (_, content, code) => {
    expect(await faultsOfFile(file('odd.csv', content))).toMatchObject([{ code, line: null }]);
  });

  it('accepts a UTF-8 mark and CRLF', async () => {
    const year = await readWeather(file('windows.csv', `\ufeff${good.replaceAll('\n', '\r\n')}\r\n`));
    expect(year.columns).toEqual(sampleYear('tmy3').columns);
  });

  it('counts lines the same with CRLF', () => {
    const lines = tmy3Lines();
    const text = lines.with(699, lines[699]!.replace(',0,', ',x,')).join('\r\n');
    expect(faultsOf(text)).toMatchObject([{ line: 700, value: '"x"' }]);
  });

  it('reads Windows-1252 names, and says so', async () => {
    const text = good.replace('INVENTED PLACE', 'Zürich');
    const bytes = Uint8Array.from(text, (letter) => letter.charCodeAt(0)); // below U+0100 the code is the byte
    const year = await readWeather(file('old.csv', bytes));
    expect(year.site.name).toBe('Zürich, XX');
    expect(year.assumptions[0]!.code).toBe('encoding-windows-1252');
  });
});

describe('the invented valley [ours: docs/examples/weather]', () => {
  it('reads without options: a continental year of 1450 to 1550 kWh/m²', async () => {
    const year = await readWeather('docs/examples/weather/invented-valley.csv');
    const { ghi, dni, dhi, dryBulb, dewPoint } = year.columns;
    const annual = ghi.reduce((sum, value) => sum + value, 0) / 1000;
    expect(annual).toBeGreaterThan(1450);
    expect(annual).toBeLessThan(1550);
    expect(Math.min(...dryBulb)).toBeLessThan(-12);
    expect(Math.max(...dryBulb)).toBeGreaterThan(30);
    expect(ghi.every((value, hour) => value >= dhi[hour]! - 1 && dni[hour]! <= 1000)).toBe(true);
    expect(dewPoint!.every((value, hour) => value <= dryBulb[hour]!)).toBe(true);
    expect(year.assumptions).toMatchObject([{ code: 'note', text: expect.stringContaining('INVENTED') }]);
  });
});
