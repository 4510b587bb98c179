import { renderHtml, renderMarkdown, renderText } from '@noonloop/reports';
import { DesignError, defineSystem } from '@noonloop/sim-core';
import { WeatherError } from '@noonloop/weather-io';
import { describe, expect, it } from 'vitest';
import { evenings, parseStation, tubeField } from '../../docs/examples/extension/src/index.ts';
import { inventedValley, plainInput, sum, yearOf } from '../examples.ts';
import { EARLY_SUMMER, liveSpan } from '../property/span.ts';

// Requirement: a format of weather, a kind of collector and a section of the report are added from outside, without a change of the packages.

const weather = await inventedValley();
const { ghi, dhi, dryBulb } = weather.columns;
const { latitude: lat, longitude: lon, elevation: height_m, utcOffset: zone_h } = weather.site;
const log = {
  station: 'invented station',
  place: { lat, lon, height_m, zone_h },
  hourly: { global: [...ghi], diffuse: [...dhi], air: [...dryBulb] },
};

describe('a weather format of an extension [requirement]', () => {
  it('gives the year that it holds, with the beam that the packages make of it', () => {
    const year = parseStation(JSON.stringify(log));
    expect([...year.columns.ghi]).toEqual(log.hourly.global);
    expect([...year.columns.dryBulb]).toEqual(log.hourly.air);
    expect(year.site).toMatchObject({ name: 'invented station', latitude: lat, utcOffset: zone_h });
    expect(year.assumptions.map(({ code }) => code)).toContain('light-from-closure');
    // The beam was there before; made again of what is left, its sum of the year comes back within a few per cent.
    expect(sum(year.columns.dni) / sum(weather.columns.dni)).toBeCloseTo(1, 1);
  });

  it('has the errors of the packages: place, value, what was expected', () => {
    const broken = structuredClone(log);
    broken.hourly.air[100] = 900;
    expect(() => parseStation(JSON.stringify(broken), 'mine.json')).toThrow(/mine\.json, line 102.*900/);
    for (const text of ['', '{}', 'null', '[1]', '{"station":"x"}'])
      expect(() => parseStation(text)).toThrow(WeatherError);
  });
});

describe('a collector of an extension', () => {
  const tubes = { tubes: 30, aperture: 0.1, eta0: 0.62, a1: 1.1, a2: 0.004 };

  it('has the modifiers of its geometry [closed form], and runs ten weeks of summer', () => {
    const { area, incidenceModifier } = tubeField(tubes);
    expect(area).toBeCloseTo(3, 12);
    if (incidenceModifier === undefined || !('transversal' in incidenceModifier)) throw new Error('no tubes');
    const { transversal } = incidenceModifier;
    expect(transversal.values[transversal.angles.indexOf(45)]).toBeCloseTo(Math.SQRT2, 3);
    expect(transversal.values[transversal.angles.indexOf(60)]).toBe(1.5);
    const array = { ...plainInput.array, panels: 1, collector: tubeField(tubes) };
    const { balance, columns } = liveSpan(defineSystem({ ...plainInput, array }), weather, ...EARLY_SUMMER);
    expect(balance.whole.worstRelative).toBeLessThan(1e-9);
    expect(sum(columns.collectorHeat)).toBeGreaterThan(0);
  });

  it('is refused by itself, or by the field of the design that it cannot be [requirement]', () => {
    expect(() => tubeField({ ...tubes, tubes: 0 })).toThrow(RangeError);
    const array = { ...plainInput.array, collector: tubeField({ ...tubes, eta0: 1.4 }) };
    expect(() => defineSystem({ ...plainInput, array })).toThrow(DesignError);
  });
});

describe('a section of an extension [requirement]', () => {
  const run = yearOf(defineSystem(plainInput), weather);

  it('counts evenings, and stands at the end of every report for people', async () => {
    const section = evenings(run);
    const days = section.table!.rows.map(([, , count]) => Number(count));
    expect(days.reduce((sum, count) => sum + count, 0)).toBe(365);
    const [winter, , summer] = section.table!.rows.map(([, count]) => Number(count));
    expect(winter!).toBeLessThan(summer!);
    const options = { ownSections: [section] };
    expect(renderText(run, options)).toMatch(/\nEVENINGS\n[\s\S]*summer +\d+ +92\nautumn +\d+ +91\n$/);
    expect(renderMarkdown(run, options)).toMatch(/## Evenings[\s\S]*\| summer \| \d+ \| 92 \|/);
    expect(await renderHtml(run, { ...options, sections: [] })).toMatch(/<h2 id="evenings">Evenings<\/h2>/);
  });

  it('is plain text wherever it comes from, and whole', async () => {
    const evil = '<img src=x onerror=alert(1)>';
    const ownSections = [{ title: evil, paragraphs: [evil], table: { header: ['a', evil], rows: [[evil, evil]] } }];
    expect(await renderHtml(run, { ownSections, sections: [] })).not.toContain('<img');
    expect(renderMarkdown(run, { ownSections })).not.toContain('<img');
    expect(() => renderText(run, { ownSections: [{ title: ' ' }] })).toThrow(/ownSections\[0\]\.title/);
    const short = { title: 'x', table: { header: ['a', 'b'], rows: [['1']] } };
    expect(() => renderText(run, { ownSections: [short] })).toThrow(/rows\[0\]/);
  });
});
