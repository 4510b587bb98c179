// Will it freeze, when does a leak take the protection, how old does the glycol get, and what does the refractometer say?
// The valley is invented.
import { adviceInWords } from '@noonloop/reports';
import {
  defineSystem,
  freezeAtSite,
  freezeOfRun,
  glycolAgeing,
  glycolForSite,
  glycolFromReading,
  glycolVerdict,
  type SystemInput,
  simulate,
  thinning,
} from '@noonloop/sim-core';
import { readWeather } from '@noonloop/weather-io';

const weather = await readWeather(new URL('./weather/invented-valley.csv', import.meta.url).pathname);
const house: SystemInput = {
  array: { panels: 3, tilt: 40, azimuth: 180, collector: { area: 2, eta0: 0.75, a1: 3.8, a2: 0.012 } },
  tank: { volume: '300 L' },
  draw: { dailyVolume: '200 L' },
};
const design = defineSystem(house);
const date = (hour: number) =>
  new Date(Date.UTC(2001, 0, 1, Math.floor(hour) % 8760)).toLocaleDateString('en-GB', {
    day: 'numeric',
    month: 'long',
    timeZone: 'UTC',
  });

console.log(
  'Glycol by mass: hours below freezing (of them by the sky alone), kelvin to spare in the worst hour, hours below bursting',
);
for (const share of [0, 0.1, 0.2, 0.3, 0.4]) {
  const { freezingPoint, hoursBelowFreezing, hoursBySky, margin, hoursBelowBurst } = freezeAtSite(
    design,
    weather,
    share,
  );
  console.log(
    `  ${(100 * share).toFixed(0).padStart(2)} %, ${(Math.round(10 * freezingPoint) / 10 + 0).toFixed(1).padStart(6)} °C: ${String(hoursBelowFreezing).padStart(5)} h (${hoursBySky}), ${margin.toFixed(1).padStart(5)} K, ${String(hoursBelowBurst).padStart(5)} h`,
  );
}
const needed = glycolForSite(design, weather);
console.log(
  `Needed: ${(100 * needed.volumeFraction).toFixed(0)} % by volume (freezes at ${needed.freezingPoint.toFixed(1)} °C); the coldest hour is ${needed.coldest.toFixed(1)} °C on ${date(needed.coldestHour)}.`,
);

// A drop a minute, and a filling valve left open.
const leak = '0.05 L/day';
const slow = thinning(design, { leak, coldest: needed.coldest });
console.log(
  `\nA leak of ${leak} with automatic make-up: protection gone after ${slow.daysToFreezing.toFixed(0)} days, on ${date(24 * slow.dayOfYear)};`,
);
console.log(`pipes may split from day ${slow.daysToBursting?.toFixed(0)} on.`);
const run = simulate(defineSystem({ ...house, loop: { leak, makeUp: true } }), weather);
const thinned = freezeOfRun(run);
console.log(
  `The simulated year: from ${date(run.loop.protectionEnds ?? 0)} on; ${thinned.hoursBelowFreezing} h as slush, ${thinned.hoursBelowBurst} h below bursting, ${thinned.deepestBelowFreezing.toFixed(1)} K too cold.`,
);
for (const caution of adviceInWords(thinned.cautions)) console.log(`! ${caution}`);

const ageing = glycolAgeing(simulate(design, weather));
console.log(
  `\nA year of heat, three panels: ${ageing.hoursAbove.map(({ temperature, hours }) => `${hours.toFixed(0)} h over ${temperature} °C`).join(', ')}.`,
);
console.log(
  `As much as ${ageing.equivalentHours.toFixed(0)} h at ${ageing.limit} °C: test after ${ageing.monthsToTest} months.`,
);
for (const note of adviceInWords(ageing.notes)) console.log(`  - ${note}`);

console.log('\nReadings:');
for (const reading of [
  { scale: 'freezing-point', value: '-4 degF' },
  { scale: 'brix', value: 27.5 },
  { scale: 'refractive-index', value: 1.377 },
] as const) {
  const { massFraction, error, volumeFraction, freezingPoint, worstFreezingPoint } = glycolFromReading(reading);
  console.log(
    `  ${reading.scale} ${reading.value}: ${(100 * massFraction).toFixed(0)} ± ${(100 * error).toFixed(0)} % by mass, ${(100 * volumeFraction).toFixed(0)} % by volume, freezes at ${freezingPoint.toFixed(0)} °C (${worstFreezingPoint.toFixed(0)} at worst)`,
  );
}
console.log(`  pH 7.6: ${glycolVerdict(7.6)}`);
