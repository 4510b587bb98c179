// The one line of each format that no other has.
import type { WeatherFormat } from '../year.ts';
import { LAYOUT_MARK } from './plain-layout.ts';

/** The format whose header has this row, or `null`. */
export function signatureOf(row: readonly string[]): WeatherFormat | null {
  const first = row[0]?.trim() ?? '';
  if (first === 'LOCATION') return 'epw';
  if (first === 'Date (MM/DD/YYYY)') return 'tmy3';
  if (first.startsWith('Latitude (decimal degrees)') || first === 'time(UTC)') return 'pvgis';
  if (first === 'Source' && row[1]?.trim() === 'Location ID') return 'nsrdb';
  return first.startsWith(LAYOUT_MARK) ? 'plain' : null;
}
