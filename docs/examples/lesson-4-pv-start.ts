// Lesson 4, PV start: when the sun turns the pump, by the size of its module.
import { draw, hourOfDay, kWh, row, total, yearOf } from '../lessons/classroom.ts';

/** A module of some watts: its currents go by its size, its voltages stay. */
const moduleOf = (watts: number) => ({
  shortCircuitCurrent: 1.24 * (watts / 20),
  maximumPowerCurrent: 1.14 * (watts / 20),
  currentTemperatureCoefficient: 0.0007 * (watts / 20),
});
const WATTS = [2.5, 5, 10, 20, 40];
const DAY = hourOfDay(192);

console.log(row(['module, W', 'pump runs, h', 'sun, no flow, h', 'delivered, kWh', 'pump takes, kWh'], 14, 17));
const years = WATTS.map((watts) => {
  const year = yearOf({ pv: { module: moduleOf(watts) } });
  const { columns } = year;
  console.log(
    row(
      [
        watts,
        total(columns.pumpRunning).toFixed(0),
        total(columns.noFlowInSun).toFixed(0),
        kWh(columns.solarHeat).toFixed(0),
        kWh(columns.pumpPvEnergy).toFixed(1),
      ],
      14,
      17,
    ),
  );
  return [`${watts} W`, year] as const;
});
console.log('');
console.log(row(['12 July', 'first flow', 'last flow']));
for (const [name, { columns }] of years) {
  const runs = Array.from({ length: 24 }, (_, hour) => hour).filter((hour) => columns.loopFlow[DAY + hour]! > 0);
  const words = runs.length === 0 ? ['none', 'none'] : [`${runs[0]}:00`, `${runs.at(-1)! + 1}:00`];
  console.log(row([name, ...words]));
}

await draw({
  file: 'pv-start',
  title: 'Flow in the loop on 12 July, by the module of the pump',
  x: 'hour of the day',
  y: 'flow, L/min',
  marks: { min: 0, max: 24, interval: 3 },
  lines: years.map(([name, { columns }]) => ({
    name,
    points: Array.from({ length: 24 }, (_, hour) => [hour + 0.5, columns.loopFlow[DAY + hour]! * 6e4] as const),
  })),
});
