/** Why a task is in a calendar, and what holds for all of it. */
import type { CalendarCautionCode, TaskBasisCode, TaskReasonCode } from '@noonloop/sim-core';
import type { Words } from './fill.ts';
/** Why. */
export const TASK_REASON_WORDS: Words<TaskReasonCode> = {
  'over-limit': 'the absorber, with fluid in it, is above the fluid’s limit of {limit} for {hours} a year',
  'never-over-limit': 'the absorber never passes the fluid’s limit of {limit}',
  'made-up': '{volume} of make-up water thin it',
  'freeze-margin': 'the coldest part stays {margin} above the fluid’s freezing point',
  freezes: 'the coldest part falls {margin} below the fluid’s freezing point',
  'before-frost': 'the first frost of the weather file is on {frost}, and another year’s may come earlier',
  'fluid-life': 'by such heat the fluid is expected to last some {life}; it is {age} old',
  overdue: 'it is overdue: do not wait for its season',
  'pressure-swing': 'the pressure moves by {swing} over the year by warmth alone',
  lost: '{volume} are lost in the run',
  'loses-nothing': 'the run loses nothing',
  stagnation: 'the loop stagnates for about {hours} a year',
  boiling: 'it boils for about {hours}',
  relieved: 'its relief valve lets out {volume} in the run: find out why before it is relied on',
  'never-relieved': 'the pressure stays under the {relief} of the valve, and what never moves sticks',
  flakes: 'boiling (about {hours}) leaves flakes of old fluid',
  'pump-hours': 'the pump runs for {hours} a year',
  'starts-the-pump': 'the controller starts and stops the pump by them, and so do you judge it',
  'judged-by-them': 'you judge the system by them',
  'only-power': 'the pump has no other power; dirt makes it start later on dull mornings',
  'hottest-absorber': 'the absorber reaches about {hottest} in the run; insulation and seals age by it',
  'hot-tank': 'the tank’s top is above {hot60} for {hours} a year',
  'through-tank': '{volume} a year pass the tank',
  hardness: 'the water has {hardness}',
  'hardness-unknown': 'hardness of the water not given, taken as middling',
  'tank-relieved': 'the tank’s relief valve lets out {volume} in the run: lime will make it drip or stick',
  'tank-never-relieved': 'the tank’s relief valve never opens in the run, and what never moves sticks',
  swell: 'the tank’s water swells by {swell} from {cold} to {hot}',
  'hot-draws': 'water above {hot60} is drawn into the heater in {hours} a year, up to {hottest}',
  'valve-alone':
    'the tank’s top is above {hot60} for {hours} a year, up to {hottest}: only the valve stands between it and the taps',
  'no-valve':
    'no mixing valve stands between the taps and the tank, whose top is above {hot60} for {hours} a year, up to {hottest}',
  'two-weeks-unused': 'a magnesium anode in standing water makes hydrogen',
  'burns-fuel': 'the heater burns fuel, and runs otherwise than without the sun',
  'fill-line': 'a line from the mains fills the loop by itself',
  'fill-connection': 'the loop holds glycol and was filled from the mains',
  'metal-on-the-roof': 'panels, frames and pipes are metal on the roof that leads into the house',
};

/** Where the usual interval comes from. */
export const TASK_BASIS_WORDS: Words<TaskBasisCode> = {
  practice: 'common practice, no source',
  'practice-and-judgement': 'common practice, no source; more often where the run says so: judgement',
  judgement: 'judgement',
  'fluid-makers':
    'once a year: common practice; twice with much heat, make-up or a small margin: judgement; pH: fluid makers’ sheets, from memory',
  'fluid-life': '10 years, or 1500 h above the limit: judgement; the test decides',
  'expansion-codes': 'IPC 607.3 and UPC 608.3 ask for room to swell, from memory; yearly: judgement',
  'valve-test': 'in-service test of HTM 04-01, supplement D08, from memory; intervals there are shorter in care homes',
  'backflow-codes': 'yearly test: IPC 312.10 and many water works, from memory; EN 1717 in Europe',
  'lightning-codes': 'IEC 62305-3 and NFPA 780, from memory; interval: judgement',
  'tank-makers': 'tank makers’ papers, from memory',
  'alarm-advice': 'monthly test: US Consumer Product Safety Commission, from memory',
};

/** What holds for all of a calendar. */
export const CALENDAR_CAUTION_WORDS: Words<CalendarCautionCode> = {
  'papers-go-first':
    'Makers’ papers, the terms of a guarantee and local rules go before this calendar. It is computed from a model and a year of weather, not from a look at the system.',
  trades: 'Gas, mains electricity, pressure vessels, drinking water and work on roofs are for licensed people.',
  'hot-loop':
    'A loop in sun is hot and under pressure. Owners look, listen and read: they open no valve, vent, cap or drain of it.',
};
