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
  'drain-slope': {
    severity: ['note'],
    raised: 'the loop drains back (`loop.layout`)',
    short: 'what drains back must slope all the way',
    says: {
      found: 'The loop empties {times} times a year into its vessel, {content} each time.',
      act: 'Every pipe and panel above the vessel must fall towards it, 2 % and more, without a low spot, and the vessel must hold it all: water that stays behind bursts the panel in the first frost. Have it emptied and looked at before winter, and keep the pump’s controller from running in frost.',
    },
    who: WHO.loop,
    source: 'Slope of 2 %: common practice, no source',
  },
  'refill-steam': {
    severity: ['danger'],
    raised: 'a loop that was empty fills so hot that water flashes',
    short: 'water meets collectors hotter than boiling water',
    says: {
      found: '{times} times in the year the pump fills collectors so hot that water flashes to steam.',
      act: 'It bangs, spits from the vent and strains joints. Have a controller fitted that does not start above some {limit} at the collectors, and the vent piped where nobody stands.',
    },
    who: WHO.loop,
    source: 'Boiling at the pressure of the air; {limit}: judgement',
  },
  'direct-loop': {
    severity: ['danger', 'warning'],
    raised: 'the tank’s own water runs through the collectors (`loop.layout`); a danger where it freezes in them',
    short: 'drinking water runs through the collectors',
    says: {
      freezes:
        'Water stands in collectors or outdoor pipes below freezing for {hours} of the year, down to {coldest}: it bursts them.',
      drains:
        'The loop drains to waste {times} times in the year, {content} each time; a valve that sticks once costs the panels.',
      act: 'This is for places without frost. In strong sun the tank gets water hot enough to scald: have a mixing valve at its outlet. Hard water fills the panels with lime, and only parts made for drinking water may touch it. Water that stands lukewarm in panels breeds legionella.',
    },
    who: WHO.plumber,
    source: 'Common practice, no source',
  },
} as const satisfies Readonly<Record<string, CautionText>>;
