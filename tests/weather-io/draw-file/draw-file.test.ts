import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { defineSystem } from '@noonloop/sim-core';
import { DrawError, type DrawLayout, parseDraw, readDraw, type WeatherIssue } from '@noonloop/weather-io';
import { describe, expect, it } from 'vitest';
import { inventedValley, plainInput } from '../../examples.ts';
import { liveSpan } from '../../property/span.ts';

const HOUR = 3600;
const stamped = { timestamp: 'time' } as const;
const litres: DrawLayout = { column: 'water', quantity: 'volume', unit: 'L', time: stamped, clock: 'standard' };
const iso = (second: number) => new Date(second * 1000).toISOString().slice(0, 19);
const epoch = (text: string) => Date.parse(`${text}Z`) / 1000;

/** Rows from a start on, one each `step` seconds. */
function rows(start: string, step: number, count: number, water: (row: number) => number): string {
  const first = epoch(start);
  return ['time,water', ...Array.from({ length: count }, (_, row) => `${iso(first + row * step)},${water(row)}`)].join(
    '\n',
  );
}

function faultsOf(text: string, layout: DrawLayout): readonly WeatherIssue[] {
  try {
    parseDraw(text, layout);
  } catch (error) {
    if (error instanceof DrawError) return error.issues;
    throw error;
  }
  throw new Error('The text was read, though it is faulty.');
}

const sum = (values: Iterable<number>) => [...values].reduce((total, value) => total + value, 0);
const hourOf = (month: number, day: number, hour: number) =>
  (Date.UTC(2023, month - 1, day, hour) - Date.UTC(2023, 0, 1)) / 3_600_000;

describe('a record of water used, spans and steps [counted by hand]', () => {
  it('a year in hours comes out as it is', () => {
    const record = parseDraw(
      rows('2023-01-01T00:00:00', HOUR, 8760, (row) => row % 7),
      litres,
    );
    expect(record).toMatchObject({ span: 'year', partsPerHour: 1, assumptions: [] });
    expect(record.volumes[8759]).toBe((8759 % 7) * 1e-3);
    expect(record.fileVolume).toBeCloseTo(sum(Array.from({ length: 8760 }, (_, row) => row % 7)) * 1e-3, 10);
    expect(record.yearVolume).toBe(record.fileVolume);
  });

  it('a year that begins in July is put where its dates are', () => {
    const record = parseDraw(
      rows('2022-07-01T00:00:00', HOUR, 8760, (row) => (row === 0 ? 5 : 0)),
      litres,
    );
    expect(record.volumes[hourOf(7, 1, 0)]).toBe(5e-3);
    expect(record.yearVolume).toBe(5e-3);
  });

  it('29 February is left out and said', () => {
    const record = parseDraw(
      rows('2024-01-01T00:00:00', HOUR, 8784, () => 1),
      litres,
    );
    expect(record.fileVolume).toBeCloseTo(8.784, 12);
    expect(record.yearVolume).toBeCloseTo(8.76, 12);
    expect(record.assumptions.map(({ code }) => code)).toEqual(['leap-day-dropped']);
  });

  it('a day in steps of 5 s is a day of minutes each day', () => {
    const record = parseDraw(
      rows('2023-03-02T00:00:00', 5, 17_280, (row) => (row < 18 ? 0.5 : 0)),
      litres,
    );
    expect(record).toMatchObject({ span: 'day', partsPerHour: 60 });
    expect(record.volumes[0]).toBeCloseTo(6e-3, 12);
    expect(record.volumes[1]).toBeCloseTo(3e-3, 12);
    expect(record.volumes[364 * 1440]).toBeCloseTo(6e-3, 12);
    expect(record.yearVolume).toBeCloseTo(365 * 9e-3, 10);
  });

  it('a week keeps its weekdays: 2023-03-01 was a Wednesday, 1 January a Monday unless said', () => {
    const text = rows('2023-03-01T00:00:00', 900, 7 * 96, (row) => (row === 4 * 8 ? 40 : 0)); // Wednesday, 08:00
    const monday = parseDraw(text, litres);
    expect(monday).toMatchObject({ span: 'week', partsPerHour: 4 });
    expect(monday.volumes.findIndex((value) => value > 0)).toBe((2 * 24 + 8) * 4);
    const sunday = parseDraw(text, { ...litres, firstWeekday: 'sunday' });
    expect(sunday.volumes.findIndex((value) => value > 0)).toBe((3 * 24 + 8) * 4);
    expect(monday.yearVolume).toBeCloseTo(52 * 0.04, 12);
    expect(parseDraw(text, { ...litres, firstWeekday: 'wednesday' }).yearVolume).toBeCloseTo(53 * 0.04, 12);
  });

  it('rows without time follow each other; a week of them begins on the day said', () => {
    const text = `water\n${Array.from({ length: 168 }, (_, row) => (row === 30 ? 7 : 0)).join('\n')}`;
    const layout: DrawLayout = { ...litres, time: 'row-order', step: HOUR, weekBegins: 'saturday' };
    expect(parseDraw(text, layout).volumes.findIndex((value) => value > 0)).toBe(6 * 24 + 6);
  });

  it('steps that bestride hours are split by time and lose nothing: 7 minutes over a day of 1440', () => {
    const count = Math.ceil(1440 / 7);
    const text = rows('2023-03-02T00:00:00', 420, count, (row) => (row + 1) / 3);
    const record = parseDraw(text, litres);
    expect(record.partsPerHour).toBe(60);
    expect(record.fileVolume).toBeCloseTo(((count * (count + 1)) / 6) * 1e-3, 12);
    expect(record.yearVolume / 365).toBeCloseTo(record.fileVolume, 12);
    expect(record.volumes[8]).toBeCloseTo((2 / 3 / 7) * 1e-3, 15);
  });

  it('a stamp at the end of its interval is its end', () => {
    const text = rows('2023-01-01T01:00:00', HOUR, 8760, (row) => (row === 3 ? 9 : 0));
    expect(parseDraw(text, { ...litres, stamps: 'end' }).volumes[3]).toBeCloseTo(9e-3, 15);
  });

  it('coarser parts may be asked for', () => {
    const text = rows('2023-03-02T00:00:00', 60, 1440, () => 0.5);
    const record = parseDraw(text, { ...litres, partsPerHour: 1 });
    expect(record.volumes.length).toBe(8760);
    expect(record.volumes[100]).toBeCloseTo(0.03, 12);
  });
});

