/**
 * Liquid water at 0.1 MPa by the short correlations of the IAPWS supplementary release SR6-08 (2011 edition; Pátek et al.,
 * J. Phys. Chem. Ref. Data 38, 2009, 21). Range of the release: −20 to 110 °C. Pressure is left out: at 0.3 MPa the density is
 * 0.009 % higher. The symbols are those of the release; its dimensionless temperatures use T_R = 10 K, T_a = 593 K, T_b = 232 K.
 */

/** Kelvin at 0 °C. */
export const KELVIN = 273.15;

const R = 461.51805; // [J/(kg·K)]
const P0 = 1e5; // [Pa]
const TR = 10; // [K]

// Density: release table 1, rows i = 5 to 10.
const VOLUME_A = [
  [4, 6.74458446e3],
  [5, -2.22521604e5],
  [7, 1.00231247e8],
  [8, -1.63552118e9],
  [9, 8.32299658e9],
] as const;
const VOLUME_B = [
  [1, 5.78545292e-3],
  [2, -1.53195665e-2],
  [3, 3.11337859e-2],
  [4, -4.23546241e-2],
  [5, 3.38713507e-2],
  [6, -1.19946761e-2],
] as const;
const VOLUME_CONSTANT = 1.93763157e-2;

// Gibbs energy: rows i = 1 to 4; the specific heat is its second derivative.
const GIBBS_A = [
  [4, -1.661470539e5],
  [5, 2.70878164e6],
  [7, -1.557191544e8],
] as const;
const GIBBS_B = [
  [2, -8.237426256e-1],
  [3, 1.908956353],
  [4, -2.017597384],
  [5, 8.546361348e-1],
] as const;
const GIBBS_C3 = -8.983025854;

// Viscosity [µPa·s] and conductivity [W/(m·K)]: sums of c (T / 300 K)^d.
const VISCOSITY = [
  [-1.9, 280.68],
  [-7.7, 511.45],
  [-19.6, 61.131],
  [-40, 0.45903],
] as const;
const CONDUCTIVITY = [
  [-1.15, 1.663],
  [-3.4, -1.7781],
  [-6, 1.1567],
  [-7.6, -0.432115],
] as const;

type Terms = readonly (readonly [exponent: number, factor: number])[];

const powers = (terms: Terms, base: number): number => terms.reduce((sum, [n, c]) => sum + c * base ** n, 0);
const secondDerivative = (terms: Terms, base: number): number =>
  terms.reduce((sum, [n, c]) => sum + n * (n + 1) * c * base ** (n + 2), 0);

/** Density of liquid water at t [°C]. [kg/m³] */
export function waterDensity(t: number): number {
  const T = t + KELVIN;
  const v = VOLUME_CONSTANT + powers(VOLUME_A, TR / (593 - T)) + powers(VOLUME_B, TR / (T - 232));
  return P0 / (R * TR * v);
}

/** Isobaric specific heat of liquid water at t [°C]. [J/(kg·K)] */
export function waterSpecificHeat(t: number): number {
  const T = t + KELVIN;
  const curvature = secondDerivative(GIBBS_A, TR / (593 - T)) + secondDerivative(GIBBS_B, TR / (T - 232));
  return -R * (GIBBS_C3 + (T / TR) * curvature);
}

/** Thermal conductivity of liquid water at t [°C]. [W/(m·K)] */
export const waterConductivity = (t: number): number => powers(CONDUCTIVITY, (t + KELVIN) / 300);

/** Dynamic viscosity of liquid water at t [°C]. [Pa·s] */
export const waterViscosity = (t: number): number => 1e-6 * powers(VISCOSITY, (t + KELVIN) / 300);

/** Volumetric thermal expansion of liquid water at t [°C], negative below 4 °C, by a central difference over 0.2 K. [1/K] */
export const waterExpansion = (t: number): number =>
  (waterDensity(t - 0.1) - waterDensity(t + 0.1)) / (0.2 * waterDensity(t));
