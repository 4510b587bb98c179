import type { Caution } from './types.ts';

const general = (code: string, advice: string): Caution => ({
  code,
  severity: 'note',
  finding: '',
  advice,
  numbers: [],
  source: 'Common practice, no source',
});

/** Cautions that hold for every system, whatever its numbers. */
export const GENERAL_CAUTIONS: readonly Caution[] = [
  general(
    'roof',
    'Panels with their liquid load the roof, and wind can lift them with more force than their weight: have structure and fixings checked by someone qualified, and work on roofs only with fall protection. Follow the local code.',
  ),
  general(
    'trades',
    'Gas, mains electricity and pressure vessels are work for licensed people. PV modules are live whenever there is light. Follow the local code.',
  ),
  general(
    'steam',
    'Collectors that stand dry or without flow in the sun get far hotter than boiling water. Filling them then makes steam under pressure: cover them or wait for dusk. Keep the way from the collectors to their relief valve open, and pipe its outlet to a catch vessel. Follow the local code.',
  ),
];
