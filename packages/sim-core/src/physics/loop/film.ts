/**
 * Films of heat transfer: inside straight and coiled tubes, outside a horizontal cylinder. Fluid values are those of the bulk;
 * corrections for the viscosity at the wall are left out.
 */
import { requireNumber } from '../../input/errors.ts';

/** Nusselt number of developed laminar flow at constant wall temperature. [-] */
const LAMINAR_NUSSELT = 3.66;

const STRAIGHT_LAMINAR_END = 2300;
const STRAIGHT_TURBULENT_START = 4000;
const COIL_TURBULENT_START = 2.2e4;

const gnielinski = (reynolds: number, prandtl: number): number => {
  const f = (0.79 * Math.log(reynolds) - 1.64) ** -2; // Petukhov
  return ((f / 8) * (reynolds - 1000) * prandtl) / (1 + 12.7 * Math.sqrt(f / 8) * (prandtl ** (2 / 3) - 1));
};

const requireFlow = (reynolds: number, prandtl: number): void => {
  requireNumber('reynolds', reynolds, 0, 5e6, '');
  requireNumber('prandtl', prandtl, 0.5, 2000, '');
};

/**
 * Nusselt number in a long straight tube: 3.66 when laminar (Re < 2300), Gnielinski (1976) with Petukhov's friction factor
 * when turbulent (Re > 4000), linear in Re between them (Gnielinski 2013, from memory).
 *
 * @param reynolds - Re on the bore, 0 to 5e6. [-]
 * @param prandtl - Pr, 0.5 to 2000. [-]
 * @returns Nu on the bore. [-]
 * @throws {@link DesignError} outside these ranges.
 */
export function straightTubeNusselt(reynolds: number, prandtl: number): number {
  requireFlow(reynolds, prandtl);
  if (reynolds <= STRAIGHT_LAMINAR_END) return LAMINAR_NUSSELT;
  if (reynolds >= STRAIGHT_TURBULENT_START) return gnielinski(reynolds, prandtl);
  const share = (reynolds - STRAIGHT_LAMINAR_END) / (STRAIGHT_TURBULENT_START - STRAIGHT_LAMINAR_END);
  return LAMINAR_NUSSELT + share * (gnielinski(STRAIGHT_TURBULENT_START, prandtl) - LAMINAR_NUSSELT);
}

/** A coil's curvature, worked into what the film kernel needs. */
export interface CompiledCoilFilm {
  /** 0.03 √(d/D). [-] */
  readonly frictionOfBend: number;
  /** Exponent m of Re in laminar flow. [-] */
  readonly exponent: number;
  /** 0.08 (1 + 0.8 (d/D)^0.9). [-] */
  readonly factor: number;
  /** End of laminar flow. [-] */
  readonly criticalReynolds: number;
  /** factor · criticalReynolds^m. [-] */
  readonly criticalRise: number;
}

/** Works a curvature, bore over winding diameter d/D [-], into the kernel's constants. */
export function compileCoilFilm(curvature: number): CompiledCoilFilm {
  const exponent = 0.5 + 0.2903 * curvature ** 0.194;
  const factor = 0.08 * (1 + 0.8 * curvature ** 0.9);
  const criticalReynolds = STRAIGHT_LAMINAR_END * (1 + 8.6 * curvature ** 0.45);
  return {
    frictionOfBend: 0.03 * Math.sqrt(curvature),
    exponent,
    factor,
    criticalReynolds,
    criticalRise: factor * criticalReynolds ** exponent,
  };
}

