/**
 * The whole system once more, explicit and slow, in steps of 30 s, written from docs/theory. Taken from the library, because checked apart: properties of fluids
 * and boiling points, the sun's position and Perez' sky, diffuse incidence modifiers, the module's five parameters, friction factor and Nusselt
 * numbers, effectiveness of a counterflow exchanger, the tapping profiles. All else is written here.
 */
import type { BalancePart, RunColumns, SystemDesign } from '@noonloop/sim-core';
import { boilingPoint, compileFluid, fluidDensity, fluidSpecificHeat } from '@noonloop/sim-core/formulas';
import type { WeatherYear } from '@noonloop/weather-io';
import { Books } from './books.ts';
import { ReferenceControl } from './control.ts';
import { HOURS } from './days.ts';
import { atTaps, ReferenceHeater, sparePower, tapsOf } from './house.ts';
import { lightOnPlane, skyDeficit, windOver } from './light.ts';
import { type Around, type Exchange, ReferenceLoop } from './loop.ts';
import { ReferencePressure } from './pressure.ts';
import { driveOf } from './pump.ts';
import { buoyantFlow } from './siphon.ts';
import { heatFrom, plugFlow, relieve, rest, tankOf, turnOver, WATER } from './tank.ts';

/** What the model says of the ten days. */
export interface ReferenceRun {
  readonly columns: Record<keyof RunColumns, Float64Array>;
  /** Of a second tank; 0 without. */
  readonly second: Record<'bottomTemperature' | 'coilHeat' | 'loss' | 'meanTemperature' | 'topTemperature', number[]>;
  readonly balance: Record<BalancePart, { in: number; out: number; stored: number }>;
  readonly loop: { leaked: number; madeUp: number; longestSteam: number };
}

/** Of a step. [s] */
const SECONDS = 30;

