// One design through several years of weather: the worst, the typical and the best.
import type { RunResult } from '@noonloop/sim-core';
import { withUnit } from '../../shown-units.ts';
import { summarize } from '../../summary.ts';
import { designOf } from '../designs.ts';
import { EXIT, Refusal } from '../exit-codes.ts';
import { type Column, sentences, table } from '../sheet/model.ts';
import { yearsOfWeather } from '../weather.ts';
import { runningOptions, type Word } from '../word.ts';

interface Outcome {
  readonly weather: string;
  readonly summary: ReturnType<typeof summarize>['year'];
}

/** Ranks the years by heat delivered. */
export const years: Word = {
  usage: 'years <design> <weather...>',
  summary: 'one design in several years: worst, typical, best',
  description:
    'Simulates a design in each of several years of weather, which may stand in one file or in several, and says the worst, the typical (the middle one) and the best by heat delivered.',
  example: 'noonloop years house.yaml town.csv town-2.csv town-3.csv --units us',
  formats: [],
  options: runningOptions,
  run: async ({ files, options, units, progress }) => {
    const [file, ...weathers] = files;
    const design = await designOf(file!);
    await progress.show('reading the weather');
    const all = await yearsOfWeather(weathers, options);
    if (all.length < 2)
      throw new Refusal(EXIT.input, [`found one year of weather, expected two or more. Name more files.`]);
    const { simulate } = await import('../core.ts');
    const outcomes: Outcome[] = [];
    for (const [at, year] of all.entries()) {
      await progress.show(`simulating ${at + 1} of ${all.length}: ${year.source}`);
      const run: RunResult = simulate(design, year);
      outcomes.push({ weather: labelOf(year.source, year.calendarYears, all.length), summary: summarize(run).year });
    }
    const [worst, typical, best] = worstTypicalBest(outcomes);
    const chosen: [string, Outcome][] = [
      ['worst', worst],
      ['typical', typical],
      ['best', best],
    ];
    const heat = ({ summary }: Outcome) => withUnit(summary.deliveredEnergy, 'J', units);
    const row = ({ weather, summary }: Outcome) => [
      weather,
      summary.deliveredEnergy,
      summary.solarFraction,
      summary.heaterFuel,
      summary.stagnationHours,
      summary.peakTankTemperature,
    ];
    return {
      sheet: {
        title: design.name,
        blocks: [
          sentences(
            `The sun gives ${heat(worst)} in the worst of ${all.length} years, ${heat(typical)} in the typical one and ${heat(best)} in the best.`,
          ),
          table(
            'span',
            [{ label: '' }, ...COLUMNS],
            chosen.map(([word, outcome]) => [word, ...row(outcome)]),
          ),
          table('years', COLUMNS, outcomes.map(row)),
        ],
      },
      data: {
        design: design.name,
        worst,
        typical,
        best,
        years: outcomes,
      },
    };
  },
};

/** Of two or more by heat delivered: the least, the middle one or the lower of both in the middle, the most. @internal */
export function worstTypicalBest(outcomes: readonly Outcome[]): [Outcome, Outcome, Outcome] {
  const ranked = [...outcomes].sort((a, b) => a.summary.deliveredEnergy - b.summary.deliveredEnergy);
  return [ranked[0]!, ranked[Math.floor((ranked.length - 1) / 2)]!, ranked.at(-1)!];
}

const COLUMNS: readonly Column[] = [
  { label: 'weather' },
  { label: 'delivered', unit: 'J' },
  { label: 'share of the sun', unit: '%' },
  { label: 'fuel of the heater', unit: 'J' },
  { label: 'stagnation', unit: 'h' },
  { label: 'hottest tank', unit: '°C' },
];

/** A file that holds several years gives each its number. */
function labelOf(source: string, calendarYears: Int16Array, count: number): string {
  const last = calendarYears.at(-1)!;
  return count > 1 && calendarYears.every((year) => year === last) ? `${source}, ${last}` : source;
}