describe('what the numbers are [units by definition: 1 gal = 3.785411784 L, 1 ft3 = 28.316846592 L]', () => {
  it('a flow is the mean of its interval', () => {
    const text = rows('2023-03-02T00:00:00', 600, 144, (row) => (row === 2 ? 3 : 0));
    const record = parseDraw(text, { ...litres, quantity: 'flow', unit: 'gal/min' });
    expect(record.volumes[2]).toBeCloseTo(30 * 3.785411784e-3, 12);
  });

  it('a meter gives its differences, to the bit of its end less its start', () => {
    const text = rows('2023-03-02T00:00:00', HOUR, 25, (row) => 1234.5 + 2 * row);
    const record = parseDraw(text, { ...litres, quantity: 'meter', unit: 'ft3' });
    expect(record.span).toBe('day');
    expect(record.fileVolume).toBeCloseTo(48 * 0.028316846592, 12);
    expect(record.volumes[5]).toBeCloseTo(2 * 0.028316846592, 12);
  });

  it('a meter without a last reading has nothing in the last interval, and says so', () => {
    const text = rows('2023-01-01T00:00:00', HOUR, 8760, (row) => row);
    const record = parseDraw(text, { ...litres, quantity: 'meter' });
    expect(record.fileVolume).toBeCloseTo(8.759, 12);
    expect(record.volumes[8759]).toBe(0);
    expect(record.assumptions[0]!.code).toBe('last-reading-missing');
  });

  it('a meter that falls: refused, counted from 0, or gone round', () => {
    const text = rows('2023-03-02T00:00:00', HOUR, 25, (row) => (9990 + 2 * row) % 10_000);
    const meter: DrawLayout = { ...litres, quantity: 'meter' };
    const [fault] = faultsOf(text, meter);
    expect(fault).toMatchObject({ code: 'out-of-range', line: 7, column: 'water', value: '"0"' });
    expect(parseDraw(text, { ...meter, turnover: 10_000 }).fileVolume).toBeCloseTo(0.048, 12);
    const anew = rows('2023-03-02T00:00:00', HOUR, 25, (row) => (row < 10 ? 500 + row : row - 9));
    const record = parseDraw(anew, { ...meter, resets: 'from-zero' });
    expect(record.fileVolume).toBeCloseTo(9e-3 + 1e-3 + 14e-3, 12);
    expect(record.assumptions[0]).toMatchObject({ code: 'meter-fell' });
    expect(record.assumptions[0]!.text).toContain('once, before line 12');
  });

  it('irregular readings of a meter are spread over the time between them', () => {
    const text = 'time,water\n2023-03-02 00:00,0\n2023-03-02 06:00,12\n2023-03-02 06:30,20\n2023-03-03 00:00,20';
    const record = parseDraw(text, { ...litres, quantity: 'meter' });
    expect(record.partsPerHour).toBe(2);
    expect(record.volumes[0]).toBeCloseTo(1e-3, 12);
    expect(record.volumes[12]).toBeCloseTo(8e-3, 12);
    expect(record.assumptions[0]!.code).toBe('readings-apart');
  });

  it('pulses of half a litre, elapsed minutes, decimal commas and a preamble', () => {
    const lines = Array.from({ length: 96 }, (_, row) => `${row * 15};${row === 1 ? '3,0' : '0'}`);
    const text = ['logger of nobody', 'serial 1', 'minutes;pulses', ...lines].join('\r\n');
    const record = parseDraw(text, {
      column: 'pulses',
      quantity: 'volume',
      unit: 'L',
      perCount: 0.5,
      time: { elapsed: 'minutes', unit: 'min' },
      clock: 'standard',
      decimal: ',',
      headerLine: 3,
    });
    expect(record.volumes[1]).toBeCloseTo(1.5e-3, 15);
  });

  it('rows that stand for draws alone', () => {
    const text = 'time,water\n2023-02-01 07:10,30\n2023-02-01 07:12,5\n2023-07-04 19:00,80';
    const record = parseDraw(text, { ...litres, span: 'year', step: 60, gaps: 'zero' });
    expect(record.fileVolume).toBeCloseTo(0.115, 15);
    expect(record.volumes[hourOf(2, 1, 7) * 60 + 12]).toBeCloseTo(5e-3, 15);
    expect(record.assumptions.map(({ code }) => code)).toEqual(['rest-empty']);
  });
});

