/**
 * Flow of the loop by electrical power and fluid temperature, as a table for the year loop.
 *
 * Temperature rows are equally spaced over the range in which the fluid's properties change. Along a row the axis is
 * w = (P/P_full)^(1/4), where P_full is the power that the pump takes at rated speed: flow is nearly straight in w, and the kink
 * at P_full lies on the edge. Both are linear between the points.
 */

import { fluidDensity, fluidViscosity } from '../fluid/compile.ts';
import { latest } from '../latest.ts';
import { type CompiledHydraulics, fullFlow, powerForFlow } from './hydraulics.ts';
import type { PumpAnswer, PumpOffer } from './pump-offer.ts';

const ROWS = 60;
const COLUMNS = 72;

/** Distance in w from which the last slope reaches the point well enough. [-] */
const CLOSE = 2e-3;

/** Made by {@link compileFlowTable}. */
export interface FlowTable {
  /** First temperature row. [°C] */
  readonly lowest: number;
  /** Rows per kelvin. [1/K] */
  readonly rowsPerKelvin: number;
  /** Power at rated speed of each row. Shape [rows + 1]. [W] */
  readonly fullPower: Float64Array;
  /** Flow by row and column, columns fastest. Shape [(rows + 1) × (columns + 1)]. [m³/s] */
  readonly flow: Float64Array;
  /** Which rows are filled: those that the run has come by. Shape [rows + 1]. */
  readonly filled: Uint8Array;
  readonly hydraulics: CompiledHydraulics;
}

/** Tables of some thirty loops, 36 kB each; a run that thins takes twelve. */
const tables = latest<FlowTable>(1.2, ({ flow, fullPower }) => flow.byteLength + fullPower.byteLength);

/**
 * Makes room for the table; a row is filled when it is first asked for, of some 60 a year meets about half. A row depends on nothing but the loop: runs
 * whose loops are alike share their table.
 */
export const compileFlowTable = (hydraulics: CompiledHydraulics): FlowTable =>
  tables(hydraulics, () => emptyTable(hydraulics));

function emptyTable(hydraulics: CompiledHydraulics): FlowTable {
  const { lowest, highest } = hydraulics.fluid;
  return {
    lowest,
    rowsPerKelvin: ROWS / (highest - lowest),
    fullPower: new Float64Array(ROWS + 1),
    flow: new Float64Array((ROWS + 1) * (COLUMNS + 1)),
    filled: new Uint8Array(ROWS + 1),
    hydraulics,
  };
}

function fillRow(table: FlowTable, row: number): void {
  const { flow, fullPower, hydraulics: h } = table;
  table.filled[row] = 1;
  const temperature = table.lowest + row / table.rowsPerKelvin;
  const density = fluidDensity(h.fluid, temperature);
  const viscosity = fluidViscosity(h.fluid, temperature);
  const start = row * (COLUMNS + 1);
  const top = fullFlow(h, density, viscosity);
  const topPower = powerForFlow(h, top, density, viscosity);
  // Below it nothing flows: 0, but for a lift.
  const least = h.lift > 0 ? powerForFlow(h, 0, density, viscosity) : 0;
  fullPower[row] = topPower;
  flow[start + COLUMNS] = top;
  // Downwards from full flow: w(Q) is nearly a straight line, so a step along the last slope lands close and one more,
  // along the slope just found, closes the rest.
  let q = top;
  let w = 1;
  let slope = top;
  for (let column = COLUMNS - 1; column > 0; column--) {
    const target = column / COLUMNS;
    if (target ** 4 * topPower < least) {
      flow[start + column] = 0;
      continue;
    }
    for (let step = 0; step < 6 && Math.abs(w - target) > CLOSE; step++) {
      const next = Math.max(q + slope * (target - w), q / 4);
      const wNext = Math.sqrt(Math.sqrt(powerForFlow(h, next, density, viscosity) / topPower));
      slope = (next - q) / (wNext - w);
      q = next;
      w = wNext;
    }
    flow[start + column] = q + slope * (target - w);
  }
}

/**
 * Flow for what the pump is offered, and the power that it takes of it: at full speed it leaves the rest. Allocates nothing.
 *
 * Within 0.5 % of full flow of {@link pumpOperatingPoint} in common loops. In 300 random ones the worst point was 0.14 % off in
 * the median and 1.3 % at most, where a narrow pipe turns from laminar to turbulent.
 *
 * @param table - From {@link compileFlowTable}.
 * @param offer - Nothing flows at a supply of 0 or below; the fluid is held at the ends of the table.
 * @param answer - Written; its power is that at the pump.
 */
export function readFlowTable(table: FlowTable, offer: PumpOffer, answer: PumpAnswer): void {
  const { fullPower, flow } = table;
  const { supply } = offer;
  answer.flow = 0;
  answer.power = 0;
  if (!(supply > 0)) return;
  const y = Math.min(Math.max((offer.fluidTemperature - table.lowest) * table.rowsPerKelvin, 0), ROWS);
  const row = y < ROWS ? y | 0 : ROWS - 1;
  if (table.filled[row] === 0) fillRow(table, row);
  if (table.filled[row + 1] === 0) fillRow(table, row + 1);
  const fy = y - row;
  const full = fullPower[row]! + (fullPower[row + 1]! - fullPower[row]!) * fy;
  const x = supply < full ? COLUMNS * Math.sqrt(Math.sqrt(supply / full)) : COLUMNS;
  const column = x < COLUMNS ? x | 0 : COLUMNS - 1;
  const fx = x - column;
  const at = row * (COLUMNS + 1) + column;
  const below = flow[at]! + (flow[at + 1]! - flow[at]!) * fx;
  const next = at + COLUMNS + 1;
  const above = flow[next]! + (flow[next + 1]! - flow[next]!) * fx;
  answer.flow = below + (above - below) * fy;
  answer.power = Math.min(supply, full);
}
