/** Steady efficiency, useful power and stagnation temperature of a tested collector, by the coefficients of ISO 9806. */
import { DesignError, quote, requireNumber } from '../../input/errors.ts';

/** Coefficients of a test report, all on the same area. */
export interface CollectorRating {
  /** Area to which the coefficients refer: gross or aperture, as the report says. [m²] */
  readonly area: number;
  /** Zero-loss efficiency of the beam at normal incidence, η0,b; see {@link beamEfficiency} for a report that gives η0,hem. [-] */
  readonly eta0: number;
  /** Linear heat loss coefficient. [W/(m²·K)] */
  readonly a1: number;
  /** Quadratic heat loss coefficient. [W/(m²·K²)] */
  readonly a2: number;
  /** Growth of the loss with wind. Default 0. [J/(m³·K)] */
  readonly a3?: number;
  /** Share of the sky's long-wave deficit that the absorber takes. Default 0. [-] */
  readonly a4?: number;
  /** Effective heat capacity. Default 0. [J/(m²·K)] */
  readonly a5?: number;
  /** Fall of the zero-loss efficiency with wind. Default 0. [s/m] */
  readonly a6?: number;
  /** Growth of the long-wave term with wind. Default 0. [s/m] */
  readonly a7?: number;
  /** Loss with the fourth power of the difference from the air. Default 0. [W/(m²·K⁴)] */
  readonly a8?: number;
}

/** Sun, air and fluid at one instant. */
export interface CollectorConditions {
  /** Beam and circumsolar irradiance on the plane. [W/m²] */
  readonly beamIrradiance: number;
  /** Rest of the irradiance on the plane. Default 0: all is taken as beam. [W/m²] */
  readonly diffuseIrradiance?: number;
  /** Incidence angle modifier of the beam. Default 1, normal incidence. [-] */
  readonly beamModifier?: number;
  /** Incidence angle modifier of diffuse light. Default 1. [-] */
  readonly diffuseModifier?: number;
  /** Mean of inlet and outlet. [°C] */
  readonly meanFluidTemperature: number;
  /** Outdoor air. [°C] */
  readonly ambientTemperature: number;
  /** Wind along the plane; needed for a3, a6 and a7. Default 3, at which they vanish. [m/s] */
  readonly windSpeed?: number;
  /** Long-wave irradiance on the plane; needed for a4 and a7. Default: as from a body at air temperature. [W/m²] */
  readonly longwaveIrradiance?: number;
  /** Rise of the mean fluid temperature; needed for a5. Default 0, steady. [K/s] */
  readonly temperatureRate?: number;
}

/** Stefan–Boltzmann constant, exact by the 2019 SI. [W/(m²·K⁴)] */
const STEFAN_BOLTZMANN = 5.670374419e-8;

/** Wind at which the wind terms vanish (ISO 9806:2017, from memory). [m/s] @internal */
export const REFERENCE_WIND = 3;

/**
 * Useful power of a collector: steady form of ISO 9806, with the terms of its quasi-dynamic form where they are given.
 *
 *     Q = A (η0 (Kb Gb + Kd Gd) − a1 d − a2 d |d| − a3 u d + a4 L − a5 dt_m/dt − a6 u G − a7 u L − a8 d |d|³)
 *     d = t_m − t_a,   u = wind − 3 m/s,   G = Gb + Gd,   L = E_L − σ T_a⁴
 *
 * Negative when the fluid loses more than the sun gives; whether the pump then runs is the controller's business. d |d| in place
 * of d² and d |d|³ in place of d⁴ make the loss change sign below ambient (our choice, no source).
 *
 * @param rating - Coefficients and area A.
 * @param conditions - One instant.
 * @returns Q. [W]
 * @throws {@link DesignError} when a number is not finite or out of its range.
 * @see ISO 9806:2017, steady-state and quasi-dynamic models; the wind and long-wave terms from memory.
 * @example
 * const flatPlate = { area: 2, eta0: 0.75, a1: 3.5, a2: 0.015 }; // invented
 * usefulPower(flatPlate, { beamIrradiance: 800, meanFluidTemperature: 50, ambientTemperature: 20 }); // 963
 */
export function usefulPower(rating: CollectorRating, conditions: CollectorConditions): number {
  requireRating(rating);
  requireConditions(conditions);
  const { beamIrradiance: beam, diffuseIrradiance: diffuse = 0, ambientTemperature: ambient } = conditions;
  const { meanFluidTemperature: fluid, windSpeed = REFERENCE_WIND, temperatureRate = 0 } = conditions;
  const effective = (conditions.beamModifier ?? 1) * beam + (conditions.diffuseModifier ?? 1) * diffuse;
  const wind = windSpeed - REFERENCE_WIND;
  const fromAir = STEFAN_BOLTZMANN * (ambient + 273.15) ** 4;
  const excess = (conditions.longwaveIrradiance ?? fromAir) - fromAir;
  const difference = fluid - ambient;
  return (
    rating.area *
    (usefulFlux(rating.eta0 * effective, rating.a1 + (rating.a3 ?? 0) * wind, rating.a2, difference) +
      ((rating.a4 ?? 0) - (rating.a7 ?? 0) * wind) * excess -
      (rating.a5 ?? 0) * temperatureRate -
      (rating.a6 ?? 0) * wind * (beam + diffuse) -
      (rating.a8 ?? 0) * difference * Math.abs(difference) ** 3)
  );
}

/**
 * Efficiency of a collector: {@link usefulPower} over the irradiance on its area.
 *
 * @param rating - Coefficients; the area cancels.
 * @param conditions - One instant, with sun.
 * @returns η; negative when the collector loses heat. [-]
 * @throws {@link DesignError} when there is no sun or a number is out of its range.
 * @see ISO 9806:2017, steady-state model.
 */
