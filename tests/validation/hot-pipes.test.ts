import { DesignError, defineSystem } from '@noonloop/sim-core';
import { recirculationLoss } from '@noonloop/sim-core/formulas';
import { describe, expect, it } from 'vitest';
import { compileHeater, stepHeater } from '../../packages/sim-core/src/physics/backup/heater.ts';
import { hotPipeHours, ringHours } from '../../packages/sim-core/src/physics/draw/ring.ts';
import { inventedValley, plainInput, sum } from '../examples.ts';
import { litWithin, liveSpan } from '../property/span.ts';
import { heaterDesign } from '../sim-core/physics/backup/parts.ts';
import { hasMoreCases, moreCases } from './more-cases.ts';

interface RingCase {
  readonly length_m: number;
  readonly d_out_m: number;
  readonly d_in_m: number;
  readonly insulation_m: number;
  readonly k_insulation_W_mK: number;
  readonly film_out_W_m2K: number;
  readonly flow_kg_s: number;
  readonly cp_J_kgK: number;
  readonly T_supply_C: number;
  readonly T_ambient_C: number;
  readonly hours_on_a_day: number;
  readonly switchings_a_day: number;
  readonly U_W_mK: number;
  readonly T_return_C: number;
  readonly loss_running_W: number;
  readonly capacity_J_mK: number;
  readonly time_constant_h: number;
  readonly loss_resting_kWh_day: number;
  readonly loss_kWh_day: number;
}

const relative = (found: number, expected: number) => Math.abs(found / expected - 1);

describe.skipIf(!hasMoreCases)('recirculation ring [closed forms, shared cases, recirculation]', () => {
  it.each(moreCases<RingCase>('recirculation'))('$length_m m, $hours_on_a_day h a day', (given) => {
    const found = recirculationLoss({
      length: given.length_m,
      innerDiameter: given.d_in_m,
      pipeOuterDiameter: given.d_out_m,
      insulationThickness: given.insulation_m,
      insulationConductivity: given.k_insulation_W_mK,
      filmCoefficient: given.film_out_W_m2K,
      capacityRate: given.flow_kg_s * given.cp_J_kgK,
      supply: given.T_supply_C,
      surroundings: given.T_ambient_C,
      rest: ((24 - given.hours_on_a_day) / given.switchings_a_day) * 3600,
    });
    expect(relative(found.conductance, given.U_W_mK)).toBeLessThan(1e-6);
    expect(relative(found.returned, given.T_return_C)).toBeLessThan(1e-6);
    expect(relative(found.running, given.loss_running_W)).toBeLessThan(1e-6);
    expect(relative(found.capacity, given.capacity_J_mK)).toBeLessThan(1e-6);
    expect(relative(found.timeConstant / 3600, given.time_constant_h)).toBeLessThan(1e-6);
    const resting = (found.start * given.switchings_a_day) / 3.6e6;
    expect(resting).toBeCloseTo(given.loss_resting_kWh_day, 6);
    expect(relative(resting + (found.running * given.hours_on_a_day * 3600) / 3.6e6, given.loss_kWh_day)).toBeLessThan(
      1e-6,
    );
  });

  it('a store held at the supply by a strong burner loses that in a day of one rest, but for the pipe’s own film', () => {
    const given = moreCases<RingCase>('recirculation')[2]!;
    const ring = {
      length: given.length_m,
      outerDiameter: given.d_out_m,
      innerDiameter: given.d_in_m,
      insulationThickness: given.insulation_m,
      insulationConductivity: given.k_insulation_W_mK,
      surroundings: given.T_ambient_C,
      flow: given.flow_kg_s / 1000,
      hours: [[6, 22]] as const,
      pumpPower: 0,
    };
    const mayRun = Uint8Array.from({ length: 8760 }, (_, hour) => (hour % 24 >= 6 && hour % 24 < 22 ? 1 : 0));
    const hours = ringHours(ring, mayRun, 1000 * given.cp_J_kgK);
    // The year is a ring too: the night before its first morning is as long as any other.
    expect([...hours.subarray(0, 24)]).toEqual([...hours.subarray(24, 48)]);
    const heater = {
      ...compileHeater(heaterDesign({ setTemperature: given.T_supply_C, burnerPower: 1e5, lossCoefficient: 0 })),
      ringRoom: given.T_ambient_C,
    };
    let loss = 0;
    for (let hour = 0; hour < 24; hour++) {
      heater.ring = hours[hour]!;
      for (let step = 0; step < 60; step++) {
        stepHeater(heater, 0, 0, 60);
        loss += heater.ringLoss;
      }
    }
    // Our film is 10 W/(m²·K), the case's 8: U' 0.1793 in place of 0.1767 W/(m·K), 1.3 % more.
    expect(relative(loss / 3.6e6, given.loss_kWh_day)).toBeLessThan(0.02);
  });
});

