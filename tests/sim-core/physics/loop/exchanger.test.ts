import { describe, expect, it } from 'vitest';
import { DesignError } from '../../../../packages/sim-core/src/input/errors.ts';
import { coilExchange, counterflowEffectiveness } from '../../../../packages/sim-core/src/physics/loop/exchanger.ts';
import { pipeLossConductance, pipeOutlet } from '../../../../packages/sim-core/src/physics/loop/pipe.ts';

describe('counterflowEffectiveness', () => {
  it('passes smoothly to NTU/(1 + NTU) as the streams become equal [limit]', () => {
    for (const gap of [1e-4, 1e-6, 1e-8, 1e-10]) {
      // d ε/d C at C = 1 is below 1 in size: the values may differ by the gap, no more.
      expect(Math.abs(counterflowEffectiveness(3, 1 - gap) - 0.75)).toBeLessThan(gap + 1e-12);
    }
  });

  it('is 1 − exp(−NTU) when one stream does not change [limit]', () => {
    expect(counterflowEffectiveness(1.7, 0)).toBeCloseTo(1 - Math.exp(-1.7), 12);
  });
});

describe('coilExchange', () => {
  it('refuses a stream at rest [requirement]', () => {
    expect(() => coilExchange({ conductance: 1, capacityRate: 0, inletTemperature: 1, tankTemperature: 1 })).toThrow(
      DesignError,
    );
  });
});

describe('insulated pipe', () => {
  it('18 mm with 19 mm of 0.04 W/(m·K): 0.1842 W/(m·K) [hand calculation]', () => {
    // ln(56/18)/(2π 0.04) = 4.5160, 1/(π 0.056 10) = 0.5684 m·K/W
    const conductance = pipeLossConductance({
      pipeOuterDiameter: 0.018,
      insulationThickness: 0.019,
      insulationConductivity: 0.04,
    });
    expect(Math.abs(1 / conductance - (4.516 + 0.5684))).toBeLessThan(1e-3);
  });

  it('with heat bridges loses their factor more [definition]', () => {
    const pipe = { pipeOuterDiameter: 0.018, insulationThickness: 0.019, insulationConductivity: 0.042 };
    const withBridges = pipeLossConductance({ ...pipe, heatBridgeFactor: 1.3 });
    expect(withBridges / pipeLossConductance(pipe)).toBeCloseTo(1.3, 12);
  });

  it('bare: π D h [closed form]', () => {
    const bare = { pipeOuterDiameter: 0.018, insulationThickness: 0, insulationConductivity: 0.04 };
    expect(pipeLossConductance(bare, 8)).toBeCloseTo(Math.PI * 0.018 * 8, 12);
  });

  it('outlet temperature is that of 2000 well-mixed sections in a row [limit of the sections]', () => {
    let t = 80;
    for (let section = 0; section < 2000; section++) t = (t + (0.3 / 2000) * 10) / (1 + 0.3 / 2000);
    expect(Math.abs(pipeOutlet(80, 10, 0.3) - t)).toBeLessThan(2e-3); // sections err by NTU²/(2 n) of 70 K
  });
});
