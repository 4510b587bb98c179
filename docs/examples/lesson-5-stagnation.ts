// Lesson 5, stagnation: nobody at home for two weeks in July.
import { draw, highest, hourOfDay, kWh, row, total, yearOf } from '../lessons/classroom.ts';

const AWAY = ['07-10..07-23'];
const START = hourOfDay(188); // 8 July
const cases = [2, 3, 4].flatMap((panels) =>
  [null, 85].map((highLimit) => {
    const year = yearOf({
      array: { panels, tilt: 40, azimuth: 180, collector: { area: '2 m2', eta0: 0.75, a1: 3.8, a2: 0.012 } },
      draw: { dailyVolume: '200 L', holidays: AWAY },
      control: { highLimit },
    });
    return [`${panels} panels, ${highLimit === null ? 'no limit' : `limit ${highLimit} °C`}`, year] as const;
  }),
);

console.log(
  row(
    [
      'a year with two weeks away',
      'stagnation, h',
      'limit, h',
      'absorber, °C',
      'tank, °C',
      'let out, L',
      'let out, kWh',
      'kWh a year',
    ],
    26,
    14,
  ),
);
for (const [name, { columns }] of cases) {
  console.log(
    row(
      [
        name,
        total(columns.stagnation).toFixed(0),
        total(columns.highLimit).toFixed(0),
        highest(columns.absorberTemperature).toFixed(0),
        highest(columns.tankMaximumTemperature).toFixed(0),
        (1000 * total(columns.reliefVolume)).toFixed(0),
        kWh(columns.reliefHeat).toFixed(0),
        kWh(columns.solarHeat).toFixed(0),
      ],
      26,
      14,
    ),
  );
}

await draw({
  file: 'stagnation',
  title: 'Hottest layer of the tank from 8 July; nobody at home from the 10th to the 23rd',
  x: 'days from 8 July',
  y: 'hottest layer, °C',
  marks: { min: 0, max: 18, interval: 3 },
  lines: cases.map(([name, { columns }]) => ({
    name,
    points: Array.from(
      { length: 18 * 24 },
      (_, hour) => [(hour + 1) / 24, columns.tankMaximumTemperature[START + hour]!] as const,
    ),
  })),
});
