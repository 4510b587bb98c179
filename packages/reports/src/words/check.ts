// What a checked log says, in sentences.
import type {
  CheckCautionCode,
  CheckNoteCode,
  Evidence,
  LogCheck,
  MeasuredKey,
  RankedCause,
  ReasonCode,
} from '@noonloop/sim-core';
import { formatDay, MONTH_NAMES, MONTH_STARTS, monthOfDay } from '../calendar.ts';
import { formatNumber, type Units } from '../units.ts';
import { burnWords } from './burns.ts';
import { CARD_WORDS, DOER_WORDS, OUTCOME_WORDS } from './cards.ts';
import { CAUSE_NAMES, DOUBT_WORDS, FORM_WORDS, GAUGE_NAMES } from './causes.ts';
import { factWords, fill, sayingWords, type Words } from './fill.ts';

/** A cause in words. */
export interface CauseInWords {
  /** What it is. */
  readonly name: string;
  /** Its share of belief, `82 %`; never 0 or 100. */
  readonly weight: string;
  /** Form, severity and beginning, a sentence. */
  readonly detail: string;
  /** What speaks for it, sentences, the strongest first. */
  readonly evidence: readonly string[];
}

/** A test in words. */
export interface TestInWords {
  /** Who may make it. */
  readonly who: string;
  /** What to do. */
  readonly what: string;
  /** What one may find, and what it speaks for. */
  readonly outcomes: readonly {
    /** What one sees, hears or reads. */
    readonly seen: string;
    /** Causes that are still likely, by name. */
    readonly causes: readonly string[];
  }[];
  /** What can hurt someone; empty for nothing beyond the cautions of the whole. */
  readonly caution: string;
}

/** A checked log in words, in one system of units. */
export interface CheckInWords {
  /** The verdict in a sentence; a doubt about the log comes first. */
  readonly headline: string;
  /** Slips in how the log was written down. */
  readonly doubts: readonly string[];
  /** As ranked. */
  readonly causes: readonly CauseInWords[];
  /** The next test; `null` where there is none. */
  readonly next: TestInWords | null;
  /** What can hurt someone. */
  readonly cautions: readonly string[];
  /** What was assumed, left out or not to be told. */
  readonly notes: readonly string[];
}

/** Cautions. */
export const CHECK_CAUTION_WORDS: Words<CheckCautionCode> = {
  'not-an-inspection':
    'This is a comparison with a calculation, not an inspection. Work on gas, mains electricity, pressure vessels and roofs is for licensed people, by the local code.',
  'loop-without-flow':
    'A loop without flow in sun gets hotter than boiling water. Owners do not open, fill or restart it; the trade does, at dawn or with covered panels that have cooled. Keep clear of the outlets of relief valve and vent.',
  'lost-fluid-and-frost':
    'Lost or topped-up fluid may no longer protect against frost: have it measured with a refractometer before winter, and refilled with mixture of the same strength. Ethylene glycol is poisonous, also to animals.',
  'vessel-and-relief':
    'A vessel without gas makes the relief valve open again and again, until it drips or sticks. Never plug its outlet; have vessel and valve tested by the trade, on a cold loop.',
  'valve-too-high':
    'Hotter taps scald: water of {limit} burns {burn}, children and the elderly sooner. Have valve or thermostat set by someone who measures at the tap after each turn.',
  'drain-and-descale':
    'Opening, draining or descaling a tank scalds and may spread legionella: let a licensed plumber do it.',
  'thermostat-and-limits':
    'Never bridge or raise a limit to keep a pump or a heater running: it guards against scalding and steam.',
};

/** Notes. */
export const CHECK_NOTE_WORDS: Words<CheckNoteCode> = {
  'runs-compared': '{runs} runs of the weeks of the log were compared.',
  'readings-left-out': 'The log is long: one of {every} readings was used.',
  'begins-in-january': 'The log begins in the first days of January: the tank’s start is a guess.',
  'no-pressure': 'No pressure was read: slow loss of fluid, and a vessel without gas, cannot be seen.',
  'no-pipes': 'Hot and cold pipe were not both read: lime, sediment and throttled flow are hard to tell apart.',
  'no-looks': 'Nobody looked whether the pump turns: air lock and pump fault look alike.',
  'no-meter': 'No meter was read: habits, mixing valve and thermostat are hard to tell from the collectors.',
  'make-up-hides-leaks': 'Water that fills itself up hides a leak and thins the glycol: only a refractometer shows it.',
  'never-seen': 'Thinned fluid, and a mixing valve set too hot, do not show on these gauges.',
};

/** Verdicts that name no cause. */
export const REASON_WORDS: Words<Exclude<ReasonCode, 'leads' | 'two-causes' | 'weather-of-another-year'>> = {
  'no-cause-fits':
    'Cannot tell: none of the causes explains the readings; nearest is this: {nearest}. Check units, clock, weather and design.',
  'fits-too-well':
    'Cannot tell: the readings agree with the calculation better than gauges can. Were they read, or taken from a calculation?',
};

/** Share of belief in words: nobody is certain by five gauges. */
export function weightWords(weight: number): string {
  if (weight > 0.95) return 'over 95 %';
  return weight < 0.01 ? 'under 1 %' : `${formatNumber(100 * weight, 0)} %`;
}

/** `3 July` of an hour of the year. */
export function dayInWords(hour: number): string {
  const day = Math.min(364, Math.max(0, Math.trunc(hour / 24)));
  const month = monthOfDay(day);
  return `${day - MONTH_STARTS[month]! + 1} ${MONTH_NAMES[month]}`;
}

/**
 * A checked log in sentences.
 *
 * @param check - from `checkLog`
 * @param units - of the numbers in them; default `metric`
 */
