import { DesignError, defineSystem, simulate } from '@noonloop/sim-core';
import { planeOfArray } from '@noonloop/sim-core/formulas';
import { type FineLight, parseWeather, type WeatherYear } from '@noonloop/weather-io';
import { describe, expect, it } from 'vitest';
import { inventedValley, yearOf as keptYear, plainInput, sum } from '../examples.ts';
import { litWithin, liveSpan } from '../property/span.ts';
import { hasMoreCases, moreCases } from './more-cases.ts';
import { number } from './reference-table.ts';
import { HOURS, rows, STEPS, stepOf, yearOf } from './subhourly.ts';

const relative = (found: number, expected: number) => Math.abs(found / expected - 1);
const planeRows = (sky: string, tilt: number) => rows.filter((row) => row.sky === sky && row.tilt_deg === tilt);

describe.skipIf(!hasMoreCases)('light on a plane at steps of 10 minutes [pvlib by SPA, shared subhourly.csv]', () => {
  const cases = rows.length === 0 ? [] : [...new Set(rows.map((row) => `${row.sky} ${row.tilt_deg}`))];
  it.each(cases)('%s°: each part within 0.5 W/m² where the sun is above 5°', (name) => {
    const [sky, tilt] = name.split(' ') as [string, string];
    const list = planeRows(sky, Number(tilt));
    const weather = yearOf(sky, true);
    const plane = { tilt: Number(tilt), azimuth: number(list[0]!, 'surface_azimuth_deg'), albedo: 0.2 };
    const light = planeOfArray(weather, plane);
    expect(light.stepsPerHour).toBe(STEPS);
    for (const row of list) {
      if (number(row, 'zenith_deg') > 85) continue;
      const at = stepOf(row, weather.site.utcOffset);
      expect(Math.abs(light.beam[at]! - number(row, 'beam_W_m2'))).toBeLessThan(0.5);
      expect(Math.abs(light.ground[at]! - number(row, 'ground_W_m2'))).toBeLessThan(0.5);
      expect(Math.abs(light.circumsolar[at]! + light.sky[at]! - number(row, 'sky_perez_W_m2'))).toBeLessThan(0.5);
    }
  });

  interface Energies {
    readonly day: string;
    readonly sky: string;
    readonly tilt_deg: number;
    readonly azimuth_deg: number;
    readonly plane_kWh_m2: number;
  }
  it.each(moreCases<Energies>('subhourly', 'energies').filter((_, index) => index % 2 === 0))(
    'day sum $day $sky $tilt_deg°, within 0.1 %; by hours first it may be several off',
    ({ azimuth_deg, day, plane_kWh_m2, sky, tilt_deg }) => {
      const weather = yearOf(sky, true);
      const plane = { tilt: tilt_deg, azimuth: azimuth_deg, albedo: 0.2 };
      const start = stepOf({ time_utc: `${day}T12:00:00Z` }, 0) - 12 * STEPS;
      const ofDay = (year: WeatherYear) => {
        const { total } = planeOfArray(year, plane);
        return sum(total.subarray(start, start + 24 * STEPS)) / STEPS / 1000;
      };
      expect(relative(ofDay(weather), plane_kWh_m2)).toBeLessThan(0.001);
      if (sky === 'broken') expect(relative(ofDay(yearOf(sky, false)), plane_kWh_m2)).toBeGreaterThan(0.002);
    },
  );
});

/** The invented valley with its light cut into steps: even where `wave` is 0, else swinging about the hour's mean. */
function cut(weather: WeatherYear, stepsPerHour: number, wave: number): WeatherYear {
  const spread = (column: Float64Array) =>
    new Float64Array(HOURS * stepsPerHour).map((_, step) => {
      const swing = 1 + wave * (step % 2 === 0 ? 1 : -1);
      return column[Math.trunc(step / stepsPerHour)]! * swing;
    });
  const { ghi, dni, dhi } = weather.columns;
  const fineLight: FineLight = { stepsPerHour, midpoint: 0.5, ghi: spread(ghi), dni: spread(dni), dhi: spread(dhi) };
  return { ...weather, fineLight };
}

