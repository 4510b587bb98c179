/** Effectiveness of heat exchangers; Kays & London, Compact Heat Exchangers, and any textbook of heat transfer. */
import { requireNumber } from '../../input/errors.ts';

/** ε of a stream that meets one temperature, 1 − exp(−NTU). @param ntu - UA/(ṁ c_p), 0 or more. [-] */
export const coilEffectiveness = (ntu: number): number => -Math.expm1(-ntu);

/**
 * ε of a counterflow exchanger.
 *
 *     ε = (1 − e^(−NTU (1 − C)))/(1 − C e^(−NTU (1 − C)));   C = 1: NTU/(1 + NTU)
 *
 * @param ntu - UA over the smaller ṁ c_p, 0 or more. [-]
 * @param ratio - C, smaller over larger ṁ c_p, 0 to 1. [-]
 */
export function counterflowEffectiveness(ntu: number, ratio: number): number {
  const gap = 1 - ratio;
  // Both sides of the fraction vanish as C nears 1; the limit differs from the formula by less than rounding does.
  if (gap * (1 + ntu) < 1e-7) return ntu / (1 + ntu);
  const decay = -Math.expm1(-ntu * gap); // 1 − e^(…)
  return decay / (gap + ratio * decay);
}

/** Heat that a stream gives. */
export interface Exchange {
  /** NTU. [-] */
  readonly ntu: number;
  /** ε. [-] */
  readonly effectiveness: number;
  /** From the loop (or hot) side to the other; negative the other way. [W] */
  readonly power: number;
  /** Of the loop (or hot) side. [°C] */
  readonly outletTemperature: number;
}

const requireStreams = (
  conductance: number,
  capacityRates: readonly number[],
  temperatures: readonly number[],
): void => {
  requireNumber('conductance', conductance, 0, 1e9, 'W/K');
  for (const flow of capacityRates) requireNumber('capacityRate', flow, 1e-9, 1e9, 'W/K');
  for (const temperature of temperatures) requireNumber('temperature', temperature, -273.15, 1000, '°C');
};

/** A stream through a coil in water of one temperature. */
export interface CoilStream {
  /** UA. [W/K] */
  readonly conductance: number;
  /** ṁ c_p of the loop, above 0. [W/K] */
  readonly capacityRate: number;
  /** Of the loop, into the coil. [°C] */
  readonly inletTemperature: number;
  /** Of the water. [°C] */
  readonly tankTemperature: number;
}

/** Two streams through a counterflow exchanger. */
export interface CounterflowStreams {
  /** UA. [W/K] */
  readonly conductance: number;
  /** ṁ c_p of the hot side, above 0. [W/K] */
  readonly hotCapacityRate: number;
  /** ṁ c_p of the cold side, above 0. [W/K] */
  readonly coldCapacityRate: number;
  /** [°C] */
  readonly hotInlet: number;
  /** [°C] */
  readonly coldInlet: number;
}

/**
 * A coil in water of one temperature: T_out = T_in − ε (T_in − T_tank), ε = 1 − exp(−UA/(ṁ c_p)).
 *
 * @throws {@link DesignError} for a value out of range.
 */
export function coilExchange(coil: CoilStream): Exchange {
  const { conductance, capacityRate, inletTemperature, tankTemperature } = coil;
  requireStreams(conductance, [capacityRate], [inletTemperature, tankTemperature]);
  const ntu = conductance / capacityRate;
  const effectiveness = coilEffectiveness(ntu);
  const drop = effectiveness * (inletTemperature - tankTemperature);
  return { ntu, effectiveness, power: capacityRate * drop, outletTemperature: inletTemperature - drop };
}

/**
 * A counterflow (plate) exchanger: Q = ε min(ṁ c_p) (T_hot,in − T_cold,in).
 *
 * @throws {@link DesignError} for a value out of range.
 */
export function counterflowExchange(plates: CounterflowStreams): Exchange {
  const { conductance, hotCapacityRate, coldCapacityRate, hotInlet, coldInlet } = plates;
  requireStreams(conductance, [hotCapacityRate, coldCapacityRate], [hotInlet, coldInlet]);
  const smaller = Math.min(hotCapacityRate, coldCapacityRate);
  const ntu = conductance / smaller;
  const effectiveness = counterflowEffectiveness(ntu, smaller / Math.max(hotCapacityRate, coldCapacityRate));
  const power = effectiveness * smaller * (hotInlet - coldInlet);
  return { ntu, effectiveness, power, outletTemperature: hotInlet - power / hotCapacityRate };
}
