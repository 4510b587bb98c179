import { defineSystem } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { exchangerRatio, flowCorrection, seriesRatio } from '../../packages/sim-core/src/physics/collector/index.ts';
import { assemble } from '../../packages/sim-core/src/year/machine.ts';
import { inventedValley, plainInput } from '../examples.ts';
import { litWithin } from '../property/span.ts';
import { conditions, goRound } from '../sim-core/physics/loop/one-step.ts';

// Formulas of Duffie & Beckman §6.20 and §10.2 evaluated in double precision with invented inputs (collector-and-tank.json).
const flows = [
  [4, 0.74, 167.2, 56.25, 2, 4.098860117, 0.9535444337, 3.814177735, 0.7056228809],
  [4, 0.74, 167.2, 334.4, 2, 4.098860117, 1.012256743, 4.049026972, 0.7490699898],
  [6.5, 0.7, 159.22, 68.4, 1.9, 6.765932549, 0.9489472877, 6.16815737, 0.6642631014],
] as const;
const series = [
  [4, 152, 2, 2, 0.9736842105],
  [4, 152, 2, 3, 0.9482917821],
] as const;

describe('flow, series and exchanger, Duffie & Beckman §6.20, §10.2 [independent evaluation, ten digits]', () => {
  it.each(flows)('F_R U_L %f, F_R τα %f, test %f W/K, use %f W/K, %f m² → F′U_L %f, r %f', (...row) => {
    const [removalLoss, removalGain, testRate, useRate, area, localLoss, ratio, lossInUse, gainInUse] = row;
    const answer = flowCorrection({ area, removalLoss, capacityRate: testRate }, useRate);
    expect(answer.localLoss).toBeCloseTo(localLoss, 8);
    expect(answer.ratio).toBeCloseTo(ratio, 9);
    expect(answer.ratio * removalLoss).toBeCloseTo(lossInUse, 8);
    expect(answer.ratio * removalGain).toBeCloseTo(gainInUse, 9);
  });

  it.each(series)(
    'F_R U_L %f, %f W/K, %f m², %i in series → r %f',
    (removalLoss, capacityRate, area, panels, ratio) => {
      expect(seriesRatio({ area, removalLoss, capacityRate }, panels)).toBeCloseTo(ratio, 9);
    },
  );

  it.each([
    [4, 3.8, 200, 0.6, 200, 0.9517766497],
    [6, 4.5, 250, 0.75, 180, 0.9157509158],
  ])(
    '%f m², F_R U_L %f, %f W/K, ε %f, least %f W/K → %f',
    (area, removalLoss, rate, effectiveness, minimumRate, ratio) => {
      const collectors = { area, removalLoss, capacityRate: rate };
      expect(exchangerRatio(collectors, { effectiveness, minimumRate })).toBeCloseTo(ratio, 9);
    },
  );

  it('refuses more loss than the fluid brings', () => {
    expect(() => flowCorrection({ area: 10, removalLoss: 4, capacityRate: 40 }, 50)).toThrow(/less than 4 W/);
  });
});

/** The light is of no account, and takes time to lay on a plane. */
const dark = litWithin(await inventedValley(), 0, 0);

/** F_R U_L of the run's own array: its steady loss in the dark, per area and kelvin of its inlet over the air. [W/(m²·K)] */
function removalLossOfNodes(
  a1: number,
  area: number,
  panels: number,
  inSeries: number,
  rate: number,
  nodes: number,
): number {
  const design = defineSystem({
    ...plainInput,
    array: { panels, inSeries, tilt: 40, azimuth: 180, collector: { area, eta0: 0.7, a1, a2: 0 } },
  });
  const { loop, tank } = assemble(design, dark, { collectorNodes: nodes });
  let collected = 0;
  for (let step = 0; step < 2000; step++) {
    tank.temperature.fill(60);
    collected = goRound(loop.circuit, tank, [rate, 1e4], conditions(0, 0, 20, 60)).collectorHeat;
  }
  return -collected / (60 * area * panels * loop.circuit.pipe[3]!);
}

/** a1, loss by the mean of inlet and outlet, from F_R U_L at the flow of the test: Duffie & Beckman §6.19 turned round. */
const meanLoss = (removalLoss: number, area: number, rate: number) =>
  removalLoss / (1 - (removalLoss * area) / (2 * rate));

describe('the nodes of the run hold the correction by themselves [the same rows]', () => {
  // a1 stands for the mean of inlet and outlet, F′U_L for the local fluid: (a1 A/ṁc_p)²/12 apart, 2e-4 to 5e-4 at these flows.
  it.each(flows)('F_R U_L %f (τα %f) of %f W/K at %f W/K, %f m²: ratio within 2e-4 by four nodes', (...row) => {
    const [removalLoss, , testRate, useRate, area, , ratio] = row;
    const a1 = meanLoss(removalLoss, area, testRate);
    const inTest = removalLossOfNodes(a1, area, 1, 1, testRate, 4);
    const inUse = removalLossOfNodes(a1, area, 1, 1, useRate, 4);
    expect(Math.abs(inTest / removalLoss - 1)).toBeLessThan((1.1 * ((a1 * area) / testRate) ** 2) / 12);
    expect(Math.abs(inUse / inTest - ratio)).toBeLessThan(2e-4);
  });

  it.each(series)(
    'F_R U_L %f, %f W/K, %f m²: %i in series, one node each, exactly',
    (removalLoss, rate, area, n, ratio) => {
      const a1 = meanLoss(removalLoss, area, rate);
      expect(removalLossOfNodes(a1, area, 1, 1, rate, 1)).toBeCloseTo(removalLoss, 8);
      expect(removalLossOfNodes(a1, area, n, n, rate, 1) / removalLoss).toBeCloseTo(ratio, 8);
    },
  );

  it('panels in parallel share the flow and change nothing [symmetry]', () => {
    const one = removalLossOfNodes(4, 2, 1, 1, 100, 4);
    // The tank is set back after each step, which leaves the fluid a trend within the step: some 1e-8.
    expect(removalLossOfNodes(4, 2, 3, 1, 300, 4)).toBeCloseTo(one, 7);
  });
});
