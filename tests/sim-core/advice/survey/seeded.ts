/** Surveys and yard tests with errors drawn from a seed: how often the limits that are stated hold what was drawn. */
import { assess, type SurveyNumbers, type Values } from '../../../../packages/sim-core/src/advice/survey/assess.ts';
import { surveyParameters } from '../../../../packages/sim-core/src/advice/survey/parameters.ts';
import { compileFluid, fluidDensity, fluidSpecificHeat } from '../../../../packages/sim-core/src/formulas.ts';
import {
  rateFromSurvey,
  rateFromYardTest,
  type SurveyInput,
  type YardTestInput,
} from '../../../../packages/sim-core/src/index.ts';
import { random } from './random.ts';

/** An invented panel, black paint under window glass. */
export const black: SurveyInput = {
  name: 'old black panel',
  length: '2.0 m',
  width: '1.0 m',
  covers: 1,
  coverKind: 'window-glass',
  coating: 'black-paint',
  plateMetal: 'copper',
  tubeSpacing: '12 cm',
  tubeDiameter: '10 mm',
  bond: 'soldered',
  condition: 'worn',
};

/** Panels whose inputs are drawn. */
export const DRAWN: Readonly<Record<string, SurveyInput>> = {
  'measured well': { ...black, length: 2, width: 1, tubeSpacing: 0.12, tubeDiameter: 0.01 },
  'hardly known': { length: 2, width: 1, covers: 1 },
};

/**
 * Each input drawn from a normal distribution whose halves reach their limits at 1.645 deviations (90 % between them). The method is first order; of
 * 400 draws and more 86 to 94 % may lie inside by chance and curvature, and each end may be off by a fifth of the band.
 *
 * @returns By output: the share inside the band, and how far its worse end is off, as a share of its width.
 */
export function draws(input: SurveyInput, count: number) {
  const survey = input as Parameters<typeof surveyParameters>[0];
  const parameters = surveyParameters(survey);
  const { bands } = rateFromSurvey(input);
  const normal = random(1);
  const drawn: SurveyNumbers[] = [];
  for (let round = 0; round < count; round++) {
    const values = Object.fromEntries(
      parameters.map(({ name, band: { low, likely, high } }) => {
        const z = Math.max(-2.5, Math.min(2.5, normal())) / 1.645;
        const value = likely + z * (z > 0 ? high - likely : likely - low);
        if (name === 'topLoss') return [name, value];
        return [
          name,
          name === 'bondResistance' || name === 'frame' ? Math.max(value, 0) : Math.max(value, 0.2 * likely),
        ];
      }),
    ) as unknown as Values;
    drawn.push(assess(survey, values, 3.77e-5).outputs);
  }
  return (['eta0', 'a1', 'efficiencyAtWork'] as const).map((of) => {
    const sorted = drawn.map((draw) => draw[of]).sort((a, b) => a - b);
    const { low, high } = bands[of];
    const inside = sorted.filter((value) => value >= low && value <= high).length / count;
    const off = [sorted[count / 20]! - low, sorted[(19 * count) / 20]! - high].map(Math.abs);
    return { of, inside, end: Math.max(...off) / (high - low) };
  });
}

const water = compileFluid('water', 0);

/** A panel of our own invention, and what tools would read on it. */
export const truth = { area: 2, eta0: 0.72, a1: 5.5, a2: 0.012 };
interface Moment {
  readonly irradiance: number;
  readonly air: number;
  readonly inlet: number;
  readonly flow: number;
}

/** Outlet of the true panel, normal incidence and no diffuse light: its balance by iteration, a contraction of about a tenth. */
function outletOf({ irradiance, air, inlet, flow }: Moment, a2: number = truth.a2): number {
  const density = fluidDensity(water, inlet);
  let outlet = inlet;
  for (let round = 0; round < 6; round++) {
    const mean = (inlet + outlet) / 2;
    const specificHeat = fluidSpecificHeat(water, mean);
    const d = mean - air;
    const flux = truth.eta0 * irradiance - truth.a1 * d - a2 * d * Math.abs(d);
    outlet = inlet + (flux * truth.area) / (density * specificHeat * flow);
  }
  return outlet;
}

export const perfect = (moment: Moment, a2?: number) => ({ ...moment, outlet: outletOf(moment, a2), diffuseShare: 0 });
export const flow = 1 / 60_000;
export const hour: Moment[] = [
  { irradiance: 900, air: 20, inlet: 18, flow },
  { irradiance: 880, air: 20, inlet: 20, flow },
  { irradiance: 900, air: 21, inlet: 35, flow },
  { irradiance: 910, air: 21, inlet: 50, flow },
  { irradiance: 890, air: 21, inlet: 65, flow },
  { irradiance: 0, air: 20, inlet: 60, flow: flow / 2 },
];
export const test: YardTestInput = {
  area: truth.area,
  points: hour.map((moment) => perfect(moment)),
  heatCapacity: 8000,
};

/** Tests of that panel with errors as the tools have them: how many tell, and in which share of these the limits of eta0 and a1 hold the truth. */
export function yardTests(seeds: number): { told: number; held: [eta0: number, a1: number] } {
  const tools = { thermometer: 0.3, thermometerPair: 0.2, air: 1, flowReading: 0.03, flowScale: 0.02 };
  let eta0Held = 0;
  let a1Held = 0;
  let told = 0;
  for (let seed = 1; seed <= seeds; seed++) {
    const normal = random(seed);
    const pair = tools.thermometerPair * normal();
    const flowScale = 1 + tools.flowScale * normal();
    const sunScale = 1 + 0.07 * normal();
    // a2 is not told but assumed: the panels differ in it as the assumption says.
    const a2 = 0.01 + 0.006 * normal();
    const exact = hour.map((moment) => perfect(moment, a2));
    const points = exact.map((point) => ({
      ...point,
      inlet: point.inlet + tools.thermometer * normal(),
      outlet: point.outlet + pair + tools.thermometer * normal(),
      air: point.air + tools.air * normal(),
      flow: point.flow * flowScale * (1 + tools.flowReading * normal()),
      irradiance: point.irradiance * sunScale * (1 + 0.02 * normal()),
    }));
    const { eta0, a1 } = rateFromYardTest({ ...test, points });
    if (eta0.band === null || a1.band === null) continue;
    told++;
    if (eta0.band.low <= truth.eta0 && truth.eta0 <= eta0.band.high) eta0Held++;
    if (a1.band.low <= truth.a1 && truth.a1 <= a1.band.high) a1Held++;
  }
  return { told, held: [eta0Held / told, a1Held / told] };
}
