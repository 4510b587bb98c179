/**
 * Flow of a directly driven pump by light, cell and fluid temperature, as a table for the year loop.
 *
 * For one fluid temperature, pump, motor and loop are one curve of current against voltage, with the flow along it; for one cell
 * temperature, `lightForLoad` says in closed form at which irradiance S the module passes through each point of it. So nothing is
 * solved but the loop's own resistance. The axis of light is u = √((S − S_f)/(S_max − S_f)), S_f the light that just carries
 * the rotor's friction: flow starts straight in u. All is linear between the points.
 */
import { fluidDensity, fluidViscosity } from '../fluid/compile.ts';
import { lightForLoad } from '../pv/light-for-load.ts';
import { type PvModuleParameters, translateModule } from '../pv/module.ts';
import { openCircuitVoltage } from '../pv/single-diode.ts';
import { flowAtBackEmf } from './direct-pump.ts';
import { type CompiledHydraulics, loopHead } from './hydraulics.ts';
import { type CompiledMotor, motorCurrent } from './motor.ts';
import { pumpSpeed } from './pump.ts';
import type { PumpAnswer, PumpOffer } from './pump-offer.ts';

const FLUID_ROWS = 45;
/** Cell temperatures −40 to 100 by 10 °C. */
const CELL_COLUMNS = 15;
const COLDEST_CELL = -40;
const CELL_STEP = 10;
const LIGHTS = 96;
const MOST_LIGHT = 1500;
/** Points along the curve of pump and loop. */
const POINTS = 160;

/** Made by {@link compileDirectTable}. */
export interface DirectTable {
  /** First row of fluid temperature. [°C] */
  readonly lowest: number;
  /** Rows per kelvin. [1/K] */
  readonly rowsPerKelvin: number;
  /** Light that carries the running rotor's friction, by cell temperature. Shape [15]. [W/m²] */
  readonly runningLight: Float64Array;
  /** Flow by fluid temperature, cell temperature and light, light fastest. Shape [46 × 15 × 97]. [m³/s] */
  readonly flow: Float64Array;
  /** Electrical power of the motor, likewise. [W] */
  readonly power: Float64Array;
  /** Which rows of fluid temperature are filled: those that the run has come by. Shape [46]. */
  readonly filled: Uint8Array;
  /** What rows are made of. */
  readonly parts: TableParts;
}

interface TableParts {
  readonly hydraulics: CompiledHydraulics;
  readonly motor: CompiledMotor;
  readonly modules: number;
  /** The module in full sun by cell temperature. Shape [15][5]. */
  readonly cells: readonly Float64Array[];
  /** Voltage of the coldest module in the brightest light. [V] */
  readonly mostVoltage: number;
  /** Scratch: the row's curve of pump and loop. */
  readonly curve: LoadCurve;
}

/** Makes room for the table; a row is filled when it is first asked for: a year meets a part of them, a short run few. */
export function compileDirectTable(
  h: CompiledHydraulics,
  motor: CompiledMotor,
  module: PvModuleParameters,
  modules: number,
): DirectTable {
  const { lowest, highest } = h.fluid;
  const size = (FLUID_ROWS + 1) * CELL_COLUMNS * (LIGHTS + 1);
  const cells = Array.from({ length: CELL_COLUMNS }, (_, column) => {
    const p = new Float64Array(5);
    translateModule(module, 1000, COLDEST_CELL + column * CELL_STEP, p);
    return p;
  });
  const brightest = new Float64Array(5);
  translateModule(module, MOST_LIGHT, COLDEST_CELL, brightest);
  const friction = motor.frictionCurrent;
  return {
    lowest,
    rowsPerKelvin: FLUID_ROWS / (highest - lowest),
    runningLight: Float64Array.from(cells, (p) =>
      Math.min(lightForLoad(p, friction / modules, friction * motor.resistance + motor.startBackEmf), MOST_LIGHT),
    ),
    flow: new Float64Array(size),
    power: new Float64Array(size),
    filled: new Uint8Array(FLUID_ROWS + 1),
    parts: {
      hydraulics: h,
      motor,
      modules,
      cells,
      mostVoltage: openCircuitVoltage(brightest),
      curve: {
        flow: new Float64Array(POINTS + 1),
        current: new Float64Array(POINTS + 1),
        voltage: new Float64Array(POINTS + 1),
      },
    },
  };
}

function fillRow(table: DirectTable, row: number): void {
  const { cells, curve, hydraulics, modules, motor, mostVoltage } = table.parts;
  const { lowest, highest } = hydraulics.fluid;
  table.filled[row] = 1;
  followCurve(hydraulics, motor, lowest + ((highest - lowest) * row) / FLUID_ROWS, mostVoltage, curve);
  for (let column = 0; column < CELL_COLUMNS; column++) {
    fillLights(table, curve, cells[column]!, modules, row * CELL_COLUMNS + column);
  }
}

