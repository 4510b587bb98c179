import type { PumpDesign, PvDesign } from '../../design/pump.ts';
import { moduleParameters } from '../pv/datasheet.ts';
import { compileDirectTable, type DirectTable, tableDirectFlow } from './direct-table.ts';
import { compileFlowTable, type FlowTable, tableFlow, tableFullPower } from './flow-table.ts';
import type { CompiledHydraulics } from './hydraulics.ts';
import { compileMotor } from './motor.ts';

/** The pump's drive ready for the year loop. */
export interface CompiledDrive {
  readonly onMains: boolean;
  /** Share of the module's energy that reaches the pump. [-] */
  readonly efficiency: number;
  /** Flow by the power offered; the booster's and the mains'. */
  readonly offered: FlowTable | null;
  /** Flow by light; the direct drive's. */
  readonly direct: DirectTable | null;
  /** Electrical power of the last flow, at the module or from the mains. [W] */
  power: number;
}

/** Prepares the tables that the drive needs, and no others. */
export function compileDrive(pump: PumpDesign, pv: PvDesign, hydraulics: CompiledHydraulics): CompiledDrive {
  const isDirect = pump.drive === 'direct';
  return {
    onMains: pump.drive === 'mains',
    efficiency: pump.drive === 'booster' ? pump.boosterEfficiency : 1,
    offered: isDirect ? null : compileFlowTable(hydraulics),
    direct: isDirect
      ? compileDirectTable(hydraulics, compileMotor(pump), moduleParameters(pv.module), pv.modules)
      : null,
    power: 0,
  };
}

/**
 * Flow of the turning pump; its electrical power is left in `drive.power`. Allocates nothing.
 *
 * @param supply - Power offered by the booster, infinite with the mains; not used by the direct drive. [W]
 * @param irradiance - On the module. [W/m²]
 * @param cellTemperature - Of the module. [°C]
 * @param fluidTemperature - Mean of the loop. [°C]
 * @returns [m³/s]
 */
export function driveFlow(
  drive: CompiledDrive,
  supply: number,
  irradiance: number,
  cellTemperature: number,
  fluidTemperature: number,
): number {
  const { direct, offered } = drive;
  if (direct !== null) {
    const flow = tableDirectFlow(direct, irradiance, cellTemperature, fluidTemperature);
    drive.power = direct.lastPower;
    return flow;
  }
  // At full speed the booster leaves what the pump does not take.
  drive.power = Math.min(supply, tableFullPower(offered!, fluidTemperature)) / drive.efficiency;
  return tableFlow(offered!, supply, fluidTemperature);
}
