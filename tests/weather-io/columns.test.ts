// What each format's columns mean, by values reckoned by hand on invented files.
import {
  type PlainLayout,
  parseWeather,
  STANDARD_WIND_HEIGHT,
  type WeatherYear,
  writeWeather,
} from '@noonloop/weather-io';
import { sunPosition } from '@noonloop/weather-io/sun';
import { describe, expect, it } from 'vitest';
import { NSRDB_MINUTES, ofInstants, rowAt } from './instants.ts';
import { epwLines, nsrdbLines, plainLines, pvgisLines, sampleYear, tmy3Lines } from './samples.ts';

/** A sample with another column at the end of each row of hours. @param start - Lines of the header. */
const withColumn = (lines: readonly string[], start: number, header: string, cell: (row: number) => string): string =>
  lines
    .map((line, at) => (at === start - 1 ? `${line},${header}` : at < start ? line : `${line},${cell(at - start)}`))
    .join('\n');

let cloudy: WeatherYear | undefined;
/** The EPW sample with sky cover and long-wave irradiance, read once. */
function cloudyEpw(): WeatherYear {
  cloudy ??= parseWeather(
    epwLines()
      .map((line, at) => {
        if (at < 8) return line;
        const cells = line.split(',').with(22, '9').with(23, '4');
        return cells.with(12, String(200 + (at % 100))).join(',');
      })
      .join('\n'),
  );
  return cloudy;
}

describe('opaque sky cover [TMY3 and EPW: tenths in the file; requirement: a fraction in the year]', () => {
  // TMY3 has 7 and 8 tenths below, where its air is set in step with its light; that 99 in all rows of EPW is none, among its marks.
  it('EPW: the field after the total sky cover', () => {
    expect(cloudyEpw().columns.cloudCover![5000]).toBeCloseTo(0.4, 12);
  });

  it('formats without it have none', () => {
    for (const name of ['tmy3', 'pvgis', 'nsrdb', 'plain'] as const)
      expect(sampleYear(name).columns.cloudCover).toBeNull();
  });
});

describe('height of the wind [WMO guide No. 8: 10 m; NREL’s variable descriptions of NSRDB: 2 m]', () => {
  it.each([
    ['tmy3', 10],
    ['epw', 10],
    ['pvgis', 10],
    ['nsrdb', 2],
    ['plain', undefined],
  ] as const)('%s', (name, height) => {
    expect(STANDARD_WIND_HEIGHT).toBe(10);
    expect(sampleYear(name).site.windHeight).toBe(height);
  });

  it('our own layout carries it, and the cloud cover', () => {
    const cloudy = withColumn(plainLines(), 9, 'cloud_cover', (row) => String((row % 11) / 10)).split('\n');
    const lines = cloudy.toSpliced(6, 0, '# windHeight_m: 2.5');
    const year = parseWeather(lines.join('\n'));
    expect([year.site.windHeight, year.columns.cloudCover![10]]).toEqual([2.5, 1]);
    const again = parseWeather(writeWeather(year));
    expect([again.site.windHeight, again.columns.cloudCover]).toEqual([2.5, year.columns.cloudCover]);
    const low = lines.slice(0, 60).with(6, '# windHeight_m: 0');
    expect(() => parseWeather(low.join('\n'))).toThrow('windHeight from 0.5 to 200 m');
  });
});

