// From a table as it stands in a file to a weather year.
import { bestOffset, type ClosureInput, closureRms, contradicts } from './closure.ts';
import type { FormatInput, SourceTable } from './formats/format.ts';
import type { BuiltYear } from './gappy.ts';
import { completeLight } from './irradiance/complete.ts';
import { COLUMN_KEYS, type ColumnKey } from './limits.ts';
import { hourlyMeans, placeRows, type Shift, shiftOf, toLocalYear, toLocalYears } from './normalize.ts';
import { settleInstant } from './settle.ts';
import { readColumn } from './table/column.ts';
import { bridgeGaps } from './table/gaps.ts';
import { sequenceOfRows } from './table/row-order.ts';
import { checkSequence, type Sequence } from './table/sequence.ts';
import { hourStarts, zoneName } from './time/hours.ts';
import type { WeatherColumns, WeatherFormat, WeatherYear } from './year.ts';

/** Columns in hours, in the order of the file. */
type HourlyColumns = Record<ColumnKey, Float64Array | null>;

/**
 * Checks a table and brings it to whole local hours. With the option `gaps: 'keep'` `NaN` stands where something is missing, and
 * beam and diffuse that are missing as a whole stay `null`.
 *
 * @throws WeatherError with every fault of the rows, up to 20.
 */
export function buildYear(format: WeatherFormat, source: string, table: SourceTable, input: FormatInput): BuiltYear {
  const { faults, notes, options } = input;
  const keepGaps = options.gaps === 'keep';
  const sequence = sequenceOf(table, input);
  const cells = table.columns.map((column) => ({
    key: column.key,
    values: readColumn(column, table.rows, faults, notes, keepGaps),
  }));
  faults.throwIfAny();
  const raw = Object.fromEntries(COLUMN_KEYS.map((key) => [key, null])) as HourlyColumns;
  const { stepsPerHour, slots } = sequence;
  const total = (sequence.leap ? 8784 : 8760) * stepsPerHour;
  for (const { key, values } of cells) {
    const whole = keepGaps ? values : values && bridgeGaps(key, values, stepsPerHour, table.rows.lines, notes);
    raw[key] = whole && hourlyMeans(placeRows(whole, slots, total), stepsPerHour);
  }
  if (stepsPerHour > 1) {
    const text = `${stepsPerHour} rows an hour were averaged to hours; the energy is kept.`;
    notes.push({ code: 'averaged-to-hours', text });
  }
  if (sequence.leap) notes.push({ code: 'leap-day-dropped', text: '29 February was dropped; the year has 365 days.' });
  const utcOffset = localOffset(table, input);
  const site = { ...table.site, utcOffset };
  const shift = chooseShift(table, sequence, raw, utcOffset, input);
  const columns = {} as Record<ColumnKey, Float64Array | null>;
  for (const key of COLUMN_KEYS) columns[key] = raw[key] === null ? null : toLocalYear(raw[key], shift.hours);
  const measured = raw.dni !== null && raw.dhi !== null;
  const sun = { site, irradianceMidpoint: shift.midpoint, calendarYears: toLocalYears(sequence.years, shift.hours) };
  const light = { ghi: columns.ghi!, dni: columns.dni, dhi: columns.dhi };
  if (!keepGaps) Object.assign(columns, completeLight({ ...sun, columns: light }, notes));
  const year = { format, source, columns: columns as unknown as WeatherColumns, ...sun, assumptions: notes };
  if (measured && table.time.candidates === undefined) reportClosure(year, input);
  return year;
}

function sequenceOf(table: SourceTable, { faults, options }: FormatInput): Sequence {
  const { rows, time } = table;
  if (time.read === null) return sequenceOfRows(rows, time.calendarYear!, faults);
  return checkSequence(rows, time.read, time.cells, time.name, faults, options.gaps === 'keep');
}

/** Local standard time of the result. */
function localOffset({ site }: SourceTable, { options, notes }: FormatInput): number {
  const { utcOffset } = options;
  if (utcOffset === undefined || utcOffset === site.utcOffset) return site.utcOffset;
  const text = `Local standard time is ${zoneName(utcOffset)} as the caller asked, not ${zoneName(site.utcOffset)}.`;
  notes.push({ code: 'zone-from-caller', text });
  return utcOffset;
}

function chooseShift(
  { time, site }: SourceTable,
  sequence: Sequence,
  columns: HourlyColumns,
  utcOffset: number,
  { notes }: FormatInput,
): Shift {
  const { midpoint, zone, candidates } = time;
  if (candidates !== undefined && columns.dni !== null && columns.dhi !== null) {
    const input = { columns: columns as unknown as WeatherColumns, latitude: site.latitude, longitude: site.longitude };
    return shiftOf(settleInstant(input, sequence, candidates, notes), utcOffset);
  }
  const shift = shiftOf(midpoint === 'at the stamped minutes' ? sequence.meanMinute : midpoint, utcOffset - zone);
  if (shift.hours !== 0) {
    const text =
      `Rows stamped in ${zoneName(zone)} were moved by ${shift.hours} h, so that each holds its irradiance in ` +
      `${zoneName(utcOffset)}; what left the year at one end came in at the other.`;
    notes.push({ code: 'rolled-to-local-time', text });
  }
  return shift;
}

/** Offsets at which a stamp may be wrong, besides the assumed one. [h] */
const OTHER_OFFSETS = [-1, -0.75, -0.5, -0.25, 0.25, 0.5, 0.75, 1];

/** Every fifth hour with light is enough to see a quarter of an hour. */
const STRIDE = 5;

/** Says when the irradiance closes much better at another instant than the format's; nothing is moved. */
function reportClosure(year: WeatherYear, { notes }: FormatInput): void {
  const { latitude, longitude } = year.site;
  const input: ClosureInput = { columns: year.columns, starts: hourStarts(year), latitude, longitude };
  const assumed = { offset: year.irradianceMidpoint, rms: closureRms(input, year.irradianceMidpoint, STRIDE) };
  const best = bestOffset(
    input,
    OTHER_OFFSETS.map((offset) => assumed.offset + offset),
    STRIDE,
  );
  if (!contradicts(best, assumed)) return;
  const later = best.offset - assumed.offset;
  const text =
    `GHI = DHI + DNI cos Z closes to ${assumed.rms.toFixed(1)} W/m² at the assumed instant, but to ${best.rms.toFixed(1)} W/m² ` +
    `${Math.abs(later)} h ${later > 0 ? 'later' : 'earlier'}: the stamps or the zone may be wrong. Nothing was moved.`;
  // A file of our own that was written from such a year says it already.
  if (!notes.some((note) => note.text === text)) notes.push({ code: 'closure-mismatch', text });
}
