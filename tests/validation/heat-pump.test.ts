import { type CopCurve, DesignError, defineSystem, type RunColumns } from '@noonloop/sim-core';
import { heatPumpCop } from '@noonloop/sim-core/formulas';
import { describe, expect, it } from 'vitest';
import { compileHeater, stepHeater } from '../../packages/sim-core/src/physics/backup/heater.ts';
import { hoursBelowCop } from '../../packages/sim-core/src/year/off-points.ts';
import { inventedValley, plainInput, sum, yearOf } from '../examples.ts';
import { litWithin, liveSpan } from '../property/span.ts';
import { heaterDesign } from '../sim-core/physics/backup/parts.ts';
import { hasMoreCases, moreCase, moreCases } from './more-cases.ts';

interface AirCase {
  readonly c0: number;
  readonly c1_per_K: number;
  readonly T_air_mean_C: number;
  readonly T_air_swing_K: number;
  readonly heat_W: number;
  readonly from_h: number;
  readonly to_h: number;
  readonly electricity_kWh: number;
}

interface TankCase {
  readonly kind: string;
  readonly coefficients: readonly number[];
  readonly power_W: number;
  readonly mass_kg: number;
  readonly cp_J_kgK: number;
  readonly T_from_C: number;
  readonly T_to_C: number;
  readonly T_air_C: number;
  readonly UA_W_K: number;
  readonly T_room_C: number;
  readonly hours: number;
  readonly electricity_kWh: number;
  readonly heat_kWh: number;
}

interface PointsCase {
  readonly points: { readonly T_air_C: readonly number[]; readonly COP: readonly number[] };
  readonly rows: readonly { readonly T_air_C: number; readonly COP_straight: number; readonly COP_cubic: number }[];
}

const curveOf = ({ kind, coefficients }: TankCase): CopCurve =>
  kind.startsWith('share of Carnot')
    ? { carnotShare: coefficients[0]! }
    : { atNoLift: coefficients[0]!, perLiftKelvin: coefficients[1]! };

describe.skipIf(!hasMoreCases)('COP by its four curves [closed forms and quadrature, shared cases, heater]', () => {
  it.each(moreCases<AirCase>('heater', 'cop_over_air_temperature'))(
    'over the air, integrated by the midpoint rule: $from_h to $to_h h, c0 $c0',
    ({ c0, c1_per_K, T_air_mean_C, T_air_swing_K, heat_W, from_h, to_h, electricity_kWh }) => {
      const steps = 4000;
      let used = 0;
      for (let step = 0; step < steps; step++) {
        const hour = from_h + ((step + 0.5) / steps) * (to_h - from_h);
        const air = T_air_mean_C + T_air_swing_K * Math.cos((2 * Math.PI * (hour - 15)) / 24);
        used += heat_W / heatPumpCop({ atZero: c0, perAirKelvin: c1_per_K }, air, 50) / 1000;
      }
      expect((used * (to_h - from_h)) / steps).toBeCloseTo(electricity_kWh, 6);
    },
  );

  it.each(moreCases<TankCase>('heater', 'cop_heating_a_tank'))(
    'our store heated in steps of a minute: $kind, $T_from_C to $T_to_C °C',
    (given) => {
      const capacity = given.mass_kg * given.cp_J_kgK;
      const curve = curveOf(given);
      const electric = given.kind.includes('electric power');
      const design = heaterDesign({
        kind: 'heat-pump',
        carrier: 'electricity',
        setTemperature: given.T_to_C,
        burnerEfficiency: 1,
        lossCoefficient: given.UA_W_K,
        roomTemperature: given.T_room_C,
        cop: curve,
      });
      const heater = { ...compileHeater(design), capacity, temperature: given.T_from_C, air: given.T_air_C };
      const found = { heat: 0, electricity: 0, seconds: 0 };
      while (heater.temperature < given.T_to_C - 1e-9) {
        // With constant electric power the heat of a step follows from the COP at its start: of the first order in its length.
        heater.most = given.power_W * (electric ? heatPumpCop(curve, given.T_air_C, heater.temperature) : 1);
        stepHeater(heater, 0, 0, 60);
        found.heat += heater.burnerHeat / 3.6e6;
        found.electricity += heater.electricity / 3.6e6;
        found.seconds += 60;
      }
      expect(found.heat / given.heat_kWh).toBeCloseTo(1, electric ? 3 : 6);
      expect(found.electricity / given.electricity_kWh).toBeCloseTo(1, electric ? 3 : 6);
      expect(found.seconds / 3600 - given.hours).toBeLessThan(electric ? 0.03 : 1 / 60);
    },
  );

  it('by points', () => {
    const { points, rows } = moreCase<PointsCase>('heater', 'cop_points');
    const curve = { airTemperatures: points.T_air_C, values: points.COP };
    for (const { T_air_C, COP_straight, COP_cubic } of rows) {
      expect(heatPumpCop({ ...curve, between: 'lines' }, T_air_C, 50)).toBeCloseTo(COP_straight, 8);
      expect(heatPumpCop({ ...curve, between: 'curve' }, T_air_C, 50)).toBeCloseTo(COP_cubic, 8);
    }
  });
});

