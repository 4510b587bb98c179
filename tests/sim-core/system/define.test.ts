import { DesignError, type DesignIssue, defineSystem, type SystemInput } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { plainInput } from '../../examples.ts';

/** Faults of an input that may be anything. */
function faultsOf(input: unknown): readonly DesignIssue[] {
  try {
    defineSystem(input as SystemInput);
  } catch (error) {
    expect(error).toBeInstanceOf(DesignError);
    return (error as DesignError).issues;
  }
  throw new Error('the input was accepted');
}

describe('defineSystem', () => {
  it('writes out every default and freezes the design through and through', () => {
    const design = defineSystem(plainInput);
    expect(design.heater.setTemperature).toBe(60);
    expect(design.pv.tilt).toBe(40);
    expect(design.tank.height).toBeGreaterThan(1);
    expect(Object.isFrozen(design.array.collector.incidenceModifier)).toBe(true);
    const undefinedFields = JSON.stringify(design, (_, value) => (value === undefined ? 'undefined' : value)).match(
      /"undefined"/g,
    );
    expect(undefinedFields).toBeNull();
  });

  it('lists each default once, with a source, and nothing that was given', () => {
    const { assumptions } = defineSystem({ ...plainInput, heater: { setTemperature: 65 } });
    const paths = assumptions.map((assumption) => assumption.path);
    expect(new Set(paths).size).toBe(paths.length);
    expect(paths).toContain('heater.burnerEfficiency');
    expect(paths).toContain('tank.lossCoefficient');
    expect(paths).toContain('pv.module.cells');
    expect(paths).not.toContain('heater.setTemperature');
    expect(paths).not.toContain('array.tilt');
    for (const assumption of assumptions) expect(assumption.source.length).toBeGreaterThan(5);
  });

  it('reads strings with units [US gallon 3.785411784 L, foot 0.3048 m, NIST SP 811]', () => {
    const design = defineSystem({
      ...plainInput,
      tank: { volume: '80 gal', height: '4.5 ft' },
      draw: { dailyVolume: '53 gal', tapTemperature: '110 degF' },
      heater: { burnerPower: '30000 BTU/h', burnerEfficiency: '80 %' },
      control: { highLimit: '180 degF', highLimitHysteresis: '9 degF' },
    });
    expect(design.tank.volume).toBeCloseTo(80 * 0.003785411784, 12);
    expect(design.tank.height).toBeCloseTo(4.5 * 0.3048, 12);
    expect(design.draw.tapTemperature).toBeCloseTo((110 - 32) / 1.8, 10);
    expect(design.heater.burnerPower).toBeCloseTo(30000 * 0.29307107, 2);
    expect(design.heater.burnerEfficiency).toBe(0.8);
    expect(design.control.highLimit).toBeCloseTo((180 - 32) / 1.8, 10);
    expect(design.control.highLimitHysteresis).toBeCloseTo(5, 10);
  });

  it('names all faults at once, by path, with what was found and the unit expected', () => {
    const faults = faultsOf({
      array: { panels: 2.5, tilt: 95, azimuth: 180, collector: { area: '2 gal', eta0: 0.75, a1: -1, a2: 0.012 } },
      tank: { volume: 'eighty', hieght: 2 },
      draw: { dailyVolume: null, hourlyShares: [1, 2, 3] },
      loop: { pipeInnerDiameter: 0.02, pipeOuterDiameter: 0.018 },
    });
    const byPath = Object.fromEntries(faults.map((fault) => [fault.path, fault]));
    expect(Object.keys(byPath).sort()).toEqual(
      [
        'array.collector.a1',
        'array.collector.area',
        'array.panels',
        'array.tilt',
        'draw.dailyVolume',
        'draw.hourlyShares',
        'loop.pipeOuterDiameter',
        'tank.hieght',
        'tank.volume',
      ].sort(),
    );
    expect(byPath['array.tilt']!.found).toBe('95');
    expect(byPath['array.tilt']!.expected).toContain('from 0 to 90 °');
    expect(byPath['array.collector.area']!.found).toBe('"2 gal"');
    expect(byPath['tank.volume']!.expected).toContain('m³');
    expect(byPath['tank.volume']!.remedy).toContain('80 gal');
  });

  it('says in words where, what was found, what was expected and what to do', () => {
    try {
      defineSystem({ ...plainInput, tank: { volume: '80' } });
      expect.unreachable();
    } catch (error) {
      expect((error as Error).message).toBe(
        'tank.volume: found "80", expected a value from 0.02 to 50 m³. Give a number in m³ or a string with a unit, such as "80 gal".',
      );
    }
  });

  it.each([undefined, null, 3, 'x', []])('refuses %j as a whole', (input) => {
    expect(faultsOf(input).length).toBeGreaterThan(0);
  });

  it('takes no key from a prototype and writes to none', () => {
    const hostile = JSON.parse('{"__proto__": {"polluted": true}, "constructor": {"prototype": {"polluted": true}}}');
    const faults = faultsOf({
      ...plainInput,
      ...hostile,
      tank: Object.assign(JSON.parse('{"__proto__": {"volume": 0.3}}'), {}),
    });
    expect(faults.some((fault) => fault.path === 'tank.volume')).toBe(true);
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });

  it('cuts what it quotes and refuses long strings without parsing them', () => {
    const [fault] = faultsOf({ ...plainInput, tank: { volume: `${'9'.repeat(100_000)} gal` } });
    expect(fault!.path).toBe('tank.volume');
    expect(fault!.found.length).toBeLessThan(60);
  });

  it.each([
    ['array.collector.incidenceModifier', { angles: [0, 50], values: [1] }],
    ['array.collector.incidenceModifier.angles', { angles: [10, 50], values: [1, 0.9] }],
    ['array.collector.incidenceModifier', 0.1],
  ])('names a bad incidence modifier at %s', (path, incidenceModifier) => {
    const collector = { ...plainInput.array.collector, incidenceModifier };
    const paths = faultsOf({ ...plainInput, array: { ...plainInput.array, collector } }).map((fault) => fault.path);
    expect(paths).toContain(path);
  });
});
