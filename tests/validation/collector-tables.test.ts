import { describe, expect, it } from 'vitest';
import {
  collectorEfficiency,
  exchangerRatio,
  flowCorrection,
  seriesRatio,
  stagnationTemperature,
  usefulPower,
} from '../../packages/sim-core/src/physics/collector/index.ts';
import { type ReferenceCase, referenceCases } from './reference-json.ts';

// collector-and-tank.json, sections 1 and 4: formulas of ISO 9806:2017 and of Duffie & Beckman evaluated independently, ten digits.
const TEN_DIGITS = 1e-9;

/** Every case of a formula, and how many there must be. */
function everyCase(formula: string, count: number, check: (row: ReferenceCase) => void): void {
  const cases = referenceCases(formula);
  it.skipIf(cases.length === 0)(`${formula}: ${count} cases [requirement]`, () => {
    expect(cases.length).toBe(count);
    for (const row of cases) check(row);
  });
}

const near = (ours: number, theirs: number) =>
  expect(Math.abs(ours - theirs)).toBeLessThanOrEqual(TEN_DIGITS * Math.max(1, Math.abs(theirs)));

describe('all cases of sections 1 and 4, ten digits [collector-and-tank.json]', () => {
  everyCase('steady_efficiency', 6, ({ eta0, a1, a2, G, Ta, Tm, eta, q_W_m2 }) => {
    const rating = { area: 1, eta0: eta0!, a1: a1!, a2: a2! };
    const conditions = { beamIrradiance: G!, meanFluidTemperature: Tm!, ambientTemperature: Ta! };
    near(collectorEfficiency(rating, conditions), eta!);
    near(usefulPower(rating, conditions), q_W_m2!);
  });

  everyCase('stagnation', 4, ({ eta0, a1, a2, G, Ta, T_stagnation }) => {
    near(stagnationTemperature({ area: 1, eta0: eta0!, a1: a1!, a2: a2! }, G!, Ta!), T_stagnation!);
  });

  everyCase('quasi_dynamic', 2, (row) => {
    const { a1, a2, a3, a4, a5, a6, a7, a8 } = row as Required<typeof row>;
    const rating = { area: 1, eta0: row.eta0b!, a1, a2, a3, a4, a5, a6, a7, a8 } as Parameters<typeof usefulPower>[0];
    const power = usefulPower(rating, {
      beamIrradiance: row.Gb!,
      diffuseIrradiance: row.Gd!,
      beamModifier: row.Kb!,
      diffuseModifier: row.Kd!,
      meanFluidTemperature: row.Tm!,
      ambientTemperature: row.Ta!,
      windSpeed: row.wind!,
      longwaveIrradiance: row.EL!,
      temperatureRate: row.dTm_dt!,
    });
    near(power, row.q_W_m2!);
  });

  everyCase('flow_correction', 3, (row) => {
    const test = { area: row.area!, removalLoss: row.F_R_U_L_test!, capacityRate: row.mcp_test! };
    const { localLoss, ratio } = flowCorrection(test, row.mcp_use!);
    near(localLoss, row.F_prime_U_L!);
    near(ratio, row.ratio!);
    near(ratio * row.F_R_U_L_test!, row.F_R_U_L_use!);
    near(ratio * row.F_R_ta_test!, row.F_R_ta_use!);
  });

  everyCase('series_correction', 2, ({ F_R_U_L, mcp, area, n, ratio }) => {
    near(seriesRatio({ area: area!, removalLoss: F_R_U_L!, capacityRate: mcp! }, n!), ratio!);
  });

  everyCase('collector_exchanger_factor', 2, (row) => {
    const collectors = { area: row.area!, removalLoss: row.F_R_U_L!, capacityRate: row.mcp_collector! };
    near(exchangerRatio(collectors, { effectiveness: row.effectiveness!, minimumRate: row.mcp_min! }), row.ratio!);
  });
});
