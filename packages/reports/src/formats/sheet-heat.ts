/** Rows of the first sheet about heat and cold, with their ranges. */
import type { MeasureBand, RunResult } from '@noonloop/sim-core';
import { dayWords } from '../answer/words.ts';
import type { ReportModel } from '../model/types.ts';
import type { ReportOptions } from '../options.ts';
import { bandRange, bandsAt, rangeStep } from '../ranges.ts';
import { displayUnit, formatNumber, roundTo, toDisplay } from '../units.ts';
import { row, type SheetRow, type Shown } from './sheet-rows.ts';

/** Numbers of the sheet's heat that may have a band. */
type BandedKey = 'stagnationHours' | 'highLimitHours' | 'peakTankTemperature';

/** How far the coldest fluid of the year stayed above its freezing point in that hour; below 0 it froze. [K] */
export function freezingSpare({ columns }: RunResult): number {
  let least = Number.POSITIVE_INFINITY;
  for (let hour = 0; hour < 8760; hour++) {
    const coldest = Math.min(columns.absorberMinimumTemperature[hour]!, columns.pipeMinimumTemperature[hour]!);
    least = Math.min(least, coldest - columns.freezingPoint[hour]!);
  }
  return least;
}

/** `about 88 h`, or none. */
function hoursShown(hours: number, band?: MeasureBand): Shown {
  if (hours < 0.5) return { text: 'none', value: 0 };
  const step = band === undefined ? 1 : Math.max(1, rangeStep(band.high - band.low));
  // Fewer hours than half a step are shown as they are: they are not none.
  const rounded = Math.round(hours / step) * step || hours;
  return { text: `about ${formatNumber(rounded, 0)} h`, value: hours };
}

/** Share of the hot water that the sun makes; only where its range is known, for the answer has the number. */
export function shareRows({ runs, units }: ReportModel, options: ReportOptions): SheetRow[] {
  const ranges = runs.map((_, index) => {
    const band = bandsAt(options, index, runs.length)?.sunShare;
    return band === undefined ? '' : bandRange('sunShare', band, units);
  });
  if (ranges.every((range) => range === '')) return [];
  return [
    row({
      group: 'saved',
      label: 'Hot water that the sun makes',
      shown: runs.map(({ summary: { year } }) => ({
        text: year.sunShare === null ? '–' : `${formatNumber(100 * year.sunShare, 0)} %`,
        value: year.sunShare === null ? null : 100 * year.sunShare,
      })),
      ranges,
      difference: (size) => `${formatNumber(size, 0)} %`,
    }),
  ];
}

/** Hottest and coldest, hours without use. */
export function heatRows(
  results: readonly RunResult[],
  { runs, units }: ReportModel,
  options: ReportOptions,
): SheetRow[] {
  const years = runs.map(({ summary }) => summary.year);
  const ranges = (key: BandedKey): string[] =>
    runs.map((_, index) => {
      const band = bandsAt(options, index, runs.length)?.[key];
      return band === undefined ? '' : bandRange(key, band, units);
    });
  const hours = (label: string, key: 'stagnationHours' | 'highLimitHours') => {
    const known = ranges(key);
    return row({
      group: 'heat',
      label,
      shown: years.map((year, index) => hoursShown(year[key], bandsAt(options, index, runs.length)?.[key])),
      ranges: known,
      difference: (size) => `${formatNumber(size, 0)} h`,
    });
  };
  const degrees = displayUnit('temperature', units).symbol;
  const { scale } = displayUnit('temperatureDifference', units);
  return [
    row({
      group: 'heat',
      label: 'Hottest tank',
      shown: years.map(({ peakTankTemperature }) => {
        const value = roundTo(toDisplay(peakTankTemperature, 'temperature', units), 0);
        return { text: `${formatNumber(value, 0)} ${degrees}`, value };
      }),
      ranges: ranges('peakTankTemperature'),
      notes: years.map(({ peakTankHour }) => `on ${dayWords(peakTankHour)}`),
      difference: (size) => `${formatNumber(size, 0)} ${degrees}`,
    }),
    hours('Stagnation in the sun', 'stagnationHours'),
    hours('Stopped by the high limit', 'highLimitHours'),
    row({
      group: 'heat',
      label: 'Coldest fluid',
      shown: results.map((result) => {
        const spare = roundTo(freezingSpare(result) * scale, 0);
        const size = `${formatNumber(Math.abs(spare), 0)} ${degrees}`;
        return { text: spare < 0 ? `${size} too cold: it froze` : `${size} from freezing`, value: spare };
      }),
      difference: (size) => `${formatNumber(size, 0)} ${degrees}`,
    }),
  ];
}
