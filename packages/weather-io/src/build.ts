// From a table as it stands in a file to a weather year.
import { bestOffset, type ClosureInput, closureRms, contradicts } from './closure.ts';
import { type FineRows, fineLightOf } from './fine.ts';
import type { FormatInput, Reading, SourceTable, TimeSource } from './formats/format.ts';
import type { BuiltYear } from './gappy.ts';
import { completeLight } from './irradiance/complete.ts';
import { COLUMN_KEYS, type ColumnKey } from './limits.ts';
import {
  atMidHour,
  hourlyMeans,
  hoursOfInstants,
  placeRows,
  type Shift,
  shiftOf,
  toLocalYear,
  toLocalYears,
} from './normalize.ts';
import { settleReading } from './settle.ts';
import { readColumn } from './table/column.ts';
import { bridgeGaps } from './table/gaps.ts';
import { sequenceOfRows } from './table/row-order.ts';
import { checkSequence, type Sequence } from './table/sequence.ts';
import { hourStarts, zoneName } from './time/hours.ts';
import type { WeatherAssumption, WeatherColumns, WeatherFormat, WeatherYear } from './year.ts';

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
  const fine: Record<keyof FineRows, Float64Array | null> = { ghi: null, dni: null, dhi: null };
  const total = (sequence.leap ? 8784 : 8760) * stepsPerHour;
  for (const { key, values } of cells) {
    const whole = keepGaps ? values : values && bridgeGaps(key, values, stepsPerHour, table.rows.lines, notes);
    const rows = whole && placeRows(whole, slots, total);
    if (isLight(key)) fine[key] = rows;
    raw[key] = rows && (areInstants(key, table) ? hoursOfInstants(rows, sequence) : hourlyMeans(rows, stepsPerHour));
  }
  if (stepsPerHour > 1) {
    const text = `${stepsPerHour} rows an hour were averaged to hours; the energy is kept.`;
    notes.push({ code: 'averaged-to-hours', text });
  }
  if (sequence.leap) notes.push({ code: 'leap-day-dropped', text: '29 February was dropped; the year has 365 days.' });
  const utcOffset = localOffset(table, input);
  const site = { ...table.site, utcOffset };
  const reading = chooseReading(table, sequence, raw, utcOffset, input);
  const shift = shiftOf(reading.light);
  const columns = {} as Record<ColumnKey, Float64Array | null>;
  for (const key of COLUMN_KEYS) columns[key] = raw[key] && toClock(key, raw[key], reading, shift);
  if (columns.dryBulb !== null && Math.abs((reading.air + 0.5) % 1) > 1e-6) notes.push(AT_MID_HOUR);
  const measured = raw.dni !== null && raw.dhi !== null;
  const sun = { site, irradianceMidpoint: shift.midpoint, calendarYears: toLocalYears(sequence.years, shift.hours) };
  const light = { ghi: columns.ghi!, dni: columns.dni, dhi: columns.dhi };
  if (!keepGaps) Object.assign(columns, completeLight({ ...sun, columns: light }, notes));
  const whole = columns as unknown as WeatherColumns;
  const fineLight =
    keepGaps || !options.ownStep
      ? undefined
      : fineLightOf(fine, whole, { sequence, time: table.time, light: reading.light }, notes);
  const year = { format, source, columns: whole, ...sun, assumptions: notes, ...(fineLight && { fineLight }) };
  if (measured && !notes.some(({ code }) => CLOSED.has(code))) reportClosure(year, input);
  return year;
}

/** Notes after which the closure has nothing to add. */
const CLOSED = new Set(['closure-confirms-stamps', 'instant-from-closure']);

const AT_MID_HOUR: WeatherAssumption = {
  code: 'air-at-mid-hour',
  text: 'Air, wind, pressure and clouds hold at instants; each hour has them at its middle, between the two instants beside it.',
};

/** Columns that hold at instants or as means of their own, beside the light. */
const AIR: ReadonlySet<ColumnKey> = new Set<ColumnKey>([
  'dryBulb',
  'dewPoint',
  'relativeHumidity',
  'windSpeed',
  'pressure',
  'cloudCover',
]);

