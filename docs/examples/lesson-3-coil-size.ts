// Lesson 3, coil size: what more tube in the tank is worth.
import { draw, kWh, row, yearOf } from '../lessons/classroom.ts';

const LENGTHS_m = [1, 2, 4, 8, 12, 16, 24];
console.log(row(['coil, m of 22 mm tube', 'delivered, kWh', 'over tank, K', 'stagnation, h'], 26, 16));
const points = LENGTHS_m.map((length) => {
  const { columns } = yearOf({ coil: { length } });
  const bright = Array.from(columns.irradiance.keys()).filter(
    (hour) => columns.irradiance[hour]! > 700 && columns.pumpRunning[hour]! > 0.99,
  );
  const over =
    bright.reduce(
      (sum, hour) => sum + columns.collectorOutletTemperature[hour]! - columns.tankMeanTemperature[hour]!,
      0,
    ) / bright.length;
  const stagnation = columns.stagnation.reduce((sum, share) => sum + share, 0);
  console.log(row([length, kWh(columns.solarHeat).toFixed(0), over.toFixed(1), stagnation.toFixed(0)], 26, 16));
  return [length, kWh(columns.solarHeat)] as const;
});
console.log('');
console.log(`from 12 to 24 m: ${(points[6]![1] - points[4]![1]).toFixed(0)} kWh a year more`);
console.log(`from 2 to 4 m: ${(points[2]![1] - points[1]![1]).toFixed(0)} kWh a year more`);

await draw({
  file: 'coil-size',
  title: 'Heat delivered in a year, by the length of the coil',
  x: 'coil, m',
  y: 'delivered, kWh',
  lines: [{ name: 'delivered', points }],
});
