/** Conductance of the coil: inside film, wall, scale and outside film in series, docs/theory/loop.md. */
import type { SystemDesign } from '@noonloop/sim-core';
import {
  type CompiledFluid,
  coiledTubeNusselt,
  compileFluid,
  fluidConductivity,
  fluidDensity,
  fluidSpecificHeat,
  fluidViscosity,
  horizontalCylinderNusselt,
} from '@noonloop/sim-core/formulas';

const water = compileFluid('water', 0);

/** UA of the coil, its films at a fluid and a water temperature; the surface between them found by halving. [W/K] */
export function coilConductance(
  { coil }: SystemDesign,
  fluid: CompiledFluid,
  flow: number,
  t: number,
  beside: number,
): number {
  const held = Math.min(Math.max(t, fluid.lowest), fluid.highest);
  const viscosity = fluidViscosity(fluid, held);
  const conductivity = fluidConductivity(fluid, held);
  const prandtl = (viscosity * fluidSpecificHeat(fluid, held)) / conductivity;
  const reynolds = (4 * flow * fluidDensity(fluid, held)) / (Math.PI * coil.innerDiameter * viscosity);
  const nusselt = coiledTubeNusselt(reynolds, prandtl, coil.innerDiameter / coil.windingDiameter);
  const tube = Math.PI * coil.length;
  const inner =
    1 / (nusselt * conductivity * tube) +
    Math.log(coil.outerDiameter / coil.innerDiameter) / (2 * tube * coil.wallConductivity) +
    coil.fouling / (tube * coil.outerDiameter);
  const outer = (surface: number): number => {
    const film = Math.min(Math.max(0.5 * (surface + beside), 0), 140);
    const [rho, mu, cp, k] = [fluidDensity, fluidViscosity, fluidSpecificHeat, fluidConductivity].map((f) =>
      f(water, film),
    ) as [number, number, number, number];
    const warm = Math.max(film, 8);
    const expansion =
      (fluidDensity(water, warm - 0.05) - fluidDensity(water, warm + 0.05)) / (0.1 * fluidDensity(water, warm));
    const rayleigh =
      (9.80665 * expansion * rho * rho * cp * coil.outerDiameter ** 3 * Math.abs(surface - beside)) / (mu * k);
    return horizontalCylinderNusselt(rayleigh, (mu * cp) / k) * k * tube;
  };
  let [low, high] = [0, 1];
  for (let halving = 0; halving < 20; halving++) {
    const share = 0.5 * (low + high);
    // Of the whole difference, `share` lies between surface and tank.
    if (outer(beside + share * (t - beside)) * share < (1 - share) / inner) low = share;
    else high = share;
  }
  return (1 - low) / inner;
}
