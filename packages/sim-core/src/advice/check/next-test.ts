// Which cheap test tells the likely causes apart.
import type { SystemDesign } from '../../design/design.ts';
import { fact, type Saying } from '../../input/saying.ts';
import type { CardCode, OutcomeCode } from './card-codes.ts';
import { type Doer, TEST_CARDS, type TestCard } from './cards.ts';
import { CAUSES, type CauseCode } from './causes.ts';
import type { Trace } from './span-run.ts';

/** A test to make next; its words are those of reports. */
export interface NextTest {
  /** Which. */
  readonly card: CardCode;
  /** Who may make it. */
  readonly who: Doer;
  /** What each outcome would speak for. */
  readonly outcomes: readonly {
    /** What one sees, hears or reads. */
    readonly seen: OutcomeCode;
    /** Causes that it speaks for. */
    readonly causes: readonly CauseCode[];
  }[];
  /** The system's own numbers that an outcome is held against. */
  readonly facts: Saying['facts'];
  /** Share of the doubt between the causes that it is expected to take away. [-] */
  readonly gain: number;
}

/** Above the usual rise by this much the loop hardly flows. Judgement. [-] */
const FAR_APART = 1.6;
/** Pressure that no gauge of the trade misses. Judgement. [Pa] */
const VISIBLE_FALL = 30_000;
/** Swing of a day beyond that of the healthy system from which the vessel is in doubt. Judgement. [-] */
const WIDE_SWING = 2;

/** Numbers of the healthy system in the weeks of the log, for the words of the tests. */
export function testFacts(design: SystemDesign, healthy: Trace): Saying['facts'] {
  const rise = largest(healthy.flowTemperature, (at) =>
    healthy.pumpRuns[at]! > 0.9 ? healthy.flowTemperature[at]! - healthy.returnTemperature[at]! : 0,
  );
  const swing = largest(healthy.loopPressure, (at) =>
    at % 24 === 0 ? swingOf(healthy.loopPressure.subarray(at, at + 24)) : 0,
  );
  const { control, draw, heater, loop } = design;
  return {
    usualRise: fact(rise, 'K'),
    farApart: fact(Math.max(FAR_APART * rise, 15), 'K'),
    fill: fact(loop.fillPressure, 'Pa'),
    fall: fact(VISIBLE_FALL, 'Pa'),
    usualSwing: fact(swing, 'Pa'),
    wideSwing: fact(Math.max(WIDE_SWING * swing, 2 * VISIBLE_FALL), 'Pa'),
    precharge: fact(loop.vesselPrecharge, 'Pa'),
    valve: fact(draw.mixingValve ? draw.valveTemperature : draw.tapTemperature, '°C'),
    heater: fact(heater.setTemperature, '°C'),
    limit: fact(control.highLimit ?? Number.NaN, '°C'),
    coilGap: fact(COIL_GAP, 'K'),
  };
}

/** Mean of the pipes over the tank beside the coil from which the coil is in doubt. Common practice, no source. [K] */
const COIL_GAP = 15;

const largest = (column: Float64Array, of: (at: number) => number): number =>
  column.reduce((most, _, at) => Math.max(most, of(at)), 0);
const swingOf = (day: Float64Array): number => Math.max(...day) - Math.min(...day);

const doubt = (weights: readonly number[]): number => {
  const sum = weights.reduce((total, weight) => total + weight, 0);
  return weights.reduce((total, weight) => (weight > 0 ? total - (weight / sum) * Math.log(weight / sum) : total), 0);
};

/** The test that takes away the most doubt for its effort; `null` where nothing is left to tell apart. */
export function nextTest(
  weights: Readonly<Record<CauseCode, number>>,
  design: SystemDesign,
  facts: Saying['facts'],
): NextTest | null {
  const all = CAUSES.map((cause) => weights[cause]);
  const before = doubt(all);
  if (before < 1e-3) return null;
  let best: { card: TestCard; gain: number; worth: number } | null = null;
  for (const card of TEST_CARDS) {
    if (card.fits?.(design) === false) continue;
    const after = groupsOf(card).reduce((sum, causes) => {
      const inside = causes.map((cause) => weights[cause]);
      return sum + inside.reduce((total, weight) => total + weight, 0) * doubt(inside);
    }, 0);
    const gain = (before - after) / before;
    const worth = gain / Math.sqrt(card.effort);
    if (best === null || worth > best.worth) best = { card, gain, worth };
  }
  const { card, gain } = best!;
  const groups = groupsOf(card);
  return {
    card: card.code,
    who: card.who,
    outcomes: [...card.outcomes.map(([seen]) => seen), card.otherwise].map((seen, at) => ({
      seen,
      causes: groups[at]!,
    })),
    facts,
    gain: Math.max(0, gain),
  };
}

/** Causes by outcome, the last being all others. */
function groupsOf({ outcomes }: TestCard): CauseCode[][] {
  const named = outcomes.map(([, causes]) => [...causes]);
  return [...named, CAUSES.filter((cause) => !named.flat().includes(cause))];
}
