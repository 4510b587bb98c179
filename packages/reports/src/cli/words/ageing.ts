// How fast the heat of a year ages the glycol.

import { withUnit } from '../../shown-units.ts';
import { adviceInWords } from '../../words/advice.ts';
import { designOf } from '../designs.ts';
import { numberOf, quantityOption } from '../option-values.ts';
import { listOf, sentences, table } from '../sheet/model.ts';
import { weatherOf } from '../weather.ts';
import { type Word, weatherOptions } from '../word.ts';

interface AgeingOptions {
  readonly limit?: string;
  readonly ph?: string;
}

/** Hours above temperatures, and when to test. */
export const ageing: Word<AgeingOptions> = {
  usage: 'ageing <design>',
  summary: 'how fast the glycol ages, and when to test it',
  description: 'Counts the hours in which the year’s heat ages the glycol, and says after how many months to test it.',
  example: 'noonloop ageing house.yaml --weather town.csv --ph 7.6',
  formats: [],
  needs: ['weather'],
  options: (command) =>
    weatherOptions(command)
      .option('--limit <temperature>', 'from which it ages fast (default: as in the design)')
      .option('--ph <number>', 'a pH that was measured: what does it mean'),
  run: async ({ files, options, units, progress }) => {
    const { glycolAgeing, glycolVerdict, simulate } = await import('@noonloop/sim-core');
    const design = await designOf(files[0]!);
    await progress.show('reading the weather');
    const weather = await weatherOf(options.weather!, options);
    await progress.show('simulating the year');
    const limit = options.limit === undefined ? {} : { limit: quantityOption(options.limit) };
    const result = glycolAgeing(simulate(design, weather), limit);
    const verdict = options.ph === undefined ? null : glycolVerdict(numberOf('ph', options.ph));
    return {
      sheet: {
        title: `Ageing of the glycol of ${design.name}`,
        blocks: [
          sentences(
            `The year ages it as much as ${result.equivalentHours.toFixed(0)} h at ${withUnit(result.limit, '°C', units)}: test it after ${result.monthsToTest} months.`,
          ),
          ...(verdict === null ? [] : [sentences(`pH ${options.ph}: ${verdict}`)]),
          table(
            'hours',
            [
              { label: 'hotter than', unit: '°C' },
              { label: 'hours', unit: 'h' },
            ],
            result.hoursAbove.map(({ temperature, hours }) => [temperature, hours]),
          ),
          { kind: 'working', title: 'Working', steps: result.steps },
          ...listOf('What to test', adviceInWords(result.notes, units)),
        ],
      },
      data: verdict === null ? result : { ...result, verdict },
    };
  },
};
