import { DesignError, defineSystem, type SystemInput } from '@noonloop/sim-core';
import { pumpOperatingPoint, steamReach } from '@noonloop/sim-core/formulas';
import { describe, expect, it } from 'vitest';
import { circulatePair } from '../../../packages/sim-core/src/physics/loop/coil-pair.ts';
import { circulate } from '../../../packages/sim-core/src/physics/loop/coil-step.ts';
import { mayTurn, turnValve } from '../../../packages/sim-core/src/year/charge.ts';
import { assemble } from '../../../packages/sim-core/src/year/machine.ts';
import { closeSecond } from '../../../packages/sim-core/src/year/second-tank.ts';
import { inventedValley, plainInput, sum } from '../../examples.ts';
import { EARLY_SUMMER, type Lived, liveSpan } from '../../property/span.ts';

const weather = await inventedValley();
type Second = NonNullable<SystemInput['tank']['second']>;
const roof = { ...plainInput.array, panels: 3 };
const design = (second: Second | null, more: Partial<SystemInput> = {}, volume = 0.15) =>
  defineSystem({ ...plainInput, array: roof, ...more, tank: { volume, second } });
/** Five weeks of early summer by steps of twenty minutes: what is asked here is of hours, and a whole year far dearer. */
const WEEKS = [2900, 2900 + 35 * 24] as const;
const run = (second: Second | null, more: Partial<SystemInput> = {}, volume = 0.15): Lived =>
  liveSpan(design(second, more, volume), weather, ...WEEKS, 3);
const heat = (result: Lived): number => sum(result.columns.solarHeat);
const mains = { pump: { drive: 'mains' } } as const;

describe('steps and books of two solar tanks', () => {
  const machine = assemble(design({ charging: 'in-turn' }), weather, {});
  const { control, loop, tank } = machine;
  const second = machine.second!;

  it('look at the valve by the clock only under a controller by difference [requirement]', () => {
    tank.temperature.fill(loop.circuit.absorber[0]!);
    control.running = true;
    const valve = { ...second.valve!, full: false, secondFull: false, since: 1e9 };
    // No difference: neither on nor off is near.
    const by = (mode: 'difference' | 'power') =>
      mayTurn({ ...machine, control: { ...control, mode, stopDifference: 10, startDifference: 20 } }, valve, 0, 1);
    expect([by('difference'), by('power')]).toEqual([true, false]);
  });

  it('measure the second tank’s residual against all that flowed, whatever its sign [definition]', () => {
    second.columns.coilHeat[0] = 2;
    second.columns.loss[0] = -1;
    second.passed = -3;
    second.relieved = 5;
    closeSecond(second, 0);
    expect(second.entry).toMatchObject({ income: 2, spent: 1, through: 11 });
  });
});

