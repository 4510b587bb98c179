// A leak that is topped up with water: until which day does the glycol protect?

import { withUnit } from '../../shown-units.ts';
import { designOf } from '../designs.ts';
import { EXIT, Refusal } from '../exit-codes.ts';
import { dateOption, dayOfYear, quantityOption } from '../option-values.ts';
import { sentences, table } from '../sheet/model.ts';
import { weatherOf } from '../weather.ts';
import { type Word, weatherOptions } from '../word.ts';

interface ThinningOptions {
  readonly leak?: string;
  readonly from?: string;
  readonly coldest?: string;
}

const DAY = 86_400_000;

/** Days and dates of a thinning loop. */
export const thinningWord: Word<ThinningOptions> = {
  usage: 'thinning <design>',
  summary: 'until when a leaking, topped-up loop is protected',
  description:
    'A loop that loses fluid and is topped up with water thins its glycol. Says on which date it freezes at the coldest hour of the site, and on which it may burst a pipe.',
  example: 'noonloop thinning house.yaml --weather town.csv --leak "0.05 L/day" --from 2025-10-01',
  formats: [],
  needs: ['leak'],
  options: (command) =>
    weatherOptions(command)
      .option('--leak <flow>', 'what seeps out and is made up, such as "0.05 L/day"')
      .option('--from <date>', 'day of filling, YYYY-MM-DD (default: 1 January)')
      .option('--coldest <temperature>', 'that the fluid must bear; default the coldest hour of --weather'),
  run: async ({ files, options, units, progress }) => {
    const { glycolForSite, thinning } = await import('@noonloop/sim-core');
    const design = await designOf(files[0]!);
    if (options.coldest === undefined && options.weather === undefined)
      throw new Refusal(EXIT.usage, ['thinning needs --weather, or --coldest.']);
    await progress.show('reading the weather');
    const coldest =
      options.coldest === undefined
        ? glycolForSite(design, await weatherOf(options.weather!, options)).coldest
        : quantityOption(options.coldest);
    const start = options.from === undefined ? null : dateOption('from', options.from);
    const filledOn = start === null ? 0 : dayOfYear(start);
    const result = thinning(design, { leak: quantityOption(options.leak!), coldest, filledOn });
    const after = (days: number | null): string | null =>
      start === null || days === null ? null : new Date(start + Math.floor(days) * DAY).toISOString().slice(0, 10);
    const dates = { freezing: after(result.daysToFreezing), bursting: after(result.daysToBursting) };
    const when = (days: number | null, date: string | null) =>
      days === null
        ? 'on no day that the tables reach'
        : `after ${Math.floor(days)} days${date === null ? '' : `, on ${date}`}`;
    return {
      sheet: {
        title: `Thinning of ${design.name}`,
        blocks: [
          sentences(
            `Protection at ${typeof coldest === 'number' ? withUnit(coldest, '°C', units) : coldest} ends ${when(result.daysToFreezing, dates.freezing)}; pipes may split ${when(result.daysToBursting, dates.bursting)}.`,
          ),
          table(
            'months',
            [
              { label: 'days' },
              { label: 'date' },
              { label: 'glycol by mass', unit: '%' },
              { label: 'first ice', unit: '°C' },
              { label: 'bursting', unit: '°C' },
            ],
            result.months.map((month) => [
              month.days,
              after(month.days) ?? '',
              month.massFraction,
              month.freezingPoint,
              month.burstPoint,
            ]),
          ),
          { kind: 'working', title: 'Working', steps: result.steps },
        ],
      },
      data: { ...result, coldest, dates },
    };
  },
};
