/** One measured point of a PV module. */
export interface PvPointDesign {
  /** At the terminals. [V] */
  readonly voltage: number;
  /** Out of the module. [A] */
  readonly current: number;
}

/** The PV module that drives the pump, by its data sheet at 1000 W/m² and 25 °C. */
export interface PvModuleDesign {
  /** Name for reports. */
  readonly name: string;
  /** Short-circuit current. [A] */
  readonly shortCircuitCurrent: number;
  /** Open-circuit voltage. [V] */
  readonly openCircuitVoltage: number;
  /** Current at maximum power. [A] */
  readonly maximumPowerCurrent: number;
  /** Voltage at maximum power. [V] */
  readonly maximumPowerVoltage: number;
  /** Change of short-circuit current with cell temperature. [A/K] */
  readonly currentTemperatureCoefficient: number;
  /** Change of open-circuit voltage with cell temperature, negative. [V/K] */
  readonly voltageTemperatureCoefficient: number;
  /** Cells in series. */
  readonly cells: number;
  /** Nominal operating cell temperature. [°C] */
  readonly nominalOperatingCellTemperature: number;
  /**
   * Current over voltage as measured at 1000 W/m² and 25 °C, from near short circuit to near open circuit: in place of the four currents and voltages
   * above, which then follow. `null`: the plate has them.
   */
  readonly ivPoints: readonly PvPointDesign[] | null;
  /** Area on which its light falls; `null`: not known, cells are taken as warm as if no power left them. [m²] */
  readonly area: number | null;
}

/** PV modules and where they look. */
export interface PvDesign {
  /** Equal modules, or strings of them, in parallel. */
  readonly modules: number;
  /** Modules of a string, one after the other: a directly driven pump of 24 V may want two of 12. */
  readonly inSeries: number;
  /** From the horizontal, 0 to 90. [°] */
  readonly tilt: number;
  /** Clockwise from north. [°] */
  readonly azimuth: number;
  /** One module. */
  readonly module: PvModuleDesign;
}

/**
 * What turns the pump: `booster`, the module's maximum power through a current booster; `direct`, the module's own current and
 * voltage on a DC motor; `mains`, full speed whenever the controller asks.
 */
export type PumpDrive = 'booster' | 'direct' | 'mains';

/** DC motor with permanent magnets of a directly driven pump. Its rated point is open flow: rated current = open-flow power/voltage. */
export interface MotorDesign {
  /** Voltage at which the pump reaches rated speed at open flow. [V] */
  readonly ratedVoltage: number;
  /** Of winding and leads. [Ω] */
  readonly windingResistance: number;
  /** Current that the friction of bearings and brushes takes from a turning rotor; below it the pump stops. [A] */
  readonly frictionCurrent: number;
  /** Current that breaks a standing rotor away. [A] */
  readonly startCurrent: number;
}

/** One measured point of a pump. */
export interface PumpPointDesign {
  /** [m³/s] */
  readonly flow: number;
  /** Of the liquid pumped. [m] */
  readonly head: number;
  /** Electrical. [W] */
  readonly power: number;
}

/** A pump measured at one voltage. */
export interface PumpCurveDesign {
  /** At the pump's terminals. [V] */
  readonly voltage: number;
  /** From the least flow to the most; heads fall. */
  readonly points: readonly PumpPointDesign[];
}

/** Pump of the collector loop and what drives it. */
export interface PumpDesign {
  /** What turns it. */
  readonly drive: PumpDrive;
  /** Motor; used where the drive is `direct`. */
  readonly motor: MotorDesign;
  /** Share of the module's maximum power that the booster passes to the pump. [-] */
  readonly boosterEfficiency: number;
  /** Electrical power needed to break the pump away from standstill. [W] */
  readonly startPower: number;
  /** Electrical power below which a running pump stops. [W] */
  readonly stopPower: number;
  /** Head at rated speed with no flow. [m] */
  readonly shutOffHead: number;
  /** Flow at rated speed with no head. [m³/s] */
  readonly openFlow: number;
  /** Electrical power at rated speed with no flow. [W] */
  readonly shutOffPower: number;
  /** Electrical power at rated speed and open flow. [W] */
  readonly openFlowPower: number;
  /**
   * The pump as measured, by rising voltage: in place of heads, flow and powers above, which then are those of the highest voltage. The pump follows a
   * booster up to that voltage. `null`: the four numbers have to do.
   */
  readonly curves: readonly PumpCurveDesign[] | null;
  /** Voltage from which a measured pump turns on the module alone; used with {@link curves} where the drive is `direct`. [V] */
  readonly startVoltage: number;
}
