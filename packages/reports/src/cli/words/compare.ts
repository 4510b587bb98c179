// Two designs or more, side by side.
import { NUMBER_KEYS } from '../../definitions.ts';
import { CASE_KEYS } from '../../money/definitions.ts';
import { EXIT, Refusal } from '../exit-codes.ts';
import { choice, type Word } from '../word.ts';
import { type RunOptions, reportOptions, runDesigns } from './run.ts';

/** Several designs. */
export const compare: Word<RunOptions> = {
  usage: 'compare <designs...>',
  summary: 'set two or more designs side by side',
  description: 'Simulates two or more designs in the same weather and sets them side by side.',
  example: 'noonloop compare house.yaml three.yaml --weather town.csv --rank-by deliveredEnergy --out both.html',
  needs: ['weather'],
  options: (command) =>
    reportOptions(command)
      .addOption(
        choice('--against <design>', 'what differences are taken against (default: first)', ['first', 'previous']),
      )
      .addOption(choice('--rank-by <number>', 'number by which they are ranked', [...NUMBER_KEYS, ...CASE_KEYS])),
  run: (call) => {
    if (call.files.length < 2) throw new Refusal(EXIT.usage, ['compare takes two designs or more.']);
    return runDesigns(call);
  },
};
