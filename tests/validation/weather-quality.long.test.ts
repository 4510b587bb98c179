import { checkWeather, type QualityReport, type WeatherColumns, type WeatherYear } from '@noonloop/weather-io';
import { describe, expect, it } from 'vitest';
import { hasRealFiles, REAL_NAMES, readReal } from '../weather-io/real-files.ts';

/** The year with its light columns changed. */
function plant(
  year: WeatherYear,
  change: (columns: Record<'ghi' | 'dni' | 'dhi' | 'dryBulb', Float64Array>) => void,
): WeatherYear {
  const { ghi, dni, dhi, dryBulb } = year.columns;
  const columns = { ghi: ghi.slice(), dni: dni.slice(), dhi: dhi.slice(), dryBulb: dryBulb.slice() };
  change(columns);
  return { ...year, columns: { ...year.columns, ...columns } as WeatherColumns };
}

/** The year with all columns moved later by whole hours. */
const rolled = (year: WeatherYear, hours: number): WeatherYear =>
  plant(year, (columns) => {
    for (const values of Object.values(columns))
      values.set(values.map((_, hour) => values[(hour - hours + 8760) % 8760]!));
  });

const atSite = (year: WeatherYear, change: Partial<WeatherYear['site']>): WeatherYear => ({
  ...year,
  site: { ...year.site, ...change },
});

const codes = (report: QualityReport): string[] => report.findings.map(({ code }) => code);

/** Distance on the circle of 24 h. */
const apart = (a: number, b: number): number => Math.abs(((((a - b + 12) % 24) + 24) % 24) - 12);

describe.skipIf(!hasRealFiles).each(REAL_NAMES)('%s', (name) => {
  it('as it is: the clock is right within 0.1 h, by symmetry and by closure [SPA closure, independent]', async () => {
    const { clock, findings } = checkWeather(await readReal(name));
    if (process.env.SHOW !== undefined)
      console.log(
        name,
        clock,
        findings.map(({ text }) => text),
      );
    expect(Math.abs(clock.late!)).toBeLessThan(0.1);
    expect([clock.lateByClosure, clock.causes]).toEqual([0, []]);
    expect(findings.map(({ code }) => code)).not.toContain('clock');
  });

  it.each([
    [0.5, 'half an hour off'],
    [-0.5, 'half an hour off'],
  ])('light that stands %f h later than it should [planted]', async (late, cause) => {
    const year = await readReal(name);
    const report = checkWeather({ ...year, irradianceMidpoint: year.irradianceMidpoint + late });
    expect(apart(report.clock.late!, late)).toBeLessThan(0.1);
    expect(report.clock.lateByClosure).toBe(late);
    expect(report.clock.causes[0]).toContain(cause);
    expect(codes(report)).toContain('clock');
  });

  it.each([1, -1])('rows moved by %d h: an hour, or the zone [planted]', async (hours) => {
    const { clock } = checkWeather(rolled(await readReal(name), hours));
    expect(apart(clock.late!, hours)).toBeLessThan(0.1);
    expect(clock.lateByClosure).toBe(hours);
    expect(clock.causes.join()).toContain('an hour off');
    expect(clock.causes.join()).toContain('a wrong time zone');
  });

  it.each([-3, 4, 9])('a zone that is %d h off is named right [planted]', async (wrong) => {
    const year = await readReal(name);
    const right = year.site.utcOffset;
    const utcOffset = right + wrong > 14 || right + wrong < -12 ? right - wrong : right + wrong;
    const { clock } = checkWeather(atSite(year, { utcOffset }));
    const sign = right < 0 ? '' : '+';
    expect(apart(clock.late!, right - utcOffset)).toBeLessThan(0.15);
    expect(clock.causes.join()).toContain(`UTC${sign}${right} would fit`);
  });

  it('a longitude of the wrong sign [planted]', async () => {
    const year = await readReal(name);
    const { clock } = checkWeather(atSite(year, { longitude: -year.site.longitude }));
    expect(clock.causes[0]).toContain('a longitude of the wrong sign');
  });

  it('a latitude of the wrong sign [planted]', async () => {
    const year = await readReal(name);
    expect(codes(checkWeather(year))).not.toContain('hemisphere');
    const report = checkWeather(atSite(year, { latitude: -year.site.latitude }));
    expect(report.findings.find(({ code }) => code === 'hemisphere')!.text).toContain(
      `latitude ${year.site.latitude}°`,
    );
  });

  it('a stuck pyranometer, a copied day, a lamp at night, beam without closure, more than the top of the air [planted]', async () => {
    const year = await readReal(name);
    const june = 170 * 24;
    const report = checkWeather(
      plant(year, ({ ghi, dni, dhi, dryBulb }) => {
        ghi.fill(437, june + 9, june + 15);
        for (const values of [ghi, dni, dhi, dryBulb]) values.copyWithin(200 * 24, 201 * 24, 202 * 24);
        ghi[20 * 24 + 1] = 30;
        dni[210 * 24 + 12] = dni[210 * 24 + 12]! + 400;
        dhi[220 * 24 + 12] = 1300;
      }),
    );
    const rows = (code: string) =>
      report.findings.filter((found) => found.code === code).flatMap(({ worst }) => worst.map(({ hour }) => hour));
    expect(rows('stuck')).toContain(june + 9);
    expect(rows('repeated-day')).toContain(201 * 24);
    expect(rows('light-at-night')).toContain(20 * 24 + 1);
    expect(rows('closure')).toContain(210 * 24 + 12);
    expect(rows('beyond-possible')).toContain(220 * 24 + 12);
    expect(rows('diffuse-above-global')).toContain(220 * 24 + 12);
    expect(report.marks[220 * 24 + 12]).toBe(2);
  });
});
