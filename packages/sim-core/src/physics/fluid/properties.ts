import type { LoopFluid } from '../../design/design.ts';
import { DesignError, quote, requireNumber } from '../../input/errors.ts';
import { boilingPoint } from './boiling.ts';
import {
  type CompiledFluid,
  compileFluid,
  fluidConductivity,
  fluidDensity,
  fluidSpecificHeat,
  fluidViscosity,
} from './compile.ts';
import { MAXIMUM_MASS_FRACTION } from './melinder.ts';

/** What {@link fluidProperties} is asked. */
export interface FluidQuery {
  /** Kind of fluid. */
  readonly fluid: LoopFluid;
  /** Glycol by mass, 0 to 0.6; 0 (the default) for water. [-] */
  readonly glycolMassFraction?: number;
  /** Of the liquid, from its freezing point to 140. [°C] */
  readonly temperature: number;
  /** Absolute; where it is given, temperatures above the boiling point are refused. [Pa] */
  readonly absolutePressure?: number;
}

/** Properties of a liquid. */
export interface FluidProperties {
  /** [kg/m³] */
  readonly density: number;
  /** [J/(kg·K)] */
  readonly specificHeat: number;
  /** [W/(m·K)] */
  readonly conductivity: number;
  /** [Pa·s] */
  readonly dynamicViscosity: number;
  /** First ice crystals. [°C] */
  readonly freezingPoint: number;
  /** `extrapolated` above the source's range: 110 °C for water, 100 °C for glycols. */
  readonly range: 'valid' | 'extrapolated';
}

/**
 * Compiles a fluid after checking its name and mass fraction.
 *
 * @throws {@link DesignError} for an unknown fluid, a mass fraction outside 0 to 0.6, or glycol asked of water.
 */
export function checkedFluid(fluid: LoopFluid, glycolMassFraction: number): CompiledFluid {
  if (fluid !== 'water' && fluid !== 'propylene-glycol' && fluid !== 'ethylene-glycol') {
    throw new DesignError([
      {
        path: 'fluid',
        found: quote(fluid),
        expected: '"water", "propylene-glycol" or "ethylene-glycol"',
        remedy: 'Choose one of the three.',
      },
    ]);
  }
  requireNumber('glycolMassFraction', glycolMassFraction, 0, fluid === 'water' ? 0 : MAXIMUM_MASS_FRACTION, '');
  return compileFluid(fluid, glycolMassFraction);
}

/**
 * Density, specific heat, conductivity, viscosity and freezing point of water or a glycol mixture.
 *
 * Water at 0.1 MPa; the effect of pressure (0.009 % of density at 0.3 MPa) is left out. Above the source's range, up to 140 °C,
 * values are extrapolated and say so. At mass fraction 0 the glycol polynomials are not exactly water (conductivity +1 %,
 * viscosity −0.8 to +1.4 %).
 *
 * @throws {@link DesignError} when the fluid is unknown, frozen, above 140 °C or above its boiling point.
 * @see IAPWS SR6-08 (2011), water; Melinder, Properties of Secondary Working Fluids for Indirect Systems, IIR 2010, glycols.
 * @example
 * fluidProperties({ fluid: 'water', temperature: 20 }).density; // 998.2 kg/m³
 */
export function fluidProperties(query: FluidQuery): FluidProperties {
  const { fluid, glycolMassFraction = 0, temperature, absolutePressure } = query;
  const c = checkedFluid(fluid, glycolMassFraction);
  requireNumber('temperature', temperature, c.lowest, c.highest, '°C (liquid)');
  if (absolutePressure !== undefined) {
    const boiling = boilingPoint(fluid, glycolMassFraction, absolutePressure);
    requireNumber('temperature', temperature, c.lowest, Math.min(boiling, c.highest), '°C (liquid at this pressure)');
  }
  return {
    density: fluidDensity(c, temperature),
    specificHeat: fluidSpecificHeat(c, temperature),
    conductivity: fluidConductivity(c, temperature),
    dynamicViscosity: fluidViscosity(c, temperature),
    freezingPoint: c.freezingPoint,
    range: temperature > c.validTo ? 'extrapolated' : 'valid',
  };
}
