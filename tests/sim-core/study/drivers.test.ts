// What runs share must be the same as what each would compute alone, and must not grow.
import { defineSystem, type SystemInput } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { compileDrivers, type Drivers } from '../../../packages/sim-core/src/year/drivers.ts';
import { recent } from '../../../packages/sim-core/src/year/recent.ts';
import { inventedValley, plainInput } from '../../examples.ts';

const weather = await inventedValley();
const snowy = {
  ...weather,
  columns: {
    ...weather.columns,
    snowDepth: weather.columns.dryBulb.map((air, hour) => (air < -5 ? (hour % 7) / 50 : 0)),
  },
};

const withArray = (array: object, rest: object = {}): SystemInput =>
  ({ ...plainInput, ...rest, array: { ...plainInput.array, ...array } }) as SystemInput;
const withCollector = (collector: object): SystemInput =>
  withArray({ collector: { ...plainInput.array.collector, ...collector } });

/** Each differs from the plain design in something that drivers depend on. */
const variants: Record<string, SystemInput> = {
  plain: plainInput,
  tilt: withArray({ tilt: 41 }),
  azimuth: withArray({ azimuth: 150 }),
  albedo: withArray({ groundAlbedo: 0.5 }),
  horizon: withArray({
    horizon: [
      { azimuth: 90, altitude: 20 },
      { azimuth: 270, altitude: 10 },
    ],
  }),
  'PV plane': withArray({}, { pv: { tilt: 70, azimuth: 200 } }),
  eta0: withCollector({ eta0: 0.7 }),
  cover: withCollector({ incidenceModifier: { b0: 0.2 } }),
  'wind terms': withCollector({ a3: 0.5, a6: 0.01 }),
  sky: withCollector({ a4: 0.4 }),
  'loss coefficient': withCollector({ a1: 4 }),
  modules: withArray({}, { pv: { modules: 2 } }),
  module: withArray({}, { pv: { module: { maximumPowerCurrent: 1 } } }),
  booster: withArray({}, { pump: { boosterEfficiency: 0.7 } }),
  'direct drive': withArray({}, { pump: { drive: 'direct' } }),
  'another motor': withArray({}, { pump: { drive: 'direct', motor: { ratedVoltage: 10 } } }),
  mains: withArray({}, { draw: { dailyVolume: 0.2, mains: 12 } }),
  draw: withArray({}, { draw: { dailyVolume: 0.25 } }),
  profile: withArray({}, { draw: { profile: 'M' } }),
  snow: withArray({ snowOnPanels: 'plate' }),
};

/** Fingers on every number of the drivers, in one sum that depends on place. */
function print(drivers: Drivers): string {
  const columns = Object.entries(drivers).filter((entry): entry is [string, Float64Array] =>
    ArrayBuffer.isView(entry[1]),
  );
  const sums = columns.map(([name, column]) => {
    let sum = 0;
    for (let at = 0; at < column.length; at++) sum += column[at]! * (1 + (at % 97));
    return `${name} ${sum}`;
  });
  const { arrayAssumptions, heldDrawHours, heldModuleHours, heldWindHours, lostBeamHours, cellRise } = drivers;
  return JSON.stringify([
    sums,
    arrayAssumptions,
    heldDrawHours,
    heldModuleHours,
    heldWindHours,
    lostBeamHours,
    cellRise,
  ]);
}

describe('drivers that runs share [equality]', () => {
  const designs = Object.entries(variants).flatMap(([name, input]) => {
    try {
      return [[name, defineSystem(input)] as const];
    } catch (error) {
      throw new Error(`${name}: ${(error as Error).message}`);
    }
  });
  const steps = 1;
  // A weather object of its own shares nothing with what was computed before.
  const alone = (year: typeof weather) =>
    new Map(designs.map(([name, design]) => [name, print(compileDrivers(design, { ...year }, steps))]));

  it('are those that each design computes alone, forwards and backwards, in the valley under snow', () => {
    const year = snowy;
    const expected = alone(year);
    expect(new Set(expected.values()).size).toBe(designs.length);
    for (const [name, design] of [...designs, ...[...designs].reverse()]) {
      expect([name, print(compileDrivers(design, year, steps))]).toEqual([name, expected.get(name)]);
    }
  });

  it('are one object for one plane, and a result may be written to without harm', () => {
    const [, plain] = designs[0]!;
    const other = defineSystem({ ...plainInput, tank: { volume: 0.4 } });
    const [first, second] = [compileDrivers(plain, weather, steps), compileDrivers(other, weather, steps)];
    expect(second.absorbed).toBe(first.absorbed);
    expect(second.pumpSupply).toBe(first.pumpSupply);
    first.mains.fill(99);
    first.tapVolume.fill(99);
    expect(compileDrivers(plain, weather, steps).mains[0]).toBe(second.mains[0]);
    expect(compileDrivers(plain, weather, steps).tapVolume[0]).toBe(second.tapVolume[0]);
  });
});

describe('memory of recent results [definition]', () => {
  const result = () => ({});
  const keep = (budget_MB: number) => recent<object>(budget_MB, () => 2 ** 20);

  it('keeps what was asked for last, within its budget, the latest always', () => {
    const kept = keep(3);
    const get = (key: number) => kept(weather, key, result);
    const [one, two, three] = [get(1), get(2), get(3)];
    expect(get(1)).toBe(one);
    get(4); // drops 2, which was not asked for longest
    expect(get(3)).toBe(three);
    expect(get(1)).toBe(one);
    expect(get(2)).not.toBe(two);
    const tight = keep(0.5);
    const large = tight(weather, 1, result);
    expect(tight(weather, 1, result)).toBe(large);
  });

  it('tells weather objects apart', () => {
    const kept = keep(3);
    expect(kept({ ...weather }, 1, result)).not.toBe(kept({ ...weather }, 1, result));
  });
});
