// What is due when, and why: a calendar of three years from a run.
import { calendarInWords } from '@noonloop/reports';
import { defineSystem, maintenanceCalendar, simulate } from '@noonloop/sim-core';
import { readWeather } from '@noonloop/weather-io';

const weather = await readWeather(new URL('./weather/invented-valley.csv', import.meta.url).pathname);
const design = defineSystem({
  name: 'three panels',
  array: { panels: 3, tilt: 40, azimuth: 180, collector: { area: '2 m2', eta0: 0.75, a1: 3.8, a2: 0.012 } },
  tank: { volume: '300 L' },
  draw: { dailyVolume: '200 L', holidays: ['07-10..07-24'] },
});
const calendar = maintenanceCalendar(simulate(design, weather), {
  from: '2025-03-01',
  waterHardness: 2.8, // mmol/L, from the water works
  fluidAge: 4,
});

const { tasks, cautions } = calendarInWords(calendar); // or calendarInWords(calendar, 'us')
for (const { what, every, why, basis, who, caution, dates } of tasks) {
  console.log(`\n${what}\n  ${every}, by ${who}: ${dates.join(', ') || 'no date'}`);
  console.log(`  why: ${why}\n  basis: ${basis}\n  caution: ${caution}`);
}
console.log(`\n${cautions.join('\n')}`);
