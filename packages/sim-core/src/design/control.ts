/**
 * Who lets the pump run where there is power for it: `power`, nobody else; `difference`, a controller that compares collector and tank;
 * `schedule`, a clock.
 */
export type ControlMode = 'power' | 'difference' | 'schedule';

/** Where the collector's sensor sits: in the absorber's outlet end, or clamped on the outlet pipe. */
export type CollectorSensor = 'absorber' | 'pipe';

/** Controller by temperature difference. */
export interface DifferenceControlDesign {
  /** Collector over tank at which the pump starts. [K] */
  readonly start: number;
  /** Collector over tank at which it stops. [K] */
  readonly stop: number;
  /** Place of the collector's sensor. */
  readonly collectorSensor: CollectorSensor;
  /** Share of the absorber's excess over the pipe that reaches a sensor on the pipe while the fluid stands. [-] */
  readonly pipeSensorContact: number;
  /** Place of the tank's sensor as a share of the tank's height. [-] */
  readonly tankSensorHeight: number;
  /** Once started, the pump runs at least so long, high limit and outages excepted. [s] */
  readonly minimumRunTime: number;
}

/** Days on which something fails. */
export interface OutageDesign {
  /** First day, `MM-DD`. */
  readonly from: string;
  /** Last day, `MM-DD`; before {@link from} it lies in the next year. */
  readonly to: string;
  /**
   * `pump`: the pump does not turn. `power`: a mains blackout; it stops a pump on the mains and every heater that needs
   * electricity. A pump on its own module, its controller with it (judgement), does not feel it.
   */
  readonly kind: 'pump' | 'power';
}

/** Nights on which the pump runs to cool a hot tank through the collectors. */
export interface NightCoolingDesign {
  /** Top of the tank at which it starts, in the dark and with collectors colder than the tank. [°C] */
  readonly above: number;
  /** Top of the tank at which it stops. [°C] */
  readonly until: number;
}

/** What lets the pump run, and what stops it while there is power for it. */
export interface ControlDesign {
  /** Who lets it run. */
  readonly mode: ControlMode;
  /** Controller by temperature difference; used where the mode is `difference`. */
  readonly difference: DifferenceControlDesign;
  /** Spans of whole hours of the day, from and to, standard time; used where the mode is `schedule`. */
  readonly schedule: readonly (readonly [number, number])[];
  /** Cooling at night by a pump on the mains, against a tank that would boil in the holidays; `null`: none. */
  readonly nightCooling: NightCoolingDesign | null;
  /** Failures to play through. */
  readonly outages: readonly OutageDesign[];
  /** Tank top temperature at which the pump is cut off; `null` for none. [°C] */
  readonly highLimit: number | null;
  /** Fall of the tank top below the limit before the pump may run again. [K] */
  readonly highLimitHysteresis: number;
  /** Absorber temperature above which standstill in sun is called stagnation; `null`: boiling point, at most 120 °C. [°C] */
  readonly stagnationLimit: number | null;
}
