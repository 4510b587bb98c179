import { defineSystem, type SystemInput } from '@noonloop/sim-core';
import { drawProfile } from '@noonloop/sim-core/formulas';
import { describe, expect, it } from 'vitest';
import { readDayRange } from '../../../../packages/sim-core/src/physics/draw/days.ts';
import { drawSchedule } from '../../../../packages/sim-core/src/physics/draw/schedule.ts';
import { drawnBetween, flowBetween } from '../../../../packages/sim-core/src/physics/draw/within.ts';
import { WATER_HEAT_CAPACITY } from '../../../../packages/sim-core/src/physics/tank/tank.ts';
import { plainInput, sum } from '../../../examples.ts';

const mains = Float64Array.from({ length: 8760 }, (_, hour) => 12 + 6 * Math.sin((2 * Math.PI * hour) / 8760));

const scheduleOf = (draw: SystemInput['draw']) => drawSchedule(defineSystem({ ...plainInput, draw }).draw, mains);

const day = (volume: Float64Array, index: number) => sum(volume.slice(index * 24, index * 24 + 24));

describe('a tapping profile', () => {
  const { tapTemperature } = defineSystem({ ...plainInput, draw: { profile: 'L' } }).draw;
  const { volume, within } = scheduleOf({ profile: 'L' });

  it('keeps the heat of its day whatever the mains are [Q_ref 11.655 kWh]', () => {
    for (const index of [0, 91, 200]) {
      let heat = 0;
      for (let hour = index * 24; hour < index * 24 + 24; hour++) {
        heat += volume[hour]! * WATER_HEAT_CAPACITY * (tapTemperature - mains[hour]!);
      }
      expect(heat / 3.6e6).toBeCloseTo(11.655, 9);
    }
  });

  it('keeps the heat of each draw where steps fall between draws [07:00 0.105, 07:05 1.4, 07:30 and 07:45 0.105 kWh]', () => {
    const heatBetween = (from: number, to: number) =>
      drawnBetween(within!, 7, from / 60, to / 60) *
      volume[7]! *
      WATER_HEAT_CAPACITY *
      ((tapTemperature - mains[7]!) / 3.6e6);
    expect(heatBetween(0, 5)).toBeCloseTo(0.105, 9);
    expect(heatBetween(5, 30)).toBeCloseTo(1.4, 9);
    expect(heatBetween(30, 40)).toBeCloseTo(0.105, 9);
    expect(heatBetween(40, 60)).toBeCloseTo(0.105, 9);
  });

  it('runs each draw at its own flow for as long as its water lasts [1.4 kWh at 40 °C: 40.191 L at 6 L/min, 6.70 min]', () => {
    const share = drawnBetween(within!, 7, 5 / 60, 8 / 60) / drawnBetween(within!, 7, 5 / 60, 30 / 60);
    expect(share).toBeCloseTo(3 / (40.191 / 6), 4);
    expect(flowBetween(within!, 7, 5 / 60, 30 / 60) * 6e4).toBeCloseTo(6, 9);
    expect(flowBetween(within!, 7, 50 / 60, 1)).toBe(0);
  });

  it('adds up to the hour however the hour is cut [conservation]', () => {
    for (const steps of [1, 3, 12, 48, 60, 240]) {
      let share = 0;
      for (let step = 0; step < steps; step++) share += drawnBetween(within!, 20, step / steps, (step + 1) / steps);
      expect(share).toBeCloseTo(1, 12);
    }
  });

  it('is scaled to a daily volume where one is given [requirement]', () => {
    const scaled = scheduleOf({ profile: 'L', dailyVolume: 0.2 });
    expect(day(scaled.volume, 100)).toBeCloseTo(0.2, 12);
    expect(scaled.within).not.toBeNull();
  });

  it('says so where the taps want water hardly warmer than the mains [direction that physics demands]', () => {
    const warm = new Float64Array(8760).fill(22);
    const { draw } = defineSystem({ ...plainInput, draw: { profile: 'M', tapTemperature: 25 } });
    const { volume: held, heldHours } = drawSchedule(draw, warm);
    expect(heldHours).toBe(365 * drawProfile('M').hourlyShares.filter((share) => share > 0).length);
    expect(day(held, 0)).toBeCloseTo(drawProfile('M').dailyEnergy! / (WATER_HEAT_CAPACITY * 5), 9);
  });
});

