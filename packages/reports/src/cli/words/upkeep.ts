// What is due when, and why.

import type { MaintenanceOptions } from '@noonloop/sim-core';
import { capital } from '../../answer/words.ts';
import { calendarInWords } from '../../words/calendar.ts';
import { designOf } from '../designs.ts';
import { dateOption, numberOf, ofOptions } from '../option-values.ts';
import { cautionBlocks, heading, sentences, wordyTable } from '../sheet/model.ts';
import { weatherOf } from '../weather.ts';
import { choice, type Word, weatherOptions } from '../word.ts';

interface UpkeepOptions {
  readonly from?: string;
  readonly years?: string;
  readonly hardness?: string;
  readonly fluidAge?: string;
  readonly anode?: 'magnesium' | 'powered' | 'none';
  readonly dusty?: boolean;
}

/** The calendar. */
export const upkeep: Word<UpkeepOptions> = {
  usage: 'upkeep <design>',
  summary: 'what is to be looked after, and when',
  description:
    'A calendar of what is to be looked after, from what the simulated year does to pump, glycol, tank and valves.',
  example: 'noonloop upkeep house.yaml --weather town.csv --from 2025-03-01 --hardness 2.8',
  formats: [],
  needs: ['weather', 'from'],
  options: (command) =>
    weatherOptions(command)
      .option('--from <date>', 'first day, YYYY-MM-DD')
      .option('--years <number>', 'how many (default: 3)')
      .option('--hardness <number>', 'hardness of the water, mmol/L (1 mmol/L is 5.6 °dH or 100 mg/L of lime)')
      .option('--fluid-age <years>', 'age of the glycol on the first day (default: 0)')
      .addOption(choice('--anode <kind>', 'in the tank (default: magnesium)', ['magnesium', 'powered', 'none']))
      .option('--dusty', 'rain does not keep the glass clean'),
  run: async ({ files, options, units, progress }) => {
    const { maintenanceCalendar, simulate } = await import('@noonloop/sim-core');
    const design = await designOf(files[0]!);
    dateOption('from', options.from!);
    await progress.show('reading the weather');
    const weather = await weatherOf(options.weather!, options);
    await progress.show('simulating the year');
    const { years, hardness, fluidAge, anode, dusty } = options;
    const given: MaintenanceOptions = {
      from: options.from!,
      ...(years === undefined ? {} : { years: numberOf('years', years) }),
      ...(hardness === undefined ? {} : { waterHardness: numberOf('hardness', hardness) }),
      ...(fluidAge === undefined ? {} : { fluidAge: numberOf('fluid-age', fluidAge) }),
      ...(anode === undefined ? {} : { anode }),
      ...(dusty === undefined ? {} : { dusty }),
    };
    const run = simulate(design, weather);
    const calendar = ofOptions(() => maintenanceCalendar(run, given));
    const words = calendarInWords(calendar, units);
    const nameOf = new Map(words.tasks.map(({ code, name, who }) => [code, `${name} (${who})`]));
    return {
      sheet: {
        title: `Upkeep of ${design.name}, ${calendar.from} to ${calendar.to}`,
        blocks: [
          wordyTable(
            'days',
            [{ label: 'day' }, { label: 'what' }],
            calendar.days.flatMap(({ date, codes }) => codes.map((code) => [date, nameOf.get(code) ?? code])),
          ),
          ...words.tasks.flatMap(({ name, what, every, who, why, basis, caution }) => [
            heading(capital(name)),
            sentences(what),
            sentences(`By ${who}, ${every}. ${why} (${basis})`),
            ...cautionBlocks([caution]),
          ]),
          ...cautionBlocks(words.cautions),
        ],
      },
      data: calendar,
    };
  },
};
