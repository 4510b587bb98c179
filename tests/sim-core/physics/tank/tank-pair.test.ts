import { describe, expect, it } from 'vitest';
import { relieveTank } from '../../../../packages/sim-core/src/physics/tank/relief.ts';
import {
  compileTank,
  outletOf,
  restTank,
  type Tank,
  tankHeat,
  WATER_HEAT_CAPACITY,
} from '../../../../packages/sim-core/src/physics/tank/tank.ts';
import { drawThroughPair, outletOfPair } from '../../../../packages/sim-core/src/physics/tank/tank-pair.ts';
import { drawThrough } from '../../../../packages/sim-core/src/physics/tank/transport.ts';
import { plainTank } from './parts.ts';

/** Of the reference, whose water is counted by mass. [J/(kg·K)] */
const CP = 4180;
/** Volume of a tank with the heat capacity of that mass. [m³] */
const volumeOf = (mass: number): number => (mass * CP) / WATER_HEAT_CAPACITY;

/** What a case says of its tanks: mass [kg], UA [W/K], start and room [°C]; the first is the one that the mains enter. */
interface Half {
  readonly mass: number;
  readonly loss: number;
  readonly start: number;
  readonly room: number;
}

/** Step: hours, draw [kg/h]; then what the reference has for it. */
interface Step {
  readonly hours: number;
  readonly draw: number;
  /** Means of both tanks [°C], heat delivered, losses [kWh]. */
  readonly stirred: readonly [number, number, number, number, number];
  /** Delivered by plug flow. [kWh] */
  readonly plug: number;
}

/** Integrated by the exponentials of both tanks, checked by an ODE solver to 3e-12: invented tanks, reference file of two tanks in series. */
const CASES: readonly { name: string; mains: number; cold: Half; warm: Half; steps: readonly Step[] }[] = [
  {
    name: 'alike, without loss',
    mains: 10,
    cold: { mass: 200, loss: 0, start: 40, room: 20 },
    warm: { mass: 200, loss: 0, start: 65, room: 20 },
    steps: [
      { hours: 0.5, draw: 300, stirred: [24.17099658, 46.60840784, 7.946782751, 0, 0], plug: 9.579166667 },
      { hours: 0.5, draw: 300, stirred: [16.6939048, 32.31301601, 5.056054525, 0, 0], plug: 6.676388889 },
      { hours: 0.5, draw: 300, stirred: [13.16197674, 22.91140501, 3.003455185, 0, 0], plug: 3.483333333 },
    ],
  },
  {
    name: 'small behind large, drawn and at rest by turns',
    mains: 12,
    cold: { mass: 300, loss: 2.6, start: 52, room: 15 },
    warm: { mass: 120, loss: 1.9, start: 61, room: 21 },
    steps: [
      { hours: 9, draw: 0, stirred: [49.59609724, 56.38019433, 0, 0.8373594616, 0.6436929233], plug: 0 },
      {
        hours: 0.25,
        draw: 240,
        stirred: [42.72876541, 52.11353857, 2.950584791, 0.02018054109, 0.01584262358],
        plug: 3.087623577,
      },
      { hours: 5, draw: 0, stirred: [41.71298463, 50.06286464, 0, 0.3538303076, 0.285727234], plug: 0 },
      {
        hours: 0.4,
        draw: 300,
        stirred: [31.8652042, 40.87631285, 4.669356201, 0.02231764762, 0.01862921564],
        plug: 5.393453417,
      },
      { hours: 10, draw: 0, stirred: [30.65219915, 38.34258569, 0, 0.4225300916, 0.3530326509], plug: 0 },
      {
        hours: 0.5,
        draw: 400,
        stirred: [21.54884369, 27.01446139, 4.724834172, 0.01377443269, 0.01077886707],
        plug: 7.673508401,
      },
    ],
  },
  {
    name: 'drawn slowly with large losses',
    mains: 8,
    cold: { mass: 100, loss: 12, start: 60, room: 18 },
    warm: { mass: 80, loss: 9, start: 75, room: 25 },
    steps: [
      {
        hours: 24,
        draw: 10,
        stirred: [13.43865056, 19.42504023, 7.272299349, 1.331385045, 1.964901888],
        plug: 8.656191521,
      },
      {
        hours: 12,
        draw: 5,
        stirred: [14.53291639, 20.59805995, 0.8450692472, -0.5551456693, -0.5259404971],
        plug: 0.9273984768,
      },
    ],
  },
];

