// Which month fails, and how? Winter asks for more sun than there is, summer for less.
// House and weather are invented.
import { compare, type SystemInput } from '@noonloop/sim-core';
import { runStudy } from '@noonloop/sim-core/node';
import { readWeather } from '@noonloop/weather-io';

/** A month fails when the sun gives less than half of the heat, when the loop stands hot this long, or the tank gets this hot. */
const goal = { solarFraction: 0.5, stagnationHours: 5, peakTankTemperature: 90 };

const weather = await readWeather(new URL('./weather/invented-valley.csv', import.meta.url).pathname);
const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
const designs = [2, 3, 4].map(
  (panels): SystemInput => ({
    name: `${panels} panels`,
    array: { panels, tilt: 40, azimuth: 180, collector: { area: '2 m2', eta0: 0.75, a1: 3.8, a2: 0.012 } },
    tank: { volume: '300 L' },
    draw: { dailyVolume: '200 L' },
  }),
);
const study = compare(designs, weather, { monthly: ['solarFraction', 'stagnationHours', 'peakTankTemperature'] });

console.log(`Share of the sun in each month [%]; < less than ${100 * goal.solarFraction}, ! too hot\n`);
console.log(`          ${months.map((month) => month.padStart(5)).join('')}`);
for (const { inputs, months: of } of await runStudy(study)) {
  const hot = (month: number): boolean =>
    of!.stagnationHours![month]! > goal.stagnationHours || of!.peakTankTemperature![month]! > goal.peakTankTemperature;
  const cells = months.map((_, month) => {
    const share = of!.solarFraction![month] ?? 0;
    const mark = share < goal.solarFraction ? '<' : hot(month) ? '!' : ' ';
    return `${(100 * share).toFixed(0).padStart(4)}${mark}`;
  });
  console.log(`${String(inputs.design).padEnd(10)}${cells.join('')}`);
  const worst = months.reduce((found, _, month) => {
    return of!.solarFraction![month]! < of!.solarFraction![found]! ? month : found;
  }, 0);
  const hottest = months.filter((_, month) => hot(month));
  console.log(
    `          least sun in ${months[worst]}; ${hottest.length === 0 ? 'no month too hot' : `too hot in ${hottest.join(', ')}`}`,
  );
}
