import type { WeatherYear } from '@noonloop/weather-io';
import type { SystemDesign } from '../design/design.ts';
import { compileHeater, type Heater, heatsInTank } from '../physics/backup/heater.ts';
import type { TapDraw } from '../physics/backup/supply.ts';
import { compilePumpControl, type PumpControl } from '../physics/control/pump-control.ts';
import { compileTank, type Tank } from '../physics/tank/tank.ts';
import { type Books, openBooks } from './books.ts';
import { assembleLoop, type CollectorLoop } from './collector-loop.ts';
import { emptyColumns } from './columns.ts';
import { compileDrivers, type Drivers } from './drivers.ts';
import { type OwnComponents, type OwnState, requireOwn } from './own.ts';
import type { RunColumns } from './result.ts';
import {
  assembleStores,
  compileSecondTank,
  openLoopStep,
  type SecondTank,
  type StepExchange,
  type Store,
} from './second-tank.ts';
import { compileStepping, type StepOptions, type Stepping } from './stepping.ts';

/** A system put together and ready to step through its year. */
export interface Machine {
  /** A copy of the one given. */
  readonly design: SystemDesign;
  /** What acts from outside. */
  readonly drivers: Drivers;
  readonly stepping: Stepping;
  readonly loop: CollectorLoop;
  readonly control: PumpControl;
  readonly tank: Tank;
  /** The tank with what loop and relief valve exchange with it. */
  readonly store: Store;
  /** A second tank before it on the cold water; `null`: none. */
  readonly second: SecondTank | null;
  /** Tank whose sensor the controller reads: the one that the loop charges, with two in series the second. */
  charged: Tank;
  readonly house: House;
  /** Parts of the user's own, and what they see; `null` for none. */
  readonly own: { readonly parts: OwnComponents; readonly state: OwnState } | null;
  /** What the parts exchange in the step at hand: one object of the run, written anew in each. */
  readonly exchange: StepExchange;
  /** The hour's row of the result. */
  readonly columns: RunColumns;
  readonly books: Books;
}

/** What stands behind the tank. */
export interface House {
  readonly heater: Heater;
  /** The same house without the sun. */
  readonly baseline: Heater;
  /** What the taps want in the step at hand; their target is their own, or the valve's where it is set lower. */
  readonly taps: TapDraw;
  /** Node of the heating element in the tank, or lowest of the heater's own coil; -1 where there is none. */
  readonly elementNode: number;
  /** Nodes that the heater's own coil reaches through; 0 where there is none. */
  readonly coilNodes: number;
  /** Node at which a pool or rooms take heat; -1: none. */
  readonly loadNode: number;
  /** What they took since 00:00. [J] */
  loadToday: number;
}

/** Puts a system together: the only place that allocates. @param spare - Arrays for columns, see {@link emptyColumns}. */
export function assemble(
  given: SystemDesign,
  weather: WeatherYear,
  options: StepOptions = {},
  spare: Float64Array[] = [],
): Machine {
  const design = inOneShape(given);
  const stepping = compileStepping(design, weather, options);
  const drivers = compileDrivers(design, weather, stepping.stepsPerHour);
  const tank = compileTank(design.tank, stepping.stepCounts);
  const secondTank = compileSecondTank(design, stepping.stepCounts);
  const step = openLoopStep(design, tank, secondTank);
  const loop = assembleLoop(design, weather, stepping, step);
  const { store, second } = assembleStores(design, tank, secondTank, loop, step);
  if (options.own !== undefined) requireOwn(options.own, design.array.groups.length > 0);
  const seen = { absorber: loop.circuit.absorber, tank: tank.temperature };
  const house = assembleHouse(design);
  return {
    design,
    drivers,
    stepping,
    loop,
    control: compilePumpControl(
      design.pump,
      design.control,
      design.loop.layout === 'drain-back' ? design.loop.drainBack.lift : 0,
    ),
    tank,
    store,
    second,
    charged: second === null || second.charging === 'first' || second.charging === 'in-turn' ? tank : second.tank,
    house,
    own:
      options.own === undefined
        ? null
        : { parts: options.own, state: { hour: 0, duration: 0, ambient: 0, irradiance: 0, ...seen } },
    exchange: step.exchange,
    columns: emptyColumns(drivers, spare),
    books: openBooks(loop.circuit, tank, secondTank, house),
  };
}

function assembleHouse({ baseline, draw, heater, tank }: SystemDesign): House {
  const target = draw.mixingValve ? Math.min(draw.tapTemperature, draw.valveTemperature) : draw.tapTemperature;
  const ringRoom = draw.ring?.surroundings ?? 0;
  return {
    heater: compileHeater(heater, ringRoom),
    baseline: compileHeater(baseline, ringRoom),
    taps: { wanted: 0, mains: 0, target, flow: 0, duration: 0 },
    elementNode: heatsInTank(heater) ? Math.trunc(heater.elementHeight * tank.nodes) : -1,
    coilNodes:
      heater.kind === 'boiler-coil' ? Math.max(Math.ceil((heater.coilTop - heater.elementHeight) * tank.nodes), 1) : 0,
    loadNode: tank.load === null ? -1 : Math.min(Math.trunc(tank.load.height * tank.nodes), tank.nodes - 1),
    loadToday: 0,
  };
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
