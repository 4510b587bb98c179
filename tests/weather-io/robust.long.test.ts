import { mkdtempSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type PlainLayout, parseWeather, readWeather, WeatherError, type WeatherIssue } from '@noonloop/weather-io';
import { afterAll, describe, expect, it } from 'vitest';
import { faultsOf } from './faults.ts';
import { epwLines, nsrdbLines, plainLines, pvgisLines, tmy3Lines } from './samples.ts';

const folder = mkdtempSync(join(tmpdir(), 'weather-robust-'));
afterAll(() => rmSync(folder, { recursive: true }));

function file(name: string, content: string | Uint8Array): string {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
}

const faultsOfFile = async (path: string): Promise<readonly WeatherIssue[]> => {
  const error: unknown = await readWeather(path).catch((thrown: unknown) => thrown);
  if (error instanceof WeatherError) return error.issues;
  throw error ?? new Error('The file was read, though it is faulty.');
};

/** UTF-16 in either order, with its mark. */
function utf16(text: string, bigEndian: boolean): Uint8Array {
  const bytes = Buffer.from(`\ufeff${text}`, 'utf16le');
  return Uint8Array.from(bigEndian ? bytes.swap16() : bytes);
}

const formats = [
  ['TMY3', tmy3Lines()],
  ['EPW', epwLines()],
  ['PVGIS', pvgisLines()],
  ['NSRDB', nsrdbLines()],
  ['plain', plainLines()],
] as const;

describe('encodings [ours: invented files]', () => {
  it.each(formats)('%s in UTF-16, both orders, reads as in UTF-8, and says so', async (name, lines) => {
    const plain = parseWeather(lines.join('\n'));
    for (const bigEndian of [false, true]) {
      const year = await readWeather(file(`${name}.csv`, utf16(lines.join('\r\n'), bigEndian)));
      expect(year.columns).toEqual(plain.columns);
      expect(year.assumptions[0]!.code).toBe('encoding-utf-16');
    }
  });

  it.each(formats)('%s with mark, CRLF and old Macintosh line ends', (_, lines) => {
    const plain = parseWeather(lines.join('\n'));
    for (const text of [`\ufeff${lines.join('\r\n')}\r\n`, lines.join('\r')]) expect(parseWeather(text)).toEqual(plain);
  });

  it('Latin-1 with bytes that UTF-8 has not', async () => {
    const bytes = Uint8Array.from(Buffer.from(tmy3Lines().join('\n').replace('INVENTED PLACE', 'Málaga'), 'latin1'));
    const year = await readWeather(file('latin.csv', bytes));
    expect(year.site.name).toBe('Málaga, XX');
    expect(year.assumptions[0]!.code).toBe('encoding-windows-1252');
  });
});

describe('decimal commas between semicolons [ours: invented files]', () => {
  /** What a spreadsheet with decimal commas saves. */
  const european = (lines: readonly string[]): string =>
    lines.map((line) => (line.startsWith('#') ? line : line.replaceAll(',', ';').replaceAll('.', ','))).join('\n');

  it.each([
    ['TMY3', tmy3Lines()],
    ['EPW', epwLines()],
    ['NSRDB', nsrdbLines()],
    ['plain', plainLines()],
  ])('%s saved again by such a spreadsheet', (_, lines) => {
    const year = parseWeather(european(lines));
    const plain = parseWeather(lines.join('\n'));
    expect(year.columns).toEqual(plain.columns);
    expect(year.assumptions[0]!.code).toBe('decimal-commas');
  });

  const layout: PlainLayout = {
    site: { name: 'roof', latitude: 40, longitude: -75, elevation: 100, utcOffset: -5 },
    columns: { ghi: { column: 'Licht, global', unit: 'W/m2' }, dryBulb: { column: 'Luft', unit: 'degC' } },
    time: 'row-order',
    stamps: 'start',
    decimal: ',',
  };

  it('a table with a column map and decimal: comma', () => {
    const text = ['Licht, global;Luft', ...new Array<string>(8760).fill('0,5;-3,25')].join('\n');
    const { columns } = parseWeather(text, { plain: layout });
    expect([columns.ghi[5], columns.dryBulb[5]]).toEqual([0.5, -3.25]);
  });

  it('decimal commas between commas are refused', () => {
    expect(faultsOf('a,b\n1,2', { plain: { ...layout, delimiter: ',' } })).toMatchObject([
      { code: 'bad-option', column: 'delimiter' },
    ]);
  });

  it('without the option, a decimal comma is a fault in its line and column', () => {
    const text = ['g;t', ...new Array<string>(8760).fill('0;-3,25')].join('\n');
    const columns = { ghi: { column: 'g', unit: 'W/m2' }, dryBulb: { column: 't', unit: 'degC' } } as const;
    const { decimal: _, ...rest } = layout;
    expect(faultsOf(text, { plain: { ...rest, delimiter: ';', columns } })[0]).toMatchObject({
      code: 'not-a-number',
      line: 2,
      column: 't',
    });
  });
});

