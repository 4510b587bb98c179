/** Sentences of the cautions about the loop between roof and tank. */
import type { CautionText } from './caution-text.ts';
import { WHO } from './who.ts';

export const LOOP_WORDS = {
  'loop-relief': {
    severity: ['danger'],
    raised: 'the loop’s relief valve lets fluid out',
    short: 'the loop’s relief valve opens at {relief}',
    says: {
      found: 'The loop’s relief valve opens at {relief} in {hours} and lets out {volume} of fluid.',
      act: 'What comes out may be steam: pipe it to a catch vessel that stands heat. A larger expansion vessel, or one with its pressure set right, keeps the valve shut.',
    },
    who: WHO.loop,
    source: 'Opening pressure given in the design',
  },
  'loop-pressure-high': {
    severity: ['warning'],
    raised: 'the loop comes nearer to its relief valve than 0.5 bar, or 10 % above 5 bar, without opening it',
    short: 'the loop’s pressure reaches {peak} of {relief}',
    says: {
      found: 'The loop’s pressure reaches {peak} ({when}); its relief valve opens at {relief}.',
      act: 'In service it should stay below {allowed}: a valve may open a little early, and a hotter day will come. A larger expansion vessel, or one with its pressure set right, keeps it down.',
    },
    who: WHO.loop,
    source: 'End pressure of EN 12828 (from memory): 0.5 bar below the relief valve, 10 % above 5 bar',
  },
  'vessel-small': {
    severity: ['warning'],
    raised: 'the expansion vessel is smaller than hot fluid and steam need, 2 % and more',
    short: 'the expansion vessel holds {vessel} where {needed} are needed',
    says: {
      found:
        'The expansion vessel of {vessel} is smaller than the {needed} that the loop needs when it stands in the sun and steam pushes {steam} out of collectors and pipe.',
      act: 'Then the relief valve opens and fluid is lost. Have a vessel of {sold} fitted, with its pressure set before filling.',
    },
    who: WHO.loop,
    source: 'EN 12828 with the steam volume added (from memory); 2 %: judgement',
  },
  'steam-reach': {
    severity: ['warning'],
    raised: 'steam gets down the pipe as far as pump and vessel, in the year or in full sun without flow',
    short: 'steam can reach pump and vessel',
    says: {
      found:
        'When the array stands in full sun, steam fills {length} of pipe; there are {pipe}, so that it gets to pump and vessel with {power} left.',
      year: 'In this year steam fills the whole pipe of {pipe} and gets to pump and vessel.',
      act: 'Steam spoils pump and membrane: a cooling vessel before the expansion vessel takes its heat; so does more pipe, or an array that empties well.',
    },
    who: WHO.loop,
    source: 'IEA SHC Task 26, Hausner & Fink (from memory)',
  },
  freezing: {
    severity: ['danger', 'warning', 'note'],
    raised:
      'always: it says how far the coldest fluid stays above its freezing point; a caution below 5 K (9 °F), a danger below the freezing point',
    short: 'the loop’s fluid falls to {coldest} and freezes at {point}',
    says: {
      absorber: 'The coldest part of the absorber falls to {coldest} ({when}).',
      pipe: 'The coldest outdoor pipe falls to {coldest} ({when}).',
      spare: 'The fluid freezes at {point}: {margin} to spare.',
      near: 'The fluid freezes at {point}, only {margin} below.',
      frozen: 'The fluid freezes at {point}, and it is colder than that in {hours}.',
      thins: 'Make-up water thins the mixture: from {ends} on it would freeze in the coldest hour of this year.',
      burst: 'In {burstHours} it is below the point down to which the mixture bursts no pipe.',
      water:
        'Water swells as it freezes and bursts collectors and pipes: use a glycol mixture, or drain the loop in winter.',
      glycol:
        'Slush stops the flow, and a thin mixture can burst collectors and pipes: have the loop filled with a stronger mixture, with {spareWanted} to spare.',
      winter:
        'A colder winter than this weather year will come. Have the strength tested every autumn and follow the fluid maker’s table.',
    },
    who: WHO.loop,
    source: 'Margin of {spareWanted}: common practice, no source; freezing point: Melinder’s polynomials',
  },
  'fluid-limit': {
    severity: ['warning', 'note'],
    raised:
      'the absorber is hotter than the fluid’s limit (`loop.fluidLimit`); a note where a real one, hotter than its coefficients say, may be',
    short: 'the absorber is above the fluid’s limit in {hours}',
    says: {
      near: 'By the coefficients the standing absorber reaches {peak} ({when}), below the fluid’s limit of {limit}. Real ones get hotter than that when dry: {could} is possible, over the limit in {hours}.',
      nearStated:
        'By the coefficients the standing absorber reaches {peak} ({when}), below the fluid’s limit of {limit}. By the stagnation temperature of its papers it is {could}, over the limit in {hours}.',
      found: 'The absorber is hotter than the fluid’s limit of {limit} in {hours} and reaches {peak} ({when}).',
      water:
        'Water turns to steam there and pushes the loop empty: the relief valve and the expansion vessel must be made for it.',
      glycol:
        'Glycol turns acid faster there: have its pH and strength checked every year, and renewed when it is dark or sour. Follow the fluid maker’s guide.',
    },
    who: WHO.loop,
    source: 'Limit given in the design; a certificate states 30 K more than its coefficients give (DS_3663)',
  },
  boiling: {
    severity: ['warning'],
    raised: 'fluid boils out of the collectors',
    short: 'the fluid boils out of the collectors',
    says: {
      found: 'The fluid boils out of the collectors on {days}, for {hours} in all; the gauge rises to {peak}.',
      act: 'The expansion vessel must take what the steam pushes out, and steam must not reach pump or vessel. Less collector, a larger tank or shade in summer spare the fluid.',
    },
    who: WHO.planner,
    source: 'Boiling point at the pressure of each hour, as simulated',
  },
  'held-in-sun': {
    severity: ['warning'],
    raised: 'the high limit stops the pump in sun for 20 hours a year or more',
    short: 'the high limit stops the pump in {hours} of sun',
    says: {
      found:
        'The high limit stops the pump in {hours} in which it would run; the absorber reaches {peak} meanwhile ({when}).',
      stagnates: 'That is hard on fluid and seals, and for about {stagnation} it is above the stagnation limit.',
      short: 'That is hard on fluid and seals, though below the stagnation limit of {limit}.',
      act: 'The array gives more than the house takes then: less collector, a larger tank, a steeper tilt or shade in summer helps.',
    },
    who: WHO.planner,
    source: '20 hours, two days of sun: judgement',
  },
  'loop-pressure-low': {
    severity: ['warning'],
    raised: 'the pump would run and the loop has too little pressure to circulate',
    short: 'the loop has too little pressure to circulate',
    says: {
      found:
        'The loop has less than {minimum} at the collectors and does not circulate in {hours} in which the pump would run; the gauge falls to {lowest}.',
      first: 'It fails first on {fails}.',
      act: 'Collectors without flow get very hot. Have the leak found, and the loop filled up to the gauge mark with mixture of the same strength, not with water. Filling and letting out air are done cold: before sunrise, or with the panels covered since the evening.',
    },
    who: WHO.loop,
    source: 'Limit given in the design',
  },
  'glycol-thinned': {
    severity: ['warning'],
    raised: 'make-up water takes half a percent by mass or more of the glycol within the year',
    short: 'make-up water thins the glycol to {left}',
    says: {
      found: 'Make-up water thins the glycol from {filled} to {left} by mass within the year.',
      act: 'Have the leak found, and made up with mixture of the same strength instead of water. Have the strength tested every autumn. Follow the fluid maker’s guide.',
    },
    who: WHO.loop,
    source: 'Half a percent by mass and more (judgement)',
  },
  'poisonous-fluid': {
    severity: ['danger'],
    raised: 'the loop is filled with ethylene glycol',
    short: 'the loop’s fluid is poisonous',
    says: {
      found: 'The loop is filled with ethylene glycol, which is poisonous.',
      act: 'Behind the single wall of a coil or plate a leak puts it into the drinking water: use propylene glycol of food grade with an approved inhibitor, or an exchanger with two walls and a vented space between.',
    },
    who: WHO.loop,
    source: 'Common practice; codes on double walls differ',
  },
  'coil-small': {
    severity: ['note'],
    raised: 'the coil’s surface is less than 0.15 of the collectors’ area',
    short: 'the coil is {short} short of what is common for these panels',
    says: {
      found: 'The coil has {surface} of surface; {common} are common for these panels, {short} more.',
      act: 'It works, but the panels run hotter and bring less. A longer coil, a second one in series or a plate exchanger brings more; if the coil’s size is a default here, give length and outer diameter of yours.',
    },
    who: WHO.planner,
    source:
      'Surface of smooth tube over the collectors’ area, 0.15 to 0.3, in the middle 0.2: common practice, no source',
  },
  'heat-given-back': {
    severity: ['note'],
    raised: 'the coil takes a twentieth or more of the solar heat back out of the tank',
    short: 'the loop takes {back} back out of the tank',
    says: {
      found:
        'In weak light the loop cools the tank: the coil takes {back} a year back out of it, {share} of what it brings.',
      module:
        'A pump on its own module runs as soon as there is light. A smaller module, a controller that compares collector and tank, or a higher start helps.',
      controller: 'A larger difference before the pump starts, or a sensor nearer to the absorber, helps.',
    },
    who: WHO.planner,
    source: 'A twentieth: judgement',
  },
  'array-away': {
    severity: ['warning'],
    raised: 'tilted collectors face away from the equator by more than a right angle and 10°, outside the tropics',
    short: 'the panels face {facing}, away from the sun',
    says: {
      found: 'The panels face {facing} ({azimuth} clockwise from north); the sun stands in the {sunny} here.',
      act: 'Is that meant? Directions count from north: 0 is north, 90 east, 180 south, 270 west. Correct the azimuth of the array if it is not.',
    },
    who: WHO.planner,
    source: 'Geometry; 10° beyond a right angle: judgement',
  },
} as const satisfies Readonly<Record<string, CautionText>>;
