// Completes a year that lacks DNI or DHI altogether, and says how.
import { hourlySun } from '../sun/hourly.ts';
import type { WeatherAssumption, WeatherColumns, WeatherYear } from '../year.ts';
import { beamFromRest, splitHour } from './split.ts';

/** A year whose beam or diffuse irradiance may be missing as a whole. */
type Incomplete = Pick<WeatherYear, 'site' | 'calendarYears' | 'irradianceMidpoint'> & {
  readonly columns: Pick<WeatherColumns, 'ghi'> & {
    readonly dni: Float64Array | null;
    readonly dhi: Float64Array | null;
  };
};

const TEXTS = {
  both: 'beam and diffuse were split from global irradiance hour by hour by the correlation of Erbs et al. (1982): single hours may be far off',
  dni: 'beam is what diffuse leaves of global irradiance, hour by hour; with the sun below 4° there is none',
  dhi: 'diffuse is what beam leaves of global irradiance, hour by hour',
} as const;

/**
 * Beam and diffuse of a year in which one or both are missing as a whole: one from the closure with the other two, which stays
 * as measured, both by Erbs et al. (1982). `NaN` in GHI stays `NaN`.
 *
 * @param notes - Receives what was done.
 * @returns DNI and DHI. Shape [8760]. [W/m²]
 */
export function completeLight(year: Incomplete, notes: WeatherAssumption[]): { dni: Float64Array; dhi: Float64Array } {
  const { ghi, dni: beam, dhi: diffuse } = year.columns;
  if (beam !== null && diffuse !== null) return { dni: beam, dhi: diffuse };
  const sun = hourlySun(year);
  const { light, lit } = sun;
  const dni = new Float64Array(ghi.length);
  const dhi = new Float64Array(ghi.length);
  const pair = new Float64Array(2);
  for (let hour = 0; hour < ghi.length; hour++) {
    if (diffuse !== null) beamFromRest(ghi[hour]!, diffuse[hour]!, sun, hour, pair);
    else if (beam !== null) {
      const up = lit[hour]! > 0 ? (beam[hour]! * light[hour]!) / lit[hour]! : 0;
      pair[0] = beam[hour]!;
      pair[1] = Math.max(ghi[hour]! - up, 0);
    } else splitHour(ghi[hour]!, sun, hour, pair);
    dni[hour] = pair[0]!;
    dhi[hour] = pair[1]!;
  }
  const missing = beam !== null ? 'dhi' : diffuse !== null ? 'dni' : 'both';
  notes.push({
    code: missing === 'both' ? 'split-by-erbs' : 'light-from-closure',
    text: `The source has no ${MISSING[missing]}: ${TEXTS[missing]}.`,
  });
  // What was measured stays as it was, though no beam is made of what it leaves at low sun.
  return { dni: beam ?? dni, dhi: diffuse ?? dhi };
}

const MISSING = { both: 'beam and diffuse irradiance', dni: 'beam irradiance', dhi: 'diffuse irradiance' } as const;