describe('files joined by mistake, and what is no table [ours: invented files]', () => {
  it.each(formats)('%s: two half files, each with its header', (_, lines) => {
    const half = lines.length >> 1;
    const header = lines.findIndex((line) => /^(\d|01\/01)/.test(line) && line.split(',').length > 7);
    const text = [...lines.slice(0, half), ...lines.slice(0, header < 0 ? 3 : header), ...lines.slice(half)].join('\n');
    const issues = faultsOf(text);
    expect(issues.some(({ line }) => line === half + 1)).toBe(true);
  });

  it.each(formats)('%s: two half files, the second without header and from January', (_, lines) => {
    const start = lines.length - 8770;
    const text = [...lines.slice(0, 4500), ...lines.slice(Math.max(start, 18), 4500)].join('\n');
    expect(faultsOf(text).some(({ line }) => line === 4501)).toBe(true);
  });

  it.each([
    ['a line of 200,000 letters', `${tmy3Lines()[0]}\n${'x'.repeat(200_000)}`, 'unknown-format'],
    [
      'a TMY3 header with a line of 200,000 letters after it',
      [...tmy3Lines().slice(0, 50), 'x'.repeat(200_000)].join('\n'),
      'too-large',
    ],
    [
      '5000 columns',
      [
        ...tmy3Lines()
          .slice(0, 2)
          .map((line) => line + ',a'.repeat(5000)),
        ...tmy3Lines().slice(2),
      ].join('\n'),
      'too-large',
    ],
  ])('%s', (_, text, code) => {
    const started = performance.now();
    expect(faultsOf(text)[0]).toMatchObject({ code });
    expect(performance.now() - started).toBeLessThan(2000);
  });

  it('60 MB of line ends or of commas after a good header: refused within seconds, with the line', () => {
    const head = plainLines().slice(0, 10).join('\n');
    for (const text of [`${head}${'\n'.repeat(60_000_000)}`, `${head}\n${`${','.repeat(999)}\n`.repeat(60_000)}`]) {
      const started = performance.now();
      const memory = process.memoryUsage().heapUsed;
      expect(faultsOf(text)[0]).toMatchObject({ code: 'too-large', line: expect.any(Number) });
      expect(performance.now() - started).toBeLessThan(10_000);
      expect(process.memoryUsage().heapUsed - memory).toBeLessThan(500e6);
    }
  });

  it('1 GB by mistake is refused by its size, before a byte is read', async () => {
    const path = file('huge.csv', 'x');
    truncateSync(path, 1024 ** 3); // a hole: it takes no room on the disk
    const started = performance.now();
    expect(await faultsOfFile(path)).toMatchObject([
      { code: 'too-large', value: `${1024 ** 3} bytes`, expected: 'at most 64 MiB' },
    ]);
    expect(performance.now() - started).toBeLessThan(500);
  });

  it.skipIf(process.platform !== 'linux')(
    'a file that does not know its size is read in pieces up to the limit',
    async () => {
      // The system's own tables say that they have 0 bytes.
      expect(await faultsOfFile('/proc/self/status')).toMatchObject([{ code: 'unknown-format' }]);
      const error: unknown = await readWeather('/proc/self/maps', { maxBytes: 100 }).catch((thrown: unknown) => thrown);
      expect((error as WeatherError).issues).toMatchObject([{ code: 'too-large', value: 'more than 100 bytes' }]);
      expect(await faultsOfFile('/dev/zero')).toMatchObject([{ code: 'not-a-file' }]);
    },
  );
});
