import { readFileSync } from 'node:fs';
import { parseWeather, type WeatherYear } from '@noonloop/weather-io';
import { hourStarts } from '@noonloop/weather-io/sun';
import { describe, expect, it } from 'vitest';
import { epwLines, nsrdbLines, plainLines, pvgisLines, sampleYear, spoil, tmy3Lines } from './samples.ts';

const codes = (year: WeatherYear): string[] => year.assumptions.map(({ code }) => code);

/** Row of the file that stands in each local hour, read back from its temperature: halves lie between two rows, and 4379.5 between the last and the first. */
const origin = (year: WeatherYear): number[] =>
  Array.from(year.columns.dryBulb, (value) => Math.round(value * 2000) / 2);

describe('time base [ours: invented files whose temperature numbers the rows]', () => {
  it('TMY3 stamps end the hour: 01:00 on 1 January is row 0, 24:00 on 31 December row 8759', () => {
    const year = sampleYear('tmy3');
    // The dry bulb holds at the stamp: the middle of row 0 lies between 24:00 and 01:00.
    expect(origin(year)).toEqual(Array.from({ length: 8760 }, (_, row) => (row === 0 ? 4379.5 : row - 0.5)));
    expect([year.columns.ghi[7], year.columns.ghi[8]]).toEqual([0, 100]);
    expect(year.irradianceMidpoint).toBe(0.5);
    expect([year.calendarYears[0], year.calendarYears[8759]]).toEqual([1991, 1988]);
  });

  it('EPW without a comment stays as the format has it', () => {
    const year = sampleYear('epw');
    expect(origin(year).slice(0, 2)).toEqual([4379.5, 0.5]);
    expect(year.irradianceMidpoint).toBe(0.5);
    expect(codes(year)).toEqual(['closure-confirms-stamps', 'air-at-mid-hour']);
    expect(year.columns).toMatchObject({
      dewPoint: null,
      pressure: null,
      skyLongwave: null,
      albedo: null,
    });
    expect(year.columns.snowDepth![0]).toBe(0.05); // 5 cm
  });

  it('an older EPW without the fields after the snow reads; albedo is none', () => {
    const short = epwLines().map((line) => line.split(',').slice(0, 32).join(','));
    const { snowDepth, albedo } = parseWeather(short.join('\n')).columns;
    expect([snowDepth![0], albedo]).toEqual([0.05, null]);
  });

  it('PVGIS rolls from UTC by the longitude, and what leaves the year comes in at its other end', () => {
    const east = sampleYear('pvgis'); // longitude 8°
    expect(east.site.utcOffset).toBe(1);
    expect(east.irradianceMidpoint).toBe(0.1761);
    expect(origin(east).slice(0, 3)).toEqual([4379.5, 0.5, 1.5]); // 00:30 is 23:30 UTC
    expect([east.columns.ghi[8], east.columns.ghi[9]]).toEqual([0, 100]);
    const west = parseWeather(pvgisLines({ longitude: -75 }).join('\n'));
    expect(west.site.utcOffset).toBe(-5);
    expect([origin(west)[0], origin(west)[8759]]).toEqual([5.5, 4.5]);
    expect(codes(west)).toEqual(['zone-from-longitude', 'rolled-to-local-time', 'air-at-mid-hour']);
  });

  it('an hour that went around the year is dated by the local clock, its instant kept', () => {
    const year = parseWeather(pvgisLines({ year: (month) => (month === 12 ? 2016 : 2018) }).join('\n'));
    expect([year.calendarYears[0], year.calendarYears[1]]).toEqual([2017, 2018]);
    const starts = hourStarts(year);
    expect(starts[0]).toBe(Date.UTC(2016, 11, 31, 23));
    expect(starts[1]).toBe(Date.UTC(2018, 0, 1, 0));
  });

  it('utcOffset overrides; half hours move the midpoint', () => {
    const year = parseWeather(pvgisLines({ longitude: 77 }).join('\n'), { utcOffset: 5.5 });
    expect(year.site.utcOffset).toBe(5.5);
    expect(year.irradianceMidpoint).toBe(0.6761);
    expect(origin(year)[5]).toBe(0);
    const zero = parseWeather(pvgisLines().join('\n'), { utcOffset: 0 });
    expect(origin(zero)[0]).toBe(0.5);
    expect(codes(zero)).not.toContain('rolled-to-local-time');
  });

  it('a negative time offset belongs to the hour before', () => {
    const year = parseWeather(pvgisLines({ offset: '-0.25' }).join('\n'), { utcOffset: 0 });
    expect(year.irradianceMidpoint).toBe(0.75);
    expect([year.columns.ghi[6], year.columns.ghi[7]]).toEqual([0, 100]); // 08:00 less a quarter
    expect(origin(year)[0]).toBe(0.5);
  });

  it('-0.0 becomes 0', () => {
    expect(Object.is(sampleYear('pvgis').columns.dni[100], 0)).toBe(true);
  });

  // Several in an hour: columns.test.ts.
  it.each([
    [[30], 0.5],
    [[0], 0],
  ])('NSRDB rows at minute %j stand for %f h after the start of the hour, energy kept', (minutes, midpoint) => {
    const year = sampleYear('nsrdb', { minutes });
    expect(year.irradianceMidpoint).toBe(midpoint);
    const rows = nsrdbLines({ minutes })
      .slice(3)
      .map((line) => Number(line.split(',')[5]));
    const energy = rows.reduce((sum, value) => sum + value, 0);
    expect(year.columns.ghi.reduce((sum, value) => sum + value, 0)).toBeCloseTo(energy, 6);
    expect(codes(year)).not.toContain('averaged-to-hours');
  });

  it('29 February is dropped and said', () => {
    const year = parseWeather(nsrdbLines({ leap: true }).join('\n'));
    expect(origin(year).slice(58 * 24, 60 * 24)).toEqual(
      Array.from({ length: 48 }, (_, hour) => (hour < 24 ? 58 * 24 + hour : 60 * 24 + hour - 24)),
    );
    expect(codes(year)).toContain('leap-day-dropped');
  });

  it('NSRDB stamps in UTC come to the local zone; 29 February is the local one', () => {
    const year = parseWeather(nsrdbLines({ leap: true, zone: 0, localZone: -7 }).join('\n'));
    expect(year.site.utcOffset).toBe(-7);
    expect(origin(year)[0]).toBe(7);
    expect(origin(year)[59 * 24]).toBe(60 * 24 + 7);
    expect(hourStarts(year)[59 * 24]).toBe(Date.UTC(2016, 2, 1, 7));
    expect(hourStarts(year)[8759]).toBe(Date.UTC(2016, 0, 1, 6));
  });

  it('hourStarts follows the fixed offset without daylight saving', () => {
    const starts = hourStarts(sampleYear('tmy3'));
    expect(starts[0]).toBe(Date.UTC(1991, 0, 1, 5));
    expect(starts[4400]).toBe(Date.UTC(1988, 6, 3, 13));
  });
});

