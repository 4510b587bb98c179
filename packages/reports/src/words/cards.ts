// Tests to make next, in words: what to do, what one may find, and what can hurt.
import type { CardCode, Doer, OutcomeCode } from '@noonloop/sim-core';
import type { Words } from './fill.ts';

/** Words of a test. */
interface CardWords {
  readonly what: string;
  /** `null` for nothing beyond the cautions of the whole check. */
  readonly caution: string | null;
}

/** Who may do it. */
export const DOER_WORDS: Words<Doer> = { owner: 'you', 'licensed trade': 'the licensed trade only' };

const HOT_PIPES =
  'Pipes and fluid can be hotter than boiling water in sun: touch only for a moment, or use a thermometer.';
const COLD_LOOP =
  'Work for the trade, on a cold loop: at dawn, or with covered panels that have cooled. Hot fluid and steam leave a loop under pressure as soon as it is opened. Owners look, listen and read.';

/** Tests. Common practice, no source. */
export const CARD_WORDS: Readonly<Record<CardCode, CardWords>> = {
  'catch-vessel': {
    what: 'Look at the catch vessel and under the relief valve of the loop, at joints and at the vent: liquid in the vessel, stains, crust, a sweet smell. Mark the level in the vessel and look again in a week.',
    caution: 'Look only, with the face away from the outlet: it may open at any time in sun.',
  },
  'pump-by-ear': {
    what: 'In bright sun around noon, put an ear or a hand to the pump.',
    caution: 'Keep off terminals and wires, also of a module: it is live whenever there is light.',
  },
  'pressure-cold': {
    what: 'Read the pressure at dawn with the panels cold, and compare with the note of the filling ({fill} by the design).',
    caution: 'Read only: a loop is filled by the trade, cold.',
  },
  'pressure-swing': {
    what: 'On a sunny day, read the pressure at dawn and again in the middle of the afternoon.',
    caution: 'Read only, with the face away from the relief valve and its outlet.',
  },
  'pipes-at-noon': {
    what: 'In bright sun around noon, hold a thermometer to the hot and to the cold pipe at the tank.',
    caution: HOT_PIPES,
  },
  'hot-pipe-before-sunrise': {
    what: 'Before sunrise, feel the hot pipe at the tank and a metre or two above it.',
    caution: null,
  },
  'panels-from-the-ground': {
    what: 'Look at the panels from the ground at 9, 12 and 15 o’clock: dirt, fog behind the glass, the shadow of a tree or chimney.',
    caution: 'From the ground only. Glass of standing panels is hot, and roofs are for people with fall protection.',
  },
  'stops-early': {
    what: 'On a sunny day, read the thermometer at the tank’s top when the pump stops while the sun is still on the panels. The high limit of the design is {limit}.',
    caution: 'Do not change or bridge a limit: it keeps the tank from scalding heat and steam.',
  },
  'controller-display': {
    what: 'Read the display of the controller in bright sun: its temperatures, its sign for the pump, and any limit, holiday mode or fault that it shows.',
    caution: 'Read only; settings of limits are for the trade.',
  },
  'tap-by-thermometer': {
    what: 'Run the tap nearest to the heater fully hot for two minutes into a cup with a thermometer in it. It should show about {valve}.',
    caution:
      'Water of {heater} burns {burnHeater}, and a tank in sun may be hotter: keep hands out of the stream and children away.',
  },
  'heater-display': {
    what: 'After a long draw, when the heater has stopped firing, compare the temperature that it shows, or that of its outlet pipe by a clip-on thermometer, with its setting ({heater} by the design).',
    caution:
      'The pipe burns. Do not open the heater or turn its thermostat up: gas, mains and its limits are for the trade.',
  },
  'tank-while-drawing': {
    what: 'In the evening after a sunny day, read the thermometer at the tank’s top, fill a bath, and read it again at once.',
    caution: 'Measure the bath before anybody steps in.',
  },
  gurgling: {
    what: 'When the pump starts in the morning, listen at the pipe beside the tank.',
    caution: null,
  },
  'second-thermometer': {
    what: 'Hold a second thermometer beside each of those on the pipes and the tank, under the same insulation, for ten minutes.',
    caution: HOT_PIPES,
  },
  'module-voltage': {
    what: 'Have the voltage of the PV module measured at the pump in bright sun, with the pump running and with it unplugged.',
    caution:
      'Work for a licensed electrician: a module is live whenever there is light, and direct current draws an arc where it is unplugged under load.',
  },
  'second-pressure-gauge': {
    what: 'Have a second pressure gauge set beside the doubtful one.',
    caution: COLD_LOOP,
  },
  'tank-drain': {
    what: 'Have a bucket drawn from the tank’s drain.',
    caution:
      'Work for a licensed plumber: the water scalds, is under the pressure of the mains, and an old drain may not shut again.',
  },
  'vessel-pin': {
    what: 'Have the pin under the cap of the expansion vessel’s gas valve touched for a moment, and its charge measured with the liquid side shut off and emptied: {precharge} by the design.',
    caution: COLD_LOOP,
  },
  'air-vent': {
    what: 'Have the loop vented at its highest point.',
    caution: COLD_LOOP,
  },
  'coil-by-the-hour': {
    what: 'Have flow, both pipe temperatures and the tank beside the coil noted for an hour of even sun.',
    caution: HOT_PIPES,
  },
};

