/** The tank at rest: losses, conduction, turnover, the coil's heat, and the relief valve. */
import { restCoil } from '../physics/loop/standing.ts';
import { mixInversions } from '../physics/tank/inversion.ts';
import { relieveTank } from '../physics/tank/relief.ts';
import { coolTank, restParts, restTank } from '../physics/tank/tank.ts';
import type { Machine } from './machine.ts';
import { type SecondTank, type Store, topOf } from './second-tank.ts';

/** One step of the tank at rest, and of a second one. @param flows - Whether fluid went round: then the coil's heat came in through the whole step. */
export function restStorage(machine: Machine, hour: number, steps: number, flows: boolean): void {
  const { columns, drivers, second, store, tank } = machine;
  const { exchange } = store;
  restStore(store, columns.tankLoss, hour, steps, flows);
  const coilHeat =
    second === null ? exchange.coilHeat : exchange.coilHeat + restSecond(machine, second, hour, steps, flows);
  columns.coilHeat[hour]! += coilHeat;
  if (coilHeat < 0) columns.heatGivenBack[hour]! -= coilHeat;

  // After the turnover the top is the hottest node; where it passes the valve's setting, the valve holds it there.
  const hottest = Math.min(topOf(tank), tank.reliefTemperature);
  if (hottest > columns.tankMaximumTemperature[hour]!) columns.tankMaximumTemperature[hour] = hottest;
  if (second !== null) relieveSecond(machine, second, hour, hottest);
  if (!relieveTank(tank, drivers.mains[hour]!, exchange, second === null ? null : second.tank)) return;
  columns.reliefVolume[hour]! += exchange.reliefVolume;
  columns.reliefHeat[hour]! += exchange.reliefHeat;
  if (second !== null) second.passed += exchange.followingHeat;
}

/** One step of a tank. @param loss - Column of what it loses to its room. */
function restStore(store: Store, loss: Float64Array, hour: number, steps: number, flows: boolean): void {
  const { byPlate, coil, exchange, tank } = store;
  if (flows && coil?.open) loss[hour]! += restTank(tank, steps, byPlate ? null : exchange.coilRise);
  else restBoth(store, loss, hour, steps);
}

/** Tank and standing coil, in turn: a sharp front between cold and warm water does not wait for an hour. */
function restBoth({ coil, exchange, tank }: Store, loss: Float64Array, hour: number, steps: number): void {
  const parts = restParts(steps);
  let coilHeat = 0;
  for (let part = 0; part < parts; part++) {
    loss[hour]! += coolTank(tank, steps * parts);
    if (coil !== null) coilHeat += restCoil(coil, tank, 3600 / (steps * parts));
    mixInversions(tank.temperature);
  }
  exchange.coilHeat = coilHeat;
}

/** The same of a second tank; its loss counts with the first's. @returns Heat of its coil. [J] */
function restSecond({ columns }: Machine, second: SecondTank, hour: number, steps: number, flows: boolean): number {
  const { loss } = second.columns;
  const before = loss[hour]!;
  restStore(second.store, loss, hour, steps, flows);
  columns.tankLoss[hour]! += loss[hour]! - before;
  const { coilHeat } = second.store.exchange;
  second.columns.coilHeat[hour]! += coilHeat;
  return coilHeat;
}

/** Peaks and relief valve of a second tank. @param hottest - In the first. [°C] */
function relieveSecond({ columns, drivers }: Machine, second: SecondTank, hour: number, hottest: number): void {
  const { store, tank } = second;
  const { maximumTemperature } = second.columns;
  const own = Math.min(topOf(tank), tank.reliefTemperature);
  if (hottest > second.peakOfFirst) second.peakOfFirst = hottest;
  if (own > maximumTemperature[hour]!) maximumTemperature[hour] = own;
  if (own > columns.tankMaximumTemperature[hour]!) columns.tankMaximumTemperature[hour] = own;
  if (!relieveTank(tank, drivers.mains[hour]!, store.exchange)) return;
  columns.reliefVolume[hour]! += store.exchange.reliefVolume;
  columns.reliefHeat[hour]! += store.exchange.reliefHeat;
  second.relieved += store.exchange.reliefHeat;
}
