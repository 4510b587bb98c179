/** A second solar tank on the cold side of the first: what a run keeps of it, and what it does in a step and an hour. */
import type { SecondTankCharging, SystemDesign } from '../design/design.ts';
import { highest } from '../physics/column.ts';
import type { Coil, LoopExchange, LoopStep, StepConditions } from '../physics/loop/circuit-state.ts';
import { secondInPlace } from '../physics/loop/coils.ts';
import type { Relieved } from '../physics/tank/relief.ts';
import { compileTank, type Tank, tankHeat, WATER_HEAT_CAPACITY } from '../physics/tank/tank.ts';
import { drawThroughPair, type PairDraw } from '../physics/tank/tank-pair.ts';
import { type BalanceEntry, type BalanceKeeper, bookHour, closeBalance, openBalance } from './balance.ts';
import type { CollectorLoop } from './collector-loop.ts';
import type { SecondTankColumns, SecondTankYear } from './second-tank-result.ts';
import { compileValve, type Valve } from './valve.ts';

/** What the loop and a tank's relief valve exchange with it in a step. */
export interface StepExchange extends LoopExchange, Relieved {}

/** A tank with what the loop does to it. */
export interface Store {
  readonly tank: Tank;
  /** Coil of the loop in it, or what stands for one beside a plate exchanger; `null`: none. */
  readonly coil: Coil | null;
  /** Whether a plate exchanger hands it the loop's heat. */
  readonly byPlate: boolean;
  /** Of that coil, and of the tank's relief valve. */
  readonly exchange: StepExchange;
}

/** Makes room for what a tank of some layers exchanges. */
export const emptyStepExchange = (nodes: number): StepExchange => ({
  absorbed: 0,
  collectorLoss: 0,
  collectorHeat: 0,
  pipeLoss: 0,
  coilHeat: 0,
  outlet: 0,
  coilRise: new Float64Array(nodes),
  reliefVolume: 0,
  reliefHeat: 0,
  followingHeat: 0,
});

/** A second tank ready to be stepped. */
export interface SecondTank {
  readonly tank: Tank;
  readonly store: Store;
  readonly charging: SecondTankCharging;
  /** Where the loop charges one tank after the other. */
  readonly valve: Valve | null;
  /** Whether its air is that of the first. */
  readonly sharesRoom: boolean;
  readonly columns: SecondTankColumns;
  /** What a draw brought. */
  readonly drawn: PairDraw;
  /** Heat above mains that went into the first tank in this hour, and what its own relief valve let out. [J] */
  passed: number;
  relieved: number;
  /** Hottest that the first tank was in the year. [°C] */
  peakOfFirst: number;
  readonly balance: BalanceKeeper;
  readonly entry: BalanceEntry;
}

/** Prepares its water; `null` where there is none. */
export function compileSecondTank(design: SystemDesign, stepCounts: readonly number[]): Tank | null {
  const { second } = design.tank;
  return second === null ? null : compileTank(secondInPlace(design, second).tank, stepCounts);
}

/** What the loop works with in a step of a run. */
interface RunStep extends LoopStep {
  readonly exchange: StepExchange;
  readonly further: RunStep | null;
}

/** What the loop works with in a step: the water around its coil, or around both. */
export function openLoopStep(design: SystemDesign, tank: Tank, secondTank: Tank | null): RunStep {
  const charging = design.tank.second?.charging ?? 'first';
  const conditions = { absorbed: 0, ambient: 0, room: tank.room, duration: 0 };
  if (charging === 'first') return stepIn(tank, conditions, null);
  if (charging === 'second') return stepIn(secondTank!, conditions, null);
  return stepIn(tank, conditions, stepIn(secondTank!, conditions, null));
}

/** Written down field by field, as circuits are. */
const stepIn = (water: Tank, conditions: StepConditions, further: RunStep | null): RunStep => ({
  water,
  conditions,
  stream: { flow: 0, power: 0, capacityRate: 0, conductance: 0 },
  exchange: emptyStepExchange(water.temperature.length),
  further,
});

