import { workingInWords } from '@noonloop/reports';
import { describe, expect, it } from 'vitest';
import { DesignError } from '../../../../packages/sim-core/src/input/errors.ts';
import { sizeExpansionVessel } from '../../../../packages/sim-core/src/physics/loop/expansion.ts';
import { type ExpansionInput, reserveRule } from '../../../../packages/sim-core/src/physics/loop/expansion-rules.ts';

const loop: ExpansionInput = {
  fluid: 'propylene-glycol',
  glycolMassFraction: 0.4,
  systemVolume: 0.018,
  fillTemperature: 10,
  maximumTemperature: 100,
  steamVolume: 0.0035,
  reserveVolume: 0.001,
  prechargePressure: 1.5e5,
  endPressure: 5.4e5,
};

describe('sizeExpansionVessel', () => {
  it('18 L of propylene glycol x = 0.40 to 100 °C: e 0.0624548, vessel 9.22944 L, fill 1.80379 bar [EN 12828 form, computed apart]', () => {
    const vessel = sizeExpansionVessel(loop);
    expect(vessel.expansionCoefficient).toBeCloseTo(0.06245484972, 8);
    expect(vessel.expansionVolume * 1000).toBeCloseTo(1.124187295, 7);
    expect(vessel.minimumVolume * 1000).toBeCloseTo(9.229435561, 6);
    expect(vessel.fillPressure / 1e5).toBeCloseTo(1.803787542, 7);
    expect(vessel.steamPressure).toBeCloseTo(5.4e5, 4); // the smallest vessel just reaches the end pressure
  });

  it('in 18 L: cold 1.64706, hot 1.83450, with steam 2.63612 bar [gas law, computed apart]', () => {
    const vessel = sizeExpansionVessel({ ...loop, vesselVolume: 0.018 });
    expect(vessel.fillPressure / 1e5).toBeCloseTo(1.647058824, 8);
    expect(vessel.hotPressure / 1e5).toBeCloseTo(1.83450056, 6);
    expect(vessel.steamPressure / 1e5).toBeCloseTo(2.636124841, 6);
  });

  it('300 L of water 10 to 90 °C: e 0.0356279, vessel 21.9391 L; in 24 L 3.26667 and 7.12759 bar [computed apart]', () => {
    const vessel = sizeExpansionVessel({
      fluid: 'water',
      systemVolume: 0.3,
      fillTemperature: 10,
      maximumTemperature: 90,
      reserveVolume: 0.0015,
      prechargePressure: 3e5,
      endPressure: 8e5,
      vesselVolume: 0.024,
    });
    // Two densities of 5e-6 each: 1e-5 of 1 in e, 0.03 % of e.
    expect(Math.abs(vessel.expansionCoefficient - 0.035627933)).toBeLessThan(1e-5);
    expect(Math.abs(vessel.minimumVolume * 1000 - 21.93908382)).toBeLessThan(0.007);
    expect(vessel.fillPressure / 1e5).toBeCloseTo(3.266666667, 8);
    expect(Math.abs(vessel.hotPressure / 1e5 - 7.127589541)).toBeLessThan(0.003);
  });

  it('fills in pre-charge, end pressure and reserve by the standard’s rules [EN 12828, from memory]', () => {
    const { prechargePressure: _, endPressure: __, reserveVolume: ___, ...bare } = loop;
    const vessel = sizeExpansionVessel({ ...bare, staticHeight: 8, reliefPressure: 6e5 });
    expect(Math.abs(vessel.prechargePressure - (1036.4 * 9.80665 * 8 + 0.3e5))).toBeLessThan(200);
    expect(vessel.endPressure).toBeCloseTo(5.4e5, 6);
    expect(vessel.reserveVolume).toBeCloseTo(0.2 * vessel.minimumVolume, 9); // a vessel of up to 15 L
    expect(sizeExpansionVessel({ ...bare, staticHeight: 8, reliefPressure: 3e5 }).endPressure).toBeCloseTo(2.5e5, 6);
    const large = sizeExpansionVessel({
      ...bare,
      systemVolume: 1,
      steamVolume: 0,
      staticHeight: 8,
      reliefPressure: 6e5,
    });
    expect(large.reserveVolume).toBeCloseTo(0.005, 12);
    // At six times what moves no vessel keeps a fifth of itself: the large one's 3 L.
    expect(reserveRule(undefined, 0.02, 0.002, 6)).toBe(0.003);
  });

  it('shows its working [requirement]', () => {
    const { steps } = sizeExpansionVessel(loop);
    const said = workingInWords(steps);
    expect(said.map(({ quantity }) => quantity)).toEqual([
      'expansion coefficient',
      'expansion volume',
      'water reserve',
      'smallest vessel',
      'fill pressure',
    ]);
    expect(said[3]!.numbers).toMatch(/^\(1\.12\d L \+ 3\.5 L \+ 1 L\) × 6\.4 bar\/\(5\.4 bar − 1\.5 bar\)$/);
    const hot = sizeExpansionVessel({ ...loop, maximumTemperature: 120 }).steps;
    expect(workingInWords(hot)[0]!.source).toContain('extrapolated');
  });

  it.each([
    ['an end pressure below the pre-charge', 'endPressure', { ...loop, endPressure: 1e5 }],
    ['a missing relief pressure', 'reliefPressure', (({ endPressure: _, ...rest }) => rest)(loop)],
    ['a missing height', 'staticHeight', (({ prechargePressure: _, ...rest }) => rest)(loop)],
    ['a vessel too small for the liquid', 'vesselVolume', { ...loop, vesselVolume: 0.004 }],
    ['a maximum below the filling temperature', 'maximumTemperature', { ...loop, maximumTemperature: 5 }],
  ])('refuses %s, and names %s [requirement]', (_, path, input) => {
    expect(() => sizeExpansionVessel(input)).toThrow(DesignError);
    expect(() => sizeExpansionVessel(input)).toThrow(path);
  });
});
