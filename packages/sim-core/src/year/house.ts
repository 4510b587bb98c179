import { heatByElement } from '../physics/backup/element.ts';
import type { Heater } from '../physics/backup/heater.ts';
import { heatWater, keepWarm, settleMixing, type TapDraw } from '../physics/backup/supply.ts';
import { drawnBetween, flowBetween } from '../physics/draw/within.ts';
import { coolByLoad } from '../physics/tank/load.ts';
import { drawFromTank, outletOf, WATER_HEAT_CAPACITY } from '../physics/tank/tank.ts';
import { outletOfPair } from '../physics/tank/tank-pair.ts';
import { controlsRun, ringPumpEnergy } from './hour.ts';
import type { Machine } from './machine.ts';
import { drawFromBoth } from './second-tank.ts';

/** Storage temperature against legionella, 60 °C (HSE HSG274 part 2, page quoting it), less a kelvin of the thermostat's; judgement. [°C] */
const DISINFECTED = 59;

/** Mixed water wanted in one of an hour's steps. [m³] */
function wantedVolume(machine: Machine, hour: number, step: number, steps: number): number {
  const { tapVolume, within } = machine.drivers;
  const share = within === null ? 1 / steps : drawnBetween(within, hour, step / steps, (step + 1) / steps);
  return tapVolume[hour]! * share;
}

/**
 * What the taps want in that step, in the machine's own record. Their flow while they run is the profile's own or the design's, or
 * more where the step is too short.
 */
function tapsIn(machine: Machine, hour: number, step: number, steps: number, wanted: number): TapDraw {
  const { drivers, house } = machine;
  const { taps } = house;
  const { within } = drivers;
  const named = within === null ? 0 : flowBetween(within, hour, step / steps, (step + 1) / steps);
  taps.wanted = wanted;
  taps.mains = drivers.mains[hour]!;
  taps.flow = Math.max(named > 0 ? named : machine.design.draw.flow, (wanted * steps) / 3600);
  taps.duration = 3600 / steps;
  return taps;
}

/** How long the taps run in a step: all of it where draws have no minutes of their own. [s] */
const runningTime = ({ drivers, house: { taps } }: Machine): number =>
  drivers.within === null ? taps.duration : taps.wanted / taps.flow;

/** Hot water for the taps: mains through the solar tank, on through the heater, mixed at the taps. */
export function drawHotWater(machine: Machine, hour: number, step: number, steps: number): void {
  const wanted = wantedVolume(machine, hour, step, steps);
  if (wanted <= 0) {
    keepHeaterWarm(machine, hour, steps);
    return;
  }
  const { columns, design, drivers, house, second, tank } = machine;
  const { heater } = house;
  const taps = tapsIn(machine, hour, step, steps, wanted);
  const { mains, flow, duration } = taps;
  heater.drawnFor += runningTime(machine);
  const inlet = second === null ? outletOf(tank, wanted) : outletOfPair(second.tank, tank, wanted);
  const share = settleMixing(heater, inlet, taps);
  const extra = drivers.hotPipe === null ? 0 : forPipe(machine, heater, hour, inlet);
  const hot = wanted * share + extra;
  const outlet =
    second === null
      ? drawFromTank(tank, hot, mains, flow * share)
      : drawFromBoth(second, tank, hot, mains, flow * share);
  heatWater(heater, hot, outlet, flow * share, duration);

  columns.hotVolume[hour]! += hot;
  columns.solarHeat[hour]! += hot * WATER_HEAT_CAPACITY * (outlet - mains);
  const asked = wanted * WATER_HEAT_CAPACITY * Math.max(design.draw.tapTemperature - mains, 0);
  const lost = extra * WATER_HEAT_CAPACITY * (heater.outlet - mains);
  const got = hot * WATER_HEAT_CAPACITY * (heater.outlet - mains) - lost;
  if (extra > 0) columns.hotPipeLoss[hour]! += lost;
  columns.tapHeatAsked[hour]! += asked;
  columns.tapHeat[hour]! += got;
  bookHeater(machine, hour, duration);
  noteTaps(machine, hour);
  noteColdWater(machine, hour, hot, asked - got);
}

/** Hot water must be this much above the mains to count as what warms the pipe; judgement. [K] */
const WARM = 1;

