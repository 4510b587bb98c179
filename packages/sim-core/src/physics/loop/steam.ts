/** How far steam gets into the pipes of a loop that stands in the sun. */
import type { ArrayDesign, LoopDesign } from '../../design/design.ts';
import { arrayArea } from '../collector/groups.ts';
import { saturationTemperature } from '../fluid/boiling.ts';
import { pipeLossConductance } from './pipe.ts';

/** Air around the pipes on a day of stagnation; judgement: warm air lets steam get further. [°C] */
const STEAM_SURROUNDINGS = 30;
/** Keeps the length finite in a vacuum. [K] */
const LEAST_EXCESS = 1;
/** Lowest pressure of the saturation equation: the triple point of water. [Pa] */
export const TRIPLE_POINT = 612;

/** Pipe that steam enters, both ways added. */
export interface SteamLine {
  /** Heat that the standing array's steam carries into the pipes. [W] */
  readonly power: number;
  /** U' of the insulated length alone: heat bridges sit at pump and tank, not where the steam comes from. [W/(m·K)] */
  readonly lossPerMetre: number;
  /** Content of a metre. [m²] */
  readonly bore: number;
  /** [m] */
  readonly length: number;
}

/** The pipe of a design. */
export const steamLine = (
  loop: Pick<
    LoopDesign,
    | 'insulationConductivity'
    | 'insulationThickness'
    | 'pipeInnerDiameter'
    | 'pipeLength'
    | 'pipeOuterDiameter'
    | 'steamPower'
  >,
  array: ArrayDesign,
): SteamLine => ({
  power: loop.steamPower * arrayArea(array),
  lossPerMetre: pipeLossConductance({ ...loop, heatBridgeFactor: 1 }),
  bore: (Math.PI / 4) * loop.pipeInnerDiameter ** 2,
  length: loop.pipeLength,
});

/** Steam is water, and condenses where water does. @param pressure - Absolute. [Pa] @returns [°C] */
export const steamTemperature = (pressure: number): number => saturationTemperature(Math.max(pressure, TRIPLE_POINT));

/** Loss of a metre of pipe full of steam. [W/m] */
export const steamLossPerMetre = (line: SteamLine, pressure: number): number =>
  line.lossPerMetre * Math.max(steamTemperature(pressure) - STEAM_SURROUNDINGS, LEAST_EXCESS);

/**
 * Length of pipe, there and back, that steam fills before it has condensed: P/[U' (T_s − T_air)]. It may be longer than the pipe.
 *
 * @param line - Pipe and power.
 * @param pressure - Of the steam, absolute. [Pa]
 * @returns [m]
 */
export const steamLength = (line: SteamLine, pressure: number): number =>
  line.power / steamLossPerMetre(line, pressure);

/** Liquid that steam pushes out of the pipe, at most all of it. [m³] */
export const steamInPipe = (line: SteamLine, pressure: number): number =>
  line.bore * Math.min(line.length, steamLength(line, pressure));
