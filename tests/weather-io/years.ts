// Invented logs of several years, and what is asked of their energy.
import { type PlainLayout, parseWeatherYears } from '@noonloop/weather-io';
import { expect } from 'vitest';
import { sum } from '../examples.ts';
import { calendar, lightOfHour, temperatureOfRow } from './samples.ts';

export const isLeap = (year: number): boolean => year % 4 === 0;
const two = (value: number): string => String(value).padStart(2, '0');

/** Layout of {@link plainRows}. */
export const layout: PlainLayout = {
  site: { name: 'roof', latitude: 40, longitude: -75, elevation: 100, utcOffset: -5 },
  columns: {
    ghi: { column: 'g', unit: 'W/m2' },
    dni: { column: 'b', unit: 'W/m2' },
    dhi: { column: 'd', unit: 'W/m2' },
    dryBulb: { column: 't', unit: 'degC' },
  },
  time: { timestamp: 'time' },
  stamps: 'start',
};

/** Invented rows of a plain log: light that differs by year, hour and minute. */
export function plainRows(year: number, minutes: readonly number[]): string[] {
  let row = 0;
  return calendar(isLeap(year)).flatMap(({ month, day, hour }) =>
    minutes.map((minute) => {
      const light = lightOfHour(hour) === 0 ? 0 : lightOfHour(hour) + minute + (year - 2000);
      return `${year}-${two(month)}-${two(day)} ${two(hour)}:${two(minute)},${light},0,${light},${temperatureOfRow(row++ % 8000)}`;
    }),
  );
}

/** Minutes of an hour at equal steps. */
const every = (step: number): number[] => Array.from({ length: 60 / step }, (_, at) => at * step);

/** Years in steps of so many minutes, read from one text: each by itself, its energy kept but for 29 February. */
export function keepsEnergy(years: readonly number[], step: number): void {
  const text = ['time,g,b,d,t', ...years.flatMap((year) => plainRows(year, every(step)))].join('\n');
  const read = parseWeatherYears(text, { plain: layout, source: 'log.csv' });
  expect(read.map(({ source, calendarYears }) => [source, calendarYears[0], calendarYears[8759]])).toEqual(
    years.map((year) => [`log.csv, ${year}`, year, year]),
  );
  read.forEach(({ columns, assumptions, irradianceMidpoint }, index) => {
    // 8 lit hours a day, each with the mean over its minutes.
    const mean = 100 + (60 - step) / 2 + (years[index]! - 2000);
    expect(sum(columns.ghi)).toBeCloseTo(365 * 8 * mean, 6);
    expect(assumptions.some(({ code }) => code === 'leap-day-dropped')).toBe(years[index] === 2016);
    expect(irradianceMidpoint).toBe(0.5);
  });
}