describe('the closure speaks up [ours: the invented valley]', () => {
  const lines = readFileSync('docs/examples/weather/invented-valley.csv', 'utf8').split('\n');
  const asItIs = parseWeather(lines.join('\n'));

  it('confirms the file as it is', () => {
    expect(codes(asItIs)).toEqual(['note']);
  });

  it.each([
    ['-4', '1 h later'],
    ['-6', '1 h earlier'],
  ])('reports a zone of %s h instead of −5 h, and moves nothing', (zone, words) => {
    const year = parseWeather(lines.with(5, `# utcOffset_h: ${zone}`).join('\n'));
    expect(codes(year)).toEqual(['note', 'closure-mismatch']);
    expect(year.assumptions[1]!.text).toContain(words);
    expect(year.columns.ghi[8]).toBe(asItIs.columns.ghi[8]);
  });
});

describe('missing values in columns that may be left out [ours: invented files]', () => {
  it('bridges 3 h on a straight line, holds the neighbour at the ends of the file, cuts a night offset to 0, and says so', () => {
    // Wind at the stamps 4 to 0: 2.5, 3.5, 4.5, 5.5, 6.5 m/s; hours lie between two stamps. No dew point in the first two rows.
    const cells = [
      [104, 8, '6.5'],
      ...[101, 102, 103].map((line) => [line, 8, '-9900'] as const),
      [3, 7, '-9900'],
      [4, 7, '-9900'],
      [3, 3, '-2'],
    ] as const;
    const text = cells.reduce((lines, [line, cell, mark]) => spoil(lines, line, cell, mark).split('\n'), tmy3Lines());
    const year = parseWeather(text.join('\n'));
    expect(Array.from(year.columns.windSpeed!.subarray(97, 102))).toEqual([2.5, 3, 4, 5, 6]);
    expect(year.columns.dewPoint!.subarray(0, 3)).toEqual(Float64Array.of(-1, -1, -1));
    expect(year.columns.ghi[0]).toBe(0);
    expect(codes(year)).toEqual(expect.arrayContaining(['gaps-bridged', 'instrument-drift-cut']));
  });

  it('leaves out a column with a gap of 4 h, and says from which line', () => {
    const lines = [100, 101, 102, 103].reduce((all, line) => spoil(all, line, 8, '-9900').split('\n'), tmy3Lines());
    const year = parseWeather(lines.join('\n'));
    expect(year.columns.windSpeed).toBeNull();
    expect(year.assumptions.find(({ code }) => code === 'column-left-out')!.text).toContain('line 100');
  });

  it('takes an albedo of 0 in all rows as not measured', () => {
    expect(sampleYear('tmy3').columns.albedo).toBeNull();
  });
});

