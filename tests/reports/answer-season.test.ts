import {
  countCautions,
  describeSeason,
  describeStandby,
  monthsInWords,
  SUN_ALONE,
  type Summary,
  summarize,
} from '@noonloop/reports';
import { describe, expect, it } from 'vitest';
import { MONTH_STARTS } from '../../packages/reports/src/calendar.ts';
import { fixture } from './fixture.ts';

const MJ = 1e6;

/** A year in which each day asks for 10 MJ at the taps and the sun gives what `sun` says. Invented. */
function year(sun: (day: number) => number): Summary {
  const run = fixture();
  run.columns.solarHeat.fill(0);
  run.columns.tapHeatAsked.fill(0);
  for (let day = 0; day < 365; day++) {
    run.columns.tapHeatAsked[24 * day + 7] = 10 * MJ;
    run.columns.solarHeat[24 * day + 19] = sun(day) * MJ;
  }
  return summarize(run);
}
const month = (day: number): number => MONTH_STARTS.findIndex((start) => day < start) - 1;

describe('share of the hot water that the sun makes', () => {
  it('is solar heat over heat asked, of each day at most 1: a hot day makes up for no dull one [requirement]', () => {
    const alternating = year((day) => (day % 2 === 0 ? 15 : 5)); // 15 of 10, then 5 of 10; 365 days, 183 of them hot
    expect(alternating.year.sunShare).toBeCloseTo((183 * 1 + 182 * 0.5) / 365, 12);
    expect(year(() => 4).year.sunShare).toBeCloseTo(0.4, 12);
    expect(year(() => 40).year.sunShare).toBe(1);
    expect(year(() => -3).year.sunShare).toBe(0); // an element in the tank gives more than the draw takes
  });

  it('is there where the solar fraction says less, as that counts what the heater keeps itself warm with [requirement]', () => {
    const run = fixture();
    run.columns.solarHeat.set(run.columns.tapHeatAsked);
    run.columns.heaterHeat.set(run.columns.tapHeatAsked); // all of it to keep the heater warm
    const { year: sums } = summarize(run);
    expect(sums.sunShare).toBeCloseTo(1, 12);
    expect(sums.solarFraction).toBeCloseTo(0.5, 12);
  });

  it('is none where nothing is asked for [definition]', () => {
    const run = fixture();
    run.columns.tapHeatAsked.fill(0);
    const summary = summarize(run);
    expect(summary.year.sunShare).toBeNull();
    expect(summary.sunAloneMonths).toEqual([]);
    expect(describeSeason(summary)).toBeNull();
  });

  it('fills a month from 95 % and not below [requirement]', () => {
    expect(SUN_ALONE).toBe(0.95);
    expect(year((day) => (month(day) === 6 ? 9.5 : 9.4)).sunAloneMonths).toEqual([6]);
  });
});

describe('the season of the sun, in words', () => {
  it('names spans of months, over the turn of the year too [requirement]', () => {
    expect(monthsInWords([3, 4, 5, 6, 7, 8])).toBe('from April to September');
    expect(monthsInWords([6])).toBe('in July');
    expect(monthsInWords([5, 6])).toBe('in June and July');
    expect(monthsInWords([3, 4, 5, 8])).toBe('from April to June and in September');
    expect(monthsInWords([0, 1, 10, 11])).toBe('from November to February');
    expect(monthsInWords([0, 11])).toBe('in December and January');
  });

  it('says from when to when the sun alone makes the hot water, or in which month it comes nearest [requirement]', () => {
    const summer = year((day) => (month(day) >= 3 && month(day) <= 8 ? 11 : 2));
    expect(describeSeason(summer)).toBe('From April to September the sun alone makes the hot water.');
    expect(describeSeason(year(() => 11))).toBe('The sun alone makes the hot water all year.');
    expect(describeSeason(year((day) => (month(day) === 7 ? 6.4 : 3)))).toBe(
      'In no month does the sun alone make the hot water; it comes nearest in August, with 64 % of it.',
    );
  });

  it('says what the heater still burns then to keep itself warm, and not where it makes hot water with it [requirement]', () => {
    const summer = year((day) => (month(day) >= 3 && month(day) <= 8 ? 11 : 2));
    const with_ = (heaterHeat: number, heaterLoss: number): Summary => ({
      ...summer,
      months: summer.months.map((one) => ({ ...one, heaterFuel: 3.6e8, heaterHeat, heaterLoss })),
    });
    expect(describeStandby(with_(3e8, 2e8), 'metric')).toMatch(
      /^Most of what the heater takes then, about 600 kWh of fuel, keeps the heater itself warm.*germs/,
    );
    expect(describeStandby(with_(3e8, 1e8), 'metric')).toBeNull();
    expect(describeStandby(with_(0, 0), 'metric')).not.toBeNull();
    expect(describeStandby({ ...with_(3e8, 2e8), sunAloneMonths: [] }, 'metric')).toBeNull();
  });
});

describe('count of cautions', () => {
  const list = (...severities: ('danger' | 'warning' | 'note')[]) => severities.map((severity) => ({ severity }));
  it('says dangers first and cautions after, notes not at all [requirement]', () => {
    expect(countCautions(list('warning', 'danger', 'note', 'danger', 'warning', 'warning')).words).toBe(
      '2 dangers, 3 cautions',
    );
    expect(countCautions(list('danger')).words).toBe('1 danger');
    expect(countCautions(list('warning', 'note')).words).toBe('No danger found, 1 caution');
    expect(countCautions([])).toEqual({ danger: 0, warning: 0, note: 0, words: 'No danger found' });
  });
});
