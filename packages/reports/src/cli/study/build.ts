// A study out of its settings file.
import { dirname, resolve } from 'node:path';
import type { Measure, Search, Study, SystemInput } from '@noonloop/sim-core';
import * as core from '@noonloop/sim-core';
import type { WeatherYear } from '@noonloop/weather-io';
import { writtenDesign } from '../designs.ts';
import { EXIT, Refusal } from '../exit-codes.ts';
import { faultsOf } from '../in-words.ts';
import { checked } from '../settings/check.ts';
import { readSettings, type Settings } from '../settings-file.ts';

/** What a study file says, as its schema has it. */
interface StudySettings {
  readonly study: 'sweep' | 'best-of' | 'sensitivity' | 'uncertainty';
  readonly design: string;
  readonly vary: Readonly<Record<string, unknown>>;
  readonly numbers?: readonly Measure[];
  readonly goal?: { readonly highest: Measure } | { readonly lowest: Measure };
  readonly limits?: core.Limits;
  readonly evaluations?: number;
  readonly method?: 'one-at-a-time' | 'morris' | 'sobol';
  readonly paths?: number;
  readonly samples?: number;
  readonly seed?: number;
  readonly correlations?: readonly core.Correlation[];
  readonly price?: Readonly<Record<string, number | Readonly<Record<string, number>>>>;
}

/** A study with what it was made of. */
export interface BuiltStudy {
  readonly said: StudySettings;
  readonly settings: Settings;
  readonly name: string;
  readonly designFile: string;
  readonly base: SystemInput;
  readonly study: Study<unknown> | Search;
}

/** Fields of each kind besides those that all have. */
const OWN: Readonly<Record<StudySettings['study'], readonly (keyof StudySettings)[]>> = {
  sweep: ['price'],
  'best-of': ['goal', 'limits', 'evaluations'],
  sensitivity: ['method', 'paths', 'samples', 'seed'],
  uncertainty: ['samples', 'seed', 'correlations'],
};

const ALL: readonly (keyof StudySettings)[] = ['study', 'design', 'vary', 'numbers'];

/** Reads the file and its design, and makes the study. */
export async function buildStudy(path: string, weathers: readonly WeatherYear[]): Promise<BuiltStudy> {
  const settings = await readSettings(path);
  const said = await checked(settings, 'study', (fields) => fields as unknown as StudySettings);
  const strange = (Object.keys(said) as (keyof StudySettings)[]).filter(
    (name) => !ALL.includes(name) && !OWN[said.study].includes(name),
  );
  if (strange.length > 0)
    throw new Refusal(
      EXIT.input,
      strange.map(
        (name) => `${path}, line ${settings.lineOf(name)}, ${name}: not for the study "${said.study}". Remove it.`,
      ),
    );
  const designFile = resolve(dirname(path), said.design);
  const { input, design } = await writtenDesign(designFile);
  return { said, settings, name: design.name, designFile, base: input, study: make(said, input, weathers, settings) };
}

/** The library's study; its faults come with the places of the file. */
function make(
  said: StudySettings,
  base: SystemInput,
  weathers: readonly WeatherYear[],
  settings: Settings,
): Study<unknown> | Search {
  const { vary, goal, limits, evaluations, method, paths, samples, seed, correlations, numbers } = said;
  const given = (options: object) =>
    Object.fromEntries(Object.entries({ ...options, measures: numbers }).filter(([, value]) => value !== undefined));
  try {
    switch (said.study) {
      case 'sweep':
        return core.sweep(base, vary as unknown as core.SweepAxes, weathers, given({}));
      case 'best-of':
        return core.bestOf(
          base,
          vary as unknown as core.StudyRanges,
          oneOf(weathers, said.study),
          given({ goal, limits, evaluations }) as unknown as core.BestOfOptions,
        );
      case 'sensitivity':
        return core.sensitivity(
          base,
          vary as unknown as core.StudyRanges,
          oneOf(weathers, said.study),
          given({ method, paths, samples, seed }),
        );
      case 'uncertainty':
        return core.uncertainty(
          base,
          vary as unknown as Record<string, core.UncertainInput>,
          weathers,
          given({ samples, seed, correlations }),
        );
    }
  } catch (error) {
    const faults = faultsOf(error);
    if (faults === null) throw error;
    throw new Refusal(
      EXIT.input,
      faults.slice(0, 20).map(({ path, words }) => placed(settings, path, words)),
      faults.length,
    );
  }
}

function oneOf(weathers: readonly WeatherYear[], kind: string): WeatherYear {
  if (weathers.length === 1) return weathers[0]!;
  throw new Refusal(EXIT.usage, [`a study of the kind "${kind}" takes one year of weather, found ${weathers.length}.`]);
}

/** A fault at the place where the file has it: the library speaks of options, axes, ranges and inputs. */
function placed(settings: Settings, path: string, words: string): string {
  const field = path.replace(/^options\./, '').replace(/^(axes|ranges|inputs)\b/, 'vary');
  const known = ['study', 'design', 'vary', 'numbers', ...Object.values(OWN).flat()];
  const place = field === '' || known.includes(field.split('.')[0]!) ? field : `vary.${field}`;
  const line = settings.lineOf(place);
  return `${settings.path}${line === null ? '' : `, line ${line}`}${place === '' ? '' : `, ${place}`}: ${words}`;
}
