// Invents a year of weather for a place that does not exist, and writes docs/examples/weather/invented-valley.csv.
//
//     npx tsx --conditions=@noonloop/source scripts/make-demo-weather.ts
//
// The sun is real (position and strength at the top of the air); clouds, temperature, moisture, wind and pressure are drawn
// from a seeded generator, so the same seed writes the same file. Numbers without a source are invented.
import { mkdirSync, writeFileSync } from 'node:fs';
import type { ColumnKey, WeatherColumns } from '@noonloop/weather-io';
import { extraterrestrialNormal, hourStarts, sunPositionInto } from '@noonloop/weather-io/sun';
import {
  LAYOUT_COLUMNS,
  LAYOUT_KEYS,
  LAYOUT_MARK,
  LAYOUT_TIME,
} from '../packages/weather-io/src/formats/plain-layout.ts';

const SEED = 20_230_517;
const YEAR = 2023;
const HOURS = 8760;
const DAYS = 365;
/** Sun positions an hour. */
const STEPS = 12;

const site = { name: 'Invented Valley', latitude: 41.2, longitude: -77.5, elevation: 300, utcOffset: -5 };

/** Uniform numbers in [0, 1): the generator "mulberry32", public domain. */
function generator(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
}

const uniform = generator(SEED);

/** Standard normal number (Box and Muller). */
const normal = (): number => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());

/** Standard normal numbers, each remembering the one before by `memory`. */
function persistent(length: number, memory: number): Float64Array {
  const values = new Float64Array(length);
  let value = normal();
  for (let at = 0; at < length; at++) {
    value = memory * value + Math.sqrt(1 - memory * memory) * normal();
    values[at] = value;
  }
  return values;
}

/** −1 in the coldest week (late January), 1 in late July. */
const season = (day: number): number => -Math.cos((2 * Math.PI * (day - 24)) / DAYS);

/** Daily values, laid through the noons, at an hour of the year. */
function atHour(daily: Float64Array, hour: number): number {
  const day = (hour + 0.5) / 24 - 0.5;
  const before = Math.floor(day);
  const weight = day - before;
  const value = (index: number): number => daily[(index + DAYS) % DAYS]!;
  return value(before) * (1 - weight) + value(before + 1) * weight;
}

/** Share of the sky that is clouded, 0 to 1: whole days hang together, hours scatter about them. */
function cloudCover(): Float64Array {
  const days = persistent(DAYS, 0.45);
  const hours = persistent(HOURS, 0.85);
  return Float64Array.from(hours, (scatter, hour) => {
    const greyness = 0.95 * atHour(days, hour) + 0.45 * scatter - 0.3 - 0.35 * season(hour / 24);
    return 1 / (1 + Math.exp(-2.2 * greyness));
  });
}

/** Irradiance of each hour: the mean of twelve instants, so that GHI = DHI + DNI cos Z holds in each of them. */
function irradiance(clouds: Float64Array): Pick<WeatherColumns, 'ghi' | 'dni' | 'dhi'> {
  const [ghi, dni, dhi] = [new Float64Array(HOURS), new Float64Array(HOURS), new Float64Array(HOURS)];
  const starts = hourStarts({ site, calendarYears: new Int16Array(HOURS).fill(YEAR) });
  const sun = new Float64Array(2);
  for (let hour = 0; hour < HOURS; hour++) {
    for (let step = 0; step < STEPS; step++) {
      const time = starts[hour]! + ((step + 0.5) / STEPS) * 3_600_000;
      sunPositionInto(sun, 0, time, site.latitude, site.longitude);
      if (sun[0]! >= 90) continue;
      const cosine = Math.cos((sun[0]! * Math.PI) / 180);
      // Air mass: Kasten & Young 1989. Clear beam: Meinel & Meinel 1976, a little hazier in summer (invented).
      const airMass = 1 / (cosine + 0.50572 * (96.07995 - sun[0]!) ** -1.6364);
      const clearness = 0.71 - 0.02 * season(hour / 24);
      const clearBeam = extraterrestrialNormal(time) * clearness ** (airMass ** 0.678);
      const clearDiffuse = 0.36 * (extraterrestrialNormal(time) - clearBeam) * cosine;
      const open = (1 - clouds[hour]!) ** 1.2;
      const beam = clearBeam * open;
      const diffuse = clearDiffuse * open + 0.36 * (1 - open) * (clearDiffuse + clearBeam * cosine);
      dni[hour]! += beam / STEPS;
      dhi[hour]! += diffuse / STEPS;
      ghi[hour]! += (diffuse + beam * cosine) / STEPS;
    }
  }
  return { ghi, dni, dhi };
}

