// Ways in which a whole file is wrong, and what becomes of each: the table of docs/theory/weather-quality.md is made from this.
import {
  checkWeather,
  parseWeather,
  type Site,
  synthesizeYear,
  type WeatherColumns,
  WeatherError,
  type WeatherYear,
  writeWeather,
} from '@noonloop/weather-io';

type Key = keyof WeatherColumns;

/** A year with some columns computed anew; columns that it has not stay so. */
function altered(
  year: WeatherYear,
  changes: Partial<Record<Key, (value: number, hour: number, columns: WeatherColumns) => number>>,
): WeatherYear {
  const { columns } = year;
  const made = Object.entries(changes).map(([key, change]) => [
    key,
    columns[key as Key]?.map((value, hour) => change(value, hour, columns)) ?? null,
  ]);
  return { ...year, columns: { ...columns, ...Object.fromEntries(made) } };
}

const atSite = (year: WeatherYear, change: (site: Site) => Partial<Site>): WeatherYear => ({
  ...year,
  site: { ...year.site, ...change(year.site) },
});

const light = (change: (value: number, hour: number) => number) => ({ ghi: change, dni: change, dhi: change });

const zone = (hours: number) => (year: WeatherYear) =>
  atSite(year, ({ utcOffset }) => ({ utcOffset: utcOffset + hours > 14 ? utcOffset - hours : utcOffset + hours }));

/** The same hour of another day or hour of the ring. */
const other = (key: Key, hours: number) => (_: number, hour: number, columns: WeatherColumns) =>
  columns[key]![(hour + hours + 8760) % 8760]!;

/** A kind of damage: its name in the table, and what it does; `null` where a year has nothing of it. */
export type Damage = readonly [name: string, spoil: (year: WeatherYear) => WeatherYear | null];

/** All kinds, by what is damaged. */
export const DAMAGES: Readonly<Record<string, readonly Damage[]>> = {
  place: [
    ['longitude of the wrong sign', (year) => atSite(year, ({ longitude }) => ({ longitude: -longitude }))],
    ['latitude of the wrong sign', (year) => atSite(year, ({ latitude }) => ({ latitude: -latitude }))],
    ['latitude 10° too low', (year) => atSite(year, ({ latitude }) => ({ latitude: latitude - 10 }))],
    ['longitude 10° off', (year) => atSite(year, ({ longitude }) => ({ longitude: longitude + 10 }))],
    [
      'latitude and longitude changed about',
      (year) => atSite(year, ({ latitude, longitude }) => ({ latitude: longitude / 2.1, longitude: latitude })),
    ],
    ['zone 1 h off', zone(1)],
    ['zone 3 h off', zone(3)],
    ['zone 7 h off', zone(7)],
    ['elevation 5000 m too high', (year) => atSite(year, ({ elevation }) => ({ elevation: elevation + 5000 }))],
    ['elevation in feet', (year) => atSite(year, ({ elevation }) => ({ elevation: elevation / 0.3048 }))],
  ],
  light: [
    [
      'kW/m² for W/m²',
      (year) =>
        altered(
          year,
          light((value) => value / 1000),
        ),
    ],
    [
      'kJ/(m² h) for W/m²',
      (year) =>
        altered(
          year,
          light((value) => value * 3.6),
        ),
    ],
    [
      'halved',
      (year) =>
        altered(
          year,
          light((value) => value / 2),
        ),
    ],
    [
      'a fifth less',
      (year) =>
        altered(
          year,
          light((value) => value * 0.8),
        ),
    ],
    [
      'a fifth more',
      (year) =>
        altered(
          year,
          light((value) => value * 1.2),
        ),
    ],
    [
      '20 W/m² more at all hours',
      (year) =>
        altered(
          year,
          light((value) => value + 20),
        ),
    ],
    [
      '20 W/m² more in GHI while there is light',
      (year) => altered(year, { ghi: (value) => (value > 0 ? value + 20 : 0) }),
    ],
    ['DNI and DHI changed about', (year) => altered(year, { dni: other('dhi', 0), dhi: other('dni', 0) })],
    ['GHI and DNI changed about', (year) => altered(year, { ghi: other('dni', 0), dni: other('ghi', 0) })],
    ['GHI and DHI changed about', (year) => altered(year, { ghi: other('dhi', 0), dhi: other('ghi', 0) })],
    ['GHI 0', (year) => altered(year, { ghi: () => 0 })],
    ['DNI 0', (year) => altered(year, { dni: () => 0 })],
    ['DHI 0', (year) => altered(year, { dhi: () => 0 })],
    ['DNI halved', (year) => altered(year, { dni: (value) => value / 2 })],
    ['an hour late', (year) => altered(year, { ghi: other('ghi', -1), dni: other('dni', -1), dhi: other('dhi', -1) })],
    [
      'half an hour late',
      (year) => ({
        ...year,
        irradianceMidpoint:
          year.irradianceMidpoint - 0.5 < 0 ? year.irradianceMidpoint + 0.5 : year.irradianceMidpoint - 0.5,
      }),
    ],
    [
      'none before 9:00',
      (year) =>
        altered(
          year,
          light((value, hour) => (hour % 24 < 9 ? 0 : value)),
        ),
    ],
    [
      'none for two weeks',
      (year) =>
        altered(
          year,
          light((value, hour) => (hour >= 4000 && hour < 4336 ? 0 : value)),
        ),
    ],
    [
      'a month copied into the next',
      (year) =>
        altered(year, {
          ghi: (v, h, c) => (h >= 2160 && h < 2880 ? c.ghi[h - 744]! : v),
          dni: (v, h, c) => (h >= 2160 && h < 2880 ? c.dni[h - 744]! : v),
          dhi: (v, h, c) => (h >= 2160 && h < 2880 ? c.dhi[h - 744]! : v),
          dryBulb: (v, h, c) => (h >= 2160 && h < 2880 ? c.dryBulb[h - 744]! : v),
        }),
    ],
  ],
  air: [
    [
      'dew point for dry bulb',
      (year) => (year.columns.dewPoint === null ? null : altered(year, { dryBulb: other('dewPoint', 0) })),
    ],
    ['dry bulb with the wrong sign', (year) => altered(year, { dryBulb: (value) => -value })],
    ['°F for °C', (year) => altered(year, { dryBulb: (value) => value * 1.8 + 32 })],
    ['K for °C', (year) => altered(year, { dryBulb: (value) => value + 273.15 })],
    ['5 K too warm', (year) => altered(year, { dryBulb: (value) => value + 5 })],
    ['half a year off', (year) => altered(year, { dryBulb: other('dryBulb', 4368) })],
    ['half a day off', (year) => altered(year, { dryBulb: other('dryBulb', 12) })],
    ['0 °C all year', (year) => altered(year, { dryBulb: () => 0 })],
    [
      'relative humidity as a fraction',
      (year) =>
        year.columns.relativeHumidity === null ? null : altered(year, { relativeHumidity: (value) => value / 100 }),
    ],
    [
      'wind in km/h',
      (year) => (year.columns.windSpeed === null ? null : altered(year, { windSpeed: (value) => value * 3.6 })),
    ],
    [
      'wind in miles an hour',
      (year) => (year.columns.windSpeed === null ? null : altered(year, { windSpeed: (value) => value / 0.44704 })),
    ],
  ],
};

