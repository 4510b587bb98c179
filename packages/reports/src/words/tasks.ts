/** Tasks of the maintenance calendar, in words: what to do and what can hurt. */
import type { MaintenanceCode } from '@noonloop/sim-core';

/** Words of a task. */
interface TaskWords {
  /** In a few words. */
  readonly name: string;
  /** What raises it, and how often. */
  readonly raised: string;
  readonly what: string;
  readonly caution: string;
}

const COLD_LOOP =
  'On a cold loop only: at dawn, or with covered panels that have cooled. Hot fluid and steam leave a loop under pressure as soon as it is opened.';
const SAME_MIXTURE = 'What is lost is replaced by mixture of the same strength, never by water alone.';
const FROM_GROUND =
  'From the ground, with binoculars. Roofs only with fall protection; glass of standing panels is hot.';
const TANK_WATER =
  'The tank’s water scalds and is under the pressure of the mains; a drain or valve of an old tank may not shut again.';

/** Tasks. An owner looks, listens, reads and rinses; what opens a part under pressure is for the trade. */
export const TASK_WORDS: Readonly<Record<MaintenanceCode, TaskWords>> = {
  'loop-pressure': {
    name: 'read the loop’s pressure',
    raised: 'Always, every 3 months; every month where the run loses fluid',
    what: 'Read the pressure gauge at dawn with cold panels and write it down; the filling was at {fill}.',
    caution:
      'Read only. A gauge near zero with sun on the panels: leave the system alone until it is cold, and call the trade.',
  },
  'catch-vessel': {
    name: 'look at the catch vessel',
    raised: 'Always, every 3 months; every month above 50 h of stagnation, or where the relief valve opens',
    what: 'Look at the catch vessel, under the relief valve, at joints and at the vent: stains, crust or a rising level are the first sign of a leak or of a vessel without gas. Mark the level.',
    caution: 'Look only, with the face away from the outlet. Never plug it, and leave the liquid to the trade.',
  },
  pump: {
    name: 'listen to the pump',
    raised: 'Always, once a year; twice above 4000 h of running',
    what: 'Listen to the pump at a start and in full sun; note flow and the two pipe temperatures for later comparison.',
    caution: 'Pipes can be hotter than boiling water. Keep off terminals, also of a module: it is live in light.',
  },
  sensors: {
    name: 'compare the thermometers',
    raised: 'Always, every 2 years',
    what: 'Hold a second thermometer beside each of those of the system for ten minutes. Have the pressure gauge compared at the next service.',
    caution: 'Hot surfaces. A pressure gauge is changed by the trade, on a cold loop.',
  },
  'module-cleaning': {
    name: 'rinse the PV module',
    raised: 'A pump on its own module, once a year; every 3 months where it is dusty',
    what: 'Rinse the PV module with water from the ground; look at plug and cable without touching them.',
    caution:
      'Modules are live in light: a bare wire or a broken plug is for an electrician. No cold water on hot glass: rinse in the morning. No work on a roof without fall protection.',
  },
  'roof-look': {
    name: 'look at the panels from the ground',
    raised: 'Always, twice a year',
    what: 'Look at panels, pipe insulation and fixings: fog, cracks, bird damage, loose parts, new shade.',
    caution: FROM_GROUND,
  },
  'winter-look': {
    name: 'make ready for frost',
    raised: 'Frost in the weather file: once a year, 28 days before the first',
    what: 'Make ready for frost: shut off and empty the pipes of outdoor taps, see from the ground that the pipes out of doors are insulated to the last hand’s breadth, and that the fluid’s test of this year is done.',
    caution: 'Do not climb on a roof, least of all an icy one. Do not open the loop.',
  },
  'tap-temperature': {
    name: 'measure at the tap',
    raised: 'Always, every 3 months',
    what: 'Run the tap nearest to the tank fully hot for two minutes into a cup with a thermometer in it, in the evening of a sunny day. It should show {setting} or less than {most}. Hotter, or rising while it runs: shut the tap and have the trade come.',
    caution:
      'The tank may hold water of {hottest}, which burns {burn}; children and the elderly sooner. Hands out of the stream, children away, and do not turn the valve.',
  },
  'tank-relief-look': {
    name: 'look at the relief pipe of the tank',
    raised: 'Always, every 3 months',
    what: 'Look at the end of the discharge pipe of the tank’s relief valve: dry and clear, nothing in its way, no crust.',
    caution:
      'Look only, from the side: scalding water can come at any time. Never plug a pipe that drips: call a plumber.',
  },
  'powered-anode': {
    name: 'look at the anode’s lamp',
    raised: 'A powered anode, every 3 months',
    what: 'Look at the lamp of the powered anode: it should shine as its paper says.',
    caution: 'Leave it plugged in; an open housing is for an electrician.',
  },
  hydrogen: {
    name: 'let hydrogen out after two weeks away',
    raised: 'A magnesium anode: on the day after holidays of two weeks and more',
    what: 'When nobody has drawn hot water for two weeks or more: before anything else, open a hot tap at a sink until it no longer spits or hisses, with the window open. Run dishwasher and washing machine only after that.',
    caution:
      'Hydrogen may have gathered over the magnesium anode: no flame, no smoking, no switch at that sink. The first water can be scalding.',
  },
  'carbon-monoxide-alarm': {
    name: 'test the carbon monoxide alarm',
    raised: 'A heater that burns fuel, every month',
    what: 'Press the test button of the carbon monoxide alarm near the heater and near the bedrooms; fit one where there is none.',
    caution:
      'An alarm that sounds by itself: everybody out, then call the fire brigade. Headache by the heater is a sign too.',
  },
  'glycol-test': {
    name: 'fluid tested',
    raised:
      'Glycol in the loop: once a year, 49 days before the first frost; twice above 100 h over the fluid’s limit, with make-up water, or under 5 K (9 °F) of margin to freezing',
    what: 'Have the fluid tested: freezing point by refractometer, pH, look and smell. Most fresh fluids have a pH of 8 to 10: the maker’s sheet says which. Below 8 it is tested again in half a year; below 7, dark or foul, or too weak for the frost, it is changed. Above what the maker says it is not his fluid, or something was added.',
    caution: `${COLD_LOOP} ${SAME_MIXTURE} Gloves and goggles. Ethylene glycol is poisonous, also to animals; old fluid goes to hazardous waste.`,
  },
  'glycol-change': {
    name: 'fluid changed',
    raised:
      'Glycol in the loop: after 10 years, or 1500 h over its limit with fluid in the collectors; at once where that is past',
    what: 'Have the loop drained, flushed and filled anew with the maker’s fluid at the share of the design ({share} by mass), unless this year’s test is good.',
    caution: `${COLD_LOOP} Filling empty hot collectors makes steam at once. Ethylene glycol is poisonous; old fluid goes to hazardous waste.`,
  },
  'vessel-precharge': {
    name: 'expansion vessel tested',
    raised: 'Always, every 2 years; once a year above 50 h of stagnation, or where the relief valve opens',
    what: 'Have the gas of the expansion vessel measured with its liquid side shut off and emptied, and set to {precharge}.',
    caution: `${COLD_LOOP} A vessel that is not emptied on its liquid side shows a wrong pressure. ${SAME_MIXTURE}`,
  },
  'loop-relief-valve': {
    name: 'relief valve of the loop tested',
    raised: 'Always, once a year after the month with most stagnation',
    what: 'Have the relief valve of the loop ({relief}) lifted once so that it does not stick, and see that it shuts.',
    caution: `${COLD_LOOP} The outlet leads to a catch vessel and is never closed; nothing that shuts stands between collectors and valve.`,
  },
  strainer: {
    name: 'strainer rinsed',
    raised: 'Always, every 2 years; once a year where the loop boils',
    what: 'Have the strainer shut off, opened and rinsed, and the loop refilled and vented.',
    caution: `${COLD_LOOP} ${SAME_MIXTURE} Without a valve on either side the loop must be emptied first.`,
  },
  'backflow-preventer': {
    name: 'backflow preventer tested',
    raised: 'Glycol in the loop, or make-up water: once a year',
    what: 'Have the backflow preventer of the fill line tested by a certified tester, and the hose taken off where the code wants it so after filling. A coil between poisonous fluid and drinking water has two walls where the code asks for it.',
    caution: 'Fluid that runs back into the mains poisons people. Keep to the water works’ rules.',
  },
  flush: {
    name: 'tank flushed',
    raised: 'Always, once a year; twice from 2.5 mmol/L of hardness (250 mg/L as CaCO3)',
    what: 'Have the tank flushed at its drain until it runs clear.',
    caution: TANK_WATER,
  },
  descale: {
    name: 'tank opened and descaled',
    raised: 'Always, every 4 years; every 2 with hard water and 1000 h above 60 °C (140 °F), every 6 with soft water',
    what: 'Have the tank opened, coil and floor looked at and descaled if need be.',
    caution: `${TANK_WATER} Descaling acid burns and must not reach drinking water. The tank is disinfected after opening (legionella).`,
  },
  'tank-relief-valve': {
    name: 'relief valve of the tank tested',
    raised: 'Always, once a year; twice where it opens in the run',
    what: 'Have the tank’s temperature and pressure relief valve ({relief}) lifted: it must run freely and shut, and its pipe must be open.',
    caution: `Scalding water shoots out of the pipe. ${TANK_WATER}`,
  },
  'potable-expansion': {
    name: 'room for the tank’s water to swell',
    raised: 'Always, once a year',
    what: 'Have it looked at where the tank’s water goes when it swells: by {swell} from {cold} to {hot}. Behind a check valve, a pressure reducer or a backflow preventer it needs an expansion vessel for drinking water, of which the charge is tested, or a valve made for it.',
    caution:
      'Without room to swell the pressure lifts the relief valve or bursts the tank. A relief valve that drips each sunny day is a sign of it.',
  },
  'heater-inlet': {
    name: 'what the heater behind may get',
    raised: 'Water above 60 °C (140 °F) drawn into a heater behind the tank: every 5 years',
    what: 'Have it found out up to which inlet temperature the heater behind, its valves and the plastic pipes are permitted: the tank sends it up to {hottest}. Where that is too hot, a mixing valve belongs before the heater, and pipes made for it.',
    caution:
      'Plastic pipes and heaters that get water hotter than they are made for burst and scald. Gas and mains are for licensed people.',
  },
  anode: {
    name: 'anode measured',
    raised: 'A magnesium anode, every 2 years; once a year above 2000 h over 60 °C (140 °F), or with soft water',
    what: 'Have the anode’s current measured, or the anode taken out; it is renewed when two thirds are gone.',
    caution: `${TANK_WATER} Shut off and without pressure before the tank is opened; no flame: hydrogen may come out.`,
  },
  'mixing-valve': {
    name: 'mixing valve tested',
    raised: 'A mixing valve, once a year; twice with hard water',
    what: 'Have the mixing valve tested in service: mixed water within 2 K of its setting of {setting} at the nearest tap; then the cold supply to the valve is shut, and the hot water must stop or stay within its limit within some seconds. Strainers and check valves of the valve are cleaned.',
    caution:
      'While the cold supply is shut, water of up to {hottest} may come, which burns {burn}: nobody but the tester at any tap of that valve. The setting is changed only by someone who measures.',
  },
  flue: {
    name: 'burner and flue looked at',
    raised: 'A heater that burns fuel, once a year',
    what: 'Have burner, flue, draught and combustion air of the heater looked at, and carbon monoxide measured. A heater that fires less behind a solar tank condenses more in its flue.',
    caution:
      'Work for a licensed gas or oil fitter. Soot, rust or moisture at the flue: leave the heater off until he has come.',
  },
  bonding: {
    name: 'bonding and lightning',
    raised: 'Always, every 5 years, and after lightning',
    what: 'Have an electrician look at the bonding of panels, frames, pipes and module, and at surge protection; at once after a stroke of lightning near by.',
    caution: 'No work on roof, module or pump with a thunderstorm about. Modules are live in light.',
  },
};
