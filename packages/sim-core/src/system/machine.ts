import type { WeatherYear } from '@noonloop/weather-io';
import { compileHeater, type Heater } from '../backup/heater.ts';
import { compilePumpControl, type PumpControl } from '../control/pump-control.ts';
import { boilingPoint } from '../fluid/boiling.ts';
import { type CompiledFluid, compileFluid } from '../fluid/compile.ts';
import { type Circuit, circuitHeat, compileCircuit } from '../loop/circuit-design.ts';
import { type CompiledCoil, compileCoil } from '../loop/coil.ts';
import { compileFlowTable, type FlowTable } from '../loop/flow-table.ts';
import { compileHydraulics } from '../loop/hydraulics.ts';
import { compileTank, type Tank, tankHeat } from '../tank/tank.ts';
import { type BalanceKeeper, openBalance } from './balance.ts';
import type { SystemDesign } from './design.ts';
import { compileDrivers, type Drivers } from './drivers.ts';
import type { BalancePart, RunColumns } from './result.ts';

/** Irradiance on the collectors from which sun is said to fall on them; judgement: an overcast sky gives less. [W/m²] */
export const SUN_THRESHOLD = 50;
/** Stagnation is called no later than here, whatever the pressure. [°C] */
const STAGNATION_AT_MOST = 120;
/** Standard atmosphere, for the boiling point at a gauge pressure. [Pa] */
const ATMOSPHERE = 101_325;

/** How a run is stepped. */
export interface StepOptions {
  /** Steps in an hour with sun. Default 12 (5 minutes), from the convergence test in tests/sim-core/system. */
  readonly stepsPerHour?: number;
  /** Nodes of the collector along the flow. Default 4, from the same test. */
  readonly collectorNodes?: number;
}

/** A system put together and ready to step through its year. */
export interface Machine {
  readonly design: SystemDesign;
  readonly drivers: Drivers;
  readonly fluid: CompiledFluid;
  readonly flowTable: FlowTable;
  readonly coil: CompiledCoil;
  readonly circuit: Circuit;
  readonly tank: Tank;
  readonly heater: Heater;
  readonly baseline: Heater;
  readonly control: PumpControl;
  readonly columns: RunColumns;
  /** Light turned into heat in the absorber. Shape [8760]. [J] */
  readonly absorbedHeat: Float64Array;
  /** Heat lost by the array to air and sky. Shape [8760]. [J] */
  readonly collectorLoss: Float64Array;
  /** Heat at the taps of the house without the solar system, above mains. Shape [8760]. [J] */
  readonly baselineTapHeat: Float64Array;
  readonly books: Readonly<Record<BalancePart, BalanceKeeper>>;
  /** Steps in an hour with draw and no light; in one with neither there is a single step. */
  readonly darkSteps: number;
  readonly stagnationLimit: number;
}

/** Puts a system together: the only place that allocates. */
export function assemble(design: SystemDesign, weather: WeatherYear, options: StepOptions = {}): Machine {
  const stepsPerHour = options.stepsPerHour ?? 12;
  const darkSteps = Math.max(1, Math.round(stepsPerHour / 4));
  const stepCounts = [stepsPerHour, darkSteps, 1];
  const { array, loop, pump, coil, control } = design;
  const fluid = compileFluid(loop.fluid, loop.glycolMassFraction);
  const tank = compileTank(design.tank, stepCounts);
  const drivers = compileDrivers(design, weather, stepsPerHour);
  const circuit = compileCircuit(design, fluid, drivers.ambient[0]!, stepCounts, options.collectorNodes ?? 4);
  const heater = compileHeater(design.heater);
  const baseline = compileHeater(design.heater);
  const heat = circuitHeat(circuit);
  const heaterHeat = heater.capacity * heater.temperature;
  return {
    design,
    drivers,
    fluid,
    flowTable: compileFlowTable(compileHydraulics({ pump, loop, coil, array }, fluid)),
    coil: compileCoil(coil, fluid, compileFluid('water', 0)),
    circuit,
    tank,
    heater,
    baseline,
    control: compilePumpControl(pump, control),
    columns: emptyColumns(drivers),
    absorbedHeat: new Float64Array(8760),
    collectorLoss: new Float64Array(8760),
    baselineTapHeat: new Float64Array(8760),
    books: {
      collector: openBalance(heat.absorber),
      pipes: openBalance(heat.pipes),
      tank: openBalance(tankHeat(tank)),
      heater: openBalance(heaterHeat),
      baseline: openBalance(heaterHeat),
      whole: openBalance(heat.absorber + heat.pipes + tankHeat(tank) + heaterHeat),
    },
    darkSteps,
    stagnationLimit:
      control.stagnationLimit ??
      Math.min(STAGNATION_AT_MOST, boilingPoint(loop.fluid, loop.glycolMassFraction, loop.pressure + ATMOSPHERE)),
  };
}

function emptyColumns(drivers: Drivers): RunColumns {
  const column = () => new Float64Array(8760);
  return {
    irradiance: column(),
    pvIrradiance: column(),
    ambientTemperature: drivers.ambient,
    absorberTemperature: column(),
    absorberMinimumTemperature: column(),
    collectorOutletTemperature: column(),
    tankTopTemperature: column(),
    tankMaximumTemperature: column(),
    tankBottomTemperature: column(),
    tankMeanTemperature: column(),
    loopFlow: column(),
    pumpRunning: column(),
    noFlowInSun: column(),
    stagnation: column(),
    highLimit: column(),
    collectorHeat: column(),
    pipeLoss: column(),
    coilHeat: column(),
    tankLoss: column(),
    solarHeat: column(),
    reliefVolume: column(),
    reliefHeat: column(),
    mainsTemperature: drivers.mains,
    tapVolume: drivers.tapVolume,
    hotVolume: column(),
    tapHeatAsked: column(),
    tapHeat: column(),
    tapTemperature: column(),
    heaterHeat: column(),
    heaterFuel: column(),
    heaterLoss: column(),
    baselineHeat: column(),
    baselineFuel: column(),
  };
}
