import { describe, expect, it } from 'vitest';
import { modifierAtCosine } from '../../../../packages/sim-core/src/physics/collector/incidence.ts';
import {
  beamIncidenceModifier,
  diffuseModifiers,
  effectiveIrradiance,
} from '../../../../packages/sim-core/src/physics/collector/index.ts';
import { planeOfArray } from '../../../../packages/sim-core/src/physics/sun/index.ts';
import { inventedYear } from '../sun/weather.ts';

const table = { angles: [0, 30, 60], values: [1, 0.98, 0.9] };

describe('beamIncidenceModifier', () => {
  it('is linear between the rows of a table and then falls to 0 at 90° [arithmetic]', () => {
    expect(beamIncidenceModifier(table, 0)).toBe(1);
    expect(beamIncidenceModifier(table, 45)).toBeCloseTo(0.94, 12);
    expect(beamIncidenceModifier(table, 75)).toBeCloseTo(0.45, 12);
    expect(beamIncidenceModifier(table, 90)).toBe(0);
  });

  it('from b0 is 0.9 at 60° for 0.1, and never negative [closed form]', () => {
    expect(beamIncidenceModifier({ b0: 0.1 }, 60)).toBeCloseTo(0.9, 12);
    expect(beamIncidenceModifier({ b0: 0.1 }, 86)).toBe(0);
    expect(beamIncidenceModifier({ b0: 0 }, 89)).toBe(1);
  });

  it('refuses an angle of 91°, b0 of 10 and a table out of order [requirement]', () => {
    expect(() => beamIncidenceModifier(table, 91)).toThrow(/incidenceAngle: found 91/);
    expect(() => beamIncidenceModifier({ b0: 10 }, 0)).toThrow(/b0: found 10/);
    expect(() => beamIncidenceModifier({ angles: [0, 60, 30], values: [1, 1, 1] }, 0)).toThrow(/"0, 60, 30".*rise/);
    expect(() => beamIncidenceModifier({ angles: [0, 60], values: [1] }, 0)).toThrow(/as many as the values/);
  });
});

describe('modifierAtCosine', () => {
  it('lets nothing through from behind or along the plane, also where b0 is 0 [definition]', () => {
    for (const cosine of [0, -0.5, -1]) {
      for (const modifier of [{ b0: 0 }, { b0: 0.1 }, table]) expect(modifierAtCosine(modifier, cosine)).toBe(0);
    }
  });
});

/** What a uniform hemisphere gets through, from its two parts by their view factors. */
function hemisphere(b0: number, tilt: number): number {
  const { sky, ground } = diffuseModifiers({ b0 }, tilt);
  const cosine = Math.cos((tilt * Math.PI) / 180);
  return (sky * (1 + cosine)) / 2 + (ground * (1 - cosine)) / 2;
}

describe('diffuseModifiers', () => {
  it.each([10, 45, 80])(
    'at %i° sky and ground by their view factors make up the hemisphere, 1/1.1 [closed form]',
    (tilt) => {
      expect(hemisphere(0.1, tilt)).toBeCloseTo(1 / 1.1, 6);
    },
  );

  it('on a wall are the same for sky and ground [symmetry], and a level plane sees no ground [definition]', () => {
    const wall = diffuseModifiers({ b0: 0.1 }, 90);
    expect(wall.sky).toBeCloseTo(wall.ground, 10);
    expect(diffuseModifiers({ b0: 0.1 }, 0).ground).toBe(0);
  });

  it('of a cover that passes all light alike are 1 at every tilt [identity]', () => {
    const clear = { angles: [0, 89.999999], values: [1, 1] };
    for (const tilt of [0, 1, 30, 90]) expect(diffuseModifiers(clear, tilt).sky).toBeCloseTo(1, 7);
    for (const tilt of [1, 30, 90]) expect(diffuseModifiers(clear, tilt).ground).toBeCloseTo(1, 4);
  });

  it('from b0 0.1 on a level plane is 1 − b0 but for the part that is held at 0: 0.909 [closed form]', () => {
    // ∫ (1 + b0 − b0/cos θ) 2 sin θ cos θ dθ from 0 to cos θ0 = b0/(1 + b0) is 1/(1 + b0).
    expect(diffuseModifiers({ b0: 0.1 }, 0).sky).toBeCloseTo(1 / 1.1, 6);
  });
});

describe('effectiveIrradiance', () => {
  it('weighs beam and circumsolar by the beam modifier, sky and ground by theirs [arithmetic]', () => {
    const plane = planeOfArray(inventedYear(5, 18, 500, 100), { tilt: 45, azimuth: 180 });
    const diffuse = { sky: 0.9, ground: 0.7 };
    const effective = effectiveIrradiance(plane, table, diffuse);
    let compared = 0;
    const off: number[] = [];
    for (let at = 0; at < effective.length; at++) {
      if (plane.total[at] === 0) continue;
      const angle = (Math.acos(Math.min(1, plane.incidenceCosine[at]!)) * 180) / Math.PI;
      const beam = beamIncidenceModifier(table, Math.min(angle, 90)) * (plane.beam[at]! + plane.circumsolar[at]!);
      const expected = beam + 0.9 * plane.sky[at]! + 0.7 * plane.ground[at]!;
      if (!(Math.abs(effective[at]! - expected) < 0.5e-8)) off.push(at);
      compared++;
    }
    expect(off).toEqual([]);
    expect(compared).toBeGreaterThan(20_000);
  });
});
