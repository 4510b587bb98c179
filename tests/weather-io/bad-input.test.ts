import { parseWeather, WeatherError } from '@noonloop/weather-io';
import { describe, expect, it } from 'vitest';
import { faultsOf } from './faults.ts';
import { epwLines, nsrdbLines, plainLines, pvgisLines, sampleYear, spoil, tmy3Lines } from './samples.ts';

const tmy3 = tmy3Lines();
const epw = epwLines();
const pvgis = pvgisLines();
const nsrdb = nsrdbLines();
const plain = plainLines();
/** As much of a file as is read before the fault is found. */
const begun = (lines: readonly string[]): string[] => lines.slice(0, 1600);

describe('a cell that cannot be, named by file, line, column and value [ours: invented files]', () => {
  /** What stands in a cell, and what is said of it. */
  type Spoilt = readonly [words: string, line: number, cell: number, text: string, column: string, code: string];

  // All that is wrong with one file is found in one reading.
  it.each<[string, readonly string[], readonly Spoilt[]]>([
    [
      'TMY3',
      tmy3,
      [
        ['missing mark in GHI', 600, 3, '-9900', 'GHI (W/m^2)', 'missing-value'],
        ['letters in a number', 700, 5, '1-42', 'DHI (W/m^2)', 'not-a-number'],
      ],
    ],
    ['PVGIS', pvgis, [['hexadecimal', 500, 4, '0x10', 'G(h)', 'not-a-number']]],
    [
      'plain',
      plain,
      [
        ['Infinity', 500, 8, 'Infinity', 'dry_bulb_degC', 'not-a-number'],
        ['a number beyond doubles', 600, 8, '1e400', 'dry_bulb_degC', 'out-of-range'],
        ['an empty cell', 700, 7, '', 'dhi_W_per_m2', 'missing-value'],
      ],
    ],
    [
      'NSRDB',
      nsrdb,
      [
        ['negative global irradiance', 40, 6, '-50', 'GHI', 'out-of-range'],
        ['beam above the top of the air', 50, 7, '1500', 'DNI', 'out-of-range'],
        ['a pressure in the wrong unit', 60, 10, '84000', 'Pressure', 'out-of-range'],
        ['the fill value', 700, 8, '-9999', 'DHI', 'missing-value'],
      ],
    ],
    [
      'EPW',
      epw,
      [
        ['the mark for a missing beam', 600, 15, '9999', 'Direct Normal Radiation', 'missing-value'],
        ['the mark for a missing dry bulb', 700, 7, '99.9', 'Dry Bulb Temperature', 'missing-value'],
        ['a dry bulb of 61 °C', 800, 7, '61', 'Dry Bulb Temperature', 'out-of-range'],
        ['a relative humidity of 120 %', 900, 9, '120', 'Relative Humidity', 'out-of-range'],
      ],
    ],
  ])('%s', (_, lines, spoilt) => {
    const text = spoilt.reduce((list, [, line, cell, word]) => spoil(list, line, cell, word).split('\n'), [...lines]);
    const faults = faultsOf(text.join('\n'), { source: 'spoilt.csv' }).toSorted(
      (one, other) => one.line! - other.line!,
    );
    expect(faults).toHaveLength(spoilt.length);
    spoilt.forEach(([words, line, , word, column, code], at) => {
      expect(faults[at], words).toMatchObject({ file: 'spoilt.csv', line, column, value: `"${word}"`, code });
    });
  });

  it('says a missing irradiance in words, with a remedy', () => {
    const read = () => parseWeather(spoil(tmy3, 700, 3, '-9900'), { source: 'spoilt.csv' });
    expect(read).toThrow(
      /spoilt\.csv, line 700, column "GHI \(W\/m\^2\)": found "-9900", expected .* Choose another file/,
    );
  });

  it('quotes no more than 40 characters, with control characters visible', () => {
    const [issue] = faultsOf(spoil(plain, 700, 8, `a\tb${'x'.repeat(200)}`));
    expect(issue!.value).toBe(`"a\\tb${'x'.repeat(37)}"`);
  });

  it('lists 20 faults at most and says that it stopped', () => {
    const text = tmy3.map((line) => line.replace(/,-1\.0,/, ',cold,')).join('\n');
    expect(faultsOf(text)).toHaveLength(20);
    expect(() => parseWeather(text)).toThrow(/Only the first 20 faults are listed/);
  });

  it('collects faults of several columns before it throws', () => {
    const text = spoil(spoil(tmy3, 700, 3, 'a').split('\n'), 900, 6, 'b');
    expect(faultsOf(text).map(({ line, column }) => [line, column])).toEqual([
      [700, 'GHI (W/m^2)'],
      [900, 'Dry-bulb (C)'],
    ]);
  });
});

