// A used panel rated from a survey.
import type { SurveyInput, SurveyRating } from '@noonloop/sim-core';
import { stringify } from 'yaml';
import { listItem, textTable, wrap } from '../../formats/table.ts';
import { checkTarget } from '../files.ts';
import { blaming } from '../in-words.ts';
import { deliver, targetOf } from '../output.ts';
import { asMap, readSettings } from '../settings-file.ts';
import { harmless, type Terminal } from '../terminal.ts';

/** Options of `rate`. */
export interface RateOptions {
  readonly out?: string;
  readonly force?: boolean;
  readonly format?: 'text' | 'yaml' | 'json';
  readonly quiet?: boolean;
}

/** Rates the panel of a survey file. */
export async function ratePanel(file: string, options: RateOptions, terminal: Terminal): Promise<void> {
  const target = targetOf(options.out, options.force);
  if (target !== null) await checkTarget(target);
  const { rateFromSurvey } = await import('@noonloop/sim-core');
  const settings = await readSettings(file);
  const rating = await blaming(settings, () => rateFromSurvey(asMap(settings) as unknown as SurveyInput));
  const ending = /\.(ya?ml|json)$/i.exec(options.out ?? '')?.[1]?.toLowerCase();
  const format = options.format ?? (ending === undefined ? 'text' : ending === 'json' ? 'json' : 'yaml');
  const text =
    format === 'json'
      ? JSON.stringify(rating, null, 2)
      : format === 'yaml'
        ? stringify({ collector: rounded(rating.collector) }, { lineWidth: 0 })
        : harmless(inWords(rating, terminal.width).join('\n'));
  await deliver(text, target, terminal, options.quiet === true);
}

/** Numbers of a rating in words, with the unit in which they are shown and how many of it make one of the library's. */
const WORDS: Readonly<Record<keyof SurveyRating['bands'], string | readonly [string, number]>> = {
  eta0: 'eta0 [-]',
  a1: 'a1 [W/(m²·K)]',
  a2: 'a2 [W/(m²·K²)]',
  b0: 'incidence modifier b0 [-]',
  efficiencyAtWork: 'efficiency, 30 K over the air, 800 W/m² [-]',
  heatCapacity: ['heat capacity [kJ/(m²·K)]', 1e-3],
  pressureDrop: 'pressure drop at rated flow [Pa]',
  fluidContent: ['liquid in it [L]', 1000],
  apertureArea: 'aperture area [m²]',
  weightEmpty: 'weight, empty [kg]',
  weightFull: 'weight, full, for each m² of roof [kg/m²]',
  stagnationTemperature: 'dry in full sun, air of 30 °C [°C]',
};

/** A collector with four digits, more than any survey knows. */
const rounded = (collector: SurveyRating['collector']): unknown =>
  JSON.parse(
    JSON.stringify(collector, (_, value: unknown) =>
      typeof value === 'number' ? Number(value.toPrecision(4)) : value,
    ),
  );

/** A number with the digits that its band allows. */
const digits = (value: number): string => String(Number(value.toPrecision(3)));

function inWords({ collector, bands, narrowing, assumptions, cautions }: SurveyRating, width: number): string[] {
  const rows = Object.entries(WORDS).map(([name, words]) => {
    const { low, likely, high } = bands[name as keyof typeof WORDS];
    const [label, factor] = typeof words === 'string' ? [words, 1] : words;
    return [label, digits(low * factor), digits(likely * factor), digits(high * factor)];
  });
  return [
    ...textTable(['', 'low', 'likely', 'high'], rows, width),
    '',
    'Collector for a design (likely case):',
    '',
    ...stringify({ collector: rounded(collector) }, { lineWidth: 0 })
      .trimEnd()
      .split('\n'),
    '',
    'What would narrow it most:',
    ...narrowing
      .filter(({ share }) => share >= 0.01)
      .slice(0, 5)
      .flatMap(({ what, how, share }) =>
        listItem(`${what} (${Math.round(share * 100)} % of the doubt): ${how}`, width),
      ),
    '',
    'What was assumed:',
    ...assumptions.flatMap(({ path, value, unit, source }) =>
      listItem(
        `${path} = ${typeof value === 'number' ? digits(value) : String(value)}${unit === '-' ? '' : ` ${unit}`}: ${source}`,
        width,
      ),
    ),
    '',
    ...cautions.flatMap((caution) => wrap(`caution: ${caution}`, width)),
  ];
}
