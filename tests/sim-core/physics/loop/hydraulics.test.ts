import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DesignError } from '../../../../packages/sim-core/src/input/errors.ts';
import { compileFluid, fluidDensity, fluidViscosity } from '../../../../packages/sim-core/src/physics/fluid/compile.ts';
import { coilFrictionNumber } from '../../../../packages/sim-core/src/physics/loop/coil-friction.ts';
import { splitFlow } from '../../../../packages/sim-core/src/physics/loop/flow-split.ts';
import {
  compileFlowTable,
  type FlowTable,
  readFlowTable,
} from '../../../../packages/sim-core/src/physics/loop/flow-table.ts';
import {
  compileFriction,
  frictionNumber,
  pipePressureDrop,
} from '../../../../packages/sim-core/src/physics/loop/friction.ts';
import {
  compileHydraulics,
  type HydraulicParts,
  loopHead,
  operatingPoint,
  pumpOperatingPoint,
} from '../../../../packages/sim-core/src/physics/loop/hydraulics.ts';
import { parts } from './parts.ts';

describe('friction between laminar and turbulent', () => {
  it.each([0, 1e-4, 1e-2])(
    'ε/D %f: f Re² rises and has no corner at Re 2300 and 4000 [judgement, its contract]',
    (roughness) => {
      const c = compileFriction(roughness);
      for (let re = 2200; re < 4200; re += 1) expect(frictionNumber(c, re + 1)).toBeGreaterThan(frictionNumber(c, re));
      for (const re of [2300, 4000]) {
        const below = frictionNumber(c, re) - frictionNumber(c, re - 0.01);
        const above = frictionNumber(c, re + 0.01) - frictionNumber(c, re);
        expect(Math.abs(above / below - 1)).toBeLessThan(1e-3);
      }
    },
  );

  it('a coil’s f Re² rises with Re for every curvature [its contract]', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-3, max: 0.2, noNaN: true }),
        fc.double({ min: 0.1, max: 1e5, noNaN: true }),
        (curvature, re) => {
          expect(coilFrictionNumber(curvature, re * 1.001)).toBeGreaterThan(coilFrictionNumber(curvature, re));
        },
      ),
    );
  });

  it('nothing drops at standstill, and nonsense is refused [requirement]', () => {
    const still = { flow: 0, length: 30, innerDiameter: 0.016, fittingLoss: 12, density: 1000, dynamicViscosity: 1e-3 };
    expect(pipePressureDrop(still)).toBe(0);
    expect(() => pipePressureDrop({ ...still, flow: -1 })).toThrow(DesignError);
    expect(() => pipePressureDrop({ ...still, density: Number.NaN })).toThrow(DesignError);
  });
});

describe('loopHead', () => {
  it('adds pipe, coil and collectors; collectors give their rated drop with water at 20 °C [the rating]', () => {
    const fluid = compileFluid('water', 0);
    const h = compileHydraulics(
      { ...parts, loop: { ...parts.loop, pipeLength: 0, fittingLoss: 0 }, coil: { ...parts.coil, length: 0 } },
      fluid,
    );
    const density = fluidDensity(fluid, 20);
    const head = loopHead(h, 2 * parts.array.collector.ratedFlow, density, fluidViscosity(fluid, 20));
    expect(Math.abs(head * density * 9.80665 - 500)).toBeLessThan(0.01);
  });

  it('rises with the flow in every fluid and temperature [direction that physics demands]', () => {
    const shares = fc.double({ min: 0, max: 0.6, noNaN: true });
    const temperatures = fc.double({ min: -40, max: 140, noNaN: true });
    const flows = fc.double({ min: 1e-7, max: 1e-3, noNaN: true });
    fc.assert(
      fc.property(shares, temperatures, flows, (x, t, flow) => {
        const fluid = compileFluid('propylene-glycol', x);
        const h = compileHydraulics(parts, fluid);
        const head = (q: number) => loopHead(h, q, fluidDensity(fluid, t), fluidViscosity(fluid, t));
        expect(head(flow * 1.01)).toBeGreaterThan(head(flow));
      }),
    );
  });
});

const read = (table: FlowTable, supply: number, fluidTemperature: number) => {
  const answer = { flow: 0, power: 0 };
  readFlowTable(table, { supply, irradiance: 0, cellTemperature: 0, fluidTemperature }, answer);
  return answer;
};