describe('hours that are not one year [ours: invented files]', () => {
  const { length } = tmy3;

  it('a repeated hour', () => {
    const text = tmy3.toSpliced(100, 0, tmy3[99]!).join('\n');
    expect(faultsOf(text)).toMatchObject([{ code: 'repeated-hour', line: 101, value: '"01/05/1991 02:00"' }]);
  });

  it('a missing hour', () => {
    const text = tmy3.toSpliced(100, 1).join('\n');
    expect(faultsOf(text)).toMatchObject([{ code: 'missing-hour', line: 101, value: '"01/05/1991 04:00"' }]);
  });

  it('two hours in the wrong order', () => {
    const text = tmy3.with(100, tmy3[101]!).with(101, tmy3[100]!).join('\n');
    expect(faultsOf(text).map(({ code, line }) => [code, line])).toContainEqual(['out-of-order', 102]);
  });

  it('a file that ends in September', () => {
    const text = tmy3.slice(0, 6500).join('\n');
    expect(faultsOf(text)).toMatchObject([{ code: 'truncated', line: 6500 }]);
  });

  it('a file that ends inside a row', () => {
    const text = tmy3.join('\n');
    expect(faultsOf(text.slice(0, text.lastIndexOf(':')))).toMatchObject([{ code: 'truncated', line: length }, {}]);
  });

  it('a file that ends after its header', () => {
    expect(faultsOf(tmy3.slice(0, 2).join('\n'))).toMatchObject([{ code: 'truncated', line: 2 }]);
    expect(faultsOf(tmy3.slice(0, 1).join('\n'))).toMatchObject([{ code: 'unknown-format' }]);
  });

  it('a second year after the first', () => {
    const text = [...tmy3, ...tmy3.slice(2)].join('\n');
    expect(faultsOf(text)).toMatchObject([{ code: 'several-years', line: length + 1 }]);
  });

  it('a year that begins in February', () => {
    const text = [...tmy3.slice(0, 2), ...tmy3.slice(2 + 31 * 24)].join('\n');
    expect(faultsOf(text)).toMatchObject([{ code: 'missing-hour', line: 3 }]);
  });

  it.each([
    ['a 30 February', spoil(begun(tmy3), 1500, 1, '02/30/1991'), 1500, '"02/30/1991 10:00"'],
    ['an hour 25', spoil(begun(tmy3), 1500, 2, '25:00'), 1500, '"03/04/1991 25:00"'],
    ['an hour 0 in EPW', spoil(begun(epw), 1500, 4, '0'), 1500, '"2001 3 4 0"'],
    ['letters in a month', spoil(begun(nsrdb), 1500, 2, 'Mar'), 1500, '"2017 Mar 4 8 30"'],
    ['a year 9188', spoil(begun(epw), 1500, 1, '9188'), 1500, '"9188 3 4 4"'],
    ['a lone minute', spoil(begun(nsrdb), 1500, 5, '17'), 1500, '"2017 3 4 8 17"'],
  ])('%s', (_, text, line, value) => {
    expect(faultsOf(text)[0]).toMatchObject({ code: 'bad-time', line, value });
  });

  it('8759 rows in order without times', () => {
    const site = { name: 'x', latitude: 40, longitude: -75, elevation: 0, utcOffset: -5 };
    const column = (name: string, unit: 'W/m2' | 'degC') => ({ column: name, unit });
    const columns = {
      ghi: column('g', 'W/m2'),
      dni: column('b', 'W/m2'),
      dhi: column('d', 'W/m2'),
      dryBulb: column('t', 'degC'),
    };
    const text = ['g,b,d,t', ...new Array<string>(8759).fill('0,0,0,5')].join('\n');
    const faults = faultsOf(text, { plain: { site, columns, time: 'row-order', stamps: 'start' } });
    expect(faults).toMatchObject([{ code: 'row-count', line: 8760, value: '8759' }]);
  });
});

