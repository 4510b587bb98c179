import type { WeatherYear } from '@noonloop/weather-io';
import type { SystemDesign } from '../design/design.ts';
import { DesignError, quote } from '../input/errors.ts';
import { compileHeater, type Heater } from '../physics/backup/heater.ts';
import type { TapDraw } from '../physics/backup/supply.ts';
import { compilePumpControl, type PumpControl } from '../physics/control/pump-control.ts';
import { drawsWithinHours } from '../physics/draw/schedule.ts';
import { siteAirPressure } from '../physics/fluid/air-pressure.ts';
import { boilingPoint } from '../physics/fluid/boiling.ts';
import { type CompiledFluid, compileFluid } from '../physics/fluid/compile.ts';
import { type Circuit, compileCircuit } from '../physics/loop/circuit-design.ts';
import type { LoopStream, StepConditions } from '../physics/loop/circuit-state.ts';
import { type CompiledCoil, compileCoil } from '../physics/loop/coil.ts';
import { compileHydraulics } from '../physics/loop/hydraulics.ts';
import type { Plate } from '../physics/loop/plate.ts';
import { circuitDesign, compilePlate } from '../physics/loop/plate-design.ts';
import { settlePressure } from '../physics/loop/pressure.ts';
import { compileLoopPressure } from '../physics/loop/pressure-design.ts';
import type { LoopPressure } from '../physics/loop/pressure-state.ts';
import { type CompiledDrive, compileDrive } from '../physics/loop/pump-drive.ts';
import { loopRises, type Thermosiphon } from '../physics/loop/thermosiphon-design.ts';
import { compileTank, type Relieved, restParts, type Tank } from '../physics/tank/tank.ts';
import { type Books, openBooks } from './books.ts';
import { emptyColumns } from './columns.ts';
import { compileDrivers, type Drivers } from './drivers.ts';
import type { RunColumns } from './result.ts';

/** Irradiance on the collectors from which sun is said to fall on them; judgement: the light of dusk and of the darkest days is less. [W/m²] */
export const SUN_THRESHOLD = 50;
/** Stagnation is called no later than here, whatever the pressure. [°C] */
const STAGNATION_AT_MOST = 120;
/** Steps in place of one where the high limit or a controller by temperature difference may act. */
export const FINENESS = 8;

/** How a run is stepped. */
export interface StepOptions {
  /** Steps in an hour with sun. Default 6 (10 minutes), 12 with draws by the minute, an element or a stirring inlet in the tank, or without a check valve; from the convergence tests. */
  readonly stepsPerHour?: number;
  /** Nodes along the flow of each panel in series. Default 4, from the same test. */
  readonly collectorNodes?: number;
  /** Nodes of each of the four pipe sections (hot and cold, outdoors and indoors). Default 1, from the same test. */
  readonly pipeNodes?: number;
}

/** What left and entered the loop over the year. [m³] */
export interface LoopLedger {
  leaked: number;
  madeUp: number;
}

