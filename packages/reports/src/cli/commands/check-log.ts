// A notebook of gauge readings beside what the model expects.
import { dirname, resolve } from 'node:path';
import type { CheckLogOptions, LogCheck } from '@noonloop/sim-core';
import type { LogLayout } from '@noonloop/weather-io';
import { formatReading, gaugeUnit, gaugeWord } from '../../charts/check-words.ts';
import { wrap } from '../../formats/table.ts';
import { convertSentence } from '../../quantities.ts';
import type { Units } from '../../units.ts';
import { designOf } from '../designs.ts';
import { checkTarget } from '../files.ts';
import { blaming, blamingLayout } from '../in-words.ts';
import { deliver, targetOf } from '../output.ts';
import { readSettings, tableSettings } from '../settings-file.ts';
import { harmless, Progress, type Terminal } from '../terminal.ts';
import { type WeatherOptions, weatherOf } from '../weather.ts';

type CheckFormat = 'text' | 'html' | 'json';

/** Options of `check-log`. */
export interface CheckGaugesOptions extends WeatherOptions {
  readonly weather: string;
  readonly log: string;
  readonly out?: string;
  readonly force?: boolean;
  readonly format?: CheckFormat;
  readonly units?: Units;
  readonly picture?: string;
  readonly quiet?: boolean;
}

/** Ranks what may be wrong with a system by the readings of its gauges. */
export async function checkGauges(file: string, options: CheckGaugesOptions, terminal: Terminal): Promise<void> {
  const { quiet = false, units = 'metric', picture } = options;
  const target = targetOf(options.out, options.force);
  const pictureTarget = targetOf(picture, options.force);
  for (const one of [target, pictureTarget]) if (one !== null) await checkTarget(one);
  const progress = new Progress(terminal, quiet);
  try {
    await progress.show('reading design, weather and log');
    const design = await designOf(file, null);
    const settings = await readSettings(options.log);
    const { file: table, uncertainty, noise, ...layout } = tableSettings(settings);
    const { readLog } = await import('@noonloop/weather-io');
    const path = resolve(dirname(settings.path), table);
    const log = await blamingLayout(settings, () => readLog(path, layout as unknown as LogLayout));
    const weather = await weatherOf(options.weather, options);
    const { checkLog } = await import('@noonloop/sim-core');
    await progress.show('running the system sound and with each fault: this takes a while');
    const known = { ...(uncertainty ? { uncertainty } : {}), ...(noise ? { noise } : {}) } as CheckLogOptions;
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
  } finally {
    progress.clear();
  }
}

const formatOf = ({ format, out = '' }: CheckGaugesOptions): CheckFormat =>
  format ?? (/\.json$/i.test(out) ? 'json' : /\.html?$/i.test(out) ? 'html' : 'text');

async function rendered(
  check: LogCheck,
  format: CheckFormat,
  { units, title, width }: { units: Units; title: string; width: number },
): Promise<string> {
  if (format === 'json') return JSON.stringify(check, null, 2);
  if (format === 'text') return harmless(inWords(check, units, width).join('\n'));
  return (await import('../../formats/check-html.ts')).renderCheckHtml(check, { units, title });
}

function inWords(
  { headline, causes, next, numbers, notes, cautions }: LogCheck,
  units: Units,
  width: number,
): string[] {
  const outside = numbers.filter((number) => number.outside);
  const say = (text: string, indent = ''): string[] => wrap(convertSentence(text, units), width, indent);
  return [
    ...say(headline),
    '',
    ...causes.flatMap(({ weight, name, detail, evidence }) => [
      ...say(`${String(Math.round(weight * 100)).padStart(3)} %  ${name}: ${detail}`),
      ...evidence.flatMap((words) => say(`- ${words}`, '       ')),
    ]),
    '',
    `${outside.length} of ${numbers.length} readings lie outside the band of a sound system.`,
    ...outside.slice(0, 10).flatMap(({ line, gauge, found, low, high }) => {
      const shown = (value: number): string => formatReading(value, gauge, units);
      const where = line === null ? '' : `line ${line}, `;
      return wrap(
        `${where}${gaugeWord(gauge)}: ${shown(found)} against ${shown(low)} to ${shown(high)} ${gaugeUnit(gauge, units)}`,
        width,
        '  ',
      );
    }),
    ...(next === null
      ? []
      : [
          '',
          ...say(`Next: ${next.what}`),
          ...next.outcomes.flatMap(({ seen, causes: left }) => say(`- ${seen}: ${left.join(', ')}`, '  ')),
          ...(next.caution === null ? [] : say(`caution: ${next.caution}`)),
        ]),
    '',
    ...notes.flatMap((note) => say(`- ${note}`)),
    ...cautions.flatMap((caution) => say(`caution: ${caution}`)),
  ];
}