describe('calendar', () => {
  it('reads days of the 365-day year [requirement]', () => {
    expect(readDayRange('01-01..12-31')).toEqual({ first: 0, last: 364 });
    expect(readDayRange('12-27..01-03')).toEqual({ first: 360, last: 2 });
    for (const text of ['02-29..03-01', '13-01..13-02', '7-1..7-2', '00-10..01-01', 710, '']) {
      expect(readDayRange(text)).toBeNull();
    }
  });

  it('multiplies each weekday by its factor, from the weekday of 1 January [requirement]', () => {
    const { volume } = scheduleOf({
      dailyVolume: 0.2,
      weekdayFactors: [1, 1, 1, 1, 1, 1.5, 2],
      firstWeekday: 'saturday',
    });
    expect([0, 1, 2, 7, 8].map((index) => day(volume, index) / 0.2)).toEqual([1.5, 2, 1, 1.5, 2].map(expectClose));
  });

  it('draws nothing on holidays, the turn of the year included [definition]', () => {
    const { volume } = scheduleOf({ dailyVolume: 0.2, holidays: ['07-10..07-24', '12-27..01-03'] });
    const empty = Array.from({ length: 365 }, (_, index) => index).filter((index) => day(volume, index) === 0);
    expect(empty).toHaveLength(15 + 8);
    expect(empty.slice(0, 4)).toEqual([0, 1, 2, 190]);
  });

  it('puts habits an hour earlier by standard time while clocks are forward, and keeps the year but for one hour [requirement]', () => {
    const hourlyShares = Array.from({ length: 24 }, (_, hour) => (hour === 7 ? 1 : 0));
    const { volume } = scheduleOf({ dailyVolume: 0.2, hourlyShares, summerTime: '03-31..10-27' });
    expect(volume[10 * 24 + 7]).toBeCloseTo(0.2, 12);
    expect(volume[180 * 24 + 6]).toBeCloseTo(0.2, 12);
    expect(volume[180 * 24 + 7]).toBe(0);
    expect(volume[89 * 24 + 6]).toBeCloseTo(0.2, 12); // 31 March: from 02:00 on
    expect(volume[299 * 24 + 7]).toBeCloseTo(0.2, 12); // 27 October
    expect(sum(volume)).toBeCloseTo(365 * 0.2, 9);
  });

  const expectClose = (value: number) => expect.closeTo(value, 12);
});

describe('a record of one’s own', () => {
  it('is used as it stands, hour by hour [requirement]', () => {
    const volumes = Array.from({ length: 8760 }, (_, hour) => (hour % 24 === 8 ? 0.1 : 0));
    const { volume, within } = scheduleOf({ volumes });
    expect([...volume]).toEqual(volumes);
    expect(within).toBeNull();
    expect(defineSystem({ ...plainInput, draw: { volumes } }).draw.dailyVolume).toBeCloseTo(0.1, 12);
  });

  it('keeps the place of water inside the hour [ten-minute record]', () => {
    const volumes = new Float64Array(8760 * 6);
    volumes[6 * 100 + 2] = 0.03;
    volumes[6 * 100 + 5] = 0.01;
    const { volume, within } = scheduleOf({ volumes });
    expect(volume[100]).toBeCloseTo(0.04, 12);
    expect(drawnBetween(within!, 100, 2 / 6, 3 / 6)).toBeCloseTo(0.75, 12);
    expect(drawnBetween(within!, 100, 0.75, 1)).toBeCloseTo(0.25, 12);
    expect(drawnBetween(within!, 101, 0, 1)).toBe(0);
  });

  it('runs at the flow of the taps, and faster where its water would not get through [by hand: 90 L in 15 min at 6 L/min]', () => {
    const volumes = new Float64Array(8760 * 4);
    volumes.set([0.18, 0.045, 0, 0.009], 4 * 7);
    const { within } = scheduleOf({ volumes, flow: '6 L/min' });
    const flows = [0, 1, 2, 3].map((part) => 6e4 * flowBetween(within!, 7, part / 4, (part + 1) / 4));
    for (const [part, flow] of [12, 6, 0, 6].entries()) expect(flows[part]).toBeCloseTo(flow, 9);
    expect(6e4 * flowBetween(within!, 7, 0, 1)).toBeCloseTo((180 * 12 + 54 * 6) / 234, 9);
  });
});
