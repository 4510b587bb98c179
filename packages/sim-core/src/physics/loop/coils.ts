/** The coils that a loop's fluid passes. */
import type { CoilDesign, SecondTankDesign, SystemDesign } from '../../design/design.ts';

/** All coils of a loop, that of the first tank before that of a second; a valve may lead the fluid past one. */
export function coilsOf(
  coil: CoilDesign,
  second: SecondTankDesign | null,
): readonly [CoilDesign] | readonly [CoilDesign, CoilDesign] {
  if (second === null || second.charging === 'first') return [coil];
  return second.charging === 'second' ? [second.coil] : [coil, second.coil];
}

/** A design with its second tank in place of the first. */
export function secondInPlace(design: SystemDesign, second: SecondTankDesign): SystemDesign {
  const { charging: _, coil, divertAt: __, roomTemperature, ...own } = second;
  const room = roomTemperature ?? design.tank.roomTemperature;
  const none = { initialProfile: null, load: null, roomByMonth: null, second: null };
  return { ...design, coil, tank: { ...own, ...none, roomTemperature: room } };
}

/** A design as its loop sees it: where only the second tank is charged, that one is the tank. */
export const chargedDesign = (design: SystemDesign): SystemDesign =>
  design.tank.second?.charging === 'second' ? secondInPlace(design, design.tank.second) : design;
