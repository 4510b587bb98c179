// National Solar Radiation Database (NREL), CSV: one real year or a typical one, in steps of 5 to 60 minutes.
import { type Faults, quote } from '../errors.ts';
import { INDISPENSABLE, LIMITS } from '../limits.ts';
import { dataRows, headerIndex, readCsv } from '../table/csv.ts';
import type { Sequence } from '../table/sequence.ts';
import { type ColumnName, type Format, locateColumns, locateTime, type Reading, rowAt, SiteReader } from './format.ts';
import { numberStamps } from './stamps.ts';

/** Fill values, from memory; the data sets themselves are filled and need none. */
const MISSING = [-9999, -999];

/** "Wind speed at 2 meters above the surface": variable descriptions of the database's own program, NREL, 2024. [m] */
const WIND_HEIGHT = 2;

const COLUMNS: readonly (ColumnName & { readonly printed: readonly string[] })[] = [
  { key: 'ghi', name: 'GHI', unit: 'W/m2', printed: ['w/m2'] },
  { key: 'dni', name: 'DNI', unit: 'W/m2', printed: ['w/m2'] },
  { key: 'dhi', name: 'DHI', unit: 'W/m2', printed: ['w/m2'] },
  { key: 'dryBulb', name: 'Temperature', unit: 'degC', printed: ['c'] },
  { key: 'dewPoint', name: 'Dew Point', unit: 'degC', printed: ['c'] },
  { key: 'relativeHumidity', name: 'Relative Humidity', unit: '%', printed: ['%'] },
  { key: 'windSpeed', name: 'Wind Speed', unit: 'm/s', printed: ['m/s'] },
  { key: 'pressure', name: 'Pressure', unit: 'mbar', printed: ['mbar', 'millibar', 'millibars', 'hpa'] },
  {
    key: 'albedo',
    name: 'Surface Albedo',
    unit: 'fraction',
    printed: ['n/a', '1', 'unitless'],
    zeroIsUnmeasured: true,
  },
];

/** Instants at the stamped minutes, in the header's "Time Zone"; local standard time is its "Local Time Zone". */
export const nsrdb: Format = {
  name: 'nsrdb',

  sniff: (head) => head[0]?.startsWith('Source,Location ID') ?? false,

  parse({ text, faults, notes }) {
    const csv = readCsv(text, faults);
    const labels = headerIndex(rowAt(csv, 0, faults));
    const values = rowAt(csv, 1, faults);
    const header = rowAt(csv, 2, faults);
    const value = (label: string): string | undefined => values[labels.get(label) ?? -1];
    const read = new SiteReader(faults);
    const zone = read.utcOffset(value('Time Zone'), 2);
    const site = {
      name: [value('Source'), value('Location ID')].filter(Boolean).join(' '),
      latitude: read.latitude(value('Latitude'), 2),
      longitude: read.longitude(value('Longitude'), 2),
      elevation: read.elevation(value('Elevation'), 2),
      windHeight: WIND_HEIGHT,
      utcOffset: labels.has('Local Time Zone') ? read.utcOffset(value('Local Time Zone'), 2) : zone,
    };
    checkUnits(value, faults);
    const columns = locateColumns({ header, line: 3, missing: MISSING }, COLUMNS, { faults, notes }, INDISPENSABLE);
    const time = ['Year', 'Month', 'Day', 'Hour', 'Minute'].map((name) => locateTime(header, 3, name, faults));
    faults.throwIfAny();
    notes.push({ code: 'instants', text: 'Irradiance is taken at the stamped minutes and stands for its hour.' });
    return {
      site,
      columns,
      rows: dataRows(csv, 'nsrdb', { start: 3, width: header.length }, faults),
      time: {
        read: numberStamps(time),
        cells: time,
        name: 'Year, Month, Day, Hour, Minute',
        zone,
        midpoint: 'at the stamped minutes',
        air: 'at the stamped minutes',
        candidates: (sequence) => readings(sequence, zone),
      },
    };
  },
};

/**
 * What stamps may mean: their minute; in files of one row an hour another one, for typical years of before late May 2019 have minute 0
 * where the numbers hold at :30 (pvlib-python issues 731 and 733); each in the zone of the header and in UTC.
 */
function readings({ stepsPerHour, firstMinute }: Sequence, zone: number): Reading[] {
  const minutes = stepsPerHour > 1 ? [0.5] : [firstMinute, 0.5, 0, 1];
  return minutes.flatMap((minute) => [minute - zone, minute]).map((at) => ({ light: at, air: at, longwave: at }));
}

/** The header prints the units of its columns; another than expected would be read wrongly. */
function checkUnits(value: (label: string) => string | undefined, faults: Faults): void {
  for (const { key, name, printed } of COLUMNS) {
    const found = value(`${name} Units`);
    if (found === undefined || printed.includes(found.trim().toLowerCase())) continue;
    faults.add({
      code: 'bad-header',
      line: 2,
      column: `${name} Units`,
      value: quote(found),
      expected: `${LIMITS[key].words} in ${printed.join(' or ')}`,
      remedy: 'Download the file in these units.',
    });
  }
}
