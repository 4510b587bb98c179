/** Collectors, pipes, coil or plate exchanger, and what moves and holds their fluid, put together. */
import type { WeatherYear } from '@noonloop/weather-io';
import type { SystemDesign } from '../design/design.ts';
import { siteAirPressure } from '../physics/fluid/air-pressure.ts';
import { boilingPoint } from '../physics/fluid/boiling.ts';
import { type CompiledFluid, compileFluid } from '../physics/fluid/compile.ts';
import { compileCircuit } from '../physics/loop/circuit-design.ts';
import type { Circuit, CoilWater, LoopStep } from '../physics/loop/circuit-state.ts';
import { compileCoil } from '../physics/loop/coil.ts';
import { coilsOf } from '../physics/loop/coils.ts';
import { compileDrain, type Drain } from '../physics/loop/drain.ts';
import type { Shared } from '../physics/loop/flow-split.ts';
import { compileHydraulics } from '../physics/loop/hydraulics.ts';
import type { Plate } from '../physics/loop/plate.ts';
import { circuitDesign, compilePlate } from '../physics/loop/plate-design.ts';
import { changeFluid, settlePressure } from '../physics/loop/pressure.ts';
import { compileLoopPressure } from '../physics/loop/pressure-design.ts';
import type { LoopPressure } from '../physics/loop/pressure-state.ts';
import { type CompiledDrive, compileDrive } from '../physics/loop/pump-drive.ts';
import type { PumpOffer } from '../physics/loop/pump-offer.ts';
import { compileThermosiphon, type Thermosiphon } from '../physics/loop/thermosiphon-design.ts';
import type { Stepping } from './stepping.ts';

/** Stagnation is called no later than here, whatever the pressure. [°C] */
const STAGNATION_AT_MOST = 120;

/** The closed loop of a run: its state, and what moves and holds its fluid. */
export interface CollectorLoop {
  /** Renewed at the start of a month where it has thinned, and with it drive, friction and the coil's films. */
  fluid: CompiledFluid;
  drive: CompiledDrive;
  /** Drive where a valve leads the fluid through the coil of a second tank; `null`: the same. */
  diverted: CompiledDrive | null;
  readonly circuit: Circuit;
  /** In place of the coil. */
  readonly plate: Plate | null;
  /** Where there is no check valve. */
  readonly siphon: Thermosiphon | null;
  readonly pressure: LoopPressure;
  /** Where the loop empties. */
  readonly drain: Drain | null;
  /** What left and entered over the year. [m³] */
  readonly ledger: { leaked: number; madeUp: number };
  /** What a step works with. */
  readonly step: LoopStep;
  /** What the pump meets in it. */
  readonly offer: PumpOffer;
  /** What the groups of the array share in it. */
  readonly shared: Shared;
  /** Absorber temperature above which standstill in sun counts as stagnation. [°C] */
  readonly stagnationLimit: number;
  /** Rise of the tank's top in a step, at most, per light turned into heat in the absorber. [K·m²/W] */
  readonly risePerLight: number;
}

/**
 * Puts the loop together, filled and standing.
 *
 * @param step - The run's one object of that kind.
 */
export function assembleLoop(
  design: SystemDesign,
  weather: WeatherYear,
  stepping: Stepping,
  step: LoopStep,
): CollectorLoop {
  const { control, loop, tank } = design;
  const { columns, site } = weather;
  const fluid = compileFluid(loop.fluid, loop.glycolMassFraction);
  const circuit = compileCircuit(circuitDesign(design), fluid, columns.dryBulb[0]!, stepping);
  const air = siteAirPressure(site.elevation, columns.pressure);
  const pressure = compileLoopPressure(design, fluid, circuit, air);
  settlePressure(pressure, circuit.absorber, circuit.pipe, tank.initialTemperature, true);
  const hydraulics = hydraulicsOf(design, fluid);
  const drive = compileDrive(design.pump, design.pv, hydraulics);
  return {
    fluid,
    drain: compileDrain(design, fluid, drive, circuit, stepping.stepCounts),
    drive,
    diverted: divertedDrive(design, fluid),
    circuit,
    plate: loop.exchanger === 'plate' ? compilePlate(design) : null,
    siphon: loop.checkValve ? null : compileThermosiphon(design, circuit, hydraulics),
    pressure,
    ledger: { leaked: 0, madeUp: 0 },
    step,
    offer: { supply: 0, irradiance: 0, cellTemperature: 0, fluidTemperature: 0 },
    shared: { flow: 0, density: 0, viscosity: 0 },
    stagnationLimit:
      control.stagnationLimit ??
      Math.min(STAGNATION_AT_MOST, boilingPoint(loop.fluid, loop.glycolMassFraction, loop.pressure + air)),
    risePerLight: risePerLight(circuit, step.water, loop.exchanger === 'plate', stepping.stepsPerHour),
  };
}

/** A valve may lead the fluid through a coil of other resistance. */
function divertedDrive(design: SystemDesign, fluid: CompiledFluid): CompiledDrive | null {
  const { coil, pump, pv, tank } = design;
  const { second } = tank;
  if (second?.charging !== 'in-turn') return null;
  const isAlike = (['innerDiameter', 'length', 'windingDiameter'] as const).every(
    (key) => coil[key] === second.coil[key],
  );
  return isAlike ? null : compileDrive(pump, pv, hydraulicsOf({ ...design, coil: second.coil }, fluid));
}

/** The heat of a step's light in the water that it warms at least: from the coil's foot, or the plate exchanger's inlet, upwards. */
export function risePerLight(circuit: Circuit, water: CoilWater, byPlate: boolean, stepsPerHour: number): number {
  const nodes = water.temperature.length;
  const lowest = byPlate ? nodes - 1 : circuit.coil.bottom;
  const area = circuit.nodeArea * circuit.absorber.length;
  return (area * 3600) / (stepsPerHour * water.nodeCapacity * (nodes - lowest));
}

/** Works another mixture into the loop's tables: properties, flow and coil. Allocates. */
export function renewFluid(loop: CollectorLoop, design: SystemDesign, glycolMassFraction: number): void {
  loop.fluid = compileFluid(design.loop.fluid, glycolMassFraction);
  const hydraulics = hydraulicsOf(design, loop.fluid);
  loop.drive = compileDrive(design.pump, design.pv, hydraulics);
  loop.diverted = divertedDrive(design, loop.fluid);
  const { coil, further } = loop.circuit;
  const [first, second] = coilsOf(design.coil, design.tank.second);
  if (coil.films !== null) coil.films = compileCoil(first, loop.fluid);
  if (further !== null) further.coil.films = compileCoil(second!, loop.fluid);
  if (loop.siphon !== null) loop.siphon.hydraulics = hydraulics;
  changeFluid(loop.pressure, loop.fluid);
}

/** A design's resistance with a fluid in it. */
export const hydraulicsOf = ({ array, coil, loop, pump, tank }: SystemDesign, fluid: CompiledFluid) =>
  compileHydraulics({ pump, loop, coil, array, tank }, fluid);
