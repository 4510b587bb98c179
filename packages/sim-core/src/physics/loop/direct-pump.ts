/** A pump whose DC motor hangs on the module itself. */
import { requireNumber } from '../../input/errors.ts';
import { compileFluid, fluidDensity, fluidViscosity } from '../fluid/compile.ts';
import { type PvModuleParameters, requirePvConditions, translateModule } from '../pv/module.ts';
import { diodeCurrent, diodeVoltageOnLoad, openCircuitVoltage } from '../pv/single-diode.ts';
import { risingRoot } from '../root.ts';
import { type CompiledHydraulics, compileHydraulics, type HydraulicParts, loopHead } from './hydraulics.ts';
import { type CompiledMotor, compileMotor, motorCurrent } from './motor.ts';
import { GRAVITY, pumpSpeed } from './pump.ts';

/** Light, warmth of cells and fluid for {@link directPumpPoint}. */
export interface DirectPumpConditions {
  /** On the module, 0 to 2000. [W/m²] */
  readonly irradiance: number;
  /** Of the cells, −60 to 150. [°C] */
  readonly cellTemperature: number;
  /** Mean of the loop. [°C] */
  readonly fluidTemperature: number;
  /** Equal modules in parallel, 1 by default. */
  readonly modules?: number;
}

/** Where module, motor, pump and loop meet. */
export interface DirectPumpPoint {
  /** At the module and the motor. [V] */
  readonly voltage: number;
  /** Of all modules together. [A] */
  readonly current: number;
  /** Current of the standing rotor in this light; it breaks away from `pump.motor.startCurrent` on. [A] */
  readonly standstillCurrent: number;
  /** Speed over rated speed; may be above 1, for nothing limits it but the module. [-] */
  readonly speed: number;
  /** [m³/s] */
  readonly flow: number;
  /** Of the liquid pumped. [m] */
  readonly head: number;
  /** Voltage times current. [W] */
  readonly electricalPower: number;
  /** What the shaft gives the pump: electrical power less winding heat and friction. [W] */
  readonly shaftPower: number;
  /** ρ g Q H. [W] */
  readonly hydraulicPower: number;
}

/**
 * The point at which a pump runs directly on its module, once turning.
 *
 * The current through the motor is set by its torque, k I = T_friction + T_pump(ω, Q); its voltage is back-EMF and winding,
 * V = k ω + R I; the module gives this current at this voltage in one light only. Flow, and with it all else, is the root.
 * Where the light cannot even carry the friction, the rotor stands and nothing flows.
 *
 * @param parts - The loop; `pump.motor` is used, `pump.boosterEfficiency` and the booster's thresholds are not.
 * @param module - From `moduleParameters`.
 * @param conditions - Light and temperatures.
 * @throws {@link DesignError} for a number outside its range.
 * @see The motor's equations are those of any textbook of electrical machines; how the pump's rated point sets them is a judgement.
 */
export function directPumpPoint(
  parts: HydraulicParts,
  module: PvModuleParameters,
  conditions: DirectPumpConditions,
): DirectPumpPoint {
  const { modules = 1, fluidTemperature } = conditions;
  requirePvConditions(conditions);
  requireNumber('fluidTemperature', fluidTemperature, -100, 400, '°C');
  requireNumber('modules', modules, 1, 1000, '');
  const { loop, pump } = parts;
  const hydraulics = compileHydraulics(parts, compileFluid(loop.fluid, loop.glycolMassFraction));
  const motor = compileMotor(pump);
  const density = fluidDensity(hydraulics.fluid, fluidTemperature);
  const viscosity = fluidViscosity(hydraulics.fluid, fluidTemperature);
  const p = new Float64Array(5);
  translateModule(module, conditions.irradiance, conditions.cellTemperature, p);

  const offered = (backEmf: number): number => motorCurrentOffered(p, modules, motor.resistance, backEmf);
  const excess = (flow: number): number => {
    const speed = pumpSpeed(pump, loopHead(hydraulics, flow, density, viscosity), flow);
    return motorCurrent(motor, speed, flow) - offered(motor.ratedBackEmf * speed);
  };
  const flow = risingRoot(
    excess,
    0,
    flowAtBackEmf(hydraulics, motor, openCircuitVoltage(p), density, viscosity),
    1e-16,
  );
  const head = flow > 0 ? loopHead(hydraulics, flow, density, viscosity) : 0;
  const speed = flow > 0 ? pumpSpeed(pump, head, flow) : 0;
  const current = offered(motor.ratedBackEmf * speed);
  const voltage = motor.ratedBackEmf * speed + motor.resistance * current;
  return {
    voltage,
    current,
    standstillCurrent: standstillCurrent(p, modules, motor),
    speed,
    flow,
    head,
    electricalPower: voltage * current,
    shaftPower: flow > 0 ? motor.ratedBackEmf * speed * (current - motor.frictionCurrent) : 0,
    hydraulicPower: density * GRAVITY * flow * head,
  };
}

/** Current that n translated modules drive through a winding R [Ω] against a back-EMF [V]: in parallel they are one module on n R. [A] */
const motorCurrentOffered = (p: Float64Array, modules: number, resistance: number, backEmf: number): number =>
  modules * diodeCurrent(p, diodeVoltageOnLoad(p, backEmf, modules * resistance));

/** The same through the winding of a standing rotor; into a measured pump, at its start voltage. Allocates nothing. [A] */
export const standstillCurrent = (
  p: Float64Array,
  modules: number,
  { resistance, startBackEmf }: Pick<CompiledMotor, 'resistance' | 'startBackEmf'>,
): number => motorCurrentOffered(p, modules, resistance, startBackEmf);

/** Flow of a pump so fast that its back-EMF is this voltage: no module of that open-circuit voltage drives more. [m³/s] */
export function flowAtBackEmf(
  h: CompiledHydraulics,
  motor: CompiledMotor,
  voltage: number,
  density: number,
  viscosity: number,
): number {
  const fastest = voltage / motor.ratedBackEmf;
  const excess = (flow: number): number => pumpSpeed(h.pump, loopHead(h, flow, density, viscosity), flow) - fastest;
  const most = fastest * h.pump.openFlow;
  return risingRoot(excess, 0, most, 1e-6 * most);
}
