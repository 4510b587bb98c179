import { adviceInWords, surveyInWords, workingInWords } from '@noonloop/reports';
import type { AdviceCode, Fact, Saying, StepCode, WorkingStep } from '@noonloop/sim-core';
import {
  ADVICE_CODES,
  compareCollectors,
  defineSystem,
  freezeAtSite,
  glycolAgeing,
  glycolForSite,
  glycolFromReading,
  potableExpansion,
  rateFromSurvey,
  rateFromYardTest,
  STEP_CODES,
  type SystemInput,
  sizeArray,
  sizeCoil,
  sizeExpansionVessel,
  sizeLoopPressure,
  sizePipe,
  sizePumpDrive,
  sizeTank,
  thinning,
} from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { ADVICE_WORDS } from '../../../packages/reports/src/words/advice.ts';
import { template } from '../../../packages/reports/src/words/template.ts';
import { LINES } from '../../../packages/reports/src/words/working.ts';
import type { BestPumpStart, PumpStart } from '../../../packages/sim-core/src/advice/sizing/pump-start.ts';
import { startNotes, startSteps } from '../../../packages/sim-core/src/advice/sizing/pump-start-advice.ts';
import { inventedValley, plainInput, withPanels, yearOf } from '../../examples.ts';

const weather = await inventedValley();
const icy = { ...weather, columns: { ...weather.columns, dryBulb: weather.columns.dryBulb.map((air) => air - 30) } };
const design = withPanels(2);
const as = (changes: Partial<SystemInput>) => defineSystem({ ...plainInput, ...changes });
const glycol = { fluid: 'propylene-glycol', glycolMassFraction: 0.4, systemVolume: 0.02, staticHeight: 6 } as const;
const reading = { inlet: 20, outlet: 28, flow: '2 L/min', irradiance: 870, air: 21 } as const;
const panel = { length: 2, width: 1, covers: 1 } as const;
const house = { array: plainInput.array, tank: plainInput.tank, draw: plainInput.draw };
const steep = { area: 2, eta0: 0.75, a1: 1.5, a2: 0.005 };

/** Best starts of a pump, invented: ten years each are not run for their words (tests/sim-core/advice/sizing/pump-start runs them). */
const start = (irradiance: number, delivered: number): PumpStart => ({
  ...{ irradiance, delivered, startPower: 3, modulePower: 45 },
  ...{ heatGivenBack: 2e7, stagnation: 4 },
});
const STARTS: readonly BestPumpStart[] = (['threshold', 'module'] as const).map((by) => ({
  by,
  best: start(141, 6.1e9),
  asDesigned: start(50, 5.8e9),
  lossAtHalf: by === 'threshold' ? 4e7 : null,
  lossAtTwice: 9e7,
  rows: [start(71, 5.9e9), start(141, 6.1e9), start(283, 5.9e9)],
  withController: start(141, 6.4e9),
}));

/** All that writes workings and advice, in enough kinds of house to reach nearly every line. */
const ANSWERS: readonly { steps?: readonly WorkingStep[]; notes?: readonly Saying<AdviceCode>[] }[] = [
  sizeArray(design, weather),
  sizeTank(design),
  glycolForSite(design, weather),
  glycolForSite(as({ loop: { fluid: 'ethylene-glycol' } }), weather, { leastVolumeFraction: 0.6 }),
  sizePipe(design),
  sizePipe(design, { flow: '60 L/min', highestHead: '10 cm' }),
  sizePipe(design, { flow: '0.2 L/min', lossShare: 0.005 }),
  sizeCoil(design),
  sizePumpDrive(design),
  sizePumpDrive(as({ pump: { drive: 'direct' } })),
  sizePumpDrive(as({ pump: { startPower: 0.8, stopPower: 0.4 } })),
  ...STARTS.map((found) => ({ steps: startSteps(found), notes: startNotes(found) })),
  sizePumpDrive(as({ pump: { startPower: 40, openFlowPower: 60, shutOffPower: 50, stopPower: 35 } })),
  sizePumpDrive(as({ pump: { startPower: 12, stopPower: 6 } })),
  sizeLoopPressure(design),
  sizeLoopPressure(withPanels(8), { ratedPressure: '6 bar' }),
  sizeLoopPressure(as({ loop: { pipeLength: '4 m', steamPower: 50 } })),
  potableExpansion(design),
  sizeExpansionVessel({ ...glycol, maximumTemperature: 100, reliefPressure: 6e5 }),
  sizeExpansionVessel({ ...glycol, maximumTemperature: 120, reliefPressure: 6e5, reserveVolume: 0.002 }),
  sizeExpansionVessel({ ...glycol, systemVolume: 0.5, maximumTemperature: 120, reliefPressure: 6e5 }),
  glycolFromReading({ scale: 'freezing-point', value: -20 }),
  glycolFromReading({ scale: 'brix', value: 27.5 }),
  glycolFromReading({ scale: 'refractive-index', value: 1.377 }),
  glycolFromReading({ scale: 'density', value: 1030 }),
  glycolAgeing(yearOf(as({}), weather)),
  thinning(design, { leak: '0.05 L/day', coldest: -12 }),
  rateFromSurvey(panel),
  rateFromSurvey({ ...panel, layout: 'serpentine' }),
  rateFromYardTest({ area: 1.85, points: [reading, { ...reading, inlet: 45, outlet: 51, warming: 4 }] }),
  compareCollectors(house, weather, {
    candidates: [{ name: 'one', collector: steep, panels: 1, grossArea: 2.2, weightFull: 40, price: 1 }],
  }),
  { notes: freezeAtSite(as({ loop: { fluid: 'water' } }), icy).cautions },
].map((answer) => ({
  steps: 'steps' in answer ? answer.steps : [],
  notes: [
    ...('cautions' in answer ? (answer.cautions as readonly Saying<AdviceCode>[]) : []),
    ...('notes' in answer ? (answer.notes as readonly Saying[]).filter(isAdvice) : []),
  ],
}));

