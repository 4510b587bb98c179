/** Module, drive, pump and friction, solved anew in each step: docs/theory/pv.md, pump-and-control.md and loop.md. */
import type { SystemDesign } from '@noonloop/sim-core';
import {
  type CompiledFluid,
  compileFluid,
  fluidDensity,
  fluidViscosity,
  frictionFactor,
  moduleParameters,
} from '@noonloop/sim-core/formulas';

const GRAVITY = 9.80665;
const water = compileFluid('water', 0);

/** Where f(x) passes 0, f rising; from a bracket, by false position with the Illinois rule. */
export function rootOf(f: (x: number) => number, low: number, high: number, close: number): number {
  let [a, b, fa, fb] = [low, high, f(low), f(high)];
  if (fa >= 0) return a;
  if (fb <= 0) return b;
  let side = 0;
  for (let round = 0; round < 200 && b - a > close; round++) {
    const x = (a * fb - b * fa) / (fb - fa);
    const fx = f(x);
    if (fx === 0) return x;
    if (fx > 0) {
      [b, fb] = [x, fx];
      if (side > 0) fa /= 2;
      side = 1;
    } else {
      [a, fa] = [x, fx];
      if (side < 0) fb /= 2;
      side = -1;
    }
    if (Math.abs(fx) < 1e-12 * (Math.abs(fa) + Math.abs(fb))) return x;
  }
  return 0.5 * (a + b);
}

/** Pressure drop of the loop at a flow [m³/s]. [Pa] */
export function loopDrop(
  { array, coil, loop, tank }: SystemDesign,
  fluid: CompiledFluid,
  t: number,
  flow: number,
): number {
  if (flow <= 0) return 0;
  const [density, viscosity] = [fluidDensity(fluid, t), fluidViscosity(fluid, t)];
  const dynamic = (bore: number) => 0.5 * density * ((4 * flow) / (Math.PI * bore * bore)) ** 2;
  const reynolds = (bore: number) => (4 * density * flow) / (Math.PI * bore * viscosity);
  const bore = loop.pipeInnerDiameter;
  const pipe = (frictionFactor(reynolds(bore), 1.5e-6 / bore) * loop.pipeLength) / bore + loop.fittingLoss;
  const { collector, inSeries, panels } = array;
  const share = flow / (panels / inSeries) / collector.ratedFlow;
  const panel =
    collector.ratedPressureDrop *
    0.5 *
    ((viscosity / fluidViscosity(water, 20)) * share + (density / fluidDensity(water, 20)) * share * share);
  const exchanger =
    loop.exchanger === 'plate'
      ? (loop.plate.ratedPressureDrop * (density / fluidDensity(water, 20)) * flow * flow) / loop.plate.ratedFlow ** 2
      : [coil, ...(tank.second === null ? [] : [tank.second.coil])].reduce(
          (drop, { innerDiameter, length, windingDiameter }) =>
            drop +
            (dynamic(innerDiameter) * coilFriction(reynolds(innerDiameter), innerDiameter / windingDiameter) * length) /
              innerDiameter,
          0,
        );
  return pipe * dynamic(bore) + inSeries * panel + exchanger;
}

/** Friction factor of a coiled tube: White (1929), Mishra & Gupta (1979); the larger counts. */
function coilFriction(reynolds: number, curvature: number): number {
  const dean = reynolds * Math.sqrt(curvature);
  const bend = dean > 11.6 ? 1 - (1 - (11.6 / dean) ** 0.45) ** (1 / 0.45) : 1;
  const turbulent = 0.3164 * reynolds ** -0.25 + 0.03 * Math.sqrt(curvature);
  return dean > 11.6 ? Math.max(64 / reynolds / bend, turbulent) : 64 / reynolds;
}

/** Speed at which the pump meets the loop at a flow: H = s² H0 − (H0/Q0²) Q². */
function speedFor(design: SystemDesign, fluid: CompiledFluid, t: number, flow: number): number {
  const { shutOffHead, openFlow } = design.pump;
  const head = loopDrop(design, fluid, t, flow) / (fluidDensity(fluid, t) * GRAVITY);
  return Math.sqrt((head + shutOffHead * (flow / openFlow) ** 2) / shutOffHead);
}

/** Electrical power of the pump at a speed and flow: s³ [P0 + (P1 − P0) Q/(s Q0)]. */
function powerAt({ pump }: SystemDesign, speed: number, flow: number): number {
  if (speed <= 0) return 0;
  const open = flow / (speed * pump.openFlow);
  return speed ** 3 * (pump.shutOffPower + (pump.openFlowPower - pump.shutOffPower) * open);
}

/** The module in one light, for all modules together. */
interface Module {
  /** Current at a voltage. [A] */
  readonly current: (voltage: number) => number;
  /** Most power. [W] */
  readonly mostPower: () => number;
}

type Sheet = ReturnType<typeof moduleParameters>;

