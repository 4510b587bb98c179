// Stands between reading and running: a year that cannot be weather goes no further.
import { WeatherError, type WeatherIssue } from '../errors.ts';
import type { WeatherYear } from '../year.ts';
import { lookOver } from './check.ts';
import type { QualityFinding } from './report.ts';

/** How a year is vetted. */
export interface VetOptions {
  /** Whether a year with faults is used all the same; they then stand among its assumptions. Default `false`. */
  readonly insist?: boolean;
}

/**
 * Looks a year over before anything is run on it. What was found goes with the year: reports print its assumptions.
 *
 * A function of its own and no option of the readers, for years also come from `fillGaps` and from `synthesizeYear`.
 *
 * @param year - Not changed.
 * @param options - See {@link VetOptions}.
 * @returns The year, its assumptions followed by what {@link checkWeather} found, with codes that begin with `doubt-` or `fault-`.
 * @throws WeatherError with code `implausible` where a fault would change what a year gives, unless `insist` is set.
 * @example
 * const weather = vetWeather(await readWeather('docs/examples/weather/invented-valley.csv'));
 */
export function vetWeather(year: WeatherYear, { insist = false }: VetOptions = {}): WeatherYear {
  const { findings } = lookOver(year);
  const faults = findings.filter(({ weight }) => weight === 'fault');
  if (faults.length > 0 && !insist) throw new WeatherError(faults.map((fault) => issueOf(fault, year.source)));
  const telling = findings.filter(({ weight }) => weight !== 'note');
  if (telling.length === 0) return year;
  const found = telling.map(({ code, weight, count, text, parts, numbers }) => {
    const opening = `${weight === 'fault' ? 'Fault' : 'Doubt'} about the weather: `;
    return {
      code: `${weight}-${code}`,
      text: `${opening}${text}`,
      ...(parts === undefined ? {} : { parts: [opening, ...parts] }),
      numbers: numbers ?? { count },
    };
  });
  // A file that was written from a vetted year says it already.
  const known = new Set(year.assumptions.map(({ text }) => text));
  return { ...year, assumptions: [...year.assumptions, ...found.filter(({ text }) => !known.has(text))] };
}

const issueOf = ({ text }: QualityFinding, file: string): WeatherIssue => ({
  code: 'implausible',
  file,
  line: null,
  column: null,
  value: `${text[0]!.toLowerCase()}${text.slice(1).replace(/\.$/, '')}`.replace(/^(gHI|dNI|dHI)/, (name) =>
    name.toUpperCase(),
  ),
  expected: 'a year that can be the weather of its place',
  remedy: 'Correct the file or its layout, choose another, or insist with vetWeather(year, { insist: true }).',
});
