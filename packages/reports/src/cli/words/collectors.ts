// Used plates or new tubes: what each gives on one roof for its price and weight.
import type { CollectorComparisonInput, SystemInput } from '@noonloop/sim-core';
import { adviceInWords } from '../../words/advice.ts';
import { writtenDesign } from '../designs.ts';
import { checked } from '../settings/check.ts';
import { readSettings } from '../settings-file.ts';
import { listOf, sentences, table } from '../sheet/model.ts';
import { weatherOf } from '../weather.ts';
import { type Word, weatherOptions } from '../word.ts';

/** Sets collectors against each other in one house. */
export const collectors: Word<{ readonly candidates?: string }> = {
  usage: 'collectors <design>',
  summary: 'plates against tubes on one roof, with price and weight',
  description:
    'Puts each of the collectors of a file on the roof of a design and ranks them by heat, by heat from the roof’s area, by money, weight and heat of a dry panel.',
  example: 'noonloop collectors house.yaml --candidates panels.yaml --weather town.csv',
  formats: [],
  needs: ['weather', 'candidates'],
  options: (command) =>
    weatherOptions(command).option('-c, --candidates <file>', 'YAML or JSON with what may be bought'),
  run: async ({ files, options, units, progress }) => {
    const { compareCollectors } = await import('@noonloop/sim-core');
    const { input, design } = await writtenDesign(files[0]!);
    const settings = await readSettings(options.candidates!);
    await progress.show('reading the weather');
    const weather = await weatherOf(options.weather!, options);
    await progress.show('simulating each collector');
    const { rows, ranking, notes } = await checked(settings, 'collectors', (fields) =>
      compareCollectors(input as SystemInput, weather, fields as unknown as CollectorComparisonInput),
    );
    const said: readonly (readonly [string, readonly string[]])[] = [
      ['Most heat', ranking.heat],
      ['Most heat from an area of roof', ranking.heatPerRoof],
      ['Least money for the heat of all years', ranking.moneyPerHeat],
      ['Least weight', ranking.weight],
      ['Coolest when dry in full sun', ranking.stagnationTemperature],
    ];
    return {
      sheet: {
        title: `Collectors for ${design.name}`,
        blocks: [
          sentences(
            `${ranking.moneyPerHeat[0]} gives its heat for the least money, ${ranking.heat[0]} gives the most, ${ranking.weight[0]} is the lightest.`,
          ),
          table(
            'collectors',
            [
              { label: 'collectors' },
              { label: 'price' },
              { label: 'roof', unit: 'm²' },
              { label: 'weight', unit: 'kg' },
              { label: 'heat a year', unit: 'J' },
              { label: 'heat of an area of roof', unit: 'J/m²' },
              { label: 'money for heat', unit: '1/J' },
              { label: 'stagnation', unit: 'h' },
              { label: 'hottest absorber', unit: '°C' },
              { label: 'dry in full sun', unit: '°C' },
            ],
            rows.map((row) => [
              row.name,
              row.price,
              row.roofArea,
              row.weight,
              row.heat,
              row.heatPerRoof,
              row.moneyPerHeat,
              row.stagnationHours,
              row.hottestAbsorber,
              row.stagnationTemperature,
            ]),
          ),
          ...listOf(
            'Best first',
            said.map(([words, names]) => `${words}: ${names.join(', ')}`),
          ),
          ...listOf('Before you buy', adviceInWords(notes, units)),
        ],
      },
      // The years themselves are a report each: "noonloop run".
      data: { rows: rows.map(({ run: _, ...row }) => row), ranking, notes },
    };
  },
};
