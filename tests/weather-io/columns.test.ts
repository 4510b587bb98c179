// What each format's columns mean, by values reckoned by hand on invented files.
import { parseWeather, STANDARD_WIND_HEIGHT, writeWeather } from '@noonloop/weather-io';
import { describe, expect, it } from 'vitest';
import { epwLines, nsrdbLines, plainLines, pvgisLines, tmy3Lines } from './samples.ts';

/** A sample with another column at the end of each row of hours. @param start - Lines of the header. */
const withColumn = (lines: readonly string[], start: number, header: string, cell: (row: number) => string): string =>
  lines
    .map((line, at) => (at === start - 1 ? `${line},${header}` : at < start ? line : `${line},${cell(at - start)}`))
    .join('\n');

describe('opaque sky cover [TMY3 and EPW: tenths in the file; requirement: a fraction in the year]', () => {
  it('TMY3: 7 tenths are 0.7', () => {
    const year = parseWeather(withColumn(tmy3Lines(), 2, 'OpqCld (tenths)', () => '7'));
    expect(year.columns.cloudCover![5000]).toBeCloseTo(0.7, 12);
  });

  it('EPW: the field after the total sky cover; 99 in all rows is none', () => {
    const cloudy = epwLines().map((line, at) =>
      at < 8 ? line : line.split(',').with(22, '9').with(23, '4').join(','),
    );
    expect(parseWeather(cloudy.join('\n')).columns.cloudCover![5000]).toBeCloseTo(0.4, 12);
    const unmeasured = cloudy.map((line, at) => (at < 8 ? line : line.split(',').with(23, '99').join(',')));
    expect(parseWeather(unmeasured.join('\n')).columns.cloudCover).toBeNull();
  });

  it('formats without it have none', () => {
    for (const lines of [tmy3Lines(), pvgisLines(), nsrdbLines(), plainLines()])
      expect(parseWeather(lines.join('\n')).columns.cloudCover).toBeNull();
  });

  it('our own layout carries it', () => {
    const year = parseWeather(withColumn(plainLines(), 9, 'cloud_cover', (row) => String((row % 11) / 10)));
    expect(year.columns.cloudCover![10]).toBe(1);
    expect(parseWeather(writeWeather(year)).columns.cloudCover).toEqual(year.columns.cloudCover);
  });
});

describe('height of the wind [WMO guide No. 8: 10 m; NREL’s variable descriptions of NSRDB: 2 m]', () => {
  it.each([
    ['tmy3', tmy3Lines(), 10],
    ['epw', epwLines(), 10],
    ['pvgis', pvgisLines(), 10],
    ['nsrdb', nsrdbLines(), 2],
    ['plain', plainLines(), undefined],
  ] as const)('%s', (_, lines, height) => {
    expect(STANDARD_WIND_HEIGHT).toBe(10);
    expect(parseWeather(lines.join('\n')).site.windHeight).toBe(height);
  });

  it('our own layout and a caller’s layout say it', () => {
    const lines = plainLines().toSpliced(6, 0, '# windHeight_m: 2.5');
    const year = parseWeather(lines.join('\n'));
    expect(year.site.windHeight).toBe(2.5);
    expect(parseWeather(writeWeather(year)).site.windHeight).toBe(2.5);
    expect(() => parseWeather(lines.with(6, '# windHeight_m: 0').join('\n'))).toThrow('windHeight from 0.5 to 200 m');
  });
});
