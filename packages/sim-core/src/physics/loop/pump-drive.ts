import type { PumpDesign, PvDesign } from '../../design/pump.ts';
import { stringParameters } from '../pv/datasheet.ts';
import { compileDirectTable, type DirectTable, readDirectTable } from './direct-table.ts';
import { compileFlowTable, type FlowTable, readFlowTable } from './flow-table.ts';
import type { CompiledHydraulics } from './hydraulics.ts';
import { compileMotor } from './motor.ts';
import type { PumpAnswer, PumpOffer } from './pump-offer.ts';

/** The pump's drive ready for the year loop. */
export interface CompiledDrive {
  readonly onMains: boolean;
  /** Share of the module's energy that reaches the pump. [-] */
  readonly efficiency: number;
  /** Flow by the power offered; the booster's and the mains'. */
  readonly offered: FlowTable | null;
  /** Flow by light; the direct drive's. */
  readonly direct: DirectTable | null;
}

/** Prepares the tables that the drive needs, and no others. */
export function compileDrive(pump: PumpDesign, pv: PvDesign, hydraulics: CompiledHydraulics): CompiledDrive {
  const isDirect = pump.drive === 'direct';
  return {
    onMains: pump.drive === 'mains',
    efficiency: pump.drive === 'booster' ? pump.boosterEfficiency : 1,
    offered: isDirect ? null : compileFlowTable(hydraulics),
    direct: isDirect ? compileDirectTable(hydraulics, compileMotor(pump), stringParameters(pv), pv.modules) : null,
  };
}

/** Flow of the turning pump, and the electrical power that it takes. Allocates nothing. */
export function turnPump({ direct, efficiency, offered }: CompiledDrive, offer: PumpOffer, answer: PumpAnswer): void {
  if (direct !== null) {
    readDirectTable(direct, offer, answer);
    return;
  }
  readFlowTable(offered!, offer, answer);
  answer.power /= efficiency;
}
