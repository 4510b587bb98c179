import { DesignError, defineSystem } from '@noonloop/sim-core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MONTH_STARTS } from '../../packages/sim-core/src/physics/calendar.ts';
import { drawSchedule } from '../../packages/sim-core/src/physics/draw/schedule.ts';
import { coolByLoad } from '../../packages/sim-core/src/physics/tank/load.ts';
import { compileTank, restTank, tankHeat } from '../../packages/sim-core/src/physics/tank/tank.ts';
import { compileHouseDrivers } from '../../packages/sim-core/src/year/house-drivers.ts';
import { inventedValley, plainInput, sum } from '../examples.ts';
import { liveSpan } from '../property/span.ts';
import { hasShared } from '../shared.ts';
import { readRealAt } from '../weather-io/real-files.ts';
import { hasMoreCases, moreCase, moreCases } from './more-cases.ts';

interface HeldCase {
  readonly UA_W_K: number;
  readonly T_tank_C: number;
  readonly room_by_month_C: readonly number[];
  readonly loss_by_month_kWh: readonly number[];
  readonly outdoor_file: string;
  readonly loss_outdoor_by_month_kWh: readonly number[];
}

interface ChangeCase {
  readonly UA_W_K: number;
  readonly capacity_J_K: number;
  readonly T_start_C: number;
  readonly hours_before: number;
  readonly room_before_C: number;
  readonly hours_after: number;
  readonly room_after_C: number;
  readonly T_at_change_C: number;
  readonly T_end_C: number;
  readonly loss_kWh: number;
}

const STIRRED = { ...defineSystem(plainInput).tank, nodes: 4, verticalConductivity: 100, sedimentDepth: 0 };
const roomOf = (tank: object, air: Float64Array) => {
  const design = defineSystem({ ...plainInput, tank: { volume: 0.3, ...tank } });
  const light = new Float64Array(8760);
  const schedule = drawSchedule(design.draw, new Float64Array(8760).fill(10));
  return compileHouseDrivers(design, schedule, { light, air, cellRise: 0, blackout: new Uint8Array(8760) }).room;
};
const months = (value: (hour: number) => number) =>
  Array.from({ length: 12 }, (_, month) => {
    let total = 0;
    for (let hour = MONTH_STARTS[month]!; hour < MONTH_STARTS[month + 1]!; hour++) total += value(hour);
    return total / 1000;
  });

describe.skipIf(!hasMoreCases)('air around the tank by month, or from the file [shared cases, rooms]', () => {
  const held = hasMoreCases ? [moreCase<HeldCase>('rooms', 'held_at_one_temperature')] : [];
  it.each(held)('UA $UA_W_K W/K at $T_tank_C °C: loss month by month', (given) => {
    const room = roomOf({ roomByMonth: given.room_by_month_C }, new Float64Array(8760))!;
    const found = months((hour) => given.UA_W_K * (given.T_tank_C - room[hour]!));
    found.forEach((loss, month) => {
      expect(loss).toBeCloseTo(given.loss_by_month_kWh[month]!, 6);
    });
  });

  it.each(held.filter(({ outdoor_file }) => hasShared(`weather/${outdoor_file}`)))(
    'UA $UA_W_K W/K in the outdoor air of $outdoor_file',
    async (given) => {
      const { columns } = await readRealAt(`weather/${given.outdoor_file}`);
      const room = roomOf({ roomByMonth: 'outdoors' }, columns.dryBulb)!;
      const found = months((hour) => given.UA_W_K * (given.T_tank_C - room[hour]!));
      // Our hours stand for the middle between two readings, the case's for the reading: 0.5 % of a month.
      found.forEach((loss, month) => {
        expect(Math.abs(loss / given.loss_outdoor_by_month_kWh[month]! - 1)).toBeLessThan(0.005);
      });
    },
  );

  it.each(moreCases<ChangeCase>('rooms', 'cooling_over_a_change_of_month'))(
    'a stirred tank cools over a change of month, $room_before_C to $room_after_C °C',
    (given) => {
      const tank = compileTank(
        {
          ...STIRRED,
          volume: given.capacity_J_K / 4.1468e6,
          lossCoefficient: given.UA_W_K,
          initialTemperature: given.T_start_C,
        },
        [4],
      );
      const mean = () => tankHeat(tank) / (4 * tank.nodeCapacity);
      let lost = 0;
      const wait = (hours: number, room: number) => {
        tank.room = room;
        for (let step = 0; step < 4 * hours; step++) lost += restTank(tank, 4);
      };
      wait(given.hours_before, given.room_before_C);
      expect(Math.abs(mean() - given.T_at_change_C)).toBeLessThan(0.02); // four layers, hardly apart
      wait(given.hours_after, given.room_after_C);
      expect(Math.abs(mean() - given.T_end_C)).toBeLessThan(0.04);
      expect(Math.abs(lost / 3.6e6 / given.loss_kWh - 1)).toBeLessThan(0.002);
    },
  );
});