describe('a year with a heat pump [requirement]', async () => {
  const weather = await inventedValley();
  const of = (heater: object) => defineSystem({ ...plainInput, heater });
  /** Six weeks of spring, with cold mornings and mild noons. */
  const [from, to] = [60 * 24, 102 * 24];
  const run = (heater: object) => liveSpan(of(heater), weather, from, to);
  const litInSpring = litWithin(weather, from, to);

  it('by a constant COP takes the heat over it, with the sun and without', () => {
    const { columns, balance } = run({ kind: 'heat-pump', cop: { atZero: 2.5, perAirKelvin: 0 } });
    expect(sum(columns.heaterFuel)).toBeCloseTo(sum(columns.heaterHeat) / 2.5, 0);
    expect(sum(columns.baselineFuel)).toBeCloseTo(sum(columns.baselineHeat) / 2.5, 0);
    expect(balance.whole.worstRelative).toBeLessThan(1e-6);
  });

  it('from outdoor air takes more than from a warm room, and the mean COP is below that of the mean air [convexity]', () => {
    const cop = { atZero: 2.2, perAirKelvin: 0.08 };
    const [outside, room] = (['outdoors', 'room'] as const).map((airFrom) => run({ kind: 'heat-pump', cop, airFrom }));
    const mean = ({ columns }: ReturnType<typeof run>) => sum(columns.baselineHeat) / sum(columns.baselineFuel);
    expect(mean(room!)).toBeCloseTo(2.2 + 0.08 * 18, 3);
    expect(mean(outside!)).toBeLessThan(2.2 + (0.08 * sum(weather.columns.dryBulb.subarray(from, to))) / (to - from));
  });

  it('says in how many hours it heated in air colder than the first point of its curve', () => {
    const by = (least: number) => {
      const cop = { airTemperatures: [least, 30], values: [2, 4], between: 'lines' };
      return yearOf(of({ kind: 'heat-pump', cop }), litInSpring);
    };
    const noticeOf = ({ notices }: ReturnType<typeof by>) =>
      notices.find(({ code }) => code === 'heat-pump-points-ended');
    const { columns, ...year } = by(10);
    const hours = columns.heaterHeat.filter((heat, hour) => heat > 0 && weather.columns.dryBulb[hour]! < 10).length;
    expect(noticeOf({ columns, ...year })).toMatchObject({ hours, facts: { lowest: { value: 10, unit: '°C' } } });
    expect(noticeOf(by(-40))).toBeUndefined();
    // Air of the room as cold as the first point is none colder.
    const house = { heater: { cop: { points: { x: [10, 30] } }, design: { airFrom: 'room', roomTemperature: 10 } } };
    expect(hoursBelowCop({ columns, drivers: {}, house } as never)).toBe(0);
  });

  it('a COP beyond reason is held from 1 to 20 [judgement]', () => {
    const { columns } = run({ kind: 'heat-pump', cop: { atZero: 0.5, perAirKelvin: 0 } });
    expect(sum(columns.heaterFuel)).toBeCloseTo(sum(columns.heaterHeat), 0);
  });

  it.each([
    [
      'heater.cop.airTemperatures',
      { kind: 'heat-pump', cop: { airTemperatures: [7, 2], values: [3, 2], between: 'lines' } },
    ],
    ['heater.cop.values', { kind: 'heat-pump', cop: { airTemperatures: [2, 7], values: [3, 2, 4], between: 'lines' } }],
    ['heater.cop', { kind: 'stored-electric', cop: { carnotShare: 0.4 } }],
    ['heater.burnerEfficiency', { kind: 'heat-pump', burnerEfficiency: 0.9 }],
    ['heater.sparePv', { kind: 'stored-gas', sparePv: { peakPower: 2000 } }],
  ])('refuses %s', (path, heater) => {
    const fault = (): string[] => {
      try {
        defineSystem({ ...plainInput, heater } as never);
      } catch (error) {
        if (error instanceof DesignError) return error.issues.map((issue) => issue.path);
        throw error;
      }
      return [];
    };
    expect(fault()).toContain(path);
  });
});

