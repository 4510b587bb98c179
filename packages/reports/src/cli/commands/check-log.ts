// A notebook of gauge readings beside what the model expects.
import { dirname, resolve } from 'node:path';
import type { CheckLogOptions, LogCheck } from '@noonloop/sim-core';
import type { LogLayout } from '@noonloop/weather-io';
import { wrap } from '../../formats/table.ts';
import { designOf } from '../designs.ts';
import { checkTarget } from '../files.ts';
import { blaming, blamingLayout } from '../in-words.ts';
import { deliver, targetOf } from '../output.ts';
import { readSettings, tableSettings } from '../settings-file.ts';
import { harmless, Progress, type Terminal } from '../terminal.ts';
import { type WeatherOptions, weatherOf } from '../weather.ts';

/** Options of `check-log`. */
export interface CheckGaugesOptions extends WeatherOptions {
  readonly weather: string;
  readonly log: string;
  readonly out?: string;
  readonly force?: boolean;
  readonly format?: 'text' | 'json';
  readonly quiet?: boolean;
}

/** Ranks what may be wrong with a system by the readings of its gauges. */
export async function checkGauges(file: string, options: CheckGaugesOptions, terminal: Terminal): Promise<void> {
  const { quiet = false } = options;
  const target = targetOf(options.out, options.force);
  if (target !== null) await checkTarget(target);
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
    const json = options.format === 'json' || (options.format === undefined && /\.json$/i.test(options.out ?? ''));
    const text = json ? JSON.stringify(check, null, 2) : harmless(inWords(check, terminal.width).join('\n'));
    await deliver(text, target, terminal, quiet);
  } finally {
    progress.clear();
  }
}

function inWords({ headline, causes, next, numbers, notes, cautions }: LogCheck, width: number): string[] {
  const outside = numbers.filter((number) => number.outside);
  return [
    ...wrap(headline, width),
    '',
    ...causes.flatMap(({ weight, name, detail, evidence }) => [
      ...wrap(`${String(Math.round(weight * 100)).padStart(3)} %  ${name}: ${detail}`, width),
      ...evidence.flatMap((words) => wrap(`- ${words}`, width, '       ')),
    ]),
    '',
    `${outside.length} of ${numbers.length} readings lie outside the band of a sound system.`,
    ...outside
      .slice(0, 10)
      .map(
        ({ line, gauge, found, low, high }) =>
          `  ${line === null ? '' : `line ${line}, `}${gauge}: ${digits(found)} against ${digits(low)} to ${digits(high)}`,
      ),
    ...(next === null
      ? []
      : [
          '',
          ...wrap(`Next: ${next.what}`, width),
          ...next.outcomes.flatMap(({ seen, causes: left }) => wrap(`- ${seen}: ${left.join(', ')}`, width, '  ')),
          ...(next.caution === null ? [] : wrap(`caution: ${next.caution}`, width)),
        ]),
    '',
    ...notes.flatMap((note) => wrap(`- ${note}`, width)),
    ...cautions.flatMap((caution) => wrap(`caution: ${caution}`, width)),
  ];
}

const digits = (value: number): string => String(Number(value.toPrecision(3)));
