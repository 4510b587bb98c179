import { HEATER_OFF } from '../physics/backup/hours.ts';
import { absorberHeat, pipeHeat } from '../physics/loop/circuit-design.ts';
import { tankHeat } from '../physics/tank/tank.ts';
import { bookHour } from './balance.ts';
import { coldestOutdoors, tendLoop } from './loop-step.ts';
import type { Machine } from './machine.ts';

/** Sets the extremes of an hour to where the hour before left the state, and what a blackout takes from the heaters. */
export function openHour(machine: Machine, hour: number): void {
  const { baseline, circuit, columns, drivers, heater, loopPressure, tank } = machine;
  const { absorber } = circuit;
  const blackout = drivers.blackout[hour] === 1;
  const off = drivers.heaterOff === null ? 0 : drivers.heaterOff[hour]!;
  heater.off = off;
  heater.out = off > 0 || (blackout && heater.needsMains);
  baseline.out = (off & HEATER_OFF.timer) > 0 || (blackout && baseline.needsMains);
  let hottest = absorber[0]!;
  let coldest = hottest;
  for (let node = 1; node < absorber.length; node++) {
    hottest = Math.max(hottest, absorber[node]!);
    coldest = Math.min(coldest, absorber[node]!);
  }
  columns.absorberTemperature[hour] = hottest;
  columns.absorberMinimumTemperature[hour] = coldest;
  columns.tankMaximumTemperature[hour] = tank.temperature[tank.temperature.length - 1]!;
  columns.tapTemperature[hour] = drivers.mains[hour]!;
  columns.loopMaximumPressure[hour] = loopPressure.gauge;
  columns.pipeMinimumTemperature[hour] = coldestOutdoors(circuit.pipe);
}

/** Writes the state at the hour's end and books the hour's energy. */
export function closeHour(machine: Machine, hour: number): void {
  const { circuit, columns, design, heater, tank } = machine;
  const { temperature } = tank;
  const top = temperature.length - 1;
  columns.tankTopTemperature[hour] = temperature[top]!;
  columns.tankBottomTemperature[hour] = temperature[0]!;
  const stored = tankHeat(tank);
  columns.tankMeanTemperature[hour] = stored / (tank.nodeCapacity * (top + 1));
  columns.heaterFuel[hour] = columns.heaterHeat[hour]! / design.heater.burnerEfficiency;
  columns.heaterElectricity[hour] = controlsRun(machine, hour, heater.off) ? design.heater.standbyPower * 3600 : 0;
  const running = columns.pumpRunning[hour]!;
  columns.collectorOutletTemperature[hour] =
    running > 0 ? columns.collectorOutletTemperature[hour]! / running : circuit.absorber[circuit.absorber.length - 1]!;
  tendLoop(machine, hour);
  bookParts(machine, hour, absorberHeat(circuit), pipeHeat(circuit), stored, heater.capacity * heater.temperature);
}

/** Whether a heater's controls draw power: the mains are there, and it is not switched off for days. A timer leaves them on. */
export const controlsRun = ({ drivers }: Machine, hour: number, off: number): boolean =>
  drivers.blackout[hour] !== 1 && (off & HEATER_OFF.switched) === 0;

/** What came in, went out and stayed, for each part and the whole. Heat in water is counted above mains. */
function bookParts(
  machine: Machine,
  hour: number,
  absorber: number,
  pipes: number,
  tank: number,
  heater: number,
): void {
  const { baseline, books, columns } = machine;
  const absorbed = machine.absorbedHeat[hour]!;
  const collectorLoss = machine.collectorLoss[hour]!;
  const collected = columns.collectorHeat[hour]!;
  const pipeLoss = columns.pipeLoss[hour]!;
  const coil = columns.coilHeat[hour]!;
  const tankLoss = columns.tankLoss[hour]!;
  const solar = columns.solarHeat[hour]!;
  const relief = columns.reliefHeat[hour]!;
  const burner = columns.heaterHeat[hour]!;
  const heaterLoss = columns.heaterLoss[hour]!;
  const taps = columns.tapHeat[hour]!;

  const inCircuit = Math.abs(absorbed) + Math.abs(collectorLoss) + Math.abs(collected);
  bookHour(books.collector, hour, absorbed, collectorLoss + collected, inCircuit, absorber);
  const inPipes = Math.abs(collected) + Math.abs(pipeLoss) + Math.abs(coil);
  bookHour(books.pipes, hour, collected, pipeLoss + coil, inPipes, pipes);
  // An element's heat goes into the tank and out with the draw; the column of solar heat holds neither.
  const element = machine.heater.stored || machine.heater.instantaneous ? 0 : burner;
  const inTank = Math.abs(coil) + Math.abs(tankLoss) + Math.abs(solar + element) + element + relief;
  bookHour(books.tank, hour, coil + element, tankLoss + solar + element + relief, inTank, tank);
  const inHeater = Math.abs(solar) + burner + Math.abs(heaterLoss) + Math.abs(taps);
  bookHour(books.heater, hour, solar + burner, heaterLoss + taps, inHeater, heater);

  const baselineTaps = machine.baselineTapHeat[hour]!;
  const baselineHeat = columns.baselineHeat[hour]!;
  const baselineLoss = machine.baselineLoss[hour]!;
  const throughBaseline = baselineHeat + Math.abs(baselineLoss) + Math.abs(baselineTaps);
  const baselineStored = baseline.capacity * baseline.temperature;
  bookHour(books.baseline, hour, baselineHeat, baselineLoss + baselineTaps, throughBaseline, baselineStored);

  const out = collectorLoss + pipeLoss + tankLoss + relief + heaterLoss + taps;
  const through = inCircuit + inPipes + inTank + inHeater;
  bookHour(books.whole, hour, absorbed + burner, out, through, absorber + pipes + tank + heater);
}