describe('a year at its own step [requirement]', async () => {
  const weather = await inventedValley();
  const design = defineSystem(plainInput);
  const plain = keptYear(design, weather);
  const year = (given: WeatherYear, options = {}) => simulate(design, given, options);
  const even = cut(weather, 4, 0);

  it('of even light is nearly that of hours; of a swinging one less is delivered by hours than comes [threshold of the pump]', () => {
    // Four weeks of spring, with light in them alone.
    const [from, to] = [60 * 24, 88 * 24];
    const lit = litWithin(weather, from, to);
    const weeks = (given: WeatherYear) => liveSpan(design, given, from, to);
    const whole = weeks(lit);
    const hourly = sum(whole.columns.solarHeat);
    expect(relative(sum(weeks(cut(lit, 4, 0)).columns.solarHeat), hourly)).toBeLessThan(0.01);
    const swinging = weeks(cut(lit, 4, 0.9));
    expect(swinging.stepsPerHour).toBe(8);
    expect(relative(sum(swinging.columns.irradiance), sum(whole.columns.irradiance))).toBeLessThan(0.05);
    expect(relative(sum(swinging.columns.solarHeat), hourly)).toBeGreaterThan(0.001);
    expect(swinging.balance.whole.worstRelative).toBeLessThan(1e-6);
  });

  it('refuses steps that do not fit, and light that is not whole', () => {
    expect(() => year(even, { stepsPerHour: 6 })).toThrow(DesignError);
    const { fineLight } = even;
    expect(() => year({ ...weather, fineLight: { ...fineLight!, dni: new Float64Array(8760) } })).toThrow(
      /fineLight\.dni/,
    );
    expect(() => year({ ...weather, fineLight: { ...fineLight!, stepsPerHour: 7 } })).toThrow(/stepsPerHour/);
  });

  it('keeps the steps of some days: their sums and means are those of the hours, to rounding', () => {
    const run = year(weather, { stepDays: '06-20..06-22' });
    expect(run.columns).toEqual(plain.columns);
    const { columns, firstHour, hours, stepsPerHour } = run.steps!;
    expect([firstHour, hours, stepsPerHour, columns.coilHeat.length]).toEqual([170 * 24, 72, 6, 432]);
    for (let hour = 0; hour < hours; hour++) {
      const rowsOf = (column: Float64Array) => column.subarray(hour * stepsPerHour, (hour + 1) * stepsPerHour);
      for (const key of ['coilHeat', 'solarHeat', 'tankLoss', 'tapHeat', 'heaterHeat', 'collectorHeat'] as const)
        expect(Math.abs(sum(rowsOf(columns[key])) - run.columns[key][firstHour + hour]!)).toBeLessThan(1e-3);
      for (const key of ['irradiance', 'loopFlow', 'pumpRunning'] as const)
        expect(sum(rowsOf(columns[key])) / stepsPerHour).toBeCloseTo(run.columns[key][firstHour + hour]!, 9);
      expect(rowsOf(columns.tankTopTemperature).at(-1)).toBe(run.columns.tankTopTemperature[firstHour + hour]);
    }
    const midday = columns.irradiance.subarray(12 * 6, 13 * 6);
    expect(new Set(midday).size).toBe(6);
  });

  it.each(['06-22..06-20', '20 June', '02-30..03-01'])('refuses the days "%s"', (stepDays) => {
    expect(() => year(weather, { stepDays })).toThrow(/stepDays/);
  });
});

describe('reading light at the file’s own step [requirement]', () => {
  const site = { name: 'invented', latitude: 40, longitude: -105, elevation: 1600, utcOffset: -7 };
  const minutes = 30;
  /** A year of rows, light by the row's number in the hour; stamps at the start of their interval. */
  function text(columns: (row: number) => string, header: string): string {
    const lines = [`time,${header},air`];
    for (let row = 0; row < (HOURS * 60) / minutes; row++) {
      const stamp = new Date(Date.UTC(2023, 0, 1) + row * minutes * 60_000).toISOString().slice(0, 16);
      lines.push(`${stamp},${columns(row)},${row % 2}`);
    }
    return lines.join('\n');
  }
  const lit = (row: number) => (Math.trunc(row / 2) % 24 === 12 ? 100 + 50 * (row % 2) : 0);
  const plain = (all: boolean) => ({
    site,
    columns: {
      ghi: { column: 'ghi', unit: 'W/m2' as const },
      dryBulb: { column: 'air', unit: 'degC' as const },
      ...(all && { dni: { column: 'dni', unit: 'W/m2' as const }, dhi: { column: 'dhi', unit: 'W/m2' as const } }),
    },
    time: { timestamp: 'time' },
  });

  const whole = text((row) => `${lit(row)},${lit(row)},${lit(row) / 2}`, 'ghi,dni,dhi');
  it('keeps rows of 30 minutes as they are; the hours beside them are what they were', () => {
    const hourly = parseWeather(whole, { plain: { ...plain(true), stamps: 'start' } });
    const own = parseWeather(whole, { plain: { ...plain(true), stamps: 'start' }, ownStep: true });
    expect(hourly.fineLight).toBeUndefined();
    expect(own.columns).toEqual(hourly.columns);
    expect(own.fineLight).toMatchObject({ stepsPerHour: 2, midpoint: 0.5 });
    expect([...own.fineLight!.dni.subarray(23, 27)]).toEqual([0, 100, 150, 0]);
    expect(own.columns.dni[12]).toBe(125);
    expect(own.assumptions.map(({ code }) => code)).toContain('own-step');
  });

  it('instants stand at the edge of their step, in another zone the rows move by steps', () => {
    const instants = parseWeather(whole, { plain: { ...plain(true), stamps: 'instant' }, ownStep: true });
    expect(instants.fineLight).toMatchObject({ stepsPerHour: 2, midpoint: 0 });
    const half = parseWeather(whole, { plain: { ...plain(true), stamps: 'start' }, ownStep: true, utcOffset: -6.5 });
    expect([...half.fineLight!.dni.subarray(24, 28)]).toEqual([0, 100, 150, 0]);
  });

  it('global light alone takes the shares of its hour', () => {
    const given = text((row) => String(lit(row)), 'ghi');
    const { columns, fineLight } = parseWeather(given, { plain: { ...plain(false), stamps: 'start' }, ownStep: true });
    for (let step = 24; step < 26; step++)
      expect(fineLight!.dhi[step]!).toBeCloseTo((fineLight!.ghi[step]! * columns.dhi[12]!) / columns.ghi[12]!, 9);
  });
});
