import type { HotPipeDesign, RingDesign } from '../../design/design.ts';
import { requireNumber } from '../../input/errors.ts';
import { type InsulatedPipe, pipeLossConductance, pipeOutlet } from '../loop/pipe.ts';

/** Water and copper of a pipe, handbook values near 20 °C. [J/(m³·K)] */
const WATER = 998 * 4180;
const COPPER = 8900 * 385;

/** A pipe of hot water: its loss, and the heat that it holds. */
export interface HotPipe extends InsulatedPipe {
  /** Whole length; of a ring there and back. [m] */
  readonly length: number;
  /** Bore. [m] */
  readonly innerDiameter: number;
}

/** What is asked of a ring. */
export interface RingQuery extends HotPipe {
  /** Heat capacity rate of the water that goes round, ṁ c_p. [W/K] */
  readonly capacityRate: number;
  /** Water that goes in. [°C] */
  readonly supply: number;
  /** Air around the pipe. [°C] */
  readonly surroundings: number;
  /** Rest between two runs of the pump; 0: it runs all day. [s] */
  readonly rest: number;
  /** Film on the outside, 10 by default (judgement). [W/(m²·K)] */
  readonly filmCoefficient?: number;
}

/** What a ring loses. */
export interface RingLoss {
  /** U', per metre and kelvin. [W/(m·K)] */
  readonly conductance: number;
  /** C', water and copper of a metre. [J/(m·K)] */
  readonly capacity: number;
  /** C'/U', with which it cools at rest. [s] */
  readonly timeConstant: number;
  /** Water that comes back. [°C] */
  readonly returned: number;
  /** While the pump runs. [W] */
  readonly running: number;
  /** Put back into the pipe at each start: what it lost in the rest before. [J] */
  readonly start: number;
}

/** Water and copper of a metre of pipe. [J/(m·K)] */
const capacityOf = ({ innerDiameter, pipeOuterDiameter }: HotPipe): number =>
  (Math.PI / 4) * (WATER * innerDiameter ** 2 + COPPER * (pipeOuterDiameter ** 2 - innerDiameter ** 2));

/**
 * Loss of a recirculation ring while its pump runs, and of its rests.
 *
 *     T_return = T_a + (T_s − T_a) e^(−U' L/(ṁ c_p)),   Q̇ = ṁ c_p (T_s − T_return)
 *     C' = ρc π d²/4 + ρ_Cu c_Cu π (D² − d²)/4,   τ = C'/U'
 *     at a start   Q = (C'/U') ṁ c_p (T_s − T_return)(1 − e^(−t_rest/τ))
 *
 * Each place of the resting pipe cools with τ, and what it lost is put back when the pump starts. Insulation holds no heat; inside film
 * and pipe wall are left out.
 *
 * @throws {@link DesignError} for a value out of range.
 * @see Any textbook of heat transfer; the rests by definition.
 */
export function recirculationLoss(query: RingQuery): RingLoss {
  const { capacityRate, length, rest, supply, surroundings } = query;
  requireNumber('length', length, 0.1, 10_000, 'm');
  requireNumber('innerDiameter', query.innerDiameter, 0.001, query.pipeOuterDiameter, 'm');
  requireNumber('capacityRate', capacityRate, 0.1, 1e6, 'W/K');
  requireNumber('supply', supply, 0, 120, '°C');
  requireNumber('surroundings', surroundings, -50, 60, '°C');
  requireNumber('rest', rest, 0, 3.2e7, 's');
  const conductance = pipeLossConductance(query, query.filmCoefficient);
  const capacity = capacityOf(query);
  const timeConstant = capacity / conductance;
  const returned = pipeOutlet(supply, surroundings, (conductance * length) / capacityRate);
  const running = capacityRate * (supply - returned);
  return {
    conductance,
    capacity,
    timeConstant,
    returned,
    running,
    start: timeConstant * running * cooled(rest, timeConstant),
  };
}

/** Share of its excess that a resting pipe has lost. */
const cooled = (rest: number, timeConstant: number): number => -Math.expm1(-rest / timeConstant);

/**
 * Loss of a ring per kelvin over its surroundings, hour by hour: that of running, and in the hour of a start what the rest took; 0 at rest.
 *
 * @param ring - From the design.
 * @param mayRun - Whether the pump has power and its timer lets it run. Shape [8760].
 * @param waterCapacity - Of the water that goes round. [J/(m³·K)]
 * @returns Shape [8760]. [W/K]
 * @internal
 */
export function ringHours(ring: RingDesign, mayRun: Uint8Array, waterCapacity: number): Float64Array {
  const at = (rest: number) =>
    recirculationLoss({
      ...ring,
      pipeOuterDiameter: ring.outerDiameter,
      capacityRate: ring.flow * waterCapacity,
      supply: 1 + ring.surroundings,
      rest,
    });
  const { running } = at(0);
  const conductance = new Float64Array(mayRun.length);
  let rest = restBefore(mayRun);
  mayRun.forEach((runs, hour) => {
    if (runs === 0) {
      rest++;
      return;
    }
    conductance[hour] = running + (rest > 0 ? at(3600 * rest).start / 3600 : 0);
    rest = 0;
  });
  return conductance;
}

/** Hours of rest at the end of a year that comes round. [h] */
function restBefore(mayRun: Uint8Array): number {
  const last = mayRun.lastIndexOf(1);
  return last < 0 ? 0 : mayRun.length - 1 - last;
}

/** When in the year water is drawn, in equal parts of the hour. */
interface DrawMoments {
  /** Parts of an hour. */
  readonly parts: number;
  /** Whether water is drawn in a part. */
  readonly drawn: (part: number) => boolean;
  /** How long the taps run in an hour. [s] */
  readonly running: (hour: number) => number;
}

/**
 * Heat that the pipe between heater and taps takes in an hour, per kelvin of hot water over its surroundings: at each draw what the pipe
 * cooled since the last one, and its loss while water runs. A draw begins in a part of the hour with water after one without; where draws
 * have no minutes, an hour with water is one draw.
 *
 * @returns Shape [8760]. [J/K]
 * @internal
 */
export function hotPipeHours(pipe: HotPipeDesign, { parts, drawn, running }: DrawMoments): Float64Array {
  const whole = { ...pipe, pipeOuterDiameter: pipe.outerDiameter };
  const loss = pipeLossConductance(whole) * pipe.length;
  const heat = capacityOf(whole) * pipe.length;
  const length = 3600 / parts;
  const hours = new Float64Array(8760);
  let idle = Number.POSITIVE_INFINITY;
  for (let part = 0; part < hours.length * parts; part++) {
    if (!drawn(part)) {
      idle += length;
      continue;
    }
    const hour = Math.trunc(part / parts);
    // Of an hour's single draw the rest is the hour less the time that it runs.
    const rest = parts === 1 ? Math.max(idle + length - running(hour), 0) : idle;
    if (rest > 0) hours[hour]! += heat * cooled(rest, heat / loss);
    idle = 0;
  }
  for (let hour = 0; hour < hours.length; hour++) hours[hour]! += loss * running(hour);
  return hours;
}
