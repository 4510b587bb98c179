/** The working of a share of glycol, and what to look at. */

import { line, show, type WorkingStep } from '../../input/working.ts';
import type { Glycol } from '../../physics/fluid/melinder.ts';

/** What the lines show: temperatures [°C], shares [-], volumes [m³]. */
interface ShareNumbers {
  readonly air: number;
  readonly coldest: number;
  readonly coldestHour: number;
  readonly target: number;
  readonly margin: number;
  /** By mass. */
  readonly needed: number;
  /** By mass. */
  readonly leastMass: number;
  readonly volumeFraction: number;
  /** Of the loop without its vessel. */
  readonly whole: number;
  /** In the vessel. */
  readonly held: number;
}

/** From the coldest hour to the glycol to pour in. */
export function shareSteps({
  air,
  coldest,
  coldestHour,
  target,
  margin,
  needed,
  leastMass,
  volumeFraction,
  whole,
  held,
}: ShareNumbers): WorkingStep[] {
  return [
    line(
      'coldest absorber',
      'T_min = T_air − s D/a1, hour by hour without light',
      `hour ${coldestHour} of the year: ${show(air, 3)} °C − ${show(air - coldest, 3)} K`,
      [coldest, '°C'],
      'steady; long-wave of the file, or Berdahl & Martin 1984 with a cloudless sky',
    ),
    line(
      'freezing point wanted',
      'T_min − margin',
      `${show(coldest, 4)} − ${show(margin)}`,
      [target, '°C'],
      'margin 3 to 5 K: common practice, no source',
    ),
    line('glycol by mass', 'freezing point(x) = T', `x = ${show(needed)}`, [needed, '-'], 'Melinder 2010, inverted'),
    line(
      'glycol by volume',
      'v = (x/ρ_g)/(x/ρ_g + (1 − x)/ρ_w)',
      `the larger of ${show(needed)} and the least ${show(leastMass)} by mass`,
      [volumeFraction, '-'],
      'volumes before mixing at 20 °C',
    ),
    line(
      'glycol to pour in',
      'v × (liquid of the loop + liquid in the vessel when filled)',
      `${show(volumeFraction)} × (${show(whole * 1000)} L + ${show(held * 1000)} L)`,
      [volumeFraction * (whole + held), 'm³'],
      'mixing shrinks by up to a hundredth: top up with mixture, never with water',
    ),
  ];
}

/** @param least - Whether inhibitor and biocide ask for more than the cold does. */
export const shareNotes = (fluid: Glycol, least: boolean): string[] => [
  'Mix before filling, with water as the maker asks (often demineralised); concentrate poured after water does not mix by itself.',
  ...(least ? ['The cold alone would ask for less: the least share keeps inhibitor and biocide strong enough.'] : []),
  ...(fluid === 'ethylene-glycol'
    ? ['Ethylene glycol is poisonous: never behind a single wall against drinking water.']
    : []),
  'More than needed costs flow and heat: thick when cold, and less heat carried by each litre.',
];
