import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { collectorFromBuild } from '../../packages/sim-core/src/advice/survey/build.ts';
import { coverTransmittance, transmittanceAbsorptance } from '../../packages/sim-core/src/advice/survey/covers.ts';
import { collectorEfficiencyFactor, finEfficiency, flowFactor } from '../../packages/sim-core/src/advice/survey/fin.ts';
import { topLossCoefficient } from '../../packages/sim-core/src/advice/survey/top-loss.ts';
import { verticalPlateNusselt } from '../../packages/sim-core/src/advice/survey/vertical-plate.ts';
import { hasShared, sharedFile } from '../shared.ts';
import { referenceCases } from './reference-json.ts';

// collector-and-tank.json, sections 2, 3 and 8: formulas of Duffie & Beckman evaluated independently, ten digits.
const TEN_DIGITS = 1e-9;
const near = (ours: number, theirs: number, tolerance = TEN_DIGITS) =>
  expect(Math.abs(ours - theirs)).toBeLessThanOrEqual(tolerance * Math.max(1, Math.abs(theirs)));

describe('top loss by Klein, fins, whole collectors, vertical plate: every row [collector-and-tank.json]', () => {
  const klein = referenceCases('top_loss_klein');
  it.skipIf(klein.length === 0)('top_loss_klein: 4 cases', () => {
    expect(klein).toHaveLength(4);
    for (const row of klein) {
      const { conductance, convective, radiative, f, C, e } = topLossCoefficient({
        plateTemperature: row.Tp!,
        ambientTemperature: row.Ta!,
        covers: row.covers!,
        plateEmittance: row.eps_plate!,
        coverEmittance: row.eps_cover!,
        slope: row.slope!,
        windCoefficient: row.h_wind!,
      });
      near(conductance, row.U_top!);
      near(convective, row.convective!);
      near(radiative, row.radiative!);
      near(f, row.f!);
      near(C, row.C!);
      near(e, row.e!);
      // The same case solved layer by layer: the formula's stated fit is 0.3 W/(m²·K).
      if (row.U_top_resistance_network != null)
        expect(Math.abs(conductance - row.U_top_resistance_network)).toBeLessThan(0.3);
    }
  });

  const fin = referenceCases('fin_flow_removal');
  it.skipIf(fin.length === 0)('fin_flow_removal: 3 cases', () => {
    expect(fin).toHaveLength(3);
    for (const row of fin) {
      const tube = {
        loss: row.U_L!,
        plateConductivity: row.k_plate!,
        plateThickness: row.thickness!,
        tubeSpacing: row.spacing!,
        tubeDiameter: row.D!,
        innerDiameter: row.Di!,
        bondResistance: row.bond == null ? 0 : 1 / row.bond,
        filmCoefficient: row.h_fluid!,
      };
      near(finEfficiency(tube), row.F!);
      const factor = collectorEfficiencyFactor(tube);
      near(factor, row.F_prime!);
      const flow = flowFactor((row.mdot! * row.cp!) / (row.area! * row.U_L! * factor));
      near(flow, row.F_double_prime!);
      near(factor * flow, row.F_R!);
    }
  });

  const path = 'reference/collector-and-tank.json';
  it.skipIf(!hasShared(path))('surveyed_collector: 2 whole collectors, 9 points, 2 fits', () => {
    const { surveyed_collector: examples } = JSON.parse(readFileSync(sharedFile(path), 'utf8'));
    expect(examples).toHaveLength(2);
    for (const { inputs: i, rows, fit } of examples) {
      const line = collectorFromBuild(
        {
          area: i.length_m * i.width_m,
          edgeArea: 2 * (i.length_m + i.width_m) * i.height_m,
          covers: i.covers,
          coverEmittance: i.eps_cover,
          plateEmittance: i.eps_plate,
          transmittanceAbsorptance: i.tau_alpha,
          plateConductivity: i.k_plate,
          plateThickness: i.thickness,
          tubeSpacing: i.spacing,
          tubeDiameter: i.D,
          innerDiameter: i.Di,
          bondResistance: i.bond === null ? 0 : 1 / i.bond,
          filmCoefficient: i.h_fluid,
          insulationConductivity: i.k_insulation,
          backThickness: i.back_m,
          edgeThickness: i.edge_m,
        },
        {
          irradiance: i.G,
          ambientTemperature: i.Ta,
          slope: i.slope,
          windCoefficient: i.h_wind,
          capacityRate: i.mdot * i.cp,
          inletTemperatures: i.T_in,
        },
      );
      expect(line.points).toHaveLength(rows.length);
      for (const [at, row] of rows.entries()) {
        const point = line.points[at]!;
        near(point.plateTemperature, row.T_plate);
        near(point.topLoss, row.U_top);
        near(point.loss, row.U_L);
        near(point.efficiencyFactor, row.F_prime);
        near(point.removalFactor, row.F_R);
        near(point.usefulPower, row.Q_useful_W);
        near(point.meanTemperature, row.T_mean);
        near(point.efficiency, row.eta);
      }
      // The fit divides small differences: nine digits of the points leave about seven of the coefficients.
      near(line.eta0, fit.eta0, 1e-7);
      near(line.a1, fit.a1, 1e-7);
      near(line.a2, fit.a2, 1e-7);
      near(line.largestResidual, fit.max_residual, 1e-7);
    }
  });

  const plate = referenceCases('churchill_chu_vertical_plate');
  it.skipIf(plate.length === 0)('churchill_chu_vertical_plate: 2 cases', () => {
    expect(plate).toHaveLength(2);
    for (const row of plate) near(verticalPlateNusselt(row.Ra!, row.Pr!), row.Nu!);
  });
});

describe('covers [Duffie & Beckman §5.1, worked examples, from memory]', () => {
  const glass = { covers: 1, refractiveIndex: 1.526, opticalThickness: 0, absorptance: 1 };
  // The book goes on with reflectances rounded to 0.0005 (0.185 and 0.001 at 60°), which leaves τ open by 0.001; it prints three digits.
  it('one clear glass: 0.917 at 0°, 0.843 at 60°, within the roundings of the book', () => {
    expect(Math.abs(coverTransmittance(glass, 0) - 0.917)).toBeLessThan(0.0015);
    expect(Math.abs(coverTransmittance(glass, 60) - 0.843)).toBeLessThan(0.0015);
  });
  it('plate of absorptance 1 takes all that comes through, times e^(−KL) at 0° [closed form]', () => {
    near(transmittanceAbsorptance({ ...glass, opticalThickness: 0.1 }), coverTransmittance(glass, 0) * Math.exp(-0.1));
  });
});
