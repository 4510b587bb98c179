/** What a day of each month gives a panel at a working temperature: the numbers behind the count of panels. */
import type { WeatherYear } from '@noonloop/weather-io';
import type { SystemDesign } from '../../design/design.ts';
import { biaxialEffectiveIrradiance } from '../../physics/collector/biaxial.ts';
import { diffuseModifiers } from '../../physics/collector/diffuse.ts';
import { effectiveIrradiance } from '../../physics/collector/effective-irradiance.ts';
import { DAYS_OF_MONTH, MONTH_STARTS } from '../../physics/draw/calendar.ts';
import { planeOfArray } from '../../physics/sun/plane-of-array.ts';
import { sunTrack } from '../../physics/sun/track.ts';

/** Steps of an hour. */
const STEPS = 2;

/** A month's light that is worth having: the hours in which a panel at the working temperature gains. */
export interface UsefulLight {
  /** Light on the plane, all hours, a mean day. [J/m²] */
  readonly daily: number;
  /** H_u: light after the incidence modifiers in useful hours, a mean day. [J/m²] */
  readonly usefulDaily: number;
  /** N_u: useful time, a mean day. [s] */
  readonly usefulTime: number;
  /** Air in useful hours; the mean of all hours where there are none. [°C] */
  readonly air: number;
  /** η0 H_u − (a1 d + a2 d²) N_u, with d of each hour: what a panel gains, a mean day. [J/m²] */
  readonly gain: number;
}

/** Months of a design's plane and collector. Horizon and obstacles are left out. Shape [12]. */
export function usefulLight(design: SystemDesign, weather: WeatherYear, fluidTemperature: number): UsefulLight[] {
  const { array } = design;
  const { collector } = array;
  const plane = planeOfArray(
    weather,
    { tilt: array.tilt, azimuth: array.azimuth, albedo: array.groundAlbedo, model: array.skyModel },
    { stepsPerHour: STEPS },
  );
  const modifier = collector.incidenceModifier;
  const diffuse = diffuseModifiers(modifier, array.tilt);
  const light =
    'tubes' in modifier
      ? biaxialEffectiveIrradiance(plane, modifier, diffuse, sunTrack(weather, STEPS), array)
      : effectiveIrradiance(plane, modifier, diffuse);
  const seconds = 3600 / STEPS;
  return DAYS_OF_MONTH.map((days, month) => {
    let daily = 0;
    let useful = 0;
    let time = 0;
    let airTime = 0;
    let gain = 0;
    let airSum = 0;
    for (let hour = MONTH_STARTS[month]!; hour < MONTH_STARTS[month + 1]!; hour++) {
      const air = weather.columns.dryBulb[hour]!;
      airSum += air;
      const d = fluidTemperature - air;
      const loss = (collector.a1 + collector.a2 * Math.abs(d)) * d;
      for (let step = hour * STEPS; step < (hour + 1) * STEPS; step++) {
        daily += plane.total[step]! * seconds;
        const flux = collector.eta0 * light[step]! - loss;
        if (light[step]! <= 0 || flux <= 0) continue;
        useful += light[step]! * seconds;
        time += seconds;
        airTime += air * seconds;
        gain += flux * seconds;
      }
    }
    return {
      daily: daily / days,
      usefulDaily: useful / days,
      usefulTime: time / days,
      air: time > 0 ? airTime / time : airSum / (24 * days),
      gain: gain / days,
    };
  });
}
