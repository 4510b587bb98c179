import { describe, expect, it } from 'vitest';
import { horizonAltitude, planeOfArray, visibleSky } from '../../../../packages/sim-core/src/physics/sun/index.ts';
import { compileObstacle, hiddenShare } from '../../../../packages/sim-core/src/physics/sun/shade/obstacle.ts';
import { inventedYear } from './weather.ts';

const RADIANS = Math.PI / 180;
const extent = { width: 2, slopeLength: 2 };
const sum = (column: Float64Array): number => column.reduce((total, value) => total + value, 0);
const level = (altitude: number) => [{ azimuth: 0, altitude }];

describe('horizonAltitude', () => {
  const hills = [
    { azimuth: 90, altitude: 10 },
    { azimuth: 180, altitude: 30 },
    { azimuth: 270, altitude: 0 },
  ];

  it('is linear between its points and round the north [arithmetic]', () => {
    expect(horizonAltitude(hills, 90)).toBe(10);
    expect(horizonAltitude(hills, 135)).toBeCloseTo(20, 12);
    expect(horizonAltitude(hills, 0)).toBeCloseTo(5, 12);
    expect(horizonAltitude(hills, 315)).toBeCloseTo(2.5, 12);
    expect(horizonAltitude(level(7), 123)).toBe(7);
  });

  it('refuses points out of order [requirement]', () => {
    expect(() => horizonAltitude([...hills].reverse(), 0)).toThrow(/rising azimuth/);
  });
});

describe('visibleSky', () => {
  it.each([0, 5, 20.5, 45])('of a level plane within a horizon of %f° all round is cos² [closed form]', (altitude) => {
    const seen = visibleSky({ tilt: 0, azimuth: 0 }, { horizon: level(altitude), obstacle: null, extent });
    expect(Math.abs(seen - Math.cos(altitude * RADIANS) ** 2)).toBeLessThan(2e-4);
  });

  it.each([10, 30])('of an upright plane within %f° all round is 1 − (2h + sin 2h)/π [closed form]', (altitude) => {
    const seen = visibleSky({ tilt: 90, azimuth: 200 }, { horizon: level(altitude), obstacle: null, extent });
    const h = altitude * RADIANS;
    expect(Math.abs(seen - (1 - (2 * h + Math.sin(2 * h)) / Math.PI))).toBeLessThan(2e-4);
  });

  it.each([
    [45, 20],
    [20, 35],
    [90, 15],
  ])('of a plane at %f° behind an endless wall of %f° is (1 + cos(β + γ))/(1 + cos β) [closed form]', (tilt, angle) => {
    // A short array far from a wall sees all of it under one angle.
    const obstacle = { distance: 100, height: 100 * Math.tan(angle * RADIANS), width: 1e5, azimuth: 180 };
    const shading = { horizon: null, obstacle, extent: { width: 0.1, slopeLength: 0.1 } };
    const expected = (1 + Math.cos((tilt + angle) * RADIANS)) / (1 + Math.cos(tilt * RADIANS));
    expect(Math.abs(visibleSky({ tilt, azimuth: 180 }, shading) - expected)).toBeLessThan(3e-3);
  });
});

/** Unit vector to a sun at an altitude and azimuth. */
const sunAt = (altitude: number, azimuth: number): [number, number, number] => [
  Math.cos(altitude * RADIANS) * Math.sin(azimuth * RADIANS),
  Math.cos(altitude * RADIANS) * Math.cos(azimuth * RADIANS),
  Math.sin(altitude * RADIANS),
];

