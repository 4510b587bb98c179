import { describe, expect, it } from 'vitest';
import { conduct, conductionFactors } from '../../packages/sim-core/src/physics/tank/conduction.ts';
import { loseToRoom, nodeDecays } from '../../packages/sim-core/src/physics/tank/losses.ts';
import { drawThrough } from '../../packages/sim-core/src/physics/tank/transport.ts';

describe('fully mixed tank cooling towards its room [closed form: Newton cooling]', () => {
  // Rows: start, room [°C], UA [W/K], mass [kg], specific heat [J/(kg·K)], hours, end [°C].
  const rows = [
    [60, 20, 3, 300, 4180, 24, 52.53059],
    [75, 12, 2.2, 200, 4180, 48, 51.980742],
    [10, 22, 4, 150, 4186, 12, 12.886985],
  ] as const;
  it.each(rows)(
    '%d °C in a room of %d °C, %d W/K, %d kg of %d J/(kg·K): after %d h %d °C',
    (start, room, ua, mass, heat, hours, end) => {
      const capacity = mass * heat;
      const temperature = Float64Array.of(start);
      const decay = nodeDecays(Float64Array.of(ua), capacity, 300);
      let lost = 0;
      for (let step = 0; step < hours * 12; step++) lost += loseToRoom(temperature, decay, capacity, room);
      expect(temperature[0]).toBeCloseTo(end, 5);
      expect(lost / (capacity * (start - end))).toBeCloseTo(1, 6);
    },
  );
});

describe('draw through N nodes without slopes [closed form: N stirred tanks in series, regularised gamma function]', () => {
  // Rows: nodes, tank volumes drawn, share of old water at the outlet, share of the first content recovered.
  const rows = [
    [1, 1, 0.36787944, 0.63212056],
    [2, 0.8, 0.52493095, 0.63658627],
    [5, 1.2, 0.2850565, 0.89638816],
    [10, 1, 0.45792971, 0.87488996],
    [20, 0.8, 0.81224853, 0.78163079],
    [20, 1, 0.47025727, 0.91116468],
    [50, 1.2, 0.084406681, 0.99361014],
  ] as const;
  /** Steps that draw one node's volume: explicit upwind steps smear a little less than endlessly short ones, by 1/steps. */
  const STEPS = 4000;

  it.each(rows)('%d nodes, %d tank volumes: outlet %d, recovered %d', (nodes, volumes, outletShare, recoveredShare) => {
    const { outlet, recovered } = drawOut(nodes, volumes, STEPS, 0);
    expect(outlet).toBeCloseTo(outletShare, 3);
    expect(recovered).toBeCloseTo(recoveredShare, 3);
  });

  it.each(rows.filter(([nodes]) => nodes >= 5))(
    'with slopes %d nodes recover more after %d volumes than stirred ones',
    (nodes, volumes, _outlet, recoveredShare) => {
      expect(drawOut(nodes, volumes, 4, 1).recovered).toBeGreaterThan(recoveredShare);
    },
  );

  /** Draws from a tank of old water (1), new water (0) entering: last outlet, and what came out over the tank's content. */
  function drawOut(nodes: number, volumes: number, stepsPerNode: number, sharpness: number) {
    const temperature = new Float64Array(nodes).fill(1);
    const steps = Math.round(volumes * nodes * stepsPerNode);
    let outlet = 1;
    let recovered = 0;
    for (let step = 0; step < steps; step++) {
      outlet = drawThrough(temperature, 1 / stepsPerNode, 0, sharpness);
      recovered += outlet / (stepsPerNode * nodes);
    }
    return { outlet, recovered };
  }
});

describe('plug flow through the tank [closed form: front at volume drawn over cross-section]', () => {
  // Rows: diameter [m], drawn [L], height of the front [m]; the tank is 1.2 m high here.
  const HEIGHT = 1.2;
  it.each([
    [0.55, 120, 0.505087],
    [0.5, 65, 0.331042],
  ])('%d m wide, %d L drawn: front at %d m', (diameter, drawn_L, front) => {
    const nodes = 20;
    const temperature = new Float64Array(nodes).fill(60);
    const nodeVolume = ((Math.PI / 4) * diameter ** 2 * HEIGHT) / nodes;
    const draws = 60;
    for (let draw = 0; draw < draws; draw++) drawThrough(temperature, drawn_L / 1000 / draws / nodeVolume, 10);
    // What is left above 10 °C, as a height of water at 60 °C: exact in any conservative scheme, to the digits printed.
    const left = temperature.reduce((sum, t) => sum + (t - 10) / 50, 0) * (HEIGHT / nodes);
    expect(HEIGHT - left).toBeCloseTo(front, 6);
    // Sharpness: the exact front is a jump; ours goes from 10 % to 90 % within four nodes.
    const between = temperature.filter((t) => t > 15 && t < 55).length;
    expect(between).toBeLessThanOrEqual(4);
    // No new extremes.
    expect(Math.min(...temperature)).toBeGreaterThanOrEqual(10);
    expect(Math.max(...temperature)).toBeLessThanOrEqual(60);
  });

  it('moves the profile by exactly one node, unsmeared, when one node is drawn', () => {
    const temperature = Float64Array.of(10, 20, 40, 70);
    expect(drawThrough(temperature, 1, 5)).toBe(70);
    expect([...temperature]).toEqual([5, 10, 20, 40]);
  });
});

