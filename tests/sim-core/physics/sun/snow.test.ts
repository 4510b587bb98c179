import { describe, expect, it } from 'vitest';
import { albedoColumn, planeOfArray, snowCover } from '../../../../packages/sim-core/src/physics/sun/index.ts';
import { inventedYear } from './weather.ts';

const weather = inventedYear(8, 15, 500, 100);
const sum = (column: Float64Array): number => column.reduce((total, value) => total + value, 0);

describe('albedoColumn', () => {
  const { columns } = weather;
  const deep = { ...columns, snowDepth: Float64Array.from({ length: 8760 }, (_, hour) => (hour < 100 ? 0.02 : 0)) };

  it('is none where one value holds all year [requirement]', () => {
    expect(albedoColumn(columns, 0.2, 0.6)).toBeNull();
    expect(albedoColumn(deep, 0.2, null)).toBeNull();
  });

  it('follows the months, and snow by its depth up to 5 cm [arithmetic]', () => {
    const months = [0.5, 0.4, 0.3, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2, 0.3, 0.4];
    const albedo = albedoColumn(deep, months, 0.7)!;
    expect(albedo[99]).toBeCloseTo(0.5 + 0.2 * 0.4, 12);
    expect(albedo[100]).toBe(0.5);
    expect([albedo[743], albedo[744], albedo[8759]]).toEqual([0.5, 0.4, 0.4]);
  });

  it('gives way to the weather’s own [requirement]', () => {
    const own = new Float64Array(8760).fill(0.33);
    expect(albedoColumn({ ...deep, albedo: own }, 0.2, 0.6)).toBe(own);
  });

  it('raises the light from the ground [requirement]', () => {
    const plane = { tilt: 60, azimuth: 180 };
    const snowy = { ...weather, columns: { ...columns, snowDepth: new Float64Array(8760).fill(0.3) } };
    const ratio =
      sum(planeOfArray(snowy, { ...plane, snowAlbedo: 0.6 }).ground) / sum(planeOfArray(weather, plane).ground);
    expect(ratio).toBeCloseTo(3, 9);
  });
});

describe('snowCover', () => {
  const hours = (values: number[]) => Float64Array.from(values);

  it('covers by a fall of 1 cm, holds in the cold, slides by 0.197 sin β in an hour when warm [Marion et al. 2013]', () => {
    const depth = hours([0, 0.005, 0.02, 0.02, 0.02, 0.02, 0.02]);
    const air = hours([-5, -5, -5, -5, -2, 1, 1]);
    const light = hours([0, 0, 0, 100, 400, 0, 0]); // −2 °C > −400/80 °C: slides; −5 °C is not above −100/80 °C
    const slide = 0.197 * Math.sin((30 * Math.PI) / 180);
    const cover = snowCover(depth, air, light, 30, 'plate');
    [0, 0, 1, 1, 1 - slide, 1 - 2 * slide, 1 - 3 * slide].forEach((expected, hour) => {
      expect(cover[hour]).toBeCloseTo(expected, 12);
    });
  });

  it('stays on tubes five times as long, and clears with the ground [judgement]', () => {
    const depth = hours([0, 0.1, 0.1, 0]);
    const warm = hours([2, 2, 2, 2]);
    const dark = hours([0, 0, 0, 0]);
    const plate = snowCover(depth, warm, dark, 45, 'plate');
    const tubes = snowCover(depth, warm, dark, 45, 'tubes');
    expect((1 - plate[2]!) / (1 - tubes[2]!)).toBeCloseTo(5, 9);
    expect(tubes[3]).toBe(0);
  });
});
