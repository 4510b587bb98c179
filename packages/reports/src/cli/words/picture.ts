// One chart of one design or several.
import type { ChartName } from '../../charts/chart.ts';
import { nearest } from '../../nearest.ts';
import { designOf } from '../designs.ts';
import { EXIT, Refusal } from '../exit-codes.ts';
import { checkTarget } from '../files.ts';
import { numberOf } from '../option-values.ts';
import { deliver, targetOf } from '../output.ts';
import { weatherOf } from '../weather.ts';
import { outputOptions, unitsOption, type Word, weatherOptions } from '../word.ts';

/** A chart as SVG. */
export const picture: Word<{ readonly width?: string }> = {
  usage: 'picture <chart> <designs...>',
  summary: 'one chart as SVG: months, energy flow, a week, layers of the tank, …',
  description: `Simulates one design or several and draws one chart. Charts: ${[
    'comparison',
    'monthly-energy',
    'month-multiples',
    'energy-flow',
    'tank-year',
    'absorber-year',
    'flow-year',
    'tank-duration',
    'summer-week',
    'tank-layers',
    'winter-week',
    'pump-map',
  ].join(', ')}.`,
  example: 'noonloop picture tank-layers house.yaml --weather town.csv --out layers.svg',
  needs: ['weather'],
  options: (command) =>
    weatherOptions(unitsOption(outputOptions(command))).option('--width <pixels>', 'of the picture (default: 960)'),
  run: async ({ files, options, units, terminal, progress }) => {
    const [name, ...paths] = files;
    const target = targetOf(options.out, options.force);
    if (target !== null) await checkTarget(target);
    const { chart, CHART_NAMES } = await import('../../charts/chart.ts');
    requireChart(name!, CHART_NAMES);
    const designs = [];
    for (const path of paths) designs.push(await designOf(path));
    await progress.show('reading the weather');
    const weather = await weatherOf(options.weather!, options);
    const { simulate } = await import('@noonloop/sim-core');
    await progress.show('simulating');
    const runs = designs.map((design) => simulate(design, weather, { keepTankNodes: name === 'tank-layers' }));
    await progress.show('drawing');
    const width = options.width === undefined ? {} : { width: numberOf('width', options.width) };
    const svg = await chart(name as ChartName, runs, { units, ...width });
    progress.clear();
    await deliver(svg, target, terminal, options.quiet === true);
    return undefined;
  },
};

function requireChart(name: string, names: readonly string[]): void {
  if (names.includes(name)) return;
  const near = nearest(name, names);
  const hint = near === null ? '' : ` Did you mean ${near}?`;
  throw new Refusal(EXIT.usage, [
    `found the chart "${name.slice(0, 40)}", expected one of ${names.join(', ')}.${hint}`,
  ]);
}