interface LoadCurve {
  readonly flow: Float64Array;
  readonly current: Float64Array;
  readonly voltage: Float64Array;
}

/** Current and voltage of the motor along the flow, at one fluid temperature. */
function followCurve(
  h: CompiledHydraulics,
  motor: CompiledMotor,
  temperature: number,
  mostVoltage: number,
  curve: LoadCurve,
): void {
  const density = fluidDensity(h.fluid, temperature);
  const viscosity = fluidViscosity(h.fluid, temperature);
  const most = flowAtBackEmf(h, motor, mostVoltage, density, viscosity);
  for (let point = 0; point <= POINTS; point++) {
    const share = point / POINTS;
    const flow = most * share * Math.sqrt(share);
    const speed = pumpSpeed(h.pump, loopHead(h, flow, density, viscosity), flow);
    const current = motorCurrent(motor, speed, flow);
    curve.flow[point] = flow;
    curve.current[point] = current;
    curve.voltage[point] = motor.ratedBackEmf * speed + motor.resistance * current;
  }
}

/** Flow and power at each light for one fluid and cell temperature. */
function fillLights(table: DirectTable, curve: LoadCurve, cell: Float64Array, modules: number, place: number): void {
  const darkest = table.runningLight[place % CELL_COLUMNS]!;
  const start = place * (LIGHTS + 1);
  let point = 0;
  let light = darkest;
  let before = darkest;
  table.power[start] = curve.current[0]! * curve.voltage[0]!;
  for (let step = 1; step <= LIGHTS; step++) {
    const wanted = darkest + (MOST_LIGHT - darkest) * (step / LIGHTS) ** 2;
    while (light < wanted && point < POINTS) {
      point++;
      before = light;
      light = lightForLoad(cell, curve.current[point]! / modules, curve.voltage[point]!);
    }
    if (point === 0) continue; // a module too small to turn the rotor in any light
    const share = Number.isFinite(light) && light > before ? Math.min((wanted - before) / (light - before), 1) : 0;
    const flow = curve.flow[point - 1]! + share * (curve.flow[point]! - curve.flow[point - 1]!);
    const first = curve.current[point - 1]! * curve.voltage[point - 1]!;
    const second = curve.current[point]! * curve.voltage[point]!;
    table.flow[start + step] = flow;
    table.power[start + step] = first + share * (second - first);
  }
}

/**
 * Flow and power for a light, cell and fluid temperature. Allocates nothing. Within 0.6 % of what {@link directPumpPoint} gives in full sun.
 *
 * @param offer - Light is held at 1500 W/m², the cells at −40 and 100 °C, the fluid at the ends of its range.
 * @param answer - Written.
 */
export function readDirectTable(table: DirectTable, offer: PumpOffer, answer: PumpAnswer): void {
  const { irradiance, cellTemperature, fluidTemperature } = offer;
  const { flow, power, runningLight } = table;
  const z = Math.min(Math.max((cellTemperature - COLDEST_CELL) * (1 / CELL_STEP), 0), CELL_COLUMNS - 1);
  const column = z < CELL_COLUMNS - 1 ? z | 0 : CELL_COLUMNS - 2;
  const fz = z - column;
  const darkest = runningLight[column]! + fz * (runningLight[column + 1]! - runningLight[column]!);
  answer.flow = 0;
  answer.power = 0;
  if (!(irradiance > darkest)) return;
  const x = LIGHTS * Math.sqrt(Math.min((irradiance - darkest) / (MOST_LIGHT - darkest), 1));
  const step = x < LIGHTS ? x | 0 : LIGHTS - 1;
  const fx = x - step;
  const y = Math.min(Math.max((fluidTemperature - table.lowest) * table.rowsPerKelvin, 0), FLUID_ROWS);
  const row = y < FLUID_ROWS ? y | 0 : FLUID_ROWS - 1;
  const fy = y - row;
  if (table.filled[row] === 0) fillRow(table, row);
  if (table.filled[row + 1] === 0) fillRow(table, row + 1);
  const at = (row * CELL_COLUMNS + column) * (LIGHTS + 1) + step;
  answer.flow = between(flow, at, fx, fy, fz);
  answer.power = between(power, at, fx, fy, fz);
}

/** Trilinear between eight corners. */
function between(values: Float64Array, at: number, fx: number, fy: number, fz: number): number {
  const next = at + CELL_COLUMNS * (LIGHTS + 1);
  const below = plane(values, at, fx, fz);
  return below + fy * (plane(values, next, fx, fz) - below);
}

function plane(values: Float64Array, at: number, fx: number, fz: number): number {
  const beside = at + LIGHTS + 1;
  const cold = values[at]! + fx * (values[at + 1]! - values[at]!);
  const warm = values[beside]! + fx * (values[beside + 1]! - values[beside]!);
  return cold + fz * (warm - cold);
}
