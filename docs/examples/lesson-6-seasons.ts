// Lesson 6, seasons: the months of a year, and what the tilt moves between them.
import { draw, house, kWh, row, yearOf } from '../lessons/classroom.ts';

const NAMES = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
const LENGTHS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
const starts = LENGTHS.map((_, month) => 24 * LENGTHS.slice(0, month).reduce((sum, days) => sum + days, 0));
const years = [20, 40, 65].map((tilt) => [`tilt ${tilt}°`, yearOf({ array: { ...house.array, tilt } })] as const);
const monthly = (column: Float64Array) =>
  NAMES.map((_, month) => kWh(column, starts[month]!, starts[month + 1] ?? 8760));

console.log(row(['delivered, kWh', ...years.map(([name]) => name), 'asked']));
const delivered = years.map(([, { columns }]) => monthly(columns.solarHeat));
const asked = monthly(years[0]![1].columns.tapHeatAsked);
NAMES.forEach((name, month) => {
  console.log(row([name, ...delivered.map((months) => months[month]!.toFixed(0)), asked[month]!.toFixed(0)]));
});
console.log(
  row([
    'year',
    ...years.map(([, { columns }]) => kWh(columns.solarHeat).toFixed(0)),
    kWh(years[0]![1].columns.tapHeatAsked).toFixed(0),
  ]),
);

await draw({
  file: 'seasons',
  title: 'Heat asked and heat delivered, month by month',
  x: 'month',
  y: 'kWh a month',
  marks: { min: 1, max: 12, interval: 1 },
  lines: [
    ...delivered.map((months, index) => ({
      name: years[index]![0],
      points: months.map((value, month) => [month + 1, value] as const),
    })),
    { name: 'asked at the taps', points: asked.map((value, month) => [month + 1, value] as const) },
  ],
});
