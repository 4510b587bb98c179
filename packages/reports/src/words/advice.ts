// Notes and cautions of sizing, freezing and survey.
import type { AdviceCode, Saying } from '@noonloop/sim-core';
import type { Units } from '../units.ts';
import { sayingWords, type Words } from './fill.ts';

/** By code. */
export const ADVICE_WORDS: Words<AdviceCode> = {
  'no-common-tube': 'No common tube keeps velocity and head: run two tubes, or ask for less flow.',
  'too-slow-for-air':
    'The fluid runs at {velocity}: too slow to carry air along. Give the highest point a vent that can be shut.',
  'no-common-insulation': 'No common thickness keeps the loss: shorten the pipe, or take it indoors.',
  'insulation-below-codes':
    'No common thickness is as thick as codes ask for this tube: lay two shells, or a better insulation.',
  'insulation-codes-differ':
    'Codes differ: R-3 above {40.6 °C}, or as thick as the tube indoors and twice that out of doors. The local code decides.',
  'insulation-near-collectors':
    'Insulation near the collectors must bear their stagnation temperature, and out of doors the sun and birds.',
  'pump-never-starts': 'The pump never starts on this module: a larger module, or a pump that needs less.',
  'pump-starts-late':
    'The pump starts only in {light}: the panels are hot by then, and dull days are lost. A larger module starts it sooner.',
  'pump-starts-early':
    'The pump starts in {light} already: in dull light it may cool the tank. A higher threshold, a smaller module, or a temperature-difference control.',
  'better-threshold':
    'A start in {best} instead of {designed}, by a threshold of {power}, delivers {gain} more in this year. The coil then takes {back} instead of {backBefore} back out of the tank.',
  'better-module':
    'A start in {best} instead of {designed}, by a module of {power}, delivers {gain} more in this year. The coil then takes {back} instead of {backBefore} back out of the tank.',
  'controller-is-better':
    'A controller by temperature difference delivers {gain} more than the best start: the pump then never runs while the tank is the warmer.',
  'little-flow': 'Little flow for the array: hot collectors lose more. Wider pipe, less glycol or a stronger pump.',
  'much-flow': 'More flow than the array needs: a smaller pump or module saves money, and the tank keeps its layers.',
  'dull-morning':
    'On a dull morning hardly anything flows: light is thin and the cold fluid thick. Mild light is then lost, which a simulation shows in figures.',
  'module-is-live':
    'A module is live while there is light, and plugs under load arc: cover it before work. Mains wiring is for licensed people.',
  'steam-reaches-pump':
    'Steam may get through all the pipe to pump and vessel with {power}. A vessel without membrane before the expansion vessel cools it. More pipe, or panels that empty from below (loop.steamPower {50 W/m²}), keep it off.',
  'nothing-that-shuts':
    'Nothing that shuts may stand between collectors and relief valve; pipe its outlet to a catch vessel, never to a roof edge or a drain.',
  'steam-and-glycol-scald': 'Steam and hot glycol scald: fill and vent with the collectors cold or covered.',
  'vessel-must-bear':
    'The vessel must bear the relief pressure, its membrane glycol and heat; a length of bare pipe before it keeps steam from it. Pressure vessels: your local code and licensed trades decide.',
  'water-must-find-room':
    'Behind a check valve, pressure reducer or backflow preventer {volume} of water must find room at each heating: codes ask for an expansion vessel for drinking water there (IPC 607.3, UPC 608.3). Nothing that shuts may stand between tank, vessel and relief valve. A licensed plumber fits it by the local code.',
  'mix-before-filling':
    'Mix before filling, with water as the maker asks (often demineralised); concentrate poured after water does not mix by itself.',
  'least-share-governs':
    'The cold alone would ask for less: the least share keeps inhibitor and biocide strong enough.',
  'ethylene-glycol-is-poison': 'Ethylene glycol is poisonous: never behind a single wall against drinking water.',
  'more-than-needed': 'More than needed costs flow and heat: thick when cold, and less heat carried by the same flow.',
  'test-ph':
    'pH by strip or meter: fresh 8.5 to 10; from 8 down corrosion grows more likely; below 7 drain, flush and renew (a trade magazine’s page).',
  'test-reserve':
    'Reserve of alkalinity: the maker’s kit; half of what it was when fresh is time to renew or to add inhibitor (common practice, no source).',
  'test-strength':
    'Strength by refractometer each time: a weaker fluid means make-up, hence a leak. Dark, foul or gritty: spent, whatever it reads.',
  'sample-cold': 'Take the sample cold: hot fluid under pressure scalds and flashes to steam.',
  'fluid-may-split':
    'In {hours} of this year the coldest part is below {burst}, where the fluid may split collectors and pipes: water damage, and a loop that empties itself hot when it thaws. Do not start it after such a cold before its pressure was checked.',
  'hot-when-dry':
    '{name}: {temperature} when dry in full sun. Pipes, vents, insulation and fluid near it must be made for that; ordinary propylene glycol is not.',
  'tubes-and-snow':
    'Tubes shed snow badly and break singly; flat plates weigh more in one piece. Neither is in these numbers unless `snow` was given.',
  'roof-bears-weight-and-wind':
    'Weight and wind: have the roof and its fixings checked by someone qualified. Dry collectors burn: cover them before work.',
  'used-without-warranty':
    'Used panels carry no warranty: press them with water, and run the year with the low and high end of their survey too.',
  'panel-weight':
    'Full, the panel puts {likely} on the roof (up to {high}), and wind can lift more than that: have roof and fixings checked by someone qualified.',
  'plate-is-hot':
    'Dry in full sun its plate reaches {likely} (up to {high}): cover it or wait for dusk before touching or filling it. Water makes steam at once.',
  'old-glass':
    'Old glass may not be toughened: gloves, eye protection, two people. Fibres and flaking coatings: a dust mask.',
  'press-tubes-first':
    'Press the tubes with water before they go on a roof; frost may have split them. Work at heights and pressure systems: your local code and licensed trades decide.',
};

/** What codes among the facts stand for. */
const NAMES = { none: 'no light' };

/**
 * Notes and cautions of a sizing, a survey or a look at the frost, a sentence or two each.
 *
 * @param sayings - `notes` or `cautions` of the result
 * @param units - of the numbers in them; default `metric`
 */
export const adviceInWords = (sayings: readonly Saying<AdviceCode>[], units: Units = 'metric'): string[] =>
  sayings.map((saying) => sayingWords(saying, ADVICE_WORDS, units, NAMES));
