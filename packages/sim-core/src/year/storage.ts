/** The tank at rest: losses, conduction, turnover, the coil's heat, and the relief valve. */
import { restCoil } from '../physics/loop/standing.ts';
import { relieveTank } from '../physics/tank/relief.ts';
import { restParts, restTank, warmTank } from '../physics/tank/tank.ts';
import type { Machine } from './machine.ts';

/** One step of the tank at rest. @param flows - Whether fluid went round: then the coil's heat came in through the whole step. */
export function restStorage(machine: Machine, hour: number, steps: number, flows: boolean): void {
  const { columns, drivers, exchange, loop, tank } = machine;
  if (flows) columns.tankLoss[hour]! += restTank(tank, steps, loop.plate === null ? exchange.coilRise : null);
  else restBoth(machine, hour, steps);
  const { coilHeat } = exchange;
  columns.coilHeat[hour]! += coilHeat;
  if (coilHeat < 0) columns.heatGivenBack[hour]! -= coilHeat;

  const top = tank.temperature.length - 1;
  // After the turnover the top is the hottest node; where it passes the valve's setting, the valve holds it there.
  const hottest = Math.min(tank.temperature[top]!, tank.reliefTemperature);
  if (hottest > columns.tankMaximumTemperature[hour]!) columns.tankMaximumTemperature[hour] = hottest;
  if (!relieveTank(tank, drivers.mains[hour]!, exchange)) return;
  columns.reliefVolume[hour]! += exchange.reliefVolume;
  columns.reliefHeat[hour]! += exchange.reliefHeat;
}

/** Tank and standing coil, in turn: a sharp front between cold and warm water does not wait for an hour. */
function restBoth({ columns, exchange, loop, tank }: Machine, hour: number, steps: number): void {
  const { coil } = loop.circuit;
  const parts = restParts(steps);
  let coilHeat = 0;
  for (let part = 0; part < parts; part++) {
    columns.tankLoss[hour]! += restTank(tank, steps * parts);
    if (!restCoil(coil, tank, 3600 / (steps * parts), exchange)) continue;
    warmTank(tank, exchange.coilRise);
    coilHeat += exchange.coilHeat;
  }
  exchange.coilHeat = coilHeat;
}
