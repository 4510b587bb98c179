import { erbsDiffuseFraction, parseWeather } from '@noonloop/weather-io';
import { describe, expect, it } from 'vitest';
import { splitHour } from '../../packages/weather-io/src/irradiance/split.ts';
import { hourlySun } from '../../packages/weather-io/src/sun/hourly.ts';
import { faultsOf } from './faults.ts';
import { calendar, epwLines, nsrdbLines, plainLines, spoil, tmy3Lines } from './samples.ts';

describe('diffuse fraction [Erbs, Klein & Duffie 1982, the piecewise formula worked by hand]', () => {
  it.each([
    [0, 1],
    [0.1, 0.991],
    [0.22, 0.9802],
    [0.35, 0.904253],
    [0.5, 0.65915],
    [0.8, 0.16527],
    [0.9, 0.165],
    [1.3, 0.165],
  ])('clearness %f → %f', (clearness, fraction) => {
    expect(Math.abs(erbsDiffuseFraction(clearness) - fraction)).toBeLessThan(6e-6);
  });

  it('its pieces meet within 0.001 at 0.22 and at 0.80 [coefficients in four decimals]', () => {
    for (const edge of [0.22, 0.8]) {
      expect(Math.abs(erbsDiffuseFraction(edge + 1e-9) - erbsDiffuseFraction(edge))).toBeLessThan(0.001);
    }
  });

  it.each([-0.1, Number.NaN])('refuses %f', (clearness) => {
    expect(() => erbsDiffuseFraction(clearness)).toThrow(RangeError);
  });
});

describe('split of an hour [ours: closure]', () => {
  const split = (ghi: number, light: number, lit: number, normal: number): [number, number] => {
    const out = new Float64Array(2);
    const column = (value: number) => Float64Array.of(value);
    const sun = { light: column(light), lit: column(lit), highest: column(light), normal: column(normal) };
    splitHour(ghi, sun, 0, out);
    return [out[0]!, out[1]!];
  };

  it('k 0.5 in a full hour: DHI 0.65915 GHI, DNI the rest over cos Z [by hand]', () => {
    const [dni, dhi] = split(340, 0.5, 1, 1360);
    expect(dhi).toBeCloseTo(340 * 0.65915, 3);
    expect(dni).toBeCloseTo((340 - 340 * 0.65915) / 0.5, 3);
  });

  it('with the sun up for a third of the hour the beam of that third gives the rest [by hand]', () => {
    const [dni, dhi] = split(40, 0.05, 1 / 3, 1360);
    expect(dhi + (dni * 0.05) / (1 / 3)).toBeCloseTo(40, 9);
    expect(dni).toBeGreaterThan(0);
  });

  it.each([
    ['below the horizon', 5, 0, 0],
    ['2° high', 30, 0.035, 1],
  ])('light with the sun %s is all diffuse', (_, ghi, light, lit) => {
    expect(split(ghi, light, lit, 1360)).toEqual([0, ghi]);
  });

  it('more light than the top of the air gives no beam beyond the rare limit, and none is lost', () => {
    const [dni, dhi] = split(300, 0.1, 1, 1360);
    expect(dni).toBeCloseTo(0.95 * 1360 * 0.1 ** 0.2 + 10, 9);
    expect(dhi + dni * 0.1).toBeCloseTo(300, 9);
  });
});

/** Takes cells out of all rows of hours. */
const without = (lines: readonly string[], header: number, cells: readonly number[], mark: string): string =>
  lines
    .map((line, index) => {
      if (index < header) return line;
      const row = line.split(',');
      for (const cell of cells) row[cell - 1] = mark;
      return row.join(',');
    })
    .join('\n');

describe('files without beam or diffuse [ours: invented files]', () => {
  const site = { name: 'roof', latitude: 40, longitude: -75, elevation: 100, utcOffset: -5 };
  const table = [
    'm,d,h,global,air',
    ...calendar().map(({ month, day, hour }) => `${month},${day},${hour},${hour === 12 ? 400 : 0},10`),
  ];
  const layout = {
    site,
    columns: { ghi: { column: 'global', unit: 'W/m2' }, dryBulb: { column: 'air', unit: 'degC' } },
    time: { month: 'm', day: 'd', hour: 'h' },
    stamps: 'start',
  } as const;

  it('a column map with global and dry bulb alone', () => {
    const year = parseWeather(table.join('\n'), { plain: layout });
    const { ghi, dni, dhi } = year.columns;
    const { light, lit, normal } = hourlySun(year);
    for (const hour of [12, 4000 - (4000 % 24) + 12]) {
      const share = erbsDiffuseFraction(400 / (normal[hour]! * light[hour]!));
      expect(dhi[hour]).toBeCloseTo(400 * share, 9);
      expect(dhi[hour]! + (dni[hour]! * light[hour]!) / lit[hour]!).toBeCloseTo(400, 9);
    }
    expect(ghi[12]).toBe(400);
    expect(year.assumptions.map(({ code }) => code)).toEqual(['air-as-light', 'split-by-erbs']);
  });

  it.each([
    ['NSRDB with fill values', without(nsrdbLines(), 3, [7, 8], '-9999')],
    ['EPW with 9999', without(epwLines(), 8, [15, 16], '9999')],
    ['TMY3 with −9900', without(tmy3Lines(), 2, [4, 5], '-9900')],
    ['plain with empty cells', without(plainLines(), 9, [6, 7], '')],
  ])('%s in both columns all through', (_, text) => {
    const { columns, assumptions } = parseWeather(text);
    expect(assumptions.map(({ code }) => code)).toContain('split-by-erbs');
    expect(columns.ghi.every((value, hour) => columns.dhi[hour]! <= value && columns.dhi[hour]! >= 0)).toBe(true);
  });

  it('an NSRDB download without the columns', () => {
    const lines = nsrdbLines();
    const text = lines.with(2, lines[2]!.replace('DNI,DHI', 'Fill Flag,Cloud Type')).join('\n');
    expect(parseWeather(text).assumptions.map(({ code }) => code)).toContain('split-by-erbs');
  });

  it('diffuse missing: what beam leaves; beam missing: what diffuse leaves', () => {
    const noDiffuse = parseWeather(without(plainLines(), 9, [7], ''));
    expect(noDiffuse.columns.dhi).toEqual(noDiffuse.columns.ghi); // beam is 0 in the sample
    const noBeam = parseWeather(without(plainLines(), 9, [6], ''));
    expect(noBeam.columns.dni.every((value) => value === 0)).toBe(true); // diffuse is global there
    expect(noBeam.assumptions.map(({ code }) => code)).toContain('light-from-closure');
  });

  it('measured diffuse stays as it was where beam is made from it, at low sun too [found by the fuzz]', () => {
    const text = without(plainLines(), 9, [6], '').replaceAll(',100,,100,', ',100,,60,');
    const { dhi } = parseWeather(text).columns;
    expect([...new Set(dhi)].sort((x, y) => x - y)).toEqual([0, 60]);
  });

  it('one missing cell is still a fault, and global all through too', () => {
    expect(faultsOf(spoil(plainLines(), 700, 6, ''))).toMatchObject([{ code: 'missing-value', line: 700 }]);
    expect(faultsOf(without(plainLines(), 9, [5], ''))).toHaveLength(20);
  });
});
