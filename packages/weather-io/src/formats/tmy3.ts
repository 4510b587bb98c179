// NREL's third typical meteorological year (TMY3), CSV.
// Layout: Wilcox & Marion (2008), Users Manual for TMY3 Data Sets, NREL/TP-581-43156.
import { dataRows, readCsv } from '../table/csv.ts';
import { digitsAt, hasNumbers, type StampReader } from '../table/sequence.ts';
import { STANDARD_WIND_HEIGHT } from '../year.ts';
import { type ColumnName, type Format, locateColumns, locateTime, rowAt, SiteReader } from './format.ts';

const MISSING = [-9900];

const COLUMNS: readonly ColumnName[] = [
  { key: 'ghi', name: 'GHI (W/m^2)', unit: 'W/m2' },
  { key: 'dni', name: 'DNI (W/m^2)', unit: 'W/m2' },
  { key: 'dhi', name: 'DHI (W/m^2)', unit: 'W/m2' },
  { key: 'dryBulb', name: 'Dry-bulb (C)', unit: 'degC' },
  { key: 'dewPoint', name: 'Dew-point (C)', unit: 'degC' },
  { key: 'relativeHumidity', name: 'RHum (%)', unit: '%' },
  { key: 'windSpeed', name: 'Wspd (m/s)', unit: 'm/s' },
  { key: 'pressure', name: 'Pressure (mbar)', unit: 'mbar' },
  { key: 'cloudCover', name: 'OpqCld (tenths)', unit: 'tenths' },
  { key: 'albedo', name: 'Alb (unitless)', unit: 'fraction', zeroIsUnmeasured: true },
];

/** Light: means over the hour that ends at the stamp, 01:00 to 24:00, in local standard time. All else: at the stamp. */
export const tmy3: Format = {
  name: 'tmy3',

  sniff: (head) => head[1]?.startsWith('Date (MM/DD/YYYY)') ?? false,

  parse({ text, faults, notes }) {
    const csv = readCsv(text, faults);
    const place = rowAt(csv, 0, faults);
    const header = rowAt(csv, 1, faults);
    const read = new SiteReader(faults);
    const site = {
      name: [place[1], place[2]].filter(Boolean).join(', '),
      utcOffset: read.utcOffset(place[3], 1),
      latitude: read.latitude(place[4], 1),
      longitude: read.longitude(place[5], 1),
      elevation: read.elevation(place[6], 1),
      windHeight: STANDARD_WIND_HEIGHT,
    };
    const columns = locateColumns({ header, line: 2, missing: MISSING }, COLUMNS, { faults, notes });
    const date = locateTime(header, 2, 'Date (MM/DD/YYYY)', faults);
    const time = locateTime(header, 2, 'Time (HH:MM)', faults);
    faults.throwIfAny();
    notes.push({
      code: 'hour-ending-means',
      text: 'Stamps end the hour; irradiance is its mean, in local standard time.',
    });
    return {
      site,
      columns,
      rows: dataRows(csv, 'tmy3', { start: 2, width: header.length }, faults),
      time: {
        read: stampReader(date, time),
        cells: [date, time],
        name: 'Date (MM/DD/YYYY), Time (HH:MM)',
        zone: site.utcOffset,
        midpoint: 0.5,
        air: 1, // "at the time indicated": users manual, table 1-3 of the data fields
      },
    };
  },
};

const stampReader =
  (date: number, time: number): StampReader =>
  (cells, out) => {
    const day = cells[date]!.trim(); // 1/31/1988
    const clock = cells[time]!.trim(); // 09:00
    const month = day.indexOf('/');
    const year = day.length - 5;
    if (month > 2 || year - month > 3 || day[year] !== '/' || clock.length > 5 || !clock.endsWith(':00')) return false;
    out.month = digitsAt(day, 0, month);
    out.day = digitsAt(day, month + 1, year);
    out.year = digitsAt(day, year + 1, day.length);
    out.hour = digitsAt(clock, 0, clock.length - 3) - 1;
    out.minute = 0;
    return hasNumbers(out);
  };
