// Sunlight at the top of the air: Spencer's series for the distance to the sun.

/** Normal irradiance at the mean distance from the sun, the value that the Perez 1990 tables go with. [W/m²] */
export const SOLAR_CONSTANT = 1366.1;

const DAY_MS = 86_400_000;

/**
 * Irradiance on a plane that faces the sun above the atmosphere.
 *
 * @param time - Milliseconds since 1970-01-01 00:00 UTC. [ms]
 * @returns Extraterrestrial normal irradiance on the UTC date of `time`. [W/m²]
 * @throws RangeError if `time` is not an instant that `Date` can hold.
 * @see Spencer (1971), Fourier series representation of the position of the sun, Search 2 (5).
 * @example
 * extraterrestrialNormal(Date.UTC(2006, 7, 9)); // 1328.23
 */
export function extraterrestrialNormal(time: number): number {
  const year = new Date(time).getUTCFullYear();
  if (Number.isNaN(year))
    throw new RangeError(`extraterrestrialNormal: time is ${String(time)}, expected milliseconds.`);
  return extraterrestrialNormalOnDay(Math.floor((time - Date.UTC(year, 0, 1)) / DAY_MS) + 1);
}

/**
 * Kernel of {@link extraterrestrialNormal}, by the day of the year. Unchecked.
 *
 *     E = E0 (1.00011 + 0.034221 cos b + 0.00128 sin b + 0.000719 cos 2b + 0.000077 sin 2b),   b = 2π (day − 1) / 365
 *
 * @param day - Day of the year, 1 on 1 January. [d]
 * @returns Extraterrestrial normal irradiance. [W/m²]
 */
export function extraterrestrialNormalOnDay(day: number): number {
  const b = (2 * Math.PI * (day - 1)) / 365;
  const squaredRatio =
    1.00011 + 0.034221 * Math.cos(b) + 0.00128 * Math.sin(b) + 0.000719 * Math.cos(2 * b) + 0.000077 * Math.sin(2 * b);
  return SOLAR_CONSTANT * squaredRatio;
}