describe('the pipe to the taps [by hand]', () => {
  const pipe = {
    length: 10,
    outerDiameter: 0.018,
    innerDiameter: 0.016,
    insulationThickness: 0,
    insulationConductivity: 0.035,
    surroundings: 20,
  };
  // Bare: U' = 10 π 0.018 = 0.5655 W/(m·K); C' = 998·4180 π 0.016²/4 + 8900·385 π (0.018² − 0.016²)/4 = 1021.76 J/(m·K).
  const heat = 10 * 1021.757;
  const loss = 10 * 0.565487;

  it('one draw a day puts back nearly all that it holds, and loses while it runs', () => {
    const hours = hotPipeHours(pipe, {
      parts: 1,
      drawn: (hour) => hour % 24 === 7,
      running: (hour) => (hour % 24 === 7 ? 600 : 0),
    });
    const cooled = 1 - Math.exp((-loss / heat) * (24 * 3600 - 600));
    expect(hours[24 + 7]!).toBeCloseTo(heat * cooled + loss * 600, 0);
    expect(hours[24 + 8]).toBe(0);
  });

  it('two draws within minutes find it warm: 1 − e^(−t/τ), τ 30 min', () => {
    const minutes = new Set([7 * 60, 7 * 60 + 11]);
    const hours = hotPipeHours(pipe, { parts: 60, drawn: (part) => minutes.has(part % 1440), running: () => 0 });
    const second = heat * (1 - Math.exp((-loss / heat) * 600));
    const first = heat * (1 - Math.exp((-loss / heat) * (1440 - 12) * 60));
    expect(hours[24 + 7]!).toBeCloseTo(first + second, 0);
  });
});

describe('a year with ring and pipe [requirement]', async () => {
  const weather = await inventedValley();
  const of = (draw: object, heater: object = {}) =>
    defineSystem({ ...plainInput, heater, draw: { ...plainInput.draw, ...draw } } as never);
  /** Four weeks of spring: what a pipe loses hangs on the draws, which are those of any other weeks. */
  const [from, to] = [60 * 24, 88 * 24];
  const lit = litWithin(weather, from, to);
  const weeks = (draw: object, heater: object = {}, stepsPerHour?: number) =>
    liveSpan(of(draw, heater), lit, from, to, stepsPerHour);

  it('a ring that never rests loses U L (T − T_a) all the time, the burner makes it up, and the books close', () => {
    const { balance, columns } = weeks({ ring: { length: 30 } });
    const plain = weeks({});
    const { running } = recirculationLoss({
      length: 30,
      innerDiameter: 0.02,
      pipeOuterDiameter: 0.022,
      insulationThickness: 0.02,
      insulationConductivity: 0.035,
      capacityRate: (3 / 60_000) * 4.15e6,
      supply: 60,
      surroundings: 20,
      rest: 0,
    });
    expect(relative(sum(columns.ringLoss), running * (to - from) * 3600)).toBeLessThan(0.02); // the store is a little off 60 °C in draws and in hot weeks
    const more = sum(columns.heaterHeat) - sum(plain.columns.heaterHeat);
    expect(relative(more, sum(columns.ringLoss))).toBeLessThan(0.03);
    expect(sum(columns.baselineHeat)).toBeGreaterThan(sum(plain.columns.baselineHeat) + 0.9 * sum(columns.ringLoss));
    expect(sum(columns.heaterElectricity)).toBeCloseTo(10 * (to - from) * 3600, 0);
    expect(balance.whole.worstRelative).toBeLessThan(1e-6);
    expect(balance.baseline.worstRelative).toBeLessThan(1e-6);
  });

  it.each([
    ['stored-gas', {}],
    ['stored-electric', { profile: 'M', dailyVolume: undefined }],
    ['instantaneous-electric', {}],
    ['element', {}],
  ])('%s: the taps get the same heat through a long pipe; more hot water is drawn for it', (kind, draw) => {
    const piped = weeks({ ...draw, hotPipe: { length: 12 } }, { kind });
    const plain = weeks(draw, { kind });
    expect(relative(sum(piped.columns.tapHeat), sum(plain.columns.tapHeat))).toBeLessThan(0.002);
    expect(sum(piped.columns.hotPipeLoss)).toBeGreaterThan((3.6e8 * (to - from)) / 8760); // 100 kWh a year
    expect(sum(piped.columns.hotVolume)).toBeGreaterThan(1.02 * sum(plain.columns.hotVolume));
    expect(piped.balance.whole.worstRelative).toBeLessThan(1e-6);
    expect(piped.balance.baseline.worstRelative).toBeLessThan(1e-6);
  });

  it('an insulated pipe loses less, and the loss hangs little on the step [convergence]', () => {
    const bare = weeks({ hotPipe: { length: 12, insulationThickness: 0 } });
    const wrapped = weeks({ hotPipe: { length: 12 } });
    expect(sum(wrapped.columns.hotPipeLoss)).toBeLessThan(0.8 * sum(bare.columns.hotPipeLoss));
    const finer = weeks({ hotPipe: { length: 12 } }, {}, 24);
    expect(relative(sum(finer.columns.hotPipeLoss), sum(wrapped.columns.hotPipeLoss))).toBeLessThan(0.005);
  });

  it.each([
    ['draw.ring', { ring: { length: 30 } }, { kind: 'instantaneous-gas' }],
    ['draw.ring.innerDiameter', { ring: { length: 30, innerDiameter: 0.03 } }, {}],
    ['draw.ring.hours', { ring: { length: 30, hours: [[22, 6]] } }, {}],
    ['draw.hotPipe.length', { hotPipe: { length: -2 } }, {}],
  ])('refuses %s', (path, draw, heater) => {
    try {
      of(draw, heater);
      expect.unreachable();
    } catch (error) {
      if (!(error instanceof DesignError)) throw error;
      expect(error.issues.map((issue) => issue.path)).toContain(path);
    }
  });
});
