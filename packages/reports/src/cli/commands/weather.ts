// A weather file looked over.
import type { QualityReport, WeatherYear } from '@noonloop/weather-io';
import { listItem, wrap } from '../../formats/table.ts';
import { EXIT, type ExitCode } from '../exit-codes.ts';
import { checkTarget } from '../files.ts';
import { deliver, targetOf } from '../output.ts';
import { harmless, type Terminal } from '../terminal.ts';
import { type WeatherOptions, weatherAsItIs } from '../weather.ts';

/** Options of `weather`. */
export interface CheckWeatherOptions extends WeatherOptions {
  readonly picture?: string;
  /** Whether a fault ends with the code of a wrong input. */
  readonly strict?: boolean;
  readonly force?: boolean;
  readonly quiet?: boolean;
}

/** Checks a weather file and says what was found. @returns `input` where there is a fault and `strict` was said. */
export async function checkWeatherFile(
  file: string,
  options: CheckWeatherOptions,
  terminal: Terminal,
): Promise<ExitCode> {
  const target = targetOf(options.picture, options.force);
  if (target !== null) await checkTarget(target);
  const weather = await weatherAsItIs(file, options);
  const { checkWeather, qualityChart } = await import('@noonloop/weather-io');
  const report = checkWeather(weather);
  if (options.picture === '-') {
    terminal.out(`${qualityChart(report)}\n`);
  } else {
    terminal.out(harmless(`${inWords(weather, report, terminal.width).join('\n')}\n`));
    if (target !== null) await deliver(qualityChart(report), target, terminal, options.quiet === true);
  }
  const isFaulty = report.findings.some(({ weight }) => weight === 'fault');
  return isFaulty && options.strict === true ? EXIT.input : EXIT.ok;
}

function inWords(weather: WeatherYear, report: QualityReport, width: number): string[] {
  const { site, columns } = weather;
  const sum = (column: Float64Array) => column.reduce((total, value) => total + value, 0);
  const { ghi, dni, dryBulb } = columns;
  const offset = site.utcOffset < 0 ? `−${-site.utcOffset}` : `+${site.utcOffset}`;
  const latitude = `${Math.abs(site.latitude).toFixed(2)}° ${site.latitude < 0 ? 'S' : 'N'}`;
  const longitude = `${Math.abs(site.longitude).toFixed(2)}° ${site.longitude < 0 ? 'W' : 'E'}`;
  const extreme = (pick: (a: number, b: number) => number) => dryBulb.reduce((a, b) => pick(a, b)).toFixed(1);
  const lines = [
    `${site.name || 'unnamed place'}: ${latitude} ${longitude}, ${Math.round(site.elevation)} m above the sea, UTC${offset}`,
    `${report.source}, ${weather.format} format`,
    '',
    `global irradiation    ${(sum(ghi) / 1000).toFixed(0).padStart(6)} kWh/m² a year, on the level`,
    `beam irradiation      ${(sum(dni) / 1000).toFixed(0).padStart(6)} kWh/m² a year, facing the sun`,
    `air                   ${(sum(dryBulb) / dryBulb.length).toFixed(1).padStart(6)} °C in the mean, ${extreme(Math.min)} to ${extreme(Math.max)} °C`.replaceAll(
      '-',
      '−',
    ),
    '',
    ...clockLines(report, width),
  ];
  lines.push(...wrap(`This year is ${report.verdict.text}.`, width));
  for (const { weight, text, worst } of report.findings) {
    lines.push(...wrap(`${weight}: ${text}`, width));
    for (const { stamp, value, limit, unit } of worst.slice(0, 3))
      lines.push(`    ${stamp}: ${Number(value.toPrecision(4))} against ${Number(limit.toPrecision(4))} ${unit}`);
  }
  lines.push('', 'What was assumed in reading it:');
  if (weather.assumptions.length === 0) lines.push('- nothing');
  for (const { text } of weather.assumptions) lines.push(...listItem(text, width));
  return lines;
}

function clockLines({ clock }: QualityReport, width: number): string[] {
  if (clock.late === null) return ['The clock could not be tested: there are too few clear days.'];
  const late = `${Math.abs(clock.late).toFixed(2)} h ${clock.late < 0 ? 'before' : 'after'}`;
  return wrap(
    `The light comes ${late} the sun of this place and zone (± ${clock.uncertainty.toFixed(2)} h, by ${clock.clearDays} clear days).`,
    width,
  );
}
