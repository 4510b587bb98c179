/**
 * Propylene- and ethylene-glycol in water: A. Melinder, Properties of Secondary Working Fluids for Indirect Systems, IIR 2010;
 * coefficients as they stand in the open data of CoolProp (incompressible liquids MPG and MEG), read there and not in the book.
 *
 *     f(t, x) = Σ C[i][j] (x − xb)^j (t − tb)^i
 *
 * with t in °C and mass fraction x, 0 to 0.60, from the freezing point to 100 °C. Density in kg/m³, specific heat in J/(kg·K),
 * conductivity in W/(m·K), natural logarithm of the viscosity in mPa·s, freezing point in K (i = 0 only).
 */

/** Rows i of coefficients over j. */
export type CoefficientRows = readonly (readonly number[])[];

/** One glycol. */
interface GlycolCoefficients {
  /** tb. [°C] */
  readonly temperatureBase: number;
  /** xb. [-] */
  readonly fractionBase: number;
  /** [kg/m³] */
  readonly density: CoefficientRows;
  /** [J/(kg·K)] */
  readonly specificHeat: CoefficientRows;
  /** [W/(m·K)] */
  readonly conductivity: CoefficientRows;
  /** ln of mPa·s. */
  readonly logViscosity: CoefficientRows;
  /** [K] */
  readonly freezingPoint: readonly number[];
  /** Density of the pure glycol at 20 °C; handbook value, from memory. [kg/m³] */
  readonly pureDensity: number;
  /** Molar mass. [kg/mol] */
  readonly molarMass: number;
}

/** Mixtures that have coefficients. */
export type Glycol = 'propylene-glycol' | 'ethylene-glycol';

/** Largest mass fraction of the source. [-] */
export const MAXIMUM_MASS_FRACTION = 0.6;

export const GLYCOLS: Readonly<Record<Glycol, GlycolCoefficients>> = {
  'propylene-glycol': {
    temperatureBase: 32.7083,
    fractionBase: 0.307031,
    density: [
      [1018, 76.04, -24.98, -155, -113.1, 234.2],
      [-0.5406, -0.945, 0.27, 2.829, -2.221],
      [-0.002666, 0.005541, -0.004018, -0.007175],
      [1.347e-5, -1.343e-5, 3.376e-5],
    ],
    specificHeat: [
      [3882, -1304, -1598, 353.9, 5000, -4959],
      [2.699, 5.07, 0.9534, 31.02, -71.35],
      [-0.001659, -0.004752, 0.1167, -0.295],
      [-1.032e-5, 0.0001522, -0.000487],
    ],
    conductivity: [
      [0.4513, -0.4795, 0.2076, -0.09083, -0.05952, 0.2104],
      [0.0007955, -0.001678, 0.001563, -0.002518, -0.003605],
      [3.482e-8, 8.941e-6, -4.615e-5, 6.543e-5],
      [-5.966e-9, 1.493e-8, 9.897e-8],
    ],
    logViscosity: [
      [0.6837, 3.328, 0.5453, -3.9, -1.587, 35.64],
      [-0.03045, -0.03984, -0.00086, 0.1054, 0.04475],
      [0.0002525, 0.0004332, -0.0001593, -0.001589],
      [-1.399e-6, -1.86e-6, -4.465e-7],
    ],
    freezingPoint: [259.9, -66.31, -109.4, -228.3, -340.9, 146.5],
    pureDensity: 1036,
    molarMass: 0.076094,
  },
  'ethylene-glycol': {
    temperatureBase: 31.728,
    fractionBase: 0.308462,
    density: [
      [1034, 131.1, 0.749, -106.2, -96.23, 489.1],
      [-0.4781, -0.6876, 0.7855, 1.229, -7.211],
      [-0.002692, 0.004805, -0.003995, -0.01153],
      [4.725e-6, 1.69e-6, 4.982e-5],
    ],
    specificHeat: [
      [3737, -1799, -993.3, 2610, 1537, -16180],
      [2.93, 10.46, 3.516, -1.189, -42.72],
      [-0.004675, -0.04147, 0.05109, -0.1643],
      [-1.389e-5, 1.847e-5, -0.0007138],
    ],
    conductivity: [
      [0.472, -0.4286, 0.1747, 0.03017, -0.1322, 0.2678],
      [0.0008903, -0.001473, 0.0006814, -0.002412, 0.002555],
      [-1.058e-6, 1.059e-5, -3.612e-5, 4.004e-5],
      [-2.789e-9, -1.142e-8, 2.365e-8],
    ],
    logViscosity: [
      [0.4705, 2.471, 0.03328, 1.659, 3.089, -18.65],
      [-0.0255, -0.01171, 0.01086, 0.003157, 0.01831],
      [0.0001782, 0.0001052, 0.0001051, 0.0004063],
      [-7.669e-7, -1.634e-6, -6.475e-6],
    ],
    freezingPoint: [257.9, -80.8, -133.4, -72.93, 100.6, 11.4],
    pureDensity: 1113,
    molarMass: 0.062068,
  },
};

/** Σ c_j d^j, lowest power first. */
export const polynomial = (coefficients: readonly number[], d: number): number => {
  let sum = 0;
  for (let j = coefficients.length - 1; j >= 0; j--) sum = sum * d + coefficients[j]!;
  return sum;
};
