/** Fluid, pipes and pressure of the collector loop, and the coil in the tank; part of a {@link SystemDesign}. */

/** Kind of fluid in the collector loop. */
export type LoopFluid = 'water' | 'propylene-glycol' | 'ethylene-glycol';

/** What hands the loop's heat to the tank: a coil in it, or a plate exchanger beside it with a pump of its own. */
export type LoopExchanger = 'coil' | 'plate';

/** Plate exchanger beside the tank, in counterflow; its second pump runs with the loop's. */
export interface PlateDesign {
  /** UA; from a rated point by `plateConductance`. [W/K] */
  readonly conductance: number;
  /** Tank water through it, taken from the tank's bottom. [m³/s] */
  readonly secondaryFlow: number;
  /** Where the warmed water returns, as a share of the tank's height. [-] */
  readonly returnHeight: number;
  /** Pressure drop of the loop's side with water at 20 °C and {@link ratedFlow}, turbulent. [Pa] */
  readonly ratedPressureDrop: number;
  /** Flow of the loop's side at {@link ratedPressureDrop}. [m³/s] */
  readonly ratedFlow: number;
}

/**
 * What becomes of the fluid when the pump stops: `closed`, it stays under pressure; `drain-back`, collectors and outdoor pipes empty into a vessel indoors;
 * `direct`, there is no loop of its own: the tank's water runs through the collectors, and stays in them.
 */
export type LoopLayout = 'closed' | 'drain-back' | 'direct';

/** Vessel into which collectors drain, indoors in the hot pipe before the tank. */
export interface DrainBackDesign {
  /** Water in it when all has drained. [m³] */
  readonly vesselVolume: number;
  /** Its heat loss per kelvin over the tank's room. [W/K] */
  readonly vesselLoss: number;
  /** Top of the collectors over the vessel's level when all has drained: what the pump must lift at every start. [m] */
  readonly lift: number;
  /** Whether the return runs full once the collectors are: then the falling water's weight takes the lift away. */
  readonly siphon: boolean;
  /** Share of the collectors' water that hangs on in low spots. [-] */
  readonly shareStaying: number;
}

/** Fluid and pipes between roof and tank. Gauge, expansion vessel, relief valve and pump stand at one height, near the tank. */
export interface LoopDesign {
  /** Kind of fluid. */
  readonly fluid: LoopFluid;
  /** Glycol by mass when filled, 0 to 0.6. [-] */
  readonly glycolMassFraction: number;
  /** Top of the collectors above the gauge. [m] */
  readonly staticHeight: number;
  /** Temperature at which the loop is filled. [°C] */
  readonly fillTemperature: number;
  /** Gauge pressure at the collectors when filled; from it the boiling point follows through the year. [Pa] */
  readonly pressure: number;
  /** Pressure at the gauge when filled: {@link pressure} and the column of liquid up to the collectors. [Pa] */
  readonly fillPressure: number;
  /** Volume of the expansion vessel. [m³] */
  readonly vesselVolume: number;
  /** Gauge pressure of the empty vessel's gas. [Pa] */
  readonly vesselPrecharge: number;
  /** Gauge pressure at which the loop's relief valve opens. [Pa] */
  readonly reliefPressure: number;
  /** Gauge pressure at the collectors below which air and vapour gather there and nothing circulates. [Pa] */
  readonly minimumPressure: number;
  /** Liquid that seeps out for as long as the gauge shows pressure. [m³/s] */
  readonly leak: number;
  /** Whether mains water replaces by itself what the loop loses, what its relief valve lets out once it is below its fill pressure again. */
  readonly makeUp: boolean;
  /** What becomes of the fluid when the pump stops. Pressure, vessel and steam are of a closed loop only. */
  readonly layout: LoopLayout;
  /** Vessel and lift; used where the layout is `drain-back`. */
  readonly drainBack: DrainBackDesign;
  /**
   * Collectors or outdoor pipes under this let their water run to waste, until they are warm again; used where the layout is `direct`. `null`: they never do. [°C]
   */
  readonly drainBelow: number | null;
  /** What hands the heat to the tank; with the layout `direct` it is `plate`, and only its return height counts. */
  readonly exchanger: LoopExchanger;
  /** Plate exchanger; used where {@link exchanger} is `plate`. */
  readonly plate: PlateDesign;
  /** Whether a check valve keeps the fluid from running by its own buoyancy. */
  readonly checkValve: boolean;
  /** Fluid temperature above which the glycol ages fast. [°C] */
  readonly fluidLimit: number;
  /** Pipe from tank to roof and back, both ways added. [m] */
  readonly pipeLength: number;
  /** Bore. [m] */
  readonly pipeInnerDiameter: number;
  /** Outside of the bare pipe. [m] */
  readonly pipeOuterDiameter: number;
  /** Insulation on the pipe. [m] */
  readonly insulationThickness: number;
  /** Conductivity of the insulation. [W/(m·K)] */
  readonly insulationConductivity: number;
  /** Loss of the pipe with brackets, valves and gaps over that of its insulated length alone. [-] */
  readonly heatBridgeFactor: number;
  /** Heat that steam carries out of the standing array into the pipes, for each m² of collector. [W/m²] */
  readonly steamPower: number;
  /** Share of the pipe that is out of doors; the rest is in the tank's room. [-] */
  readonly outdoorShare: number;
  /** Sum of the loss coefficients of fittings and valves. [-] */
  readonly fittingLoss: number;
}

/** Coil in the tank. */
export interface CoilDesign {
  /** Length of tube. [m] */
  readonly length: number;
  /** Bore. [m] */
  readonly innerDiameter: number;
  /** Outside of the tube. [m] */
  readonly outerDiameter: number;
  /** Conductivity of the tube's wall. [W/(m·K)] */
  readonly wallConductivity: number;
  /** Resistance of scale, on the outside area. [m²·K/W] */
  readonly fouling: number;
  /** Mean diameter of the winding. [m] */
  readonly windingDiameter: number;
  /** Lower end as a share of the tank's height. [-] */
  readonly bottom: number;
  /** Upper end as a share of the tank's height. [-] */
  readonly top: number;
}