describe('columns and headers [ours: invented files]', () => {
  it.each([
    ['TMY3 without DNI', spoil(begun(tmy3), 2, 4, 'DNI'), 2, 'DNI (W/m^2)', 'missing-column'],
    ['PVGIS without diffuse', spoil(begun(pvgis), 18, 6, 'H(h)'), 18, 'Gd(h)', 'missing-column'],
    ['NSRDB without minutes', spoil(begun(nsrdb), 3, 5, 'Min'), 3, 'Minute', 'missing-column'],
    ['plain without dry bulb', spoil(begun(plain), 9, 8, 'temp'), 9, 'dry_bulb_degC', 'missing-column'],
    ['a header twice', spoil(begun(tmy3), 2, 7, 'GHI (W/m^2)'), 2, 'GHI (W/m^2)', 'bad-header'],
    ['a latitude of 95', spoil(begun(tmy3), 1, 5, '95'), 1, 'latitude', 'bad-header'],
    ['no longitude', spoil(begun(epw), 1, 8, ''), 1, 'longitude', 'bad-header'],
    ['a unit that is not expected', spoil(begun(nsrdb), 2, 9, 'f'), 2, 'Temperature Units', 'bad-header'],
    ['half-hourly EPW', spoil(begun(epw), 8, 3, '2'), 8, 'Number of Records per hour', 'bad-header'],
    ['a missing place line', begun(plain).toSpliced(2, 1).join('\n'), 1, 'latitude', 'bad-header'],
  ])('%s', (_, text, line, column, code) => {
    expect(faultsOf(text)[0]).toMatchObject({ line, column, code });
  });

  it.each([
    ['NSRDB pressure', spoil(nsrdb, 3, 10, 'Presure'), 'column-absent'],
    [
      'plain, one more column',
      plain.map((line, at) => (at < 8 ? line : `${line},${at === 8 ? 'wind' : 1}`)).join('\n'),
      'column-not-read',
    ],
  ])('%s: a spoilt header of a further column is said', (_, text, code) => {
    expect(parseWeather(text).assumptions.map((found) => found.code)).toContain(code);
  });

  it('header lines that are not there are refused at line 1', () => {
    expect(faultsOf(begun(pvgis).toSpliced(1, 1).join('\n'))[0]).toMatchObject({
      code: 'bad-header',
      line: 1,
      column: 'longitude',
    });
    expect(faultsOf(begun(epw).toSpliced(7, 1).join('\n'))[0]).toMatchObject({
      code: 'bad-header',
      line: 1,
      column: 'DATA PERIODS',
    });
  });

  it('a row with a comma too many', () => {
    const text = begun(tmy3).with(699, tmy3[699]!.replace(',', ',,')).join('\n');
    expect(faultsOf(text)[0]).toMatchObject({ code: 'row-length', line: 700 });
  });

  it('a quotation mark that never closes', () => {
    const text = begun(tmy3).with(699, `"${tmy3[699]}`).join('\n');
    expect(faultsOf(text)).toMatchObject([{ code: 'unclosed-quote', line: 700 }]);
  });

  it('a TMY3 file with an EPW file after it', () => {
    const text = [...begun(tmy3), ...begun(epw)].join('\n');
    expect(faultsOf(text)).toMatchObject([{ code: 'mixed-formats', line: 1601 }]);
  });

  it('a PVGIS file with a plain one after its legend', () => {
    const text = [...pvgis, ...begun(plain)].join('\n');
    expect(faultsOf(text)).toMatchObject([{ code: 'mixed-formats', line: pvgis.length + 1 }]);
  });

  it('an EPW place line before a TMY3 header', () => {
    expect(faultsOf([epw[0]!, ...begun(tmy3).slice(1)].join('\n'))).toMatchObject([{ code: 'mixed-formats', line: 1 }]);
  });

  it('a format that is not known, with the first line quoted', () => {
    expect(faultsOf('a,b,c\n1,2,3')).toMatchObject([{ code: 'unknown-format', line: 1, value: '"a,b,c"' }]);
  });

  it('headers named as what every object has are only headers', () => {
    const names = ['__proto__', 'constructor', 'toString'];
    const header = tmy3[1]!.split(',').slice(0, -3).concat(names).join(',');
    const year = parseWeather(tmy3.with(1, header).join('\n'));
    expect([year.columns.dewPoint, year.columns.windSpeed, year.columns.albedo]).toEqual([null, null, null]);
    expect(year.assumptions.map(({ code }) => code)).toContain('column-absent');
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
    expect(Object.getPrototypeOf(year.columns)).toBe(Object.prototype);
  });

  it('options that cannot be', () => {
    const text = tmy3.join('\n');
    expect(faultsOf(text, { utcOffset: 20 })).toMatchObject([
      { code: 'bad-option', column: 'utcOffset', value: '"20"' },
    ]);
    expect(faultsOf(text, { maxBytes: 1000 })).toMatchObject([
      { code: 'too-large', value: `${text.length} characters` },
    ]);
    expect(faultsOf(text, { format: 'xls' as 'epw' })).toMatchObject([{ code: 'bad-option', column: 'format' }]);
    expect(faultsOf(text, { format: 'plain' })).toMatchObject([{ code: 'bad-option', column: 'plain' }]);
  });

  it('a column map in units that do not fit', () => {
    const site = { name: 'x', latitude: 40, longitude: -75, elevation: 0, utcOffset: -5 };
    const columns = { ghi: { column: 'g', unit: 'degC' as const } };
    const faults = faultsOf('g\n1', { plain: { site, columns, time: 'row-order', stamps: 'start' } });
    expect(faults.map(({ code, column }) => [code, column])).toEqual([
      ['bad-option', 'columns.ghi.unit'],
      ['bad-option', 'columns.dryBulb'],
    ]);
  });
});

