import { type DataTable, dataArrow, dataCsv, dataRows, hourData, renderCsv, studyData } from '@noonloop/reports';
import { defineSystem, sweep } from '@noonloop/sim-core';
import * as arrow from 'apache-arrow';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { inventedValley, plainInput, yearOf } from '../examples.ts';
import { apart } from './fixture.ts';

// Requirement: every hour and every row of a study leave as typed arrays, plain rows, CSV and Arrow, with the unit in the name and times after
// ISO 8601. Checked against the run itself, against the CSV for spreadsheets, and by reading back with the libraries' own readers.

const weather = await inventedValley();
const run = yearOf(defineSystem(plainInput), weather);
const hours = hourData(run);
/** The column of time alone, as rows have it. */
const times = ({ columns, ...table }: DataTable) =>
  dataRows({ ...table, columns: columns.filter(({ name }) => name === 'time') }).map(({ time }) => time);
const column = (name: string) => hours.columns.find((one) => one.name === name)!.values as Float64Array;

describe('hours of a run [requirement]', () => {
  it("are the run's own arrays in SI, and dated in the site's standard time", () => {
    expect(column('solarHeat_J')).toBe(run.columns.solarHeat);
    expect(column('tankTopTemperature_degC')).toBe(run.columns.tankTopTemperature);
    expect(hours.columns).toHaveLength(1 + Object.keys(run.columns).length);
    const [first] = dataRows({ ...hours, rows: 1 });
    expect(Object.keys(first!)).toEqual(hours.columns.map(({ name }) => name));
    expect(first!.tankTopTemperature_degC).toBe(run.columns.tankTopTemperature[0]);
    expect(times(hours).slice(0, 2)).toEqual(['2023-01-01T00:00:00-05:00', '2023-01-01T01:00:00-05:00']);
    expect(column('time')[0]).toBe(Date.parse('2023-01-01T00:00:00-05:00'));
    expect(times(hours).at(-1)).toBe('2023-12-31T23:00:00-05:00');
  });

  it('pass over the leap day of a year that has one', () => {
    const dated = times(hourData(run, { year: 2024 }));
    expect(dated[59 * 24 - 1]).toBe('2024-02-28T23:00:00-05:00');
    expect(dated[59 * 24]).toBe('2024-03-01T00:00:00-05:00');
    expect(dated.at(-1)).toBe('2024-12-31T23:00:00-05:00');
  });

  it('have half hours of a zone in their times', () => {
    const there = { ...run, site: { ...run.site, utcOffset: 5.5 } };
    expect(times(hourData(there))[0]).toBe('2023-01-01T00:00:00+05:30');
  });

  it('in US units agree with the table for spreadsheets to its digits; in metric ones: second-tank.test.ts', () => {
    const lines = renderCsv(run, { table: 'hours', units: 'us' }).split('\r\n');
    expect(apart(lines, hourData(run, { units: 'us' }))).toEqual([]);
  });

  it('come back from CSV and from Arrow with the same bits', () => {
    const names = ['solarHeat_J', 'absorberTemperature_degC'];
    const some = { ...hours, columns: hours.columns.filter(({ name }) => ['time', ...names].includes(name)) };
    const [head, ...back] = Papa.parse<string[]>(dataCsv(some).trimEnd()).data;
    const table = arrow.tableFromIPC(arrow.tableToIPC(dataArrow(some, arrow) as arrow.Table));
    expect([back.length, table.numRows, table.numCols]).toEqual([8760, 8760, 3]);
    for (const name of names) {
      const values = column(name);
      const place = head!.indexOf(name);
      expect(back.every((row, hour) => Number(row[place]) === values[hour])).toBe(true);
      expect(values.every((value, hour) => table.getChild(name)!.get(hour) === value)).toBe(true);
    }
    expect(table.getChild('time')!.get(8759)).toBe(Date.parse('2023-12-31T23:00:00-05:00'));
  });

  it('refuse years and units that there are not', () => {
    expect(() => hourData(run, { year: 23.5 })).toThrow(/year.*1970 to 9999/);
    expect(() => hourData(run, { units: 'imperial' as 'us' })).toThrow(/'si', 'metric' or 'us'/);
  });
});

describe('rows of a study [requirement]', () => {
  const axes = {
    'tank.volume': ['200 L', '300 L', '-1 L'],
    kind: { variants: { low: {}, high: { 'array.tilt': 60 } } },
  };
  const rows = sweep(plainInput, axes, weather, { steps: { stepsPerHour: 2 } }).outcome();

  it('have numbers as numbers, words as words, and the error of what failed', async () => {
    const data = studyData(await rows);
    const values = Object.fromEntries(data.columns.map(({ name, values: of }) => [name, of]));
    expect(values['tank.volume']).toBeInstanceOf(Array);
    expect(values.kind).toEqual(['low', 'high', 'low', 'high', 'low', 'high']);
    expect(values.fuelSaved_J![0]).toBe((await rows)[0]!.measures.fuelSaved);
    expect(values.fuelSaved_J![4]).toBeNaN();
    expect(String(values.error![4])).toContain('tank.volume');
    const good = studyData((await rows).slice(0, 4), { units: 'metric' });
    expect(good.columns.map(({ name }) => name)).not.toContain('error');
    const volume = good.columns.find(({ name }) => name === 'tank.volume')!;
    expect(volume.values).toEqual(Float64Array.of(0.2, 0.2, 0.3, 0.3));
    const saved = good.columns.find(({ name }) => name === 'fuelSaved_kWh')!.values[0] as number;
    expect(saved).toBeCloseTo((await rows)[0]!.measures.fuelSaved! / 3.6e6, 9);
  });

  it('leave no number where there is none, and no formula for a spreadsheet', async () => {
    const [, , , , failed] = await rows;
    const csv = dataCsv(studyData([{ ...failed!, inputs: { name: '=1+1' } }]));
    expect(csv).toContain("'=1+1");
    expect(csv).not.toContain('NaN');
    expect(dataRows(studyData([failed!]))[0]!.fuelSaved_J ?? null).toBeNull();
    const table = dataArrow(studyData(await rows), arrow) as arrow.Table;
    expect(table.getChild('kind')!.get(1)).toBe('high');
  });
});
