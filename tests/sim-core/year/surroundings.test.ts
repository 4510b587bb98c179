import { defineSystem, type SystemInput } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { inventedValley, plainInput, sum, yearOf } from '../../examples.ts';

const weather = await inventedValley();
const year = (array: object, from = weather) =>
  yearOf(defineSystem({ ...plainInput, array: { ...plainInput.array, ...array } } as SystemInput), from);
const light = (array: object) => sum(year(array).columns.irradiance);

describe('sky and surroundings in the run', () => {
  it('the sky model is chosen in the design: isotropic gives 3 to 8 percent less than Perez, Hay-Davies between [direction that physics demands]', () => {
    const perez = light({});
    const [hayDavies, isotropic] = [light({ skyModel: 'hay-davies' }), light({ skyModel: 'isotropic' })];
    expect(isotropic / perez).toBeGreaterThan(0.92);
    expect(isotropic / perez).toBeLessThan(0.97);
    expect(hayDavies).toBeGreaterThan(isotropic);
    expect(hayDavies).toBeLessThan(perez);
    // What older designs say is read as what it means.
    expect(defineSystem({ ...plainInput, array: { ...plainInput.array, skyModel: 'haydavies' } }).array.skyModel).toBe(
      'hay-davies',
    );
  });

  it('a reflectance in the weather goes before the design’s, and the run says so [requirement]', () => {
    const bright = { ...weather, columns: { ...weather.columns, albedo: new Float64Array(8760).fill(0.6) } };
    const codes = (run: ReturnType<typeof year>) => run.assumptions.map(({ code }) => code);
    const own = year({}, bright);
    expect(codes(own)).toContain('albedo-of-weather');
    expect(sum(year({ groundAlbedo: 0 }, bright).columns.irradiance)).toBe(sum(own.columns.irradiance));
    expect(sum(own.columns.irradiance)).toBeGreaterThan(light({}));
    expect(codes(year({}))).not.toContain('albedo-of-weather');
  });

  it('horizon shades collectors and module, an obstacle the collectors alone [requirement]', () => {
    const open = year({}).columns;
    const hilly = year({ horizon: [{ azimuth: 0, altitude: 15 }] }).columns;
    expect(sum(hilly.irradiance)).toBeLessThan(0.99 * sum(open.irradiance));
    expect(sum(hilly.pvIrradiance)).toBeLessThan(0.99 * sum(open.pvIrradiance));
    const walled = year({ obstacle: { distance: 3, width: 10, height: 2, azimuth: 180 } });
    expect(sum(walled.columns.irradiance)).toBeLessThan(0.95 * sum(open.irradiance));
    expect(sum(walled.columns.pvIrradiance) / sum(open.pvIrradiance)).toBeCloseTo(1, 12);
    expect(walled.balance.whole.worstRelative).toBeLessThan(1e-9);
  });

  it('snow on the panels takes winter’s light, longer from tubes; without a depth in the weather the run says so [direction that physics demands]', () => {
    const snowDepth = weather.columns.dryBulb.map((_, hour) => (hour < 1000 && hour % 120 > 40 ? 0.1 : 0));
    const snowy = { ...weather, columns: { ...weather.columns, snowDepth } };
    const winter = (result: ReturnType<typeof year>) => sum(result.columns.irradiance.slice(0, 1000));
    const bare = winter(year({ snowAlbedo: null }, snowy));
    const plate = winter(year({ snowAlbedo: null, snowOnPanels: 'plate' }, snowy));
    const tubes = winter(year({ snowAlbedo: null, snowOnPanels: 'tubes' }, snowy));
    expect(plate).toBeLessThan(bare);
    expect(tubes).toBeLessThan(plate);
    expect(winter(year({ snowAlbedo: 0.8 }, snowy))).toBeGreaterThan(bare);
    expect(year({ snowOnPanels: 'tubes' }).assumptions[0]).toEqual({ code: 'no-snow-depth', facts: {} });
  });

  it('twelve reflectances act by month [requirement]', () => {
    const months = [0.6, 0.6, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2];
    const { irradiance } = year({ groundAlbedo: months, tilt: 60 }).columns;
    const plain = year({ tilt: 60 }).columns.irradiance;
    expect(sum(irradiance.slice(0, 1416))).toBeGreaterThan(sum(plain.slice(0, 1416)));
    expect(sum(irradiance.slice(1416)) / sum(plain.slice(1416))).toBeCloseTo(1, 12);
  });
});