it('WeatherError is an Error with a name [ours]', () => {
  const error = new WeatherError([]);
  expect(error).toBeInstanceOf(Error);
  expect(error.name).toBe('WeatherError');
});

describe('a layout is checked like a design: nothing is ignored [requirement]', () => {
  const site = { name: 'x', latitude: 40, longitude: -75, elevation: 0, utcOffset: -5 };
  const good = {
    site,
    columns: { ghi: { column: 'g', unit: 'W/m2' }, dryBulb: { column: 't', unit: 'degC' } },
    time: 'row-order',
    stamps: 'start',
  };
  it.each([
    ['a column that is null', { columns: { ...good.columns, ghi: null } }, 'columns.ghi', 'fields: column, unit'],
    ['a number in quotes', { irradianceMidpoint: '0.5' }, 'irradianceMidpoint', 'a number from 0 to 1 h'],
    ['a latitude in quotes', { site: { ...site, latitude: '40' } }, 'site.latitude', '-90 to 90 ° north'],
    ['a place that is null', { site: null }, 'site', 'fields: name, latitude'],
    ['a misspelt field', { irradianceMidPoint: 0.5 }, 'irradianceMidPoint', 'one of site, columns, time'],
    ['a misspelt field of the place', { site: { ...site, utcoffset: 1 } }, 'site.utcoffset', 'one of name, latitude'],
    [
      'a misspelt quantity',
      { columns: { ...good.columns, windspeed: good.columns.ghi } },
      'columns.windspeed',
      'one of ghi',
    ],
    [
      'a misspelt field of a column',
      { columns: { ...good.columns, ghi: { column: 'g', unit: 'W/m2', scale: 2 } } },
      'columns.ghi.scale',
      'one of column, unit',
    ],
    [
      'a header that is none',
      { columns: { ...good.columns, ghi: { column: 5, unit: 'W/m2' } } },
      'columns.ghi.column',
      'the header of the column',
    ],
    ['a misspelt time', { time: { month: 'm', day: 'd', hours: 'h' } }, 'time.hours', 'one of year, month'],
    ['a mark that is no number', { missing: ['-9999'] }, 'missing', 'a list of numbers'],
    ['air of another kind', { air: 'end' }, 'air', 'mean or instant'],
  ])('%s', (_, change, column, expected) => {
    const plain = { ...good, ...change } as never;
    const issue = faultsOf('g,t\n1,2', { plain }).find((fault) => fault.column === column);
    expect(issue).toMatchObject({ code: 'bad-option', expected: expect.stringContaining(expected) });
  });

  it('a list for a layout, and a hundred fields of other names in one fault', () => {
    expect(faultsOf('g,t', { plain: [] as never })).toMatchObject([{ code: 'bad-option', value: 'a list of 0' }]);
    const many = Object.fromEntries(Array.from({ length: 100 }, (_, at) => [`field${at}`, at]));
    const faults = faultsOf('g,t', { plain: { ...good, ...many } as never });
    expect([faults.length, faults.at(-1)!.value]).toEqual([6, '100 fields of other names']);
  });
});

describe('what a text may cost [requirement: refused early]', () => {
  it('a blank line inside PVGIS is skipped, as in the other formats', () => {
    const text = pvgis.toSpliced(500, 0, '').join('\n');
    expect(parseWeather(text).columns).toEqual(sampleYear('pvgis').columns);
  });

  it.each([
    ['in lines of 2000', `${'"'.repeat(2000)}\n`],
    ['doubled, inside quotation marks', `"${'""'.repeat(900)}"\n`],
  ])('10 MB of quotation marks %s: refused before they are split', (_, line) => {
    const text = `${plainLines().slice(0, 9).join('\n')}\n${line.repeat(Math.ceil(1e7 / line.length))}`;
    const [fault] = faultsOf(text);
    expect(fault).toMatchObject({
      code: 'too-large',
      expected: expect.stringContaining('two quotation marks for each cell'),
    });
    expect(fault!.line).toBeLessThan(30);
  });
});
