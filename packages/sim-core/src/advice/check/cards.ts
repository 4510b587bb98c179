// Cheap tests, as codes: which causes each tells apart, who may make it, and in which systems it can be made.
import type { SystemDesign } from '../../design/design.ts';
import type { CardCode, OutcomeCode } from './card-codes.ts';
import type { CauseCode } from './causes.ts';

/** Who may do it. */
export type Doer = 'owner' | 'licensed trade';

/** A test. */
export interface TestCard {
  /** Which card it is. */
  readonly code: CardCode;
  /** Owners look, listen and read; what opens a part under pressure or touches wires is for the trade. */
  readonly who: Doer;
  /** Effort, relative: a look is 1. Judgement. */
  readonly effort: number;
  /** Outcomes that differ from the last one, which all other causes give. */
  readonly outcomes: readonly (readonly [seen: OutcomeCode, causes: readonly CauseCode[]])[];
  /** What all other causes give. */
  readonly otherwise: OutcomeCode;
  /** In which systems it can be made; default all. */
  readonly fits?: (design: SystemDesign) => boolean;
}

/** Common practice, no source; efforts are judgement. */
export const TEST_CARDS: readonly TestCard[] = [
  {
    code: 'catch-vessel',
    who: 'owner',
    effort: 1,
    outcomes: [['wet', ['lost-fluid', 'vessel-charge']]],
    otherwise: 'dry',
  },
  {
    code: 'pump-by-ear',
    who: 'owner',
    effort: 1,
    outcomes: [['silent-or-jerking', ['pump-fault', 'high-limit']]],
    otherwise: 'hums',
  },
  {
    code: 'pressure-cold',
    who: 'owner',
    effort: 1,
    outcomes: [['lower', ['lost-fluid', 'sensor-wrong', 'vessel-charge']]],
    otherwise: 'as-filled',
  },
  {
    code: 'pressure-swing',
    who: 'owner',
    effort: 1.2,
    outcomes: [['swings-wide', ['vessel-charge']]],
    otherwise: 'swings-as-usual',
  },
  {
    code: 'pipes-at-noon',
    who: 'owner',
    effort: 1,
    outcomes: [
      ['cold-or-far-apart', ['no-flow', 'pump-fault', 'high-limit']],
      ['both-hot', ['scaled-coil', 'sediment']],
      ['both-cooler', ['dirty-or-shaded']],
    ],
    otherwise: 'as-usual',
  },
  {
    code: 'hot-pipe-before-sunrise',
    who: 'owner',
    effort: 1,
    outcomes: [['warm-at-night', ['check-valve']]],
    otherwise: 'cold-at-night',
  },
  {
    code: 'panels-from-the-ground',
    who: 'owner',
    effort: 1,
    outcomes: [['dirt-fog-or-shadow', ['dirty-or-shaded']]],
    otherwise: 'clean-in-sun',
  },
  {
    code: 'stops-early',
    who: 'owner',
    effort: 1.5,
    outcomes: [['stops-in-sun', ['high-limit']]],
    otherwise: 'runs-on',
    fits: ({ control }) => control.highLimit !== null,
  },
  {
    code: 'controller-display',
    who: 'owner',
    effort: 1,
    outcomes: [
      ['shows-limit', ['high-limit']],
      ['shows-sensor', ['sensor-wrong']],
    ],
    otherwise: 'shows-running',
    fits: ({ control }) => control.mode === 'difference',
  },
  {
    code: 'tap-by-thermometer',
    who: 'owner',
    effort: 1,
    outcomes: [['tap-cool', ['mixing-valve']]],
    otherwise: 'tap-as-set',
  },
  {
    code: 'heater-display',
    who: 'owner',
    effort: 1,
    outcomes: [['off-its-setting', ['thermostat']]],
    otherwise: 'at-its-setting',
  },
  {
    code: 'tank-while-drawing',
    who: 'owner',
    effort: 1,
    outcomes: [['top-falls-at-once', ['dip-tube']]],
    otherwise: 'top-holds',
  },
  {
    code: 'gurgling',
    who: 'owner',
    effort: 1.5,
    outcomes: [['gurgles', ['no-flow', 'lost-fluid']]],
    otherwise: 'quiet',
  },
  {
    code: 'second-thermometer',
    who: 'owner',
    effort: 2,
    outcomes: [['differ', ['sensor-wrong']]],
    otherwise: 'agree',
  },
  {
    code: 'module-voltage',
    who: 'licensed trade',
    effort: 3,
    outcomes: [['hardly-any-voltage', ['pump-fault']]],
    otherwise: 'full-voltage',
    fits: ({ pump }) => pump.drive !== 'mains',
  },
  {
    code: 'second-pressure-gauge',
    who: 'licensed trade',
    effort: 3,
    outcomes: [['differ', ['sensor-wrong']]],
    otherwise: 'agree',
  },
  {
    code: 'tank-drain',
    who: 'licensed trade',
    effort: 4,
    outcomes: [['grit-or-slow', ['sediment']]],
    otherwise: 'runs-clear',
  },
  {
    code: 'vessel-pin',
    who: 'licensed trade',
    effort: 3,
    outcomes: [['liquid-or-no-gas', ['vessel-charge']]],
    otherwise: 'gas-at-its-mark',
  },
  {
    code: 'air-vent',
    who: 'licensed trade',
    effort: 5,
    outcomes: [['air-comes', ['no-flow', 'lost-fluid']]],
    otherwise: 'fluid-comes',
  },
  {
    code: 'coil-by-the-hour',
    who: 'licensed trade',
    effort: 4,
    outcomes: [['far-above-tank', ['scaled-coil', 'sediment']]],
    otherwise: 'near-tank',
    fits: ({ loop }) => loop.exchanger === 'coil',
  },
];
