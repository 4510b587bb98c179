// The weather of a command.
import type { PlainLayout, WeatherYear } from '@noonloop/weather-io';
import { EXIT, Refusal } from './exit-codes.ts';
import { checked } from './settings/check.ts';
import { readSettings } from './settings-file.ts';

/** Options of every command that reads weather. */
interface WeatherOptions {
  /** File that says how a plain table is laid out. */
  readonly layout?: string;
  readonly fillGaps?: boolean;
  /** Light of a file finer than the hour is taken at its own step; not beside filled gaps. */
  readonly ownStep?: boolean;
  /** Run on weather in which faults were found. */
  readonly insistOnWeather?: boolean;
}

/** Weather to run on: read and looked over. Faults end the command unless it was insisted; doubts go into the reports. */
export async function weatherOf(path: string, options: WeatherOptions): Promise<WeatherYear> {
  const { vetWeather } = await import('./reading.ts');
  return vetWeather(await weatherAsItIs(path, options), { insist: options.insistOnWeather === true });
}

/** Reads the weather file, by a layout where one is given, filled where that is asked for; does not look it over. */
export async function weatherAsItIs(path: string, options: WeatherOptions): Promise<WeatherYear> {
  refuseOwnStepBesideGaps(options);
  const { fillGaps, readWeather } = await import('./reading.ts');
  return byLayout(options.layout, async (plain) =>
    options.fillGaps === true
      ? fillGaps(await readWeather(path, { ...plain, gaps: 'keep' }))
      : await readWeather(path, { ...plain, ...own(options) }),
  );
}

/** Years to run on, each in a file of its own or several in one. */
export async function yearsOfWeather(paths: readonly string[], options: WeatherOptions): Promise<WeatherYear[]> {
  refuseOwnStepBesideGaps(options);
  const { fillGaps, readWeatherYears, vetWeather } = await import('./reading.ts');
  const years = await byLayout(options.layout, async (plain) =>
    options.fillGaps === true
      ? (await readWeatherYears(paths, { ...plain, gaps: 'keep' })).map((year) => fillGaps(year))
      : await readWeatherYears(paths, { ...plain, ...own(options) }),
  );
  return years.map((year) => vetWeather(year, { insist: options.insistOnWeather === true }));
}

/** Gaps are filled by what hours of other days were like. */
function refuseOwnStepBesideGaps({ fillGaps, ownStep }: WeatherOptions): void {
  if (fillGaps !== true || ownStep !== true) return;
  const why = 'gaps are filled hour by hour, so light at its own step must have none';
  throw new Refusal(EXIT.usage, [`--own-step beside --fill-gaps: ${why}. Leave one of the two out.`]);
}

const own = ({ ownStep }: WeatherOptions) => (ownStep === true ? { ownStep } : {});

async function byLayout<T>(
  layout: string | undefined,
  work: (plain: { readonly plain?: PlainLayout }) => Promise<T>,
): Promise<T> {
  if (layout === undefined) return work({});
  return checked(await readSettings(layout), 'layout', (fields) => work({ plain: fields as unknown as PlainLayout }));
}
