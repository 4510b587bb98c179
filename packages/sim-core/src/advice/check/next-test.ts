// Cheap tests that an owner can make, and which of them tells the likely causes apart.
import { CAUSES, type CauseCode } from './causes.ts';

/** A test to make next. */
export interface NextTest {
  /** What to do. */
  readonly what: string;
  /** What each outcome would speak for. */
  readonly outcomes: readonly {
    /** What one sees or reads. */
    readonly seen: string;
    /** Causes that it speaks for. */
    readonly causes: readonly CauseCode[];
  }[];
  /** What can hurt someone; `null` for nothing beyond the general cautions. */
  readonly caution: string | null;
  /** Share of the doubt between the causes that it is expected to take away. [-] */
  readonly gain: number;
}

interface TestCard {
  readonly what: string;
  readonly caution: string | null;
  /** Effort, relative: a look is 1. Judgement. */
  readonly effort: number;
  /** Outcomes that differ from the last one, which all other causes give. */
  readonly outcomes: readonly (readonly [seen: string, causes: readonly CauseCode[]])[];
  readonly otherwise: string;
}

const SCALD = 'Pipes and fluid can be hotter than boiling water in sun: touch only for a moment, or use a thermometer.';

/** Common practice, no source; efforts are judgement. */
const CARDS: readonly TestCard[] = [
  {
    what: 'In bright sun around noon, put an ear or a hand to the pump.',
    caution: 'Keep off live terminals; a mains pump is work for a licensed electrician.',
    effort: 1,
    outcomes: [['it is silent, or it turns slowly or in jerks', ['pump-fault']]],
    otherwise: 'it hums evenly',
  },
  {
    what: 'Read the pressure early in the morning with the panels cold, and compare with the note of the filling.',
    caution: 'Do not open or refill a hot loop: steam under pressure scalds. Wait for dusk or cover the panels.',
    effort: 1,
    outcomes: [['it is lower by more than 0.3 bar', ['lost-fluid', 'sensor-wrong']]],
    otherwise: 'it is as noted',
  },
  {
    what: 'In bright sun around noon, compare hot and cold pipe at the tank.',
    caution: SCALD,
    effort: 1,
    outcomes: [
      ['both are cold, or the hot one is more than some 15 K warmer', ['no-flow', 'pump-fault']],
      ['both are hot, much hotter than the tank beside the coil', ['scaled-coil', 'sediment']],
      ['both are cooler than usual, with the usual difference', ['dirty-or-shaded']],
    ],
    otherwise: 'the hot one is some K warmer, as usual',
  },
  {
    what: 'Before sunrise, feel the hot pipe at the tank and a metre or two above it.',
    caution: null,
    effort: 1,
    outcomes: [['it is warm though the pump has stood all night', ['check-valve']]],
    otherwise: 'it is as cold as the room',
  },
  {
    what: 'Look at the panels from the ground at 9, 12 and 15 o’clock: dirt, fog behind the glass, the shadow of a tree or chimney.',
    caution: 'Look from the ground; work on roofs only with fall protection.',
    effort: 1,
    outcomes: [['dirt, fog or shadow', ['dirty-or-shaded']]],
    otherwise: 'clean glass in full sun',
  },
  {
    what: 'Hold a thermometer under a tap near the heater, hot side fully open, for two minutes.',
    caution: 'Water above 50 °C scalds within seconds: keep hands out of the stream.',
    effort: 1,
    outcomes: [['well below the set temperature of the mixing valve or what the taps should have', ['mixing-valve']]],
    otherwise: 'as set',
  },
  {
    what: 'Hold a second thermometer, or screw on a second gauge, at the place of the doubtful one.',
    caution: 'A pressure gauge is changed only on a cold loop with its valve shut.',
    effort: 2,
    outcomes: [['the two differ', ['sensor-wrong']]],
    otherwise: 'the two agree',
  },
  {
    what: 'Draw a bucket from the tank’s drain.',
    caution:
      'The water can scald and the drain may not shut again: have the shut-off at hand, and let a licensed plumber do it where in doubt.',
    effort: 3,
    outcomes: [['it runs slowly, or with grit and flakes', ['sediment']]],
    otherwise: 'it runs freely and clear',
  },
  {
    what: 'In bright sun, open the air vent at the highest point a little, or listen for gurgling in the pipe beside the tank.',
    caution: 'Steam can leave a hot vent: only in the morning with cold panels, and roofs only with fall protection.',
    effort: 4,
    outcomes: [['air comes, or it gurgles', ['no-flow', 'lost-fluid']]],
    otherwise: 'fluid comes at once, and it is quiet',
  },
  {
    what: 'Let a licensed plumber look at the coil’s resistance: note flow, both pipe temperatures and the tank beside the coil for an hour of even sun.',
    caution: SCALD,
    effort: 4,
    outcomes: [['the pipes stay more than some 15 K above the tank', ['scaled-coil', 'sediment']]],
    otherwise: 'they stay nearer',
  },
];

const doubt = (weights: readonly number[]): number => {
  const sum = weights.reduce((total, weight) => total + weight, 0);
  return weights.reduce((total, weight) => (weight > 0 ? total - (weight / sum) * Math.log(weight / sum) : total), 0);
};

/** The test that takes away the most doubt for its effort; `null` where nothing is left to tell apart. */
export function nextTest(weights: Readonly<Record<CauseCode, number>>): NextTest | null {
  const all = CAUSES.map((cause) => weights[cause]);
  const before = doubt(all);
  if (before < 1e-3) return null;
  let best: { card: TestCard; gain: number; worth: number } | null = null;
  for (const card of CARDS) {
    const groups = groupsOf(card);
    const after = groups.reduce((sum, causes) => {
      const inside = causes.map((cause) => weights[cause]);
      return sum + inside.reduce((total, weight) => total + weight, 0) * doubt(inside);
    }, 0);
    const gain = (before - after) / before;
    const worth = gain / Math.sqrt(card.effort);
    if (best === null || worth > best.worth) best = { card, gain, worth };
  }
  const { card, gain } = best!;
  const groups = groupsOf(card);
  const seen = [...card.outcomes.map(([words]) => words), card.otherwise];
  return {
    what: card.what,
    outcomes: seen.map((words, at) => ({ seen: words, causes: groups[at]! })),
    caution: card.caution,
    gain: Math.max(0, gain),
  };
}

/** Causes by outcome, the last being all others. */
function groupsOf({ outcomes }: TestCard): CauseCode[][] {
  const named = outcomes.map(([, causes]) => [...causes]);
  return [...named, CAUSES.filter((cause) => !named.flat().includes(cause))];
}