describe('two solar tanks', () => {
  const ways = ['series', 'in-turn', 'first', 'second'] as const;

  it.each(ways)('charged %s keep their energy, each and both [conservation, 1e-9]', (charging) => {
    const second: Second = { charging, volume: 0.12, roomTemperature: 8, coil: { length: 8 }, inletDiameter: 0.015 };
    const result = run(second, { ...mains, heater: { kind: 'element' }, control: { highLimit: 75 } });
    const { balance, columns, peak, peakOfFirst } = result.secondTank!;
    for (const { worstRelative } of [balance, ...Object.values(result.balance)])
      expect(worstRelative).toBeLessThan(1e-9);
    expect(sum(columns.coilHeat) > 1e8).toBe(charging !== 'first');
    expect(sum(columns.coilHeat) / sum(result.columns.coilHeat) > 0.999999).toBe(charging === 'second');
    expect(sum(result.columns.tankLoss)).toBeGreaterThan(sum(columns.loss));
    expect(Math.max(...result.columns.tankMaximumTemperature)).toBe(Math.max(peak, peakOfFirst));
    expect(Math.max(...columns.maximumTemperature)).toBe(peak);
  });

  it.each([
    ['series', 'peakOfFirst'],
    ['second', 'peak'],
  ] as const)(
    'charged %s open their relief valves where nothing limits them, and book what leaves [conservation]',
    (charging, peak) => {
      const result = run(
        { charging, volume: 0.08 },
        { ...mains, array: { ...roof, panels: 6 }, draw: { dailyVolume: 0.05 }, control: { highLimit: null } },
        0.1,
      );
      expect(sum(result.columns.reliefVolume)).toBeGreaterThan(0.1);
      expect(result.secondTank![peak]).toBe(99);
      for (const { worstRelative } of [result.secondTank!.balance, ...Object.values(result.balance)])
        expect(worstRelative).toBeLessThan(1e-9);
    },
  );

  it('deliver about what one tank of their water and their loss does [sense; 3 %: the coil of both is twice as long]', () => {
    const loss = { lossCoefficient: 1 };
    const run = (tank: SystemInput['tank']) =>
      liveSpan(defineSystem({ ...plainInput, array: roof, ...mains, tank }), weather, ...WEEKS, 3);
    const one = run({ volume: 0.3, lossCoefficient: 2 });
    for (const charging of ['series', 'in-turn'] as const) {
      const two = run({ volume: 0.15, ...loss, second: { charging } });
      expect(Math.abs(heat(two) / heat(one) - 1)).toBeLessThan(0.03);
    }
  });

  it('with coils in series the hot tank gives to the cold one what a valve leaves in it [requirement]', () => {
    // Spring, when the second is cold most of the day.
    const spring = (charging: Second['charging']) => liveSpan(design({ charging }, mains), weather, 1400, 3080, 3);
    const [series, inTurn] = [spring('series'), spring('in-turn')];
    expect(heat(inTurn)).toBeGreaterThan(heat(series));
    expect(sum(inTurn.columns.heatGivenBack)).toBeLessThan(0.1 * sum(series.columns.heatGivenBack));
    const cooled = ({ columns, secondTank }: Lived) =>
      columns.coilHeat.reduce((all, both, hour) => all - Math.min(both - secondTank!.columns.coilHeat[hour]!, 0), 0);
    expect(cooled(series)).toBeGreaterThan(10 * cooled(inTurn));
  });

  it('charged in turn: the first gets more of the heat the later the valve turns [requirement]', () => {
    const ofFirst = [30, 60, 80].map((divertAt) => {
      const { columns, secondTank } = run({ charging: 'in-turn', divertAt }, mains);
      return 1 - sum(secondTank!.columns.coilHeat) / sum(columns.coilHeat);
    });
    expect(ofFirst[0]!).toBeLessThan(ofFirst[1]!);
    expect(ofFirst[1]!).toBeLessThan(ofFirst[2]!);
  });

  it('charged in turn: collectors too cool for the first charge the second after five minutes, and not once they are warm [requirement]', () => {
    const machine = assemble(design({ charging: 'in-turn', divertAt: 80 }, mains), weather);
    const { loop, second, tank } = machine;
    tank.temperature.fill(60);
    second!.tank.temperature.fill(20);
    const afterMinute = (collectors: number) => {
      loop.circuit.absorber.fill(collectors);
      turnValve(machine, second!, second!.valve!, 60);
      return machine.charged === second!.tank ? 'second' : 'first';
    };
    const charged = [50, 50, 50, 50, 50, 50, 80].map(afterMinute);
    expect(charged.join(' ')).toBe('first first first first second second first');
  });

  it('of which the first alone is charged take warmth from the cellar for the cold water [requirement]', () => {
    const { secondTank } = run({ charging: 'first', roomTemperature: 25 });
    expect(sum(secondTank!.columns.loss)).toBeLessThan(0);
    expect(secondTank!.peak).toBeLessThan(25);
  });

  it('of which the second alone is charged are, without the other’s loss, a tank and a long pipe [requirement]', () => {
    // Ten weeks, so that how both began counts for less.
    const alone = liveSpan(design(null), weather, ...EARLY_SUMMER);
    const input: SystemInput = { ...plainInput, array: roof, tank: { volume: 0.02, lossCoefficient: 0, nodes: 4 } };
    const second = { ...alone.design.tank, second: undefined, load: undefined, roomByMonth: undefined };
    const { initialProfile: _, load: __, roomByMonth: ___, second: ____, ...own } = second;
    const whole = defineSystem({ ...input, tank: { ...input.tank, second: { ...own, charging: 'second' } } });
    const behind = liveSpan(whole, weather, ...EARLY_SUMMER);
    // The loop does not know of the tank behind, and that one only hands on.
    expect(sum(behind.columns.coilHeat) / sum(alone.columns.coilHeat)).toBeCloseTo(1, 2);
    expect(heat(behind) / heat(alone)).toBeCloseTo(1, 2);
  });
});

