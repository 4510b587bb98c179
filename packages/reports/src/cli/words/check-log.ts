// A notebook of gauge readings beside what the model expects.

import type { GaugeCheck, LogCheck } from '@noonloop/sim-core';
import { capital } from '../../answer/words.ts';
import { formatReading, gaugeUnit, gaugeWord } from '../../charts/check-words.ts';
import { wrap } from '../../formats/table.ts';
import type { Units } from '../../units.ts';
import { checkInWords } from '../../words/check.ts';
import { gaugesInWords } from '../../words/gauges.ts';
import { designOf } from '../designs.ts';
import { EXIT, Refusal } from '../exit-codes.ts';
import { checkTarget } from '../files.ts';
import { blaming } from '../in-words.ts';
import { notebookOf } from '../logs.ts';
import { deliver, targetOf } from '../output.ts';
import { type Answer, cautionBlocks, heading, listOf, sentences, table } from '../sheet/model.ts';
import { renderAnswer } from '../sheet/render.ts';
import { harmless } from '../terminal.ts';
import { weatherOf } from '../weather.ts';
import { type CommonOptions, choice, outputOptions, unitsOption, type Word, weatherOptions } from '../word.ts';

type CheckFormat = 'text' | 'html' | 'json';

/** Options of `check-log`. */
interface CheckGaugesOptions {
  readonly log?: string;
  readonly picture?: string;
}

/** Ranks what may be wrong with a system by the readings of its gauges. */
export const checkLogWord: Word<CheckGaugesOptions> = {
  usage: 'check-log [design]',
  summary: 'what may be wrong, by a notebook of gauges or a logger',
  description:
    'Sets gauge readings against what the model expects in their weather, and ranks what may be wrong. The weather must be of the very weeks of the log; a typical year will not do. Without weather a logger’s frequent readings are looked at by themselves: it says what they show, and what it cannot tell.',
  example: 'noonloop check-log house.yaml --weather town.csv --log log.yaml --units us',
  needs: ['log'],
  options: (command) =>
    weatherOptions(unitsOption(outputOptions(command)))
      .option('-l, --log <file>', 'YAML or JSON that names the table of readings and its layout')
      .addOption(choice('-f, --format <format>', 'default by the ending of --out, else text', ['text', 'html', 'json']))
      .option('--json', 'for machines: short for --format json, in SI')
      .option('-p, --picture <file>', 'draw readings, bands and causes as SVG; - for standard output'),
  run: async ({ files, options, units, terminal, progress }) => {
    const { quiet = false, picture } = options;
    const target = targetOf(options.out, options.force);
    const pictureTarget = targetOf(picture, options.force);
    for (const one of [target, pictureTarget]) if (one !== null) await checkTarget(one);
    await progress.show('reading design, weather and log');
    const design = files[0] === undefined ? null : await designOf(files[0]);
    const { settings, log, known } = await notebookOf(options.log!);
    if (options.weather === undefined) {
      if (picture !== undefined)
        throw new Refusal(EXIT.usage, ['--picture draws a check with weather. Say --weather.']);
      const { checkGauges } = await import('@noonloop/sim-core');
      const check = await blaming(settings, () => checkGauges(log, design));
      progress.clear();
      const answer = gaugesAnswer(check, units, design?.name);
      await deliver(
        await renderAnswer(answer, formatOf(options), { units, width: terminal.width }),
        target,
        terminal,
        quiet,
      );
      return undefined;
    }
    if (design === null) throw new Refusal(EXIT.usage, ['check-log with weather needs a design. Give its file.']);
    const weather = await weatherOf(options.weather, options);
    const { checkLog } = await import('@noonloop/sim-core');
    await progress.show('running the system healthy and with each fault: this takes a while');
    const check = await blaming(settings, () => checkLog(design, weather, log, known));
    progress.clear();
    const { name: title } = design;
    const text = await rendered(check, formatOf(options), { units, title, width: terminal.width });
    // A picture for standard output has it to itself.
    if (target !== null || picture !== '-') await deliver(text, target, terminal, quiet);
    if (picture !== undefined) {
      const { checkChart } = await import('../../charts/check-log.ts');
      await deliver(await checkChart(check, { units, title }), pictureTarget, terminal, quiet);
    }
    return undefined;
  },
};

/** What gauges alone tell. */
function gaugesAnswer(check: GaugeCheck, units: Units, title = 'Gauges by themselves'): Answer {
  const { headline, findings, figures, untold, cautions } = gaugesInWords(check, units);
  return {
    sheet: {
      title,
      blocks: [
        sentences(headline),
        ...cautionBlocks(cautions),
        ...findings.flatMap(({ name, evidence, look, who }) => [
          heading(capital(name)),
          sentences(`${evidence} ${look} Who may do more: ${who}`),
        ]),
        heading('What the gauges say of the house'),
        table(
          'figures',
          [{ label: 'figure' }, { label: 'in the middle' }, { label: 'days or nights' }],
          figures.map(({ name, value, spread }) => [name, value, spread]),
        ),
        ...listOf('What they cannot tell', untold),
      ],
    },
    data: { ...check, words: gaugesInWords(check, units) },
  };
}

const formatOf = ({ json, format, out = '' }: CommonOptions): CheckFormat =>
  (json === true ? 'json' : (format as CheckFormat | undefined)) ??
  (/\.json$/i.test(out) ? 'json' : /\.html?$/i.test(out) ? 'html' : 'text');

async function rendered(
  check: LogCheck,
  format: CheckFormat,
  { units, title, width }: { units: Units; title: string; width: number },
): Promise<string> {
  if (format === 'json') return JSON.stringify({ ...check, words: checkInWords(check, units) }, null, 2);
  if (format === 'text') return harmless(inWords(check, units, width).join('\n'));
  return (await import('../../formats/check-html.ts')).renderCheckHtml(check, { units, title });
}

function inWords(check: LogCheck, units: Units, width: number): string[] {
  const { numbers } = check;
  const { headline, causes, next, notes, cautions } = checkInWords(check, units);
  const outside = numbers.filter((number) => number.outside);
  const say = (text: string, indent = ''): string[] => wrap(text, width, indent);
  return [
    ...say(headline),
    '',
    ...causes.flatMap(({ weight, name, detail, evidence }) => [
      ...say(`${weight.padStart(9)}  ${name}`),
      ...say(detail, '           '),
      ...evidence.flatMap((words) => say(`- ${words}`, '           ')),
    ]),
    '',
    `${outside.length} of ${numbers.length} readings lie outside the band of a healthy system.`,
    ...outside.slice(0, 10).flatMap(({ line, gauge, found, low, high }) => {
      const shown = (value: number): string => formatReading(value, gauge, units);
      const where = line === null ? '' : `line ${line}, `;
      return say(
        `${where}${gaugeWord(gauge)}: ${shown(found)} against ${shown(low)} to ${shown(high)} ${gaugeUnit(gauge, units)}`,
        '  ',
      );
    }),
    ...(next === null
      ? []
      : [
          '',
          ...say(`Next, for ${next.who}: ${next.what}`),
          ...next.outcomes.flatMap(({ seen, causes: left }) =>
            say(`- ${seen}: ${left.length === 0 ? 'none of these causes' : left.join('; ')}`, '  '),
          ),
          ...(next.caution === '' ? [] : say(`caution: ${next.caution}`)),
        ]),
    '',
    ...notes.flatMap((note) => say(`- ${note}`)),
    ...cautions.flatMap((caution) => say(`caution: ${caution}`)),
  ];
}
