import { checkInput } from '../../input/check.ts';
import { type CompiledFluid, compileFluid } from '../../physics/fluid/compile.ts';
import type { RatedCollector } from './rate.ts';
import { fluxOf, type Line, type Prior, type YardNumbers } from './yard-fit.ts';
import { type Contradiction, yardNotes } from './yard-notes.ts';
import { type YardTest, type YardTestInput, yardSchema } from './yard-schema.ts';
import { COMMON_A2, firstTold, NINETY, priorsFor, settle, toPrior } from './yard-settle.ts';
import { yardSteps } from './yard-steps.ts';
import type { YardCoefficient, YardPoint, YardRating, YardRemedyCode } from './yard-types.ts';

/**
 * A panel's efficiency line from readings in a yard: inlet, outlet, flow, sun and air, several points over an hour.
 *
 *     q = ρ c_p V̇ (t_out − t_in)/A + C dt_m/dt,   q = eta0 K G − a1 d − a2 d |d|,   d = t_m − t_a
 *
 * Weighted least squares on q, so that a covered panel (irradiance 0, warm inlet) tells the loss alone. Each reading weighs by
 * its tools. What the tools do to all readings alike (scales of flow and sun, difference between the thermometers, heat capacity)
 * is found by fitting again with each shifted, and adds as independent errors. Where the readings scatter more than their tools
 * explain, their part grows by that. What was known before (`known`, such as the bands of a survey) enters with its own limits. A
 * coefficient whose band stays wider than 0.12 (eta0) or 40 % (a1) is refused, with what would tell it; so is an eta0 that no
 * glass gives. Readings that contradict what was known are named. Words are those of `yardTestInWords` of `@noonloop/reports`.
 *
 * @param input - Readings; see {@link YardTestInput}. `area` and `points` are needed.
 * @throws {@link DesignError} listing all faults at once, by field and point, with the unit expected.
 * @see ISO 9806 for the line; JCGM 100 for the errors.
 */
export function rateFromYardTest(input: YardTestInput): YardRating {
  const test = checkInput(yardSchema, input);
  const known = [test.known.eta0, test.known.a1, test.known.a2].map(toPrior);
  const fluid = compileFluid(test.fluid, test.glycolMassFraction);
  const { settled, told } = firstTold(test, fluid, known);
  const { fit, points, deviations, scatter } = settled;
  const beyondGlass = isBeyondGlass(fit.line) ? fit.line[0] : null;
  const coefficient = (at: 0 | 1 | 2, remedy: YardRemedyCode): YardCoefficient => {
    const half = NINETY * settled.deviation[at]!;
    const before = known[at]!;
    if (at !== 2 && before === null && !told[at]) return { band: null, from: 'cannot tell', remedy };
    const likely = Math.max(fit.line[at], 0);
    const band = { low: Math.max(likely - half, 0), likely, high: likely + half };
    // What the readings could not narrow is as good as it was before them.
    const share = settled.deviation[at]! / (before ?? COMMON_A2).deviation;
    const from = before !== null ? (share < 0.9 ? 'both' : 'known') : at === 2 && share > 0.7 ? 'assumed' : 'test';
    return { band, from, remedy: null };
  };
  const eta0: YardCoefficient =
    beyondGlass === null
      ? coefficient(0, 'full-sun-near-air')
      : { band: null, from: 'cannot tell', remedy: 'sun-meter-against-glass' };
  const a1 = coefficient(1, remedyOfLoss(points));
  const a2 = coefficient(2, 'warm-or-covered');
  return {
    collector: toCollector(test, eta0, a1, a2),
    eta0,
    a1,
    a2,
    points: points.map((point, at) => toPoint(point, fit.line, deviations[at]!)),
    scatter,
    steps: yardSteps(test, points, deviations, fit.line),
    notes: yardNotes(test, points, {
      scatter,
      residuals: points.map((p, at) => (p.flux - fluxOf(fit.line, p)) / deviations[at]!),
      beyondGlass,
      contradictions: contradictions(test, fluid, known),
    }),
  };
}

/**
 * The best that glass gives: (τα) of one antireflective cover 0.96 × 0.96, times F' of 0.98; judgement. A loss as high as
 * {@link UNGLAZED} is that of a bare absorber, which may have more. [-], [W/(m²·K)]
 */
const MOST_ETA0 = 0.9;
const UNGLAZED = 8;

const isBeyondGlass = ([eta0, a1]: Line): boolean => eta0 > MOST_ETA0 && a1 < UNGLAZED;

/** Fluid over air from which loss shows, and the spread of it that tells loss from light. Judgement. [K] */
const WARM = 30;

/** What lacks to tell the loss: warm readings, or, where all are warm, spread. */
function remedyOfLoss(points: readonly YardNumbers[]): YardRemedyCode {
  const lit = points.filter(({ irradiance }) => irradiance > 0).map(({ difference }) => difference);
  return lit.length > 0 && Math.min(...lit) >= WARM ? 'spread-or-covered' : 'warm-or-covered';
}

/** Distance between readings and knowledge from which they contradict each other. Judgement. [deviations] */
const APART = 2;

/** Where the readings alone say another coefficient than what was known, further off than both are uncertain. */
function contradictions(test: YardTest, fluid: CompiledFluid, known: readonly (Prior | null)[]): Contradiction[] {
  const alone = [null, null, known[2] ?? null];
  const settled = settle(test, fluid, priorsFor(alone, [true, true]), alone);
  return (
    [
      [0, 'eta0', '-'],
      [1, 'a1', 'W/(m²·K)'],
    ] as const
  ).flatMap(([at, name, unit]) => {
    const before = known[at];
    const read = settled.fit.line[at];
    const reach = APART * Math.hypot(settled.deviation[at]!, before?.deviation ?? 0);
    const apart = before != null && Math.abs(read - before.value) > reach;
    return apart ? [{ name, unit, read, known: before.value }] : [];
  });
}

function toPoint(point: YardNumbers, line: Line, deviation: number): YardPoint {
  const { flux, irradiance, difference } = point;
  const lit = irradiance > 0;
  return {
    flux,
    reducedTemperature: lit ? difference / irradiance : null,
    efficiency: lit ? flux / irradiance : null,
    error: (NINETY * deviation) / (lit ? irradiance : 1),
    residual: (flux - fluxOf(line, point)) / deviation,
  };
}

function toCollector(
  test: YardTest,
  eta0: YardCoefficient,
  a1: YardCoefficient,
  a2: YardCoefficient,
): RatedCollector | null {
  if (eta0.band === null || a1.band === null || a2.band === null) return null;
  return {
    name: test.name ?? 'flat plate of a yard test',
    area: test.area,
    eta0: Math.min(Math.max(eta0.band.likely, 0.1), 1),
    a1: Math.max(a1.band.likely, 0.2),
    a2: Math.min(Math.max(a2.band.likely, 0), 0.2),
    incidenceModifier: { b0: test.b0 },
    ...(test.heatCapacity >= 1000 ? { heatCapacity: test.heatCapacity } : {}),
  };
}