/** Puts tanks and loop together. @param stepsPerHour - Steps in an hour with sun. */
export function assembleStores(
  design: SystemDesign,
  tank: Tank,
  secondTank: Tank | null,
  { circuit, plate }: Pick<CollectorLoop, 'circuit' | 'plate'>,
  step: RunStep,
): { readonly store: Store; readonly second: SecondTank | null } {
  const byPlate = plate !== null;
  const { second } = design.tank;
  if (second === null || secondTank === null)
    return { store: { tank, coil: circuit.coil, byPlate, exchange: step.exchange }, second: null };
  const bare = (of: Tank): Store => ({
    tank: of,
    coil: null,
    byPlate: false,
    exchange: emptyStepExchange(of.temperature.length),
  });
  const { charging } = second;
  const own: Store =
    charging === 'second'
      ? { tank: secondTank, coil: circuit.coil, byPlate: false, exchange: step.exchange }
      : step.further === null
        ? bare(secondTank)
        : { tank: secondTank, coil: circuit.further!.coil, byPlate: false, exchange: step.further.exchange };
  const column = () => new Float64Array(8760);
  if (charging === 'in-turn') circuit.further!.coil.open = false;
  return {
    store: charging === 'second' ? bare(tank) : { tank, coil: circuit.coil, byPlate, exchange: step.exchange },
    second: {
      tank: secondTank,
      store: own,
      charging,
      valve: charging === 'in-turn' ? compileValve(second, design.control) : null,
      sharesRoom: second.roomTemperature === null,
      columns: {
        topTemperature: column(),
        bottomTemperature: column(),
        meanTemperature: column(),
        maximumTemperature: column(),
        loss: column(),
        coilHeat: column(),
      },
      drawn: { outlet: 0, between: 0 },
      passed: 0,
      relieved: 0,
      peakOfFirst: Number.NEGATIVE_INFINITY,
      balance: openBalance(tankHeat(secondTank), secondTank.nodeCapacity * secondTank.temperature.length),
      entry: { income: 0, spent: 0, through: 0, stored: 0 },
    },
  };
}

/** Uppermost layer. [°C] */
export const topOf = ({ temperature }: Tank): number => temperature[temperature.length - 1]!;

/** As `drawFromTank`, through both tanks. @returns Mean of what left the first. [°C] */
export function drawFromBoth(second: SecondTank, tank: Tank, volume: number, mains: number, flow: number): number {
  const { drawn } = second;
  drawThroughPair({ cold: second.tank, warm: tank }, volume, mains, flow, drawn);
  second.passed += volume * WATER_HEAT_CAPACITY * (drawn.between - mains);
  return drawn.outlet;
}

/** Starts an hour. @param highest - Column of the hotter tank, with the first's in it. */
export function openSecond(second: SecondTank, tank: Tank, highest: Float64Array, hour: number): void {
  const top = topOf(second.tank);
  if (second.sharesRoom) second.tank.room = tank.room;
  second.passed = 0;
  second.relieved = 0;
  second.columns.maximumTemperature[hour] = top;
  if (topOf(tank) > second.peakOfFirst) second.peakOfFirst = topOf(tank);
  if (top > highest[hour]!) highest[hour] = top;
}

/** Writes the state at the hour's end and closes the hour's books. @returns Heat in it above 0 °C. [J] */
export function closeSecond(second: SecondTank, hour: number): number {
  const { balance, columns, entry, passed, relieved, tank } = second;
  const heat = tankHeat(tank);
  columns.topTemperature[hour] = topOf(tank);
  columns.bottomTemperature[hour] = tank.temperature[0]!;
  columns.meanTemperature[hour] = heat / (tank.nodeCapacity * tank.temperature.length);
  const coil = columns.coilHeat[hour]!;
  const loss = columns.loss[hour]!;
  entry.income = coil;
  entry.spent = loss + passed + relieved;
  entry.through = Math.abs(coil) + Math.abs(loss) + Math.abs(passed) + relieved;
  entry.stored = heat;
  bookHour(balance, hour, entry);
  return heat;
}

/** What it did in the year. */
export const secondTankYear = ({ balance, columns, peakOfFirst }: SecondTank): SecondTankYear => ({
  columns,
  balance: closeBalance(balance),
  peak: highest(columns.maximumTemperature),
  peakOfFirst,
});
