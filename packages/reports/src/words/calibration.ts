// A calibration in sentences.
import type { CalibratedParameter, Calibration, CalibrationNoteCode } from '@noonloop/sim-core';
import { formatDesignValue } from '../quantities.ts';
import type { Units } from '../units.ts';
import { sayingWords, type Words } from './fill.ts';

/** A calibration in words, in one system of units. */
export interface CalibrationInWords {
  /** What each fitted quantity came to, a sentence each. */
  readonly parameters: readonly string[];
  /** What to know about the result. */
  readonly notes: readonly string[];
}

/** Names of fitted quantities. */
const NAMES: Words<CalibratedParameter['key']> = {
  eta0: 'efficiency without loss (eta0)',
  collectorLoss: 'loss of the panels (a1, and a2 with it)',
  tankLoss: 'loss of the tank',
  heaterLoss: 'standby loss of the heater',
  draw: 'water drawn a day',
};

/** Notes. */
export const CALIBRATION_NOTE_WORDS: Words<CalibrationNoteCode> = {
  'runs-made': '{runs} runs of the weeks of the log were made for the fit.',
  'readings-left-out': 'The log is long: one of {every} readings was used.',
  'slips-left-out': 'Numbers that stand alone, taken for slips of the pen: {slips}.',
  'told-together': 'This log can hardly tell apart: {first}, and {second} (correlation {correlation}).',
  'sun-shows-as-eta0': 'What the sun of the weather file is off by shows as eta0; its uncertainty is in the interval.',
  'fits-badly':
    'The readings fit badly even after the fit: look for a fault with checkLog, and at units, clock and weather.',
};

/**
 * A calibration in sentences.
 *
 * @param calibration - from `calibrate`
 * @param units - of the numbers in them; default `metric`
 */
export function calibrationInWords({ parameters, notes }: Calibration, units: Units = 'metric'): CalibrationInWords {
  return {
    parameters: parameters.map((parameter) => parameterWords(parameter, units)),
    notes: notes.map((note) => sayingWords(note, CALIBRATION_NOTE_WORDS, units, NAMES)),
  };
}

function parameterWords(parameter: CalibratedParameter, units: Units): string {
  const { before, beforeDeviation, deviation, key, path, told, unit, value } = parameter;
  const show = (number: number): string => formatDesignValue(Number(number.toPrecision(3)), unit, path, units);
  const after = `${show(value)} ± ${show(deviation)}`;
  const name = `${NAMES[key].charAt(0).toUpperCase()}${NAMES[key].slice(1)}`;
  return told
    ? `${name}: ${after}; it was ${show(before)} ± ${show(beforeDeviation)}.`
    : `${name}: this log cannot tell it; it stays ${show(before)} (the log would say ${after}).`;
}