describe('plain tables by a column map [ours: invented files]', () => {
  const site = { name: 'Roof', latitude: 40, longitude: -75, elevation: 100, utcOffset: -5 };
  const columns = {
    ghi: { column: 'ghi_W_per_m2', unit: 'W/m2' },
    dni: { column: 'dni_W_per_m2', unit: 'W/m2' },
    dhi: { column: 'dhi_W_per_m2', unit: 'W/m2' },
    dryBulb: { column: 'dry_bulb_degC', unit: 'degF' },
  } as const;
  const rows = plainLines().slice(8);

  it('converts units and takes rows in order', () => {
    const year = parseWeather(rows.join('\n'), { plain: { site, columns, time: 'row-order', stamps: 'start' } });
    expect(year.columns.dryBulb[5000]).toBeCloseTo((5 - 32) / 1.8, 9);
    expect(year.calendarYears[0]).toBe(2023);
    expect(year.irradianceMidpoint).toBe(0.5);
  });

  it('reads semicolons, timestamps that end the interval, half hours', () => {
    const start = Date.UTC(2022, 0, 1);
    const text = [
      'time;g;b;d;t',
      ...Array.from({ length: 17_520 }, (_, row) => {
        const stamp = new Date(start + (row + 1) * 1_800_000).toISOString().slice(0, 16);
        return `${stamp};${row % 2};0;${row % 2};${row / 10_000}`;
      }),
    ].join('\n');
    const named = (column: string, unit: 'W/m2' | 'degC') => ({ column, unit });
    const year = parseWeather(text, {
      plain: {
        site,
        columns: {
          ghi: named('g', 'W/m2'),
          dni: named('b', 'W/m2'),
          dhi: named('d', 'W/m2'),
          dryBulb: named('t', 'degC'),
        },
        time: { timestamp: 'time' },
        stamps: 'end',
        delimiter: ';',
      },
    });
    expect(year.columns.ghi[0]).toBe(0.5);
    expect(year.columns.dryBulb[8759]).toBeCloseTo((17_518 + 17_519) / 20_000, 9);
    expect(year.irradianceMidpoint).toBe(0.5);
    expect(year.calendarYears[8759]).toBe(2022);
  });

  it('hands on the notes and assumptions of our own layout', () => {
    const lines = plainLines().toSpliced(8, 0, '# assumption: leap-day-dropped | 29 February was dropped.');
    expect(parseWeather(lines.join('\n')).assumptions).toEqual([
      { code: 'note', text: 'invented' },
      { code: 'leap-day-dropped', text: '29 February was dropped.' },
    ]);
  });
});
