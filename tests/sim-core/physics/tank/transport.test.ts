import { describe, expect, it } from 'vitest';
import { drawThrough } from '../../../../packages/sim-core/src/physics/tank/transport.ts';

describe('plug flow with van Leer’s slopes [J. Comput. Phys. 14 (1974) 361, worked by hand]', () => {
  it('half a node of 5 °C into 10, 20, 40, 44 °C', () => {
    // φ: 2·5·10/15 = 20/3; 2·10·20/30 = 40/3; 2·20·4/24 = 20/3. Faces T + ¼ φ: 35/3, 70/3, 125/3; the top hands out its own.
    const nodes = Float64Array.of(10, 20, 40, 44);
    expect(drawThrough(nodes, 0.5, 5)).toBe(44);
    const faces = [5, 35 / 3, 70 / 3, 125 / 3, 44];
    for (const [node, old] of [10, 20, 40, 44].entries()) {
      expect(nodes[node]).toBeCloseTo(old + 0.5 * (faces[node]! - faces[node + 1]!), 12);
    }
  });

  it('has no slope at an extreme: a cold and a warm layer between others', () => {
    // Node 1 lies below both neighbours, node 2 above both: their faces carry their own temperature.
    const nodes = Float64Array.of(30, 20, 50, 40);
    expect(drawThrough(nodes, 0.2, 30)).toBe(40);
    const after = [30, 20 + 0.2 * (30 - 20), 50 + 0.2 * (20 - 50), 40 + 0.2 * (50 - 40)];
    for (const [node, value] of after.entries()) expect(nodes[node]).toBeCloseTo(value, 12);
  });

  it('more than a node goes in equal pieces; whole nodes move without smear', () => {
    const pieces = Float64Array.of(10, 20, 40, 44);
    const once = Float64Array.of(10, 20, 40, 44);
    const left = drawThrough(pieces, 1.5, 5);
    const [first, second] = [drawThrough(once, 0.75, 5), drawThrough(once, 0.75, 5)];
    expect(left).toBeCloseTo(0.5 * (first + second), 12);
    expect(pieces).toEqual(once);
    const whole = Float64Array.of(10, 20, 40, 44);
    expect(drawThrough(whole, 2, 5)).toBe(42);
    expect([...whole]).toEqual([5, 5, 10, 20]);
    expect(drawThrough(whole, 0, 7)).toBe(7);
  });

  it('sharpness 0 is stirred nodes [definition]', () => {
    const nodes = Float64Array.of(10, 20, 40);
    drawThrough(nodes, 0.5, 0, 0);
    expect([...nodes]).toEqual([5, 15, 30]);
  });
});