export function collectorEfficiency(rating: CollectorRating, conditions: CollectorConditions): number {
  const power = usefulPower(rating, conditions);
  const irradiance = conditions.beamIrradiance + (conditions.diffuseIrradiance ?? 0);
  if (irradiance > 0) return power / (rating.area * irradiance);
  throw new DesignError([
    {
      path: 'beamIrradiance',
      found: quote(irradiance),
      expected: 'sun on the collector, more than 0 W/m²',
      remedy: 'Without sun there is no efficiency; use usefulPower for the loss.',
    },
  ]);
}

/**
 * Temperature at which a collector with no flow stops heating: its loss equals what it absorbs.
 *
 *     t = t_a + 2 S / (a1 + √(a1² + 4 a2 S)),   S = η0 G      (the root of S = a1 d + a2 d², also with a2 = 0)
 *
 * @param rating - Coefficients; the area cancels, a3 to a8 are left out.
 * @param irradiance - On the plane, after the incidence modifiers, ≥ 0. [W/m²]
 * @param ambient - Outdoor air. [°C]
 * @returns Mean temperature of the absorber's fluid. [°C]
 * @throws {@link DesignError} when a number is out of its range or a1 and a2 are both 0.
 * @see ISO 9806:2017; its standard stagnation conditions are 1000 W/m² and 30 °C (from memory).
 */
export function stagnationTemperature(rating: CollectorRating, irradiance: number, ambient: number): number {
  requireRating(rating);
  requireNumber('irradiance', irradiance, 0, 2000, 'W/m²');
  requireNumber('ambient', ambient, -90, 70, '°C');
  if (rating.a1 === 0 && rating.a2 === 0) {
    throw new DesignError([
      {
        path: 'a1',
        found: '0, with a2 0',
        expected: 'a heat loss: a1 or a2 more than 0',
        remedy: 'Take both from the test report; a collector without loss has no stagnation temperature.',
      },
    ]);
  }
  return ambient + stagnationRise(rating.eta0 * irradiance, rating.a1, rating.a2);
}

/** How far coefficients may fall short of what a sheet states: 30 K on certificate DS_3663 (docs/theory/measured.md). [K] */
export const COEFFICIENTS_SHORT = 30;

/**
 * What pipes, vents, seals and fluid beside a dry collector must stand: the stagnation temperature that its sheet states, else that of the
 * coefficients and {@link COEFFICIENTS_SHORT}. At 1000 W/m² and 30 °C (ISO 9806, from memory).
 *
 * @param collector - Coefficients, and the stated value where there is one. [°C]
 * @returns [°C]
 * @throws {@link DesignError} as {@link stagnationTemperature} does.
 */
export function dryTemperature(
  collector: Pick<CollectorRating, 'eta0' | 'a1' | 'a2'> & { readonly stagnationTemperature?: number | undefined },
): number {
  const { eta0, a1, a2, stagnationTemperature: stated } = collector;
  return stated ?? stagnationTemperature({ area: 1, eta0, a1, a2 }, 1000, 30) + COEFFICIENTS_SHORT;
}

/**
 * Heat per area that the fluid takes in steady state: S − a1 d − a2 d |d|. Kernel of {@link usefulPower}.
 *
 * @param absorbed - S = η0 G'. [W/m²]
 * @param a1 - [W/(m²·K)]
 * @param a2 - [W/(m²·K²)]
 * @param difference - d = t_m − t_a. [K]
 * @returns Negative when the fluid loses heat. [W/m²]
 * @internal
 */
const usefulFlux = (absorbed: number, a1: number, a2: number, difference: number): number =>
  absorbed - (a1 + a2 * Math.abs(difference)) * difference;

/** Kernel of {@link stagnationTemperature}: rise over the air by absorbed power S ≥ 0 [W/m²]. [K] @internal */
export const stagnationRise = (absorbed: number, a1: number, a2: number): number =>
  absorbed > 0 ? (2 * absorbed) / (a1 + Math.sqrt(a1 * a1 + 4 * a2 * absorbed)) : 0;

function requireRating(rating: CollectorRating): void {
  requireNumber('area', rating.area, 1e-3, 1e6, 'm²');
  requireNumber('eta0', rating.eta0, 0, 1, '');
  requireNumber('a1', rating.a1, 0, 100, 'W/(m²·K)');
  requireNumber('a2', rating.a2, 0, 1, 'W/(m²·K²)');
  for (const name of ['a3', 'a4', 'a5', 'a6', 'a7', 'a8'] as const) requireNumber(name, rating[name] ?? 0, 0, 1e7, '');
}

function requireConditions(conditions: CollectorConditions): void {
  requireNumber('beamIrradiance', conditions.beamIrradiance, 0, 2000, 'W/m²');
  requireNumber('diffuseIrradiance', conditions.diffuseIrradiance ?? 0, 0, 2000, 'W/m²');
  requireNumber('beamModifier', conditions.beamModifier ?? 1, 0, 2, '');
  requireNumber('diffuseModifier', conditions.diffuseModifier ?? 1, 0, 2, '');
  requireNumber('meanFluidTemperature', conditions.meanFluidTemperature, -90, 500, '°C');
  requireNumber('ambientTemperature', conditions.ambientTemperature, -90, 70, '°C');
  requireNumber('windSpeed', conditions.windSpeed ?? REFERENCE_WIND, 0, 100, 'm/s');
  requireNumber('longwaveIrradiance', conditions.longwaveIrradiance ?? 0, 0, 1000, 'W/m²');
  requireNumber('temperatureRate', conditions.temperatureRate ?? 0, -10, 10, 'K/s');
}
