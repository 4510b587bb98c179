// EPW weather, CSV without a header row.
// Layout: the format's own documentation, its data dictionary; missing marks from there, from
// memory: each means itself and all above it. A long-wave irradiance of 0 is none: no sky is at 0 K.
import { quote } from '../errors.ts';
import type { ColumnSource } from '../table/column.ts';
import { type Csv, dataRows, readCsv } from '../table/csv.ts';
import { type StampReader, wholeNumber } from '../table/sequence.ts';
import { STANDARD_WIND_HEIGHT } from '../year.ts';
import { type Format, type FormatInput, type Reading, rowAt, SiteReader } from './format.ts';

/** Fields up to wind speed; older files end after the snow, without albedo. */
const FEWEST_FIELDS = 22;

const COLUMNS: readonly ColumnSource[] = [
  { key: 'ghi', name: 'Global Horizontal Radiation', index: 13, unit: 'W/m2', missing: [], missingFrom: 9999 },
  { key: 'dni', name: 'Direct Normal Radiation', index: 14, unit: 'W/m2', missing: [], missingFrom: 9999 },
  { key: 'dhi', name: 'Diffuse Horizontal Radiation', index: 15, unit: 'W/m2', missing: [], missingFrom: 9999 },
  { key: 'dryBulb', name: 'Dry Bulb Temperature', index: 6, unit: 'degC', missing: [], missingFrom: 99.9 },
  { key: 'dewPoint', name: 'Dew Point Temperature', index: 7, unit: 'degC', missing: [], missingFrom: 99.9 },
  { key: 'relativeHumidity', name: 'Relative Humidity', index: 8, unit: '%', missing: [], missingFrom: 999 },
  { key: 'windSpeed', name: 'Wind Speed', index: 21, unit: 'm/s', missing: [], missingFrom: 999 },
  { key: 'pressure', name: 'Atmospheric Station Pressure', index: 9, unit: 'Pa', missing: [], missingFrom: 999999 },
  {
    key: 'skyLongwave',
    name: 'Horizontal Infrared Radiation Intensity',
    index: 12,
    unit: 'W/m2',
    missing: [0],
    missingFrom: 9999,
  },
  { key: 'cloudCover', name: 'Opaque Sky Cover', index: 23, unit: 'tenths', missing: [], missingFrom: 99 },
  { key: 'albedo', name: 'Albedo', index: 32, unit: 'fraction', missing: [], missingFrom: 999, zeroIsUnmeasured: true },
  { key: 'snowDepth', name: 'Snow Depth', index: 30, unit: 'cm', missing: [], missingFrom: 999 },
];

/**
 * Hours 1 to 24, each stamped at its end. By the format irradiance is the hour's mean in the zone of the LOCATION line; files
 * made from instants say otherwise in a comment, and some contradict themselves: so the closure decides.
 */
export const epw: Format = {
  name: 'epw',

  sniff: (head) => head[0]?.startsWith('LOCATION,') ?? false,

  parse(input) {
    const { text, faults } = input;
    const csv = readCsv(text, faults);
    const place = rowAt(csv, 0, faults);
    const read = new SiteReader(faults);
    const site = {
      name: [place[1], place[3]].filter((part) => part !== '' && part !== '-').join(', '),
      latitude: read.latitude(place[6], 1),
      longitude: read.longitude(place[7], 1),
      utcOffset: read.utcOffset(place[8], 1),
      elevation: read.elevation(place[9], 1),
      windHeight: STANDARD_WIND_HEIGHT,
    };
    const start = firstHour(csv, input);
    const width = Math.max(csv.rows[start]?.length ?? 0, FEWEST_FIELDS);
    const zone = site.utcOffset;
    return {
      site,
      rows: dataRows(csv, 'epw', { start, width }, faults),
      columns: COLUMNS.filter(({ index }) => index < width),
      time: {
        read: readStamp,
        cells: [0, 1, 2, 3],
        name: 'Year, Month, Day, Hour',
        zone,
        midpoint: 0.5,
        air: 1,
        longwave: 0.5,
        candidates: () => readings(csv, start, zone),
        stampAt: 1,
      },
    };
  },
};

/** Index of the row after DATA PERIODS, the last line of the header. */
function firstHour(csv: Csv, { faults }: FormatInput): number {
  const index = csv.rows.slice(0, 60).findIndex((row) => row[0]?.trim() === 'DATA PERIODS');
  if (index < 0) {
    faults.fail({
      code: 'bad-header',
      line: 1,
      column: 'DATA PERIODS',
      expected: 'a line that begins with DATA PERIODS before the hours',
      remedy: 'Download or export the file again.',
    });
  }
  const perHour = csv.rows[index]![2]?.trim();
  if (perHour !== '1') {
    faults.fail({
      code: 'bad-header',
      line: csv.firstLine + index,
      column: 'Number of Records per hour',
      value: quote(perHour ?? ''),
      expected: '1 record an hour',
      remedy: 'Export the file in hours.',
    });
  }
  return index + 1;
}

/** Hourly means with the rest at the stamp, as the dictionary has it: from the start of the stamped hour. [h] */
const BY_DICTIONARY = { light: 0.5, air: 1, longwave: 0.5 };

/**
 * What the file may mean: the dictionary's reading, and where a comment gives an offset of the light from the stamp, rows of PVGIS,
 * whose air holds at the start of the stamped hour; each in the zone of LOCATION and in UTC. Then instants of all columns at the start
 * and the end of the hour in the zone of LOCATION. The format's own comes first.
 */
function readings(csv: Csv, start: number, zone: number): Reading[] {
  const inUtc = ({ light, air, longwave }: Reading, from: number): Reading => ({
    light: Number((light - from).toFixed(6)),
    air: air - from,
    longwave: longwave - from,
  });
  const list = [inUtc(BY_DICTIONARY, zone)];
  for (const row of csv.rows.slice(0, start)) {
    const offset = /Irradiance Time Offset \(h\):\s*(-?\d+(?:\.\d+)?)/.exec(row.join(','));
    if (offset === null) continue;
    const rows = { light: 1 + Number(offset[1]), air: 0, longwave: -0.5 };
    list.push(inUtc(rows, zone), inUtc(rows, 0));
  }
  list.push(inUtc(BY_DICTIONARY, 0));
  for (const at of [0, 1]) list.push(inUtc({ light: at, air: at, longwave: at }, zone));
  return list;
}

const readStamp: StampReader = (cells, out) => {
  out.year = wholeNumber(cells[0]);
  out.month = wholeNumber(cells[1]);
  out.day = wholeNumber(cells[2]);
  out.hour = wholeNumber(cells[3]) - 1;
  out.minute = 0; // the field says 0 or 60 for the same hour
  return true;
};
