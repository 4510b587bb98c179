import type { WeatherYear } from '@noonloop/weather-io';
import type { SystemDesign } from '../../design/design.ts';
import { requireNumber } from '../../input/errors.ts';
import { nightSky } from '../../physics/collector/night-sky.ts';
import { burstProtection } from '../../physics/fluid/burst.ts';
import { compileFluid } from '../../physics/fluid/compile.ts';
import { MAXIMUM_MASS_FRACTION } from '../../physics/fluid/melinder.ts';
import type { RunResult } from '../../year/result.ts';
import { type FreezeReport, freezeReport } from './ice.ts';

/**
 * How cold a design's collectors get at a site with the loop at rest, hour by hour: the air, less what the night sky takes.
 *
 *     T = T_air − s D/a1 in hours without light,   T = T_air with it
 *
 * s is the collector's `skyCoefficient`, D the long-wave deficit of its plane. Steady: what the panel still holds from the hours
 * before is left out, so that the coldest hour comes out a little colder than in a run. Snow and frost are left out.
 *
 * @internal
 */
export function coldAbsorber(design: SystemDesign, weather: WeatherYear): Float64Array {
  const { collector, tilt } = design.array;
  const { deficit } = nightSky(weather, tilt);
  const { dryBulb, ghi } = weather.columns;
  return dryBulb.map((air, hour) =>
    ghi[hour]! > 0 ? air : air - Math.max((collector.skyCoefficient * deficit[hour]!) / collector.a1, 0),
  );
}

/**
 * Freezing and bursting at a site with a share of glycol, night sky included, without a simulation.
 *
 * Absorber at rest and steady: air less s D/a1 by night; outdoor pipes at the air. A run ({@link freezeOfRun}) adds what panels
 * and pipes hold from the hours before, leak and thinning.
 *
 * @param design - Collector, plane and fluid, from `defineSystem`.
 * @param weather - One year.
 * @param glycolMassFraction - By default the design's. [-]
 * @throws {@link DesignError} for a share outside 0 to 0.6, or above 0 with water.
 * @see Berdahl & Martin (1984) where the weather has no long-wave column; Melinder (2010); burst rows from memory, see
 *   `burstProtection`.
 */
export function freezeAtSite(
  design: SystemDesign,
  weather: WeatherYear,
  glycolMassFraction: number = design.loop.glycolMassFraction,
): FreezeReport {
  const { fluid } = design.loop;
  requireNumber('glycolMassFraction', glycolMassFraction, 0, fluid === 'water' ? 0 : MAXIMUM_MASS_FRACTION, '');
  const air = weather.columns.dryBulb;
  const level = (value: number) => new Float64Array(air.length).fill(value);
  return freezeReport(
    {
      air,
      absorber: coldAbsorber(design, weather),
      pipe: air,
      freezing: level(compileFluid(fluid, glycolMassFraction).freezingPoint),
      burst: level(burstProtection(fluid, glycolMassFraction)),
    },
    weather.site.latitude < 0,
  );
}

/**
 * Freezing and bursting in a simulated year: absorber and outdoor pipes as they were, and the fluid as leak and make-up left
 * it.
 *
 * @param run - From `simulate`.
 */
export function freezeOfRun(run: RunResult): FreezeReport {
  const { columns, design, site } = run;
  const { fluid } = design.loop;
  let share = Number.NaN;
  let point = 0;
  // The share changes once a month at most: its burst point is not looked up anew each hour.
  const burst = columns.glycolMassFraction.map((now) => {
    if (Math.abs(now - share) > 1e-6 || Number.isNaN(share)) {
      share = now;
      point = burstProtection(fluid, fluid === 'water' ? 0 : Math.min(Math.max(now, 0), MAXIMUM_MASS_FRACTION));
    }
    return point;
  });
  return freezeReport(
    {
      air: columns.ambientTemperature,
      absorber: columns.absorberMinimumTemperature,
      pipe: columns.pipeMinimumTemperature,
      freezing: columns.freezingPoint,
      burst,
    },
    site.latitude < 0,
  );
}
