// How large must the PV module be? Module size against the power at which the pump starts.
// House, weather and modules are invented.
import { type FieldSet, sweep } from '@noonloop/sim-core';
import { runStudy } from '@noonloop/sim-core/node';
import { readWeather } from '@noonloop/weather-io';

const weather = await readWeather(new URL('./weather/invented-valley.csv', import.meta.url).pathname);
const watts = [5, 10, 20, 40];
const starts = [1.5, 3, 6];

/** Cells of another size: the currents of a 20 W data sheet in proportion, the voltages as they are. */
const moduleOf = (power: number): FieldSet => ({
  'pv.module.name': `${power} W module`,
  'pv.module.shortCircuitCurrent': (1.24 * power) / 20,
  'pv.module.maximumPowerCurrent': (1.14 * power) / 20,
  'pv.module.currentTemperatureCoefficient': (0.0007 * power) / 20,
});
const study = sweep(
  {
    array: { panels: 3, tilt: 40, azimuth: 180, collector: { area: '2 m2', eta0: 0.75, a1: 3.8, a2: 0.012 } },
    tank: { volume: '300 L' },
    draw: { dailyVolume: '250 L' },
  },
  {
    module: { variants: Object.fromEntries(watts.map((power) => [`${power} W`, moduleOf(power)])) },
    // A pump that starts at a given power keeps turning down to 70 % of it.
    start: {
      variants: Object.fromEntries(
        starts.map((power) => [`${power} W`, { 'pump.startPower': power, 'pump.stopPower': 0.7 * power }]),
      ),
    },
  },
  weather,
  { measures: ['noFlowHours'] },
);

console.log('module  pump starts at   pump runs   sun without flow   stagnation   delivered');
for (const { error, inputs, measures } of await runStudy(study)) {
  const head = `${String(inputs.module).padEnd(7)} ${String(inputs.start).padEnd(14)}`;
  if (error !== undefined) {
    console.log(`${head}   ${error.message}`);
    continue;
  }
  const hours = (value: number): string => `${value.toFixed(0)} h`;
  console.log(
    `${head} ${hours(measures.pumpHours!).padStart(11)} ${hours(measures.noFlowHours!).padStart(18)}`,
    `${hours(measures.stagnationHours!).padStart(11)} ${(measures.deliveredEnergy! / 3.6e6).toFixed(0).padStart(7)} kWh`,
  );
}
console.log('\nA module that is too small starts the pump late: the array stands in sun, gets hot and may boil.');