describe('clocks [changes of 2023: Denver 12 March and 5 November, Vienna 26 March and 29 October, from the IANA data]', () => {
  const denver: DrawLayout = { ...litres, clock: 'daylight-saving', zone: 'America/Denver' };

  it('a year by the clock: an hour is skipped in spring, one comes twice in autumn, all water stays', () => {
    const offsets = (utc: number) =>
      utc >= epoch('2023-03-12T09:00:00') && utc < epoch('2023-11-05T08:00:00') ? 6 : 7;
    const first = epoch('2023-01-01T07:00:00');
    const lines = Array.from({ length: 8760 }, (_, row) => {
      const utc = first + row * HOUR;
      return `${iso(utc - offsets(utc) * HOUR)},${row}`;
    });
    const record = parseDraw(['time,water', ...lines].join('\n'), denver);
    expect(record.span).toBe('year');
    // Row by row the hours of standard time.
    expect([...record.volumes].every((value, hour) => Math.abs(value - hour * 1e-3) < 1e-12)).toBe(true);
  });

  it('a time that the clocks skip is a fault', () => {
    const text = rows('2023-03-12T01:00:00', HOUR, 24, () => 1);
    expect(faultsOf(text, denver)[0]).toMatchObject({ code: 'bad-time', line: 3, value: '"2023-03-12T02:00:00"' });
  });

  it('a repeated day keeps to the clock of the house and to its water', () => {
    const text = rows('2023-05-02T00:00:00', HOUR, 24, (row) => (row === 7 ? 50 : row === 2 ? 1 : 0));
    const record = parseDraw(text, { ...denver, zone: 'Europe/Vienna' });
    expect(record.volumes[hourOf(2, 1, 7)]).toBe(0.05);
    expect(record.volumes[hourOf(7, 1, 7)]).toBe(0);
    expect(record.volumes[hourOf(7, 1, 6)]).toBe(0.05);
    // 02:00 of 26 March is skipped: drawn at 03:00 of the clock, which is 02:00 of standard time.
    expect(record.volumes[hourOf(3, 26, 2)]).toBe(0.001);
    // 02:00 of 29 October comes twice: drawn the first time, 01:00 of standard time.
    expect(record.volumes[hourOf(10, 29, 1)]).toBe(0.001);
    expect(record.volumes[hourOf(10, 29, 2)]).toBe(0);
    expect(record.yearVolume).toBeCloseTo(365 * 0.051, 10);
  });

  it('south of the equator too: Auckland', () => {
    const text = rows('2023-06-06T00:00:00', HOUR, 24, (row) => (row === 0 ? 10 : 0));
    const record = parseDraw(text, { ...denver, zone: 'Pacific/Auckland' });
    expect(record.volumes[hourOf(6, 6, 0)]).toBe(0.01);
    expect(record.volumes[hourOf(1, 10, 0) - 1]).toBe(0.01);
    expect(record.volumes[8759]).toBe(0.01); // 1 January by the clock, which is the last hour before by standard time
    expect(record.yearVolume).toBeCloseTo(3.65, 10);
  });

  it('stamps that name their zone', () => {
    const text = rows('2023-01-01T00:00:00', HOUR, 8760, (row) => (row === 12 ? 8 : 0)).replaceAll(/:00,/g, ':00Z,');
    const record = parseDraw(text, { ...litres, clock: 'utc', utcOffset: -7 });
    expect(record.volumes[5]).toBe(8e-3);
    expect(faultsOf(text, litres)[0]).toMatchObject({ code: 'bad-time', line: 2 });
  });

  it('dates as they are written: 7/3/2023 2:05 PM', () => {
    const times = Array.from(
      { length: 24 },
      (_, hour) => `7/3/2023 ${hour % 12 || 12}:00 ${hour < 12 ? 'AM' : 'PM'},${hour}`,
    );
    const layout: DrawLayout = { ...litres, time: { timestamp: 'time', order: 'month-day-year' } };
    const record = parseDraw(['time,water', ...times].join('\n'), layout);
    expect([...record.volumes.subarray(0, 24)]).toEqual(Array.from({ length: 24 }, (_, hour) => hour * 1e-3));
  });
});