/** A tank of a case in some layers; its steps are a part of an hour. */
const tankOf = ({ loss, mass, room, start }: Half, nodes: number, perHour: number): Tank =>
  compileTank(
    {
      ...plainTank,
      volume: volumeOf(mass),
      lossCoefficient: loss,
      roomTemperature: room,
      initialTemperature: start,
      nodes,
      verticalConductivity: 1e-9,
    },
    [perHour, perHour / 2],
  );

/** Mean of a tank. [°C] */
const mean = (tank: Tank): number => tankHeat(tank) / (tank.nodeCapacity * tank.temperature.length);

/** Runs a case in small steps; each has half a rest, the draw, and half a rest. @returns A row for each of its steps. */
function run({ cold: c, mains, steps, warm: w }: (typeof CASES)[number], nodes: number, perHour: number): number[][] {
  const cold = tankOf(c, nodes, 2 * perHour);
  const warm = tankOf(w, nodes, 2 * perHour);
  const drawn = { outlet: 0, between: 0 };
  return steps.map(({ draw, hours }) => {
    let delivered = 0;
    const lost = [0, 0];
    const volume = volumeOf(draw) / perHour;
    const rest = () => {
      lost[0]! += restTank(cold, 2 * perHour);
      lost[1]! += restTank(warm, 2 * perHour);
    };
    for (let part = 0; part < Math.round(hours * perHour); part++) {
      rest();
      drawThroughPair({ cold, warm }, volume, mains, 0, drawn);
      delivered += volume * WATER_HEAT_CAPACITY * (drawn.outlet - mains);
      rest();
    }
    return [mean(cold), mean(warm), ...[delivered, ...lost].map((heat) => heat / 3.6e6)];
  });
}

describe('two tanks in series on the draw side [closed forms: two stirred tanks; plug flow by residence times]', () => {
  it.each(CASES)('$name: stirred, one layer each', (of) => {
    // A layer is drawn by the upwind rule, of the first order in the step; the two finest steps together are of the second, twice over.
    const [coarse, middle, fine] = [400, 800, 1600].map((perHour) => run(of, 1, perHour));
    of.steps.forEach(({ stirred }, step) => {
      stirred.forEach((expected, index) => {
        const [a, b, c] = [coarse, middle, fine].map((rows) => rows![step]![index]!);
        const limit = (4 * (2 * c! - b!) - (2 * b! - a!)) / 3;
        expect(Math.abs(limit - expected), `step ${step}, value ${index}`).toBeLessThan(1e-6);
      });
    });
  });

  it.each(CASES)('$name: in layers delivers more than stirred, ever nearer to plug flow', (of) => {
    const total = (rows: number[][]): number => rows.reduce((sum, row) => sum + row[2]!, 0);
    const stirred = of.steps.reduce((sum, step) => sum + step.stirred[2], 0);
    const plug = of.steps.reduce((sum, step) => sum + step.plug, 0);
    const [few, more, most] = [4, 20, 80].map((nodes) => (plug - total(run(of, nodes, 120))) / (plug - stirred));
    expect(few!).toBeLessThan(0.5);
    expect(more!).toBeLessThan(few!);
    expect(most!).toBeLessThan(more!);
    expect(Math.abs(most!)).toBeLessThan(0.02);
  });
});

