/** Two tanks, one behind the other: the mains enter the one, what leaves it enters the other, and that one feeds the house. */
import type { TankDesign } from '../../design/design.ts';
import { outletOf, stirAtInlet, type Tank } from './tank.ts';
import { drawThrough } from './transport.ts';

/** What a draw through two tanks brought. */
export interface PairDraw {
  /** Mean of what left the tank on the house's side. [°C] */
  outlet: number;
  /** Mean of what left the other, and entered that one. [°C] */
  between: number;
}

/**
 * Draws a volume through two tanks. Allocates nothing.
 *
 * In pieces of at most one layer of either, so that what leaves the one enters the other in its order, and a front goes from tank to tank as it
 * goes from layer to layer. The pipe between them holds and loses nothing.
 *
 * @param cold - The tank that the mains enter.
 * @param warm - The tank that feeds the house.
 * @param volume - Water. [m³]
 * @param mains - Its temperature. [°C]
 * @param flow - Through both while a tap runs, for inlets that stir. [m³/s]
 * @param drawn - Receives the two outlets.
 */
export function drawThroughPair(
  { cold, warm }: { readonly cold: Tank; readonly warm: Tank },
  volume: number,
  mains: number,
  flow: number,
  drawn: PairDraw,
): void {
  drawn.outlet = mains;
  drawn.between = mains;
  if (volume <= 0) return;
  const pieces = Math.ceil(volume / Math.min(cold.nodeVolume, warm.nodeVolume));
  const share = volume / pieces;
  let outlet = 0;
  let between = 0;
  for (let piece = 0; piece < pieces; piece++) {
    const passed = drawThrough(cold.temperature, share / cold.nodeVolume, mains);
    outlet += drawThrough(warm.temperature, share / warm.nodeVolume, passed);
    between += passed;
  }
  drawn.outlet = outlet / pieces;
  drawn.between = between / pieces;
  stirAtInlet(cold, flow, mains);
  stirAtInlet(warm, flow, drawn.between);
}

/** What a draw through two tanks would bring by plug flow, as `outletOf` one. [°C] */
export function outletOfPair(cold: Tank, warm: Tank, volume: number): number {
  const inWarm = warm.nodeVolume * warm.temperature.length;
  if (volume <= inWarm) return outletOf(warm, volume);
  const behind = volume - inWarm;
  return (inWarm * outletOf(warm, inWarm) + behind * outletOf(cold, behind)) / volume;
}

/** Water and loss of a tank, and of a second one with it: what asks for no more may take both as one. */
export const bothTanks = ({
  lossCoefficient,
  second,
  volume,
}: TankDesign): Pick<TankDesign, 'lossCoefficient' | 'volume'> => ({
  lossCoefficient: lossCoefficient + (second?.lossCoefficient ?? 0),
  volume: volume + (second?.volume ?? 0),
});

/** A tank, and a second one with it, whose loss is so many times as large. */
export const withLossTimes = (tank: TankDesign, factor: number): TankDesign => ({
  ...tank,
  lossCoefficient: tank.lossCoefficient * factor,
  second: tank.second === null ? null : { ...tank.second, lossCoefficient: tank.second.lossCoefficient * factor },
});