describe('hiddenShare', () => {
  const plane = { tilt: 45, azimuth: 180 };
  const wall = compileObstacle({ distance: 3, height: 2, width: 1000, azimuth: 180 }, plane, extent);

  it.each([5, 15, 20, 25, 30, 33])(
    'of a wide wall with the sun at %f° is where its shadow ends up the slope [geometry]',
    (altitude) => {
      const tan = Math.tan(altitude * RADIANS);
      const edge = (2 - 3 * tan) / (Math.SQRT1_2 * (1 + tan));
      expect(hiddenShare(wall, ...sunAt(altitude, 180))).toBeCloseTo(Math.min(Math.max(edge / 2, 0), 1), 9);
    },
  );

  it('of a high chimney 0.5 m wide square before an array of 2 m is a quarter [geometry]', () => {
    const chimney = compileObstacle({ distance: 3, height: 50, width: 0.5, azimuth: 180 }, plane, extent);
    expect(hiddenShare(chimney, ...sunAt(20, 180))).toBeCloseTo(0.25, 9);
    // From the side the strip leans: with the sun 10° west of it, it moves along by (3 + s cos β) tan 10°, all within ±1 m.
    expect(hiddenShare(chimney, ...sunAt(20, 188))).toBeCloseTo(0.25, 9);
    expect(hiddenShare(chimney, ...sunAt(20, 240))).toBe(0);
    expect(hiddenShare(chimney, ...sunAt(20, 0))).toBe(0);
  });

  it('agrees with rays from a grid of points, sun and obstacle anywhere [counting, 200 × 200]', () => {
    const cases = [
      [{ distance: 2, height: 1.5, width: 1.2, azimuth: 150 }, { tilt: 35, azimuth: 190 }, 25, 165],
      [{ distance: 1, height: 3, width: 4, azimuth: 240 }, { tilt: 60, azimuth: 180 }, 40, 215],
      [{ distance: 4, height: 2.5, width: 3, azimuth: 100 }, { tilt: 20, azimuth: 140 }, 18, 95],
    ] as const;
    for (const [obstacle, slope, altitude, azimuth] of cases) {
      const sun = sunAt(altitude, azimuth);
      const to = [Math.sin(obstacle.azimuth * RADIANS), Math.cos(obstacle.azimuth * RADIANS)] as const;
      const facing = [Math.sin(slope.azimuth * RADIANS), Math.cos(slope.azimuth * RADIANS)] as const;
      let hidden = 0;
      for (let i = 0; i < 200; i++) {
        for (let j = 0; j < 200; j++) {
          const w = ((i + 0.5) / 200 - 0.5) * extent.width;
          const s = ((j + 0.5) / 200) * extent.slopeLength;
          const back = s * Math.cos(slope.tilt * RADIANS);
          const east = w * facing[1] - back * facing[0];
          const north = -w * facing[0] - back * facing[1];
          const t = (obstacle.distance - east * to[0] - north * to[1]) / (sun[0] * to[0] + sun[1] * to[1]);
          const along = (east + t * sun[0]) * to[1] - (north + t * sun[1]) * to[0];
          const height = s * Math.sin(slope.tilt * RADIANS) + t * sun[2];
          if (t >= 0 && Math.abs(along) <= obstacle.width / 2 && height <= obstacle.height) hidden++;
        }
      }
      const share = hiddenShare(compileObstacle(obstacle, slope, extent), ...sun);
      expect(Math.abs(share - hidden / 40_000)).toBeLessThan(0.01);
      expect(share).toBeGreaterThan(0.02);
      expect(share).toBeLessThan(0.98);
    }
  });
});

describe('planeOfArray with shade', () => {
  const weather = inventedYear(5, 18, 500, 100);
  const plane = { tilt: 45, azimuth: 180, albedo: 0.3 };
  const open = planeOfArray(weather, plane);
  const behind = (horizon: readonly { azimuth: number; altitude: number }[]) =>
    planeOfArray(weather, { ...plane, shading: { horizon, obstacle: null, extent } });

  it('a flat horizon changes nothing [definition]', () => {
    const flat = behind(level(0));
    expect(sum(flat.total) / sum(open.total)).toBeCloseTo(1, 12);
  });

  it('a hill in the east takes the morning’s beam and nothing of the afternoon’s [definition]', () => {
    const east = behind([
      { azimuth: 0, altitude: 0 },
      { azimuth: 60, altitude: 89 },
      { azimuth: 120, altitude: 89 },
      { azimuth: 179, altitude: 0 },
    ]);
    const half = (column: Float64Array, from: number, to: number) =>
      sum(column.filter((_, step) => step % 144 >= from * 6 && step % 144 < to * 6));
    expect(half(east.beam, 0, 9)).toBeLessThan(0.2 * half(open.beam, 0, 9));
    expect(half(east.beam, 13, 24)).toBe(half(open.beam, 13, 24));
    expect(sum(east.ground)).toBeLessThan(sum(open.ground));
  });

  it('walled in by 90° there is no light [requirement]', () => {
    const well = behind(level(90));
    expect(sum(well.beam) + sum(well.circumsolar)).toBe(0);
    expect(sum(well.total)).toBeLessThan(0.02 * sum(open.total)); // the invented GHI is not DNI cos Z + DHI
  });
});