describe('water washed out of two tanks of stirred layers', () => {
  // Share of the old water at the outlet: matrix exponential and, for equal layers, the regularised gamma function.
  it.each([
    [200, 200, 1, 1, 100, 0.9097959896],
    [200, 200, 1, 1, 400, 0.4060058497],
    [300, 100, 1, 1, 200, 0.7024580369],
    [300, 100, 4, 2, 350, 0.5686849041],
    [200, 200, 5, 5, 400, 0.4579297145],
  ])('%d and %d kg in %d and %d layers after %d kg: %d [closed form]', (m1, m2, n1, n2, drawnMass, expected) => {
    const share = (steps: number): number => {
      const cold = new Float64Array(n1).fill(1);
      const warm = new Float64Array(n2).fill(1);
      const part = drawnMass / steps;
      for (let step = 0; step < steps; step++)
        drawThrough(warm, (part * n2) / m2, drawThrough(cold, (part * n1) / m1, 0, 0), 0);
      return warm[n2 - 1]!;
    };
    const [a, b, c] = [2000, 4000, 8000].map(share);
    expect(Math.abs((4 * (2 * c! - b!) - (2 * b! - a!)) / 3 - expected)).toBeLessThan(1e-7);
  });
});

describe('two tanks of half the volume', () => {
  const half = (start: number, nodes = 10, inletDiameter: number | null = null): Tank =>
    compileTank(
      { ...plainTank, volume: 0.15, lossCoefficient: 0, nodes, initialTemperature: start, inletDiameter },
      [1],
    );

  it('are one tank of all their layers, when every draw is whole layers [identity]', () => {
    const cold = half(30);
    const warm = half(55);
    const whole = Float64Array.of(...cold.temperature, ...warm.temperature);
    const drawn = { outlet: 0, between: 0 };
    for (const [layers, mains] of [
      [3, 12],
      [1, 8],
      [9, 15],
      [14, 10],
    ] as const) {
      // A hair less than whole layers, lest rounding make it a piece more.
      const few = layers * (1 - 1e-13);
      drawThroughPair({ cold, warm }, few * warm.nodeVolume, mains, 0, drawn);
      expect(drawn.outlet).toBeCloseTo(drawThrough(whole, few, mains), 10);
      [...cold.temperature, ...warm.temperature].forEach((temperature, node) => {
        expect(temperature).toBeCloseTo(whole[node]!, 10);
      });
    }
  });

  it('keep what comes in, goes on and goes out, with inlets that stir too [conservation]', () => {
    const cold = half(20, 7, 0.01);
    const warm = half(60, 10, 0.02);
    const drawn = { outlet: 0, between: 0 };
    const before = [tankHeat(cold), tankHeat(warm)];
    const flow = (volume: number, from: number, to: number) => volume * WATER_HEAT_CAPACITY * (from - to);
    drawThroughPair({ cold, warm }, 0.093, 9, 1e-4, drawn);
    expect(tankHeat(cold) - before[0]!).toBeCloseTo(flow(0.093, 9, drawn.between), 3);
    expect(tankHeat(warm) - before[1]!).toBeCloseTo(flow(0.093, drawn.between, drawn.outlet), 3);
    drawThroughPair({ cold, warm }, 0, 9, 1e-4, drawn);
    expect(drawn).toEqual({ outlet: 9, between: 9 });
  });

  it('bring the warm one’s water first, then the other’s [plug flow by hand]', () => {
    const cold = half(30);
    const warm = half(60);
    expect(outletOfPair(cold, warm, 0.1)).toBe(outletOf(warm, 0.1));
    expect(outletOfPair(cold, warm, 0.2)).toBeCloseTo((0.15 * 60 + 0.05 * 30) / 0.2, 10);
  });

  it('let the valve of the one draw the other’s water after it [by hand: 10 layers at 100 °C, 50 °C water behind]', () => {
    const cold = half(50);
    const warm = half(100);
    const relieved = { reliefVolume: 0, reliefHeat: 0, followingHeat: 0 };
    const before = tankHeat(cold) + tankHeat(warm);
    expect(relieveTank(warm, 10, relieved, cold)).toBe(true);
    expect([...warm.temperature]).toEqual(new Array(10).fill(50));
    expect([...cold.temperature]).toEqual(new Array(10).fill(10));
    expect(relieved.followingHeat).toBeCloseTo(0.15 * WATER_HEAT_CAPACITY * 40, 3);
    expect(relieved.reliefHeat / (before - tankHeat(cold) - tankHeat(warm))).toBeCloseTo(1, 12);
  });
});
