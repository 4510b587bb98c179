import { defineSystem, type RunResult, type SystemInput, simulate } from '@noonloop/sim-core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inventedValley, sum } from '../examples.ts';

const weather = await inventedValley();

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

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

const hills = [
  { azimuth: 30, altitude: 4 },
  { azimuth: 110, altitude: 22 },
  { azimuth: 200, altitude: 8 },
];

/** Designs from cramped to absurd, all valid. */
const designs = fc.record({
  array: fc
    .record({
      rows: fc.integer({ min: 1, max: 4 }),
      inSeries: fc.integer({ min: 1, max: 3 }),
      tilt: number(0, 90),
      azimuth: number(0, 360),
      skyModel: fc.constantFrom('perez', 'haydavies', 'isotropic'),
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
      collector: fc.record({
        area: number(0.5, 5),
        eta0: number(0.4, 0.85),
        a1: number(0.8, 12),
        a2: number(0, 0.03),
        heatCapacity: number(2000, 30_000),
        incidenceModifier: fc.constantFrom({ b0: 0.1 }, tubes),
        a3: number(0, 0.2),
        a4: fc.constantFrom(undefined, 0, 0.8),
        a6: number(0, 0.05),
        glazed: fc.boolean(),
      }),
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

function expectSound(result: RunResult): void {
  for (const [name, column] of Object.entries(result.columns)) {
    expect(column.every(Number.isFinite), name).toBe(true);
  }
  for (const [part, balance] of Object.entries(result.balance)) {
    expect(balance.worstRelative, part).toBeLessThan(1e-9);
  }
  for (const name of ['pumpRunning', 'noFlowInSun', 'stagnation', 'highLimit', 'lowPressure'] as const) {
    expect(Math.min(...result.columns[name]), name).toBeGreaterThanOrEqual(0);
    expect(Math.max(...result.columns[name]), name).toBeLessThanOrEqual(1 + 1e-12);
  }
}

describe('any valid design', () => {
  it('gives finite numbers, and a balance that closes to 1e-9 in every hour and part', () => {
    fc.assert(
      fc.property(designs, (input) => {
        expectSound(simulate(defineSystem(input), weather));
      }),
      { numRuns: 16, seed: 20261125, endOnFailure: true },
    );
  });

  it('delivers no less with one panel more where nothing throws heat away', () => {
    // No high limit, a module in the collectors' plane and an upright sun-facing array: a pump that runs in weak sun with a hot
    // tank may otherwise lose more through a larger array than it gains.
    const facing = fc.record({
      panels: fc.integer({ min: 1, max: 4 }),
      tilt: number(20, 60),
      azimuth: number(150, 210),
      volume: number(0.2, 0.6),
      dailyVolume: number(0.1, 0.4),
    });
    fc.assert(
      fc.property(facing, ({ panels, tilt, azimuth, volume, dailyVolume }) => {
        const delivered = (count: number) =>
          sum(
            simulate(
              defineSystem({
                array: { panels: count, tilt, azimuth, collector: { area: 2, eta0: 0.75, a1: 3.8, a2: 0.012 } },
                tank: { volume, reliefTemperature: 120 },
                draw: { dailyVolume },
                control: { highLimit: null },
              }),
              weather,
            ).columns.solarHeat,
          );
        expect(delivered(panels + 1)).toBeGreaterThanOrEqual(delivered(panels));
      }),
      { numRuns: 4, seed: 20261125, endOnFailure: true },
    );
  });
});
