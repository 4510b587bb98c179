// Coefficients of a panel from an hour in the yard.
import type { YardCoefficient, YardRating, YardTestInput } from '@noonloop/sim-core';
import { converted, unitIn } from '../../shown-units.ts';
import { yardTestInWords } from '../../words/yard-test.ts';
import { checked } from '../settings/check.ts';
import { readSettings } from '../settings-file.ts';
import { type Block, type Cell, heading, listOf, sentences, table } from '../sheet/model.ts';
import { collectorLines } from '../sheet/yaml-lines.ts';
import type { Word } from '../word.ts';

/** Rates the panel of a file of readings. */
export const yardTest: Word<{ readonly picture?: string }> = {
  usage: 'yard-test <readings>',
  summary: 'rate a panel from thermometers, a bucket and the sun',
  description:
    'Fits eta0, a1 and a2 to readings taken in the yard, a YAML or JSON file: inlet, outlet, flow, light and air of each. Says what the readings cannot tell, and what they would have to be like.',
  example: 'noonloop yard-test yard.yaml --units us',
  formats: ['yaml'],
  writes: ['picture'],
  options: (command) =>
    command.option('-p, --picture <file>', 'draw the line and its readings as SVG; - for standard output'),
  run: async ({ files, options, units }) => {
    const { rateFromYardTest } = await import('@noonloop/sim-core');
    const settings = await readSettings(files[0]!);
    const rating = await checked(settings, 'yard-test', (fields) =>
      rateFromYardTest(fields as unknown as YardTestInput),
    );
    const { collector } = rating;
    return {
      sheet: { title: collector?.name ?? 'Yard test', blocks: blocks(rating, units) },
      data: rating,
      formats: {
        yaml: () =>
          collector === null ? '# The readings tell no collector: see the text.\n' : collectorLines(collector),
      },
      ...(options.picture === undefined ? {} : { files: [{ option: 'picture', text: await picture(rating) }] }),
    };
  },
};

async function picture({ collector, points }: YardRating): Promise<string> {
  const { collectorChart } = await import('../../charts/collector-lines.ts');
  if (collector === null) return '<svg xmlns="http://www.w3.org/2000/svg" width="10" height="10"/>';
  return collectorChart([{ ...collector, points }]);
}

function blocks(rating: YardRating, units: 'metric' | 'us'): Block[] {
  const { collector, eta0, a1, a2, points, scatter, steps } = rating;
  const { notes, remedies } = yardTestInWords(rating, units);
  const row = (name: string, unit: string, { band, from }: YardCoefficient): Cell[] => {
    const { symbol } = unitIn(unit, units);
    const shown = (value: number) => Number(converted(value, unit, units).toPrecision(3));
    const numbers = band === null ? [null, null, null] : [shown(band.low), shown(band.likely), shown(band.high)];
    return [symbol === '' ? name : `${name} [${symbol}]`, ...numbers, from];
  };
  return [
    table(
      'coefficients',
      [{ label: '' }, { label: 'low' }, { label: 'likely' }, { label: 'high' }, { label: 'from' }],
      [row('eta0', '-', eta0), row('a1', 'W/(m²·K)', a1), row('a2', 'W/(m²·K²)', a2)],
    ),
    ...remedies.map(sentences),
    ...(scatter === null
      ? []
      : [
          sentences(
            `The readings scatter about the line by ${scatter.toFixed(1)} of what the tools allow; about 1 is right.`,
          ),
        ]),
    ...(collector === null
      ? [sentences('The readings tell no whole collector yet.')]
      : [heading('Collector for a design'), { kind: 'lines' as const, text: collectorLines(collector) }]),
    table(
      'readings',
      [
        { label: 'reading' },
        { label: 'heat into the fluid', unit: 'W/m²' },
        { label: 'reduced temperature', unit: 'm²·K/W' },
        { label: 'efficiency', unit: '%' },
        { label: 'off the line, in deviations' },
      ],
      points.map(({ flux, reducedTemperature, efficiency, residual }, at) => [
        String(at + 1),
        flux,
        reducedTemperature,
        efficiency,
        residual,
      ]),
    ),
    { kind: 'working', title: 'Working', steps },
    ...listOf('Before you trust it', notes),
  ];
}
