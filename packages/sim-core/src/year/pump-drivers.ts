import type { SystemDesign } from '../design/design.ts';
import { outageHours } from '../physics/control/outages.ts';
import { standstillCurrent } from '../physics/loop/direct-pump.ts';
import { type CompiledMotor, compileMotor } from '../physics/loop/motor.ts';
import { noctRise, ratedEfficiency } from '../physics/pv/cell-temperature.ts';
import { stringParameters } from '../physics/pv/datasheet.ts';
import { type PvModuleParameters, translateModule } from '../physics/pv/module.ts';
import { compilePvPower, PV_TABLE, tablePower } from '../physics/pv/power-table.ts';

/** What the module and the outages do to the pump; part of `Drivers`. */
export interface PumpDrivers {
  /**
   * What starts the pump: electrical power that the booster offers [W], current of the standing rotor of a direct drive [A]; nothing
   * but full speed with the mains. Shape [8760 × steps], for the mains [0].
   */
  readonly pumpSupply: Float64Array;
  /** Rise of the cells over the air per irradiance on the module. [K·m²/W] */
  readonly cellRise: number;
  /** Whether the pump cannot turn: it failed, or it hangs on the mains in a blackout. Shape [8760]. */
  readonly pumpOut: Uint8Array;
  /** Whether the mains are out. Shape [8760]. */
  readonly blackout: Uint8Array;
  /** Hours in which light or cells were beyond the module's tables and held at their ends. */
  readonly heldModuleHours: number;
}

/**
 * Computes what drives the pump, step by step.
 *
 * @param design - The system.
 * @param light - Irradiance on the module. Shape [8760 × steps]. [W/m²]
 * @param air - Outdoor air. Shape [8760]. [°C]
 * @param stepsPerHour - Steps in each hour.
 */
export function compilePumpDrivers(
  design: SystemDesign,
  light: Float64Array,
  air: Float64Array,
  stepsPerHour: number,
): PumpDrivers {
  const { control, pump, pv } = design;
  const cellRise = noctRise(pv.module.nominalOperatingCellTemperature, ratedEfficiency(pv.module));
  const blackout = outageHours(control.outages, 'power');
  const pumpOut = outageHours(control.outages, 'pump');
  if (pump.drive === 'mains') {
    for (let hour = 0; hour < pumpOut.length; hour++) if (blackout[hour] === 1) pumpOut[hour] = 1;
    return { pumpSupply: new Float64Array(0), cellRise, pumpOut, blackout, heldModuleHours: 0 };
  }
  const module = stringParameters(pv);
  const cells = new Float64Array(light.length);
  for (let step = 0; step < light.length; step++) {
    cells[step] = air[Math.trunc(step / stepsPerHour)]! + light[step]! * cellRise;
  }
  const pumpSupply =
    pump.drive === 'booster'
      ? boosterPower(module, light, cells, pump.boosterEfficiency * pv.modules)
      : standstillCurrents(module, light, cells, pv.modules, compileMotor(pump));
  return { pumpSupply, cellRise, pumpOut, blackout, heldModuleHours: heldHours(light, cells, stepsPerHour) };
}

/** What the booster offers: the modules' maximum power at their cell temperature, times its efficiency. [W] */
function boosterPower(
  module: PvModuleParameters,
  light: Float64Array,
  cells: Float64Array,
  factor: number,
): Float64Array {
  const table = compilePvPower(module);
  const power = new Float64Array(light.length);
  for (let step = 0; step < power.length; step++) {
    if (light[step]! > 0) power[step] = factor * tablePower(table, light[step]!, cells[step]!);
  }
  return power;
}

/** Current that n modules drive through the winding of a standing rotor. [A] */
function standstillCurrents(
  module: PvModuleParameters,
  light: Float64Array,
  cells: Float64Array,
  modules: number,
  motor: CompiledMotor,
): Float64Array {
  const p = new Float64Array(5);
  const current = new Float64Array(light.length);
  for (let step = 0; step < current.length; step++) {
    if (!(light[step]! > 0)) continue;
    translateModule(module, light[step]!, cells[step]!, p);
    current[step] = standstillCurrent(p, modules, motor);
  }
  return current;
}

function heldHours(light: Float64Array, cells: Float64Array, stepsPerHour: number): number {
  let hours = 0;
  let last = -1;
  for (let step = 0; step < light.length; step++) {
    const here = light[step]!;
    if (!(here > 0)) continue;
    const cell = cells[step]!;
    if (here <= PV_TABLE.mostLight && cell >= PV_TABLE.coldest && cell <= PV_TABLE.warmest) continue;
    const hour = Math.trunc(step / stepsPerHour);
    if (hour !== last) hours++;
    last = hour;
  }
  return hours;
}
