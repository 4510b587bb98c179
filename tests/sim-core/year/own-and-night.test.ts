import { DesignError, defineSystem, type OwnComponents, type SystemInput, simulate } from '@noonloop/sim-core';
import { coverShares } from '@noonloop/sim-core/formulas';
import { describe, expect, it } from 'vitest';
import { compileArrayDrivers } from '../../../packages/sim-core/src/year/group-drivers.ts';
import { requireOwn } from '../../../packages/sim-core/src/year/own.ts';
import { inventedValley, plainInput, sum } from '../../examples.ts';
import { liveSpan } from '../../property/span.ts';

const weather = await inventedValley();
/** Five weeks of early summer. */
const heat = (input: object, own?: OwnComponents) =>
  sum(
    liveSpan(
      defineSystem({ ...plainInput, ...input } as SystemInput),
      weather,
      2900,
      2900 + 35 * 24,
      own ? { own } : {},
    ).columns.solarHeat,
  );

describe('a component of one’s own', () => {
  it('that hands back what it is given changes nothing, to the last bit [requirement]', () => {
    expect(heat({}, { gain: (absorbed) => absorbed, wants: (wanted) => wanted })).toBe(heat({}));
  });

  it('takes the place of a collector’s gain: half of eta0 by hand is half of eta0 by design [requirement: 0.1 %]', () => {
    const { collector } = plainInput.array;
    const half = { array: { ...plainInput.array, collector: { ...collector, eta0: 0.375 } } };
    const own = heat({}, { gain: (absorbed) => (absorbed > 0 ? absorbed / 2 : absorbed) });
    expect(Math.abs(own / heat(half) - 1)).toBeLessThan(1e-3);
  });

  it('takes the place of a controller’s decision: never is never, but for how its steps are cut [requirement: 1e-4]', () => {
    const broken = heat({ control: { outages: [{ from: '01-01', to: '12-31', kind: 'pump' }] } });
    expect(Math.abs(heat({}, { wants: () => false }) / broken - 1)).toBeLessThan(1e-4);
  });

  it('is refused where it is no function, unknown, or a gain beside groups [requirement]', () => {
    const design = defineSystem(plainInput);
    expect(() => simulate(design, weather, { own: { gain: 3 as never } })).toThrow(/options.own.gain: found 3/);
    expect(() => simulate(design, weather, { own: { lose: () => 1 } as never })).toThrow(DesignError);
    const groups = defineSystem({ ...plainInput, array: { ...plainInput.array, groups: [{ name: 'a', panels: 1 }] } });
    expect(() => simulate(groups, weather, { own: { gain: (a) => a } })).toThrow(/with array.groups/);
    expect(() => requireOwn({ gain: undefined as never }, true)).not.toThrow();
  });
});

describe('cooling at night', () => {
  const away = {
    array: { ...plainInput.array, panels: 4 },
    draw: { ...plainInput.draw, holidays: ['06-15..08-15'] },
    pump: { drive: 'mains' },
  };
  const run = (control: object) =>
    simulate(defineSystem({ ...plainInput, ...away, control } as SystemInput), weather, { stepsPerHour: 2 });
  const plain = run({});
  const cooled = run({ nightCooling: { above: 75, until: 55 } });

  it('takes hours of standstill and heat from a tank that nobody draws from, and says how much [requirement]', () => {
    expect(sum(cooled.columns.highLimit)).toBeLessThan(0.7 * sum(plain.columns.highLimit));
    expect(sum(cooled.columns.stagnation)).toBeLessThan(sum(plain.columns.stagnation));
    const notice = cooled.notices.find(({ code }) => code === 'cooled-at-night')!;
    expect(notice.hours).toBeGreaterThan(20);
    expect((notice.facts.heat as { value: number }).value).toBeGreaterThan(50 * 3.6e6);
    for (const { worstRelative } of Object.values(cooled.balance)) expect(worstRelative).toBeLessThan(1e-9);
  });

  it('asks for a pump on the mains, a closed loop, and a stop under its start [requirement]', () => {
    const control = { nightCooling: { above: 75, until: 55 } };
    expect(() => defineSystem({ ...plainInput, control })).toThrow(/a pump on the mains and a closed loop/);
    expect(() => run({ nightCooling: { above: 60, until: 70 } })).toThrow(/less than the start/);
  });
});

describe('a cover by n, K and L as incidence modifier', () => {
  const glass = { covers: 1, refractiveIndex: 1.526, extinction: 16, thickness: 0.004 };
  const light = (incidenceModifier: object, array: object = {}) => {
    const collector = { ...plainInput.array.collector, incidenceModifier };
    return compileArrayDrivers(
      defineSystem({ ...plainInput, array: { ...plainInput.array, ...array, collector } } as SystemInput),
      weather,
      1,
    ).absorbed;
  };

  it('lets through what a fine table of its own shares does [requirement: 0.01 % of the year]', () => {
    const angles = Array.from({ length: 180 }, (_, at) => at / 2);
    const normal = coverShares(glass, 0).transmittance;
    const values = angles.map((angle) => coverShares(glass, angle).transmittance / normal);
    expect(Math.abs(sum(light(glass)) / sum(light({ angles, values })) - 1)).toBeLessThan(1e-4);
  });

  it('refuses a third plate and a plate less dense than air [requirement]', () => {
    expect(() => light({ ...glass, covers: 3 })).toThrow(DesignError);
    expect(() => light({ ...glass, refractiveIndex: 0.9 })).toThrow(DesignError);
  });
});

describe('whose ground', () => {
  it('is the weather’s where it has a column, or the design’s where it asks for that; both are said [requirement]', () => {
    const white = { ...weather, columns: { ...weather.columns, albedo: new Float64Array(8760).fill(0.8) } };
    const of = (albedoFrom: 'weather' | 'design') =>
      compileArrayDrivers(
        defineSystem({ ...plainInput, array: { ...plainInput.array, albedoFrom, snowAlbedo: null } }),
        white,
        1,
      );
    const plain = compileArrayDrivers(
      defineSystem({ ...plainInput, array: { ...plainInput.array, snowAlbedo: null } }),
      weather,
      1,
    );
    expect(sum(of('design').irradiance)).toBeCloseTo(sum(plain.irradiance), 6);
    expect(sum(of('weather').irradiance)).toBeGreaterThan(1.02 * sum(plain.irradiance));
    expect(of('design').arrayAssumptions.map(({ code }) => code)).toContain('albedo-of-design');
    expect(of('weather').arrayAssumptions.map(({ code }) => code)).toContain('albedo-of-weather');
  });
});
