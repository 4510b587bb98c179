// A design that was written out reads again as it stands [requirement].
import { isDeepStrictEqual } from 'node:util';
import { DesignError, defineSystem, type SystemDesign, type SystemInput } from '@noonloop/sim-core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inventedValley } from '../../examples.ts';
import { designs } from '../../property/designs.ts';
import { liveSpan } from '../../property/span.ts';

const copy = <T>(value: T): T => JSON.parse(JSON.stringify(value)) as T;
const least: SystemInput = {
  array: { panels: 2, tilt: 40, azimuth: 180, collector: { area: 2, eta0: 0.75, a1: 3.8, a2: 0.012 } },
  tank: { volume: '80 gal' },
  draw: { dailyVolume: '200 L' },
};
const record = Array.from({ length: 8760 }, (_, hour) => (hour % 24 === 7 ? 0.08 : 0.003 * (hour % 5)));

describe('a saved design', () => {
  it.each<[string, SystemInput]>([
    ['the least', least],
    ['people', { ...least, draw: { people: 4 } }],
    ['a tapping profile with its own heat', { ...least, draw: { profile: 'M' } }],
    ['a profile and a volume', { ...least, draw: { profile: 'evening', dailyVolume: '40 gal' } }],
    ['shares', { ...least, draw: { dailyVolume: 0.2, hourlyShares: new Array(24).fill(3) } }],
    ['a record', { ...least, draw: { volumes: record } }],
    ['an element in the tank', { ...least, heater: { kind: 'element' } }],
    ['an element, with another baseline', { ...least, heater: { kind: 'element', baselineVolume: '50 gal' } }],
    ['a flow-through heater', { ...least, heater: { kind: 'instantaneous-gas' } }],
    ['pressure at the gauge', { ...least, loop: { fillPressure: '30 psi' } }],
    ['pressure at the collectors', { ...least, loop: { pressure: '1 bar', fluid: 'water' } }],
    ['a4', { ...least, array: { ...least.array, collector: { ...least.array.collector, a4: 0.4, glazed: false } } }],
    ['a plate', { ...least, loop: { exchanger: 'plate' }, pump: { drive: 'direct' } }],
    [
      'structures',
      {
        ...least,
        array: {
          ...least.array,
          horizon: [{ azimuth: 100, altitude: 12 }],
          collector: { ...least.array.collector, incidenceModifier: { angles: [0, 50, 90], values: [1, 0.9, 0] } },
        },
        control: { outages: [{ from: '07-01', to: '07-05', kind: 'power' }], mode: 'schedule' },
      },
    ],
  ])('reads again to the last bit: %s [requirement]', (_, input) => {
    const design = defineSystem(input);
    expect(copy(defineSystem(copy(design)))).toEqual(copy(design));
    expect(copy(defineSystem(design))).toEqual(copy(design));
  });

  it('does so for any design [requirement]', () => {
    fc.assert(
      fc.property(designs, (input) => {
        let design: SystemDesign;
        try {
          design = defineSystem(input);
        } catch (error) {
          if (error instanceof DesignError) return;
          throw error;
        }
        const saved = copy(design);
        expect(isDeepStrictEqual(copy(defineSystem(copy(saved))), saved)).toBe(true);
      }),
      { numRuns: 40, seed: 7 },
    );
  });

  it('runs again with the same bits [requirement]', async () => {
    const weather = await inventedValley();
    const design = defineSystem({ ...least, draw: { people: 3, holidays: ['07-10..07-24'] } });
    const [first, again] = [design, defineSystem(copy(design))].map((one) => liveSpan(one, weather, 4500, 4900));
    expect(again!.columns).toEqual(first!.columns);
    expect(again!.design.assumptions).toEqual(first!.design.assumptions);
  });

  it('may be changed by hand: what was changed is no default any more, what is not known is refused [by hand]', () => {
    const saved = copy(defineSystem(least)) as unknown as Record<string, Record<string, unknown>>;
    saved.tank!.lossCoefficient = '3 W/K';
    const design = defineSystem(saved as never);
    expect(design.tank.lossCoefficient).toBe(3);
    const paths = design.assumptions.map(({ path }) => path);
    expect(paths).not.toContain('tank.lossCoefficient');
    expect(paths).toContain('tank.height');
    saved.tank!.colour = 'red';
    expect(() => defineSystem(saved as never)).toThrow(/tank\.colour/);
  });

  it('takes no words of strangers for its defaults but plain ones [requirement]', () => {
    const saved = copy(defineSystem(least)) as unknown as { assumptions: unknown[] };
    saved.assumptions[3] = { path: 'tank.volume', value: {}, unit: '', source: '' };
    expect(() => defineSystem(saved as never)).toThrow(/assumptions\.3: found an object/);
    expect(() => defineSystem({ ...saved, assumptions: new Array(2000).fill(saved.assumptions[0]) } as never)).toThrow(
      /assumptions: found a list of 2000/,
    );
  });
});
