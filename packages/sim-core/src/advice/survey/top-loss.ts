import { requireNumber } from '../../input/errors.ts';

/** Stefan-Boltzmann constant, 2019 SI. [W/(m²·K⁴)] */
const STEFAN_BOLTZMANN = 5.670374419e-8;
const KELVIN = 273.15;

/** Steeper covers have the factor of 70°. [°] */
const STEEPEST = 70;

/** Plate, covers and wind of {@link topLossCoefficient}. */
export interface TopLossQuery {
  /** Mean of the plate, above the air's temperature, to 400. [°C] */
  readonly plateTemperature: number;
  /** Outdoor air; the sky is taken at the same. [°C] */
  readonly ambientTemperature: number;
  /** Covers, 1 to 3. */
  readonly covers: number;
  /** Long-wave emittance of the plate, 0.01 to 1. [-] */
  readonly plateEmittance: number;
  /** Long-wave emittance of the covers, 0.01 to 1; 0.88 for glass. [-] */
  readonly coverEmittance: number;
  /** Of the panel, from the horizontal, 0 to 90. [°] */
  readonly slope: number;
  /** Film of the wind on the outer cover, 1 to 100. [W/(m²·K)] */
  readonly windCoefficient: number;
}

/** Answer of {@link topLossCoefficient}, with the formula's own intermediate numbers. */
export interface TopLoss {
  /** U_t. [W/(m²·K)] */
  readonly conductance: number;
  /** First term: convection. [W/(m²·K)] */
  readonly convective: number;
  /** Second term: radiation. [W/(m²·K)] */
  readonly radiative: number;
  /** f of the formula. [-] */
  readonly f: number;
  /** C of the formula. [K] */
  readonly C: number;
  /** e of the formula. [-] */
  readonly e: number;
}

/**
 * Loss of a flat plate through its covers, by Klein's formula.
 *
 *     U_t = {N/[(C/T_p)((T_p − T_a)/(N + f))^e] + 1/h_w}⁻¹
 *           + σ (T_p + T_a)(T_p² + T_a²)/{1/(ε_p + 0.00591 N h_w) + (2N + f − 1 + 0.133 ε_p)/ε_g − N}
 *     f = (1 + 0.089 h_w − 0.1166 h_w ε_p)(1 + 0.07866 N),   C = 520 (1 − 0.000051 β²),   e = 0.430 (1 − 100/T_p)
 *
 * T in kelvin, β at most 70°. Stated fit: within 0.3 W/(m²·K) of the layer-by-layer solution for plates from the air's
 * temperature to 200 °C (from memory); 0.345 was found within that range by an independent one. Above it the formula is extrapolated. The gap between plate and cover does not enter:
 * about 25 mm.
 *
 * @throws {@link DesignError} for a number out of its range, and for a plate that is not warmer than the air.
 * @see Klein (1979); Duffie & Beckman (2013) eq. 6.4.9.
 */
export function topLossCoefficient(query: TopLossQuery): TopLoss {
  requireNumber('ambientTemperature', query.ambientTemperature, -90, 70, '°C');
  requireNumber('plateTemperature', query.plateTemperature, query.ambientTemperature + 1e-6, 400, '°C (above the air)');
  requireNumber('covers', query.covers, 1, 3, '');
  requireNumber('plateEmittance', query.plateEmittance, 0.01, 1, '');
  requireNumber('coverEmittance', query.coverEmittance, 0.01, 1, '');
  requireNumber('slope', query.slope, 0, 90, '°');
  requireNumber('windCoefficient', query.windCoefficient, 1, 100, 'W/(m²·K)');
  return topLoss(query);
}

/** Kernel of {@link topLossCoefficient}. @internal */
export function topLoss(query: TopLossQuery): TopLoss {
  const { covers: N, plateEmittance: ep, coverEmittance: eg, windCoefficient: hw } = query;
  const Tp = query.plateTemperature + KELVIN;
  const Ta = query.ambientTemperature + KELVIN;
  const slope = Math.min(query.slope, STEEPEST);
  const f = (1 + 0.089 * hw - 0.1166 * hw * ep) * (1 + 0.07866 * N);
  const C = 520 * (1 - 0.000051 * slope * slope);
  const e = 0.43 * (1 - 100 / Tp);
  const convective = 1 / (N / ((C / Tp) * ((Tp - Ta) / (N + f)) ** e) + 1 / hw);
  const radiative =
    (STEFAN_BOLTZMANN * (Tp + Ta) * (Tp * Tp + Ta * Ta)) /
    (1 / (ep + 0.00591 * N * hw) + (2 * N + f - 1 + 0.133 * ep) / eg - N);
  return { conductance: convective + radiative, convective, radiative, f, C, e };
}
