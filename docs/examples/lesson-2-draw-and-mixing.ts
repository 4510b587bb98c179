// Lesson 2, draw and mixing: what the tap takes of the tank, and what a rough inlet stirs.
import { draw, hourOfDay, kWh, row, total, yearOf } from '../lessons/classroom.ts';

const MONTHS = [
  ['January', 0, 31],
  ['April', 90, 120],
  ['July', 181, 212],
  ['October', 273, 304],
] as const;
const calm = yearOf();

console.log(row(['month', 'mains, °C', 'at taps, L/d', 'hot, L/d', 'tank top, °C'], 12, 14));
for (const [name, first, end] of MONTHS) {
  const [from, to] = [hourOfDay(first), hourOfDay(end)];
  const days = end - first;
  const mean = (column: Float64Array) => total(column, from, to) / (to - from);
  console.log(
    row(
      [
        name,
        mean(calm.columns.mainsTemperature).toFixed(1),
        ((1000 * total(calm.columns.tapVolume, from, to)) / days).toFixed(0),
        ((1000 * total(calm.columns.hotVolume, from, to)) / days).toFixed(0),
        mean(calm.columns.tankTopTemperature).toFixed(1),
      ],
      12,
      14,
    ),
  );
}

console.log('');
console.log(row(['inlet of the cold water', 'delivered, kWh', 'burner, kWh'], 26, 16));
const inlets = [
  ['spread, no mixing', null],
  ['bore of 30 mm', '30 mm'],
  ['bore of 15 mm', '15 mm'],
  ['bore of 10 mm', '10 mm'],
] as const;
const years = inlets.map(([name, inletDiameter]) => {
  const year = yearOf({ tank: { volume: '300 L', inletDiameter }, draw: { dailyVolume: '200 L', flow: '10 L/min' } });
  console.log(row([name, kWh(year.columns.solarHeat).toFixed(0), kWh(year.columns.heaterHeat).toFixed(0)], 26, 16));
  return [name, year] as const;
});

const DAY = hourOfDay(192);
await draw({
  file: 'draw-and-mixing',
  title: 'Bottom of the tank on 12 and 13 July, by inlet',
  x: 'hours from midnight',
  y: 'bottom layer, °C',
  marks: { min: 0, max: 48, interval: 6 },
  lines: years.map(([name, year]) => ({
    name,
    points: Array.from(
      { length: 48 },
      (_, hour) => [hour + 1, year.columns.tankBottomTemperature[DAY + hour]!] as const,
    ),
  })),
});
