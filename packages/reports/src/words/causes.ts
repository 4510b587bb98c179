// What may be wrong, in words.
import type { CauseCode, DoubtCode, FormCode, MeasuredKey } from '@noonloop/sim-core';
import type { Words } from './fill.ts';

/** Gauges within a sentence. */
export const GAUGE_NAMES: Words<MeasuredKey> = {
  tankTopTemperature: 'thermometer at the tank’s top',
  flowTemperature: 'thermometer on the hot pipe',
  returnTemperature: 'thermometer on the cold pipe',
  loopPressure: 'pressure gauge',
  heaterMeter: 'heater’s meter',
};

/** Causes. */
export const CAUSE_NAMES: Words<CauseCode> = {
  healthy: 'nothing wrong that these gauges can see',
  'no-flow': 'little or no flow though the pump turns: air lock, closed valve, blocked strainer',
  'pump-fault': 'pump stands or turns too slowly: pump, its controller, its PV module or wiring',
  'high-limit': 'high limit stops the pump too early: limit set too low, or its switch or sensor worn',
  'lost-fluid': 'the loop has lost fluid',
  'vessel-charge': 'the expansion vessel has lost its gas: pressure swings too far',
  'scaled-coil': 'lime on the coil',
  sediment: 'sediment on the tank’s floor buries the coil',
  'dirty-or-shaded': 'dirty, fogged or shaded panels',
  'check-valve': 'check valve leaks: the loop cools the tank at night',
  'dip-tube': 'dip tube cracked or gone: cold water stirs the hot instead of going to the tank’s floor',
  'mixing-valve': 'mixing valve set too low: less hot water is drawn',
  thermostat: 'thermostat of the heater off its setting',
  'sensor-wrong': 'a gauge shows wrong values',
};

/** Forms and degrees of the causes. */
export const FORM_WORDS: Words<FormCode> = {
  healthy: 'The readings fit a healthy system',
  stopped: 'No flow at all',
  throttled: 'Flow throttled',
  trickle: 'Flow throttled to a trickle',
  'pump-stands': 'The pump stands',
  'weak-module': 'The module gives less than a third of its current',
  'very-weak-module': 'The module gives a sixth of its current',
  'limit-early': 'It stops the pump some {below} too early',
  'limit-far-too-early': 'It stops the pump {below} or so too early',
  seeping: 'It seeps',
  leaking: 'It leaks',
  'pressure-fallen': 'Pressure has fallen',
  'pressure-gone': 'Pressure is gone at the panels',
  'charge-low': 'Some {left} of its gas are left',
  'charge-gone': 'Hardly any gas is left',
  'thin-scale': 'Some {thickness} of it',
  scale: 'Some {thickness} of it',
  'thick-scale': 'A thick crust of it',
  'half-buried': 'About half of the coil is buried',
  'nearly-buried': 'Nearly all of the coil is buried',
  'light-lost': 'Some {lost} of the light are lost',
  'most-light-lost': 'More than half of the light is lost',
  'shade-left': 'Shade on the left, seen from the panels',
  'shade-right': 'Shade on the right, seen from the panels',
  'check-valve-open': 'It no longer shuts',
  'dip-tube-leaks': 'It stirs the lower part of the tank',
  'dip-tube-broken': 'It stirs the whole tank',
  'valve-cool': 'Set some {below} below what the taps want',
  'thermostat-low': 'Some {off} too low',
  'thermostat-high': 'Some {off} too high',
  'gauge-high': 'The {gauge} shows some {offset} too much',
  'gauge-low': 'The {gauge} shows some {offset} too little',
  'gauge-stuck': 'The {gauge} is stuck',
};

/** Slips in how a log was written down, and what to do about them. */
export const DOUBT_WORDS: Words<DoubtCode> = {
  'weather-of-another-year':
    'The weather is of {weather}, the log of {log}: get the weather of the weeks of the log, or nothing can be told.',
  'pipes-swapped':
    'Hot and cold pipe look swapped: in sun the hot pipe is the one that comes down from the panels. What follows takes them the other way round.',
  'psi-taken-for-bar':
    'The pressure gauge seems to show psi, and the layout says bar. What follows takes the numbers for psi: correct the unit in the layout.',
  'bar-taken-for-psi':
    'The pressure gauge seems to show bar, and the layout says psi. What follows takes the numbers for bar: correct the unit in the layout.',
  'fahrenheit-taken-for-celsius':
    'The {gauge} seems to show °F, and the layout says °C. What follows takes the numbers for °F: correct the unit in the layout, and look at the other thermometers too.',
  'celsius-taken-for-fahrenheit':
    'The {gauge} seems to show °C, and the layout says °F. What follows takes the numbers for °C: correct the unit in the layout, and look at the other thermometers too.',
};
