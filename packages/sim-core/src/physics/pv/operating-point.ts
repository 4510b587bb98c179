/** Where a PV module and what hangs on it meet. */
import { DesignError, quote, requireNumber } from '../../input/errors.ts';
import { cubicAt, monotoneCubic, requirePoints } from '../monotone-cubic.ts';
import { risingRoot } from '../root.ts';
import { type PvConditions, type PvModuleParameters, requirePvConditions, translateModule } from './module.ts';
import {
  diodeCurrent,
  diodeVoltageAtMaximumPower,
  diodeVoltageOnLoad,
  openCircuitVoltage,
  SERIES_RESISTANCE,
} from './single-diode.ts';

/** What hangs on the module. */
export type PvLoad = MaximumPowerLoad | ResistanceLoad | MotorLoad | VoltageLoad | OpenLoad | MeasuredLoad;

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

/** Nothing: the terminals are open. */
export interface OpenLoad {
  /** Says that it is this load. */
  readonly kind: 'open';
}

/** Something measured at a few voltages, such as a pump on its pipes; `throughPoints` lies between them. */
export interface MeasuredLoad {
  /** Says that it is this load. */
  readonly kind: 'measured';
  /** Rising, the first that at which it starts to run; at least two. [V] */
  readonly voltages: readonly number[];
  /** At each of them, not falling. [A] */
  readonly currents: readonly number[];
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
 * A motor is its back-EMF E behind its winding, I = (V − E)/R: it stands for one speed; start and speed are the pump's. A measured load that the
 * module cannot bring to its first point takes nothing: the module is at open circuit.
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
  if (load.kind === 'measured') return onMeasured(p, load);
  const diodeVoltage = diodeVoltageAtLoad(p, load);
  const current = load.kind === 'open' ? 0 : diodeCurrent(p, diodeVoltage);
  const voltage = load.kind === 'voltage' ? load.voltage : diodeVoltage - current * p[SERIES_RESISTANCE]!;
  return { voltage, current, power: voltage * current };
}

/** @throws DesignError where the module takes the load beyond its last point. */
function onMeasured(p: Float64Array, { currents, voltages }: MeasuredLoad): PvOperatingPoint {
  const offered = (voltage: number): number => diodeCurrent(p, diodeVoltageOnLoad(p, voltage, 0));
  const curve = monotoneCubic(voltages, currents);
  const first = voltages[0]!;
  const last = voltages[voltages.length - 1]!;
  if (offered(first) < currents[0]!) return { voltage: openCircuitVoltage(p), current: 0, power: 0 };
  if (offered(last) > currents[currents.length - 1]!) {
    const found = `${last} V, at which the module gives ${offered(last).toPrecision(3)} A`;
    const expected = 'a last point at which the load takes what the module gives, or more';
    throw new DesignError([{ path: 'load.voltages', found, expected, remedy: 'Measure at higher voltages.' }]);
  }
  const voltage = risingRoot((at) => cubicAt(curve, at) - offered(at), first, last, 1e-13 * last);
  const current = offered(voltage);
  return { voltage, current, power: voltage * current };
}

function diodeVoltageAtLoad(p: Float64Array, load: Exclude<PvLoad, MeasuredLoad>): number {
  switch (load.kind) {
    case 'open':
      return openCircuitVoltage(p);
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
    case 'open':
      return;
    case 'measured':
      requirePoints('load.voltages', load.voltages, load.currents, 1000);
      load.currents.forEach((current, at) => {
        requireNumber(`load.currents[${at}]`, current, at === 0 ? 0 : load.currents[at - 1]!, 1000, 'A');
      });
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
          expected: '"maximum-power", "resistance", "motor", "voltage", "open" or "measured"',
          remedy: 'Choose one of these.',
        },
      ]);
  }
}
