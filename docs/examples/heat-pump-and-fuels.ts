// One house, five heaters behind the solar tank: bills and carbon dioxide of a year. House and prices are invented.
import { money, type PricedCarrier } from '@noonloop/reports';
import { defineSystem, type SystemInput, simulate } from '@noonloop/sim-core';
import { readWeather } from '@noonloop/weather-io';

const weather = await readWeather(new URL('./weather/invented-valley.csv', import.meta.url).pathname);
const system = (heater: SystemInput['heater']) =>
  defineSystem({
    array: { panels: 2, tilt: 40, azimuth: 180, collector: { area: '2 m2', eta0: 0.75, a1: 3.8, a2: 0.012 } },
    tank: { volume: '300 L' },
    draw: { dailyVolume: '200 L' },
    heater,
  });
const electricity = {
  carrier: 'electricity',
  price: 0.3,
  per: 'kWh',
  co2_kg_per_kWh: 0.35,
  co2Source: 'invented',
} as const;
const by = (carrier: PricedCarrier, price: number, per: 'L' | 'kg' | 'kWh') => ({ carrier, price, per }) as const;

for (const [name, heater, fuel] of [
  [
    'oil boiler, 0.88 by net',
    { kind: 'stored-boiler', fuel: 'heating-oil', netEfficiency: 0.88 },
    by('heating-oil', 1.1, 'L'),
  ],
  ['pellet boiler', { kind: 'stored-boiler', fuel: 'wood-pellets' }, by('wood-pellets', 0.4, 'kg')],
  [
    'heat network',
    { kind: 'stored-boiler', fuel: 'district-heat' },
    { ...by('district-heat', 0.12, 'kWh'), co2_kg_per_kWh: 0.2 },
  ],
  [
    'heat pump by its data sheet',
    { kind: 'heat-pump', cop: { airTemperatures: [-7, 2, 7, 20], values: [1.9, 2.4, 2.9, 3.7], between: 'curve' } },
    electricity,
  ],
  [
    'element, 3 kW of PV with 300 W for the house',
    { kind: 'element', sparePv: { peakPower: 3000, houseLoad: 300 } },
    electricity,
  ],
] as const) {
  const run = simulate(system(heater), weather);
  const year = money(run, { currency: 'EUR', fuel, electricity, discountRate: 0.03, life: 20 });
  const share = Math.round((100 * (year.billWithout - year.billWith)) / year.billWithout);
  console.log(
    `${name}: ${year.billWithout.toFixed(0)} EUR a year without the sun, ${year.billWith.toFixed(0)} with it (${share} % less); ` +
      `${year.co2With === null ? 'no factor for' : year.co2With.toFixed(0)} kg of carbon dioxide`,
  );
}
