/** Cautions about where the panels look. */
import { facingWords } from '../answer/system.ts';
import type { Rule } from './types.ts';

/** Outside the tropics the sun stands on one side of the sky; within, panels may look either way. [°] */
const TROPIC = 23.44;
/** Lying nearly flat it hardly matters. [°] Judgement. */
const FLAT = 10;
/** Beyond a right angle from the equator. [°] Judgement. */
const AWAY = 100;

/** Tilted panels that look away from the equator. @internal */
export const arrayAway: Rule = ({ result: { design, site } }) => {
  const { azimuth, tilt } = design.array;
  const equator = site.latitude >= 0 ? 180 : 0;
  const off = Math.abs(((((azimuth - equator) % 360) + 540) % 360) - 180);
  if (Math.abs(site.latitude) <= TROPIC || tilt <= FLAT || off <= AWAY) return null;
  return {
    code: 'array-away',
    severity: 'warning',
    facts: {
      azimuth: { value: azimuth, unit: '°' },
      facing: facingWords(azimuth),
      sunny: site.latitude >= 0 ? 'south' : 'north',
    },
    finding: ['found'],
    advice: ['act'],
  };
};
