import type { LoopFluid } from '../../design/design.ts';
import { fitPolynomial } from './fit.ts';
import { type CoefficientRows, GLYCOLS, polynomial } from './melinder.ts';
import { KELVIN, waterConductivity, waterDensity, waterSpecificHeat, waterViscosity } from './water.ts';

/** Highest temperature for which properties are computed; above it they are held. [°C] */
export const HIGHEST_TEMPERATURE = 140;

/** Degree of the polynomials that stand for the water correlations between 0 and 140 °C; they differ by less than 1e-5. */
const WATER_DEGREE = 9;

/**
 * A fluid with its mass fraction worked in: four polynomials in u = (t − origin) · scale, lowest power first. Below
 * {@link lowest} and above {@link highest} the properties are held at those ends.
 */
export interface CompiledFluid {
  /** Kind of fluid. */
  readonly fluid: LoopFluid;
  /** Glycol by mass; 0 for water. [-] */
  readonly glycolMassFraction: number;
  /** First ice crystals. [°C] */
  readonly freezingPoint: number;
  /** Lower end: the freezing point. [°C] */
  readonly lowest: number;
  /** Upper end. [°C] */
  readonly highest: number;
  /** Upper end of the source's own range; above it the properties are extrapolated. [°C] */
  readonly validTo: number;
  /** Temperature at which u is 0. [°C] */
  readonly origin: number;
  /** u per kelvin. [1/K] */
  readonly scale: number;
  /** Of the density in kg/m³. */
  readonly density: Float64Array;
  /** Of the specific heat in J/(kg·K). */
  readonly specificHeat: Float64Array;
  /** Of the conductivity in W/(m·K). */
  readonly conductivity: Float64Array;
  /** Of the natural logarithm of the viscosity in Pa·s. */
  readonly logViscosity: Float64Array;
}

/** Adds up the powers of the mass fraction, so that only those of the temperature are left. */
const collapse = (rows: CoefficientRows, dx: number): Float64Array =>
  Float64Array.from(rows, (row) => polynomial(row, dx));

/**
 * Works the mass fraction into the fluid's polynomials, once a run. Does not check its input; {@link fluidProperties} does.
 *
 * @param fluid - Water (IAPWS SR6-08) or a glycol (Melinder 2010).
 * @param glycolMassFraction - Glycol by mass, 0 to 0.6; taken as 0 for water. [-]
 */
export function compileFluid(fluid: LoopFluid, glycolMassFraction: number): CompiledFluid {
  const highest = HIGHEST_TEMPERATURE;
  if (fluid === 'water') {
    water ??= compileWater();
    return water;
  }
  const glycol = GLYCOLS[fluid];
  const dx = glycolMassFraction - glycol.fractionBase;
  const freezingPoint = polynomial(glycol.freezingPoint, dx) - KELVIN;
  const logViscosity = collapse(glycol.logViscosity, dx);
  logViscosity[0] = logViscosity[0]! + Math.log(1e-3); // mPa·s to Pa·s
  return {
    fluid,
    glycolMassFraction,
    freezingPoint,
    lowest: freezingPoint,
    highest,
    validTo: 100,
    origin: glycol.temperatureBase,
    scale: 1,
    density: collapse(glycol.density, dx),
    specificHeat: collapse(glycol.specificHeat, dx),
    conductivity: collapse(glycol.conductivity, dx),
    logViscosity,
  };
}

let water: CompiledFluid | undefined;
/** Fitted once: water has no mass fraction. */
function compileWater(): CompiledFluid {
  const highest = HIGHEST_TEMPERATURE;
  const fit = (f: (t: number) => number) => fitPolynomial(f, highest, WATER_DEGREE);
  return {
    fluid: 'water',
    glycolMassFraction: 0,
    freezingPoint: 0,
    lowest: 0,
    highest,
    validTo: 110,
    origin: highest / 2,
    scale: 2 / highest,
    density: fit(waterDensity),
    specificHeat: fit(waterSpecificHeat),
    conductivity: fit(waterConductivity),
    logViscosity: fit((t) => Math.log(waterViscosity(t))),
  };
}

function evaluate(c: CompiledFluid, coefficients: Float64Array, t: number): number {
  const { highest, lowest } = c;
  const u = ((t < lowest ? lowest : t > highest ? highest : t) - c.origin) * c.scale;
  // A glycol's four coefficients without a loop, which asks anew in each turn what kind of array it has.
  if (coefficients.length === 4) {
    return ((coefficients[3]! * u + coefficients[2]!) * u + coefficients[1]!) * u + coefficients[0]!;
  }
  let sum = 0; // Horner on typed arrays alone: shared with plain lists it is nearly twice as slow
  for (let power = coefficients.length - 1; power >= 0; power--) sum = sum * u + coefficients[power]!;
  return sum;
}

/** Density at t [°C]. [kg/m³] */
export const fluidDensity = (c: CompiledFluid, t: number): number => evaluate(c, c.density, t);

/**
 * Mass of liquid in parts of a loop, Σ V_i ρ(t_i). Allocates nothing.
 *
 * @param temperature - Of each part. Shape [parts]. [°C]
 * @param volume - Of each part. Shape [parts]. [m³]
 * @returns [kg]
 */
export function liquidMass(c: CompiledFluid, temperature: Float64Array, volume: Float64Array): number {
  const { density, highest, lowest, origin, scale } = c;
  let sum = 0;
  if (density.length !== 4) {
    for (let part = 0; part < temperature.length; part++) sum += volume[part]! * fluidDensity(c, temperature[part]!);
    return sum;
  }
  // As in `evaluate`, with the coefficients looked up once.
  const c0 = density[0]!;
  const c1 = density[1]!;
  const c2 = density[2]!;
  const c3 = density[3]!;
  for (let part = 0; part < temperature.length; part++) {
    const t = temperature[part]!;
    const u = ((t < lowest ? lowest : t > highest ? highest : t) - origin) * scale;
    sum += volume[part]! * (((c3 * u + c2) * u + c1) * u + c0);
  }
  return sum;
}

/** Specific heat at t [°C]. [J/(kg·K)] */
export const fluidSpecificHeat = (c: CompiledFluid, t: number): number => evaluate(c, c.specificHeat, t);

/** Conductivity at t [°C]. [W/(m·K)] */
export const fluidConductivity = (c: CompiledFluid, t: number): number => evaluate(c, c.conductivity, t);

/** Dynamic viscosity at t [°C]. [Pa·s] */
export const fluidViscosity = (c: CompiledFluid, t: number): number => Math.exp(evaluate(c, c.logViscosity, t));
