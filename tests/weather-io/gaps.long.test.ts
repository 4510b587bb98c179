import { simulate } from '@noonloop/sim-core';
import { fillGaps, parseWeather, WeatherError, type WeatherIssue, type WeatherYear } from '@noonloop/weather-io';
import { describe, expect, it } from 'vitest';
import { hourlySun } from '../../packages/weather-io/src/sun/hourly.ts';
import { inventedValley, withPanels } from '../examples.ts';
import { faultsOf } from './faults.ts';
import { calendar, nsrdbLines, plainLines, spoil, tmy3Lines } from './samples.ts';

const keep = { gaps: 'keep' } as const;

const issuesOf = (call: () => unknown): readonly WeatherIssue[] => {
  try {
    call();
  } catch (error) {
    if (error instanceof WeatherError) return error.issues;
    throw error;
  }
  throw new Error('Nothing was thrown.');
};

const nans = (values: Float64Array): number => values.filter(Number.isNaN).length;

describe("reading with gaps: 'keep' [ours: invented files]", () => {
  const plain = plainLines();

  it('a missing mark becomes NaN in its hour, and is counted', () => {
    const year = parseWeather(spoil(plain, 700, 5, ''), keep);
    expect(year.columnsWithGaps.ghi[700 - 10]).toBeNaN();
    expect([nans(year.columnsWithGaps.ghi), year.missingHours]).toEqual([1, 1]);
  });

  it.each([
    ['in the middle', plain.toSpliced(1000, 50), 50],
    ['at both ends', [...plain.slice(0, 9), ...plain.slice(19, -20)], 30],
    ['a whole month', plain.toSpliced(9 + 31 * 24, 28 * 24), 28 * 24],
  ])('missing rows %s', (_, lines, missing) => {
    const year = parseWeather(lines.join('\n'), keep);
    expect(year.missingHours).toBe(missing);
    const whole = parseWeather(plain.join('\n'));
    year.columnsWithGaps.dryBulb.forEach((value, hour) => {
      if (!Number.isNaN(value)) expect(value).toBe(whole.columns.dryBulb[hour]);
    });
  });

  it('a log from July to June lies in its own months and years', () => {
    const rows = plain.slice(9).map((line) => line.replace(/^2023/, '2022'));
    const july = 181 * 24;
    const log = [
      ...plain.slice(0, 9),
      ...rows.slice(july),
      ...rows.slice(0, july).map((line) => line.replace(/^2022/, '2023')),
    ];
    const year = parseWeather(log.join('\n'), keep);
    expect(year.missingHours).toBe(0);
    expect([year.calendarYears[0], year.calendarYears[8759]]).toEqual([2023, 2022]);
    expect(year.columnsWithGaps.dryBulb).toEqual(parseWeather(plain.join('\n')).columns.dryBulb);
  });

  it('an hour with three of its four rows stands, with two it is missing', () => {
    const lines = nsrdbLines({ minutes: [0, 15, 30, 45] });
    const row = 3 + 4 * 100;
    expect(parseWeather(lines.toSpliced(row, 1).join('\n'), keep).missingHours).toBe(0);
    expect(parseWeather(lines.toSpliced(row, 2).join('\n'), keep).missingHours).toBe(1);
  });

  it('letters, impossible values, repetitions and steps back are faults all the same', () => {
    const faults = (text: string) => issuesOf(() => parseWeather(text, keep)).map(({ code, line }) => [code, line]);
    expect(faults(spoil(plain, 700, 5, 'x'))).toEqual([['not-a-number', 700]]);
    expect(faults(plain.toSpliced(100, 0, plain[99]!).join('\n'))).toEqual([['repeated-hour', 101]]);
    expect(faults(plain.with(100, plain[101]!).with(101, plain[100]!).join('\n'))).toEqual([['out-of-order', 102]]);
  });

  it('refuses by default, and says what would help', () => {
    expect(faultsOf(spoil(plain, 700, 5, ''))[0]!.remedy).toContain('fillGaps');
    expect(issuesOf(() => parseWeather(plain.join('\n'), { gaps: 'fill' as 'keep' }))[0]).toMatchObject({
      code: 'bad-option',
      column: 'gaps',
    });
  });

  it('no simulation takes a year with gaps, by type and in fact', () => {
    const gappy = parseWeather(tmy3Lines().join('\n'), keep);
    // @ts-expect-error A GappyYear is no WeatherYear.
    expect(() => simulate(withPanels(2), gappy)).toThrow();
    // @ts-expect-error Nor the other way round.
    expect(() => fillGaps(parseWeather(tmy3Lines().join('\n')))).toThrow();
  });
});

/** The valley as a file, with cells emptied where told. */
async function valleyText(empty: (hour: number, key: string) => boolean): Promise<string> {
  const { columns, site } = await inventedValley();
  const head = plainLines()
    .slice(0, 8)
    .map((line) =>
      line
        .replace(/latitude_deg: .*/, `latitude_deg: ${site.latitude}`)
        .replace(/longitude_deg: .*/, `longitude_deg: ${site.longitude}`),
    );
  const keys = ['ghi', 'dni', 'dhi', 'dryBulb', 'windSpeed'] as const;
  const rows = calendar().map(({ month, day, hour }, row) =>
    [2023, month, day, hour, ...keys.map((key) => (empty(row, key) ? '' : columns[key]![row]))].join(','),
  );
  return [
    ...head,
    'year,month,day,hour,ghi_W_per_m2,dni_W_per_m2,dhi_W_per_m2,dry_bulb_degC,wind_speed_m_per_s',
    ...rows,
  ].join('\n');
}

