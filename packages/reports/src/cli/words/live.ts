// A page to turn knobs on, as one file.
import type { LivePageOptions } from '../../live/render.ts';
import { writtenDesign } from '../designs.ts';
import { checkTarget } from '../files.ts';
import { deliver, targetOf } from '../output.ts';
import { checked } from '../settings/check.ts';
import { readSettings } from '../settings-file.ts';
import { weatherOf } from '../weather.ts';
import { outputOptions, unitsOption, type Word, weatherOptions } from '../word.ts';

interface LiveOptions {
  readonly prices?: string;
  readonly title?: string;
}

/** Writes the page. */
export const live: Word<LiveOptions> = {
  usage: 'live [design]',
  summary: 'a page to turn knobs on: every change shows the new year at once',
  description:
    'Writes one HTML file with the weather and everything that simulates in it. Opened from a disk, without a network, it runs the whole year at each turn of a knob. The knobs begin at the design, or at a common system without one.',
  example: 'noonloop live house.yaml --weather town.csv --prices prices.yaml --out live.html',
  needs: ['weather'],
  options: (command) =>
    weatherOptions(unitsOption(outputOptions(command)))
      .option('--prices <file>', 'YAML or JSON with prices; without it they are typed on the page')
      .option('--title <words>', "over the page (default: the design's name)"),
  run: async ({ files, options, units, terminal, progress }) => {
    const target = targetOf(options.out, options.force);
    if (target !== null) await checkTarget(target);
    const design = files[0] === undefined ? {} : { design: (await writtenDesign(files[0])).input };
    const prices = options.prices === undefined ? null : await readSettings(options.prices);
    await progress.show('reading the weather');
    const weather = await weatherOf(options.weather!, options);
    const { title } = options;
    const given = { ...design, weather, units, ...(title === undefined ? {} : { title }) };
    const { renderLivePage } = await import('../../live/render.ts');
    await progress.show('making the page');
    const text =
      prices === null
        ? await renderLivePage(given)
        : await checked(prices, 'prices', (fields) =>
            renderLivePage({ ...given, money: fields as unknown as NonNullable<LivePageOptions['money']> }),
          );
    progress.clear();
    await deliver(text, target, terminal, options.quiet === true);
    return undefined;
  },
};
