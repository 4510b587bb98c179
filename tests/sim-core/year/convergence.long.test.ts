import { readFileSync } from 'node:fs';
import { defineSystem, type SimulateOptions, simulate } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { inventedValley, plainInput, sum } from '../../examples.ts';

// Limits that the project sets itself: half the step moves the year's heat by less than 0.1 % and the peak by less than 0.2 K;
// twice the nodes move both by less than 1 % and 0.2 K.
const ENERGY_BY_STEP = 0.001;
const ENERGY_BY_NODES = 0.01;
const PEAK = 0.2;

const THEORY = readFileSync(new URL('../../../docs/theory/collector.md', import.meta.url), 'utf8');

const weather = await inventedValley();

function run(panels: number, highLimit: number | null, nodes: number, options: SimulateOptions) {
  const design = defineSystem({
    ...plainInput,
    array: { ...plainInput.array, panels },
    tank: { volume: 0.3, nodes },
    control: { highLimit },
  });
  const { columns } = simulate(design, weather, options);
  return { delivered: sum(columns.solarHeat), peak: Math.max(...columns.tankMaximumTemperature) };
}

describe.each([
  [2, 85],
  [3, 85],
  [3, null],
])('%d panels, high limit %s °C', (panels, highLimit) => {
  const reference = run(panels, highLimit, 20, {});

  it.each([
    ['half the step', ENERGY_BY_STEP, 20, { stepsPerHour: 12 }],
    ['an eighth of the step', ENERGY_BY_STEP, 20, { stepsPerHour: 48 }],
    ['twice the tank nodes', ENERGY_BY_NODES, 40, {}],
    ['an eighth of the step and four times the tank nodes', ENERGY_BY_NODES, 80, { stepsPerHour: 48 }],
    ['twice the collector nodes', ENERGY_BY_STEP, 20, { collectorNodes: 8 }],
  ] as const)(
    '%s moves the delivered energy by less than %d and the peak by less than 0.2 K [direction that physics demands]',
    (_, limit, nodes, options) => {
      const finer = run(panels, highLimit, nodes, options);
      expect(Math.abs(finer.delivered / reference.delivered - 1)).toBeLessThan(limit);
      expect(Math.abs(finer.peak - reference.peak)).toBeLessThan(PEAK);
    },
  );
});

describe('far too many panels on far too little water', () => {
  it('half the step moves the delivered energy by less than 0.7 % [docs/guides/trust.md: 12 panels on 100 L]', () => {
    const by = (options: SimulateOptions) =>
      sum(
        simulate(
          defineSystem({ ...plainInput, array: { ...plainInput.array, panels: 12 }, tank: { volume: 0.1 } }),
          weather,
          options,
        ).columns.solarHeat,
      );
    expect(Math.abs(by({ stepsPerHour: 12 }) / by({}) - 1)).toBeLessThan(0.007);
  });
});

describe('a loop that boils on most days of summer', () => {
  it('half the step moves heat and peak by as much as docs/theory/collector.md says [convergence]', () => {
    const design = defineSystem({
      ...plainInput,
      array: { ...plainInput.array, panels: 4 },
      loop: { fluid: 'water', pressure: 30_000 },
      control: { highLimit: 75, highLimitHysteresis: 1 },
    });
    const [here, finer] = [6, 12].map((stepsPerHour) => simulate(design, weather, { stepsPerHour }).columns);
    const peakOf = (of: typeof here) => Math.max(...of!.tankMaximumTemperature);
    const heat = 100 * (sum(finer!.solarHeat) / sum(here!.solarHeat) - 1);
    expect(THEORY).toContain(
      `Half the step: +${heat.toFixed(2)} % of the year's heat and −${(peakOf(here) - peakOf(finer)).toFixed(1)} K of the peak at ${sum(here!.boiling).toFixed(0)} boiling hours a year`,
    );
  });
});