/** The modules in a light at an air temperature. */
function moduleIn({ pv }: SystemDesign, at: Sheet, light: number, air: number): Module {
  const { module } = pv;
  const rated =
    module.area === null ? 0 : (module.maximumPowerCurrent * module.maximumPowerVoltage) / (1000 * module.area);
  const cell = air + ((module.nominalOperatingCellTemperature - 20) / 800) * light * (1 - rated / 0.9);
  const [kelvin, reference, boltzmann] = [cell + 273.15, 298.15, 1.380649e-23 / 1.602176634e-19];
  const gap = 1.121 * (1 - 0.0002677 * (kelvin - reference));
  const photo = (light / 1000) * (at.photocurrent + at.currentTemperatureCoefficient * (cell - 25));
  const dark =
    at.saturationCurrent *
    (kelvin / reference) ** 3 *
    Math.exp(1.121 / (boltzmann * reference) - gap / (boltzmann * kelvin));
  const ideality = (at.modifiedIdeality * kelvin) / reference;
  const shunt = (at.shuntConductance * light) / 1000;
  const inside = (diode: number) => photo - dark * Math.expm1(diode / ideality) - shunt * diode;
  const terminals = (diode: number) => diode - at.seriesResistance * inside(diode);
  const most = ideality * Math.log1p(photo / dark);
  return {
    current: (voltage) => {
      let [low, high] = [0, 1.3 * most];
      for (let halving = 0; halving < 40; halving++) {
        const middle = 0.5 * (low + high);
        if (terminals(middle) < voltage) low = middle;
        else high = middle;
      }
      return pv.modules * inside(low);
    },
    mostPower: () => {
      let [low, high] = [0, most];
      const power = (diode: number) => inside(diode) * terminals(diode);
      for (let round = 0; round < 36; round++) {
        const third = (high - low) / 3;
        if (power(low + third) < power(high - third)) low += third;
        else high -= third;
      }
      return pv.modules * power(0.5 * (low + high));
    },
  };
}

/** What the drive offers in a step: what a standing and a turning pump are measured by, and the flow once it turns. */
export interface Supply {
  /** Power of the booster [W], current of the standing rotor [A], or no limit. */
  readonly offered: number;
  /** Flow and electrical power taken at the module or from the mains. */
  readonly turn: (fluid: CompiledFluid, t: number) => { flow: number; power: number };
}

/** The drive of a design: what it offers in a light on its module, at an air temperature. */
export function driveOf(design: SystemDesign): (light: number, air: number) => Supply {
  const at = moduleParameters(design.pv.module);
  return (light, air) => supplyIn(design, at, light, air);
}

function supplyIn(design: SystemDesign, at: Sheet, light: number, air: number): Supply {
  const { pump } = design;
  const rated = (fluid: CompiledFluid, t: number) =>
    rootOf((flow) => speedFor(design, fluid, t, flow) - 1, 0, pump.openFlow, 1e-13);
  if (pump.drive === 'mains') {
    return {
      offered: Number.POSITIVE_INFINITY,
      turn: (fluid, t) => {
        const flow = rated(fluid, t);
        return { flow, power: powerAt(design, 1, flow) };
      },
    };
  }
  const standing = { offered: 0, turn: () => ({ flow: 0, power: 0 }) };
  if (!(light > 0)) return standing;
  const module = moduleIn(design, at, light, air);
  if (pump.drive === 'booster') {
    const offered = pump.boosterEfficiency * module.mostPower();
    return {
      offered,
      turn: (fluid, t) => {
        const full = rated(fluid, t);
        const most = powerAt(design, 1, full);
        const taken = (flow: number) => powerAt(design, speedFor(design, fluid, t, flow), flow);
        const flow = offered >= most ? full : rootOf((x) => taken(x) - offered, 0, full, 1e-13);
        return { flow, power: Math.min(offered, most) / pump.boosterEfficiency };
      },
    };
  }
  const { frictionCurrent, ratedVoltage, windingResistance } = pump.motor;
  const emf = ratedVoltage - (windingResistance * pump.openFlowPower) / ratedVoltage;
  // The torque balance: I = I_f + s² (I_r − I_f), R I_r² + E I_r = P0 + (P1 − P0) q.
  const currentAt = (speed: number, flow: number) => {
    const power = pump.shutOffPower + ((pump.openFlowPower - pump.shutOffPower) * flow) / (speed * pump.openFlow);
    const ofRated = (Math.sqrt(emf * emf + 4 * windingResistance * power) - emf) / (2 * windingResistance);
    return frictionCurrent + speed * speed * (ofRated - frictionCurrent);
  };
  return {
    offered: rootOf((current) => current - module.current(windingResistance * current), 0, 50, 1e-9),
    turn: (fluid, t) => {
      const lacking = (flow: number) => {
        const speed = speedFor(design, fluid, t, flow);
        const current = currentAt(speed, flow);
        return current - module.current(emf * speed + windingResistance * current);
      };
      if (lacking(1e-9) >= 0) return { flow: 0, power: 0 };
      const flow = rootOf(lacking, 1e-9, 3 * pump.openFlow, 1e-12);
      const speed = speedFor(design, fluid, t, flow);
      const current = currentAt(speed, flow);
      return { flow, power: current * (emf * speed + windingResistance * current) };
    },
  };
}
