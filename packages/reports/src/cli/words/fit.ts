// A design brought to what the gauges of the house say.
import type { FittedKey } from '@noonloop/sim-core';
import { converted, digits, unitIn } from '../../shown-units.ts';
import { calibrationInWords } from '../../words/calibration.ts';
import { designOf } from '../designs.ts';
import { EXIT, Refusal } from '../exit-codes.ts';
import { blaming } from '../in-words.ts';
import { notebookOf } from '../logs.ts';
import { listOf, sentences, table } from '../sheet/model.ts';
import { yamlLines } from '../sheet/yaml-lines.ts';
import { weatherOf } from '../weather.ts';
import { type Word, weatherOptions } from '../word.ts';

interface FitOptions {
  readonly log?: string;
  readonly fit?: string;
  readonly designOut?: string;
}

const KEYS = ['eta0', 'collectorLoss', 'tankLoss', 'heaterLoss', 'draw'] as const;

/** Calibrates. */
export const fit: Word<FitOptions> = {
  usage: 'fit <design>',
  summary: 'fit a design to a notebook of gauge readings',
  description:
    'Fits collector, losses and draw of a design to gauge readings in the weather of their weeks, each with its uncertainty, and writes the fitted design. A faulty system bends the values: look with check-log first.',
  example: 'noonloop fit house.yaml --weather town.csv --log log.yaml --fit eta0,draw --design-out fitted.yaml',
  formats: [],
  needs: ['weather', 'log'],
  writes: ['design-out'],
  options: (command) =>
    weatherOptions(command)
      .option('-l, --log <file>', 'YAML or JSON that names the table of readings and its layout')
      .option('--fit <list>', `what is fitted: some of ${KEYS.join(', ')} (default: eta0,tankLoss,draw)`)
      .option('--design-out <file>', 'write the fitted design; - for standard output'),
  run: async ({ files, options, units, progress }) => {
    const { calibrate } = await import('@noonloop/sim-core');
    const design = await designOf(files[0]!);
    const { settings, log, known } = await notebookOf(options.log!);
    await progress.show('reading the weather');
    const weather = await weatherOf(options.weather!, options);
    await progress.show('fitting: this takes a while');
    const keys = options.fit === undefined ? {} : { fit: keysOf(options.fit) };
    const result = await blaming(settings, () => calibrate(design, weather, log, { ...known, ...keys }));
    const { parameters, fitBefore, fitAfter, correlation, design: fitted } = result;
    const words = calibrationInWords(result, units);
    return {
      sheet: {
        title: `${design.name}, fitted`,
        blocks: [
          sentences(
            `The deviations, squared and in the mean: ${fitBefore.toFixed(2)} before, ${fitAfter.toFixed(2)} after; about 1 where a design fits.`,
          ),
          table(
            'values',
            [
              { label: 'value' },
              { label: 'unit' },
              { label: 'before' },
              { label: 'fitted' },
              { label: 'low' },
              { label: 'high' },
              { label: 'told by the log' },
            ],
            parameters.map(({ path, unit, before, value, low, high, told }) => [
              path,
              unitIn(unit, units).symbol,
              ...[before, value, low, high].map((number) => digits(converted(number, unit, units))),
              told ? 'yes' : 'no',
            ]),
          ),
          ...listOf('In words', words.parameters),
          table(
            'correlation',
            [{ label: 'correlation' }, ...parameters.map(({ key }) => ({ label: key }))],
            correlation.map((row, at) => [parameters[at]!.key, ...row.map((value) => value.toFixed(2))]),
          ),
          ...listOf('Before you trust it', words.notes),
        ],
      },
      data: result,
      ...(options.designOut === undefined
        ? {}
        : { files: [{ option: 'design-out', text: designText(options.designOut, fitted) }] }),
    };
  },
};

/** The whole design in the format of its file: JSON, else YAML. */
const designText = (path: string, design: unknown): string =>
  /\.json$/i.test(path) ? JSON.stringify(design, null, 2) : yamlLines(design);

function keysOf(text: string): FittedKey[] {
  const asked = text.split(/[,\s]+/).filter((key) => key !== '');
  const wrong = asked.filter((key) => !KEYS.includes(key as FittedKey));
  if (wrong.length > 0 || asked.length === 0)
    throw new Refusal(EXIT.usage, [`--fit: found "${wrong.join(', ')}", expected some of ${KEYS.join(', ')}.`]);
  return asked as FittedKey[];
}