/** A sound year of some climate; air in the mean and by how much January is colder. [°], [°C], [K], [-], [-] */
export function climateYear(
  latitude: number,
  mean: number,
  swing: number,
  clearness: number,
  humidity: number,
): WeatherYear {
  const twelve = (value: number) => new Array<number>(12).fill(value);
  return synthesizeYear({
    site: { latitude, longitude: 10, utcOffset: 1 },
    monthly: {
      clearness: twelve(clearness),
      dryBulb: twelve(mean).map((value, month) => value - swing * Math.cos((2 * Math.PI * month) / 12)),
      relativeHumidity: twelve(humidity),
      windSpeed: twelve(7),
    },
    seed: 3,
  });
}

/** What becomes of a damaged file. */
export type Outcome = 'refused' | 'fault' | 'doubt' | 'nothing';

/** Reads a year from its text and looks it over. */
export function outcomeOf(damaged: WeatherYear): Outcome {
  try {
    const { findings } = checkWeather(parseWeather(writeWeather(damaged)));
    if (findings.some(({ weight }) => weight === 'fault')) return 'fault';
    return findings.some(({ weight }) => weight === 'doubt') ? 'doubt' : 'nothing';
  } catch (error) {
    if (error instanceof WeatherError) return 'refused';
    throw error;
  }
}

/** Rows of the table, and its sum. */
export function damageTable(years: readonly WeatherYear[]): string {
  const total = { refused: 0, fault: 0, doubt: 0, nothing: 0 };
  const row = (cells: readonly (string | number)[]) => `| ${cells.join(' | ')} |`;
  const lines = [
    row(['what is damaged', 'damage', 'refused when read', 'fault: no run', 'doubt: in the report', 'nothing said']),
    '|---|---|---|---|---|---|',
  ];
  for (const [kind, damages] of Object.entries(DAMAGES)) {
    for (const [name, spoil] of damages) {
      const counts = { refused: 0, fault: 0, doubt: 0, nothing: 0 };
      for (const year of years) {
        const damaged = spoil(year);
        if (damaged !== null) counts[outcomeOf(damaged)]++;
      }
      for (const [outcome, count] of Object.entries(counts)) total[outcome as Outcome] += count;
      lines.push(row([kind, name, ...Object.values(counts)]));
    }
  }
  lines.push(row(['all', '', ...Object.values(total)]));
  return lines.join('\n');
}
