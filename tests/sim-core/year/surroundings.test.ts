import { defineSystem, type SystemInput, simulate } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { assemble } from '../../../packages/sim-core/src/year/machine.ts';
import { inventedValley, plainInput, sum } from '../../examples.ts';
import { liveSpan } from '../../property/span.ts';

const weather = await inventedValley();
const design = (array: object) =>
  defineSystem({ ...plainInput, array: { ...plainInput.array, ...array } } as SystemInput);
/** Light of the year as the run meets it, half hour by half hour. */
const driven = (array: object, from = weather) => assemble(design(array), from, { stepsPerHour: 2 }).drivers;
const light = (array: object) => sum(driven(array).irradiance);
const hours = (last: number) => 2 * last;

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
    const codes = ({ arrayAssumptions }: ReturnType<typeof driven>) => arrayAssumptions.map(({ code }) => code);
    const own = driven({}, bright);
    expect(codes(own)).toContain('albedo-of-weather');
    expect(sum(driven({ groundAlbedo: 0 }, bright).irradiance)).toBe(sum(own.irradiance));
    expect(sum(own.irradiance)).toBeGreaterThan(light({}));
    expect(codes(driven({}))).not.toContain('albedo-of-weather');
  });

  it('horizon shades collectors and module, an obstacle the collectors alone [requirement]', () => {
    const weeks = (array: object) => liveSpan(design(array), weather, 500, 500 + 28 * 24);
    const open = weeks({}).columns;
    const hilly = weeks({ horizon: [{ azimuth: 0, altitude: 15 }] }).columns;
    expect(sum(hilly.irradiance)).toBeLessThan(0.99 * sum(open.irradiance));
    expect(sum(hilly.pvIrradiance)).toBeLessThan(0.99 * sum(open.pvIrradiance));
    const walled = weeks({ obstacle: { distance: 3, width: 10, height: 2, azimuth: 180 } });
    expect(sum(walled.columns.irradiance)).toBeLessThan(0.95 * sum(open.irradiance));
    expect(sum(walled.columns.pvIrradiance) / sum(open.pvIrradiance)).toBeCloseTo(1, 12);
    expect(walled.balance.whole.worstRelative).toBeLessThan(1e-9);
  });

  it('snow on the panels takes winter’s light, longer from tubes; without a depth in the weather the run says so [direction that physics demands]', () => {
    const snowDepth = weather.columns.dryBulb.map((_, hour) => (hour < 1000 && hour % 120 > 40 ? 0.1 : 0));
    const snowy = { ...weather, columns: { ...weather.columns, snowDepth } };
    const winter = (array: object) => sum(driven(array, snowy).irradiance.slice(0, hours(1000)));
    const bare = winter({ snowAlbedo: null });
    const plate = winter({ snowAlbedo: null, snowOnPanels: 'plate' });
    const tubes = winter({ snowAlbedo: null, snowOnPanels: 'tubes' });
    expect(plate).toBeLessThan(bare);
    expect(tubes).toBeLessThan(plate);
    expect(winter({ snowAlbedo: 0.8 })).toBeGreaterThan(bare);
    expect(simulate(design({ snowOnPanels: 'tubes' }), weather, { stepsPerHour: 1 }).assumptions[0]).toEqual({
      code: 'no-snow-depth',
      facts: {},
    });
  });

  it('twelve reflectances act by month [requirement]', () => {
    const months = [0.6, 0.6, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2];
    const { irradiance } = driven({ groundAlbedo: months, tilt: 60 });
    const plain = driven({ tilt: 60 }).irradiance;
    const march = hours(1416);
    expect(sum(irradiance.slice(0, march))).toBeGreaterThan(sum(plain.slice(0, march)));
    expect(sum(irradiance.slice(march)) / sum(plain.slice(march))).toBeCloseTo(1, 12);
  });
});