describe('the loop through two coils', () => {
  const twin = design({ charging: 'in-turn' }, mains);

  it('led past the second is the loop with the first alone, and the other way round [identity]', () => {
    const pair = assemble(twin, weather);
    const single = assemble(design(null, mains), weather);
    for (const { loop, tank } of [pair, single]) {
      tank.temperature.forEach((_, node) => {
        tank.temperature[node] = 25 + node;
      });
      Object.assign(loop.step.conditions, { absorbed: 600, ambient: 10, room: 18, duration: 600 });
      Object.assign(loop.step.stream, { flow: 6e-5, capacityRate: 240 });
    }
    pair.second!.tank.temperature.set(pair.tank.temperature);
    for (const isSecond of [false, true]) {
      pair.loop.circuit.coil.open = !isSecond;
      pair.loop.circuit.further!.coil.open = isSecond;
      const { further } = pair.loop.step;
      for (const { loop } of [pair, single]) {
        loop.circuit.absorber.fill(30);
        loop.circuit.pipe.fill(20);
      }
      for (const { coil } of [single.loop.circuit, pair.loop.circuit, pair.loop.circuit.further!]) {
        coil.temperature.fill(22);
        coil.passed = false;
        coil.surface = 0.5;
      }
      for (let time = 0; time < 5; time++) {
        circulatePair(pair.loop.circuit, pair.loop.step);
        circulate(single.loop.circuit, single.loop.step);
      }
      const given = isSecond ? further!.exchange : pair.exchange;
      expect(given.coilHeat / single.exchange.coilHeat).toBeCloseTo(1, 12);
      expect((isSecond ? pair.exchange : further!.exchange).coilHeat).toBe(0);
      pair.loop.circuit.absorber.forEach((value, node) => {
        expect(value).toBeCloseTo(single.loop.circuit.absorber[node]!, 10);
      });
    }
  });

  it('in series settles where each coil’s effectiveness puts it [closed form of a steady stream through two held tanks]', () => {
    const { loop, second, tank, exchange } = assemble(design({ charging: 'series' }, mains), weather);
    const { circuit, step } = loop;
    Object.assign(step.conditions, { absorbed: 700, ambient: 20, room: 18, duration: 5 });
    Object.assign(step.stream, { flow: 6e-5, capacityRate: 240 });
    for (let time = 0; time < 4000; time++) {
      tank.temperature.fill(50);
      second!.tank.temperature.fill(20);
      circulatePair(circuit, step);
    }
    const { further } = step;
    const effect = (conductance: number) => 1 - Math.exp(-conductance / 240);
    const inlet = circuit.pipe[1]!;
    const between = inlet - effect(step.stream.conductance) * (inlet - 50);
    const outlet = between - effect(further!.stream.conductance) * (between - 20);
    // Each step begins with the water held; within its 5 s that warms by what the coils give.
    expect(exchange.coilHeat / 5 / (240 * (inlet - between))).toBeCloseTo(1, 2);
    expect(further!.exchange.coilHeat / 5 / (240 * (between - outlet))).toBeCloseTo(1, 2);
  });

  it('has the friction of both coils in series, of one by a valve [requirement]', () => {
    const flow = (of: Second | null) =>
      pumpOperatingPoint(design(of), { electricalPower: 10, fluidTemperature: 40 }).flow;
    expect(flow({ charging: 'series' })).toBeLessThan(flow(null));
    expect(flow({ charging: 'in-turn' })).toBe(flow(null));
    expect(flow({ charging: 'second', coil: { length: 24 } })).toBeCloseTo(flow({ charging: 'series' }), 12);
  });

  it('holds the liquid of both: its vessel is larger [requirement]', () => {
    const needed = (of: Second | null) => steamReach(design(of), 101_325).vesselNeeded;
    expect(needed({ coil: { length: 60 } })).toBeGreaterThan(needed(null));
  });
});

