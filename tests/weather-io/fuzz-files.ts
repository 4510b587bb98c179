// The real files as the fuzzer takes them: with the columns that are read, and some that are not, so that a copy is quick.
import type { FuzzFile, FuzzLayout } from './fuzz.ts';
import { type RealFile, realOptions, realText } from './real-files.ts';

type Cells = FuzzLayout['cells'];

/** Columns of a table that are kept, as headers, with the quantity that each is, and its unit in that of a weather year. */
type Kept = readonly (readonly [header: string, key: keyof Cells | null, scale: number])[];

const TMY3: Kept = [
  ['Date (MM/DD/YYYY)', null, 0],
  ['Time (HH:MM)', null, 0],
  ['ETR (W/m^2)', null, 0],
  ['GHI (W/m^2)', 'ghi', 1],
  ['DNI (W/m^2)', 'dni', 1],
  ['DHI (W/m^2)', 'dhi', 1],
  ['Dry-bulb (C)', 'dryBulb', 1],
  ['Dew-point (C)', 'dewPoint', 1],
  ['RHum (%)', 'relativeHumidity', 0.01],
  ['Pressure (mbar)', 'pressure', 100],
  ['Wspd (m/s)', 'windSpeed', 1],
  ['Alb (unitless)', null, 0],
];

const NSRDB: Kept = [
  ['Year', null, 0],
  ['Month', null, 0],
  ['Day', null, 0],
  ['Hour', null, 0],
  ['Minute', null, 0],
  ['GHI', 'ghi', 1],
  ['DNI', 'dni', 1],
  ['DHI', 'dhi', 1],
  ['Temperature', 'dryBulb', 1],
  ['Dew Point', 'dewPoint', 1],
  ['Relative Humidity', 'relativeHumidity', 0.01],
  ['Wind Speed', 'windSpeed', 1],
  ['Pressure', 'pressure', 100],
  ['Surface Albedo', null, 0],
];

/** EPW has no headers: cells by their place. */
const EPW: Cells = {
  dryBulb: [6, 1],
  dewPoint: [7, 1],
  relativeHumidity: [8, 0.01],
  pressure: [9, 1],
  ghi: [13, 1],
  dni: [14, 1],
  dhi: [15, 1],
  windSpeed: [21, 1],
};

const EPW_MARKS: NonNullable<FuzzLayout['marks']> = {
  dryBulb: 99.9,
  dewPoint: 99.9,
  relativeHumidity: 999,
  pressure: 999999,
  windSpeed: 999,
  ghi: 9999,
  dni: 9999,
  dhi: 9999,
};

const PVGIS: Kept = [
  ['time(UTC)', null, 0],
  ['T2m', 'dryBulb', 1],
  ['RH', 'relativeHumidity', 0.01],
  ['G(h)', 'ghi', 1],
  ['Gb(n)', 'dni', 1],
  ['Gd(h)', 'dhi', 1],
  ['IR(h)', null, 0],
  ['WS10m', 'windSpeed', 1],
  ['SP', 'pressure', 1],
];

const RULES: Readonly<
  Record<RealFile, { readonly header: number; readonly kept: Kept | null; readonly steps: number }>
> = {
  greensboro: { header: 2, kept: TMY3, steps: 1 },
  sandPoint: { header: 2, kept: TMY3, steps: 1 },
  pvgis: { header: 18, kept: PVGIS, steps: 1 },
  epw: { header: 8, kept: null, steps: 1 },
  nsrdb: { header: 3, kept: NSRDB, steps: 2 },
  nsrdbTypical: { header: 1, kept: NSRDB, steps: 1 },
};

/** A real file, cut down to the columns that are read; its footer is left out. */
export function fuzzFile(name: RealFile): FuzzFile {
  const { kept, steps } = RULES[name];
  const all = realText(name).trimEnd().split(/\r?\n/);
  const named =
    kept === null
      ? RULES[name].header - 1
      : all.findIndex((line) => line.split(',').some((cell) => cell.trim() === kept[1]![0]));
  const header = named + 1;
  const lines = all.slice(0, header + 8760 * steps);
  const options = realOptions(name);
  if (kept === null)
    return { name, lines, layout: { header, names: null, cells: EPW, marks: EPW_MARKS, steps, options } };
  const places = kept.map(([label]) => lines[named]!.split(',').findIndex((cell) => cell.trim() === label));
  const present = kept.flatMap((column, at) => (places[at]! < 0 ? [] : [{ column, place: places[at]! }]));
  const cut = lines.map((line, at) => {
    if (at < named) return line;
    const cells = line.split(',');
    return present.map(({ place }) => cells[place]).join(',');
  });
  const cells = Object.fromEntries(
    present.flatMap(({ column: [, key, scale] }, at) => (key === null ? [] : [[key, [at, scale]]])),
  ) as unknown as Cells;
  return { name, lines: cut, layout: { header, names: named, cells, steps, options } };
}
