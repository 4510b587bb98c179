// The weather of a command.
import type { PlainLayout, WeatherYear } from '@noonloop/weather-io';
import { blamingLayout } from './in-words.ts';
import { asMap, readSettings } from './settings-file.ts';

/** Options of every command that reads weather. */
export interface WeatherOptions {
  /** File that says how a plain table is laid out. */
  readonly layout?: string;
  readonly fillGaps?: boolean;
  /** Run on weather in which faults were found. */
  readonly insistOnWeather?: boolean;
}

/** Weather to run on: read and looked over. Faults end the command unless it was insisted; doubts go into the reports. */
export async function weatherOf(path: string, options: WeatherOptions): Promise<WeatherYear> {
  const { vetWeather } = await import('@noonloop/weather-io');
  return vetWeather(await weatherAsItIs(path, options), { insist: options.insistOnWeather === true });
}

/** Reads the weather file, by a layout where one is given, filled where that is asked for; does not look it over. */
export async function weatherAsItIs(path: string, options: WeatherOptions): Promise<WeatherYear> {
  const { fillGaps, readWeather } = await import('@noonloop/weather-io');
  const settings = options.layout === undefined ? null : await readSettings(options.layout);
  const plain = settings === null ? {} : { plain: asMap(settings) as unknown as PlainLayout };
  return blamingLayout(settings, async () =>
    options.fillGaps === true
      ? fillGaps(await readWeather(path, { ...plain, gaps: 'keep' }))
      : await readWeather(path, plain),
  );
}