describe('air in step with light, by hand [TMY3 users manual, EPW dictionary, PVGIS and NSRDB: docs/theory/weather.md]', () => {
  it('TMY3: air at the stamp, light the hour before it: the mean of two neighbouring stamps', () => {
    const cloudy = withColumn(tmy3Lines(), 2, 'RHum (%),Pressure (mbar),OpqCld (tenths)', (row) =>
      [row % 100, 950 + (row % 50), row % 11].join(),
    );
    const year = parseWeather(cloudy);
    const { relativeHumidity, pressure, cloudCover, windSpeed, dewPoint, ghi } = year.columns;
    // Row 4001 ends at the stamp of line 4001, and begins at that of 4000.
    expect(rowAt(year, 4001)).toBe(4000.5);
    expect(relativeHumidity![4001]).toBeCloseTo(0.005, 12); // 0 and 1 %
    expect(pressure![4001]).toBeCloseTo(95_050, 6); // 950 and 951 mbar
    expect(cloudCover![4001]).toBeCloseTo(0.75, 12); // 4000 = 11 × 363 + 7: 7 and 8 tenths
    expect([windSpeed![4001], dewPoint![4001]]).toEqual([2.5, -1]);
    expect([ghi[7], ghi[8]]).toEqual([0, 100]); // the light stays where it was
    expect(year.assumptions.map(({ code }) => code)).toContain('air-at-mid-hour');
  });

  it('EPW: as TMY3; long-wave irradiance is a mean as the light and stays', () => {
    const year = cloudyEpw();
    expect(rowAt(year, 4001)).toBe(4000.5);
    expect(year.columns.skyLongwave![4001]).toBe(200 + (4009 % 100));
  });

  it('PVGIS: air at the stamp in UTC, long-wave the hour before it, light 0.1761 h after it', () => {
    const lines = pvgisLines().map((line, at) =>
      at < 18 || !line.includes(',300.0,') ? line : line.replace(',300.0,', `,${300 + (at % 100)}.0,`),
    );
    const year = parseWeather(lines.join('\n')); // UTC+1
    // 4001:00 to 4002:00 local is 4000:00 to 4001:00 UTC, which ends at the stamp of row 4001; 18 lines stand before row 0.
    expect(rowAt(year, 4001)).toBe(4000.5);
    expect(year.columns.skyLongwave![4001]).toBe(300 + ((4001 + 18) % 100));
    expect(year.irradianceMidpoint).toBe(0.1761);
  });

  it('NSRDB at :30: all at the stamp, nothing moves', () => {
    const year = sampleYear('nsrdb', { minutes: [30] });
    expect([rowAt(year, 4001), year.irradianceMidpoint]).toEqual([4001, 0.5]);
    expect(year.assumptions.map(({ code }) => code)).not.toContain('air-at-mid-hour');
  });

  // More than two in an hour: columns.long.test.ts.
  it.each(NSRDB_MINUTES.slice(0, 2))(
    'NSRDB at minutes %j: each instant stands for the time about it, in hours of the clock',
    ofInstants,
  );

  it('NSRDB at :00 and :30: light by the same weights', () => {
    const year = sampleYear('nsrdb', { minutes: [0, 30] }); // 100 W/m² from 8 to 15:30, and the minute
    expect(year.columns.ghi[7]).toBe(0.25 * 0 + 0.5 * 30 + 0.25 * 100);
    expect(year.columns.ghi[8]).toBe(0.25 * 100 + 0.5 * 130 + 0.25 * 100);
    expect(year.columns.ghi[15]).toBe(0.25 * 100 + 0.5 * 130 + 0.25 * 0);
  });

  const layout = (stamps: PlainLayout['stamps'], air?: PlainLayout['air']): PlainLayout => ({
    site: { name: 'roof', latitude: 40, longitude: -75, elevation: 100, utcOffset: -5 },
    columns: {
      ghi: { column: 'ghi_W_per_m2', unit: 'W/m2' },
      dni: { column: 'dni_W_per_m2', unit: 'W/m2' },
      dhi: { column: 'dhi_W_per_m2', unit: 'W/m2' },
      dryBulb: { column: 'dry_bulb_degC', unit: 'degC' },
    },
    time: { year: 'year', month: 'month', day: 'day', hour: 'hour' },
    stamps,
    ...(air === undefined ? {} : { air }),
  });
  const table = plainLines().slice(8).join('\n');

  it('a table of means: as it stands, and said where the layout does not say it', () => {
    const unsaid = parseWeather(table, { plain: layout('start') });
    expect(rowAt(unsaid, 4001)).toBe(4001);
    expect(unsaid.assumptions.map(({ code }) => code)).toEqual(['air-as-light']);
    expect(parseWeather(table, { plain: layout('start', 'mean') }).assumptions).toEqual([]);
  });

  it('a table of instants: light about the stamp, air between two stamps', () => {
    const year = parseWeather(table, { plain: layout('instant') });
    expect([rowAt(year, 4001), year.irradianceMidpoint]).toEqual([4001.5, 0]);
  });

  it('a table of means with air at the stamps', () => {
    expect(rowAt(parseWeather(table, { plain: layout('start', 'instant') }), 4001)).toBe(4001.5);
    const ending = table.replaceAll(
      /^(\d+,\d+,\d+),(\d+)/gm,
      (_, day: string, hour: string) => `${day},${Number(hour) + 1}`,
    );
    expect(rowAt(parseWeather(ending, { plain: layout('end', 'instant') }), 4001)).toBe(4000.5);
  });

  it('our own layout says hours of the clock: what is written reads back', () => {
    const year = sampleYear('tmy3');
    expect(parseWeather(writeWeather(year)).columns).toEqual(year.columns);
  });

  it('an instant that is missing beside one that is there: the other stands for it', () => {
    const lines = tmy3Lines();
    const cells = lines[2 + 4000]!.split(',').with(5, '-9900');
    const year = parseWeather(lines.with(2 + 4000, cells.join(',')).join('\n'), { gaps: 'keep' });
    const at = (hour: number) => Math.round(year.columnsWithGaps.dryBulb[hour]! * 1000);
    expect([at(4000), at(4001), year.missingHours]).toEqual([3999, 4001, 0]);
  });
});

