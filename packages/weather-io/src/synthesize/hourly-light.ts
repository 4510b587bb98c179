// From the clearness of days to the light of hours.
import { rise } from './months.ts';
import type { Gauss } from './random.ts';

const SIXTY = Math.PI / 3;

/**
 * Kernel: how much clearer an instant is than its day, up to a factor that is the same through the day:
 *
 *     a + b cos ω,   a = 0.409 + 0.5016 sin(ωs − 60°),   b = 0.6609 − 0.4767 sin(ωs − 60°)
 *
 * @param cosHourAngle - cos ω. [-]
 * @param sunset - ωs, hour angle of the sunset, 0 to π. [rad]
 * @see Collares-Pereira & Rabl (1979), The average distribution of solar radiation, Solar Energy 22(2) 155.
 */
export function hourOverDay(cosHourAngle: number, sunset: number): number {
  const s = Math.sin(sunset - SIXTY);
  return 0.409 + 0.5016 * s + (0.6609 - 0.4767 * s) * cosHourAngle;
}

/**
 * Kernel: spread and memory of hourly clearness about its course in a day of clearness K, the sun's height being h:
 *
 *     σ = A e^(B (1 − sin h)),   A = 0.14 e^(−20 (K − 0.35)²),   B = 3 (K − 0.45)² + 16 K⁵
 *     φ = 0.38 + 0.06 cos(7.4 K − 2.5)
 *
 * @see Aguiar & Collares-Pereira (1992), TAG: a time-dependent, autoregressive, Gaussian model for generating synthetic
 * hourly radiation, Solar Energy 49(3) 167 (coefficients from memory, compared with a public implementation).
 */
const hourlySpread = (day: number, sinHeight: number): number =>
  0.14 * Math.exp(-20 * (day - 0.35) ** 2) * Math.exp((3 * (day - 0.45) ** 2 + 16 * day ** 5) * (1 - sinHeight));

/** Memory φ of {@link hourlySpread}. [-] */
const hourlyMemory = (day: number): number => 0.38 + 0.06 * Math.cos(7.4 * day - 2.5);

/** Clearness of a cloudless hour by its distance from solar noon, as in TAG: 0.88 cos(π t / 30). [-] */
const cloudless = (hoursFromNoon: number): number => 0.88 * Math.cos((Math.PI * hoursFromNoon) / 30);

/** What an hour is, for its light. Columns of [8760]. */
export interface HourlyCourse {
  /** Irradiance at the top of the air on the horizontal, mean. [W/m²] */
  readonly top: Float64Array;
  /** Mean of {@link hourOverDay} over the sunlit part, weighted with cos Z. [-] */
  readonly shape: Float64Array;
  /** Mean of cos Z over the sunlit part. [-] */
  readonly sinHeight: Float64Array;
  /** Mean of the distance from solar noon over the sunlit part. [h] */
  readonly fromNoon: Float64Array;
}

/**
 * Global irradiance of each hour: the mean course of the day after Collares-Pereira & Rabl, noise with persistence about it,
 * no hour clearer than a cloudless one, and the light of the day kept.
 *
 * @param daily - Clearness of each day. Shape [365]. [-]
 * @returns GHI. Shape [8760]. [W/m²]
 */
export function hourlyLight(daily: Float64Array, course: HourlyCourse, gauss: Gauss): Float64Array {
  const { top, shape, sinHeight, fromNoon } = course;
  const ghi = new Float64Array(top.length);
  const clear = new Float64Array(24);
  const most = new Float64Array(24);
  let noise = gauss();
  for (let day = 0; day < daily.length; day++) {
    const mean = daily[day]!;
    const first = day * 24;
    let light = 0;
    let shaped = 0;
    for (let hour = first; hour < first + 24; hour++) {
      light += top[hour]!;
      shaped += top[hour]! * shape[hour]!;
    }
    if (!(shaped > 0)) continue;
    const memory = hourlyMemory(mean);
    for (let at = 0; at < 24; at++) {
      const hour = first + at;
      const course = (mean * light * shape[hour]!) / shaped;
      noise = memory * noise + Math.sqrt(1 - memory * memory) * gauss();
      most[at] = Math.max(cloudless(fromNoon[hour]!), 1.05 * course);
      const wanted = course + hourlySpread(mean, sinHeight[hour]!) * noise;
      clear[at] = Math.min(Math.max(wanted, 0.1 * course), most[at]!);
    }
    const lightOf = (factor: number): number => {
      let sum = 0;
      for (let at = 0; at < 24; at++) sum += Math.min(factor * clear[at]!, most[at]!) * top[first + at]!;
      return sum - mean * light;
    };
    const factor = rise(lightOf, 0, 20);
    for (let at = 0; at < 24; at++) ghi[first + at] = Math.min(factor * clear[at]!, most[at]!) * top[first + at]!;
  }
  return ghi;
}
