import { cautions, hourData, renderCsv, renderHtml, renderJson, renderText } from '@noonloop/reports';
import { defineSystem, type RunResult } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { systemLine } from '../../packages/reports/src/answer/system.ts';
import { idleFields } from '../../packages/reports/src/idle-fields.ts';
import { inventedValley, plainInput, yearOf } from '../examples.ts';
import { apart, fixture } from './fixture.ts';

const two = (charging: 'series' | 'in-turn' | 'first' | 'second') =>
  defineSystem({
    ...plainInput,
    tank: { volume: '150 L', ratedTemperature: 90, second: { volume: '120 L', charging, ratedTemperature: 60 } },
  });
const run = yearOf(two('series'), await inventedValley());
const of = (result: RunResult, code: string) => cautions(result).find((one) => one.code === code)!;

describe('a second solar tank in reports', () => {
  it('has its columns in tables of hours, and an empty cell beside a design without one [requirement]', () => {
    const names = ['TopTemperature', 'BottomTemperature', 'MeanTemperature', 'MaximumTemperature', 'Loss', 'CoilHeat'];
    const si = names.map((name) => `secondTank${name}_${name === 'Loss' || name === 'CoilHeat' ? 'J' : 'degC'}`);
    const { columns } = hourData(run);
    expect(columns.slice(-6).map(({ name }) => name)).toEqual(si);
    expect(columns.at(-1)!.values).toBe(run.secondTank!.columns.coilHeat);
    expect(hourData(fixture()).columns.some(({ name }) => name.startsWith('secondTank'))).toBe(false);
    const rows = renderCsv([run, fixture({ name: 'one tank' })], { table: 'hours' }).split('\r\n');
    expect(apart(rows, hourData(run, { units: 'metric' }))).toEqual([]);
    expect(rows[0]).toMatch(/secondTankTopTemperature_degC,.*secondTankCoilHeat_kWh$/);
    expect(rows).toHaveLength(1 + 2 * 8760 + 1); // of both, below each other, and the end of the last line
    expect(rows[8761]).toMatch(/^one tank,0,1 Jan 00:00,1,1,0,.*,,,,,,$/);
    expect(rows[1]!.split(',')).toHaveLength(rows[8761]!.split(',').length);
  });

  it('is in the JSON report, and its columns where hours are asked for [requirement]', () => {
    const [report] = JSON.parse(renderJson(run, { hours: true })).runs;
    expect(report.secondTank.peak_degC).toBe(run.secondTank!.peak);
    expect(report.secondTank.balance.in_J).toBe(run.secondTank!.balance.in);
    expect(report.hours.solarHeat_J).toEqual([...run.columns.solarHeat]);
    expect(report.hours.secondTankLoss_J).toEqual([...run.secondTank!.columns.loss]);
    expect(JSON.parse(renderJson(fixture())).runs[0]).not.toHaveProperty('secondTank');
  });

  it('has a row in the balance, and a note says what is of both [requirement]', async () => {
    const text = renderText(run);
    expect(text).toMatch(/There are two solar tanks: .*of both.*the first’s\./s);
    const html = await renderHtml(run, { sections: ['balance'] });
    for (const name of ['Both solar tanks', 'Second solar tank']) expect(html).toContain(name);
    expect(renderText(fixture())).not.toContain('two solar tanks');
  });

  it('counts lukewarm hours of either, the lower rating, and the water of both [common practice, no source]', () => {
    const { columns, secondTank } = run;
    const lukewarm = (mean: Float64Array, hour: number) => mean[hour]! >= 20 && mean[hour]! <= 45;
    const either = columns.tankMeanTemperature.filter(
      (_, hour) => lukewarm(columns.tankMeanTemperature, hour) || lukewarm(secondTank!.columns.meanTemperature, hour),
    );
    const found = of(run, 'lukewarm-tank');
    expect(found.facts.hours).toEqual({ value: either.length, unit: 'h' });
    expect(found.finding).toMatch(/one of the two solar tanks, which hold 270 L/);
    expect(of(fixture(), 'lukewarm-tank').finding).not.toContain('two solar');
    expect(of(run, 'tank-rating').facts.limit).toEqual({ value: 60, unit: '°C' });
    expect(of(run, 'tank-swell').facts.volume).toEqual({ value: expect.closeTo(0.27, 12), unit: 'm³' });
  });

  it('that freezes is told of though the first does not [requirement]', () => {
    const cold = new Float64Array(8760).fill(5).fill(-1, 100, 101);
    const frozen = {
      ...run,
      secondTank: { ...run.secondTank!, columns: { ...run.secondTank!.columns, bottomTemperature: cold } },
    };
    expect(of(frozen, 'tank-ice').facts.coldest).toEqual({ value: -1, unit: '°C' });
    expect(of(run, 'tank-ice')).toBeUndefined();
  });

  it('is named in the system’s line; a coil that nothing passes does nothing [requirement]', () => {
    expect(systemLine(two('series'), 'metric')).toContain('150 L and 120 L tanks');
    expect(systemLine(fixture().design, 'metric')).toContain('300 L tank;');
    const idle = (charging: Parameters<typeof two>[0]) =>
      idleFields(two(charging)).filter((path) => /^(coil|tank)/.test(path));
    expect(idle('series')).toEqual(['tank.second.divertAt']);
    expect(idle('in-turn')).toEqual([]);
    expect(idle('first')).toEqual(['tank.second.coil', 'tank.second.divertAt']);
    expect(idle('second')).toEqual(['coil', 'tank.second.divertAt']);
    expect(idleFields(fixture().design)).toContain('tank.second');
  });
});