/**
 * Hot water that a step's draws leave in the pipe to the taps, above what the taps mix: its heat makes up for what the pipe lost.
 *
 * @param cold - What reaches the heater: the hot water of a house without one behind the tank. [°C]
 */
function forPipe({ design, drivers, house }: Machine, heater: Heater, hour: number, cold: number): number {
  const { mains, wanted } = house.taps;
  const hot = heater.stored || heater.instantaneous ? heater.temperature : cold;
  const above = hot - design.draw.hotPipe!.surroundings;
  if (above <= 0 || hot < mains + WARM) return 0;
  const heat = (drivers.hotPipe![hour]! * above * wanted) / drivers.tapVolume[hour]!;
  return heat / (WATER_HEAT_CAPACITY * (hot - mains));
}

/** Highest temperature at the taps. */
function noteTaps(machine: Machine, hour: number): void {
  const { columns, design, house } = machine;
  const { heater } = house;
  const { mixingValve, valveTemperature, valveAccuracy, valveMinimumDifference } = design.draw;
  const controls = mixingValve && heater.outlet >= valveTemperature + valveMinimumDifference;
  const atTap = controls ? valveTemperature + valveAccuracy : heater.outlet;
  if (atTap > columns.tapTemperature[hour]!) columns.tapTemperature[hour] = atTap;
}

/** Water that leaves the heater too cool to be free of legionella, or that it let pass. */
function noteColdWater(machine: Machine, hour: number, hot: number, missing: number): void {
  const { columns, house } = machine;
  const { heater, taps } = house;
  if (heater.outlet < DISINFECTED) columns.undisinfectedVolume[hour]! += hot;
  if (!heater.instantaneous || heater.firing || heater.off > 0) return;
  columns.unfiredVolume[hour]! += hot;
  if (heater.outlet < taps.target) columns.unfiredShortfall[hour]! += Math.max(missing, 0);
}

/** A step without draw. */
export function keepHeaterWarm(machine: Machine, hour: number, steps: number): void {
  const { heater } = machine.house;
  if (!heater.stored) return;
  keepWarm(heater, 3600 / steps);
  bookHeater(machine, hour, 3600 / steps);
}

function bookHeater(machine: Machine, hour: number, duration: number): void {
  const { columns, house } = machine;
  const { heater } = house;
  columns.heaterHeat[hour]! += heater.burnerHeat;
  columns.heaterLoss[hour]! += heater.loss;
  if (machine.drivers.ring !== null) columns.ringLoss[hour]! += heater.ringLoss;
  if (heater.cop !== null) columns.heaterFuel[hour]! += heater.electricity;
  else if (machine.drivers.sparePv !== null && heater.stored)
    columns.heaterPvEnergy[hour]! += fromPv(machine, heater, heater.burnerHeat, hour, duration);
}

/**
 * Electricity that spare PV gives of a step's heat: all that it has while the element is on, before the mains. After a draw that is at full power, as
 * long as it takes and at least as long as the draw; what the store loses is made good all the time. [J]
 */
function fromPv(machine: Machine, heater: Heater, heat: number, hour: number, duration: number): number {
  const { burnerEfficiency } = heater.design;
  const spare = machine.drivers.sparePv![hour]!;
  const drawn = heater.drawnFor;
  heater.drawnFor = 0;
  const full = heater.most * duration;
  const wasBehind = heater.behind;
  heater.behind = heat >= FULL_POWER * full;
  if (heat <= 0) return 0;
  const held = drawn > 0 || wasBehind ? Math.min(heater.loss + heater.ringLoss, heat) : heat;
  const after = heat - Math.max(held, 0);
  const on = Math.min(Math.max((after / full) * duration, drawn), duration);
  const given =
    Math.min(Math.max(held, 0) / burnerEfficiency, spare * duration) + Math.min(after / burnerEfficiency, spare * on);
  return Math.min(given, spare * duration);
}

/** Share of an element's power from which a step's heat is all that it could give. [-] */
const FULL_POWER = 1 - 1e-9;

