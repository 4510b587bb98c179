import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseWeather, parseWeatherYears, readWeatherYears, WeatherError, writeWeather } from '@noonloop/weather-io';
import { afterAll, describe, expect, it } from 'vitest';
import { plainLines, sampleYear, temperatureOfRow } from './samples.ts';
import { keepsEnergy, layout, plainRows } from './years.ts';

const folder = mkdtempSync(join(tmpdir(), 'weather-years-'));
afterAll(() => rmSync(folder, { recursive: true }));

describe('several years in one text [ours: invented logs]', () => {
  it.each([
    [60, [2015, 2016]],
    [30, [2016, 2017]],
  ])('in steps of %d minutes %j: each by itself, energy kept but for 29 February', (step, years) => {
    keepsEnergy(years, step);
  });

  it('29 February in the middle: 1 March of a leap year is row 1416 as in any other', () => {
    const text = ['time,g,b,d,t', ...plainRows(2015, [0]), ...plainRows(2016, [0])].join('\n');
    const leap = parseWeatherYears(text, { plain: layout })[1]!;
    expect(leap.columns.dryBulb[1416]).toBe(Number(temperatureOfRow(1416 + 24)));
  });

  it('one year comes out as parseWeather has it', () => {
    expect(parseWeatherYears(plainLines().join('\n'))).toEqual([sampleYear('plain')]);
  });

  it('a year that lacks an hour is named by line; the year after it is not blamed', () => {
    const rows = ['time,g,b,d,t', ...plainRows(2015, [0]), ...plainRows(2017, [0])];
    const read = () => parseWeatherYears(rows.toSpliced(500, 1).join('\n'), { plain: layout });
    expect(read).toThrow(/line 501, column "time": found "2015-01-21 20:00".*1 is missing/);
  });

  it('a log that ends in June is refused, and kept with its gap', () => {
    const rows = ['time,g,b,d,t', ...plainRows(2015, [0]), ...plainRows(2017, [0]).slice(0, 4000)];
    expect(() => parseWeatherYears(rows.join('\n'), { plain: layout })).toThrow(WeatherError);
    const kept = parseWeatherYears(rows.join('\n'), { plain: layout, gaps: 'keep' });
    expect(kept.map(({ missingHours }) => missingHours)).toEqual([0, 4760]);
  });
});

describe('years that are too many [requirement]', () => {
  it('two years where one is asked for: the line of the second, and what reads both', () => {
    const text = ['time,g,b,d,t', ...plainRows(2015, [0]), ...plainRows(2017, [0])].join('\n');
    const read = () => parseWeather(text, { plain: layout });
    expect(read).toThrow('line 8762: found 2015, 2017, expected one year in this file. Read it with readWeatherYears');
  });

  it('the same year twice, in two files or in one', () => {
    const text = plainLines().join('\n');
    expect(() => parseWeatherYears([text, text])).toThrow('expected each year once; this one is the same');
    const rows = plainRows(2015, [0]);
    expect(() => parseWeatherYears(['time,g,b,d,t', ...rows, ...rows].join('\n'), { plain: layout })).toThrow(
      'each year once',
    );
  });

  it('a worst and a best year of one place read, though both have the same calendar year', () => {
    // As synthesizeYear says of its years.
    const assumptions = [{ code: 'synthetic-year', text: 'invented' }];
    const worst = { ...sampleYear('plain'), assumptions };
    const { ghi, dni, dhi } = worst.columns;
    const brighter = (column: Float64Array) => column.map((value) => 1.25 * value);
    const light = { ghi: brighter(ghi), dni: brighter(dni), dhi: brighter(dhi) };
    const years = [worst, { ...worst, columns: { ...worst.columns, ...light } }];
    const read = parseWeatherYears(years.map(writeWeather));
    expect(read.map(({ columns }) => columns.ghi)).toEqual(years.map(({ columns }) => columns.ghi));
  });
});

describe('several files [ours: invented files]', () => {
  it('one year each, in the order given', async () => {
    const paths = [2017, 2016].map((year) => {
      const path = join(folder, `${year}.csv`);
      writeFileSync(path, ['time,g,b,d,t', ...plainRows(year, [0])].join('\n'));
      return path;
    });
    const years = await readWeatherYears(paths, { plain: layout });
    expect(years.map(({ source, calendarYears }) => [source, calendarYears[0]])).toEqual([
      ['2017.csv', 2017],
      ['2016.csv', 2016],
    ]);
    expect(await readWeatherYears(paths[0]!, { plain: layout })).toEqual([years[0]]);
  });

  it('the file with a fault is named', async () => {
    const path = join(folder, 'half.csv');
    writeFileSync(path, plainLines().slice(0, 5000).join('\n'));
    await expect(readWeatherYears([path])).rejects.toThrow(/^half\.csv, line 5000/);
  });
});