describe('faults: place, value, what to do [requirement]', () => {
  const day = rows('2023-03-02T00:00:00', HOUR, 24, () => 1).split('\n');
  const spoilt = (line: number, text: string) => day.map((row, index) => (index === line - 1 ? text : row)).join('\n');

  it.each([
    [
      'a word',
      spoilt(5, '2023-03-02T03:00:00,much'),
      { code: 'not-a-number', line: 5, column: 'water', value: '"much"' },
    ],
    ['below nought', spoilt(5, '2023-03-02T03:00:00,-4'), { code: 'out-of-range', line: 5, value: '"-4"' }],
    ['an empty cell', spoilt(5, '2023-03-02T03:00:00,'), { code: 'missing-value', line: 5, column: 'water' }],
    ['a day that is not', spoilt(5, '2023-02-30T03:00:00,1'), { code: 'bad-time', line: 5, column: 'time' }],
    ['a row twice', spoilt(5, day[3]!), { code: 'repeated-hour', line: 5 }],
    [
      'a row gone',
      day.filter((_, line) => line !== 9).join('\n'),
      { code: 'missing-hour', line: 10, value: '"7200 s after the row above"' },
    ],
    ['a cell too many', spoilt(5, '2023-03-02T03:00:00,1,2'), { code: 'row-length', line: 5 }],
    ['23 hours', day.slice(0, 24).join('\n'), { code: 'row-count', value: '0.958333 days' }],
    ['a swimming pool', spoilt(5, '2023-03-02T03:00:00,30000'), { code: 'out-of-range', line: 5 }],
    ['no rows', 'time,water', { code: 'truncated' }],
    ['nothing', '', { code: 'empty' }],
    ['another header', day.join('\n').replace('water', 'Wasser'), { code: 'missing-column', line: 1, column: 'water' }],
    ['hexadecimal', spoilt(5, '2023-03-02T03:00:00,0x10'), { code: 'not-a-number' }],
  ])('%s', (_, text, expected) => {
    expect(faultsOf(text, litres)[0]).toMatchObject(expected);
  });

  it('all faults of the rows at once', () => {
    const text = day.map((row, index) => (index === 4 || index === 9 ? row.replace(/,.*/, ',x') : row)).join('\n');
    expect(faultsOf(text, litres).map(({ line }) => line)).toEqual([5, 10]);
  });

  it('all faults of a layout at once', () => {
    const layout = {
      column: '',
      quantity: 'heat',
      unit: 'kWh',
      time: { timestamp: 3 },
      clock: 'summer',
      partsPerHour: 7,
    };
    const columns = faultsOf(day.join('\n'), layout as never).map(({ column }) => column);
    expect(columns).toEqual(['column', 'quantity', 'unit', 'time', 'clock', 'partsPerHour']);
  });

  it('no such file', async () => {
    await expect(readDraw('/nowhere/draw.csv', litres)).rejects.toMatchObject({
      name: 'DrawError',
      issues: [{ code: 'not-found', file: '/nowhere/draw.csv' }],
    });
  });
});

