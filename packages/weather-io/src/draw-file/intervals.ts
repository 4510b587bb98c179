// Rows to the water of each interval.
import { type Faults, quote } from '../errors.ts';
import { numberOf } from '../table/column.ts';
import type { DataRows } from '../table/csv.ts';
import type { WeatherAssumption } from '../year.ts';
import { type DrawLayout, FLOW_UNITS, type FlowUnit, VOLUME_UNITS, type VolumeUnit } from './layout.ts';

/** Most water in an hour: a pipe of 50 mm, far beyond a house; more is another unit or a misread cell. Judgement. [m³/h] */
const MOST_PER_HOUR = 20;

/** Two rows belong together when they are no further apart than this many intervals; loggers are late now and then. [-] */
const LATE = 1.5;

/** Water by interval, in order. */
export interface Intervals {
  /** Shape [n]. [s] */
  readonly start: Float64Array;
  /** Shape [n]. [s] */
  readonly end: Float64Array;
  /** Shape [n]. [m³] */
  readonly volume: Float64Array;
  /** Commonest length. [s] */
  readonly step: number;
}

/** What the rows are read with. */
interface Reading {
  readonly layout: DrawLayout;
  readonly rows: DataRows;
  /** Index of the column with the water. */
  readonly cell: number;
  /** Time of each row. [s] */
  readonly times: Float64Array;
  readonly faults: Faults;
  readonly notes: WeatherAssumption[];
}

/** Water of each interval; throws what is wrong with the rows. */
export function readIntervals(reading: Reading): Intervals {
  const { layout, rows, times, faults } = reading;
  const values = readValues(reading);
  const isMeter = layout.quantity === 'meter';
  const step = layout.step ?? commonestStep(times);
  if (!(step > 0)) {
    faults.fail({
      code: 'truncated',
      line: rows.lines[0]!,
      expected: isMeter ? 'two readings or more' : 'two rows or more, or the option step',
      remedy: 'Check the file.',
    });
  }
  checkOrder(reading, step);
  faults.throwIfAny();
  const intervals = isMeter ? betweenReadings(reading, values, step) : ofRows(reading, values, step);
  intervals.volume.forEach((volume, index) => {
    const perHour = (volume * 3600) / (intervals.end[index]! - intervals.start[index]!);
    if (!(perHour <= MOST_PER_HOUR)) faultWater(reading, index + (isMeter ? 1 : 0), perHour);
  });
  faults.throwIfAny();
  return intervals;
}

/** Numbers of the column in SI: m³ for volumes and meters, m³/s for flows; NaN for an empty cell. */
function readValues({ layout, rows, cell, faults, notes }: Reading): Float64Array {
  const { quantity, unit, decimal, perCount = 1 } = layout;
  const size = quantity === 'flow' ? FLOW_UNITS[unit as FlowUnit] : VOLUME_UNITS[unit as VolumeUnit];
  let empty = 0;
  const values = Float64Array.from(rows.cells, (cells, row) => {
    const text = cells[cell]!;
    if (text.trim() === '') {
      empty++;
      if (quantity !== 'meter' && layout.gaps !== 'zero') {
        faults.add({
          code: 'missing-value',
          line: rows.lines[row]!,
          column: layout.column,
          value: quote(text),
          expected: `the ${quantity} of every interval`,
          remedy: "Fill the cell, or say gaps: 'zero' where an empty cell means that nothing was drawn.",
        });
      }
      return Number.NaN;
    }
    const value = numberOf(decimal === ',' ? text.replace(',', '.') : text);
    if (!(value >= 0)) {
      faults.add({
        code: Number.isNaN(value) ? 'not-a-number' : 'out-of-range',
        line: rows.lines[row]!,
        column: layout.column,
        value: quote(text),
        expected: `a number of 0 or more, in ${unit}`,
        remedy: 'Correct the cell, or what the layout says about column and decimal mark.',
      });
    }
    return value * perCount * size;
  });
  if (empty > 0) {
    const text = `${empty} empty cells: ${quantity === 'meter' ? 'the readings around them were joined' : 'taken as nothing drawn'}.`;
    notes.push({ code: 'empty-cells', text });
  }
  return values;
}

/** The commonest distance of two rows, the lesser of equals. [s] */
function commonestStep(times: Float64Array): number {
  const counts = new Map<number, number>();
  for (let row = 1; row < times.length; row++) {
    const distance = times[row]! - times[row - 1]!;
    if (distance > 0) counts.set(distance, (counts.get(distance) ?? 0) + 1);
  }
  let best = 0;
  for (const [distance, count] of counts) {
    const most = counts.get(best) ?? 0;
    if (count > most || (count === most && distance < best)) best = distance;
  }
  return best;
}

