// The study that every machine makes in the same way. House and weather are invented.
import { sweep } from '@noonloop/sim-core';
import { readWeather } from '@noonloop/weather-io';

const weather = await readWeather(new URL('../weather/invented-valley.csv', import.meta.url).pathname);

export const study = sweep(
  {
    name: 'south roof',
    array: { panels: 2, tilt: 40, azimuth: 180, collector: { area: '2 m2', eta0: 0.75, a1: 3.8, a2: 0.012 } },
    tank: { volume: '300 L' },
    draw: { dailyVolume: '200 L' },
  },
  {
    'array.tilt': { from: 20, to: 70, count: 6 },
    'array.panels': [1, 2, 3, 4],
    'tank.volume': ['150 L', '200 L', '300 L', '400 L'],
  },
  weather,
);