describe('numerical smear of a front [exact front: a jump]', () => {
  /** From 10 to 90 % of the step, linear between nodes. [nodes] */
  function frontWidth(temperature: Float64Array): number {
    const place = (level: number) => {
      const above = temperature.findIndex((t) => t >= level);
      const [low, high] = [temperature[above - 1]!, temperature[above]!];
      return above - 1 + (level - low) / (high - low);
    };
    return place(0.9) - place(0.1);
  }

  // 1, 3, 5 and 10 volumes of a tank of 20 nodes, followed in a column long enough to hold the front; in pieces of c nodes.
  const TRAVELS = [5, 20, 60, 100, 200];
  it.each([0.02, 0.05, 0.1, 0.25, 0.5, 0.75, 0.9])(
    'drawn in pieces of %d nodes it is at most 1.75 n^(1/3) nodes wide after n, and its place is exact',
    (courant) => {
      for (const travel of TRAVELS) {
        const temperature = new Float64Array(400).fill(1);
        temperature[0] = 1;
        const steps = Math.round(travel / courant);
        for (let step = 0; step < steps; step++) drawThrough(temperature, courant, 0);
        const width = frontWidth(temperature);
        expect(width).toBeLessThan(1.75 * Math.cbrt(travel));
        const gone = 400 - temperature.reduce((sum, t) => sum + t, 0);
        expect(gone).toBeCloseTo(steps * courant, 9);
      }
    },
  );

  it('stirred nodes smear as √n, twice to four times as wide [2.56 √n: 10 to 90 % of a normal front]', () => {
    for (const travel of TRAVELS.slice(1)) {
      const temperature = new Float64Array(400).fill(1);
      for (let step = 0; step < travel / 0.02; step++) drawThrough(temperature, 0.02, 0, 0);
      expect(frontWidth(temperature) / (2.56 * Math.sqrt(travel))).toBeCloseTo(1, 1);
    }
  });
});

describe('conduction in an insulated column after a step [closed form: Carslaw & Jaeger, cosine series]', () => {
  // Rows: height z, hours, column height, below, above [°C], diffusivity [m²/s], step at, T [°C].
  const rows = [
    [0.6, 24, 1.5, 20, 60, 1.5e-7, 0.75, 27.029884],
    [0.75, 24, 1.5, 20, 60, 1.5e-7, 0.75, 40],
    [0.9, 24, 1.5, 20, 60, 1.5e-7, 0.75, 52.970116],
    [1.2, 24, 1.5, 20, 60, 1.5e-7, 0.75, 59.896228],
    [0.6, 168, 1.5, 20, 60, 1.5e-7, 0.75, 34.522965],
    [0.9, 168, 1.5, 20, 60, 1.5e-7, 0.75, 45.477035],
    [1.2, 168, 1.5, 20, 60, 1.5e-7, 0.75, 53.910774],
    [0.3, 72, 1.2, 15, 55, 1.43e-7, 0.4, 29.471002],
  ] as const;
  it.each(rows)(
    'z %d m, %d h, L %d m, %d | %d °C, a %d m²/s, step at %d m → %d °C',
    (z, hours, height, below, above, diffusivity, stepAt, expected) => {
      const nodes = 600;
      const spacing = height / nodes;
      const temperature = Float64Array.from({ length: nodes }, (_, node) =>
        (node + 0.5) * spacing < stepAt ? below : above,
      );
      const before = temperature.reduce((sum, t) => sum + t, 0);
      const factors = conductionFactors(diffusivity, spacing, 300, nodes);
      for (let step = 0; step < hours * 12; step++) conduct(temperature, factors);
      // z lies between two nodes' middles.
      const place = z / spacing - 0.5;
      const node = Math.floor(place + 1e-9);
      const found = temperature[node]! + (place - node) * (temperature[node + 1]! - temperature[node]!);
      // First order in time: 300 s steps against a front of 24 h and more.
      expect(found).toBeCloseTo(expected, 1);
      expect(temperature.reduce((sum, t) => sum + t, 0) / before).toBeCloseTo(1, 11);
    },
  );
});