describe('random records [property: no water is lost, whatever the step]', () => {
  it('of a day at five steps from 30 s to 2 h', () => {
    let seed = 7;
    const random = () => {
      seed = (seed * 48_271) % 2_147_483_647;
      return seed / 2_147_483_647;
    };
    for (const step of [30, 100, 420, 2700, 7200]) {
      const count = Math.round(86_400 / step);
      const text = rows('2023-09-09T00:00:00', step, count, () => (random() < 0.3 ? random() * 5 : 0));
      const record = parseDraw(text, litres);
      const exact =
        sum(
          text
            .split('\n')
            .slice(1)
            .map((row) => Number(row.split(',')[1])),
        ) * 1e-3;
      expect(record.fileVolume).toBeCloseTo(exact, 12);
      expect(record.yearVolume / 365).toBeCloseTo(exact, 11);
      expect(Math.min(...record.volumes.subarray(0, 1440))).toBeGreaterThanOrEqual(0);
    }
  });
});

describe('a run with a record [requirement]', () => {
  it('draws the water of the file: 52 weeks of the invented meter and a Monday; in a run, the first of them and the next Monday', async () => {
    const path = fileURLToPath(new URL('../../../docs/examples/draw/invented-meter.csv', import.meta.url));
    const record = await readDraw(path, {
      column: 'reading_L',
      quantity: 'meter',
      unit: 'L',
      turnover: 100_000,
      time: stamped,
      clock: 'standard',
    });
    const readings = readFileSync(path, 'utf8')
      .trim()
      .split('\n')
      .slice(2)
      .map((row) => Number(row.split(',')[1]));
    const between = (from: number, to: number) => (to < from ? to + 100_000 - from : to - from);
    const drawn = (rows: number) =>
      sum(Array.from({ length: rows }, (_, row) => between(readings[row]!, readings[row + 1]!)));
    const expected = (52 * drawn(7 * 144) + drawn(144)) * 1e-3;
    expect(record.fileVolume).toBeCloseTo(drawn(7 * 144) * 1e-3, 12);
    expect(record.yearVolume).toBeCloseTo(expected, 10);
    const { draw: _, ...rest } = plainInput;
    const design = defineSystem({ ...rest, draw: { volumes: record.volumes, tapTemperature: 50 } });
    const { columns } = liveSpan(design, await inventedValley(), 0, 8 * 24);
    expect(Math.abs(sum(columns.tapVolume) / ((drawn(7 * 144) + drawn(144)) * 1e-3) - 1)).toBeLessThan(1e-12);
    const monday = record.volumes.subarray(7 * 6, 8 * 6);
    expect(columns.tapVolume[7]).toBeCloseTo(sum(monday), 15);
  });
});
