/** Random designs and random weather for property tests and for `tests/bench/random-designs.ts`. */
import type { SystemInput } from '@noonloop/sim-core';
import type { WeatherYear } from '@noonloop/weather-io';
import fc from 'fast-check';

/** A finite number within bounds. */
export const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const angles = [0, 30, 60, 80];
const tubes = {
  transversal: { angles, values: [1, 1.2, 1.4, 0.8] },
  longitudinal: { angles, values: [1, 0.98, 0.9, 0.5] },
  tubes: 'upright',
};

/** Pumps of every drive that give the water a twentieth to a half of their power at best: 0.385 ρ g Q0 H0. */
const pumps = fc
  .record({
    drive: fc.constantFrom('booster', 'direct', 'mains'),
    shutOffHead: number(0.5, 10),
    openFlow: number(3e-5, 8e-4),
    efficiency: number(0.05, 0.5),
    motor: fc.record({ ratedVoltage: number(6, 24) }),
  })
  .map(({ efficiency, ...pump }) => {
    const shutOffPower = Math.max(0.2, (3775 * pump.shutOffHead * pump.openFlow) / efficiency);
    return { ...pump, shutOffPower, openFlowPower: 1.5 * shutOffPower, startPower: 1, stopPower: 0.5 };
  });

/** Collectors, half of them glazed, whose losses hold the radiation that their share of the sky asks for. */
const collectors = fc
  .record({
    area: number(0.5, 5),
    eta0: number(0.4, 0.85),
    a1: number(0.8, 12),
    a2: number(0, 0.03),
    heatCapacity: number(2000, 30_000),
    incidenceModifier: fc.constantFrom({ b0: 0.1 }, tubes),
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

/** Designs from cramped to absurd, all valid. */
export const designs = fc.record({
  array: fc
    .record({
      rows: fc.integer({ min: 1, max: 4 }),
      inSeries: fc.integer({ min: 1, max: 3 }),
      tilt: number(0, 90),
      azimuth: number(0, 360),
      skyModel: fc.constantFrom('perez', 'hay-davies', 'isotropic'),
      groundAlbedo: fc.constantFrom(0.2, [0.7, 0.6, 0.4, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2, 0.3, 0.5, 0.7]),
      snowOnPanels: fc.constantFrom('ignored', 'plate', 'tubes'),
      horizon: fc.constantFrom(null, hills),
      obstacle: fc.option(
        fc.record({
          distance: number(0.3, 10),
          width: number(0.3, 20),
          height: number(0.3, 8),
          azimuth: number(0, 360),
        }),
      ),
      collector: collectors,
    })
    .map(({ rows, ...array }) => ({ ...array, panels: rows * array.inSeries })),
  pump: pumps,
  pv: fc.record({ modules: fc.integer({ min: 1, max: 5 }), module: fc.record({ area: fc.constantFrom(null, 0.2) }) }),
  loop: fc
    .record({
      fluid: fc.constantFrom('water', 'propylene-glycol', 'ethylene-glycol'),
      pipeLength: number(2, 80),
      outdoorShare: number(0, 1),
      staticHeight: number(0, 15),
      vesselVolume: number(0.001, 0.04),
      steamPower: number(0, 300),
      heatBridgeFactor: number(1, 3),
      leak: fc.constantFrom(0, 1e-9),
      makeUp: fc.boolean(),
      plate: fc.record({
        conductance: number(20, 5000),
        secondaryFlow: number(5e-6, 3e-4),
        returnHeight: number(0, 1),
      }),
      ways: fc.constantFrom(
        { exchanger: 'coil', checkValve: true },
        { exchanger: 'coil', checkValve: false },
        { exchanger: 'plate', checkValve: true },
      ),
    })
    .map(({ ways, ...loop }) => ({ ...loop, ...ways })),
  coil: fc.record({ length: number(2, 40), top: number(0.1, 1) }),
  tank: fc.record({
    volume: number(0.08, 1.5),
    lossCoefficient: number(0, 10),
    nodes: fc.integer({ min: 4, max: 40 }),
    inletDiameter: fc.constantFrom(null, 0.01, 0.03),
    sedimentDepth: fc.constantFrom(0, 0, 0.02, 0.2),
  }),
  draw: fc
    .record({
      dailyVolume: number(0, 0.8),
      mixingValve: fc.boolean(),
      mains: fc.constantFrom('from-weather', 10),
      profile: fc.constantFrom(undefined, undefined, 'S', 'L', 'XL', 'evening'),
      keepHeat: fc.boolean(),
      holidays: fc.constantFrom([], ['07-10..07-24', '12-27..01-03']),
      summerTime: fc.constantFrom(null, '03-31..10-27'),
    })
    .map(({ keepHeat, dailyVolume, ...draw }) =>
      keepHeat && draw.profile !== undefined && draw.profile !== 'evening' ? draw : { ...draw, dailyVolume },
    ),
  heater: fc.oneof(
    fc.record({ kind: fc.constantFrom('stored-gas', 'stored-electric'), volume: number(0.05, 0.5) }),
    fc.record({
      kind: fc.constantFrom('instantaneous-gas', 'instantaneous-electric'),
      burnerPower: number(6000, 40_000),
      minimumRise: number(0, 10),
    }),
    fc.record({ kind: fc.constant('element'), burnerPower: number(1000, 6000), elementHeight: number(0, 0.9) }),
  ),
  control: fc.record({
    highLimit: fc.constantFrom(null, 60, 85),
    mode: fc.constantFrom(undefined, 'difference', 'schedule'),
    difference: fc.record({
      start: number(4, 15),
      stop: number(0, 4),
      collectorSensor: fc.constantFrom('absorber', 'pipe'),
      tankSensorHeight: number(0, 1),
      minimumRunTime: fc.constantFrom(0, 300, 900),
    }),
    schedule: fc.constantFrom(
      [[9, 16]],
      [
        [0, 2],
        [7, 24],
      ],
    ),
    outages: fc.constantFrom(
      [],
      [{ from: '12-20', to: '01-10', kind: 'pump' }],
      [{ from: '06-01', to: '06-20', kind: 'power' }],
    ),
  }),
}) as fc.Arbitrary<SystemInput>;

/** What is done to a year of weather to make another. */
export interface WeatherChange {
  /** Added to air and dew point. [K] */
  readonly warmer: number;
  /** Factor on all light. [-] */
  readonly brighter: number;
  /** Added to the latitude. [°] */
  readonly north: number;
  /** Half a year later, on the other side of the equator. */
  readonly southern: boolean;
  /** Without wind, and without what tells how moist the air is. */
  readonly bare: boolean;
  /** Depth of snow in the hours below freezing; `null`: no such column. [m] */
  readonly snow: number | null;
}

/** Changes from none to a climate that nobody has measured. */
export const weatherChanges: fc.Arbitrary<WeatherChange> = fc.record({
  warmer: number(-25, 12),
  brighter: number(0.3, 1.2),
  north: number(-15, 15),
  southern: fc.boolean(),
  bare: fc.boolean(),
  snow: fc.constantFrom(null, null, 0, 0.2),
});

/** Another year made of one; the first is left as it is. */
export function changeWeather(year: WeatherYear, change: WeatherChange): WeatherYear {
  const { columns, site } = year;
  const shift = change.southern ? 4380 : 0;
  const roll = (column: Float64Array, value: (old: number) => number = (old) => old) =>
    column.map((_, hour) => value(column[(hour + shift) % column.length]!));
  const optional = (column: Float64Array | null, value?: (old: number) => number) =>
    column === null || change.bare ? null : roll(column, value);
  const light = (old: number) => old * change.brighter;
  const air = (old: number) => old + change.warmer;
  const dryBulb = roll(columns.dryBulb, air);
  const latitude = site.latitude + change.north;
  return {
    ...year,
    source: 'invented, changed at random',
    site: { ...site, latitude: change.southern ? -latitude : latitude },
    columns: {
      ...columns,
      ghi: roll(columns.ghi, light),
      dni: roll(columns.dni, light),
      dhi: roll(columns.dhi, light),
      dryBulb,
      dewPoint: optional(columns.dewPoint, air),
      relativeHumidity: optional(columns.relativeHumidity),
      windSpeed: optional(columns.windSpeed),
      pressure: optional(columns.pressure),
      skyLongwave: null,
      cloudCover: null,
      albedo: optional(columns.albedo),
      snowDepth: change.snow === null ? null : dryBulb.map((value) => (value < 0 ? change.snow! : 0)),
    },
  };
}
