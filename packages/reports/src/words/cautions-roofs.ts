/** Sentences of the cautions about odd roofs: modules in series, loops that drain or hold water. */
import type { CautionText } from './caution-text.ts';
import { WHO } from './who.ts';

export const ROOF_WORDS = {
  'module-voltage': {
    severity: ['danger'],
    raised: 'modules in series have more than 60 V at open circuit on a frosty morning',
    short: 'the modules in series reach {volts}',
    says: {
      found: '{count} modules in series have {volts} at open circuit with cells at {cold}.',
      act: 'From 60 V direct current can kill, and it is there whenever there is light. Have them wired by an electrician, with the plugs and the switch that such a voltage asks for, or put modules side by side instead.',
    },
    who: WHO.electrician,
    source:
      'Limit of 60 V of direct current for what may be touched: IEC 60364-4-41 (from memory); cells at {cold}: judgement',
  },
} as const satisfies Readonly<Record<string, CautionText>>;
