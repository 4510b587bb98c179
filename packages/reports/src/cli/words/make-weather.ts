// A year of hours from twelve monthly means, in a file or on the line.
import type { SyntheticInput, WeatherYear } from '@noonloop/weather-io';
import { EXIT, Refusal } from '../exit-codes.ts';
import { checkTarget } from '../files.ts';
import { numberOf, numbersOf } from '../option-values.ts';
import { deliver, targetOf } from '../output.ts';
import { checked } from '../settings/check.ts';
import { readSettings } from '../settings-file.ts';
import { type Call, outputOptions, type Word } from '../word.ts';

interface MakeOptions {
  readonly latitude?: string;
  readonly longitude?: string;
  readonly elevation?: string;
  readonly utcOffset?: string;
  readonly name?: string;
  readonly light?: string;
  readonly air?: string;
  readonly airF?: string;
  readonly range?: string;
  readonly rangeF?: string;
  readonly seed?: string;
}

/** Writes the year as plain CSV, which every word takes as weather. */
export const makeWeather: Word<MakeOptions> = {
  usage: 'make-weather [months]',
  summary: 'a year of weather from twelve monthly means',
  description:
    'Makes a year of hours from twelve monthly means of light and air, in a YAML or JSON file or on the line, and writes it as plain CSV, which every word takes as --weather. It is no measurement: its months are right, its days are drawn.',
  example: 'noonloop make-weather months.yaml --out town.csv',
  options: (command) =>
    outputOptions(command)
      .option('--name <text>', 'name of the place')
      .option('--latitude <degrees>', 'north positive')
      .option('--longitude <degrees>', 'east positive')
      .option('--elevation <metres>', 'above the sea')
      .option('--utc-offset <hours>', 'standard time minus UTC')
      .option('--light <numbers>', 'twelve means of a day’s light on the level, kWh/m², such as 2.4,3.2,…')
      .option('--air <numbers>', 'twelve means of the air, °C')
      .option('--air-f <numbers>', 'twelve means of the air, °F')
      .option('--range <numbers>', 'twelve means of the day’s highest less lowest, K')
      .option('--range-f <numbers>', 'the same in °F')
      .option('--seed <number>', 'which of the many years with these means (default: 1)'),
  run: async (call) => {
    const { options, files, terminal } = call;
    const target = targetOf(options.out, options.force);
    if (target !== null) await checkTarget(target);
    const year = files[0] === undefined ? await fromLine(call) : await fromFile(files[0], call);
    const { writeWeather } = await import('@noonloop/weather-io');
    await deliver(writeWeather(year), target, terminal, options.quiet === true);
    return undefined;
  },
};

async function fromFile(path: string, { options }: Call<MakeOptions>): Promise<WeatherYear> {
  const { synthesizeYear } = await import('@noonloop/weather-io');
  const settings = await readSettings(path);
  const seed = options.seed === undefined ? {} : { seed: numberOf('seed', options.seed) };
  return checked(settings, 'months', (fields) => synthesizeYear({ ...(fields as unknown as SyntheticInput), ...seed }));
}

async function fromLine({ options }: Call<MakeOptions>): Promise<WeatherYear> {
  const { synthesizeYear } = await import('@noonloop/weather-io');
  const { latitude, longitude, elevation, utcOffset, name, light, air, airF, range, rangeF, seed } = options;
  if (latitude === undefined || light === undefined || (air ?? airF) === undefined)
    throw new Refusal(EXIT.usage, [
      'make-weather needs a file of months ("noonloop draft months" writes one to fill in), or --latitude, --light and --air.',
    ]);
  const maybe = (key: string, option: string, text: string | undefined) =>
    text === undefined ? {} : { [key]: numberOf(option, text) };
  const twelve = (key: string, option: string, text: string | undefined) =>
    text === undefined ? {} : { [key]: numbersOf(option, text) };
  return synthesizeYear({
    site: {
      ...(name === undefined ? {} : { name }),
      latitude: numberOf('latitude', latitude),
      ...maybe('longitude', 'longitude', longitude),
      ...maybe('elevation', 'elevation', elevation),
      ...maybe('utcOffset', 'utc-offset', utcOffset),
    },
    monthly: {
      ...twelve('dailyGhi_kWh_per_m2', 'light', light),
      ...twelve('dryBulb', 'air', air),
      ...twelve('dryBulb_degF', 'air-f', airF),
      ...twelve('dailyRange', 'range', range),
      ...twelve('dailyRange_degF', 'range-f', rangeF),
    } as unknown as SyntheticInput['monthly'],
    ...maybe('seed', 'seed', seed),
  });
}
