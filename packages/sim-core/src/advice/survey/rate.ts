import type { IncidenceModifierB0 } from '../../design/design.ts';
import { checkInput } from '../../input/check.ts';
import { fact, type Saying, say } from '../../input/saying.ts';
import type { WorkingStep } from '../../input/working.ts';
import type { AdviceCode } from '../advice-codes.ts';
import { type Assessed, assess, type SurveyNumbers, TEST_FLOW, type Values, WATER_20 } from './assess.ts';
import { type Band, combine, type Swing, swingSize } from './band.ts';
import type { Parameter, ParameterName } from './parameter.ts';
import { surveyParameters } from './parameters.ts';
import { type Survey, type SurveyInput, surveySchema } from './schema.ts';
import { surveySteps } from './steps.ts';

/** A collector as a yard test leaves it: numbers in SI, for `array.collector` of `defineSystem`. */
export interface RatedCollector {
  /** Name for reports. */
  readonly name: string;
  /** Aperture, to which eta0, a1 and a2 refer. [m²] */
  readonly area: number;
  /** Zero-loss efficiency at normal incidence. [-] */
  readonly eta0: number;
  /** Linear loss. [W/(m²·K)] */
  readonly a1: number;
  /** Quadratic loss. [W/(m²·K²)] */
  readonly a2: number;
  /** b0. [-] */
  readonly incidenceModifier: IncidenceModifierB0;
  /** With its liquid; left out where a test was told none. [J/(m²·K)] */
  readonly heatCapacity?: number;
}

/** A collector as a survey leaves it. */
export interface SurveyedCollector extends RatedCollector {
  /** With its liquid. [J/(m²·K)] */
  readonly heatCapacity: number;
  /** Liquid in the panel. [m³] */
  readonly fluidContent: number;
  /** Of the panel with water at 20 °C and {@link ratedFlow}. [Pa] */
  readonly ratedPressureDrop: number;
  /** Through the panel. [m³/s] */
  readonly ratedFlow: number;
}

/** Numbers of a surveyed panel, each with its band. */
export type SurveyBands = Readonly<Record<keyof SurveyNumbers, Band>>;

/** One number that went into a rating, and what its doubt costs. */
export interface SurveyedNumber extends Parameter {
  /** Half of what the efficiency at work moves between them. [-] */
  readonly effect: number;
  /** Share of the variance of the efficiency at work, 0 to 1; all of them add up to 1. [-] */
  readonly share: number;
}

/** A used panel rated from what can be seen and measured. */
export interface SurveyRating {
  /** Likely case, for `array.collector` of `defineSystem`; eta0, a1 and a2 are per aperture. */
  readonly collector: SurveyedCollector;
  /** A panel at the lower end of the efficiency at work: one consistent panel, not the worst of each number. */
  readonly low: SurveyedCollector;
  /** The same at the upper end. */
  readonly high: SurveyedCollector;
  /** Every number with the limits that it stays within in about nine cases of ten. */
  readonly bands: SurveyBands;
  /** Outside length times width. [m²] */
  readonly grossArea: number;
  /** All numbers that went in, the one whose doubt costs most first. */
  readonly numbers: readonly SurveyedNumber[];
  /** The working of the likely case. */
  readonly steps: readonly WorkingStep[];
  /** What can hurt someone on the way. */
  readonly cautions: readonly Saying<AdviceCode>[];
}

/**
 * Rates a used flat plate from a survey: a tape measure, callipers and an eye in place of a test report.
 *
 * Fins, bond and films by Hottel, Whillier and Bliss, the covers' loss by Klein, light through the covers by Fresnel; the line is
 * fitted to five points at 800 W/m², 20 °C, 45° and 0.02 kg/(s·m²) of water. Fields left out, or `'unknown'`, take what common
 * panels have, with wide limits. Bands: each input goes to its lower and upper limit alone, and the changes add as independent
 * errors (root of the sum of squares, each side by itself; first order).
 *
 * The flow matters to the line only through the film inside the tubes, for eta0, a1 and a2 stand on the mean of inlet and outlet;
 * a run resolves the fluid along the flow by itself.
 *
 * @param input - The survey; see {@link SurveyInput}. `length`, `width` and `covers` are needed.
 * @throws {@link DesignError} listing all faults at once, by field, with the unit expected.
 * @see Duffie & Beckman (2013) ch. 4 to 6; Klein (1979); JCGM 100 for the bands.
 * @example
 * const rating = rateFromSurvey({ length: '2.0 m', width: '1.0 m', covers: 1, coating: 'black-paint', tubeSpacing: '12 cm' });
 * defineSystem({ array: { panels: 2, tilt: 40, azimuth: 180, collector: rating.collector }, ...house });
 */