describe('a tank that starts from a profile [by hand]', () => {
  const nodes = (initialProfile: readonly number[], count: number) => [
    ...compileTank({ ...STIRRED, nodes: count, initialProfile }, [1]).temperature,
  ];
  it('has its layers where as many are given, and straight lines between their middles else', () => {
    expect(nodes([20, 30, 45, 60], 4)).toEqual([20, 30, 45, 60]);
    expect(nodes([20, 60], 4)).toEqual([20, 30, 50, 60]);
  });

  it('turns over where colder water is given above warmer', () => {
    expect(nodes([60, 20, 30, 70], 4)).toEqual([110 / 3, 110 / 3, 110 / 3, 70]);
  });
});

describe('a pool or rooms on the tank', () => {
  it('takes from the hottest layers below its height, never under the floor, and all that it takes is missing [conservation]', () => {
    const layers = fc.array(fc.double({ min: 5, max: 90, noNaN: true }), { minLength: 4, maxLength: 12 });
    fc.assert(
      fc.property(
        layers,
        fc.double({ min: 0, max: 400, noNaN: true }),
        fc.double({ min: 5, max: 60, noNaN: true }),
        (given, wanted, floor) => {
          const before = Float64Array.from([...given].sort((a, b) => a - b));
          const after = before.slice();
          const at = Math.trunc(before.length / 2);
          const taken = coolByLoad(after, at, 1, wanted, floor);
          expect(taken).toBeLessThanOrEqual(wanted + 1e-9);
          expect(sum(before) - sum(after)).toBeCloseTo(taken, 8);
          for (let node = 0; node < before.length; node++) {
            if (node > at || before[node]! <= floor) expect(after[node]).toBe(before[node]);
            else expect(after[node]!).toBeGreaterThanOrEqual(floor - 1e-9);
            if (node > 0) expect(after[node]!).toBeGreaterThanOrEqual(after[node - 1]! - 1e-9);
          }
          const could = before.slice(0, at + 1).reduce((total, value) => total + Math.max(value - floor, 0), 0);
          expect(taken).toBeCloseTo(Math.min(wanted, could), 8);
        },
      ),
      // Asked for a rounding more than there is: the cold layer stays as it is.
      {
        examples: [
          [
            [19.009425392572712, 19.009425392572712, 19.009425392572712, 5, 19, 19],
            16.000000000000004,
            13.676092059239378,
          ],
        ],
      },
    );
  });

  it('keeps to its power, day, days and least temperature; hot water goes first [requirement]', async () => {
    const weather = await inventedValley();
    // From before its first day to after its last.
    const [first, last] = [110, 170];
    const run = (load: object | null) =>
      liveSpan(
        defineSystem({
          ...plainInput,
          array: { ...plainInput.array, panels: 4 },
          tank: { volume: 0.3, load },
        } as never),
        weather,
        24 * first,
        24 * last,
      );
    const load = { temperature: 26, power: 1500, dailyHeat: '5 kWh', days: ['05-01..06-10'], leastTemperature: 50 };
    const given = run(load);
    const { balance, columns } = given;
    const days = Array.from({ length: last - first }, (_, day) =>
      sum(columns.loadHeat.subarray(24 * day, 24 * day + 24)),
    );
    expect(Math.max(...days)).toBeCloseTo(5 * 3.6e6, 0);
    expect(Math.max(...columns.loadHeat)).toBeLessThanOrEqual(1500 * 3600 + 1e-6);
    expect(days.filter((heat, day) => (first + day < 120 || first + day > 160) && heat !== 0)).toEqual([]);
    expect(sum(columns.loadHeat)).toBeGreaterThan(50 * 3.6e6);
    expect(balance.whole.worstRelative).toBeLessThan(1e-6);
    // Rather the peaks of a hot tank than the hot water: most of what is delivered stays.
    const without = run(null);
    expect(sum(columns.solarHeat)).toBeGreaterThan(0.85 * sum(without.columns.solarHeat));
    expect(Math.max(...columns.tankMaximumTemperature)).toBeLessThanOrEqual(
      Math.max(...without.columns.tankMaximumTemperature),
    );
  });
});

