/** Where a PV module and what hangs on it meet. */
import { DesignError, quote, requireNumber } from '../../input/errors.ts';
import { type PvConditions, type PvModuleParameters, requirePvConditions, translateModule } from './module.ts';
import { diodeCurrent, diodeVoltageAtMaximumPower, diodeVoltageOnLoad, SERIES_RESISTANCE } from './single-diode.ts';

/** What hangs on the module. */
export type PvLoad = MaximumPowerLoad | ResistanceLoad | MotorLoad | VoltageLoad;

/** A booster that holds the module at its maximum power. */
export interface MaximumPowerLoad {
  /** Says that it is this load. */
  readonly kind: 'maximum-power';
}

/** A resistor. */
export interface ResistanceLoad {
  /** Says that it is this load. */
  readonly kind: 'resistance';
  /** ≥ 0; 0 is a short circuit. [Ω] */
  readonly resistance: number;
}

/** A DC motor with permanent magnets, at one speed. */
export interface MotorLoad {
  /** Says that it is this load. */
  readonly kind: 'motor';
  /** Voltage that the turning motor makes, in proportion to its speed. [V] */
  readonly backEmf: number;
  /** Of the winding and leads. [Ω] */
  readonly resistance: number;
}

/** Something that holds the terminals at one voltage, such as a battery. */
export interface VoltageLoad {
  /** Says that it is this load. */
  readonly kind: 'voltage';
  /** At the terminals. [V] */
  readonly voltage: number;
}

/** Voltage and current at the terminals. */
export interface PvOperatingPoint {
  /** At the terminals. [V] */
  readonly voltage: number;
  /** Out of the module; negative when a motor or battery drives it past open circuit. [A] */
  readonly current: number;
  /** Voltage times current. [W] */
  readonly power: number;
}

/**
 * Operating point of a module on a load: where the current–voltage curve of the module meets that of the load.
 *
 * A motor is its back-EMF E behind its winding, I = (V − E)/R: it stands for one speed; start and speed are the pump's.
 *
 * @param module - Parameters at 1000 W/m² and 25 °C, from a data sheet by `moduleParameters`.
 * @param conditions - Irradiance on the module and its cell temperature.
 * @param load - What hangs on it.
 * @returns Terminal voltage, current and power.
 * @throws {@link DesignError} when a condition or a number of the load is outside its range.
 * @see De Soto, Klein & Beckman (2006), Solar Energy 80(1) 78.
 */
export function pvOperatingPoint(module: PvModuleParameters, conditions: PvConditions, load: PvLoad): PvOperatingPoint {
  requirePvConditions(conditions);
  requireLoad(load);
  const p = new Float64Array(5);
  translateModule(module, conditions.irradiance, conditions.cellTemperature, p);
  const diodeVoltage = diodeVoltageAtLoad(p, load);
  const current = diodeCurrent(p, diodeVoltage);
  const voltage = load.kind === 'voltage' ? load.voltage : diodeVoltage - current * p[SERIES_RESISTANCE]!;
  return { voltage, current, power: voltage * current };
}

function diodeVoltageAtLoad(p: Float64Array, load: PvLoad): number {
  switch (load.kind) {
    case 'maximum-power':
      return diodeVoltageAtMaximumPower(p);
    case 'resistance':
      return diodeVoltageOnLoad(p, 0, load.resistance);
    case 'motor':
      return diodeVoltageOnLoad(p, load.backEmf, load.resistance);
    case 'voltage':
      return diodeVoltageOnLoad(p, load.voltage, 0);
  }
}

function requireLoad(load: PvLoad): void {
  switch (load.kind) {
    case 'maximum-power':
      return;
    case 'resistance':
      requireNumber('load.resistance', load.resistance, 0, 1e9, 'Ω');
      return;
    case 'motor':
      requireNumber('load.backEmf', load.backEmf, 0, 1000, 'V');
      requireNumber('load.resistance', load.resistance, 0, 1e9, 'Ω');
      return;
    case 'voltage':
      requireNumber('load.voltage', load.voltage, 0, 1000, 'V');
      return;
    default:
      throw new DesignError([
        {
          path: 'load.kind',
          found: quote((load as { kind: unknown }).kind),
          expected: '"maximum-power", "resistance", "motor" or "voltage"',
          remedy: 'Choose one of these.',
        },
      ]);
  }
}
