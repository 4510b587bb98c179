/** The best start: the line of the working, and what to do. */
import { type Fact, fact, type Saying, say } from '../../input/saying.ts';
import { line, type WorkingStep } from '../../input/working.ts';
import type { AdviceCode } from '../advice-codes.ts';
import type { BestPumpStart, PumpStart } from './pump-start.ts';

/** Share of the year's heat from which a better start, or a controller, is worth a word; judgement. [-] */
const WORTH_A_WORD = 0.01;

const light = ({ irradiance }: PumpStart): Fact => (irradiance === null ? 'none' : fact(irradiance, 'W/m²'));

/** Lines of the working. */
export function startSteps({ asDesigned, best, lossAtHalf, lossAtTwice, rows }: BestPumpStart): WorkingStep[] {
  const lit = rows.filter(({ irradiance }) => irradiance !== null);
  return [
    line('pump-best-start', [best.irradiance ?? 0, 'W/m²'], {
      tried: [lit.map(({ irradiance }) => irradiance!), 'W/m²'],
      delivered: [lit.map((row) => row.delivered), 'J'],
      designed: asDesigned.irradiance === null ? 'none' : [asDesigned.irradiance, 'W/m²'],
      asDesigned: [asDesigned.delivered, 'J'],
      half: lossAtHalf === null ? 'not run' : [lossAtHalf, 'J'],
      twice: lossAtTwice === null ? 'not run' : [lossAtTwice, 'J'],
    }),
  ];
}

/** What to do. */
export function startNotes({ asDesigned, best, by, withController }: BestPumpStart): Saying<AdviceCode>[] {
  const notes: Saying<AdviceCode>[] = [];
  const gain = best.delivered - asDesigned.delivered;
  if (gain > WORTH_A_WORD * asDesigned.delivered) {
    const isThreshold = by === 'threshold' && best.startPower !== null;
    notes.push(
      say(isThreshold ? 'better-threshold' : 'better-module', {
        best: light(best),
        designed: light(asDesigned),
        power: fact(isThreshold ? best.startPower! : best.modulePower, 'W electric'),
        gain: fact(gain, 'J'),
        back: fact(best.heatGivenBack, 'J'),
        backBefore: fact(asDesigned.heatGivenBack, 'J'),
      }),
    );
  }
  const beyond = withController.delivered - best.delivered;
  if (beyond > WORTH_A_WORD * best.delivered) notes.push(say('controller-is-better', { gain: fact(beyond, 'J') }));
  return notes;
}
