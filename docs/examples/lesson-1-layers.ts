// Lesson 1, layers: the same sun in a tank that keeps its layers and in one that is stirred.
import { draw, highest, hourOfDay, kWh, row, yearOf } from '../lessons/classroom.ts';

const NODES = 20;
const DAY = hourOfDay(192); // 12 July, by the invented weather a clear day
const layered = yearOf();
const mixed = yearOf({ tank: { volume: '300 L', verticalConductivity: 100 } }); // layers cannot last

console.log(row(['tank on 12 July, °C', '6:00', '10:00', '14:00', '18:00']));
for (const [name, year] of [
  ['layered', layered],
  ['mixed', mixed],
] as const) {
  for (const [place, node] of [
    ['top', NODES - 1],
    ['middle', NODES / 2],
    ['bottom', 0],
  ] as const) {
    const at = (hour: number) => year.tankNodes[(DAY + hour - 1) * NODES + node]!.toFixed(1);
    console.log(row([`${name}, ${place}`, at(6), at(10), at(14), at(18)]));
  }
}
console.log('');
console.log(row(['12 July', 'layered', 'mixed']));
const burnt = ({ columns }: typeof layered, from: number, to: number) =>
  kWh(columns.heaterHeat, DAY + from, DAY + to).toFixed(2);
console.log(row(['burner 6:00 to 8:00, kWh', burnt(layered, 6, 8), burnt(mixed, 6, 8)]));
console.log(row(['burner all day, kWh', burnt(layered, 0, 24), burnt(mixed, 0, 24)]));
console.log('');
console.log(row(['a year', 'layered', 'mixed']));
console.log(
  row(['delivered, kWh', kWh(layered.columns.solarHeat).toFixed(0), kWh(mixed.columns.solarHeat).toFixed(0)]),
);
console.log(
  row(['burner gave, kWh', kWh(layered.columns.heaterHeat).toFixed(0), kWh(mixed.columns.heaterHeat).toFixed(0)]),
);
console.log(
  row([
    'hottest layer, °C',
    highest(layered.columns.tankMaximumTemperature).toFixed(1),
    highest(mixed.columns.tankMaximumTemperature).toFixed(1),
  ]),
);

await draw({
  file: 'layers',
  title: 'Tank on 12 July: temperature by height, layered and mixed',
  x: 'temperature, °C',
  y: 'height in the tank, share',
  lines: [6, 10, 14, 18].flatMap((hour) =>
    hour === 6 || hour === 14
      ? (
          [
            ['layered', layered],
            ['mixed', mixed],
          ] as const
        ).map(([name, year]) => ({
          name: `${name}, ${hour}:00`,
          points: Array.from(
            { length: NODES },
            (_, node) => [year.tankNodes[(DAY + hour - 1) * NODES + node]!, (node + 0.5) / NODES] as const,
          ),
        }))
      : [],
  ),
});