describe('a boiler by a coil of its own in the solar tank [requirement]', async () => {
  const weather = await inventedValley();
  // Three weeks of late winter: the heater works every day.
  const run = (heater: object) => liveSpan(defineSystem({ ...plainInput, heater } as never), weather, 45 * 24, 66 * 24);

  it('with ample coil and power is an element of the same height; by a small coil less water reaches 60 °C', () => {
    const ample = run({ kind: 'boiler-coil', burnerPower: 3000, coilConductance: 5000, boilerTemperature: 95 });
    const element = run({ kind: 'element', burnerPower: 3000 });
    expect(sum(ample.columns.heaterHeat)).toBeCloseTo(sum(element.columns.heaterHeat), 0);
    expect(sum(ample.columns.heaterFuel)).toBeCloseTo(sum(ample.columns.heaterHeat) / 0.8, 0);
    const small = run({ kind: 'boiler-coil', coilConductance: 30, boilerTemperature: 70 });
    const cool = ({ columns }: ReturnType<typeof run>) => sum(columns.undisinfectedVolume) / sum(columns.hotVolume);
    expect(cool(small)).toBeGreaterThan(cool(ample));
    expect(small.balance.whole.worstRelative).toBeLessThan(1e-6);
    expect(small.design.baseline.kind).toBe('stored-boiler');
  });

  it('written out and read again it is the same design', () => {
    const design = defineSystem({ ...plainInput, heater: { kind: 'boiler-coil', fuel: 'wood-pellets' } });
    expect(defineSystem(JSON.parse(JSON.stringify(design)))).toEqual(design);
  });

  it.each([
    ['tank.roomByMonth', { tank: { volume: 0.3, roomByMonth: [10, 12] } }],
    ['tank.initialProfile', { tank: { volume: 0.3, initialProfile: [20, 120] } }],
    [
      'tank.load.leastTemperature',
      { tank: { volume: 0.3, load: { temperature: 40, power: 1000, leastTemperature: 35 } } },
    ],
    ['heater.coilTop', { heater: { kind: 'element', coilTop: 0.9 } }],
    ['heater.coilTop', { heater: { kind: 'boiler-coil', elementHeight: 0.6, coilTop: 0.5 } }],
  ])('refuses %s', (path, change) => {
    try {
      defineSystem({ ...plainInput, ...change } as never);
      expect.unreachable();
    } catch (error) {
      if (!(error instanceof DesignError)) throw error;
      expect(error.issues.map((issue) => issue.path)).toContain(path);
    }
  });
});
