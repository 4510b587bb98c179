/** Sentences of what a run clamped, extrapolated or left out. */
import type { NoticeCode, RunNotice } from '@noonloop/sim-core';
import type { Units } from '../units.ts';
import { sayingWords, type Words } from './fill.ts';

/** By code. */
export const NOTICE_WORDS: Words<NoticeCode> = {
  'fluid-extrapolated': 'Fluid properties are extrapolated above {valid} and held above {held} while the pump runs.',
  'fluid-below-freezing':
    'The absorber was below the fluid’s freezing point, {point} at the end of the year; ice and slush are not modelled.',
  'pipe-below-freezing':
    'An outdoor pipe was below the fluid’s freezing point, {point} at the end of the year; ice and slush are not modelled.',
  'tank-freezing':
    'Water in the tank was at the freezing point or below, {coldest} at the coldest; ice is not modelled, and water pipes beside the tank freeze as well.',
  'runs-by-itself':
    'Without a check valve the fluid ran by its own buoyancy; over the year it carried {heat} out of the tank.',
  'loop-relief-valve': 'The loop’s relief valve opened; the fluid let out is counted.',
  'loop-pressure-low':
    'The pump had power, but the loop had too little pressure to circulate; air is taken to leave by itself when the pressure is back.',
  'glycol-thinned':
    'Make-up water thinned the glycol to {left} by mass; the heat capacity of pipes and absorber was held at that of the fluid as filled.',
  boiling:
    'Fluid boiled out of the collectors; they stood dry and without circulation until cooled. Heat that steam carries to the tank is left out.',
  'beam-without-sun': 'The weather has beam irradiance while the sun is below the horizon; it is left out.',
  'wind-held': 'The wind along the collectors was above {highest}; the wind terms a3, a6 and a7 are held there.',
  'motor-overloaded':
    'The module drove the pump’s motor with more than {times} times its rated power; the pump’s curve is carried on by the affinity laws.',
  'module-tables-held':
    'The module’s light or cell temperature was beyond its tables, which end at {light}, {coldest} and {hottest}; it was held there.',
  'pump-points-ended':
    'The pump worked before the first or beyond the last of its measured points, which at the highest voltage reach from {least} to {most}; there its curves go on straight.',
  'pump-cannot-lift':
    'The pump turned and had not the power to lift the water {lift} to the top of the empty collectors; they stayed empty meanwhile.',
  'draw-held':
    'The taps want water hardly warmer than the mains; these draws of the tapping profile carry less than its heat.',
  'heater-not-firing':
    'Water passed the flow-through heater colder than the taps want it: too little flow, rise or power for it to fire; the shortfall is counted.',
  'heater-off':
    'Water was drawn while the heater was off by season or timer: {hot}, of which {cool} left it below 60 °C (140 °F); the taps lacked {missing} in these hours.',
  'heat-pump-points-ended':
    'The heat pump heated in air colder than the first point of its curve, {lowest}; the coldest was {coldest}. Its value there was kept; ice on the evaporator and a machine that stops in such cold are not modelled.',
  'cooled-at-night': 'The pump ran at night to cool the tank, and carried {heat} out through the collectors.',
  'relief-valve': 'The tank’s relief valve opened at {opens}; the water and heat let out are counted.',
};

/**
 * A notice of a run in words; the code where it is of a later version.
 *
 * @param notice - from `RunResult.notices`
 * @param units - of the numbers in it
 */
export const noticeWords = (notice: RunNotice, units: Units = 'metric'): string =>
  Object.hasOwn(NOTICE_WORDS, notice.code) ? sayingWords(notice, NOTICE_WORDS, units) : notice.code;