export function checkInWords(check: LogCheck, units: Units = 'metric'): CheckInWords {
  const doubts = check.doubts.map((doubt) => sayingWords(doubt, DOUBT_WORDS, units, GAUGE_NAMES));
  const verdict = verdictWords(check);
  const scald = { limit: { value: 50, unit: '°C' }, burn: burnWords(50) };
  return {
    headline: doubts.length === 0 ? verdict : `First the log itself: ${doubts.join(' ')} ${verdict}`.trim(),
    doubts,
    causes: check.causes.map((cause) => causeWords(cause, units)),
    next: check.next === null ? null : testWords(check, units),
    cautions: check.cautions.map((code) => fill(CHECK_CAUTION_WORDS[code], scald, units)),
    notes: [
      ...check.remarks,
      ...check.notes.map((note) => sayingWords(note, CHECK_NOTE_WORDS, units)),
      ...(check.unseen.length === 0
        ? []
        : [`These would not show on such gauges in such weeks: ${check.unseen.map(shortName).join('; ')}.`]),
    ],
  };
}

/** Name without its explanation. */
const shortName = (cause: RankedCause['cause']): string => CAUSE_NAMES[cause].split(':')[0]!;

function verdictWords({ verdict, reason, causes }: LogCheck): string {
  const [first, second] = causes;
  const named = (cause: RankedCause): string => `${CAUSE_NAMES[cause.cause]} (weight ${weightWords(cause.weight)})`;
  switch (reason) {
    case 'weather-of-another-year':
      return '';
    case 'fits-too-well':
      return REASON_WORDS[reason];
    case 'no-cause-fits':
      return REASON_WORDS[reason].replace('{nearest}', CAUSE_NAMES[first!.cause]);
    case 'leads':
      return `${verdict === 'healthy' ? 'Healthy' : 'Likely'}: ${named(first!)}.`;
    case 'two-causes':
      return second === undefined
        ? `Cannot tell: ${named(first!)}.`
        : `Cannot tell: ${named(first!)}, or ${named(second)}.`;
  }
}

function causeWords(cause: RankedCause, units: Units): CauseInWords {
  const { form, since, evidence } = cause;
  const when =
    form.code === 'healthy' ? '' : since === null ? ', all through the log' : `, since about ${dayInWords(since)}`;
  const words = evidence.map((one) => evidenceWords(one, since, units));
  return {
    name: CAUSE_NAMES[cause.cause],
    weight: weightWords(cause.weight),
    detail: `${sayingWords(form, FORM_WORDS, units, GAUGE_NAMES)}${when}.`,
    evidence: words.length > 0 ? words : ['It fits the readings taken together; no single gauge shows it.'],
  };
}

const UNITS: Readonly<Record<MeasuredKey, string>> = {
  tankTopTemperature: 'K',
  flowTemperature: 'K',
  returnTemperature: 'K',
  loopPressure: 'Pa',
  heaterMeter: 'J',
};

/** `4 K above`, `as in` where it is less than the gauge tells. */
function offWords(gauge: MeasuredKey, value: number, units: Units): string {
  const size = factWords({ value: Math.abs(value), unit: UNITS[gauge] }, units);
  if (/^0(\.0+)? /.test(size)) return 'as in';
  return `${size} ${gauge === 'heaterMeter' ? (value < 0 ? 'less than' : 'more than') : value < 0 ? 'below' : 'above'}`;
}

function evidenceWords(evidence: Evidence, since: number | null, units: Units): string {
  if (evidence.kind === 'inside')
    return `${evidence.found} of ${evidence.count} numbers lie within the band of a healthy system; about ${evidence.healthy} would by chance.`;
  if (evidence.kind === 'pump')
    return `The pump was found running in ${evidence.found} of ${evidence.count} looks; a healthy system would run in about ${evidence.healthy}, one with this fault in about ${evidence.faulty}.`;
  const { gauge, count, before, after, strayFaulty, strayHealthy } = evidence;
  const name = GAUGE_NAMES[gauge].charAt(0).toUpperCase() + GAUGE_NAMES[gauge].slice(1);
  const off = (value: number): string => `${offWords(gauge, value, units)} a healthy system`;
  const readings = `${count} reading${count === 1 ? '' : 's'}`;
  const then =
    before === null || since === null ? '' : ` since ${formatDay(Math.trunc(since / 24))}, before that ${off(before)}`;
  const size = (value: number): string => factWords({ value, unit: UNITS[gauge] }, units);
  return `${name}: ${readings}, on average ${off(after)}${then}. They stray by ${size(strayHealthy)} from a healthy system, by ${size(strayFaulty)} from one with this fault.`;
}

/** Chosen so that a thermostat of the trade is not blamed for its hysteresis. Judgement. [K] */
const OFF_SETTING = 5;

function testWords({ causes, next }: LogCheck, units: Units): TestInWords {
  const { card, who, outcomes, facts } = next!;
  const heater = facts.heater;
  const all = {
    ...facts,
    offSetting: { value: OFF_SETTING, unit: 'K' },
    burnHeater: burnWords(typeof heater === 'object' ? Math.min(heater.value, 120) : 60),
  };
  const { what, caution } = CARD_WORDS[card];
  const likely = causes.map(({ cause }) => cause);
  return {
    who: DOER_WORDS[who],
    what: fill(what, all, units),
    outcomes: outcomes.map(({ seen, causes: left }) => ({
      seen: fill(OUTCOME_WORDS[seen], all, units),
      causes: likely.filter((cause) => left.includes(cause)).map((cause) => CAUSE_NAMES[cause]),
    })),
    caution: caution === null ? '' : fill(caution, all, units),
  };
}
