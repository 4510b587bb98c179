// What gauges alone tell, in sentences.
import type {
  GaugeCheck,
  GaugeEvidenceCode,
  GaugeFault,
  GaugeFigure,
  GaugeFigureKey,
  GaugeFinding,
  GaugeUntoldCode,
} from '@noonloop/sim-core';
import type { Units } from '../units.ts';
import { dayInWords } from './check.ts';
import { factWords, sayingWords, type Words } from './fill.ts';
import { WHO } from './who.ts';

/** One finding in words. */
export interface GaugeFindingInWords {
  /** What it is. */
  readonly name: string;
  /** What speaks for it, and since when, a sentence. */
  readonly evidence: string;
  /** What to look at next, a sentence or two. */
  readonly look: string;
  /** Who may do more than look. */
  readonly who: string;
}

/** What gauges alone tell, in words, in one system of units. */
export interface GaugesInWords {
  /** The verdict in a sentence. */
  readonly headline: string;
  /** In the order of the check. */
  readonly findings: readonly GaugeFindingInWords[];
  /** Figures: name, value and spread. */
  readonly figures: readonly { readonly name: string; readonly value: string; readonly spread: string }[];
  /** What cannot be told, and why. */
  readonly untold: readonly string[];
  /** What can hurt someone. */
  readonly cautions: readonly string[];
}

const FAULT_NAMES: Words<GaugeFault> = {
  'sensor-dead': 'a gauge shows what cannot be',
  'pump-stands': 'the pump stands though there is heat to fetch',
  'no-flow': 'the pump runs and moves nothing',
  'night-circulation': 'a check valve that leaks lets the loop cool the tank at night',
  'sensor-apart': 'a gauge is off against the one that steers the pump',
  'weak-transfer': 'the loop carries less than it did, by less flow or a fouled coil',
  'tank-loss': 'the tank loses more heat than it did, or than its papers say',
};

export const EVIDENCE_WORDS: Words<GaugeEvidenceCode> = {
  stuck: 'The {gauge} shows the same for {hours}',
  jumps: 'The {gauge} leaps and comes back {count} times, as a loose wire does',
  'upside-down': 'The bottom of the tank reads warmer than its top for hours, on {days}',
  'hot-while-standing':
    'On {days} the pump stood for half an hour or more beside a hot collector and a tank that had room',
  'runs-without-gain':
    'On {days} it ran for three quarters of an hour or more beside a very hot collector, and the tank got no warmer',
  'warm-at-night':
    'On {nights} of {of} nights the standing collector was warmer than room and air, by {warm} in the middle: only the tank can warm it then',
  'warms-in-the-dark':
    'On {nights} of {of} nights the standing collector warmed in the dark, by {warm} in the middle: only the tank can warm it then',
  'starts-and-stops-moved': 'Starts have moved by {start} and stops by {stop}, both one way',
  'starts-off-setting': 'Starts come at a difference of {found}, and the setting is {setting}',
  'carries-less': 'For the same difference the tank warms at {left} of the rate before',
  'nights-cool-faster': 'The tank’s time constant fell from {before} to {after}',
  'loses-more-than-stated': 'On quiet nights it loses {times} times what its papers say',
};

export const LOOK_WORDS: Words<GaugeFault> = {
  'sensor-dead': 'Look at its wire and whether it sits in its pocket; read on, and check again before anything else.',
  'pump-stands':
    'In sun listen whether it turns and look what the controller shows. Was it switched off, or the limit set low?',
  'no-flow':
    'Air or steam in the loop, a closed valve, a blocked strainer, a pump that hums. If it comes only after the collectors have stood hot, it may go by itself as they cool; on other days it does not.',
  'night-circulation': 'At night feel with a thermometer whether the hot pipe near the tank stays warm.',
  'sensor-apart': 'Hold both sensors side by side with a thermometer, on a cloudy morning.',
  'weak-transfer':
    'Look at the flow meter if there is one, and at the pressure. Was the pump set to a lower step, or much more water used?',
  'tank-loss': 'Look for wet or slipped insulation, a circulation that runs at night, a tap that drips warm water.',
};

const WHO_MAY: Words<GaugeFault> = {
  'sensor-dead': WHO.electrician,
  'pump-stands': WHO.loop,
  'no-flow': WHO.loop,
  'night-circulation': WHO.loop,
  'sensor-apart': WHO.electrician,
  'weak-transfer': WHO.loop,
  'tank-loss': WHO.ownerOrPlumber,
};

