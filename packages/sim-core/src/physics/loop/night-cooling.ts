/** What a night of pumping through the collectors takes out of a tank. */
import { requireNumber } from '../../input/errors.ts';

/** A tank and the collectors that cool it. */
export interface NightCooling {
  /** Heat capacity of the water. [J/K] */
  readonly capacity: number;
  /** At the start. [°C] */
  readonly start: number;
  /** Heat loss of the tank per kelvin over its room. [W/K] */
  readonly lossCoefficient: number;
  /** [°C] */
  readonly room: number;
  /** Of the collectors. [m²] */
  readonly area: number;
  /** Their linear heat loss coefficient. [W/(m²·K)] */
  readonly a1: number;
  /** What the sky takes beyond that: share of the long-wave deficit times the deficit, ≥ 0. [W/m²] */
  readonly skyLoss: number;
  /** Outdoor air. [°C] */
  readonly ambient: number;
  /** ṁ c_p. [W/K] */
  readonly capacityRate: number;
  /** [s] */
  readonly duration: number;
}

/** What {@link coolByNight} answers. */
export interface CooledByNight {
  /** Of the stirred tank at the end. [°C] */
  readonly end: number;
  /** Through the collectors. [J] */
  readonly throughCollectors: number;
  /** Through the tank's wall; negative where the room warms it. [J] */
  readonly throughWall: number;
}

/**
 * A stirred tank whose water runs through collectors in the dark.
 *
 *     x_s = −q_sky/a1,   C dT/dt = −W (1 − e^(−a1 A/W)) (T − T_air − x_s) − UA (T − T_room)
 *
 * @throws {@link DesignError} for a number out of its range.
 * @see Closed form; a2, exchanger and pipes are left out.
 */
export function coolByNight(of: NightCooling): CooledByNight {
  requireNumber('capacity', of.capacity, 1, 1e12, 'J/K');
  requireNumber('lossCoefficient', of.lossCoefficient, 0, 1e6, 'W/K');
  requireNumber('area', of.area, 1e-3, 1e6, 'm²');
  requireNumber('a1', of.a1, 1e-3, 100, 'W/(m²·K)');
  requireNumber('skyLoss', of.skyLoss, -1000, 1000, 'W/m²');
  requireNumber('capacityRate', of.capacityRate, 1e-6, 1e9, 'W/K');
  requireNumber('duration', of.duration, 0, 1e9, 's');
  for (const name of ['start', 'room', 'ambient'] as const) requireNumber(name, of[name], -90, 150, '°C');
  const { a1, ambient, area, capacity, capacityRate, duration, lossCoefficient, room, skyLoss, start } = of;
  const toSky = -capacityRate * Math.expm1((-a1 * area) / capacityRate);
  const coldest = ambient - skyLoss / a1;
  const rate = toSky + lossCoefficient;
  const rest = (toSky * coldest + lossCoefficient * room) / rate;
  const end = rest + (start - rest) * Math.exp((-rate * duration) / capacity);
  const meanOver = (of: number): number => (rest - of) * duration + ((start - end) * capacity) / rate;
  return { end, throughCollectors: toSky * meanOver(coldest), throughWall: lossCoefficient * meanOver(room) };
}
