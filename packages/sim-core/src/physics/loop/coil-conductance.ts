import type { CoilDesign, LoopFluid } from '../../design/design.ts';
import { requireNumber } from '../../input/errors.ts';
import { checkedFluid } from '../fluid/properties.ts';
import { coilReynolds, compileCoil, insideConductance, surfaceShare } from './coil.ts';

/** What {@link coilConductance} is asked. */
export interface CoilQuery {
  /** Tube, wall and scale. */
  readonly coil: CoilDesign;
  /** Fluid in the tube. */
  readonly fluid: LoopFluid;
  /** Glycol by mass, 0 to 0.6; 0 (the default) for water. [-] */
  readonly glycolMassFraction?: number;
  /** Through the tube, 0 or more. [m³/s] */
  readonly flow: number;
  /** Mean in the tube, from its freezing point to 140. [°C] */
  readonly fluidTemperature: number;
  /** Of the water around the coil, 0 to 140. [°C] */
  readonly tankTemperature: number;
}

/** Heat transfer of a coil. */
export interface CoilConductance {
  /** Of the whole coil, UA. [W/K] */
  readonly conductance: number;
  /** Re in the tube. [-] */
  readonly reynolds: number;
  /** Inside film, on the bore. [W/(m²·K)] */
  readonly insideCoefficient: number;
  /** Outside film, on the outer surface. [W/(m²·K)] */
  readonly outsideCoefficient: number;
  /** Outer surface of tube or scale. [°C] */
  readonly surfaceTemperature: number;
}

/**
 * Conductance of a coil in a tank, with its films.
 *
 *     1/UA = 1/(h_i A_i) + ln(d_o/d_i)/(2 π k L) + R_f/A_o + 1/(h_o A_o)
 *
 * Inside film: {@link coiledTubeNusselt}; outside: {@link horizontalCylinderNusselt} with water at the mean of surface and tank.
 * The surface temperature is found in Newton steps; with the tables of the fluids UA is within 0.5 % of the full iteration for differences up to
 * 40 K, within 1 % up to 105 K. Turns in each other's plume are left out.
 *
 * @throws {@link DesignError} for a value out of range.
 */
export function coilConductance(query: CoilQuery): CoilConductance {
  const { coil, fluid, glycolMassFraction = 0, flow, fluidTemperature, tankTemperature } = query;
  const compiled = checkedFluid(fluid, glycolMassFraction);
  requireNumber('coil.length', coil.length, 0.01, 1e4, 'm');
  requireNumber('coil.innerDiameter', coil.innerDiameter, 0.001, 0.3 * coil.windingDiameter, 'm');
  requireNumber('coil.outerDiameter', coil.outerDiameter, coil.innerDiameter, 1, 'm');
  requireNumber('coil.wallConductivity', coil.wallConductivity, 0.01, 1000, 'W/(m·K)');
  requireNumber('coil.fouling', coil.fouling, 0, 1, 'm²·K/W');
  requireNumber('flow', flow, 0, 1, 'm³/s');
  requireNumber('fluidTemperature', fluidTemperature, compiled.lowest, compiled.highest, '°C (liquid)');
  requireNumber('tankTemperature', tankTemperature, 0, 140, '°C');
  const c = compileCoil(coil, compiled);
  const inside = insideConductance(c, flow, fluidTemperature);
  const share = surfaceShare(c, inside, fluidTemperature, tankTemperature);
  const conductance = inside * (1 - share);
  return {
    conductance,
    reynolds: coilReynolds(c, flow, fluidTemperature),
    insideCoefficient: 1 / (1 / inside - c.wallResistance) / (Math.PI * coil.innerDiameter * coil.length),
    outsideCoefficient: conductance / share / (Math.PI * coil.outerDiameter * coil.length),
    surfaceTemperature: tankTemperature + share * (fluidTemperature - tankTemperature),
  };
}