/** What one may find. */
export const OUTCOME_WORDS: Words<OutcomeCode> = {
  wet: 'liquid, stains or a rising level',
  dry: 'dry, and the level as it was',
  'silent-or-jerking': 'it is silent, or it turns slowly or in jerks',
  hums: 'it hums evenly',
  lower: 'it is lower by more than {fall}',
  'as-filled': 'it is as noted',
  'swings-wide': 'it rises by more than {wideSwing}, or to where the relief valve opens',
  'swings-as-usual': 'it rises by about {usualSwing} or less',
  'cold-or-far-apart': 'both are cold, or the hot one is more than {farApart} warmer',
  'both-hot': 'both are hot, and much hotter than the tank',
  'both-cooler': 'both are cooler than usual, with the usual difference',
  'as-usual': 'the hot one is up to {usualRise} warmer, as this system should have it',
  'warm-at-night': 'it is warm though the pump has stood all night',
  'cold-at-night': 'it is as cold as the room',
  'dirt-fog-or-shadow': 'dirt, fog or shadow',
  'clean-in-sun': 'clean glass in full sun',
  'stops-in-sun': 'it stops well below the limit',
  'runs-on': 'it runs on, or stops at the limit',
  'shows-limit': 'a limit or holiday mode is shown though the tank is not hot',
  'shows-sensor': 'a temperature is impossible, or a sensor is called faulty',
  'shows-running': 'the temperatures are plausible and the pump is shown as running',
  'tap-cool': 'well below that',
  'tap-as-set': 'about that',
  'off-its-setting': 'they differ by more than {offSetting}',
  'at-its-setting': 'they agree',
  'top-falls-at-once': 'the top falls from the first minutes',
  'top-holds': 'the top holds until the hot water is nearly used up',
  gurgles: 'it gurgles or rushes',
  quiet: 'it is quiet',
  differ: 'the two differ',
  agree: 'the two agree',
  'hardly-any-voltage': 'hardly any voltage, or it breaks down when the pump is plugged in',
  'full-voltage': 'the voltage of the module’s label, and it holds',
  'grit-or-slow': 'it runs slowly, or with grit and flakes',
  'runs-clear': 'it runs freely and clear',
  'liquid-or-no-gas': 'liquid comes, or there is hardly any gas',
  'gas-at-its-mark': 'dry gas at its mark',
  'air-comes': 'air comes first',
  'fluid-comes': 'fluid comes at once',
  'far-above-tank': 'the mean of the pipes stays more than {coilGap} above the tank',
  'near-tank': 'it stays nearer',
};
