import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compileHeater, stepHeater } from '../../../../packages/sim-core/src/physics/backup/heater.ts';
import { WATER_HEAT_CAPACITY } from '../../../../packages/sim-core/src/physics/tank/tank.ts';
import { heaterDesign } from './parts.ts';

const design = heaterDesign();

describe('stepHeater', () => {
  it('at rest at its set temperature burns exactly its standby loss [closed form: UA (T − T_room)]', () => {
    const heater = compileHeater(design);
    stepHeater(heater, 0, 0, 3600);
    expect(heater.temperature).toBeCloseTo(60, 9);
    expect(heater.burnerHeat).toBeCloseTo(5 * 40 * 3600, 3);
    expect(heater.loss).toBeCloseTo(heater.burnerHeat, 3);
  });

  it('above its set temperature cools with the burner off [closed form: Newton cooling]', () => {
    const heater = compileHeater(design);
    heater.temperature = 75;
    for (let step = 0; step < 24; step++) stepHeater(heater, 0, 0, 300);
    expect(heater.temperature).toBeCloseTo(20 + 55 * Math.exp((-5 * 7200) / (0.15 * WATER_HEAT_CAPACITY)), 9);
    expect(heater.burnerHeat).toBe(0);
  });

  it('holds its outlet at the set temperature under a draw that the burner can meet [requirement]', () => {
    const heater = compileHeater(design);
    stepHeater(heater, 0.02, 15, 600);
    expect(heater.outlet).toBeCloseTo(60, 9);
    expect(heater.burnerHeat).toBeCloseTo(0.02 * WATER_HEAT_CAPACITY * 45 + 5 * 40 * 600, 2);
  });

  it('falls short, at full burner power, under a draw that it cannot meet [direction that physics demands]', () => {
    const heater = compileHeater(design);
    stepHeater(heater, 0.1, 10, 600);
    expect(heater.burnerHeat).toBeCloseTo(9000 * 600, 6);
    expect(heater.outlet).toBeLessThan(60);
  });

  it('keeps heat in, out, lost and stored in balance for any step [conservation]', () => {
    const cases = fc.record({
      start: fc.double({ min: 5, max: 95, noNaN: true }),
      volume: fc.double({ min: 0, max: 0.3, noNaN: true }),
      inlet: fc.double({ min: 1, max: 95, noNaN: true }),
      duration: fc.double({ min: 1, max: 3600, noNaN: true }),
      lossCoefficient: fc.constantFrom(0, 1e-6, 5),
    });
    fc.assert(
      fc.property(cases, ({ start, volume, inlet, duration, lossCoefficient }) => {
        const heater = compileHeater({ ...design, lossCoefficient });
        heater.temperature = start;
        stepHeater(heater, volume, inlet, duration);
        const stored = heater.capacity * (heater.temperature - start);
        const carried = volume * WATER_HEAT_CAPACITY * (heater.outlet - inlet);
        const through = Math.abs(carried) + Math.abs(heater.loss) + heater.burnerHeat + Math.abs(stored);
        // 1e-9 of what flowed, and the last bits of the heat held: a difference of temperatures cannot be known better.
        const bits = 4 * Number.EPSILON * heater.capacity * Math.max(start, heater.temperature);
        expect(Math.abs(heater.burnerHeat - carried - heater.loss - stored)).toBeLessThanOrEqual(1e-9 * through + bits);
      }),
    );
  });
});
