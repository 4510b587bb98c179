import { requireNumber } from '../../input/errors.ts';

/** Film of still air and radiation on a pipe's insulation, indoors or in a light wind; judgement, no source. [W/(m²·K)] */
export const PIPE_FILM_COEFFICIENT = 10;

/** A pipe with its insulation; a loop's design is one. */
export interface InsulatedPipe {
  /** Outside of the bare pipe. [m] */
  readonly pipeOuterDiameter: number;
  /** 0 for a bare pipe. [m] */
  readonly insulationThickness: number;
  /** Of the insulation. [W/(m·K)] */
  readonly insulationConductivity: number;
  /** Loss with brackets, valves and gaps over that of insulated pipe alone; 1 by default. [-] */
  readonly heatBridgeFactor?: number;
}

/**
 * Heat loss of an insulated pipe per metre and kelvin over its surroundings.
 *
 *     f/U' = ln(D_i/D)/(2 π k) + 1/(π D_i h),   D_i = D + 2 × thickness
 *
 * f is the factor for heat bridges. Inside film and pipe wall are left out: under 1 % of the whole for copper in motion.
 *
 * @param pipe - Diameter and insulation.
 * @param filmCoefficient - Film on the outside, h, 10 by default (judgement). [W/(m²·K)]
 * @returns U'. [W/(m·K)]
 * @throws {@link DesignError} for a value out of range.
 * @see Conduction through a cylinder's shell, any textbook of heat transfer.
 */
export function pipeLossConductance(pipe: InsulatedPipe, filmCoefficient: number = PIPE_FILM_COEFFICIENT): number {
  requireNumber('pipeOuterDiameter', pipe.pipeOuterDiameter, 1e-4, 10, 'm');
  requireNumber('insulationThickness', pipe.insulationThickness, 0, 1, 'm');
  requireNumber('insulationConductivity', pipe.insulationConductivity, 1e-3, 100, 'W/(m·K)');
  requireNumber('filmCoefficient', filmCoefficient, 0.1, 1000, 'W/(m²·K)');
  const { heatBridgeFactor = 1 } = pipe;
  requireNumber('heatBridgeFactor', heatBridgeFactor, 1, 10, '');
  const diameter = pipe.pipeOuterDiameter + 2 * pipe.insulationThickness;
  const shell = Math.log(diameter / pipe.pipeOuterDiameter) / (2 * Math.PI * pipe.insulationConductivity);
  return heatBridgeFactor / (shell + 1 / (Math.PI * diameter * filmCoefficient));
}

/**
 * Resistance of a pipe's insulation on its outer surface, R = (D_i/2) ln(D_i/D)/k: what codes call its R-value.
 *
 * @param pipe - Diameter and insulation; heat bridges are not counted.
 * @returns [m²·K/W]; 0.1761 of it is R-1.
 */
export function insulationResistance(pipe: InsulatedPipe): number {
  const radius = pipe.pipeOuterDiameter / 2 + pipe.insulationThickness;
  return (radius * Math.log((2 * radius) / pipe.pipeOuterDiameter)) / pipe.insulationConductivity;
}

/**
 * Temperature at which a steady stream leaves a lossy pipe.
 *
 *     T_out = T_a + (T_in − T_a) exp(−U' L/(ṁ c_p))
 *
 * @param inlet - T_in. [°C]
 * @param surroundings - T_a. [°C]
 * @param lossRatio - U' L/(ṁ c_p), 0 or more. [-]
 * @returns T_out. [°C]
 */
export const pipeOutlet = (inlet: number, surroundings: number, lossRatio: number): number =>
  surroundings + (inlet - surroundings) * Math.exp(-lossRatio);
