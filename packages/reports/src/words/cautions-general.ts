/** Sentences of the cautions that hold for every system. */
import type { CautionText } from './caution-text.ts';
import { WHO } from './who.ts';

export const GENERAL_WORDS = {
  roof: {
    severity: ['note'],
    raised: 'always',
    short: 'the panels weigh {least} to {most}',
    says: {
      found: '{area} of panels weigh some {least} to {most} with liquid and fixings; snow and wind come on top.',
      act: 'Wind can lift panels with more force than their weight: have structure and fixings checked, by the weight in the panel’s own papers, and work on roofs only with fall protection.',
    },
    who: WHO.roofer,
    source: '{lightest} to {heaviest} with liquid and fixings: judgement, from memory of makers’ papers',
  },
  trades: {
    severity: ['note'],
    raised: 'always',
    short: 'gas, mains power and pressure are for licensed people',
    says: {
      electric: 'The backup heater draws up to {power} from the mains.',
      burner: 'The backup heater burns fuel for up to {power} of heat.',
      pump: 'The pump runs on the mains.',
      act: 'Gas, mains electricity and pressure vessels are work for licensed people. PV modules are live whenever there is light.',
    },
    who: WHO.trades,
    source: 'Common practice, no source',
  },
  flue: {
    severity: ['note'],
    raised: 'the backup heater burns a fuel',
    short: 'the heater burns fuel',
    says: {
      act: 'Burning makes carbon monoxide, which kills without smell: the flue must draw, and a heater that fires less in sun must not be left with a flue that sweats and rusts. Have it looked at every year, and keep alarms for carbon monoxide.',
    },
    who: WHO.gasFitter,
    source: 'Common practice, no source',
  },
  steam: {
    severity: ['note'],
    raised: 'always',
    short: 'standing collectors are hotter than boiling water',
    says: {
      found: 'The absorber reaches {peak} ({when}).',
      reckoned:
        'Dry in full sun its pipes, vents, seals and insulation must stand {dry}: what the coefficients give and {short} more, by which a certificate’s stated value lay above them. Where the panel’s papers state a stagnation temperature, go by that.',
      stated: 'Dry in full sun its pipes, vents, seals and insulation must stand {dry}, as its papers state.',
      act: 'Collectors that stand dry or without flow in the sun get far hotter than boiling water. Filling them then makes steam under pressure: cover them since the evening, or fill before sunrise. Keep the way from the collectors to their relief valve open, and pipe its outlet to a catch vessel.',
    },
    who: WHO.loop,
    source: 'Common practice, no source; margin on the coefficients: certificate DS_3663',
  },
  bonding: {
    severity: ['note'],
    raised: 'always',
    short: 'metal on the roof wants bonding',
    says: {
      act: 'Frames, pipes and module frames on the roof are metal: have them bonded to the house’s earth, and led into its lightning protection where there is one.',
    },
    who: WHO.electrician,
    source: 'Common practice; NEC articles 250 and 690 (from memory)',
  },
  backflow: {
    severity: ['warning', 'note'],
    raised: 'always; a caution where the design has make-up water (`loop.makeUp`)',
    short: 'mains water and loop fluid must be kept apart',
    says: {
      found: 'The loop is fed with mains water by itself.',
      act: 'A connection from the mains to the loop needs a backflow preventer, and is taken off after filling where the code says so; some codes ask for an exchanger with two walls.',
    },
    who: WHO.plumber,
    source: 'Common practice; codes on backflow and double walls differ',
  },
} as const satisfies Readonly<Record<string, CautionText>>;