/** Nusselt number in a coiled tube; see {@link coiledTubeNusselt}. @param rootPrandtl - Pr^(1/3). [-] */
export function coilNusselt(c: CompiledCoilFilm, reynolds: number, rootPrandtl: number): number {
  if (reynolds <= c.criticalReynolds) {
    // Re^m as exp(m ln Re): twice as fast, and 0 at standstill.
    return LAMINAR_NUSSELT + c.factor * Math.exp(c.exponent * Math.log(reynolds)) * rootPrandtl;
  }
  if (reynolds >= COIL_TURBULENT_START) return coilTurbulent(c, reynolds, rootPrandtl);
  const laminar = LAMINAR_NUSSELT + c.criticalRise * rootPrandtl;
  const share = (reynolds - c.criticalReynolds) / (COIL_TURBULENT_START - c.criticalReynolds);
  return laminar + share * (coilTurbulent(c, COIL_TURBULENT_START, rootPrandtl) - laminar);
}

function coilTurbulent(c: CompiledCoilFilm, reynolds: number, rootPrandtl: number): number {
  const eighth = (0.3164 / Math.sqrt(Math.sqrt(reynolds)) + c.frictionOfBend) / 8;
  const square = rootPrandtl * rootPrandtl;
  return (eighth * reynolds * square * rootPrandtl) / (1 + 12.7 * Math.sqrt(eighth) * (square - 1));
}

/**
 * Nusselt number in a coiled tube, whose secondary flow mixes the fluid.
 *
 *     laminar, Re < Re_c = 2300 (1 + 8.6 (d/D)^0.45):   Nu = 3.66 + 0.08 [1 + 0.8 (d/D)^0.9] Re^m Pr^(1/3),
 *                                                       m = 0.5 + 0.2903 (d/D)^0.194
 *     turbulent, Re > 22,000:   Nu = (ζ/8) Re Pr / (1 + 12.7 √(ζ/8) (Pr^(2/3) − 1)),   ζ = 0.3164 Re^−0.25 + 0.03 √(d/D)
 *     between:   linear in Re
 *
 * @param reynolds - Re on the bore, 0 to 5e6. [-]
 * @param prandtl - Pr, 0.5 to 2000. [-]
 * @param curvature - Bore over winding diameter, d/D, 0.001 to 0.3. [-]
 * @returns Nu on the bore. [-]
 * @throws {@link DesignError} outside these ranges.
 * @see Schmidt, Chem. Ing. Tech. 39 (1967) 781; Gnielinski, 8th Int. Heat Transfer Conf. (1986) 2847; VDI heat atlas, section Gc
 *   (read in an open implementation that cites it).
 */
export function coiledTubeNusselt(reynolds: number, prandtl: number, curvature: number): number {
  requireFlow(reynolds, prandtl);
  requireNumber('curvature', curvature, 0.001, 0.3, '');
  return coilNusselt(compileCoilFilm(curvature), reynolds, Math.cbrt(prandtl));
}

/** [1 + (0.559/Pr)^(9/16)]^(−8/27) times 0.387: what stands before Ra^(1/6) for a cylinder. [-] */
export const cylinderFactor = (prandtl: number): number => 0.387 / (1 + (0.559 / prandtl) ** (9 / 16)) ** (8 / 27);

/** Nusselt number of a cylinder at rest in still water with no temperature difference. [-] */
export const CYLINDER_REST = 0.6;

/**
 * Nusselt number of natural convection around a long horizontal cylinder.
 *
 *     Nu = { 0.60 + 0.387 Ra^(1/6) / [1 + (0.559/Pr)^(9/16)]^(8/27) }²
 *
 * @param rayleigh - Ra on the diameter, 0 to 1e12. [-]
 * @param prandtl - Pr, above 0. [-]
 * @returns Nu on the diameter. [-]
 * @throws {@link DesignError} outside these ranges.
 * @see Churchill & Chu, Int. J. Heat Mass Transfer 18 (1975) 1049.
 */
export function horizontalCylinderNusselt(rayleigh: number, prandtl: number): number {
  requireNumber('rayleigh', rayleigh, 0, 1e12, '');
  requireNumber('prandtl', prandtl, 1e-3, 1e5, '');
  return (CYLINDER_REST + cylinderFactor(prandtl) * rayleigh ** (1 / 6)) ** 2;
}
