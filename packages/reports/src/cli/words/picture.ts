// One chart of one design or several.
import type { ChartName } from '../../charts/chart.ts';
import type { MoneyGiven } from '../../money/types.ts';
import { nearest } from '../../nearest.ts';
import { designOf } from '../designs.ts';
import { EXIT, Refusal } from '../exit-codes.ts';
import { checkTarget } from '../files.ts';
import { numberOf } from '../option-values.ts';
import { deliver, targetOf } from '../output.ts';
import { checked } from '../settings/check.ts';
import { readSettings } from '../settings-file.ts';
import { weatherOf } from '../weather.ts';
import { outputOptions, unitsOption, type Word, weatherOptions } from '../word.ts';

/** Every chart and what it shows. */
const CHARTS: Readonly<Record<ChartName, string>> = {
  'monthly-energy': 'heat month by month',
  'energy-flow': 'where the heat goes',
  'money-years': 'money year by year, with --prices',
  'tank-year': 'the tank through the year',
  'tank-duration': 'how long the tank is how hot',
  'hottest-week': 'hour by hour',
  'coldest-week': 'hour by hour',
  'hard-hours': 'hours that are hard on it',
  pump: 'light, power and flow',
};

const NAMES = Object.keys(CHARTS);

/** A chart as SVG. */
export const picture: Word<{ readonly width?: string; readonly prices?: string }> = {
  usage: 'picture <chart> <designs...>',
  summary: 'one chart as SVG: months, where the heat goes, a week, the tank',
  description: `Simulates one design or several and draws one chart: ${Object.entries(CHARTS)
    .map(([name, words]) => `${name} (${words})`)
    .join(', ')}.`,
  example: 'noonloop picture monthly-energy house.yaml --weather town.csv --out months.svg',
  needs: ['weather'],
  options: (command) =>
    weatherOptions(unitsOption(outputOptions(command)))
      .option('--prices <file>', 'YAML or JSON with prices')
      .option('--width <pixels>', 'of the picture (default: that of the chart)'),
  run: async ({ files, options, units, terminal, progress }) => {
    const [name, ...paths] = files;
    requireChart(name!);
    const target = targetOf(options.out, options.force);
    if (target !== null) await checkTarget(target);
    const designs = [];
    for (const path of paths) designs.push(await designOf(path));
    const money =
      options.prices === undefined
        ? {}
        : await checked(await readSettings(options.prices), 'prices', (fields) => ({
            money: fields as unknown as MoneyGiven,
          }));
    await progress.show('reading the weather');
    const weather = await weatherOf(options.weather!, options);
    const { simulate } = await import('../core.ts');
    await progress.show('simulating');
    const runs = designs.map((design) => simulate(design, weather));
    await progress.show('drawing');
    const { chart } = await import('../../charts/chart.ts');
    const width = options.width === undefined ? {} : { width: numberOf('width', options.width) };
    const svg = await chart(name as ChartName, runs, { units, ...width, ...money });
    progress.clear();
    await deliver(svg, target, terminal, options.quiet === true);
    return undefined;
  },
};

function requireChart(name: string): void {
  if (NAMES.includes(name)) return;
  const near = nearest(name, NAMES);
  const hint = near === null ? '' : ` Did you mean ${near}?`;
  throw new Refusal(EXIT.usage, [
    `found the chart "${name.slice(0, 40)}", expected one of ${NAMES.join(', ')}.${hint}`,
  ]);
}
