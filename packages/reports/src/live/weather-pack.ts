/** A year of weather as text for a page: smaller than its file, and the same bits when it is unpacked. */
import type { WeatherColumns, WeatherYear } from '@noonloop/weather-io';
import { packBytes, unpackBytes } from './pack.ts';

/** Most decimals that are tried before a column is kept as it is. */
const MOST_DECIMALS = 4;
const HOURS = 8760;
/** Differences of whole numbers that three bytes hold, zigzag. */
const LARGEST = 2 ** 24;

/** What stands before the bytes: everything but the columns, how each column is kept, and which the file does not have. */
interface Head extends Omit<WeatherYear, 'columns' | 'calendarYears'> {
  readonly columns: readonly { readonly name: keyof WeatherColumns; readonly decimals: number | null }[];
  readonly absent: readonly (keyof WeatherColumns)[];
}

/** Column as whole numbers of its last decimal; `null` where it has more than those tried. */
function asWhole(column: Float64Array): { readonly decimals: number; readonly whole: Float64Array } | null {
  for (let decimals = 0; decimals <= MOST_DECIMALS; decimals++) {
    const factor = 10 ** decimals;
    const whole = column.map((value) => Math.round(value * factor));
    // By division, as reading a decimal rounds; −0 has no whole number of its own.
    if (column.every((value, hour) => Object.is(whole[hour]! / factor, value) && fits(whole, hour)))
      return { decimals, whole };
  }
  return null;
}

const differenceAt = (whole: ArrayLike<number>, hour: number): number =>
  whole[hour]! - (hour === 0 ? 0 : whole[hour - 1]!);

const fits = (whole: ArrayLike<number>, hour: number): boolean => Math.abs(differenceAt(whole, hour)) < LARGEST / 2 - 1;

/** Differences from hour to hour, positive and negative in turn, three bytes each, alike bytes together. */
function planes(whole: ArrayLike<number>): Uint8Array {
  const bytes = new Uint8Array(3 * HOURS);
  for (let hour = 0; hour < HOURS; hour++) {
    const difference = differenceAt(whole, hour);
    const turned = difference >= 0 ? 2 * difference : -2 * difference - 1;
    for (let plane = 0; plane < 3; plane++) bytes[plane * HOURS + hour] = Math.floor(turned / 256 ** plane) % 256;
  }
  return bytes;
}

function unplanes(bytes: Uint8Array): Float64Array {
  const whole = new Float64Array(HOURS);
  let sum = 0;
  for (let hour = 0; hour < HOURS; hour++) {
    const turned = bytes[hour]! + 256 * bytes[HOURS + hour]! + 65536 * bytes[2 * HOURS + hour]!;
    sum += turned % 2 === 0 ? turned / 2 : -(turned + 1) / 2;
    whole[hour] = sum;
  }
  return whole;
}

/** Bytes of doubles, the lowest first whatever the machine. */
function doubles(column: Float64Array): Uint8Array {
  const view = new DataView(new ArrayBuffer(8 * HOURS));
  column.forEach((value, hour) => {
    view.setFloat64(8 * hour, value, true);
  });
  return new Uint8Array(view.buffer);
}

const undoubles = (bytes: Uint8Array): Float64Array => {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  return Float64Array.from({ length: HOURS }, (_, hour) => view.getFloat64(8 * hour, true));
};

/** Weather as base64. */
export async function packWeather(weather: WeatherYear): Promise<string> {
  const { columns, calendarYears, ...rest } = weather;
  const names = Object.keys(columns) as (keyof WeatherColumns)[];
  const kept = names.flatMap((name) => {
    const column = columns[name];
    if (column === null) return [];
    const whole = asWhole(column);
    return [{ name, decimals: whole?.decimals ?? null, bytes: whole === null ? doubles(column) : planes(whole.whole) }];
  });
  const head: Head = {
    ...rest,
    columns: kept.map(({ name, decimals }) => ({ name, decimals })),
    absent: names.filter((name) => columns[name] === null),
  };
  const words = new TextEncoder().encode(JSON.stringify(head));
  const parts = [planes(calendarYears), ...kept.map(({ bytes }) => bytes)];
  const packed = new Uint8Array(4 + words.length + parts.reduce((sum, { length }) => sum + length, 0));
  new DataView(packed.buffer).setUint32(0, words.length, true);
  packed.set(words, 4);
  let at = 4 + words.length;
  for (const part of parts) {
    packed.set(part, at);
    at += part.length;
  }
  return packBytes(packed);
}

/** The year that {@link packWeather} was given, with the same bits. */
export async function unpackWeather(text: string): Promise<WeatherYear> {
  const bytes = await unpackBytes(text);
  const size = new DataView(bytes.buffer).getUint32(0, true);
  const { columns: kept, absent, ...rest } = JSON.parse(new TextDecoder().decode(bytes.subarray(4, 4 + size))) as Head;
  let at = 4 + size;
  const take = (count: number): Uint8Array => {
    at += count;
    return bytes.subarray(at - count, at);
  };
  const calendarYears = Int16Array.from(unplanes(take(3 * HOURS)));
  const columns: Partial<Record<keyof WeatherColumns, Float64Array | null>> = {};
  for (const name of absent) columns[name] = null;
  for (const { name, decimals } of kept)
    columns[name] =
      decimals === null ? undoubles(take(8 * HOURS)) : unplanes(take(3 * HOURS)).map((value) => value / 10 ** decimals);
  return { ...rest, columns: columns as WeatherColumns, calendarYears };
}