function isAdvice(saying: Saying): saying is Saying<AdviceCode> {
  return (ADVICE_CODES as readonly string[]).includes(saying.code);
}

const METRIC = /(?<![a-z\d])\d[\d.,]*(?<!,) (?:°C|K|L|L\/min|kWh|kW|bar|mm|m|m²|kg|W\/m²|W\/K)(?![\w/²·(])/;
const ofFluid = /IAPWS|Melinder/;

describe('workings and advice in words', () => {
  const steps = ANSWERS.flatMap((answer) => answer.steps ?? []);
  const notes = ANSWERS.flatMap((answer) => answer.notes ?? []);

  it('have words for every line, and every line is asked for here [requirement]', () => {
    expect(Object.keys(LINES).sort()).toEqual([...STEP_CODES].sort());
    const met = new Set<StepCode>(steps.map(({ code }) => code));
    expect(STEP_CODES.filter((code) => !met.has(code))).toEqual([]);
    expect(Object.keys(ADVICE_WORDS).sort()).toEqual([...ADVICE_CODES].sort());
  });

  it('fill each line and sentence in both systems, with no metric unit left in the US one [requirement]', () => {
    for (const units of ['metric', 'us'] as const) {
      const lines = workingInWords(steps, units).map((line) => Object.values(line).join(' | '));
      const texts = [...lines, ...adviceInWords(notes, units)];
      expect(texts.filter((text) => /[{}]|undefined|NaN/.test(text))).toEqual([]);
      if (units === 'us') expect(texts.filter((text) => METRIC.test(text.replace(ofFluid, '')))).toEqual([]);
    }
  });

  it('give the same numbers as the library, in the units asked for [by hand: 300 L are 79.25 gal]', () => {
    const step: WorkingStep = {
      code: 'vessel-expansion',
      facts: { coefficient: { value: 0.05, unit: '1' }, volume: { value: 0.3, unit: 'm³' } },
      value: 0.015,
      unit: 'm³',
    };
    expect(workingInWords([step])[0]).toMatchObject({ numbers: '0.05 × 300 L', result: '15 L' });
    expect(workingInWords([step], 'us')[0]).toMatchObject({ numbers: '0.05 × 79.25 gal', result: '3.963 gal' });
  });

  it('a survey says what each number is, how it is known and how to know it better [requirement]', () => {
    const rating = rateFromSurvey({ ...panel, weightEmpty: '40 kg', plateThickness: { low: 2e-4, high: 4e-4 } });
    const { narrowing, assumptions } = surveyInWords(rating, 'us');
    expect(narrowing.length).toBeGreaterThan(1);
    expect(narrowing[0]).toMatch(/^[a-z].* \(\d+ % of the doubt\): [A-Z]/);
    expect(assumptions).toContain('mass of box and frame 88.18 lb, 85.98 lb to 90.39 lb: measured, ± 2.205 lb');
    expect(assumptions.join('\n')).not.toMatch(METRIC);
    expect(assumptions.length).toBe(rating.numbers.length - 1); // the limits that were given
  });

  it('a place without a fact is a fault, never an empty word; numbers of a sentence’s own wear their unit [requirement]', () => {
    const show = (fact: Fact) => (typeof fact === 'string' ? fact : `<${fact.value} ${fact.unit}>`);
    expect(template('from {-5 °C} to {high}', { high: 'x' }, show)).toBe('from <-5 °C> to x');
    expect(() => template('{high}', {}, show)).toThrow(/no fact "high"/);
    expect(() => template('{constructor}', {}, show)).toThrow(/no fact/);
  });
});
