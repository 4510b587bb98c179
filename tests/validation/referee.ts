import { defineSystem } from '@noonloop/sim-core';
import { compileFluid } from '../../packages/sim-core/src/physics/fluid/compile.ts';
import { compileCircuit } from '../../packages/sim-core/src/physics/loop/circuit-design.ts';
import { circulate } from '../../packages/sim-core/src/physics/loop/coil-step.ts';
import { layContent, restCoil, standStill } from '../../packages/sim-core/src/physics/loop/standing.ts';
import { mixInversions } from '../../packages/sim-core/src/physics/tank/inversion.ts';
import { nodeConductances } from '../../packages/sim-core/src/physics/tank/losses.ts';
import {
  compileTank,
  coolTank,
  drawFromTank,
  restParts,
  restTank,
} from '../../packages/sim-core/src/physics/tank/tank.ts';
import { HOT_START } from '../../packages/sim-core/src/year/events.ts';
import { FINENESS } from '../../packages/sim-core/src/year/stepping.ts';
import { plainInput } from '../examples.ts';
import { conditions, loopStep } from '../sim-core/physics/loop/one-step.ts';
import { integrateStep, type LoopDrive, type LoopParameters } from './loop-equations.ts';

const COLLECTOR_NODES = 4;
const MAINS = 10;
/** An hour after a jump. */
const JUMP_STEPS = 12;

/** A clear day of our own, the same light for both sides: constant within each twelfth of an hour, air within the hour. */
export interface Day {
  readonly name: string;
  /** Hours at which the tank gives up four nodes of water, in no time. */
  readonly draws: readonly number[];
  /** Hours between which there is no power for the pump. */
  readonly outage: readonly [number, number];
  /** Start of the tank: bottom, middle, top third. [°C] */
  readonly tank: readonly [number, number, number];
  readonly coil: { readonly bottom: number; readonly top: number };
  /** What the fluid may differ just after a jump. [K] */
  readonly jumpLimit: number;
  /** Hours in which the quick run looks at it: those about its start, its draws or its outage. */
  readonly quick: readonly [from: number, to: number];
}

export const days: readonly Day[] = [
  {
    name: 'layered tank, draws at 7, 12 and 19 h',
    draws: [7, 12, 19],
    outage: [0, 0],
    tank: [15, 25, 40],
    coil: { bottom: 0.05, top: 0.4 },
    jumpLimit: 1.5,
    quick: [6, 13],
  },
  {
    name: 'cold tank, coil over nine tenths of it, no draw',
    draws: [],
    outage: [0, 0],
    tank: [12, 12, 12],
    coil: { bottom: 0.05, top: 0.95 },
    jumpLimit: 1.5,
    quick: [5, 8],
  },
  {
    name: 'pump without power from 11 to 14 h',
    draws: [8, 18],
    outage: [11, 14],
    tank: [30, 35, 45],
    coil: { bottom: 0, top: 0.5 },
    jumpLimit: 1.5,
    quick: [6, 15],
  },
];

function driveAt(day: Day, step: number): LoopDrive {
  const hour = (step + 0.5) / 12;
  const sun = Math.max(0, Math.sin((Math.PI * (hour - 6)) / 12));
  const ambient = 15 + 6 * Math.sin((Math.PI * (Math.trunc(hour) - 9)) / 12);
  const runs = sun > 0.2 && (hour < day.outage[0] || hour > day.outage[1]);
  return {
    absorbed: 750 * sun ** 1.3,
    ambient,
    capacityRate: runs ? 196 * (0.5 + 0.5 * sun) : 0,
    coilConductance: runs ? 200 * Math.sqrt(0.4 + 0.6 * sun) : 0,
  };
}

/**
 * Largest differences: tank, circuit (absorber, pipes) and the coil's content, in even running and in the hour after a jump: the pump starts or stops,
 * or a draw comes all at once. [K]
 */
export interface Differences {
  tank: number;
  circuit: number;
  coil: number;
  tankAfterJump: number;
  circuitAfterJump: number;
  coilAfterJump: number;
}

type Hours = Day['quick'];
const courses = new Map<string, readonly (readonly number[])[]>();

/** What the referee says after each twelfth of an hour, integrated once for the coarse and the fine comparison. */
function courseOf(day: Day, [from, to]: Hours, parameters: LoopParameters, start: readonly number[]) {
  const key = JSON.stringify([day, from, to, parameters, start]);
  const known = courses.get(key);
  if (known !== undefined) return known;
  const firstWater = start.length - parameters.tankLoss.length;
  let state = [...start];
  const course = Array.from({ length: 12 * (to - from) }, (_, at) => {
    const step = 12 * from + at;
    if (isDrawn(day, step)) {
      const water = state.slice(firstWater);
      state = [...state.slice(0, firstWater), ...new Array<number>(4).fill(MAINS), ...water.slice(0, -4)];
    }
    state = integrateStep(parameters, driveAt(day, step), state, 300);
    return state;
  });
  courses.set(key, course);
  return course;
}