/** A system put together and ready to step through its year. */
export interface Machine {
  /** A copy of the one given. */
  readonly design: SystemDesign;
  readonly drivers: Drivers;
  /** In the loop; renewed at the start of a month where it has thinned, and with it drive and coil. */
  fluid: CompiledFluid;
  drive: CompiledDrive;
  coil: CompiledCoil;
  /** In the tank. */
  readonly water: CompiledFluid;
  readonly loopPressure: LoopPressure;
  /** In place of the coil. */
  readonly plate: Plate | null;
  /** Where there is no check valve. */
  readonly thermosiphon: Thermosiphon | null;
  readonly loopLedger: LoopLedger;
  readonly circuit: Circuit;
  readonly tank: Tank;
  /** What acts on the loop in the current step, what goes round in it, and what the tank's relief valve let out. */
  readonly conditions: StepConditions;
  readonly stream: LoopStream;
  readonly relieved: Relieved;
  readonly heater: Heater;
  readonly baseline: Heater;
  readonly control: PumpControl;
  readonly columns: RunColumns;
  /** The column that the pump's energy goes to. Shape [8760]. [J] */
  readonly pumpEnergy: Float64Array;
  /** Light turned into heat in the absorber. Shape [8760]. [J] */
  readonly absorbedHeat: Float64Array;
  /** Heat lost by the array to air and sky. Shape [8760]. [J] */
  readonly collectorLoss: Float64Array;
  /** Heat at the taps of the house without the solar system, above mains. Shape [8760]. [J] */
  readonly baselineTapHeat: Float64Array;
  /** Standby loss of the heater of that house. Shape [8760]. [J] */
  readonly baselineLoss: Float64Array;
  /** What the taps want in the step at hand; their target is their own, or the valve's where it is set lower. */
  readonly taps: TapDraw;
  /** Node of the heating element in the tank; -1 where there is none. */
  readonly elementNode: number;
  /** Rise of the tank's top in a step, at most, per light turned into heat in the absorber. [K·m²/W] */
  readonly risePerLight: number;
  readonly books: Books;
  /** Parts of a step in light where buoyancy may drive the loop: it is not followed in longer ones than of five minutes. */
  readonly siphonParts: number;
  /** Steps in an hour with draw and no light, or by buoyancy alone; in one with none of these there is a single step. */
  readonly darkSteps: number;
  readonly stagnationLimit: number;
}

/** Steps in an hour with sun without a check valve, at least; from the convergence test. */
const SIPHON_STEPS = 12;
/** Nodes of a pipe section; a front is smeared over the section, see docs/theory/loop.md. */
const PIPE_NODES = 1;
/** Finest step, a quarter of a minute, finest array and finest pipe. */
const MOST_STEPS = 240;
const MOST_COLLECTOR_NODES = 100;
const MOST_PIPE_NODES = 50;

function requireCount(path: string, value: number, most: number): void {
  if (Number.isInteger(value) && value >= 1 && value <= most) return;
  const expected = `a whole number from 1 to ${most}`;
  throw new DesignError([{ path, found: quote(value), expected, remedy: 'Leave the option out for its default.' }]);
}

/**
 * Steps in an hour with sun where none are asked for, from the convergence tests: 6; twice as many where draws have their minutes, where
 * an element's heat and the draw's are to be told apart, where the mains stir the tank, and where buoyancy drives the loop.
 */
function defaultSteps({ draw, heater, loop, tank }: SystemDesign): number {
  return drawsWithinHours(draw) || heater.kind === 'element' || tank.inletDiameter !== null || !loop.checkValve
    ? 12
    : 6;
}

