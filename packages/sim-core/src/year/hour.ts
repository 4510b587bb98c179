import type { Heater } from '../physics/backup/heater.ts';
import { HEATER_OFF } from '../physics/backup/hours.ts';
import { highest, lowest } from '../physics/column.ts';
import { tankHeat } from '../physics/tank/tank.ts';
import { bookParts } from './bookkeeping.ts';
import { coldestOutdoors, tendLoop } from './loop-step.ts';
import type { Machine } from './machine.ts';
import { closeSecond, openSecond } from './second-tank.ts';

/** Sets the extremes of an hour to where the hour before left the state, and what a blackout takes from the heaters. */
export function openHour(machine: Machine, hour: number): void {
  const { columns, drivers, house, loop, second, tank } = machine;
  const { baseline, heater } = house;
  const { absorber, pipe } = loop.circuit;
  const blackout = drivers.blackout[hour] === 1;
  const off = drivers.heaterOff === null ? 0 : drivers.heaterOff[hour]!;
  heater.off = off;
  heater.out = off > 0 || (blackout && heater.needsMains);
  baseline.out = (off & HEATER_OFF.timer) > 0 || (blackout && baseline.needsMains);
  if (drivers.room !== null) {
    tank.room = drivers.room[hour]!;
    loop.step.conditions.room = tank.room;
  }
  if (drivers.load !== null && hour % 24 === 0) house.loadToday = 0;
  feedHeater(machine, heater, hour);
  feedHeater(machine, baseline, hour);
  columns.absorberTemperature[hour] = highest(absorber);
  columns.absorberMinimumTemperature[hour] = lowest(absorber);
  columns.tankMaximumTemperature[hour] = tank.temperature[tank.temperature.length - 1]!;
  columns.tapTemperature[hour] = drivers.mains[hour]!;
  if (second !== null) openSecond(second, tank, columns.tankMaximumTemperature, hour);
  columns.loopMaximumPressure[hour] = loop.pressure.gauge;
  columns.pipeMinimumTemperature[hour] = coldestOutdoors(pipe);
}

/** Most heat of a heater in this hour, the loss of its ring, and the air of a heat pump. */
function feedHeater({ drivers }: Machine, heater: Heater, hour: number): void {
  const { airFrom, burnerEfficiency, burnerPower, roomTemperature } = heater.design;
  const spare = drivers.sparePv === null ? 0 : drivers.sparePv[hour]! * burnerEfficiency;
  heater.most = heater.out ? Math.min(spare, burnerPower) : burnerPower;
  if (drivers.ring !== null) heater.ring = drivers.ring[hour]!;
  if (heater.cop !== null) heater.air = airFrom === 'room' ? roomTemperature : drivers.ambient[hour]!;
}

/** Writes the state at the hour's end and books the hour's energy. */
export function closeHour(machine: Machine, hour: number): void {
  const { columns, design, house, loop, second, tank } = machine;
  const { temperature } = tank;
  const { absorber } = loop.circuit;
  const top = temperature.length - 1;
  columns.tankTopTemperature[hour] = temperature[top]!;
  columns.tankBottomTemperature[hour] = temperature[0]!;
  const heat = tankHeat(tank);
  columns.tankMeanTemperature[hour] = heat / (tank.nodeCapacity * (top + 1));
  // A heat pump's is booked step by step.
  if (house.heater.cop === null)
    columns.heaterFuel[hour] = Math.max(
      columns.heaterHeat[hour]! / design.heater.burnerEfficiency - columns.heaterPvEnergy[hour]!,
      0,
    );
  const hasPower = controlsRun(machine, hour, house.heater.off);
  columns.heaterElectricity[hour] = (hasPower ? design.heater.standbyPower * 3600 : 0) + ringPumpEnergy(machine, hour);
  const running = columns.pumpRunning[hour]!;
  columns.collectorOutletTemperature[hour] =
    running > 0 ? columns.collectorOutletTemperature[hour]! / running : absorber[absorber.length - 1]!;
  tendLoop(machine, hour);
  bookParts(machine, hour, second === null ? heat : heat + closeSecond(second, hour));
}

/** Electricity of the ring's pump in an hour. [J] */
export const ringPumpEnergy = ({ design, drivers }: Machine, hour: number): number =>
  drivers.ring !== null && drivers.ring[hour]! > 0 ? design.draw.ring!.pumpPower * 3600 : 0;

/** Whether a heater's controls draw power: the mains are there, and it is not switched off for days. A timer leaves them on. */
export const controlsRun = ({ drivers }: Machine, hour: number, off: number): boolean =>
  drivers.blackout[hour] !== 1 && (off & HEATER_OFF.switched) === 0;