/** Air temperature: season, spells of some days, and a daily course that is wider under an open sky. [°C] */
function temperature(clouds: Float64Array): Float64Array {
  const spells = persistent(DAYS, 0.72);
  const means = new Float64Array(DAYS);
  const swings = new Float64Array(DAYS);
  for (let day = 0; day < DAYS; day++) {
    const cloud = clouds.subarray(day * 24, day * 24 + 24).reduce((sum, value) => sum + value, 0) / 24;
    const clearSky = 0.5 - cloud;
    means[day] = 9.6 + 12.4 * season(day) + (4.4 - 1.5 * season(day)) * spells[day]! + 3 * season(day) * clearSky;
    swings[day] = 2 + 5 * (1 - cloud) + 0.8 * season(day);
  }
  return Float64Array.from({ length: HOURS }, (_, hour) => {
    const angle = (2 * Math.PI * ((hour % 24) + 0.5 - 15)) / 24;
    // The second harmonic puts the coldest hour near dawn and the warmest in mid-afternoon.
    return atHour(means, hour) + atHour(swings, hour) * (Math.cos(angle) + 0.18 * Math.cos(2 * angle - 0.8));
  });
}

/** Saturation pressure of water vapour, Magnus formula (Alduchov & Eskridge 1996). [hPa] */
const saturation = (celsius: number): number => 6.1094 * Math.exp((17.625 * celsius) / (celsius + 243.04));

/** All columns of the year. */
function invent(): Partial<Record<ColumnKey, Float64Array>> {
  const clouds = cloudCover();
  const { ghi, dni, dhi } = irradiance(clouds);
  const dryBulb = temperature(clouds);
  const dryness = persistent(DAYS, 0.5);
  const dewPoint = dryBulb.map((air, hour) => {
    const coldest = Math.min(...dryBulb.subarray(Math.max(0, hour - 18), Math.min(HOURS, hour + 18)));
    return Math.min(air - 0.4, coldest + 0.6 + 1.3 * atHour(dryness, hour));
  });
  const relativeHumidity = dewPoint.map((dew, hour) => saturation(dew) / saturation(dryBulb[hour]!));
  const gusts = persistent(HOURS, 0.9);
  const windSpeed = gusts.map((gust, hour) => {
    const course = 1 + 0.3 * Math.cos((2 * Math.PI * ((hour % 24) - 14)) / 24);
    return 2.7 * course * Math.exp(0.5 * gust - 0.12) * (1 - 0.15 * season(hour / 24));
  });
  const weatherPressure = persistent(DAYS, 0.75);
  // 977.7 hPa: International Standard Atmosphere (ISO 2533) at 300 m.
  const pressure = windSpeed.map((_, hour) => 97_770 + 650 * atHour(weatherPressure, hour));
  const skyLongwave = dewPoint.map((dew, hour) => {
    // Clear sky: Berdahl & Martin 1984; clouds close 84 % of what is open (common practice).
    const clear = 0.711 + 0.56 * (dew / 100) + 0.73 * (dew / 100) ** 2;
    return (clear + 0.84 * clouds[hour]! * (1 - clear)) * 5.670374e-8 * (dryBulb[hour]! + 273.15) ** 4;
  });
  return { ghi, dni, dhi, dryBulb, dewPoint, relativeHumidity, windSpeed, pressure, skyLongwave };
}

/** Decimals that a column is printed with. */
const DECIMALS: Partial<Record<ColumnKey, number>> = { dryBulb: 1, dewPoint: 1, relativeHumidity: 2, windSpeed: 1 };

function render(columns: Partial<Record<ColumnKey, Float64Array>>): string {
  const keys = Object.keys(columns) as ColumnKey[];
  const lines = [
    LAYOUT_MARK,
    `# ${LAYOUT_KEYS.name}: ${site.name}`,
    `# ${LAYOUT_KEYS.latitude}: ${site.latitude}`,
    `# ${LAYOUT_KEYS.longitude}: ${site.longitude}`,
    `# ${LAYOUT_KEYS.elevation}: ${site.elevation}`,
    `# ${LAYOUT_KEYS.utcOffset}: ${site.utcOffset}`,
    `# ${LAYOUT_KEYS.irradianceMidpoint}: 0.5`,
    `# ${LAYOUT_KEYS.licence}: CC0-1.0`,
    `# ${LAYOUT_KEYS.note}: INVENTED data for an invented place, made by scripts/make-demo-weather.ts; not a measurement of any year.`,
    [...Object.values(LAYOUT_TIME), ...keys.map((key) => LAYOUT_COLUMNS[key].column)].join(','),
  ];
  for (let hour = 0; hour < HOURS; hour++) {
    const date = new Date(Date.UTC(YEAR, 0, 1, hour));
    const time = [YEAR, date.getUTCMonth() + 1, date.getUTCDate(), date.getUTCHours()];
    const values = keys.map((key) => Number(columns[key]![hour]!.toFixed(DECIMALS[key] ?? 0)) + 0);
    lines.push([...time, ...values].join(','));
  }
  return `${lines.join('\n')}\n`;
}

const folder = new URL('../docs/examples/weather/', import.meta.url);
mkdirSync(folder, { recursive: true });
writeFileSync(new URL('invented-valley.csv', folder), render(invent()));