describe('a second tank as written', () => {
  it('is as the first where nothing else is said, and in proportion where its size is [requirement]', () => {
    const { tank, coil } = design({});
    const { charging, coil: own, divertAt, inletDiameter, roomTemperature, sedimentDepth, ...alike } = tank.second!;
    expect({ charging, divertAt, inletDiameter, roomTemperature, sedimentDepth }).toEqual({
      charging: 'series',
      divertAt: 60,
      inletDiameter: null,
      roomTemperature: null,
      sedimentDepth: 0,
    });
    expect(own).toEqual(coil);
    for (const [key, value] of Object.entries(alike)) expect(value).toBe(tank[key as 'volume']);
    const half = design({ volume: 0.075 }).tank.second!;
    // Alike bodies: lengths by the cube root of the volume, outsides by its square.
    expect(half.height / tank.height).toBeCloseTo(Math.cbrt(0.5), 12);
    expect(half.lossCoefficient / tank.lossCoefficient).toBeCloseTo(0.5 ** (2 / 3), 12);
  });

  it('lists its defaults, and is read again as it was written out [requirement]', () => {
    const written = design({ charging: 'in-turn', volume: 0.1 });
    expect(written.assumptions.map(({ path }) => path)).toContain('tank.second.divertAt');
    expect(design({}).assumptions.map(({ path }) => path)).not.toContain('tank.second.divertAt');
    expect(defineSystem(JSON.parse(JSON.stringify(written)))).toEqual(written);
    expect(design(null)).toEqual(defineSystem({ ...plainInput, array: roof, tank: { volume: 0.15 } }));
  });

  it.each([
    [{ loop: { exchanger: 'plate' } }, {}, /tank\.second\.charging.*"first": a plate/],
    [{ loop: { layout: 'direct', fluid: 'water' } }, {}, /tank\.second\.charging.*"first": a plate/],
    [{ loop: { checkValve: false } }, {}, /tank\.second\.charging.*one coil only/],
    [
      { ...mains, control: { nightCooling: { above: 80, until: 60 } } },
      { charging: 'in-turn' },
      /tank\.second\.charging.*nightCooling/,
    ],
    [{ control: { highLimit: 55 } }, { charging: 'in-turn' }, /tank\.second\.divertAt.*high limit, 55/],
    [{}, { sedimentDepth: 0.9 }, /tank\.second\.sedimentDepth/],
    [{}, { volume: 0.001 }, /tank\.second\.volume/],
  ] as const)('refuses %j with %j [requirement]', (more, second, words) => {
    const refused = () => design(second as Second, more as Partial<SystemInput>);
    expect(refused).toThrow(DesignError);
    expect(refused).toThrow(words);
  });

  it('with a plate exchanger may stand uncharged before the first [requirement]', () => {
    const result = run({ charging: 'first' }, { loop: { exchanger: 'plate' } });
    for (const { worstRelative } of [result.secondTank!.balance, ...Object.values(result.balance)])
      expect(worstRelative).toBeLessThan(1e-9);
  });
});