/** Whether a draw falls on the start of a step. */
const isDrawn = (day: Day, step: number): boolean => step % 12 === 0 && day.draws.includes(step / 12);

/** Runs code and referee side by side. @param hours - Of the day; all of them if omitted. */
export function compare(day: Day, finer: number, hours: Hours = [0, 24]): Differences {
  const design = defineSystem({ ...plainInput, coil: day.coil });
  const { tank: tankDesign } = design;
  const { nodes, height, volume } = tankDesign;
  const counts = [12 * finer, 12 * finer * FINENESS, 4 * finer, finer, finer * restParts(finer)];
  const fluid = compileFluid(design.loop.fluid, design.loop.glycolMassFraction);
  const circuit = compileCircuit(design, fluid, 12, { stepCounts: counts, collectorNodes: COLLECTOR_NODES });
  const { coil } = circuit;
  coil.films = null;
  const tank = compileTank(tankDesign, counts);
  tank.temperature.forEach((_, node) => {
    tank.temperature[node] = day.tank[Math.min(Math.trunc((3 * node) / nodes), 2)]!;
  });
  const parameters: LoopParameters = {
    nodeArea: circuit.nodeArea,
    absorberCapacity: circuit.nodeCapacity,
    a1: design.array.collector.a1,
    a2: design.array.collector.a2,
    collectorNodes: COLLECTOR_NODES,
    pipeCapacity: [...circuit.pipeCapacity],
    pipeConductance: [...circuit.pipeConductance],
    tankCapacity: tank.nodeCapacity,
    tankLoss: [...nodeConductances(tankDesign.lossCoefficient, volume, height, nodes)],
    tankConductance: (tankDesign.verticalConductivity * (volume / height)) / (height / nodes),
    coilBottom: coil.bottom,
    coilShare: [...coil.share],
    coilCapacity: coil.capacity,
    coilStanding: coil.standing,
    room: tank.room,
  };
  const content = COLLECTOR_NODES + circuit.pipe.length;
  const pieces = coil.temperature.length;
  const firstWater = content + pieces;
  coil.temperature.set(tank.temperature.subarray(coil.bottom, coil.bottom + pieces));
  const start = [...circuit.absorber, ...circuit.pipe, ...coil.temperature, ...tank.temperature];
  const course = courseOf(day, hours, parameters, start);
  const loop = loopStep(tank, conditions(0, 0, tank.room, 0), [0, 0, 0]);
  const worst: Differences = { tank: 0, circuit: 0, coil: 0, tankAfterJump: 0, circuitAfterJump: 0, coilAfterJump: 0 };
  let sinceJump = 99;
  let ran = false;
  for (let step = 12 * hours[0]; step < 12 * hours[1]; step++) {
    const drive = driveAt(day, step);
    sinceJump++;
    if (isDrawn(day, step)) {
      drawFromTank(tank, 4 * tank.nodeVolume, MAINS, 0);
      sinceJump = 0;
    }
    // The code steps as the year does: twelfths of an hour in light; in the dark quarters where there is a draw, else whole hours.
    const lit = driveAt(day, step - (step % 12)).absorbed > 0 || driveAt(day, step - (step % 12) + 11).absorbed > 0;
    const inHour = lit ? 12 : day.draws.includes(Math.trunc(step / 12)) ? 4 : 1;
    if (step % (12 / inHour) === 0) {
      // A start under a hot absorber is an event, like the high limit.
      const startsHot = !ran && drive.capacityRate > 0 && circuit.absorber[3]! - circuit.pipe[0]! > HOT_START;
      const parts = startsHot ? FINENESS : 1;
      const perHour = inHour * finer * parts;
      for (let part = 0; part < finer * parts; part++) {
        const { absorbed, ambient, capacityRate, coilConductance: conductance } = drive;
        Object.assign(loop.conditions, { absorbed, ambient, duration: 3600 / perHour });
        if (capacityRate > 0) {
          Object.assign(loop.stream, { capacityRate, conductance });
          circulate(circuit, loop);
          restTank(tank, perHour, loop.exchange.coilRise);
        } else {
          standStill(circuit, perHour, loop.conditions, loop.exchange);
          const rests = restParts(perHour);
          for (let rest = 0; rest < rests; rest++) {
            coolTank(tank, perHour * rests);
            restCoil(coil, tank, 3600 / (perHour * rests));
            mixInversions(tank.temperature);
          }
        }
      }
    }
    if (drive.capacityRate > 0 !== ran) sinceJump = 0;
    ran = drive.capacityRate > 0;
    if ((step + 1) % (12 / inHour) !== 0) continue;
    if (coil.passed) layContent(coil, tank.temperature);
    const ours = [...circuit.absorber, ...circuit.pipe, ...coil.temperature, ...tank.temperature];
    ours.forEach((temperature, at) => {
      const part = at >= firstWater ? 'tank' : at >= content ? 'coil' : 'circuit';
      const kind = sinceJump < JUMP_STEPS ? (`${part}AfterJump` as const) : part;
      worst[kind] = Math.max(worst[kind], Math.abs(temperature - course[step - 12 * hours[0]]![at]!));
    });
  }
  return worst;
}