/** Faults rows that go back, come twice or leave a hole. */
function checkOrder({ layout, rows, times, faults }: Reading, step: number): void {
  const { quantity, gaps } = layout;
  for (let row = 1; row < times.length; row++) {
    const distance = times[row]! - times[row - 1]!;
    const line = rows.lines[row]!;
    if (!(distance > 0)) {
      faults.add({
        code: distance === 0 ? 'repeated-hour' : 'out-of-order',
        line,
        expected: 'a time after that of the row above',
        remedy:
          'Sort the rows and remove double ones; where clocks are put back, say clock daylight-saving and the zone.',
      });
    } else if (quantity !== 'meter' && gaps !== 'zero' && Math.abs(distance / step - 1) > LATE - 1) {
      faults.add({
        code: distance > step ? 'missing-hour' : 'bad-time',
        line,
        value: quote(`${distance} s after the row above`),
        expected: `a row each ${step} s, as most are`,
        remedy:
          distance > step
            ? "Fill in the missing rows, or say gaps: 'zero' where a missing row means that nothing was drawn."
            : 'Give rows of one length.',
      });
    }
  }
}

/** Volumes and flows: one interval a row, up to the next row where that follows at once. */
function ofRows({ layout, times }: Reading, values: Float64Array, step: number): Intervals {
  const count = times.length;
  const [start, end, volume] = [new Float64Array(count), new Float64Array(count), new Float64Array(count)];
  for (let row = 0; row < count; row++) {
    const other = layout.stamps === 'end' ? row - 1 : row + 1;
    const distance = Math.abs((times[other] ?? Number.POSITIVE_INFINITY) - times[row]!);
    const length = distance <= LATE * step ? distance : step;
    start[row] = layout.stamps === 'end' ? times[row]! - length : times[row]!;
    end[row] = start[row]! + length;
    const value = Number.isNaN(values[row]!) ? 0 : values[row]!;
    volume[row] = layout.quantity === 'flow' ? value * length : value;
  }
  return { start, end, volume, step };
}

/** Meter: the difference of two readings, evenly over the time between them. */
function betweenReadings(reading: Reading, values: Float64Array, step: number): Intervals {
  const { layout, rows, times, faults, notes } = reading;
  const { turnover, perCount = 1, unit, resets } = layout;
  const around = turnover === undefined ? null : turnover * perCount * VOLUME_UNITS[unit as VolumeUnit];
  const read = [...values.keys()].filter((row) => !Number.isNaN(values[row]!));
  const count = Math.max(read.length - 1, 0);
  const [start, end, volume] = [new Float64Array(count), new Float64Array(count), new Float64Array(count)];
  const falls: number[] = [];
  for (let index = 0; index < count; index++) {
    const [from, to] = [read[index]!, read[index + 1]!];
    start[index] = times[from]!;
    end[index] = times[to]!;
    let drawn = values[to]! - values[from]!;
    if (drawn < 0) {
      falls.push(rows.lines[to]!);
      if (around !== null && values[from]! <= around) drawn += around;
      else if (resets === 'from-zero') drawn = values[to]!;
      else faultFall(reading, to, values[from]!);
    }
    volume[index] = drawn;
  }
  if (falls.length > 0) {
    const lines = falls.slice(0, 10).join(', ');
    const meaning = around === null ? 'counted again from 0' : `went round at ${turnover} ${unit}`;
    notes.push({
      code: 'meter-fell',
      text: `The meter ${meaning} ${falls.length === 1 ? 'once' : `${falls.length} times`}, before line ${lines}.`,
    });
  }
  const longest = end.reduce((most, time, index) => Math.max(most, time - start[index]!), 0);
  if (longest > LATE * step) {
    const text = `Readings are up to ${Number((longest / 3600).toPrecision(3))} h apart; the water between two was spread evenly.`;
    notes.push({ code: 'readings-apart', text });
  }
  if (count === 0) {
    faults.add({
      code: 'truncated',
      line: rows.lines[0]!,
      expected: 'two readings or more',
      remedy: 'Check the file.',
    });
  }
  return { start, end, volume, step };
}

function faultFall({ layout, rows, cell, faults }: Reading, row: number, before: number): void {
  const size = VOLUME_UNITS[layout.unit as VolumeUnit] * (layout.perCount ?? 1);
  faults.add({
    code: 'out-of-range',
    line: rows.lines[row]!,
    column: layout.column,
    value: quote(rows.cells[row]![cell]!),
    expected: `a reading of at least that before, ${Number((before / size).toPrecision(9))} ${layout.unit}`,
    remedy: "Correct the cell; where the meter counted anew say resets: 'from-zero', where it went round say turnover.",
  });
}

function faultWater({ layout, rows, cell, faults }: Reading, row: number, perHour: number): void {
  faults.add({
    code: 'out-of-range',
    line: rows.lines[row] ?? null,
    column: layout.column,
    value: quote(rows.cells[row]?.[cell] ?? ''),
    expected: `water of at most ${MOST_PER_HOUR} m³ an hour, not ${Number(perHour.toPrecision(3))}`,
    remedy: 'Check unit and quantity in the layout, then the cell.',
  });
}