export function rateFromSurvey(input: SurveyInput): SurveyRating {
  const survey = checkInput(surveySchema, input);
  const parameters = surveyParameters(survey);
  const likely = Object.fromEntries(parameters.map(({ name, band }) => [name, band.likely])) as Values;
  const aperture = (likely.length - 2 * likely.frame) * (likely.width - 2 * likely.frame);
  const flow = survey.testFlow ?? (TEST_FLOW * aperture) / WATER_20.density;
  const centre = assess(survey, likely, flow);
  const moved = (name: ParameterName, value: number): SurveyNumbers =>
    assess(survey, { ...likely, [name]: value }, flow).outputs;
  const ends = parameters.map(({ name, band }) => ({ atLow: moved(name, band.low), atHigh: moved(name, band.high) }));
  const swings = (of: keyof SurveyNumbers): Swing[] =>
    ends.map(({ atLow, atHigh }) => ({
      atLow: atLow[of] - centre.outputs[of],
      atHigh: atHigh[of] - centre.outputs[of],
    }));
  const bands = Object.fromEntries(
    (Object.keys(centre.outputs) as (keyof SurveyNumbers)[]).map((of) => [of, combine(centre.outputs[of], swings(of))]),
  ) as SurveyBands;
  const atWork = swings('efficiencyAtWork');
  const edge = (side: 1 | -1) => assess(survey, atEdge(parameters, atWork, side), flow);
  return {
    collector: toCollector(survey, centre),
    low: toCollector(survey, edge(-1)),
    high: toCollector(survey, edge(1)),
    bands,
    grossArea: centre.grossArea,
    numbers: rank(parameters, atWork),
    steps: surveySteps(centre),
    cautions: cautions(bands),
  };
}

/**
 * The panel at one end of the efficiency at work: every input moved by its share of the way, so that together they make the whole
 * band. (The most likely of all panels that lie there, to first order.)
 */
function atEdge(parameters: readonly Parameter[], swings: readonly Swing[], side: 1 | -1): Values {
  const reach = (swing: Swing) => Math.max(side * swing.atLow, side * swing.atHigh, 0);
  const whole = Math.hypot(...swings.map(reach)) || 1;
  return Object.fromEntries(
    parameters.map(({ name, band }, at) => {
      const swing = swings[at]!;
      const end = side * swing.atLow > side * swing.atHigh ? band.low : band.high;
      return [name, band.likely + ((end - band.likely) * reach(swing)) / whole];
    }),
  ) as Values;
}

function rank(parameters: readonly Parameter[], swings: readonly Swing[]): SurveyedNumber[] {
  const sizes = swings.map(swingSize);
  const whole = sizes.reduce((sum, size) => sum + size * size, 0) || 1;
  return parameters
    .map((parameter, at) => ({ ...parameter, effect: sizes[at]!, share: sizes[at]! ** 2 / whole }))
    .sort((a, b) => b.effect - a.effect);
}

function toCollector(survey: Survey, { outputs, flow }: Assessed): SurveyedCollector {
  return {
    name: survey.name ?? 'surveyed flat plate',
    area: outputs.apertureArea,
    eta0: outputs.eta0,
    a1: outputs.a1,
    a2: outputs.a2,
    incidenceModifier: { b0: outputs.b0 },
    heatCapacity: outputs.heatCapacity,
    fluidContent: outputs.fluidContent,
    ratedPressureDrop: outputs.pressureDrop,
    ratedFlow: flow,
  };
}

function cautions({ weightFull, stagnationTemperature }: SurveyBands): Saying<AdviceCode>[] {
  const of = ({ likely, high }: Band, unit: string) => ({ likely: fact(likely, unit), high: fact(high, unit) });
  return [
    say('panel-weight', of(weightFull, 'kg/m²')),
    say('plate-is-hot', of(stagnationTemperature, '°C')),
    say('old-glass'),
    say('press-tubes-first'),
  ];
}
