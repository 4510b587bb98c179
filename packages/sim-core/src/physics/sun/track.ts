/** The sun of a weather year, step by step, computed once and shared by all planes. */
import type { WeatherYear } from '@noonloop/weather-io';
import { extraterrestrialNormal, hourStarts, INSTANTS, keptInstants, sunPositionInto } from '@noonloop/weather-io/sun';
import { DesignError, requireNumber } from '../../input/errors.ts';
import { SKY_KERNELS, type SkyModel } from './transposition/models.ts';

const RADIANS = Math.PI / 180;
const HOUR_MS = 3_600_000;

/** Sun and horizontal irradiance in every step of a year; step `s` of hour `h` has index `h × stepsPerHour + s`. */
export interface SunTrack {
  /** Steps in an hour. */
  readonly stepsPerHour: number;
  /** Rows of the weather's light in an hour: 1, or those of its own step. */
  readonly rowsPerHour: number;
  /** Steps by which a row's light stands after the row's own hour, so that it stands in the hours of the clock; often 0 or negative. */
  readonly shift: number;
  /** East component of the unit vector to the sun; 0 in steps without sun. Shape [steps]. [-] */
  readonly east: Float64Array;
  /** North component. Shape [steps]. [-] */
  readonly north: Float64Array;
  /** Upward component, cos Z; 0 in steps without sun. Shape [steps]. [-] */
  readonly up: Float64Array;
  /** Direct normal irradiance. Shape [steps]. [W/m²] */
  readonly dni: Float64Array;
  /** Diffuse horizontal irradiance. Shape [steps]. [W/m²] */
  readonly dhi: Float64Array;
  /** Global horizontal irradiance as the file has it; light for the ground. Shape [steps]. [W/m²] */
  readonly ghi: Float64Array;
  /** Beam that the file has in hours in which the sun is down at every step; left out. Sum of the year. [J/m²] */
  readonly lostBeam: number;
  /** Hours in which beam was left out. */
  readonly lostBeamHours: number;
  /** Ring and horizon of the sky by row of light, for each model when first asked for. @internal */
  readonly brightness: (model: SkyModel) => Float64Array;
}

const tracks = new WeakMap<WeatherYear, Map<number, SunTrack>>();
const sameSun = new WeakMap<WeatherYear, WeatherYear>();

/** Tells that two years have light in the same rows of the same place, so that the sun need not be computed twice. @internal */
export const shareSun = (year: WeatherYear, from: WeatherYear): void => {
  sameSun.set(year, sameSun.get(from) ?? from);
};

/**
 * Sun and horizontal irradiance of a weather year in equal steps. Kept for as long as the weather object lives, so that
 * several planes and runs share it; the weather must not be changed after the first call.
 *
 * The sun is taken at the middle of each step of the hour that is centred at row start + `irradianceMidpoint`, and the light is laid
 * into the steps of the clock: later than its row by `irradianceMidpoint` − 0.5 h, to the nearest step. The hour's
 * energy is kept: DNI is spread evenly over the steps with the sun up, DHI and GHI over them in proportion to cos Z (in a
 * half-hourly file this is half as far off as an even spread where the sun is low, 6.7 against 13.9 W/m² rms below 15°).
 * Diffuse light in hours without sun is spread evenly; beam in them is left out and counted. With light at the weather's own step
 * (`fineLight`) all this holds for its rows in place of hours.
 *
 * @param weather - One year.
 * @param stepsPerHour - 1 to 240.
 * @returns The track; treat it as read-only.
 * @throws {@link DesignError} when the number of steps is not whole or not 1 to 60.
 */
export function sunTrack(weather: WeatherYear, stepsPerHour: number): SunTrack {
  requireNumber('stepsPerHour', Number.isInteger(stepsPerHour) ? stepsPerHour : Number.NaN, 1, 240, '(whole)');
  let known = tracks.get(weather);
  if (known === undefined) {
    known = new Map();
    tracks.set(weather, known);
  }
  let track = known.get(stepsPerHour);
  if (track === undefined) {
    track = computeTrack(weather, stepsPerHour);
    known.set(stepsPerHour, track);
  }
  return track;
}

/** Light in rows of an hour, or of the weather's own step. */
interface LightRows {
  readonly rowsPerHour: number;
  /** From the start of a row to the middle of its light. [rows] */
  readonly midpoint: number;
  readonly ghi: Float64Array;
  readonly dni: Float64Array;
  readonly dhi: Float64Array;
}

function lightRows({ columns, fineLight, irradianceMidpoint }: WeatherYear): LightRows {
  if (fineLight === undefined) return { rowsPerHour: 1, midpoint: irradianceMidpoint, ...columns };
  return { ...fineLight, rowsPerHour: fineLight.stepsPerHour };
}

/** At least so many steps in an hour, as a multiple of the rows of the weather's light. @internal */
export const stepsFor = ({ fineLight }: Pick<WeatherYear, 'fineLight'>, least: number): number =>
  fineLight === undefined ? least : Math.ceil(least / fineLight.stepsPerHour) * fineLight.stepsPerHour;

