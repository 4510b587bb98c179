// What is this house really like? Collector, tank loss and draw fitted to a notebook of seven weeks, each with its uncertainty.
// The notebook is INVENTED: read from a run of our own (docs/examples/logs/invented-spring.csv).
import { calibrationInWords, checkInWords } from '@noonloop/reports';
import { calibrate, checkLog, defineSystem } from '@noonloop/sim-core';
import { readLog, readWeather } from '@noonloop/weather-io';

const here = (path: string): string => new URL(path, import.meta.url).pathname;
const weather = await readWeather(here('./weather/invented-valley.csv'));
const design = defineSystem({
  name: 'two panels',
  array: { panels: 2, tilt: 40, azimuth: 180, collector: { area: '2 m2', eta0: 0.75, a1: 3.8, a2: 0.012 } },
  tank: { volume: '300 L' },
  draw: { dailyVolume: '200 L' },
});
const log = await readLog(here('./logs/invented-spring.csv'), {
  time: { date: 'date', clock: 'time' },
  columns: {
    tankTopTemperature: { column: 'tank top', unit: 'degC' },
    flowTemperature: { column: 'hot pipe', unit: 'degC' },
    returnTemperature: { column: 'cold pipe', unit: 'degC' },
    pumpRuns: { column: 'pump', unit: 'yes/no' },
    heaterMeter: { column: 'gas', unit: 'm3' },
  },
  gasHeat_kWh_per_m3: 10.8,
});

// A faulty system bends the values: look first.
console.log(checkInWords(checkLog(design, weather, log)).headline);

const calibration = calibrate(design, weather, log, {
  fit: ['eta0', 'collectorLoss', 'tankLoss', 'draw'],
});
const { correlation, fitBefore, fitAfter } = calibration;
const { parameters, notes } = calibrationInWords(calibration);
console.log(parameters.join('\n'));
console.log(`mean square of the deviations: ${fitBefore.toFixed(2)} before, ${fitAfter.toFixed(2)} after`);
console.log('correlation:', correlation.map((row) => row.map((value) => value.toFixed(2)).join(' ')).join(' | '));
console.log(notes.join('\n'));
