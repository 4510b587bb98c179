/** How well a plate hands its heat to the tubes on it: fin efficiency, collector efficiency factor, removal factor. */
import { requireNumber } from '../../input/errors.ts';

/** A strip of plate between two tubes. */
export interface Fin {
  /** U_L, loss of the plate per area and kelvin over the air. [W/(m²·K)] */
  readonly loss: number;
  /** k of the plate. [W/(m·K)] */
  readonly plateConductivity: number;
  /** δ of the plate. [m] */
  readonly plateThickness: number;
  /** W, from tube to tube. [m] */
  readonly tubeSpacing: number;
  /** D, outside of the tube. [m] */
  readonly tubeDiameter: number;
}

/** A strip of plate with its tube and fluid. */
export interface FinnedTube extends Fin {
  /** D_i, bore. [m] */
  readonly innerDiameter: number;
  /** 1/C_b, resistance of the bond between plate and tube, per metre of tube; 0 for one piece. [m·K/W] */
  readonly bondResistance: number;
  /** h, film inside the tube, on the bore. [W/(m²·K)] */
  readonly filmCoefficient: number;
}

/**
 * Fin efficiency of the plate between two tubes.
 *
 *     F = tanh(m (W − D)/2)/(m (W − D)/2),   m = √(U_L/(k δ))
 *
 * @returns F, 0 to 1. [-]
 * @throws {@link DesignError} for a number out of its range, or tubes wider than their spacing.
 * @see Hottel & Whillier (1958), Bliss (1959); Duffie & Beckman (2013) §6.5.
 */
export function finEfficiency(fin: Fin): number {
  requireFin(fin);
  return fins(fin);
}

/**
 * Collector efficiency factor: heat into the fluid over that of a plate at the fluid's temperature.
 *
 *     F' = (1/U_L)/{W [1/(U_L (D + (W − D) F)) + 1/C_b + 1/(π D_i h)]}
 *
 * @returns F', 0 to 1. [-]
 * @throws {@link DesignError} for a number out of its range.
 * @see Duffie & Beckman (2013) eq. 6.5.18.
 */
export function collectorEfficiencyFactor(tube: FinnedTube): number {
  requireFin(tube);
  requireNumber('innerDiameter', tube.innerDiameter, 1e-4, tube.tubeDiameter, 'm');
  requireNumber('bondResistance', tube.bondResistance, 0, 10, 'm·K/W');
  requireNumber('filmCoefficient', tube.filmCoefficient, 1, 1e5, 'W/(m²·K)');
  return efficiencyFactor(tube);
}

/**
 * Flow factor F'' = F_R/F': what the warming of the fluid along the tubes leaves of F'.
 *
 *     F'' = z (1 − e^(−1/z)),   z = ṁ c_p/(A U_L F')
 *
 * @param capacityRatio - z, above 0. [-]
 * @returns F'', 0 to 1. [-]
 * @throws {@link DesignError} for a ratio out of its range.
 * @see Duffie & Beckman (2013) eq. 6.7.5.
 */
export function flowFactor(capacityRatio: number): number {
  requireNumber('capacityRatio', capacityRatio, 1e-6, 1e9, '');
  return -capacityRatio * Math.expm1(-1 / capacityRatio);
}

/** Kernel of {@link finEfficiency}. @internal */
export function fins({ loss, plateConductivity, plateThickness, tubeSpacing, tubeDiameter }: Fin): number {
  const x = (Math.sqrt(loss / (plateConductivity * plateThickness)) * (tubeSpacing - tubeDiameter)) / 2;
  return x < 1e-6 ? 1 : Math.tanh(x) / x;
}

/** Kernel of {@link collectorEfficiencyFactor}. @internal */
export function efficiencyFactor(tube: FinnedTube): number {
  const { loss, tubeSpacing: W, tubeDiameter: D, innerDiameter, bondResistance, filmCoefficient } = tube;
  const fin = 1 / (loss * (D + (W - D) * fins(tube)));
  const film = 1 / (Math.PI * innerDiameter * filmCoefficient);
  return 1 / (loss * W * (fin + bondResistance + film));
}

function requireFin(fin: Fin): void {
  requireNumber('loss', fin.loss, 1e-3, 100, 'W/(m²·K)');
  requireNumber('plateConductivity', fin.plateConductivity, 0.1, 500, 'W/(m·K)');
  requireNumber('plateThickness', fin.plateThickness, 1e-5, 0.05, 'm');
  requireNumber('tubeSpacing', fin.tubeSpacing, 1e-3, 2, 'm');
  requireNumber('tubeDiameter', fin.tubeDiameter, 1e-4, fin.tubeSpacing, 'm (at most the spacing)');
}