/** Heating element in the solar tank, where there is one; its heat is kept out of the column of solar heat. */
export function heatTankByElement(machine: Machine, hour: number, steps: number): void {
  const { columns, design, house, tank } = machine;
  const { elementNode, heater } = house;
  if (elementNode < 0 || heater.most <= 0) return;
  const { setTemperature } = design.heater;
  const available = (Math.min(heater.most, house.coilNodes > 0 ? throughCoil(machine) : heater.most) * 3600) / steps;
  const given = heatByElement(tank.temperature, elementNode, tank.nodeCapacity, available, setTemperature);
  columns.heaterHeat[hour]! += given;
  columns.solarHeat[hour]! -= given;
  if (machine.drivers.sparePv !== null)
    columns.heaterPvEnergy[hour]! += fromPv(machine, heater, given, hour, 3600 / steps);
}

/** What a boiler's coil passes into the tank at its present temperatures. [W] */
function throughCoil({ design, house, tank }: Machine): number {
  const { boilerTemperature, coilConductance } = design.heater;
  const { coilNodes, elementNode } = house;
  const end = Math.min(elementNode + coilNodes, tank.temperature.length);
  let sum = 0;
  for (let node = elementNode; node < end; node++) sum += tank.temperature[node]!;
  return Math.max(coilConductance * (boilerTemperature - sum / (end - elementNode)), 0);
}

/** Heat that a pool or rooms take out of the tank in a step, by its temperature at the step's start. */
export function feedLoad(machine: Machine, hour: number, steps: number): void {
  const { columns, design, drivers, house, tank } = machine;
  if (house.loadNode < 0 || drivers.load![hour] === 0) return;
  const { conductance, dailyHeat, leastTemperature, power, temperature } = design.tank.load!;
  const through = conductance * (tank.temperature[house.loadNode]! - temperature);
  const wanted = (Math.min(through, power) * 3600) / steps;
  const left = dailyHeat === null ? wanted : Math.min(wanted, dailyHeat - house.loadToday);
  const taken = coolByLoad(tank.temperature, house.loadNode, tank.nodeCapacity, left, leastTemperature);
  house.loadToday += taken;
  columns.loadHeat[hour]! += taken;
}

/** The same house without the sun: its heater is fed by the mains. */
export function stepBaseline(machine: Machine, hour: number, steps: number): void {
  const { books, columns, design, house } = machine;
  const { baseline } = house;
  const { cop } = baseline;
  const withPv = machine.drivers.sparePv !== null;
  let heat = 0;
  let pumped = 0;
  let free = 0;
  for (let step = 0; step < steps; step++) {
    feedBaseline(machine, hour, step, steps);
    heat += baseline.burnerHeat;
    if (cop !== null) pumped += baseline.electricity;
    else if (withPv) free += fromPv(machine, baseline, baseline.burnerHeat, hour, 3600 / steps);
    books.baselineLoss[hour]! += baseline.loss + baseline.ringLoss;
  }
  columns.baselineHeat[hour] = heat;
  columns.baselineFuel[hour] = cop === null ? Math.max(heat / design.baseline.burnerEfficiency - free, 0) : pumped;
  columns.baselineElectricity[hour] =
    (controlsRun(machine, hour, 0) ? design.baseline.standbyPower * 3600 : 0) + ringPumpEnergy(machine, hour);
}

function feedBaseline(machine: Machine, hour: number, step: number, steps: number): void {
  const { baseline } = machine.house;
  const wanted = wantedVolume(machine, hour, step, steps);
  if (wanted <= 0) {
    baseline.burnerHeat = 0;
    baseline.loss = 0;
    baseline.ringLoss = 0;
    keepWarm(baseline, 3600 / steps);
    return;
  }
  const taps = tapsIn(machine, hour, step, steps, wanted);
  const { mains, flow, duration } = taps;
  baseline.drawnFor += runningTime(machine);
  const share = settleMixing(baseline, mains, taps);
  const extra = machine.drivers.hotPipe === null ? 0 : forPipe(machine, baseline, hour, mains);
  const hot = wanted * share + extra;
  heatWater(baseline, hot, mains, flow * share, duration);
  const lost = extra * WATER_HEAT_CAPACITY * (baseline.outlet - mains);
  machine.books.baselineTapHeat[hour]! += hot * WATER_HEAT_CAPACITY * (baseline.outlet - mains) - lost;
  machine.books.baselineLoss[hour]! += lost;
}
