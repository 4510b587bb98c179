import { collectorOutlet, collectorStages, flowCorrection } from '@noonloop/sim-core/formulas';
import { describe, expect, it } from 'vitest';
import { hasMoreCases, moreCases } from './more-cases.ts';

interface Group {
  eta0: number;
  a1: number;
  a2: number;
  area_m2: number;
  G_W_m2: number;
  n_series: number;
  n_parallel: number;
  r1: number;
  r2: number;
}
interface Result {
  flow_kg_s: number;
  dp_Pa: number;
  T_out_C: number;
  Q_W: number;
}
interface Case {
  case: string;
  cp_J_kgK: number;
  flow_kg_s: number;
  T_in_C: number;
  T_ambient_C: number;
  stages: Group[][];
  result: { stages: { groups: Result[]; T_mixed_C: number }[]; T_out_C: number; Q_W: number; dp_Pa: number };
}

const strings = (group: Group) => ({
  area: group.area_m2,
  absorbed: group.eta0 * group.G_W_m2,
  a1: group.a1,
  a2: group.a2,
  series: group.n_series,
  parallel: group.n_parallel,
  laminarResistance: group.r1,
  turbulentResistance: group.r2,
});
const within = (found: number, expected: number, relative: number) =>
  expect(Math.abs(found - expected)).toBeLessThanOrEqual(relative * Math.abs(expected));

describe.skipIf(!hasMoreCases)(
  'collectors in stages [reference of closed forms and an ODE at 1e-12; flows 1e-6, 1e-4 K, heat 1e-5]',
  () => {
    it.each(moreCases<Case>('collector_groups').map((one): [string, Case] => [one.case, one]))('%s', (_, one) => {
      const ours = collectorStages(
        one.stages.map((groups) => groups.map(strings)),
        { flow: one.flow_kg_s, specificHeat: one.cp_J_kgK, inlet: one.T_in_C, ambient: one.T_ambient_C },
      );
      expect(Math.abs(ours.outlet - one.result.T_out_C)).toBeLessThan(1e-4);
      within(ours.power, one.result.Q_W, 1e-5);
      within(ours.pressureDrop, one.result.dp_Pa, 1e-6);
      one.result.stages.forEach(({ groups }, stage) => {
        groups.forEach((group, place) => {
          const found = ours.stages[stage]![place]!;
          within(found.flow, group.flow_kg_s, 1e-6);
          within(found.pressureDrop, group.dp_Pa, 1e-6);
          expect(Math.abs(found.outlet - group.T_out_C)).toBeLessThan(1e-4);
          within(found.power, group.Q_W, 1e-5);
        });
      });
    });
  },
);

interface Local {
  eta0: number;
  a1: number;
  area_m2: number;
  mcp_test_W_K: number;
  mcp_use_W_K: number;
  a1_local: number;
  G_W_m2: number;
  T_in_C: number;
  T_ambient_C: number;
  T_out_test_C: number;
  T_out_use_C: number;
}

describe.skipIf(!hasMoreCases)('local coefficients of a test [Duffie & Beckman 6.19, 6.20; 1e-6]', () => {
  it.each(moreCases<Local>('local_coefficients_from_test'))('a1 $a1 at $mcp_test_W_K W/K', (one) => {
    const removalLoss = one.a1 / (1 + (one.a1 * one.area_m2) / (2 * one.mcp_test_W_K));
    const test = { area: one.area_m2, removalLoss, capacityRate: one.mcp_test_W_K };
    const { localLoss } = flowCorrection(test, one.mcp_use_W_K);
    within(localLoss, one.a1_local, 1e-6);
    const absorbed = ((one.eta0 * localLoss) / one.a1) * one.G_W_m2;
    const local = { area: one.area_m2, absorbed, a1: localLoss, a2: 0 };
    const outlet = (rate: number) => collectorOutlet(local, one.T_in_C, one.T_ambient_C, rate);
    expect(Math.abs(outlet(one.mcp_test_W_K) - one.T_out_test_C)).toBeLessThan(1e-6);
    expect(Math.abs(outlet(one.mcp_use_W_K) - one.T_out_use_C)).toBeLessThan(1e-6);
  });
});

describe('along the flow through the temperature of the air [closed form: two pieces, and small steps]', () => {
  it.each([
    [{ area: 2, absorbed: 300, a1: 4, a2: 0.02 }, -5, 20],
    [{ area: 2, absorbed: -120, a1: 4, a2: 0.02 }, 30, 20],
    [{ area: 2, absorbed: -500, a1: 4, a2: 0.02 }, 30, 20],
    [{ area: 2, absorbed: -200, a1: 4, a2: 0.02 }, 30, 20],
    [{ area: 2, absorbed: -60, a1: 4, a2: 0 }, 22, 20],
    [{ area: 2, absorbed: 0, a1: 4, a2: 0.02 }, 10, 20],
  ])('%j from %d °C in air of %d °C', (collector, inlet, ambient) => {
    const rate = 30;
    const parts = 200_000;
    let x = inlet - ambient;
    const slope = (at: number) => (collector.absorbed - (collector.a1 + collector.a2 * Math.abs(at)) * at) / rate;
    for (let part = 0; part < parts; part++) {
      const half = x + (slope(x) * collector.area) / parts / 2;
      x += (slope(half) * collector.area) / parts;
    }
    expect(Math.abs(collectorOutlet(collector, inlet, ambient, rate) - ambient - x)).toBeLessThan(1e-6);
  });
});