describe('table of flow by power', () => {
  it.each([
    ['propylene-glycol', 0.4],
    ['propylene-glycol', 0.5],
    ['ethylene-glycol', 0.3],
    ['water', 0],
  ] as const)('%s %f: within 0.5 percent of full flow of the exact point [its stated error]', (name, x) => {
    const fluid = compileFluid(name, x);
    const h = compileHydraulics(parts, fluid);
    const table = compileFlowTable(h);
    const full = operatingPoint(h, 1000, 140).flow;
    let worst = 0;
    for (let t = -39.7; t < 141; t += 1.7) {
      for (let power = 0.05; power < 30; power *= 1.2) {
        worst = Math.max(worst, Math.abs(read(table, power, t).flow - operatingPoint(h, power, t).flow));
      }
    }
    expect(worst / full).toBeLessThan(0.005);
  });

  it('stands still without power and holds its ends [its contract]', () => {
    const table = compileFlowTable(compileHydraulics(parts, compileFluid('propylene-glycol', 0.4)));
    expect(read(table, 0, 20)).toEqual({ flow: 0, power: 0 });
    expect(read(table, -1, 20)).toEqual({ flow: 0, power: 0 });
    expect(read(table, 5, -80)).toEqual(read(table, 5, -40));
    expect(read(table, 5, 300)).toEqual(read(table, 5, 140));
    expect(read(table, 1e4, 60)).toEqual(read(table, 1e3, 60));
  });
});

describe('pumpOperatingPoint', () => {
  const at = (electricalPower: number, fluidTemperature: number) =>
    pumpOperatingPoint(parts, { electricalPower, fluidTemperature });

  it('rises with power and stands at none [direction that physics demands]', () => {
    expect(at(0, 20).flow).toBe(0);
    let before = 0;
    for (const power of [0.1, 1, 2, 5, 10]) {
      const { flow } = at(power, 20);
      expect(flow).toBeGreaterThan(before);
      before = flow;
    }
  });

  it('refuses what is no number [requirement]', () => {
    expect(() => at(Number.NaN, 20)).toThrow(DesignError);
    expect(() => at(5, Number.NaN)).toThrow(DesignError);
  });
});

describe('panels in series', () => {
  const { array } = parts;
  const fluid = compileFluid('water', 0);
  const dropAt = (panels: number, inSeries: number, flow: number): number => {
    const bare = { ...parts, array: { ...array, panels, inSeries } };
    const none = { ...bare, array: { ...bare.array, collector: { ...array.collector, ratedPressureDrop: 0 } } };
    const head = (loop: HydraulicParts) => loopHead(compileHydraulics(loop, fluid), flow, 998.2, 0.001002);
    return (head(bare) - head(none)) * 998.2 * 9.80665;
  };

  it('add their drops at the flow of a row; rows share the flow [arithmetic, water at 20 °C]', () => {
    const { ratedFlow, ratedPressureDrop } = array.collector;
    expect(Math.abs(dropAt(1, 1, ratedFlow) / ratedPressureDrop - 1)).toBeLessThan(1e-3);
    expect(Math.abs(dropAt(3, 3, ratedFlow) / ratedPressureDrop - 3)).toBeLessThan(1e-3);
    expect(Math.abs(dropAt(6, 3, 2 * ratedFlow) / ratedPressureDrop - 3)).toBeLessThan(1e-3);
    expect(Math.abs(dropAt(6, 1, 6 * ratedFlow) / ratedPressureDrop - 1)).toBeLessThan(1e-3);
  });
});

describe('a flow through ways side by side [one pressure drop, by hand]', () => {
  const ways = (...list: readonly (readonly [number, number])[]) =>
    list.map(([laminar, turbulent]) => ({ laminar, turbulent, share: -1 }));
  const split = (list: ReturnType<typeof ways>, flow: number) =>
    [
      splitFlow(list, 0, list.length, { flow, density: 1000, viscosity: 0.001 }),
      list.map(({ share }) => share),
    ] as const;

  it.each([
    // 1 L/s through 3e3 Pa s/L of laminar, 2 L/s through 750 Pa s²/L² of turbulent resistance: 3 kPa each.
    [
      'laminar and turbulent',
      [
        [3e9, 0],
        [0, 7.5e5],
      ],
      3e-3,
      3000,
      [1 / 3, 2 / 3],
    ],
    [
      'alike',
      [
        [1e9, 0],
        [1e9, 0],
      ],
      2e-3,
      1000,
      [0.5, 0.5],
    ],
    ['alone', [[1e9, 1e6]], 1e-3, 2000, [1]],
    [
      'one without resistance takes all',
      [
        [1e9, 0],
        [0, 0],
      ],
      2e-3,
      0,
      [0, 1],
    ],
    [
      'no flow',
      [
        [1e9, 0],
        [0, 1e6],
        [1e9, 1e6],
      ],
      0,
      0,
      [1 / 3, 1 / 3, 1 / 3],
    ],
  ] as const)('%s', (_, list, flow, drop, shares) => {
    const [found, shared] = split(ways(...list), flow);
    expect(found).toBeCloseTo(drop, 8);
    for (const [at, share] of shares.entries()) expect(shared[at]).toBeCloseTo(share, 12);
  });
});