/** Lives through the ten days, or the first hours of them. */
export function referenceRun(design: SystemDesign, weather: WeatherYear, hours = HOURS): ReferenceRun {
  const steps = 3600 / SECONDS;
  const { array, control, loop } = design;
  const { collector } = array;
  const { dryBulb } = weather.columns;
  const plane = lightOnPlane(design, array, weather, { steps, hours });
  const module = lightOnPlane(design, design.pv, weather, { steps, hours });
  const deficit = skyDeficit(weather, array.tilt);
  const fluid = compileFluid(loop.fluid, loop.glycolMassFraction);
  const ring = new ReferenceLoop(design, fluid, dryBulb[0]!);
  const air = 101_325 * (1 - 2.25577e-5 * weather.site.elevation) ** 5.25588;
  const tank = tankOf(design);
  const { second } = design.tank;
  if (second !== null) {
    const room = { ...design.tank, ...second, roomTemperature: second.roomTemperature ?? design.tank.roomTemperature };
    const loopBehind = new ReferenceLoop({ ...design, coil: second.coil, tank: room }, fluid, dryBulb[0]!);
    ring.behind = { loop: loopBehind, tank: tankOf({ tank: room }) };
  }
  const other = ring.behind?.tank ?? null;
  const tanks = other === null ? [tank] : [tank, other];
  const hottestWater = () => Math.max(...tanks.map(({ nodes }) => nodes.at(-1)!));
  const stored = () => tanks.reduce((total, { capacity, nodes }) => total + sum(nodes) * capacity, 0);
  const pressure = new ReferencePressure(design, fluid, ring, air);
  pressure.settle(true);
  const switches = new ReferenceControl(design);
  const supplyOf = driveOf(design);
  const mains = design.draw.mains as number;
  const taps = tapsOf(design, HOURS, () => mains);
  const target = design.draw.mixingValve
    ? Math.min(design.draw.tapTemperature, design.draw.valveTemperature)
    : design.draw.tapTemperature;
  const heater = new ReferenceHeater(design.heater, target);
  const baseline = new ReferenceHeater(design.baseline, target);
  const element = design.heater.kind === 'element' ? Math.trunc(design.heater.elementHeight * design.tank.nodes) : -1;
  const limit =
    control.stagnationLimit ?? Math.min(120, boilingPoint(loop.fluid, loop.glycolMassFraction, loop.pressure + air));
  const books = new Books({
    collector: ring.arrayHeat(),
    pipes: ring.pipeHeat(),
    tank: stored(),
    heater: heater.heat(),
    baseline: baseline.heat(),
  });
  const { columns } = books;
  const column = () => new Array<number>(HOURS).fill(0);
  const [topTemperature, bottomTemperature, meanTemperature] = [column(), column(), column()];
  const behind = { topTemperature, bottomTemperature, meanTemperature, loss: column(), coilHeat: column() };
  let flowGuess = 0;

  for (let hour = 0; hour < hours; hour++) {
    const cold = dryBulb[hour]!;
    const blackout = isOut(design, 'power', hour);
    const pumpOut = isOut(design, 'pump', hour) || (blackout && design.pump.drive === 'mains');
    heater.out = blackout && heater.needsMains;
    baseline.out = blackout && baseline.needsMains;
    const u = windOver(weather, array.windFactor, hour);
    const skyShare = collector.skyCoefficient - collector.a7 * u;
    columns.ambientTemperature[hour] = cold;
    columns.mainsTemperature[hour] = mains;
    columns.tapVolume[hour] = taps.volume[hour]!;
    columns.tapTemperature[hour] = mains;
    books.highest('absorberTemperature', hour, -Infinity, Math.max(...ring.absorber));
    books.lowest('absorberMinimumTemperature', hour, Infinity, Math.min(...ring.absorber));
    books.highest('tankMaximumTemperature', hour, -Infinity, hottestWater());
    books.highest('loopMaximumPressure', hour, -Infinity, pressure.gauge);
    books.lowest('pipeMinimumTemperature', hour, Infinity, Math.min(ring.pipe[0]!, ring.pipe[3]!));
    let outletSum = 0;
    let spare = 0;
    for (let step = 0; step < steps; step++)
      spare += sparePower(design, module.total[hour * steps + step]!, cold) / steps;
    let baselineSpared = 0;
    const fromPv = (heat: number, of: ReferenceHeater) =>
      of.out ? 0 : Math.min(heat / of.design.burnerEfficiency, spare * SECONDS);
    for (let step = 0; step < steps; step++) {
      const at = hour * steps + step;
      const light = plane.total[at]!;
      const wind = collector.eta0 * plane.effective[at]! - collector.a6 * u * light;
      const byDay =
        Math.max(wind, 0) - (collector.a4 === null ? 0 : (collector.a4 - collector.a7 * u) * deficit[hour]!);
      const around: Around = {
        absorbed: light > 0 ? byDay : -skyShare * deficit[hour]!,
        air: cold,
        room: design.tank.roomTemperature,
        a1: collector.a1 + collector.a3 * u,
      };
      columns.irradiance[hour]! += light / steps;
      columns.pvIrradiance[hour]! += module.total[at]! / steps;

      const supply = supplyOf(module.total[at]!, cold);
      const turns = switches.decide(supply.offered, ring, tank, hour, pumpOut, SECONDS);
      if (switches.heldOff) columns.highLimit[hour]! += 1 / steps;
      let done: Exchange | null = null;
      if (turns && !ring.boiling && pressure.top < loop.minimumPressure) columns.lowPressure[hour]! += 1 / steps;
      const mean = ring.mean();
      const perFlow = fluidDensity(fluid, mean) * fluidSpecificHeat(fluid, mean);
      const mayFlow = !ring.boiling && pressure.top >= loop.minimumPressure;
      if (turns && mayFlow) {
        const { flow, power } = supply.turn(fluid, mean);
        if (flow > 0) {
          done = ring.flow(tank, flow, flow * perFlow, around, SECONDS);
          columns.pumpRunning[hour]! += 1 / steps;
          columns.loopFlow[hour]! += flow / steps;
          columns[design.pump.drive === 'mains' ? 'pumpElectricity' : 'pumpPvEnergy'][hour]! += power * SECONDS;
          outletSum += done.outlet;
        }
      }
      if (done === null && mayFlow && !loop.checkValve) {
        flowGuess = buoyantFlow(design, ring, tank, flowGuess);
        if (flowGuess !== 0) {
          done = ring.flow(tank, Math.abs(flowGuess), Math.abs(flowGuess) * perFlow, around, SECONDS, flowGuess < 0);
          columns.thermosiphonFlow[hour]! += flowGuess / steps;
          columns.thermosiphonHeat[hour]! -= done.coil;
        }
      }
      const flows = done !== null;
      const exchanged = done ?? ring.stand(tank, around, SECONDS);
      const relieved = pressure.settle(!flows);
      columns.loopReliefVolume[hour]! += relieved;
      if (relieved > 0) books.highest('loopMaximumPressure', hour, -Infinity, design.loop.reliefPressure);
      const gain = Math.max(around.absorbed, 0);
      const stagnation = cold + (2 * gain) / (around.a1 + Math.sqrt(around.a1 ** 2 + 4 * collector.a2 * gain));
      exchanged.loss += ring.settleBoiling(pressure.boils, flows, stagnation);
      if (ring.boiling) columns.boiling[hour]! += 1 / steps;
      books.loop(hour, exchanged);
      const hottest = Math.max(...ring.absorber);
      if (light >= 50 && !flows) {
        columns.noFlowInSun[hour]! += 1 / steps;
        if (hottest > limit) columns.stagnation[hour]! += 1 / steps;
      }

      turnOver(tank.nodes);
      columns.tankLoss[hour]! += rest(tank, design.tank.roomTemperature, SECONDS);
      turnOver(tank.nodes);
      const out = relieve(tank, design.tank.reliefTemperature, mains);
      columns.reliefVolume[hour]! += out.volume;
      columns.reliefHeat[hour]! += out.heat;
      if (other !== null) {
        turnOver(other.nodes);
        const lost = rest(other, second!.roomTemperature ?? design.tank.roomTemperature, SECONDS);
        columns.tankLoss[hour]! += lost;
        behind.loss[hour]! += lost;
        behind.coilHeat[hour]! += exchanged.coilBehind;
        turnOver(other.nodes);
      }

      if (element >= 0 && !heater.out) {
        const given = heatFrom(tank, element, design.heater.burnerPower * SECONDS, design.heater.setTemperature);
        columns.heaterHeat[hour]! += given;
        columns.solarHeat[hour]! -= given;
        books.element += given;
        columns.heaterPvEnergy[hour]! += fromPv(given, heater);
      }
      const wanted = { ...taps.within(hour, step * SECONDS, (step + 1) * SECONDS), mains, seconds: SECONDS };
      let fromTank = 0;
      const heated = heater.step(wanted, tank.nodes.at(-1)!, (hot) => {
        const between = other === null ? mains : plugFlow(other.nodes, hot / other.volume, mains);
        const outlet = plugFlow(tank.nodes, hot / tank.volume, between);
        fromTank = hot * WATER * (outlet - mains);
        return outlet;
      });
      columns.heaterHeat[hour]! += heated.burner;
      columns.heaterLoss[hour]! += heated.loss;
      columns.heaterPvEnergy[hour]! += fromPv(heated.burner, heater);
      columns.solarHeat[hour]! += fromTank;
      if (wanted.volume > 0) {
        const asked = wanted.volume * WATER * Math.max(design.draw.tapTemperature - mains, 0);
        const got = heated.hot * WATER * (heated.outlet - mains);
        columns.hotVolume[hour]! += heated.hot;
        columns.tapHeatAsked[hour]! += asked;
        columns.tapHeat[hour]! += got;
        books.highest('tapTemperature', hour, columns.tapTemperature[hour]!, atTaps(design, heated.outlet));
        if (heated.outlet < 59) columns.undisinfectedVolume[hour]! += heated.hot;
        if (heated.unfired) {
          columns.unfiredVolume[hour]! += heated.hot;
          if (heated.outlet < target) columns.unfiredShortfall[hour]! += Math.max(asked - got, 0);
        }
      }
      const without = baseline.step(wanted, mains, () => mains);
      columns.baselineHeat[hour]! += without.burner;
      books.baselineLoss += without.loss;
      baselineSpared += fromPv(without.burner, baseline);
      books.baselineTaps += without.hot * WATER * (without.outlet - mains);

      books.highest('absorberTemperature', hour, columns.absorberTemperature[hour]!, hottest);
      books.lowest(
        'absorberMinimumTemperature',
        hour,
        columns.absorberMinimumTemperature[hour]!,
        Math.min(...ring.absorber),
      );
      books.highest('tankMaximumTemperature', hour, columns.tankMaximumTemperature[hour]!, hottestWater());
      books.highest('loopMaximumPressure', hour, columns.loopMaximumPressure[hour]!, pressure.gauge);
      books.lowest(
        'pipeMinimumTemperature',
        hour,
        columns.pipeMinimumTemperature[hour]!,
        Math.min(ring.pipe[0]!, ring.pipe[3]!),
      );
    }
    const running = columns.pumpRunning[hour]! * steps;
    columns.collectorOutletTemperature[hour] = running > 0.5 ? outletSum / running : ring.absorber.at(-1)!;
    columns.tankTopTemperature[hour] = tank.nodes.at(-1)!;
    columns.tankBottomTemperature[hour] = tank.nodes[0]!;
    columns.tankMeanTemperature[hour] = sum(tank.nodes) / tank.nodes.length;
    if (other !== null) {
      behind.topTemperature[hour] = other.nodes.at(-1)!;
      behind.bottomTemperature[hour] = other.nodes[0]!;
      behind.meanTemperature[hour] = sum(other.nodes) / other.nodes.length;
    }
    columns.loopPressure[hour] = pressure.gauge;
    const { glycol, freezing } = pressure.tend();
    columns.glycolMassFraction[hour] = glycol;
    columns.freezingPoint[hour] = freezing;
    columns.heaterFuel[hour] =
      columns.heaterHeat[hour]! / design.heater.burnerEfficiency - columns.heaterPvEnergy[hour]!;
    columns.heaterElectricity[hour] = heater.out ? 0 : design.heater.standbyPower * 3600;
    columns.baselineFuel[hour] = columns.baselineHeat[hour]! / design.baseline.burnerEfficiency - baselineSpared;
    columns.baselineElectricity[hour] = baseline.out ? 0 : design.baseline.standbyPower * 3600;
  }
  const balance = books.close({
    collector: ring.arrayHeat(),
    pipes: ring.pipeHeat(),
    tank: stored(),
    heater: heater.heat(),
    baseline: baseline.heat(),
  });
  return {
    columns,
    second: behind,
    balance,
    loop: { leaked: pressure.leaked, madeUp: pressure.madeUp, longestSteam: pressure.longestSteam },
  };
}

const sum = (list: readonly number[]): number => list.reduce((total, value) => total + value, 0);

/** Whether an outage of January covers an hour. */
function isOut({ control }: SystemDesign, kind: 'pump' | 'power', hour: number): boolean {
  const day = Math.trunc(hour / 24) + 1;
  return control.outages.some(
    (outage) => outage.kind === kind && day >= Number(outage.from.slice(3)) && day <= Number(outage.to.slice(3)),
  );
}
