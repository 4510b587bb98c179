import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import {
  type PlainLayout,
  parseWeather,
  parseWeatherYears,
  readWeatherYears,
  synthesizeYear,
  WeatherError,
  writeWeather,
} from '@noonloop/weather-io';
import { afterAll, describe, expect, it } from 'vitest';
import { calendar, lightOfHour, nsrdbLines, temperatureOfRow } from './samples.ts';

const folder = mkdtempSync(join(tmpdir(), 'weather-years-'));
afterAll(() => rmSync(folder, { recursive: true }));

const sum = (values: Float64Array): number => values.reduce((total, value) => total + value, 0);
const isLeap = (year: number): boolean => year % 4 === 0;
const two = (value: number): string => String(value).padStart(2, '0');

const layout: PlainLayout = {
  site: { name: 'roof', latitude: 40, longitude: -75, elevation: 100, utcOffset: -5 },
  columns: {
    ghi: { column: 'g', unit: 'W/m2' },
    dni: { column: 'b', unit: 'W/m2' },
    dhi: { column: 'd', unit: 'W/m2' },
    dryBulb: { column: 't', unit: 'degC' },
  },
  time: { timestamp: 'time' },
  stamps: 'start',
};

/** Invented rows of a plain log: light that differs by year, hour and minute. */
function plainRows(year: number, minutes: readonly number[]): string[] {
  let row = 0;
  return calendar(isLeap(year)).flatMap(({ month, day, hour }) =>
    minutes.map((minute) => {
      const light = lightOfHour(hour) === 0 ? 0 : lightOfHour(hour) + minute + (year - 2000);
      return `${year}-${two(month)}-${two(day)} ${two(hour)}:${two(minute)},${light},0,${light},${temperatureOfRow(row++ % 8000)}`;
    }),
  );
}

const every = (step: number): number[] => Array.from({ length: 60 / step }, (_, at) => at * step);

describe('several years in one text [ours: invented logs]', () => {
  it.each([60, 15, 5])('2015 to 2017 in steps of %d minutes: three years, energy kept but for 29 February', (step) => {
    const years = [2015, 2016, 2017];
    const text = ['time,g,b,d,t', ...years.flatMap((year) => plainRows(year, every(step)))].join('\n');
    const read = parseWeatherYears(text, { plain: layout, source: 'log.csv' });
    expect(read.map(({ source, calendarYears }) => [source, calendarYears[0], calendarYears[8759]])).toEqual(
      years.map((year) => [`log.csv, ${year}`, year, year]),
    );
    read.forEach(({ columns, assumptions, irradianceMidpoint }, index) => {
      // 8 lit hours a day, each with the mean over its minutes.
      const mean = 100 + (60 - step) / 2 + (years[index]! - 2000);
      expect(sum(columns.ghi)).toBeCloseTo(365 * 8 * mean, 6);
      expect(assumptions.some(({ code }) => code === 'leap-day-dropped')).toBe(years[index] === 2016);
      expect(irradianceMidpoint).toBe(0.5);
    });
  });

  it('29 February in the middle: 1 March of a leap year is row 1416 as in any other', () => {
    const text = ['time,g,b,d,t', ...plainRows(2015, [0]), ...plainRows(2016, [0])].join('\n');
    const leap = parseWeatherYears(text, { plain: layout })[1]!;
    expect(leap.columns.dryBulb[1416]).toBe(Number(temperatureOfRow(1416 + 24)));
  });

  it('one year comes out as parseWeather has it', () => {
    const text = nsrdbLines().join('\n');
    expect(parseWeatherYears(text)).toEqual([parseWeather(text)]);
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
    const text = nsrdbLines().join('\n');
    expect(() => parseWeatherYears([text, text])).toThrow('expected each year once; this one is the same');
    const rows = plainRows(2015, [0]);
    expect(() => parseWeatherYears(['time,g,b,d,t', ...rows, ...rows].join('\n'), { plain: layout })).toThrow(
      'each year once',
    );
  });

  it('a worst, a typical and a best year of one place read, though all have the same calendar year', () => {
    const years = [0.4, 0.5, 0.6].map((clearness) =>
      synthesizeYear({
        site: { latitude: 40 },
        monthly: { clearness: Array(12).fill(clearness), dryBulb: Array(12).fill(10) },
      }),
    );
    const read = parseWeatherYears(years.map(writeWeather));
    expect(read.map(({ columns }) => columns.ghi)).toEqual(years.map(({ columns }) => columns.ghi));
  });
});

describe('several files [ours: invented files]', () => {
  it('one year each, in the order given', async () => {
    const paths = [2017, 2016].map((year) => {
      const path = join(folder, `${year}.csv`);
      writeFileSync(path, nsrdbLines({ minutes: every(30), leap: isLeap(year) }).join('\n'));
      return path;
    });
    const years = await readWeatherYears(paths);
    expect(years.map(({ source, calendarYears }) => [source, calendarYears[0]])).toEqual([
      ['2017.csv', 2017],
      ['2016.csv', 2016],
    ]);
    expect(await readWeatherYears(paths[0]!)).toEqual([years[0]]);
  });

  it('the file with a fault is named', async () => {
    const path = join(folder, 'half.csv');
    writeFileSync(path, nsrdbLines().slice(0, 5000).join('\n'));
    await expect(readWeatherYears([path])).rejects.toThrow(/^half\.csv, line 5000/);
  });
});
