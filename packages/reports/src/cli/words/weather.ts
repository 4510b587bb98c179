// A weather file looked over.
import type { QualityReport, WeatherYear } from '@noonloop/weather-io';
import { withUnit } from '../../shown-units.ts';
import { weatherWords } from '../../words/weather.ts';
import { EXIT } from '../exit-codes.ts';
import { type Block, listOf, sentences, table } from '../sheet/model.ts';
import { weatherAsItIs } from '../weather.ts';
import { readingOptions, type Word } from '../word.ts';

interface CheckOptions {
  readonly picture?: string;
  readonly strict?: boolean;
}

/** Checks a weather file and says whether it can be used. */
export const weather: Word<CheckOptions> = {
  usage: 'weather <file>',
  summary: 'check a weather file',
  description:
    'Checks a weather file against the sun and against itself, and says in one sentence whether it can be used.',
  example: 'noonloop weather town.csv --picture town.svg --units us',
  formats: [],
  writes: ['picture'],
  options: (command) =>
    readingOptions(command)
      .option('--strict', 'end with exit code 1 where a fault was found')
      .option('-p, --picture <file>', 'draw the light of the year as SVG; - for standard output'),
  run: async ({ files, options, units }) => {
    const year = await weatherAsItIs(files[0]!, options);
    const { checkWeather, qualityChart } = await import('@noonloop/weather-io');
    const report = checkWeather(year);
    const { ghi: _, marks: __, sunriseSunset: ___, ...data } = report;
    return {
      sheet: {
        title: year.site.name || 'unnamed place',
        blocks: blocks(year, report, units),
      },
      data,
      ...(options.picture === undefined ? {} : { files: [{ option: 'picture', text: qualityChart(report) }] }),
      ...(options.strict === true && faults(report) > 0 ? { exit: EXIT.input } : {}),
    };
  },
};

const faults = ({ findings }: QualityReport): number => findings.filter(({ weight }) => weight === 'fault').length;

function blocks(year: WeatherYear, report: QualityReport, units: 'metric' | 'us'): Block[] {
  const { site, columns, format, assumptions } = year;
  const { ghi, dni, dryBulb } = columns;
  const sum = (column: Float64Array) => column.reduce((total, value) => total + value, 0);
  const extreme = (pick: (a: number, b: number) => number) => dryBulb.reduce((a, b) => pick(a, b));
  const offset = site.utcOffset < 0 ? `−${-site.utcOffset}` : `+${site.utcOffset}`;
  const latitude = `${Math.abs(site.latitude).toFixed(2)}° ${site.latitude < 0 ? 'S' : 'N'}`;
  const longitude = `${Math.abs(site.longitude).toFixed(2)}° ${site.longitude < 0 ? 'W' : 'E'}`;
  return [
    sentences(`This year is ${report.verdict.text}.`),
    sentences(
      `${latitude} ${longitude}, ${withUnit(Math.round(site.elevation), 'm', units)} above the sea, UTC${offset}. ${report.source}, ${format} format.`,
    ),
    table(
      'year',
      [{ label: '' }, { label: 'value' }],
      [
        ['light on the level, a year', withUnit(sum(ghi) * 3600, 'J/m²', units)],
        ['beam, facing the sun, a year', withUnit(sum(dni) * 3600, 'J/m²', units)],
        ['air, mean', withUnit(sum(dryBulb) / dryBulb.length, '°C', units)],
        ['air, coldest hour', withUnit(extreme(Math.min), '°C', units)],
        ['air, hottest hour', withUnit(extreme(Math.max), '°C', units)],
      ],
    ),
    sentences(clockSentence(report)),
    ...report.findings.flatMap(({ weight, worst, ...finding }): Block[] => [
      sentences(`${weight}: ${weatherWords(finding, units)}`),
      ...(worst.length === 0
        ? []
        : [
            {
              kind: 'list' as const,
              items: worst
                .slice(0, 3)
                .map(
                  ({ stamp, value, limit, unit }) =>
                    `${stamp}: ${withUnit(value, unit, units)} against ${withUnit(limit, unit, units)}`,
                ),
            },
          ]),
    ]),
    ...listOf(
      'What was assumed in reading it',
      assumptions.length === 0 ? ['nothing'] : assumptions.map((note) => weatherWords(note, units)),
    ),
  ];
}

function clockSentence({ clock }: QualityReport): string {
  if (clock.late === null) return 'The clock could not be tested: there are too few clear days.';
  const late = `${Math.abs(clock.late).toFixed(2)} h ${clock.late < 0 ? 'before' : 'after'}`;
  return `The light comes ${late} the sun of this place and zone (± ${clock.uncertainty.toFixed(2)} h, by ${clock.clearDays} clear days).`;
}
