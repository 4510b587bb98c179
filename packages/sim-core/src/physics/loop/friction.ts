/**
 * Friction in a straight round pipe (Darcy–Weisbach): laminar 64/Re below Re 2300, Haaland (1983) above 4000, and between them,
 * where there is no agreed formula, a smooth rise of our own.
 *
 * The kernel works with f Re² instead of f: it is the pressure drop without dimension, finite and zero at standstill.
 *
 *     Δp = f (L/D) ρ v²/2 = (f Re²) μ² L / (2 ρ D³)
 */
import { requireNumber } from '../../input/errors.ts';

const LAMINAR_END = 2300;
const TURBULENT_START = 4000;
const LOG_SPAN = Math.log(TURBULENT_START / LAMINAR_END);
const LOG_LAMINAR_END = Math.log(64 * LAMINAR_END);

/** Drawn copper tube; handbook value. [m] */
export const COPPER_ROUGHNESS = 1.5e-6;

/** A wall's roughness, worked into what the friction kernel needs. */
export interface CompiledFriction {
  /** (ε/(3.7 D))^1.11 of Haaland's formula. [-] */
  readonly roughTerm: number;
  /** ln(f Re²) at Re 4000. [-] */
  readonly logTurbulentStart: number;
  /** d ln(f Re²)/d ln Re at Re 4000. [-] */
  readonly turbulentSlope: number;
}

const haaland = (roughTerm: number, reynolds: number): number => {
  const root = 1.8 * Math.log10(roughTerm + 6.9 / reynolds);
  return 1 / (root * root);
};

/** Works a relative roughness ε/D [-] into the kernel's constants. */
export function compileFriction(relativeRoughness: number): CompiledFriction {
  const roughTerm = (relativeRoughness / 3.7) ** 1.11;
  const viscousTerm = 6.9 / TURBULENT_START;
  // Derivative of ln f = −2 ln(−log10(roughTerm + 6.9/Re)) + constant
  const slopeOfF = (2 * viscousTerm) / ((roughTerm + viscousTerm) * Math.log(roughTerm + viscousTerm));
  return {
    roughTerm,
    logTurbulentStart: Math.log(haaland(roughTerm, TURBULENT_START) * TURBULENT_START ** 2),
    turbulentSlope: 2 + slopeOfF,
  };
}

/** Darcy friction factor times Re², f Re². [-] */
export function frictionNumber(c: CompiledFriction, reynolds: number): number {
  if (reynolds <= LAMINAR_END) return 64 * reynolds;
  if (reynolds >= TURBULENT_START) return haaland(c.roughTerm, reynolds) * reynolds * reynolds;
  // Cubic Hermite of ln(f Re²) over ln Re: value and slope meet at both ends, and the drop rises all the way (judgement).
  const s = Math.log(reynolds / LAMINAR_END) / LOG_SPAN;
  const rise = c.logTurbulentStart - LOG_LAMINAR_END;
  const value = s * s * (3 - 2 * s) * rise + s * (1 - s) * (1 - s - s * c.turbulentSlope) * LOG_SPAN;
  return Math.exp(LOG_LAMINAR_END + value);
}

/**
 * Darcy friction factor of a straight round pipe.
 *
 * @param reynolds - Re, above 0, on the bore. [-]
 * @param relativeRoughness - ε/D, 0 to 0.05. [-]
 * @returns f. [-]
 * @throws {@link DesignError} outside these ranges.
 * @see Haaland, J. Fluids Eng. 105 (1983) 89, within 2 % of Colebrook (1939); from Re 2300 to 4000 a judgement.
 */
export function frictionFactor(reynolds: number, relativeRoughness: number): number {
  requireNumber('reynolds', reynolds, Number.MIN_VALUE, 1e8, '');
  requireNumber('relativeRoughness', relativeRoughness, 0, 0.05, '');
  return frictionNumber(compileFriction(relativeRoughness), reynolds) / (reynolds * reynolds);
}

/** What {@link pipePressureDrop} is asked. */
export interface PipeFlow {
  /** Volume flow, 0 or more. [m³/s] */
  readonly flow: number;
  /** [m] */
  readonly length: number;
  /** Bore. [m] */
  readonly innerDiameter: number;
  /** Of the wall; drawn copper 1.5e-6 by default. [m] */
  readonly roughness?: number;
  /** Sum of the loss coefficients of fittings, 0 by default. [-] */
  readonly fittingLoss?: number;
  /** [kg/m³] */
  readonly density: number;
  /** [Pa·s] */
  readonly dynamicViscosity: number;
}

/**
 * Pressure drop of a straight pipe with fittings.
 *
 *     Δp = (f L/D + Σ K) ρ v²/2
 *
 * @returns Δp. [Pa]
 * @throws {@link DesignError} for a value that is negative or not finite.
 * @see Darcy–Weisbach; {@link frictionFactor}.
 */
export function pipePressureDrop(pipe: PipeFlow): number {
  const {
    flow,
    length,
    innerDiameter,
    roughness = COPPER_ROUGHNESS,
    fittingLoss = 0,
    density,
    dynamicViscosity,
  } = pipe;
  requireNumber('flow', flow, 0, 1, 'm³/s');
  requireNumber('length', length, 0, 1e5, 'm');
  requireNumber('innerDiameter', innerDiameter, 1e-4, 10, 'm');
  requireNumber('roughness', roughness, 0, 0.05 * innerDiameter, 'm');
  requireNumber('fittingLoss', fittingLoss, 0, 1e6, '');
  requireNumber('density', density, 1, 2e4, 'kg/m³');
  requireNumber('dynamicViscosity', dynamicViscosity, 1e-7, 1e3, 'Pa·s');
  const reynolds = pipeReynolds(flow, innerDiameter, density, dynamicViscosity);
  return (
    pipeFriction(frictionNumber(compileFriction(roughness / innerDiameter), reynolds), pipe) +
    fittingDrop(fittingLoss, flow, innerDiameter, density)
  );
}

/** Re = 4 ρ Q/(π D μ). [-] */
export const pipeReynolds = (flow: number, diameter: number, density: number, viscosity: number): number =>
  (4 * density * flow) / (Math.PI * diameter * viscosity);

const pipeFriction = (frictionRe2: number, pipe: PipeFlow): number =>
  (frictionRe2 * pipe.dynamicViscosity ** 2 * pipe.length) / (2 * pipe.density * pipe.innerDiameter ** 3);

const fittingDrop = (loss: number, flow: number, diameter: number, density: number): number =>
  (loss * density * ((4 * flow) / (Math.PI * diameter * diameter)) ** 2) / 2;