describe('an element fed by spare PV [requirement]', async () => {
  const weather = await inventedValley();
  const [from, to] = [60 * 24, 102 * 24];
  const run = (heater: object) => liveSpan(defineSystem({ ...plainInput, heater }), weather, from, to);
  const sparePv = { peakPower: 2000, houseLoad: 300 };
  const lit = litWithin(weather, from, 74 * 24);

  it.each(['element', 'stored-electric'] as const)('%s: what PV gives, the mains do not; all is heat', (kind) => {
    const [without, given] = [run({ kind }), run({ kind, sparePv })];
    expect(sum(given.columns.heaterHeat)).toBeCloseTo(sum(without.columns.heaterHeat), 0);
    const pv = sum(given.columns.heaterPvEnergy);
    expect(pv).toBeGreaterThan(0.1 * sum(given.columns.heaterHeat));
    expect(pv + sum(given.columns.heaterFuel)).toBeCloseTo(sum(given.columns.heaterHeat), 0);
  });

  it.each(['element', 'stored-electric'] as const)(
    '%s: its share hangs little on the step, draws of minutes too [convergence, 2.5 %]',
    (kind) => {
      const design = defineSystem({ ...plainInput, draw: { profile: 'M' }, heater: { kind, sparePv } });
      const [coarse, fine] = [12, 60].map((steps) => liveSpan(design, lit, from, 74 * 24, steps).columns);
      const share = ({ heaterPvEnergy, heaterHeat }: RunColumns) => sum(heaterPvEnergy) / sum(heaterHeat);
      const without = ({ baselineFuel, baselineHeat }: RunColumns) => 1 - sum(baselineFuel) / sum(baselineHeat);
      for (const of of [share, without]) expect(Math.abs(of(coarse!) / of(fine!) - 1)).toBeLessThan(0.025);
    },
  );

  it('heats by PV alone where a season or timer holds back the mains, never beyond what there is to spare', () => {
    const { columns, balance } = run({ kind: 'element', sparePv, offDays: ['01-01..12-31'] });
    expect(sum(columns.heaterFuel)).toBeLessThan(1e-3); // [J] rounding
    expect(sum(columns.heaterPvEnergy)).toBeGreaterThan((3.6e8 * (to - from)) / 8760); // 100 kWh a year
    // Never more than the modules give without any load, cold cells and all: 1 + 0.004 × 45 of their peak.
    const most = columns.pvIrradiance.map((light) => 2 * light * 3600 * 1.18 + 1e-6);
    expect(columns.heaterPvEnergy.filter((energy, hour) => !(energy <= most[hour]!))).toEqual(new Float64Array(0));
    expect(balance.whole.worstRelative).toBeLessThan(1e-6);
  });
});