/** Irradiance that closes at an instant: beam of 600 W/m² with the sun up by 3°, diffuse of 80 while it is up. [W/m²] */
function closingLight(time: number, latitude: number, longitude: number): [ghi: number, dni: number, dhi: number] {
  const cosine = Math.cos((sunPosition({ time, latitude, longitude }).zenith * Math.PI) / 180);
  const [dni, dhi] = [cosine > 0.05 ? 600 : 0, cosine > 0 ? 80 : 0];
  return [dhi + dni * cosine, dni, dhi];
}

/** A sample with the light that closes at `hours` after each row's stamp in UTC. */
function relit(
  lines: readonly string[],
  header: number,
  cells: readonly number[],
  stampOf: (cells: string[]) => number,
  place: [number, number],
) {
  return lines
    .map((line, at) => {
      if (at < header || line.split(',').length < 5) return line;
      const row = line.split(',');
      const light = closingLight(stampOf(row), ...place);
      for (const [which, cell] of cells.entries()) row[cell] = light[which]!.toFixed(3);
      return row.join(',');
    })
    .join('\n');
}

describe('the closure tells what stamps mean [sun of docs/theory/weather.md; light made to close at one instant]', () => {
  const nsrdb = (zone: number, minute: number, late: number) =>
    relit(
      nsrdbLines({ minutes: [minute], zone }),
      3,
      [5, 6, 7],
      ([year, month, day, hour]) =>
        Date.UTC(Number(year), Number(month) - 1, Number(day), Number(hour) + 7) + (minute / 60 + late) * 3_600_000,
      [40, -105],
    );

  it('NSRDB stamped at minute 0 for light of :30 [pvlib-python issues 731 and 733]', () => {
    const year = parseWeather(nsrdb(-7, 0, 0.5));
    expect(year.irradianceMidpoint).toBe(0.5);
    expect(rowAt(year, 4001)).toBe(4001); // the air is of :30 too
    const note = year.assumptions.find(({ code }) => code === 'instant-from-closure')!;
    expect(note.text).toContain('the stamped hour + 7.5 h in UTC');
  });

  it('NSRDB at minute 0 with light of minute 0 stays', () => {
    const year = parseWeather(nsrdb(-7, 0, 0));
    expect([year.irradianceMidpoint, rowAt(year, 4001)]).toEqual([0, 4001.5]);
    expect(year.assumptions.map(({ code }) => code)).not.toContain('instant-from-closure');
  });

  it('a wrong place is not mistaken for other stamps', () => {
    const year = parseWeather(nsrdb(-7, 30, 0).replace('40.0,-105.0', '40.0,105.0'));
    expect(year.irradianceMidpoint).toBe(0.5);
    expect(year.assumptions.map(({ code }) => code)).not.toContain('instant-from-closure');
  });

  it.each([0.1761, -0.4])('PVGIS without its line of the offset: found, %f h', (offset) => {
    const lines = pvgisLines().filter((line) => !line.startsWith('Irradiance Time Offset'));
    const stamp = ([time]: string[]) => {
      const [, year, month, day, hour] = /^(\d{4})(\d\d)(\d\d):(\d\d)/.exec(time!)!;
      return Date.UTC(Number(year), Number(month) - 1, Number(day), Number(hour)) + offset * 3_600_000;
    };
    const year = parseWeather(relit(lines, 17, [3, 4, 5], stamp, [45, 8]));
    const found = year.irradianceMidpoint > 0.5 && offset < 0 ? year.irradianceMidpoint - 1 : year.irradianceMidpoint;
    expect(Math.abs(found - offset)).toBeLessThan(0.026); // the step of the search is 0.05 h
    expect(rowAt(year, 4001)).toBe(4000.5);
  });
});

describe('missing marks of EPW mean themselves and all above [EPW data dictionary, from memory]', () => {
  /** The sample with marks in all its hours. */
  const marked = (marks: Readonly<Record<number, string>>) =>
    parseWeather(
      epwLines()
        .map((line, at) => {
          if (at < 8) return line;
          const cells = line.split(',');
          for (const [cell, text] of Object.entries(marks)) cells[Number(cell)] = text;
          return cells.join(',');
        })
        .join('\n'),
    );

  it.each([
    {
      windSpeed: [21, '999.9'],
      skyLongwave: [12, '99999'],
      pressure: [9, '999999.9'],
      relativeHumidity: [8, '9999'],
      snowDepth: [30, '9999'],
    },
    { windSpeed: [21, '999'], skyLongwave: [12, '0'], cloudCover: [23, '99'] },
  ] as const)('fields and marks %j', (given) => {
    const { columns } = marked(Object.fromEntries(Object.values(given)));
    for (const key of Object.keys(given) as (keyof typeof columns)[]) expect(columns[key], key).toBeNull();
  });

  it('what is needed is refused as missing', () => {
    expect(() => marked({ 6: '999' })).toThrow('this is the mark for a missing value');
  });
});
