/** Random tanks, draws and heaters. */
import fc from 'fast-check';
import { days, number, seldom } from './number.ts';

const pipe = {
  insulationThickness: fc.constantFrom(0, 0.02),
  surroundings: number(0, 25),
};

const summerAndWinter = [5, 5, 8, 11, 15, 18, 20, 20, 17, 13, 9, 6];

/** A second tank before the first. */
export const seconds = fc.record({
  volume: number(0.02, 1),
  lossCoefficient: number(0, 10),
  nodes: fc.integer({ min: 4, max: 40 }),
  roomTemperature: fc.constantFrom(null, 3, 25),
  inletDiameter: fc.constantFrom(null, null, 0.02),
  charging: fc.constantFrom('series', 'in-turn', 'in-turn', 'first', 'second'),
  divertAt: number(20, 60),
  coil: fc.record({ length: number(2, 40), bottom: number(0, 0.3), top: number(0.31, 1) }),
});

export const tanks = fc.record({
  volume: number(0.08, 1.5),
  lossCoefficient: number(0, 10),
  nodes: fc.integer({ min: 4, max: 40 }),
  inletDiameter: fc.constantFrom(null, 0.01, 0.03),
  sedimentDepth: fc.constantFrom(0, 0, 0.02, 0.2),
  reliefTemperature: fc.constantFrom(undefined, undefined, 60, 75),
  initialProfile: seldom(fc.constantFrom([15, 40, 60], [60, 10], [5, 90, 20, 30])),
  roomByMonth: seldom(fc.constantFrom<'outdoors' | number[]>('outdoors', summerAndWinter)),
  load: seldom(
    fc
      .record({
        temperature: number(5, 50),
        over: number(0.5, 30),
        power: number(50, 20_000),
        conductance: number(5, 2000),
        height: number(0, 1),
        dailyHeat: fc.constantFrom(null, 1e7),
        days: fc.oneof(
          fc.constant([]),
          days.map((one) => [one]),
        ),
      })
      .map(({ over, ...load }) => ({ ...load, leastTemperature: load.temperature + over })),
  ),
  second: seldom(seconds),
});

const wave = fc
  .record({ mean: number(5, 20), share: number(0, 1), coldestDay: fc.constantFrom(undefined, 1, 365) })
  .map(({ coldestDay, mean, share }) => ({ mean, swing: 2 * mean * share, ...(coldestDay ? { coldestDay } : {}) }));

export const draws = fc
  .record({
    dailyVolume: number(0, 0.8),
    mixingValve: fc.boolean(),
    mains: fc.oneof(fc.constantFrom<string | number | number[]>('from-weather', 10, summerAndWinter), wave),
    profile: fc.constantFrom(undefined, undefined, 'S', 'L', 'XL', 'evening'),
    keepHeat: fc.boolean(),
    holidays: fc.constantFrom([], ['07-10..07-24', '12-27..01-03']),
    summerTime: fc.constantFrom(null, '03-31..10-27'),
    hotPipe: seldom(fc.record({ length: number(0.2, 40), ...pipe })),
    ring: seldom(
      fc.record({
        length: number(1, 100),
        flow: number(1e-5, 1e-4),
        hours: fc.constantFrom(
          [[0, 24]],
          [
            [6, 9],
            [17, 22],
          ],
        ),
        ...pipe,
      }),
    ),
  })
  .map(({ keepHeat, dailyVolume, ...draw }) =>
    keepHeat && draw.profile !== undefined && draw.profile !== 'evening' ? draw : { ...draw, dailyVolume },
  );

const cop = fc.oneof(
  fc.record({ atZero: number(1, 4), perAirKelvin: number(0, 0.1) }),
  fc.record({ atNoLift: number(4, 10), perLiftKelvin: number(0, 0.15) }),
  fc.record({ carnotShare: number(0.2, 0.6) }),
  fc.record({
    airTemperatures: fc.constant([-10, 2, 7, 20]),
    values: fc.constant([1.8, 2.4, 2.9, 3.8]),
    between: fc.constantFrom('lines', 'curve'),
  }),
);

const sparePv = seldom(fc.record({ peakPower: number(100, 8000), houseLoad: number(0, 1000) }));
const volume = number(0.05, 0.5);
const fuel = fc.constantFrom(undefined, 'natural-gas', 'propane', 'heating-oil', 'wood-pellets');
const boilerFuel = fc.constantFrom(undefined, 'heating-oil', 'wood', 'district-heat');

/** Heaters of every kind. */
export const heaters = fc
  .tuple(
    fc.oneof(
      fc.record({ kind: fc.constant('stored-gas'), volume, fuel }),
      fc.record({ kind: fc.constant('stored-electric'), volume, sparePv }),
      fc.record({ kind: fc.constant('stored-boiler'), volume, fuel: boilerFuel, netEfficiency: number(0.6, 1) }),
      fc.record({ kind: fc.constant('heat-pump'), volume, cop, airFrom: fc.constantFrom('outdoors', 'room') }),
      fc.record({
        kind: fc.constantFrom('instantaneous-gas', 'instantaneous-electric'),
        burnerPower: number(6000, 40_000),
        minimumRise: number(0, 10),
      }),
      fc.record({
        kind: fc.constant('element'),
        burnerPower: number(1000, 6000),
        elementHeight: number(0, 0.9),
        sparePv,
      }),
      fc
        .record({
          kind: fc.constant('boiler-coil'),
          fuel: boilerFuel,
          elementHeight: number(0, 0.9),
          coilTop: number(0, 1),
          coilConductance: number(10, 2000),
          boilerTemperature: number(40, 90),
        })
        .map((coil) => ({ ...coil, coilTop: coil.elementHeight + 0.05 + 0.05 * coil.coilTop })),
    ),
    fc.record({
      offDays: fc.oneof(
        { weight: 3, arbitrary: fc.constant([]) },
        days.map((one) => [one]),
      ),
      heatingHours: seldom(
        fc.constant([
          [5, 8],
          [17, 22],
        ]),
      ),
    }),
  )
  .map(([heater, hours]) => ({ ...heater, ...hours }));

/** Whether water that comes back from a ring has a store to go to. */
export const hasStore = ({ kind }: { kind: string }): boolean => kind.startsWith('stored') || kind === 'heat-pump';
