/** Random collectors, planes and groups of them. */
import fc from 'fast-check';
import { days, number, seldom } from './number.ts';

const angles = [0, 30, 60, 80];
const tubes = {
  transversal: { angles, values: [1, 1.2, 1.4, 0.8] },
  longitudinal: { angles, values: [1, 0.98, 0.9, 0.5] },
  tubes: 'upright',
};
const glass = fc.record({
  covers: fc.constantFrom(1, 2),
  refractiveIndex: number(1.3, 1.9),
  extinction: number(0, 40),
  thickness: number(0, 0.006),
});

/** Collectors, half of them glazed, whose losses hold the radiation that their share of the sky asks for. */
const collectors = fc
  .record({
    area: number(0.5, 5),
    eta0: number(0.4, 0.85),
    a1: number(0.8, 12),
    a2: number(0, 0.03),
    heatCapacity: number(2000, 30_000),
    incidenceModifier: fc.oneof(fc.constantFrom<object>({ b0: 0.1 }, tubes), glass),
    a3: number(0, 0.2),
    a4: fc.constantFrom(undefined, 0, 0.8),
    a6: number(0, 0.05),
    a7: number(0, 0.02),
    glazed: fc.boolean(),
    skyCoefficient: fc.constantFrom(undefined, 0, 0.3, 1),
  })
  .map(({ a7, skyCoefficient, ...collector }) => {
    const { a1, a3, a4, eta0, glazed } = collector;
    const wind = a4 === undefined ? {} : { a7 };
    const ofSky = a4 === undefined && glazed && skyCoefficient !== undefined ? { skyCoefficient } : {};
    const share = (a4 ?? (glazed ? (skyCoefficient ?? 0) : eta0)) + 3 * (a4 === undefined ? 0 : a7);
    return { ...collector, ...wind, ...ofSky, a1: Math.max(a1, 5.5 * share + 3 * a3, 3 * a3 + 0.2) };
  });

const hills = [
  { azimuth: 30, altitude: 4 },
  { azimuth: 110, altitude: 22 },
  { azimuth: 200, altitude: 8 },
];

const obstacles = fc.record({
  distance: number(0.3, 10),
  width: number(0.3, 20),
  height: number(0.3, 8),
  azimuth: number(0, 360),
});

/** Rows of equal length. */
const rowed = <T extends { rows: number; inSeries: number }>({ rows, ...of }: T) => ({
  ...of,
  panels: rows * of.inSeries,
});

/** Further groups: beside the array or behind it, of its kind or their own, whole, under a tree or broken. */
const groups = fc
  .array(
    fc
      .record({
        rows: fc.integer({ min: 1, max: 3 }),
        inSeries: fc.integer({ min: 1, max: 2 }),
        behind: fc.boolean(),
        tilt: fc.option(number(0, 90), { nil: undefined }),
        azimuth: fc.option(number(0, 360), { nil: undefined }),
        lightShare: fc.constantFrom(1, 1, 0.3, 0),
        obstacle: seldom(obstacles),
        // With sizes of its own the light past something near is that of the plane, whatever stands on it.
        width: fc.constant(3),
        slopeLength: fc.constant(2),
        collector: fc.option(collectors, { nil: undefined }),
      })
      .map(rowed),
    { minLength: 1, maxLength: 3 },
  )
  .map((drawn) => {
    let stage = 1;
    return drawn.map(({ behind, ...group }, at) => {
      if (behind) stage++;
      return { ...group, name: `group ${at}`, stage };
    });
  });

/** Arrays from one panel to four groups. */
export const arrays = fc
  .record({
    rows: fc.integer({ min: 1, max: 4 }),
    inSeries: fc.integer({ min: 1, max: 3 }),
    tilt: number(0, 90),
    azimuth: number(0, 360),
    skyModel: fc.constantFrom('perez', 'hay-davies', 'isotropic'),
    groundAlbedo: fc.constantFrom(0.2, [0.7, 0.6, 0.4, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2, 0.3, 0.5, 0.7]),
    albedoFrom: fc.constantFrom('weather', 'design'),
    snowOnPanels: fc.constantFrom('ignored', 'plate', 'tubes'),
    horizon: fc.constantFrom(null, hills),
    obstacle: fc.option(obstacles),
    collector: collectors,
    summerTilt: seldom(fc.record({ tilt: number(0, 90), days, withModule: fc.boolean() })),
    covers: fc.oneof(
      { weight: 3, arbitrary: fc.constant([]) },
      fc.array(fc.record({ days, lightShare: fc.constantFrom(0, 0.3, 1) }), { minLength: 1, maxLength: 2 }),
    ),
    groups: fc.oneof({ weight: 2, arbitrary: fc.constant([]) }, { weight: 1, arbitrary: groups }),
  })
  .map(rowed);