const isLight = (key: ColumnKey): key is keyof FineRows => key === 'ghi' || key === 'dni' || key === 'dhi';

const areInstants = (key: ColumnKey, { time }: SourceTable): boolean =>
  (AIR.has(key) ? time.air : time.midpoint) === 'at the stamped minutes';

/** A column in local hours: light in whole rows, air at the middle of each hour, what changes by the day with the light. */
function toClock(key: ColumnKey, values: Float64Array, { air, longwave }: Reading, { hours }: Shift): Float64Array {
  if (AIR.has(key)) return atMidHour(values, air);
  return key === 'skyLongwave' ? atMidHour(values, longwave) : toLocalYear(values, hours);
}

function sequenceOf(table: SourceTable, { faults, options }: FormatInput): Sequence {
  const { rows, time } = table;
  const { cells, name, read } = time;
  if (read === null) return sequenceOfRows(rows, time.calendarYear!, faults);
  return checkSequence(rows, { read, cells, name }, faults, options.gaps === 'keep');
}

/** Local standard time of the result. */
function localOffset({ site }: SourceTable, { options, notes }: FormatInput): number {
  const { utcOffset } = options;
  if (utcOffset === undefined || utcOffset === site.utcOffset) return site.utcOffset;
  const text = `Local standard time is ${zoneName(utcOffset)} as the caller asked, not ${zoneName(site.utcOffset)}.`;
  notes.push({ code: 'zone-from-caller', text });
  return utcOffset;
}

/** Where the columns hold, from the start of the stamped hour as the local clock counts it. */
function chooseReading(
  { time, site }: SourceTable,
  sequence: Sequence,
  columns: HourlyColumns,
  utcOffset: number,
  { notes }: FormatInput,
): Reading {
  const { zone, candidates, stampAt = 0 } = time;
  const own = plainReading(time, sequence, utcOffset - zone);
  let reading = own;
  if (candidates !== undefined && columns.dni !== null && columns.dhi !== null) {
    const input = { columns: columns as unknown as WeatherColumns, latitude: site.latitude, longitude: site.longitude };
    const confirms = stampAt > 0; // an EPW is tested each time, and says so
    const { light, air, longwave } = settleReading(input, sequence, candidates(sequence), { stampAt, confirms }, notes);
    reading = { light: light + utcOffset, air: air + utcOffset, longwave: longwave + utcOffset };
    if (confirms) return reading;
  }
  const { hours } = shiftOf(reading.light);
  if (hours !== 0 && utcOffset !== zone) {
    const text =
      `Rows stamped in ${zoneName(zone)} were moved by ${hours} h, so that each holds its irradiance in ` +
      `${zoneName(utcOffset)}; what left the year at one end came in at the other.`;
    notes.push({ code: 'rolled-to-local-time', text });
  }
  return reading;
}

/** What the format itself says. */
function plainReading({ midpoint, air, longwave }: TimeSource, sequence: Sequence, later: number): Reading {
  const { stepsPerHour, firstMinute } = sequence;
  const stamped = stepsPerHour > 1 ? 0.5 : firstMinute; // rows finer than an hour are put into hours of the clock
  const at = {
    'at the stamped minutes': stamped,
    'start of the row': 0.5 - 0.5 / stepsPerHour,
    'end of the row': 0.5 + 0.5 / stepsPerHour,
  };
  const light = typeof midpoint === 'number' ? midpoint : at[midpoint];
  const ofAir = typeof air === 'number' ? air : at[air];
  return { light: light + later, air: ofAir + later, longwave: (longwave ?? ofAir) + later };
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
    assumed.rms,
  );
  if (!contradicts(best, assumed)) return;
  const later = best.offset - assumed.offset;
  const text =
    `GHI = DHI + DNI cos Z closes to ${assumed.rms.toFixed(1)} W/m² at the assumed instant, but to ${best.rms.toFixed(1)} W/m² ` +
    `${Math.abs(later)} h ${later > 0 ? 'later' : 'earlier'}: the stamps or the zone may be wrong. Nothing was moved.`;
  // A file of our own that was written from such a year says it already.
  if (!notes.some((note) => note.text === text)) notes.push({ code: 'closure-mismatch', text });
}
