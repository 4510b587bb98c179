import { DesignError, defineSystem, RunFault, type SystemInput, simulate } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { isQuiet } from '../../../packages/sim-core/src/year/events.ts';
import { requireFinite } from '../../../packages/sim-core/src/year/finite.ts';
import { assemble } from '../../../packages/sim-core/src/year/machine.ts';
import { compilePumpDrivers } from '../../../packages/sim-core/src/year/pump-drivers.ts';
import type { RunColumns } from '../../../packages/sim-core/src/year/result.ts';
import { inventedValley, plainInput, sum } from '../../examples.ts';
import { EARLY_SUMMER, liveSpan } from '../../property/span.ts';

const weather = await inventedValley();
/** A year by coarse steps. */
const run = (input: Partial<SystemInput>) =>
  simulate(defineSystem({ ...plainInput, ...input }), weather, { stepsPerHour: 2 });
/** The first three weeks of January. */
const weeks = (input: Partial<SystemInput>) => liveSpan(defineSystem({ ...plainInput, ...input }), weather, 0, 500);
const KWH = 3.6e6;

describe('mains as warm as the taps want', () => {
  // Invented, of a hot climate.
  const mains = [15, 18, 24, 30, 35, 39, 40, 40, 37, 32, 25, 18];

  it.each([{ kind: 'stored-gas' }, { kind: 'instantaneous-gas' }, { kind: 'element' }] as const)(
    'ask for no heat and draw no hot water, with $kind [requirement]',
    (heater) => {
      const draw = { dailyVolume: 0.2, tapTemperature: 38, mains };
      // From June, whose mains are nearly as warm, to the end of July.
      const { columns } = liveSpan(defineSystem({ ...plainInput, draw, heater }), weather, 3624, 5088, 2);
      const july = (column: Float64Array) => column.subarray(4344 - 3624);
      expect(Math.min(...july(columns.mainsTemperature))).toBeGreaterThan(38);
      expect(sum(july(columns.hotVolume))).toBe(0);
      expect(sum(july(columns.tapHeatAsked))).toBe(0);
      expect(sum(july(columns.tapHeat))).toBe(0);
      expect(sum(july(columns.tapVolume))).toBeCloseTo(0.2 * 31, 9);
      // By hand, hour by hour.
      const asked = columns.tapVolume.map(
        (volume, hour) => volume * 4.1468e6 * Math.max(38 - columns.mainsTemperature[hour]!, 0),
      );
      expect(sum(columns.tapHeatAsked) / sum(asked)).toBeCloseTo(1, 9);
    },
  );
});

describe('an hour without light, draw and pump', () => {
  it('is not taken in one step where an element stands at the tank’s very bottom, or a load draws there [requirement]', () => {
    const machine = assemble(defineSystem(plainInput), weather, {});
    const { drivers, house } = machine;
    const hour = drivers.tapVolume.indexOf(0);
    const quiet = (elementNode: number, loadNode: number) =>
      isQuiet({ ...machine, house: { ...house, elementNode, loadNode } }, hour);
    expect([quiet(-1, -1), quiet(0, -1), quiet(-1, 0)]).toEqual([true, false, false]);
  });
});

describe('a coil within one layer of the tank', () => {
  it('gives nearly the heat of one that reaches further up [sense]', () => {
    const by = (top: number) =>
      defineSystem({ ...plainInput, tank: { volume: 0.3, nodes: 5 }, coil: { bottom: 0.02, top } });
    expect(assemble(by(0.18), weather, {}).loop.circuit.coil.share).toEqual(Float64Array.of(1));
    const heat = (top: number) => sum(liveSpan(by(top), weather, 3000, 3024).columns.coilHeat);
    expect(Math.abs(heat(0.18) / heat(0.38) - 1)).toBeLessThan(0.1);
  });
});

