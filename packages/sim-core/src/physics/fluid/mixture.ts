import type { LoopFluid } from '../../design/design.ts';
import { requireNumber } from '../../input/errors.ts';
import { compileFluid, fluidDensity } from './compile.ts';
import { GLYCOLS, type Glycol, MAXIMUM_MASS_FRACTION, polynomial } from './melinder.ts';
import { KELVIN, waterDensity } from './water.ts';

/** At which the volumes of a mixing recipe are meant. [°C] */
const MIXING_TEMPERATURE = 20;

const pureDensities = (glycol: Glycol): [glycol: number, water: number] => [
  GLYCOLS[glycol].pureDensity,
  waterDensity(MIXING_TEMPERATURE),
];

/**
 * Mass fraction of a mixture from the volumes that go into it at 20 °C.
 *
 *     x = v ρ_g / (v ρ_g + (1 − v) ρ_w)
 *
 * @param glycol - Kind of glycol.
 * @param volumeFraction - Glycol over glycol and water, each measured before mixing, 0 to 1. [-]
 * @returns Glycol by mass. [-]
 * @throws {@link DesignError} outside 0 to 1.
 */
export function glycolMassFromVolume(glycol: Glycol, volumeFraction: number): number {
  requireNumber('volumeFraction', volumeFraction, 0, 1, '');
  const [rhoG, rhoW] = pureDensities(glycol);
  return (volumeFraction * rhoG) / (volumeFraction * rhoG + (1 - volumeFraction) * rhoW);
}

/**
 * Volumes before mixing that make a mass fraction: the inverse of {@link glycolMassFromVolume}.
 *
 * @param glycol - Kind of glycol.
 * @param massFraction - Glycol by mass, 0 to 1. [-]
 * @returns Glycol over glycol and water, each measured before mixing at 20 °C. [-]
 * @throws {@link DesignError} outside 0 to 1.
 */
export function glycolVolumeFromMass(glycol: Glycol, massFraction: number): number {
  requireNumber('massFraction', massFraction, 0, 1, '');
  const [rhoG, rhoW] = pureDensities(glycol);
  return massFraction / rhoG / (massFraction / rhoG + (1 - massFraction) / rhoW);
}

/**
 * The other meaning of "volume per cent": pure glycol over the volume of the finished mixture at 20 °C, v = x ρ_mix/ρ_g. Mixing
 * contracts, so it is up to 1.2 points above the share before mixing (propylene glycol).
 *
 * @param glycol - Kind of glycol.
 * @param massFraction - Glycol by mass, 0 to 0.6. [-]
 * @returns [-]
 * @throws {@link DesignError} outside 0 to 0.6.
 */
export function glycolVolumeOfMixture(glycol: Glycol, massFraction: number): number {
  requireNumber('massFraction', massFraction, 0, MAXIMUM_MASS_FRACTION, '');
  return (
    (massFraction * fluidDensity(compileFluid(glycol, massFraction), MIXING_TEMPERATURE)) / GLYCOLS[glycol].pureDensity
  );
}

/**
 * Least share of glycol whose first ice crystals form no warmer than a temperature.
 *
 * @param glycol - Kind of glycol.
 * @param freezingPoint - From that of the strongest mixture (x = 0.6) to that of the weakest (x = 0, about −0.03 °C). [°C]
 * @returns Glycol by mass. [-]
 * @throws {@link DesignError} for a temperature that no mixture of the source reaches.
 */
export function glycolMassForFreezing(glycol: Glycol, freezingPoint: number): number {
  const freezing = (x: number): number => compileFluid(glycol, x).freezingPoint;
  requireNumber('freezingPoint', freezingPoint, freezing(MAXIMUM_MASS_FRACTION), freezing(0), '°C');
  let low = 0;
  let high = MAXIMUM_MASS_FRACTION;
  while (high - low > 1e-9) {
    const middle = (low + high) / 2;
    if (freezing(middle) > freezingPoint) low = middle;
    else high = middle;
  }
  return high;
}

/** Freezing point of a mixture, without compiling it; 0 for water. Allocates nothing. @param x - Glycol by mass. [-] @returns [°C] */
export function freezingPointOf(fluid: LoopFluid, x: number): number {
  if (fluid === 'water') return 0;
  const { freezingPoint, fractionBase } = GLYCOLS[fluid];
  return polynomial(freezingPoint, x - fractionBase) - KELVIN;
}

/** Density of a mixture, without compiling it. Allocates nothing. @param x - Glycol by mass. [-] @param t - [°C] @returns [kg/m³] */
export function mixtureDensity(fluid: LoopFluid, x: number, t: number): number {
  if (fluid === 'water') return waterDensity(t);
  const { density, fractionBase, temperatureBase } = GLYCOLS[fluid];
  let sum = 0;
  for (let power = density.length - 1; power >= 0; power--)
    sum = sum * (t - temperatureBase) + polynomial(density[power]!, x - fractionBase);
  return sum;
}
