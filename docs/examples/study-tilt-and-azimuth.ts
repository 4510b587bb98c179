// How much does a roof that looks the wrong way cost? A map of delivered energy over tilt and azimuth.
// Writes out/tilt-and-azimuth.svg. House and weather are invented.
import { mkdir, writeFile } from 'node:fs/promises';
import { sweep } from '@noonloop/sim-core';
import { runStudy } from '@noonloop/sim-core/node';
import { readWeather } from '@noonloop/weather-io';

const weather = await readWeather(new URL('./weather/invented-valley.csv', import.meta.url).pathname);
const tilts = [15, 30, 45, 60, 75];
const azimuths = [90, 120, 150, 180, 210, 240, 270];
const study = sweep(
  {
    array: { panels: 2, tilt: 40, azimuth: 180, collector: { area: '2 m2', eta0: 0.75, a1: 3.8, a2: 0.012 } },
    tank: { volume: '300 L' },
    draw: { dailyVolume: '200 L' },
  },
  { 'array.tilt': tilts, 'array.azimuth': azimuths },
  weather,
);
const kWh = (await runStudy(study)).map(({ measures }) => measures.deliveredEnergy! / 3.6e6);
const most = Math.max(...kWh);
const shareAt = (row: number, column: number): number => kWh[row * azimuths.length + column]! / most;

console.log(
  `100 is ${most.toFixed(0)} kWh a year\n\ntilt    azimuth ${azimuths.map((azimuth) => `${azimuth}°`.padStart(5)).join('')}`,
);
for (const [row, tilt] of tilts.entries()) {
  const cells = azimuths.map((_, column) => (100 * shareAt(row, column)).toFixed(0).padStart(5));
  console.log(`${`${tilt}°`.padEnd(16)}${cells.join('')}`);
}

const [width, height, left, top] = [76, 46, 90, 64];
const least = Math.min(...kWh) / most;
const cells = tilts.flatMap((_, row) =>
  azimuths.map((_, column) => {
    const share = shareAt(row, column);
    const depth = (share - least) / (1 - least);
    const [x, y] = [left + column * width, top + (tilts.length - 1 - row) * height];
    const fill = `hsl(36 85% ${95 - 35 * depth}%)`;
    return `<rect x="${x}" y="${y}" width="${width - 2}" height="${height - 2}" fill="${fill}"/><text x="${x + width / 2 - 1}" y="${y + height / 2 + 4}" text-anchor="middle">${(100 * share).toFixed(0)} %</text>`;
  }),
);
const bottom = top + tilts.length * height;
const labels = [
  ...azimuths.map(
    (azimuth, at) =>
      `<text x="${left + (at + 0.5) * width}" y="${bottom + 18}" text-anchor="middle">${azimuth}°</text>`,
  ),
  ...tilts.map(
    (tilt, at) =>
      `<text x="${left - 10}" y="${top + (tilts.length - at - 0.5) * height + 4}" text-anchor="end">${tilt}°</text>`,
  ),
  `<text x="${left}" y="26" font-size="17">Delivered energy by tilt and azimuth</text>`,
  `<text x="${left}" y="47">100 % is ${most.toFixed(0)} kWh a year; two panels, 300 L, 200 L a day, invented weather</text>`,
  `<text x="${left + 3.5 * width}" y="${bottom + 40}" text-anchor="middle">azimuth, clockwise from north: east 90°, south 180°, west 270°</text>`,
  `<text x="20" y="${(top + bottom) / 2}" text-anchor="middle" transform="rotate(-90 20 ${(top + bottom) / 2})">tilt</text>`,
];
const size = `width="${left + azimuths.length * width + 20}" height="${bottom + 56}"`;
const svg = `<svg xmlns="http://www.w3.org/2000/svg" ${size} font-family="system-ui, sans-serif" font-size="13" fill="#222" role="img" aria-label="Map of delivered energy over tilt and azimuth"><rect width="100%" height="100%" fill="#fff"/>${cells.join('')}${labels.join('')}</svg>`;
const folder = new URL('../../out/', import.meta.url);
await mkdir(folder, { recursive: true });
await writeFile(new URL('tilt-and-azimuth.svg', folder), svg);
console.log('\nAs a picture: out/tilt-and-azimuth.svg');
