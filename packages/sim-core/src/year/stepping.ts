/** In what parts an hour is taken. */
import type { WeatherYear } from '@noonloop/weather-io';
import type { SystemDesign, TankDesign } from '../design/design.ts';
import { DesignError, quote } from '../input/errors.ts';
import { heatsInTank } from '../physics/backup/heater.ts';
import { drawsWithinHours } from '../physics/draw/schedule.ts';
import { stepsFor } from '../physics/sun/track.ts';
import { restParts } from '../physics/tank/tank.ts';
import type { OwnComponents } from './own.ts';

/** Steps in place of one where the high limit or a controller by temperature difference may act. */
export const FINENESS = 8;
/** Steps in an hour with sun without a check valve, at least; from the convergence test. */
const SIPHON_STEPS = 12;
/** Nodes of each panel in series, and of a pipe section; a front is smeared over the section, see docs/theory/loop.md. */
const COLLECTOR_NODES = 4;
const PIPE_NODES = 1;
/** Finest step, a quarter of a minute, finest array and finest pipe. */
const MOST_STEPS = 240;
const MOST_COLLECTOR_NODES = 100;
const MOST_PIPE_NODES = 50;
/** Nodes of tank, pipes and array times steps in an hour from which a year would take many minutes; judgement. */
const MOST_WORK = 200_000;

/** How a run is stepped. */
export interface StepOptions {
  /** Steps in an hour with sun. Default 6 (10 minutes), 12 with draws by the minute, an element or a stirring inlet in the tank, or without a check valve; from the convergence tests. With light at the weather's own step (`fineLight`) the next multiple of it. */
  readonly stepsPerHour?: number;
  /** Nodes along the flow of each panel in series. Default 4, from the same test. */
  readonly collectorNodes?: number;
  /** Nodes of each of the four pipe sections (hot and cold, outdoors and indoors). Default 1, from the same test. */
  readonly pipeNodes?: number;
  /** Parts of your own in the step: plain functions. Default none, and then they cost nothing. */
  readonly own?: OwnComponents;
}

/** In what parts the hours of a run are taken, and its circuit is cut. */
export interface Stepping {
  /** Steps in an hour with sun. */
  readonly stepsPerHour: number;
  /** Steps in an hour with no light that is not quiet: with draw, element or flow by buoyancy. */
  readonly darkSteps: number;
  /** Parts of a step in light where buoyancy may drive the loop: it is not followed in longer ones than of five minutes. */
  readonly siphonParts: number;
  /** Every number of steps an hour that the run may use. */
  readonly stepCounts: readonly number[];
  /** Nodes of the array along the flow. */
  readonly collectorNodes: number;
  /** Nodes of each pipe section. */
  readonly pipeNodes: number;
}

/**
 * Steps of a design by the options, or by its own kind.
 *
 * @throws {@link DesignError} for an option out of its range.
 */
export function compileStepping(design: SystemDesign, weather: WeatherYear, options: StepOptions): Stepping {
  const { array, loop, tank } = design;
  const stepsPerHour = options.stepsPerHour ?? stepsFor(weather, defaultSteps(design));
  const perPanel = options.collectorNodes ?? COLLECTOR_NODES;
  const pipeNodes = options.pipeNodes ?? PIPE_NODES;
  requireCount('stepsPerHour', stepsPerHour, MOST_STEPS);
  requireCount('collectorNodes', perPanel, MOST_COLLECTOR_NODES);
  requireCount('pipeNodes', pipeNodes, MOST_PIPE_NODES);
  requireBearable(tank.nodes + (tank.second?.nodes ?? 0) + 4 * pipeNodes + perPanel * array.inSeries, stepsPerHour);
  // Draws that have their minutes, and a jet that stirs, want them resolved at night too.
  const evenly = !drawsWithinHours(design.draw) && !isStirred(tank);
  const darkSteps = evenly ? Math.max(1, Math.round(stepsPerHour / 3)) : stepsPerHour;
  const siphonParts = loop.checkValve ? 1 : Math.ceil(SIPHON_STEPS / stepsPerHour);
  const whole = [stepsPerHour, stepsPerHour * siphonParts, stepsPerHour * FINENESS, darkSteps, 1];
  return {
    stepsPerHour,
    darkSteps,
    siphonParts,
    stepCounts: [...whole, ...whole.map((count) => count * restParts(count))],
    collectorNodes: perPanel * array.inSeries,
    pipeNodes,
  };
}

/**
 * Steps in an hour with sun where none are asked for, from the convergence tests: 6; twice as many where draws have their minutes, where
 * an element's heat and the draw's are to be told apart, where the mains stir the tank, and where buoyancy drives the loop.
 */
function defaultSteps({ draw, heater, loop, tank }: SystemDesign): number {
  return drawsWithinHours(draw) || heatsInTank(heater) || isStirred(tank) || !loop.checkValve ? 12 : 6;
}

/** Whether an inlet stirs a tank. */
const isStirred = ({ inletDiameter, second }: TankDesign): boolean =>
  inletDiameter !== null || (second !== null && second.inletDiameter !== null);

function requireCount(path: string, value: number, most: number): void {
  if (Number.isInteger(value) && value >= 1 && value <= most) return;
  const expected = `a whole number from 1 to ${most}`;
  throw new DesignError([{ path, found: quote(value), expected, remedy: 'Leave the option out for its default.' }]);
}

function requireBearable(nodes: number, stepsPerHour: number): void {
  if (nodes * stepsPerHour <= MOST_WORK) return;
  throw new DesignError([
    {
      path: 'stepsPerHour',
      found: `${stepsPerHour}, with ${nodes} nodes in tank, pipes and array`,
      expected: `at most ${Math.floor(MOST_WORK / nodes)} with so many nodes, or a year would take many minutes`,
      remedy: 'Take fewer steps or nodes; the defaults hold the year to 0.1 %.',
    },
  ]);
}
