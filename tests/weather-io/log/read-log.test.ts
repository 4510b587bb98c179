import { type LogLayout, parseLog, readLog, WeatherError } from '@noonloop/weather-io';
import { describe, expect, it } from 'vitest';

const layout: LogLayout = {
  time: { date: 'date', clock: 'time' },
  columns: {
    tankTopTemperature: { column: 'top', unit: 'degC' },
    loopPressure: { column: 'gauge', unit: 'bar' },
    pumpRuns: { column: 'pump', unit: 'yes/no' },
  },
};
const table = (...rows: string[]): string => ['date,time,top,gauge,pump', ...rows].join('\n');

/** Faults of a text, for comparison. */
function faultsOf(text: string, of: LogLayout = layout) {
  try {
    parseLog(text, of);
  } catch (error) {
    if (error instanceof WeatherError) return error.issues;
    throw error;
  }
  return [];
}

describe('a notebook of readings', () => {
  it('reads irregular times, units and words [requirement]', () => {
    const log = parseLog(
      table('2023-07-03,14:30,61.5,1.9,yes', '2023-07-05,6:05 am,,1.80,off', '2023-07-06,23:59,-,,x'),
      layout,
    );
    expect(log.readings).toEqual([
      {
        hour: 24 * 183 + 14.5,
        line: 2,
        tankTopTemperature: 61.5,
        flowTemperature: null,
        returnTemperature: null,
        loopPressure: 190_000,
        pumpRuns: true,
        heaterMeter: null,
      },
      {
        hour: 24 * 185 + 6 + 5 / 60,
        line: 3,
        tankTopTemperature: null,
        flowTemperature: null,
        returnTemperature: null,
        loopPressure: 180_000,
        pumpRuns: false,
        heaterMeter: null,
      },
      {
        hour: 24 * 186 + 23 + 59 / 60,
        line: 4,
        tankTopTemperature: null,
        flowTemperature: null,
        returnTemperature: null,
        loopPressure: null,
        pumpRuns: true,
        heaterMeter: null,
      },
    ]);
    expect(log.calendarYear).toBe(2023);
  });

  it('reads US units, month first, and gas by its heat [0.3048³ m³/ft³, 5/9 K/°F, 6894.757 Pa/psi]', () => {
    const log = parseLog('when;top;psi;gas\n07/03/2023 2:30 pm;140;20;1000\n07/04/2023 2:30 pm;122;20,5;1010\n', {
      time: { timestamp: 'when' },
      dateOrder: 'month-day-year',
      decimal: ',',
      columns: {
        tankTopTemperature: { column: 'top', unit: 'degF' },
        loopPressure: { column: 'psi', unit: 'psi' },
        heaterMeter: { column: 'gas', unit: 'ft3' },
      },
      gasHeat_kWh_per_m3: 10,
    });
    const [first, second] = log.readings;
    expect(first!.hour).toBe(24 * 183 + 14.5);
    expect(first!.tankTopTemperature).toBeCloseTo(60, 10);
    expect(second!.loopPressure).toBeCloseTo(20.5 * 6894.757, 6);
    expect(second!.heaterMeter! - first!.heaterMeter!).toBeCloseTo(10 * 0.3048 ** 3 * 10 * 3.6e6, 0);
  });

  it('puts summer time back, and leaves 29 February out [requirement]', () => {
    const log = parseLog(table('2024-02-29,12:00,50,,', '2024-03-30,12:00,50,,', '2024-03-31,12:00,50,,'), {
      ...layout,
      summerTime: '03-31..10-27',
    });
    expect(log.readings.map(({ hour }) => hour)).toEqual([24 * 88 + 12, 24 * 89 + 11]);
    expect(log.assumptions.map(({ code }) => code)).toContain('leap-day-dropped');
  });

  it('takes remarks at the head along, and counts their lines [requirement]', () => {
    const log = parseLog(`# invented\n# second\n${table('2023-07-03,14:30,61.5,1.9,yes')}`, layout);
    expect(log.assumptions.map(({ text }) => text)).toEqual(['invented', 'second']);
    expect(log.readings[0]!.line).toBe(4);
  });

  it('lists every fault at once with line, column and value [requirement]', () => {
    const issues = faultsOf(
      table(
        '2023-07-03,14:30,hot,1.9,yes',
        '2023-13-03,14:30,60,1.9,yes',
        '2023-07-03,15:30,400,1.9,perhaps',
        '2023-07-02,15:30,40,1.9,yes',
        '2023-07-05,15:30,40',
      ),
    );
    expect(issues.map(({ line, column, code, value }) => [line, column, code, value])).toEqual([
      [2, 'top', 'not-a-number', '"hot"'],
      [3, 'date, time', 'bad-time', '"2023-13-03 14:30"'],
      [4, 'top', 'out-of-range', '"400"'],
      [4, 'pump', 'not-a-number', '"perhaps"'],
      [6, null, 'row-length', '"2023-07-05, 15:30, 40"'],
      [5, 'date, time', 'out-of-order', null],
    ]);
    expect(issues[2]!.expected).toBe('temperature of the tank’s top from -30 to 270 degC');
  });

  it.each([
    ['gal', 26.7, 26.7], // propane, 0.091 MMBtu a US gallon [US EPA]
    ['L', 10.7, 10.7], // heating oil
    ['kg', 4.8, 4.8], // wood pellets
    ['therm', undefined, 29.3071], // 1 therm = 105.50559 MJ [NIST SP 811]
  ] as const)(
    'a meter in %s of any fuel: %s kWh a unit, the layout’s or the unit’s own [source beside each]',
    (unit, perUnit, kWh) => {
      const meter: LogLayout = {
        ...layout,
        columns: { heaterMeter: { column: 'top', unit } },
        ...(perUnit === undefined ? {} : { fuelHeat_kWh_per_unit: perUnit }),
      };
      const { readings } = parseLog(table('2023-07-01,12:00,5,,', '2023-07-02,12:00,7,,'), meter);
      expect((readings[1]!.heaterMeter! - readings[0]!.heaterMeter!) / 3.6e6).toBeCloseTo(2 * kWh, 3);
      if (perUnit !== undefined) {
        const { fuelHeat_kWh_per_unit: _, ...without } = meter;
        expect(faultsOf(table('2023-07-01,12:00,5,,'), without).map(({ column }) => column)).toEqual([
          'gasHeat_kWh_per_m3',
        ]);
      }
    },
  );

  it('refuses two calendar years and a meter that runs back [requirement]', () => {
    const meter: LogLayout = { ...layout, columns: { heaterMeter: { column: 'top', unit: 'kWh' } } };
    expect(
      faultsOf(table('2023-12-31,12:00,5,,', '2024-01-01,12:00,4,,'), meter).map(({ line, code }) => [line, code]),
    ).toEqual([
      [3, 'bad-time'],
      [3, 'out-of-range'],
    ]);
  });

  it('refuses a layout with every fault of it [requirement]', () => {
    const wrong = {
      time: {},
      columns: {
        tankTopTemperature: { column: 'top', unit: 'bar' },
        heaterMeter: { column: 'g', unit: 'm3' },
        sock: {},
      },
      decimal: ',',
      delimiter: ',',
      summerTime: 'always',
    };
    expect(faultsOf('a\n1', wrong as unknown as LogLayout).map(({ column }) => column)).toEqual([
      'time',
      'columns.sock',
      'columns.tankTopTemperature.unit',
      'gasHeat_kWh_per_m3',
      'delimiter',
      'summerTime',
    ]);
    expect(faultsOf('a\n1', null as unknown as LogLayout).map(({ code }) => code)).toEqual(['bad-option']);
  });

  it.each([
    ['nothing', '', 'empty'],
    ['a header alone', 'date,time,top,gauge,pump', 'truncated'],
    ['another header', 'day,time,top,gauge,pump\n', 'missing-column'],
    ['binary', 'date\u0000', 'binary'],
    ['an open quote', 'date,time,top,gauge,pump\n"2023-07-03,1:30,1,1,y\n', 'unclosed-quote'],
  ])('refuses %s [requirement]', (_, text, code) => {
    expect(faultsOf(text)[0]!.code).toBe(code);
  });

  it('says of files what it says of logs [requirement]', async () => {
    await expect(readLog('tests/no-such-notebook.csv', layout)).rejects.toThrow('expected a file at this path');
    await expect(readLog('tests', layout)).rejects.toThrow('Give the path of one CSV file.');
    const log = await readLog('docs/examples/logs/invented-summer.csv', {
      time: { date: 'date', clock: 'time' },
      columns: { tankTopTemperature: { column: 'tank top', unit: 'degC' } },
    });
    expect(log.readings.length).toBe(32);
    expect(log.source).toBe('invented-summer.csv');
  });
});
