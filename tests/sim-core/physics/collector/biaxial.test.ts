import { DesignError, defineSystem, type SystemInput } from '@noonloop/sim-core';
import { biaxialIncidenceModifier } from '@noonloop/sim-core/formulas';
import { describe, expect, it } from 'vitest';
import { biaxialEffectiveIrradiance } from '../../../../packages/sim-core/src/physics/collector/index.ts';
import { planeOfArray, sunTrack } from '../../../../packages/sim-core/src/physics/sun/index.ts';
import { inventedValley, plainInput, sum } from '../../../examples.ts';
import { liveSpan } from '../../../property/span.ts';
import { inventedYear } from '../sun/weather.ts';

const even = { angles: [0, 89.9999], values: [1, 1] };
const falling = { angles: [0, 90], values: [1, 0] }; // K = 1 − θ/90°: shows which angle it was given
const onlyBeam = { sky: 0, ground: 0 };

const sky = inventedYear(6, 17, 500, 0);
const plane = { tilt: 40, azimuth: 180 };
const light = planeOfArray(sky, plane, { stepsPerHour: 1 });

/** K of each step of one day, by what gets through over the beam. */
function throughDay(day: number, tubes: 'upright' | 'level', across: boolean): (angle: number) => number {
  const modifier = { transversal: across ? falling : even, longitudinal: across ? even : falling, tubes };
  const through = biaxialEffectiveIrradiance(light, modifier, onlyBeam, sunTrack(sky, 1), plane);
  return (hour) => through[24 * day + hour]! / light.beam[24 * day + hour]!;
}

// At 40° N on a plane of 40° to the south, the equinox sun stays in the plane through its normal and east–west: its angle
// from the normal is the hour angle, all of it across upright tubes.
const EQUINOX = 79;

describe('a table out of order [requirement]', () => {
  const wrong = { angles: [0, 50, 40], values: [1, 0.9, 0.8] };
  it.each([
    ['transversal', { transversal: wrong, longitudinal: even }],
    ['longitudinal', { transversal: even, longitudinal: wrong }],
  ])('is refused, %s', (_, tables) => {
    expect(() => biaxialIncidenceModifier({ ...tables, tubes: 'upright' }, 10, 10)).toThrow(DesignError);
  });
});

describe('biaxialEffectiveIrradiance', () => {
  const equinox = {
    across: throughDay(EQUINOX, 'upright', true),
    along: throughDay(EQUINOX, 'upright', false),
    level: throughDay(EQUINOX, 'level', true),
  };

  it.each([9, 10, 11, 12, 13, 14])(
    'at the equinox upright tubes see the hour angle across, hour %i [geometry]',
    (hour) => {
      const hourAngle = Math.abs(hour + 0.5 - 12) * 15;
      // Equation of time at the equinox: 7 minutes, 1.9°; declination within 0.5°.
      expect(Math.abs(equinox.across(hour) - (1 - hourAngle / 90))).toBeLessThan(2.5 / 90);
      expect(equinox.along(hour)).toBeGreaterThan(1 - 1 / 90);
      expect(equinox.level(hour)).toBeGreaterThan(1 - 1 / 90);
    },
  );

  it('at noon of midsummer all of the angle, 23.4°, is along upright tubes [declination]', () => {
    const along = throughDay(171, 'upright', false);
    const noon = (along(11) + along(12)) / 2;
    expect(Math.abs(noon - (1 - 23.44 / 90))).toBeLessThan(1 / 90);
  });
});

describe('tubes in the run', () => {
  const angles = [0, 20, 40, 60, 80];
  const modifier = (values: number[]) => ({
    transversal: { angles, values },
    longitudinal: { angles, values: [1, 1, 0.96, 0.85, 0.5] },
    tubes: 'upright',
  });
  const input = (values: number[]): SystemInput =>
    ({
      ...plainInput,
      array: {
        ...plainInput.array,
        collector: { area: 2, eta0: 0.6, a1: 1.2, a2: 0.005, incidenceModifier: modifier(values) },
      },
    }) as SystemInput;

  it('gain by a transversal table above 1, and close their balance [conservation]', async () => {
    const weather = await inventedValley();
    const weeks = (values: number[]) => liveSpan(defineSystem(input(values)), weather, 2900, 2900 + 35 * 24);
    const flat = weeks([1, 1, 1, 1, 1]);
    const tubes = weeks([1, 1.06, 1.25, 1.3, 0.9]);
    expect(sum(tubes.columns.solarHeat)).toBeGreaterThan(1.02 * sum(flat.columns.solarHeat));
    expect(tubes.balance.whole.worstRelative).toBeLessThan(1e-9);
  });
});
