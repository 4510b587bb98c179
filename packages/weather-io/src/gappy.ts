// A weather year with holes: a type of its own, which no simulation takes.
import type { ColumnKey } from './limits.ts';
import type { WeatherColumns, WeatherYear } from './year.ts';

/**
 * Hourly columns in which `NaN` means missing; `null` where the source has nothing of a quantity. Beam and diffuse may be
 * `null` too: `fillGaps` makes them from global irradiance.
 */
export type GappyColumns = Pick<WeatherColumns, 'ghi' | 'dryBulb'> & {
  readonly [Key in Exclude<ColumnKey, 'ghi' | 'dryBulb'>]: Float64Array | null;
};

/**
 * One year of hourly weather in which hours are missing; from the readers with the option `gaps: 'keep'`. It has no `columns`,
 * so that nothing takes it for a {@link WeatherYear}; `fillGaps` makes one of it.
 */
export interface GappyYear extends Omit<WeatherYear, 'columns'> {
  /** Hourly values, `NaN` where missing. */
  readonly columnsWithGaps: GappyColumns;
  /** Hours in which global irradiance, dry bulb, or a column of beam or diffuse that is there, is missing. */
  readonly missingHours: number;
}

/** A year as built, whole or not; becomes one of the two types. */
export interface BuiltYear extends Omit<WeatherYear, 'columns'> {
  readonly columns: GappyColumns;
}

/** Columns that a simulation needs. */
const NEEDED = ['ghi', 'dni', 'dhi', 'dryBulb'] as const satisfies ColumnKey[];

/** Hours in which something is missing that a simulation needs. */
function countMissing(columns: GappyColumns): number {
  let hours = 0;
  for (let hour = 0; hour < columns.ghi.length; hour++) {
    if (NEEDED.some((key) => columns[key] !== null && Number.isNaN(columns[key][hour]))) hours++;
  }
  return hours;
}

/** The year with its holes. */
export function asGappy({ columns, ...year }: BuiltYear): GappyYear {
  return { ...year, columnsWithGaps: columns, missingHours: countMissing(columns) };
}