export const UNTOLD_WORDS: Words<GaugeUntoldCode> = {
  'no-weather':
    'Without the weather nobody knows how much heat there should have been: dirty or shaded panels, thinned fluid and the panels’ own efficiency are not told.',
  'fault-from-the-start':
    'Less flow, a fouled coil, a drifted gauge or a cooler tank that were so from the first day on look like the house itself, unless papers say otherwise.',
  'sensor-that-steers': 'A sensor that is off and steers the pump takes the pump with it: starts and stops look right.',
  'flow-or-fouling': 'Less flow and a fouled coil look alike without thermometers on both pipes.',
  'no-pump': 'Whether the pump runs was not logged: nothing about it is told.',
  'no-bottom': 'The tank’s bottom was not logged: its top stands in for it, and differences are too small.',
  'no-room': 'The room was not logged: 20 °C is taken for it.',
  'no-light': 'Light was not logged: a pump that stands is seen only once the collector is hot.',
  'no-volume': 'The tank’s volume is not known: its loss is told as a time constant.',
  'no-settings': 'No design was given: settings and losses are compared with the log’s own earlier days.',
  'few-nights': 'Fewer than five quiet nights with a warm tank: its loss is hardly told.',
  'few-starts': 'Fewer than five days with a start: starts and stops are hardly told.',
  'not-an-inspection':
    'This is a look at numbers, not an inspection. Work on gas, mains electricity, pressure vessels and roofs is for licensed people, by the local code.',
};

const CAUTION_WORDS: Words<GaugeFault> = {
  'sensor-dead': 'A sensor on the roof is for someone with fall protection; wires of the controller may carry mains.',
  'pump-stands':
    'A loop without flow in sun gets hotter than boiling water. Owners do not open, fill or restart it; the trade does, at dawn or with covered panels that have cooled.',
  'no-flow':
    'A loop without flow in sun gets hotter than boiling water. Owners do not open, fill or restart it; the trade does, at dawn or with covered panels that have cooled.',
  'night-circulation': 'Pipes near the tank scald: use a thermometer, not a hand.',
  'sensor-apart': 'Wires of the controller may carry mains: an electrician opens it.',
  'weak-transfer': 'The loop is under pressure and hot: what opens it is for the trade, on a cold loop.',
  'tank-loss': 'Pipes and tank scald: use a thermometer, not a hand.',
};

const FIGURE_NAMES: Words<GaugeFigureKey> = {
  'start-difference': 'start: collector over tank',
  'stop-difference': 'stop: collector over tank',
  'running-difference': 'running: collector over tank',
  carried: 'an hour’s warming per degree of it',
  'night-time-constant': 'tank’s time constant, quiet nights',
  'tank-loss': 'tank’s loss, quiet nights',
  'start-light': 'light at the first start',
  'hottest-standing': 'hottest standing collector',
};

const GAUGES: Readonly<Record<string, string>> = {
  collectorTemperature: 'sensor of the collector',
  tankBottomTemperature: 'thermometer at the tank’s bottom',
  tankTopTemperature: 'thermometer at the tank’s top',
};

/**
 * What gauges alone tell, in sentences.
 *
 * @param check - from `checkGauges`
 * @param units - of the numbers in them; default `metric`
 */
export function gaugesInWords(check: GaugeCheck, units: Units = 'metric'): GaugesInWords {
  const { findings, figures, untold, verdict } = check;
  const length = factWords({ value: check.days, unit: 'days' }, units);
  return {
    headline:
      verdict === 'nothing-seen'
        ? `Nothing wrong that these gauges show by themselves in ${length}.`
        : `Found by the gauges alone, in ${length}: ${findings.map(({ fault }) => FAULT_NAMES[fault]).join('; ')}.`,
    findings: findings.map((finding) => findingWords(finding, units)),
    figures: figures.map((figure) => figureWords(figure, units)),
    untold: [...check.remarks, ...untold.map((code) => UNTOLD_WORDS[code])],
    cautions: [...new Set(findings.map(({ fault }) => CAUTION_WORDS[fault]))],
  };
}

function findingWords({ fault, evidence, since }: GaugeFinding, units: Units): GaugeFindingInWords {
  const when = since === null ? '' : `, since about ${dayInWords(since)}`;
  return {
    name: FAULT_NAMES[fault],
    evidence: `${sayingWords(evidence, EVIDENCE_WORDS, units, GAUGES)}${when}.`,
    look: LOOK_WORDS[fault],
    who: WHO_MAY[fault],
  };
}

function figureWords({ key, value, low, high, unit, count }: GaugeFigure, units: Units) {
  const show = (number: number): string =>
    unit === '1/h'
      ? number.toFixed(2)
      : unit === 'W/K'
        ? units === 'us'
          ? `${(number * 1.8956).toFixed(1)} Btu/(h·°F)`
          : `${number.toFixed(1)} W/K`
        : factWords({ value: number, unit }, units);
  const spread = key === 'hottest-standing' ? `on ${count} days` : `${show(low)} to ${show(high)} on half of ${count}`;
  return { name: FIGURE_NAMES[key], value: show(value), spread };
}
