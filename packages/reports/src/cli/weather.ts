// The weather of a command.
import type { PlainLayout, WeatherYear } from '@noonloop/weather-io';
import { blamingLayout } from './in-words.ts';
import { asMap, readSettings } from './settings-file.ts';

/** Options of every command that reads weather. */
export interface WeatherOptions {
  /** File that says how a plain table is laid out. */
  readonly layout?: string;
  readonly fillGaps?: boolean;
}

/** Reads the weather file, by a layout where one is given, filled where that is asked for. */
export async function weatherOf(path: string, options: WeatherOptions): Promise<WeatherYear> {
  const { fillGaps, readWeather } = await import('@noonloop/weather-io');
  const settings = options.layout === undefined ? null : await readSettings(options.layout);
  const plain = settings === null ? {} : { plain: asMap(settings) as unknown as PlainLayout };
  return blamingLayout(settings, async () =>
    options.fillGaps === true
      ? fillGaps(await readWeather(path, { ...plain, gaps: 'keep' }))
      : await readWeather(path, plain),
  );
}