/** Puts a system together: the only place that allocates. */
export function assemble(given: SystemDesign, weather: WeatherYear, options: StepOptions = {}): Machine {
  const design = inOneShape(given);
  const stepsPerHour = options.stepsPerHour ?? defaultSteps(design);
  const collectorNodes = options.collectorNodes ?? 4;
  const pipeNodes = options.pipeNodes ?? PIPE_NODES;
  requireCount('stepsPerHour', stepsPerHour, MOST_STEPS);
  requireCount('collectorNodes', collectorNodes, MOST_COLLECTOR_NODES);
  requireCount('pipeNodes', pipeNodes, MOST_PIPE_NODES);
  const { array, loop, pump, coil, control } = design;
  const fluid = compileFluid(loop.fluid, loop.glycolMassFraction);
  const drivers = compileDrivers(design, weather, stepsPerHour);
  // Draws that have their minutes, and a jet that stirs, want them resolved at night too.
  const evenly = drivers.within === null && design.tank.inletDiameter === null;
  const darkSteps = evenly ? Math.max(1, Math.round(stepsPerHour / 3)) : stepsPerHour;
  const siphonParts = design.loop.checkValve ? 1 : Math.ceil(SIPHON_STEPS / stepsPerHour);
  const stepCounts = [stepsPerHour, stepsPerHour * siphonParts, stepsPerHour * FINENESS, darkSteps, 1];
  stepCounts.push(...stepCounts.map((count) => count * restParts(count)));
  const tank = compileTank(design.tank, stepCounts);
  const ring = (upwards: boolean) =>
    compileCircuit(
      circuitDesign(design),
      fluid,
      drivers.ambient[0]!,
      stepCounts,
      collectorNodes * array.inSeries,
      pipeNodes,
      upwards,
    );
  const circuit = ring(false);
  const hydraulics = compileHydraulics({ pump, loop, coil, array }, fluid);
  const water = compileFluid('water', 0);
  const air = siteAirPressure(weather.site.elevation, weather.columns.pressure);
  const loopPressure = compileLoopPressure(design, fluid, circuit, air);
  settlePressure(loopPressure, circuit.absorber, circuit.pipe, design.tank.initialTemperature, true);
  const heater = compileHeater(design.heater);
  const baseline = compileHeater(design.baseline);
  const coilFilms = compileCoil(coil, fluid, water);
  const columns = emptyColumns(drivers);
  return {
    design,
    drivers,
    fluid,
    drive: compileDrive(pump, design.pv, hydraulics),
    coil: coilFilms,
    water,
    loopPressure,
    plate: loop.exchanger === 'plate' ? compilePlate(design) : null,
    thermosiphon: loop.checkValve
      ? null
      : {
          rises: loopRises(design, circuit.absorber.length, circuit.pipe.length),
          hydraulics,
          films: coilFilms,
          stream: emptyStream(),
          // Both have one coil, and write their exchange to one place.
          mirror: { ...ring(true), coil: circuit.coil, coilRise: circuit.coilRise, flows: circuit.flows },
          flow: 0,
        },
    loopLedger: { leaked: 0, madeUp: 0 },
    circuit,
    tank,
    conditions: { absorbed: 0, ambient: 0, room: tank.room, duration: 0 },
    stream: emptyStream(),
    relieved: { volume: 0, heat: 0 },
    heater,
    baseline,
    control: compilePumpControl(pump, control),
    columns,
    pumpEnergy: pump.drive === 'mains' ? columns.pumpElectricity : columns.pumpPvEnergy,
    absorbedHeat: new Float64Array(8760),
    collectorLoss: new Float64Array(8760),
    baselineTapHeat: new Float64Array(8760),
    baselineLoss: new Float64Array(8760),
    taps: { wanted: 0, mains: 0, target: tapTarget(design), flow: 0, duration: 0 },
    elementNode: design.heater.kind === 'element' ? Math.trunc(design.heater.elementHeight * design.tank.nodes) : -1,
    risePerLight: risePerLight(design, circuit, tank, stepsPerHour),
    books: openBooks(circuit, tank, heater, baseline),
    siphonParts,
    darkSteps,
    stagnationLimit:
      control.stagnationLimit ??
      Math.min(STAGNATION_AT_MOST, boilingPoint(loop.fluid, loop.glycolMassFraction, loop.pressure + air)),
  };
}

const emptyStream = (): LoopStream => ({ flow: 0, capacityRate: 0, conductance: 0 });

/** Mixed water that heater and valve aim at. [°C] */
const tapTarget = ({ draw }: SystemDesign): number =>
  draw.mixingValve ? Math.min(draw.tapTemperature, draw.valveTemperature) : draw.tapTemperature;

/** The heat of a step's light in the water that it warms at least: from the coil's foot, or the plate exchanger's inlet, upwards. */
function risePerLight(design: SystemDesign, circuit: Circuit, tank: Tank, stepsPerHour: number): number {
  const nodes = tank.temperature.length;
  const lowest = design.loop.exchanger === 'plate' ? nodes - 1 : circuit.coilBottom;
  const area = circuit.nodeArea * circuit.absorber.length;
  return (area * 3600) / (stepsPerHour * tank.nodeCapacity * (nodes - lowest));
}

/**
 * A copy of a design whose objects have the shape that all such copies have. Designs as checked and frozen differ in it inside the engine, which
 * would compile the year loop anew for each design of a study.
 */
function inOneShape<T extends object>(value: T): T {
  const copy: T = { ...value };
  for (const key of Object.keys(copy) as (keyof T)[]) {
    const part = copy[key];
    if (typeof part === 'object' && part !== null && !Array.isArray(part)) copy[key] = inOneShape(part);
  }
  return copy;
}