describe('leaks that empty the loop within the hour', () => {
  it.each([
    ['20 L/h', true],
    ['30 L/h', true],
    ['30 L/h', false],
  ])('%s, make-up %s: weeks of finite numbers [requirement]', (leak, makeUp) => {
    const { columns, loop } = weeks({ loop: { leak, makeUp } });
    expect(() => requireFinite(columns, 0, 500)).not.toThrow();
    expect(loop.lost).toBeGreaterThan(0.005);
    expect(columns.glycolMassFraction[499]).toBeGreaterThanOrEqual(0);
    if (makeUp)
      expect(columns.freezingPoint[200]).toBeGreaterThan(-1); // water, by then
    else expect(sum(columns.loopFlow)).toBeLessThan(1e-3);
  });

  it('of a loop 14 m high, which air pressure cannot hold up, leave dregs and finite numbers [requirement]', () => {
    const { columns } = weeks({ loop: { leak: '30 L/h', staticHeight: 14 } });
    expect(() => requireFinite(columns, 0, 500)).not.toThrow();
    expect(columns.glycolMassFraction[499]).toBeCloseTo(0.4, 6);
  });
});

describe('a number that is not finite', () => {
  const columns = { first: new Float64Array(8760), second: new Float64Array(8760) } as unknown as RunColumns;

  it('is a fault of the program, which names the column and the first such hour [requirement]', () => {
    const { first, second } = columns as unknown as Record<string, Float64Array>;
    expect(() => requireFinite(columns, 0, 8760)).not.toThrow();
    first![4000] = Number.NaN;
    second![123] = Number.POSITIVE_INFINITY;
    second![124] = Number.NEGATIVE_INFINITY;
    expect(() => requireFinite(columns, 0, 8760)).toThrow(RunFault);
    expect(() => requireFinite(columns, 0, 8760)).toThrow(/second, hour 123: found Infinity/);
    expect(() => requireFinite(columns, 200, 8760)).toThrow(/first, hour 4000: found NaN/);
    expect(() => requireFinite(columns, 5000, 8760)).not.toThrow();
  });
});

describe('water that would freeze in the tank', () => {
  it('is said, with its hours [requirement; ice is not modelled]', () => {
    const { columns, notices } = run({
      tank: { volume: 0.1, roomTemperature: -15 },
      draw: { dailyVolume: 0.2, holidays: ['11-15..02-28'] },
    });
    const hours = columns.tankBottomTemperature.filter((temperature) => temperature <= 0).length;
    expect(hours).toBeGreaterThan(0);
    expect(notices.find(({ code }) => code === 'tank-freezing')?.hours).toBe(hours);
    expect(run({}).notices.map(({ code }) => code)).not.toContain('tank-freezing');
  });
});

describe('the relief valve of a tank too small for its panels', () => {
  it.each([
    [4, 0.1],
    [10, 0.05],
  ])('%d panels of 2 m² on %d m³: no step passes its setting [what the valve is for]', (panels, volume) => {
    const array = { ...plainInput.array, panels };
    const design = defineSystem({ ...plainInput, array, tank: { volume }, control: { highLimit: null } });
    const { balance, columns } = liveSpan(design, weather, ...EARLY_SUMMER);
    expect(Math.max(...columns.tankMaximumTemperature)).toBeLessThanOrEqual(99);
    expect(Math.max(...columns.tankMaximumTemperature)).toBeGreaterThan(98);
    expect(sum(columns.reliefHeat) / KWH).toBeGreaterThan(10);
    expect(balance.tank.worstRelative).toBeLessThan(1e-9);
  });
});

describe('a tank of more nodes than its plate exchanger’s stream can be followed through', () => {
  it('is refused with the number that can [requirement]', () => {
    const nodes = (count: number) => run({ tank: { volume: 0.02, nodes: count }, loop: { exchanger: 'plate' } });
    expect(() => nodes(400)).toThrow(DesignError);
    expect(() => nodes(400)).toThrow(/tank\.nodes: found 400, expected at most \d+/);
  });
});

describe('light or cells beyond the module’s tables', () => {
  it('are counted by the hour, once however many steps, and not in the dark [by hand]', () => {
    // Four hours of four steps: dark in hot air; two steps of hot cells; ordinary; one step of too much light.
    const light = Float64Array.of(0, 0, 0, 0, 0, 500, 500, 0, 800, 800, 800, 800, 100, 100, 3000, 100);
    const air = Float64Array.of(200, 200, 20, 20);
    expect(compilePumpDrivers(defineSystem(plainInput), light, air, 4).heldModuleHours).toBe(2);
  });
});
