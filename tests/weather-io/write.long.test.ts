import { parseWeather, synthesizeYear, type WeatherYear, writeWeather } from '@noonloop/weather-io';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inventedValley } from '../examples.ts';
import { hasRealFiles, REAL_NAMES, readReal } from './real-files.ts';
import { epwLines, nsrdbLines, pvgisLines, tmy3Lines } from './samples.ts';

/** All that must come back, in the bits of the doubles. */
function bits({ site, columns, irradianceMidpoint, calendarYears, assumptions }: WeatherYear) {
  const column = (values: Float64Array | null) => values && new BigUint64Array(values.slice().buffer);
  const { name, latitude, longitude, elevation, utcOffset } = site;
  return {
    site: { name, latitude, longitude, elevation, utcOffset },
    columns: Object.entries(columns)
      .map(([key, values]) => [key, column(values)])
      .sort(),
    irradianceMidpoint,
    calendarYears,
    // Codes and sentences: what sentences are made of is not written to files.
    assumptions: assumptions.map(({ code, text }) => ({ code, text })),
  };
}

const again = (year: WeatherYear): WeatherYear => parseWeather(writeWeather(year));
const same = (year: WeatherYear) => expect(bits(again(year))).toEqual(bits(year));

describe('a year written and read again is the same in every bit [ours: round trip]', () => {
  it.skipIf(!hasRealFiles).each(REAL_NAMES)('%s', async (name) => same(await readReal(name)));

  it.each([
    ['TMY3', tmy3Lines()],
    ['EPW', epwLines()],
    ['PVGIS east of Greenwich', pvgisLines({ year: (month) => 2000 + month })],
    ['NSRDB with a leap year', nsrdbLines({ minutes: [0, 20, 40], leap: true })],
  ])('%s', (_, lines) => same(parseWeather(lines.join('\n'))));

  it('the valley, twice over to the same text', async () => {
    const valley = await inventedValley();
    same(valley);
    const text = writeWeather(again(valley));
    expect(writeWeather(parseWeather(text)).split('\n').slice(9)).toEqual(text.split('\n').slice(9));
  });

  it('a synthetic year, whose numbers have all their digits', () => {
    same(
      synthesizeYear({
        site: { latitude: -33.9, longitude: 18.4, utcOffset: 2 },
        monthly: {
          sunshineFraction: [0.8, 0.78, 0.72, 0.65, 0.58, 0.55, 0.57, 0.6, 0.64, 0.7, 0.75, 0.79],
          dryBulb: [21, 21, 20, 17, 15, 13, 12, 13, 14, 16, 18, 20],
          relativeHumidity: new Array<number>(12).fill(0.7),
          windSpeed: new Array<number>(12).fill(5),
        },
      }),
    );
  });

  it('any doubles within the limits, any midpoint, any offset of the inhabited Earth, odd words [property]', () => {
    const base = synthesizeYear({
      site: { latitude: 40 },
      monthly: { clearness: new Array<number>(12).fill(0.5), dryBulb: new Array<number>(12).fill(10) },
    });
    const values = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 7, maxLength: 7 });
    fc.assert(
      fc.property(
        values,
        fc.double({ min: 0, max: 0.999, noNaN: true }),
        fc.integer({ min: -48, max: 56 }),
        fc.constantFrom('a, b', '"x"', '# y', 'a|b: c', 'Zürich ☀', ''),
        (seven, midpoint, quarters, words) => {
          const column = (scale: number, offset = 0) =>
            Float64Array.from({ length: 8760 }, (_, hour) => seven[hour % 7]! * scale + offset);
          const year: WeatherYear = {
            ...base,
            site: {
              name: words,
              latitude: seven[0]! * 180 - 90,
              longitude: seven[1]! * 360 - 180,
              elevation: seven[2]! * 4000,
              utcOffset: quarters / 4,
            },
            irradianceMidpoint: Number(midpoint.toFixed(6)),
            columns: {
              ...base.columns,
              ghi: column(900),
              dhi: column(900),
              dni: new Float64Array(8760),
              dryBulb: column(90, -40),
              pressure: column(60_000, 45_000),
              albedo: column(1),
            },
            assumptions: [{ code: 'odd', text: `text ${words}`.trim() }],
          };
          same(year);
        },
      ),
      { numRuns: 15, seed: 4 },
    );
  });
});

describe('what writeWeather says and refuses [ours]', () => {
  it('the header says everything; line breaks in words do no harm', async () => {
    const valley = await inventedValley();
    const text = writeWeather({ ...valley, site: { ...valley.site, name: 'two\nlines' } });
    expect(text.split('\n').slice(0, 8)).toEqual([
      '# noonloop plain weather 1',
      '# name: two lines',
      '# latitude_deg: 41.2',
      '# longitude_deg: -77.5',
      '# elevation_m: 300',
      '# utcOffset_h: -5',
      '# irradianceMidpoint_h: 0.5',
      '# written_from: invented-valley.csv (plain)',
    ]);
    expect(parseWeather(text).site.name).toBe('two lines');
  });

  it('a column with a hole, with what and where', async () => {
    const valley = await inventedValley();
    const ghi = valley.columns.ghi.with(77, Number.NaN);
    expect(() => writeWeather({ ...valley, columns: { ...valley.columns, ghi } })).toThrow(
      'column ghi has NaN in hour 77',
    );
    const short = { ...valley.columns, dni: new Float64Array(10) };
    expect(() => writeWeather({ ...valley, columns: short })).toThrow('column dni has 10 values');
  });
});
