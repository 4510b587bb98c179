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

const week = { from: '07-01', to: '07-07', kind: 'pump' };

describe('defineSystem', () => {
  it('writes out every default and freezes the design through and through [requirement]', () => {
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

  it('lists each default once, with a source, and nothing that was given [requirement]', () => {
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

  it.each([
    ['loop.heatBridgeFactor', 1.3, 'pipes with care 1.2, as often found 2'],
    ['loop.insulationConductivity', 0.042, 'rubber foam at 40 °C, makers’ data sheets 0.042 to 0.045 warm'],
    ['loop.steamPower', 120, 'an array that empties badly: IEA SHC Task 26'],
    ['coil.fouling', 3e-4, '0.3 mm of enamel at 1 W/(m·K)'],
    ['control.highLimit', 85, 'kept; 60 to 65 in hard water is an advice'],
    ['heater.minimumFlow', 2 / 60_000, 'flow switches 1.5 to 3 L/min'],
  ])('%s is %d by default [%s; from memory, with its reason in docs/theory]', (path, value) => {
    const design = defineSystem({ ...plainInput, heater: { kind: 'instantaneous-gas' } });
    const [part, field] = path.split('.') as [keyof typeof design, string];
    expect((design[part] as unknown as Record<string, number>)[field]).toBeCloseTo(value, 9);
    expect(design.assumptions.some((assumption) => assumption.path === path)).toBe(true);
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

  it('takes the full names of scales; a difference of 9 fahrenheit or 5 celsius is 5 K [definition of the scales]', () => {
    for (const written of ['9 fahrenheit', '5 celsius', '9 degF', '5 K']) {
      const design = defineSystem({ ...plainInput, control: { highLimitHysteresis: written } });
      expect(design.control.highLimitHysteresis).toBeCloseTo(5, 10);
    }
    const warm = defineSystem({ ...plainInput, draw: { dailyVolume: 0.2, tapTemperature: '45 celsius' } });
    expect(warm.draw.tapTemperature).toBeCloseTo(45, 10);
  });

  it('says limits in the unit that was written [US gallon, pound-force per square inch: NIST SP 811]', () => {
    const said = (change: object) => faultsOf({ ...plainInput, ...change })[0]!.expected;
    expect(said({ loop: { pressure: '900 psi' } })).toBe('a value from 0 to 145 psi'); // 1 MPa/6894.757 Pa
    expect(said({ tank: { volume: '90000 gal' } })).toBe('a value from 5.283 to 13210 gal');
    expect(said({ tank: { volume: '90000' } })).toBe('a value from 0.02 to 50 m³');
    expect(said({ draw: { dailyVolume: 0.2, tapTemperature: '200 degF' } })).toBe('a value from 77 to 140 degF');
    expect(said({ control: { highLimitHysteresis: '900 degF' } })).toBe('a value from 0.9 to 72 degF');
    expect(said({ heater: { burnerEfficiency: '300 %' } })).toBe('a value from 20 to 100 %');
  });

  it('names all faults at once, by path, with what was found and the unit expected [requirement]', () => {
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

  it('says in words where, what was found, what was expected and what to do [requirement]', () => {
    try {
      defineSystem({ ...plainInput, tank: { volume: '80' } });
      expect.unreachable();
    } catch (error) {
      expect((error as Error).message).toBe(
        'tank.volume: found "80", expected a value from 0.02 to 50 m³. Give a number in m³ or a string with a unit, such as "80 gal".',
      );
    }
  });

  it.each([undefined, null, 3, 'x', []])('refuses %j as a whole [requirement]', (input) => {
    expect(faultsOf(input).length).toBeGreaterThan(0);
  });

  it('takes no key from a prototype and writes to none [requirement]', () => {
    const hostile = JSON.parse('{"__proto__": {"polluted": true}, "constructor": {"prototype": {"polluted": true}}}');
    const faults = faultsOf({
      ...plainInput,
      ...hostile,
      tank: Object.assign(JSON.parse('{"__proto__": {"volume": 0.3}}'), {}),
    });
    expect(faults.some((fault) => fault.path === 'tank.volume')).toBe(true);
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });

  it('cuts what it quotes and refuses long strings without parsing them [requirement]', () => {
    const [fault] = faultsOf({ ...plainInput, tank: { volume: `${'9'.repeat(100_000)} gal` } });
    expect(fault!.path).toBe('tank.volume');
    expect(fault!.found.length).toBeLessThan(60);
  });

  it.each([
    ['array.collector.incidenceModifier', { angles: [0, 50], values: [1] }],
    ['array.collector.incidenceModifier.angles', { angles: [10, 50], values: [1, 0.9] }],
    ['array.collector.incidenceModifier', 0.1],
  ])('names a bad incidence modifier at %s [requirement]', (path, incidenceModifier) => {
    const collector = { ...plainInput.array.collector, incidenceModifier };
    const paths = faultsOf({ ...plainInput, array: { ...plainInput.array, collector } }).map((fault) => fault.path);
    expect(paths).toContain(path);
  });

  it.each([
    ['pump.drive', { pump: { drive: 'steam' } }],
    ['pump.openFlow', { pump: { openFlow: 0.01 } }],
    ['pump.motor.windingResistance', { pump: { motor: { windingResistance: 20 } } }],
    ['pump.motor.frictionCurrent', { pump: { motor: { frictionCurrent: 5 } } }],
    ['pump.motor.startCurrent', { pump: { motor: { frictionCurrent: 0.2, startCurrent: 0.1 } } }],
    ['pv.module.area', { pv: { module: { area: 'large' } } }],
    ['control.mode', { control: { mode: 'moon' } }],
    ['control.mode', { pump: { drive: 'mains' }, control: { mode: 'power' } }],
    ['control.difference.stop', { control: { difference: { start: 4, stop: 5 } } }],
    ['control.difference.minimumRunTime', { control: { difference: { minimumRunTime: '2 days' } } }],
    ['control.schedule', { control: { schedule: [[22, 4]] } }],
    ['control.schedule', { control: { schedule: [] } }],
    ['control.outages.0.from', { control: { outages: [{ from: '02-29', to: '03-01', kind: 'pump' }] } }],
    ['control.outages.1.kind', { control: { outages: [week, { ...week, kind: 'roof' }] } }],
    ['control.outages', { control: { outages: 'never' } }],
  ])('names a bad pump or control at %s [requirement]', (path, change) => {
    expect(faultsOf({ ...plainInput, ...change }).map((fault) => fault.path)).toContain(path);
  });

  it('derives the motor from the rated point and lists only the defaults of the drive and mode in use [requirement]', () => {
    const listed = (input: object) => defineSystem({ ...plainInput, ...input }).assumptions.map(({ path }) => path);
    const { motor } = defineSystem({ ...plainInput, pump: { drive: 'direct', motor: { ratedVoltage: '24 V' } } }).pump;
    expect(motor.windingResistance).toBeCloseTo(0.15 * 24 * (24 / 16), 12); // 15 % of 24 V at 16 W/24 V
    expect(motor.frictionCurrent).toBeCloseTo(0.1 * (10 / 24), 12); // a tenth of 10 W/24 V
    expect(motor.startCurrent).toBeCloseTo(2 * motor.frictionCurrent, 12);
    expect(listed({}).filter((path) => /motor|difference|schedule/.test(path))).toEqual([]);
    expect(listed({ pump: { drive: 'direct' } })).toContain('pump.motor.windingResistance');
    expect(listed({ pump: { drive: 'direct' } })).not.toContain('pump.boosterEfficiency');
    const onMains = listed({ pump: { drive: 'mains' } });
    expect(onMains).toContain('control.difference.start');
    expect(onMains).toContain('control.mode');
    expect(onMains.filter((path) => path.startsWith('pv.'))).toEqual([]);
    expect(listed({ control: { mode: 'schedule' } })).toContain('control.schedule');
  });
});
