import { describe, expect, it } from 'vitest';
import { loseToRoom, nodeConductances } from '../../../../packages/sim-core/src/physics/tank/losses.ts';

describe('losses of the tank, by hand', () => {
  // 1 m wide and high: side π m², floor and lid π/4 each. Of 6 W/K over 1.5 π m² each of four nodes has 1 for its side, the ends 1 more.
  it('go by outside area: 2, 1, 1 and 2 of 6 W/K [requirement]', () => {
    const conductance = nodeConductances(6, Math.PI / 4, 1, 4);
    for (const [node, expected] of [2, 1, 1, 2].entries()) expect(conductance[node]).toBeCloseTo(expected, 12);
    expect(nodeConductances(6, Math.PI / 4, 1, 1)[0]).toBeCloseTo(6, 12);
  });

  // Half as wide and twice as high: side π m² again, floor and lid π/16 each; 4.5 W/K over 1.125 π m².
  it('of a slender tank: 1.5 at the ends of three nodes, 4/3 and a little between [definition]', () => {
    const conductance = nodeConductances(4.5, Math.PI / 8, 2, 3);
    expect(conductance[1]).toBeCloseTo(4 / 3, 12);
    expect(conductance[0]).toBeCloseTo(4 / 3 + 0.25, 12);
    expect(conductance[2]).toBeCloseTo(4 / 3 + 0.25, 12);
  });

  it('a quarter of the excess over the room gone: 40 K become 30 K, and 10 kJ leave 1 kJ/K [requirement]', () => {
    const temperature = Float64Array.of(60, 20);
    expect(loseToRoom(temperature, Float64Array.of(0.75, 0.75), 1000, 20)).toBeCloseTo(10_000, 9);
    expect([...temperature]).toEqual([50, 20]);
  });
});