function computeTrack(weather: WeatherYear, stepsPerHour: number): SunTrack {
  const { dhi, dni, ghi, midpoint, rowsPerHour } = lightRows(weather);
  requireMultiple(stepsPerHour, rowsPerHour);
  const rows = dni.length;
  const steps = stepsPerHour / rowsPerHour;
  const rowMs = HOUR_MS / rowsPerHour;
  const column = () => new Float64Array(rows * steps);
  const original = sameSun.get(weather);
  const shared = original === undefined ? null : sunTrack(original, stepsPerHour);
  const sun = shared ?? { east: column(), north: column(), up: column() };
  const sky = { east: sun.east, north: sun.north, up: sun.up, dni: column(), dhi: column(), ghi: column() };
  // What the sky models need once a row: irradiance and zenith over the sunlit part, and the sun at the top of the air.
  const sunlit = new Float64Array(4 * rows);
  const { latitude, longitude } = weather.site;
  const starts = hourStarts(weather);
  // A year that was looked over has the sun of the default steps.
  const known = steps === INSTANTS && rowsPerHour === 1 ? keptInstants(weather) : undefined;
  const position = known ?? new Float64Array(2);
  const shift = Math.round((midpoint - 0.5) * steps) + 0; // −0 + 0 is 0
  const place = new Int32Array(steps);
  const lostRows = new Uint8Array(rows / rowsPerHour);
  let lostBeam = 0;
  for (let row = 0; row < rows; row++) {
    if (!(ghi[row]! > 0 || dni[row]! > 0 || dhi[row]! > 0)) continue;
    const hour = Math.trunc(row / rowsPerHour);
    const middle = starts[hour]! + (row - hour * rowsPerHour + midpoint) * rowMs;
    for (let step = 0; step < steps; step++) place[step] = stepOfClock(row, step, shift, steps, rows);
    let sunlitSteps = 0;
    let cosSum = 0;
    for (let step = 0; step < steps; step++) {
      if (shared !== null) {
        const cosZenith = sky.up[place[step]!]!;
        cosSum += cosZenith;
        if (cosZenith > 0) sunlitSteps++;
        continue;
      }
      const at = known === undefined ? 0 : 2 * (row * steps + step);
      if (known === undefined) {
        const time = middle + ((step + 0.5) / steps - 0.5) * rowMs;
        sunPositionInto(position, 0, time, latitude, longitude);
      }
      if (!(position[at]! < 90)) continue;
      const sinZenith = Math.sin(position[at]! * RADIANS);
      const cosZenith = Math.cos(position[at]! * RADIANS);
      sky.east[place[step]!] = sinZenith * Math.sin(position[at + 1]! * RADIANS);
      sky.north[place[step]!] = sinZenith * Math.cos(position[at + 1]! * RADIANS);
      sky.up[place[step]!] = cosZenith;
      cosSum += cosZenith;
      sunlitSteps++;
    }
    if (sunlitSteps === 0) {
      for (const at of place) {
        sky.dhi[at] = dhi[row]!;
        sky.ghi[at] = ghi[row]!;
      }
      if (dni[row]! > 0) {
        lostBeam += dni[row]! * (3600 / rowsPerHour);
        lostRows[hour] = 1;
      }
      continue;
    }
    for (const at of place) {
      const share = (sky.up[at]! * steps) / cosSum;
      sky.dni[at] = sky.up[at]! > 0 ? (dni[row]! * steps) / sunlitSteps : 0;
      sky.dhi[at] = dhi[row]! * share;
      sky.ghi[at] = ghi[row]! * share;
    }
    const scale = steps / sunlitSteps;
    sunlit[4 * row] = dhi[row]! * scale;
    sunlit[4 * row + 1] = dni[row]! * scale;
    sunlit[4 * row + 2] = Math.acos(cosSum / sunlitSteps) / RADIANS;
    sunlit[4 * row + 3] = extraterrestrialNormal(middle);
  }
  const lostBeamHours = lostRows.reduce((sum, lost) => sum + lost, 0);
  return { stepsPerHour, rowsPerHour, shift, ...sky, lostBeam, lostBeamHours, brightness: brightnessOf(sunlit) };
}

/** Light at its own step is cut into steps of the same length, and no row is taken twice. */
function requireMultiple(stepsPerHour: number, rowsPerHour: number): void {
  if (stepsPerHour % rowsPerHour === 0) return;
  const expected = `a multiple of ${rowsPerHour}, the rows that the weather’s light has in an hour`;
  const remedy = 'Leave it out, or read the weather without ownStep.';
  throw new DesignError([{ path: 'stepsPerHour', found: String(stepsPerHour), expected, remedy }]);
}

/** Index of the step of the clock into which a step of a row's light falls; the year is a ring. @param steps - Of a row. @internal */
export function stepOfClock(row: number, step: number, shift: number, steps: number, rows: number): number {
  const length = rows * steps;
  return (row * steps + step + shift + length) % length;
}

/** Computes a model's ring and horizon by row of light when first asked, then hands out the same column. Shape [rows × 2]. */
function brightnessOf(sunlit: Float64Array): (model: SkyModel) => Float64Array {
  const known = new Map<SkyModel, Float64Array>();
  return (model) => {
    let bright = known.get(model);
    if (bright === undefined) {
      bright = new Float64Array(sunlit.length / 2);
      const sky = { dhi: 0, dni: 0, zenith: 0, extraterrestrialNormal: 0 };
      for (let hour = 0; hour < sunlit.length / 4; hour++) {
        const at = 4 * hour;
        if (sunlit[at + 3] === 0) continue; // no sun: a uniform sky
        sky.dhi = sunlit[at]!;
        sky.dni = sunlit[at + 1]!;
        sky.zenith = sunlit[at + 2]!;
        sky.extraterrestrialNormal = sunlit[at + 3]!;
        SKY_KERNELS[model].brightness(sky, bright, 2 * hour);
      }
      known.set(model, bright);
    }
    return bright;
  };
}