const filledValley = async (empty: (hour: number, key: string) => boolean, limit?: number): Promise<WeatherYear> =>
  fillGaps(parseWeather(await valleyText(empty), keep), limit === undefined ? {} : { limit });

describe('fillGaps [closed forms on the invented valley]', () => {
  const noon = 160 * 24 + 12;
  const light = new Set(['ghi', 'dni', 'dhi']);

  it('one hour of light: the mean of the clearness on both sides, times its own light at the top of the air', async () => {
    const valley = await inventedValley();
    const year = await filledValley((hour, key) => hour === noon && light.has(key));
    const { light: up, normal } = hourlySun(year);
    const clearness = (hour: number) => valley.columns.ghi[hour]! / (up[hour]! * normal[hour]!);
    const expected = ((clearness(noon - 1) + clearness(noon + 1)) / 2) * up[noon]! * normal[noon]!;
    expect(year.columns.ghi[noon]).toBeCloseTo(expected, 9);
    expect(year.columns.dhi[noon]! + year.columns.dni[noon]! * up[noon]!).toBeCloseTo(expected, 9);
    expect(year.assumptions.at(-1)).toMatchObject({
      code: 'gaps-interpolated',
      text: expect.stringContaining(
        '1 hour in gaps of at most 3 sunlit hours, with the clearness between their neighbours: 10 Jun 12:00 to 13:00',
      ),
    });
  });

  it.each(['ghi', 'dni', 'dhi'] as const)('%s alone: from the other two by the closure', async (key) => {
    const valley = await inventedValley();
    const year = await filledValley((hour, column) => hour === noon && column === key);
    // The valley's light is rounded to 1 W/m², each of three.
    expect(Math.abs(year.columns[key][noon]! - valley.columns[key][noon]!)).toBeLessThan(4);
    expect(year.assumptions.map(({ code }) => code)).toContain('gaps-closure');
  });

  it('a night is dark', async () => {
    const year = await filledValley((hour, key) => hour < 5 && light.has(key));
    expect([...year.columns.ghi.subarray(0, 5)]).toEqual([0, 0, 0, 0, 0]);
    expect(year.assumptions.map(({ code }) => code)).toEqual(['note', 'gaps-dark']);
  });

  it('two days: the clearness of like days by name, no day twice, and the dry bulb meets both ends', async () => {
    const valley = await inventedValley();
    const first = 100 * 24;
    const year = await filledValley((hour) => hour >= first && hour < first + 48);
    const note = year.assumptions.find(({ code }) => code === 'gaps-like-days')!;
    const [, a, b] = /11 Apr from (\d+ \w+), 12 Apr from (\d+ \w+)/.exec(note.text)!;
    expect(a).not.toBe(b);
    const air = year.columns.dryBulb;
    for (const edge of [first, first + 48]) expect(Math.abs(air[edge]! - air[edge - 1]!)).toBeLessThan(4);
    expect(air.subarray(0, first)).toEqual(valley.columns.dryBulb.subarray(0, first));
    expect(year.columns.windSpeed!.every((value) => value >= 0)).toBe(true);
  });

  it('what was there stays as it was, bit by bit', async () => {
    const valley = await inventedValley();
    const empty = (hour: number) => hour % 37 === 5;
    const year = await filledValley(empty);
    for (const key of ['ghi', 'dni', 'dhi', 'dryBulb', 'windSpeed'] as const) {
      year.columns[key]!.forEach((value, hour) => {
        if (!empty(hour)) expect(value).toBe(valley.columns[key]![hour]);
        else expect(Number.isFinite(value)).toBe(true);
      });
    }
  });

  it('global alone with gaps is filled, then split', async () => {
    const year = await filledValley((hour, key) => key === 'dni' || key === 'dhi' || (key === 'ghi' && hour === noon));
    expect(year.assumptions.map(({ code }) => code)).toEqual(['note', 'gaps-interpolated', 'split-by-erbs']);
    expect(nans(year.columns.dni) + nans(year.columns.dhi)).toBe(0);
  });

  it('above a tenth of the hours it refuses, and says how many; a raised limit is taken', async () => {
    const empty = (hour: number) => hour < 900;
    const issues = await filledValley(empty).then(
      () => [],
      (error: WeatherError) => error.issues,
    );
    expect(issues).toMatchObject([
      { code: 'too-many-gaps', value: '900 of 8760 hours missing', expected: expect.stringContaining('876') },
    ]);
    expect(nans((await filledValley(empty, 0.2)).columns.ghi)).toBe(0);
  });

  it('a gap without a like day within 60 days is refused', async () => {
    const issues = await filledValley((hour) => hour >= 24 * 100 && hour < 24 * 300, 1).then(
      () => [],
      (error: WeatherError) => error.issues,
    );
    expect(issues).toMatchObject([{ code: 'too-many-gaps', expected: expect.stringContaining('60 days') }]);
  });

  it('a further column that is mostly missing is left out, and said', async () => {
    const year = await filledValley((hour, key) => key === 'windSpeed' && hour > 4000);
    expect(year.columns.windSpeed).toBeNull();
    expect(year.assumptions.map(({ code }) => code)).toContain('column-left-out');
  });

  it('a limit that cannot be', async () => {
    const gappy = parseWeather(await valleyText(() => false), keep);
    expect(issuesOf(() => fillGaps(gappy, { limit: 10 }))).toMatchObject([{ code: 'bad-option', column: 'limit' }]);
    expect(fillGaps(gappy).columns.ghi).toEqual((await inventedValley()).columns.ghi);
  });
});
