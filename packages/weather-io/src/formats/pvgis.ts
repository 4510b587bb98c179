// Typical year of PVGIS (European Commission, Joint Research Centre), CSV.
import { type Csv, dataRows, readCsv } from '../table/csv.ts';
import { readDigits, type StampReader } from '../table/sequence.ts';
import { zoneName } from '../time/hours.ts';
import { STANDARD_WIND_HEIGHT } from '../year.ts';
import {
  type ColumnName,
  type Format,
  type FormatInput,
  locateColumns,
  locateTime,
  type Reading,
  SiteReader,
} from './format.ts';

const COLUMNS: readonly ColumnName[] = [
  { key: 'ghi', name: 'G(h)', unit: 'W/m2' },
  { key: 'dni', name: 'Gb(n)', unit: 'W/m2' },
  { key: 'dhi', name: 'Gd(h)', unit: 'W/m2' },
  { key: 'dryBulb', name: 'T2m', unit: 'degC' },
  { key: 'relativeHumidity', name: 'RH', unit: '%' },
  { key: 'windSpeed', name: 'WS10m', unit: 'm/s' },
  { key: 'pressure', name: 'SP', unit: 'Pa' },
  { key: 'skyLongwave', name: 'IR(h)', unit: 'W/m2' },
];

const TIME = 'time(UTC)';

/**
 * Air, wind and pressure are instants of the reanalysis at the stamp. Its long-wave irradiance is gathered over the hour that ends
 * there (Copernicus, ERA5 documentation: mean rates and accumulations); that PVGIS passes it on so is inferred. [h]
 */
const INSTANTS = { air: 0, longwave: -0.5 };

/** Instants in UTC, the irradiance at the stamp plus the offset of the header. */
export const pvgis: Format = {
  name: 'pvgis',

  sniff: (head) => head[0]?.startsWith('Latitude (decimal degrees)') ?? false,

  parse(input) {
    const { text, faults, notes, options } = input;
    const csv = readCsv(text, faults);
    const start = headerRow(csv, input);
    const header = csv.rows[start]!;
    const line = csv.firstLine + start;
    const labels = headerLabels(csv, start);
    const read = new SiteReader(faults);
    const value = (label: string) => labels.get(label)?.value;
    const lineOf = (label: string) => labels.get(label)?.line ?? 1; // a line that is not there: where the header begins
    const latitude = read.latitude(value('Latitude (decimal degrees)'), lineOf('Latitude (decimal degrees)'));
    const longitude = read.longitude(value('Longitude (decimal degrees)'), lineOf('Longitude (decimal degrees)'));
    const elevation = read.elevation(value('Elevation (m)'), lineOf('Elevation (m)'));
    const offset = timeOffset(labels.get('Irradiance Time Offset (h)'), read, input);
    const columns = locateColumns({ header, line, missing: [] }, COLUMNS, { faults, notes });
    const time = locateTime(header, line, TIME, faults);
    faults.throwIfAny();
    const utcOffset = Math.round(longitude / 15);
    if (options.utcOffset === undefined) {
      const text = `The file is in UTC; local standard time is taken as ${zoneName(utcOffset)}, the whole hours nearest to the longitude.`;
      notes.push({ code: 'zone-from-longitude', text });
    }
    return {
      site: {
        name: `${latitude}, ${longitude}`,
        latitude,
        longitude,
        elevation,
        utcOffset,
        windHeight: STANDARD_WIND_HEIGHT,
      },
      columns,
      rows: dataRows(csv, 'pvgis', { start: start + 1, end: footer(csv, start + 1), width: header.length }, faults),
      time: {
        read: stampReader(time),
        cells: [time],
        name: TIME,
        zone: 0,
        midpoint: offset ?? 0,
        ...INSTANTS,
        ...(offset === null ? { candidates: () => readings() } : {}),
      },
    };
  },
};

/** Index of the row with the column names. */
function headerRow(csv: Csv, { faults }: FormatInput): number {
  const index = csv.rows.slice(0, 60).findIndex((row) => row[0]?.startsWith('time'));
  if (index >= 0) return index;
  return faults.fail({
    code: 'missing-column',
    line: 1,
    column: TIME,
    expected: 'a row of column names that begins with time(UTC)',
    remedy: 'Download the typical year (TMY) as CSV again.',
  });
}

interface Label {
  readonly value: string;
  readonly line: number;
}

/** Header lines of the form `label: value`. */
function headerLabels(csv: Csv, end: number): Map<string, Label> {
  const labels = new Map<string, Label>();
  csv.rows.slice(0, end).forEach((row, index) => {
    const parts = /^([^:]+):(.*)$/.exec(row.join(','));
    if (parts !== null) labels.set(parts[1]!.trim(), { value: parts[2]!, line: csv.firstLine + index });
  });
  return labels;
}

function timeOffset(label: Label | undefined, read: SiteReader, { notes }: FormatInput): number | null {
  if (label !== undefined) return read.number(label.value, label.line, 'Irradiance Time Offset', [-1, 1], 'h');
  const text =
    'The header gives no irradiance time offset; irradiance is taken at the stamp unless the sun says otherwise.';
  notes.push({ code: 'no-time-offset', text });
  return null;
}

/** Where the light may stand in a file that does not say: at the stamp, or at any twentieth of an hour about it. */
const readings = (): Reading[] =>
  [0, ...Array.from({ length: 41 }, (_, step) => step / 20 - 1)].map((light) => ({ light, ...INSTANTS }));

/** Index of the first row after the hours: the empty line before the legend, after the last row with a stamp. */
function footer(csv: Csv, start: number): number {
  let last = csv.rows.length - 1;
  while (last >= start && !STAMP.test(csv.rows[last]!.join(','))) last--;
  for (let index = Math.max(last, start); index < csv.rows.length; index++) {
    const row = csv.rows[index]!;
    if (row.length === 1 && row[0]!.trim() === '') return index;
  }
  return csv.rows.length;
}

/** A stamp such as `20070101:0000` anywhere in a row, in its own column or in another. */
const STAMP = /(?:^|,)\s*\d{8}:\d{4}\s*(?:,|$)/;

/** Where its numbers begin. */
const DIGITS = [0, 4, 6, 9, 11];

const stampReader =
  (time: number): StampReader =>
  (cells, out) => {
    const text = cells[time]!.trim(); // 20070131:0900
    return text.length === 13 && text[8] === ':' && readDigits(text, DIGITS, out);
  };
