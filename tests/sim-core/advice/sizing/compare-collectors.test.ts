import { describe, expect, it } from 'vitest';
import {
  compareCollectors,
  DesignError,
  defineSystem,
  rateFromSurvey,
  simulate,
} from '../../../../packages/sim-core/src/index.ts';
import { inventedValley, plainInput, sum } from '../../../examples.ts';
import { EARLY_SUMMER, litWithin } from '../../../property/span.ts';

const used = {
  name: 'used plates',
  collector: rateFromSurvey({ length: 2, width: 1, covers: 1, coating: 'black-paint', condition: 'worn' }).collector,
  panels: 3,
  grossArea: '2 m2',
  weightFull: '100 lb',
  price: 450,
};
// Invented, in the order of a report of tubes.
const tubes = {
  name: 'new tubes',
  collector: { area: 3, eta0: 0.62, a1: 1.1, a2: 0.004, incidenceModifier: { b0: 0 } },
  panels: 1,
  grossArea: 3.3,
  weightFull: 72,
  price: 1600,
};

describe('compareCollectors', () => {
  it('each row is its own simulated year, divided by hand [by hand]', async () => {
    const weather = litWithin(await inventedValley(), ...EARLY_SUMMER);
    const { rows, ranking, notes } = compareCollectors(plainInput, weather, { candidates: [used, tubes], years: 10 });
    const [plates, glass] = rows as [(typeof rows)[number], (typeof rows)[number]];
    const alone = simulate(
      defineSystem({ ...plainInput, array: { ...plainInput.array, panels: 1, collector: tubes.collector } }),
      weather,
    );
    const heat = sum(alone.columns.solarHeat);
    expect(glass.heat).toBe(heat);
    expect(glass.heatPerRoof).toBeCloseTo(heat / 3.3, 3);
    expect(glass.heatPerMoney).toBeCloseTo(heat / 1600, 3);
    expect(glass.moneyPerHeat).toBeCloseTo(160 / heat, 20);
    expect(plates.weight).toBeCloseTo(3 * 45.359237, 9);
    expect(plates.weightPerRoof).toBeCloseTo(45.359237 / 2, 9);
    // Closed form of ISO 9806, 309.521 °C [collector-and-tank.md §1, the same coefficients], and 30 K that a certificate lay above.
    expect(glass.stagnationTemperature).toBeCloseTo(339.521, 3);
    expect(ranking.stagnationTemperature[0]).toBe('used plates');
    expect(ranking.moneyPerHeat).toHaveLength(2);
    expect(notes[0]).toMatchObject({ code: 'hot-when-dry', facts: { name: 'new tubes' } });
    const [dry] = notes.map(({ facts }) => facts.temperature as { readonly value: number });
    expect(Math.round(dry!.value)).toBe(340);
  });

  it('reports faults of the list at once, and those of a collector [requirement]', async () => {
    const weather = await inventedValley();
    const call = (candidates: unknown) => compareCollectors(plainInput, weather, { candidates } as never);
    try {
      call([
        { ...used, price: -1, weightFull: '3 m' },
        { ...tubes, grossArea: 0 },
      ]);
      expect.unreachable();
    } catch (error) {
      expect((error as DesignError).issues.map(({ path }) => path).sort()).toEqual([
        'candidates.0.price',
        'candidates.0.weightFull',
        'candidates.1.grossArea',
      ]);
    }
    expect(() => call([used, used])).toThrow(/name/);
    expect(() => call([{ ...used, collector: { area: 2 } }])).toThrow(/array.collector.eta0/);
    expect(() => call([])).toThrow(DesignError);
  });
});
