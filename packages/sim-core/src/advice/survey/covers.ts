/** Light through the covers onto the plate. */
import { requireNumber } from '../../input/errors.ts';

/** Covers of one kind over a plate. */
export interface CoverQuery {
  /** Covers, 1 to 3. */
  readonly covers: number;
  /** Of the cover's material, 1.1 to 2; 1.526 for glass. [-] */
  readonly refractiveIndex: number;
  /** Extinction coefficient times thickness of one cover, K L, 0 to 2. [-] */
  readonly opticalThickness: number;
  /** Absorptance of the plate at normal incidence. [-] */
  readonly absorptance: number;
}

/**
 * Diffuse reflectance of the covers' inner side for what the plate sends back: one, two, three covers (Duffie & Beckman §5.5).
 */
const BACK_REFLECTANCE = [0.16, 0.24, 0.29] as const;

/**
 * Share of the light on the outer cover that the plate takes.
 *
 *     τ = e^(−K L N/cos θ₂) ½ Σ (1 − r)/(1 + (2N − 1) r),   r by Fresnel for both polarisations
 *     (τα) = τ α(θ)/(1 − (1 − α(θ)) ρ_d)
 *
 * α(θ)/α(0) is the polynomial of Duffie & Beckman eq. 4.11.1 for a black plate, up to 80° (coefficients from memory), held
 * above it.
 *
 * @param query - Covers and plate.
 * @param incidenceAngle - θ, 0 to 89. [°]
 * @returns (τα), 0 to 1. [-]
 * @throws {@link DesignError} for a number out of its range.
 * @see Duffie & Beckman (2013) §5.1 to 5.5.
 */
export function transmittanceAbsorptance(query: CoverQuery, incidenceAngle = 0): number {
  requireNumber('covers', query.covers, 1, 3, '');
  requireNumber('refractiveIndex', query.refractiveIndex, 1.1, 2, '');
  requireNumber('opticalThickness', query.opticalThickness, 0, 2, '');
  requireNumber('absorptance', query.absorptance, 0.01, 1, '');
  requireNumber('incidenceAngle', incidenceAngle, 0, 89, '°');
  return throughCovers(query, incidenceAngle);
}

/** Kernel of {@link transmittanceAbsorptance}. @internal */
export function throughCovers(query: CoverQuery, angle: number): number {
  const absorptance = query.absorptance * absorptanceRatio(Math.min(angle, 80));
  const reflected = (1 - absorptance) * BACK_REFLECTANCE[query.covers - 1]!;
  return (coverTransmittance(query, angle) * absorptance) / (1 - reflected);
}

/** τ of the covers alone. [-] @internal */
export function coverTransmittance({ covers, refractiveIndex, opticalThickness }: CoverQuery, angle: number): number {
  const theta = (angle * Math.PI) / 180;
  const inside = Math.asin(Math.sin(theta) / refractiveIndex);
  const pass = (r: number): number => (1 - r) / (1 + (2 * covers - 1) * r);
  const normal = ((refractiveIndex - 1) / (refractiveIndex + 1)) ** 2;
  const across = angle < 1e-3 ? normal : (Math.sin(inside - theta) / Math.sin(inside + theta)) ** 2;
  const along = angle < 1e-3 ? normal : (Math.tan(inside - theta) / Math.tan(inside + theta)) ** 2;
  const absorbed = Math.exp((-covers * opticalThickness) / Math.cos(inside));
  return (absorbed * (pass(across) + pass(along))) / 2;
}

/** α(θ)/α(0). [-] */
function absorptanceRatio(angle: number): number {
  const c = [1, -1.5879e-3, 2.7314e-4, -2.3026e-5, 9.0244e-7, -1.8e-8, 1.7734e-10, -6.9937e-13];
  return c.reduceRight((sum, coefficient) => sum * angle + coefficient, 0);
}

/** Angle at which b0 is taken: the one at which ISO 9806 has the modifier of a flat plate measured (from memory). [°] */
const MODIFIER_ANGLE = 50;

/**
 * Incidence modifier of covers and plate by one number, from (τα) at 50°: b0 = (1 − K)/(1/cos 50° − 1).
 *
 * @internal
 */
export function modifierOfCovers(query: CoverQuery): number {
  const K = throughCovers(query, MODIFIER_ANGLE) / throughCovers(query, 0);
  return (1 - K) / (1 / Math.cos((MODIFIER_ANGLE * Math.PI) / 180) - 1);
}
