/** Incidence angle modifier of the beam: how much less gets through the cover when the sun comes aslant. */

import type {
  IncidenceModifierB0,
  IncidenceModifierBiaxial,
  IncidenceModifierCover,
  IncidenceModifierTable,
} from '../../design/design.ts';
import { DesignError, quote, requireNumber } from '../../input/errors.ts';
import { coverModifier, requireCover } from './covers.ts';

/** Modifiers of diffuse light. */
export interface DiffuseModifiers {
  /** Of a uniform sky. [-] */
  readonly sky: number;
  /** Of an evenly bright ground; 0 for a level plane, which sees none. [-] */
  readonly ground: number;
}

/** Modifier of a cover that treats light from all sides alike. */
export type PlainModifier = IncidenceModifierB0 | IncidenceModifierTable | IncidenceModifierCover;

/** Modifier of any form. */
export type IncidenceModifier = PlainModifier | IncidenceModifierBiaxial;

/**
 * Incidence angle modifier of beam light.
 *
 *     from b0:     K = 1 − b0 (1/cos θ − 1), held at 0 where it would be negative
 *     from a cover: τ(θ)/τ(0) by Fresnel and extinction, see `coverShares`
 *     from a table: linear in θ between its rows, then to 0 at 90°
 *
 * @param modifier - b0 ≥ 0, or rows that rise from 0°. [-]
 * @param incidenceAngle - θ, 0 (normal) to 90. [°]
 * @returns K, 1 at normal incidence. [-]
 * @throws {@link DesignError} when the angle is outside 0 to 90° or the modifier cannot be used.
 * @see Souka & Safwat (1966) for b0; Duffie & Beckman (2013) §6.17; ISO 9806:2017 for tables.
 */
export function beamIncidenceModifier(modifier: PlainModifier, incidenceAngle: number): number {
  requireModifier(modifier);
  requireNumber('incidenceAngle', incidenceAngle, 0, 90, '°');
  return modifierAtAngle(modifier, incidenceAngle);
}

/** Kernel of {@link beamIncidenceModifier}; θ in degrees. @internal */
export function modifierAtAngle(modifier: PlainModifier, angle: number): number {
  if (angle >= 90) return 0;
  if (!('angles' in modifier)) return modifierAtCosine(modifier, Math.cos((angle * Math.PI) / 180));
  const { angles, values } = modifier;
  let row = 0;
  while (row + 1 < angles.length && angles[row + 1]! <= angle) row++;
  const lowAngle = angles[row]!;
  const lowValue = values[row]!;
  const highAngle = row + 1 < angles.length ? angles[row + 1]! : 90;
  const highValue = row + 1 < angles.length ? values[row + 1]! : 0;
  return lowValue + ((highValue - lowValue) * (angle - lowAngle)) / (highAngle - lowAngle);
}

/** Kernel of {@link beamIncidenceModifier} by cos θ; 0 when the sun is behind the plane. [-] @internal */
export function modifierAtCosine(modifier: PlainModifier, cosine: number): number {
  if (!(cosine > 0)) return 0;
  if ('b0' in modifier) return Math.max(0, 1 - modifier.b0 * (1 / cosine - 1));
  if ('covers' in modifier) return coverModifier(modifier, Math.min(1, cosine));
  return modifierAtAngle(modifier, (Math.acos(Math.min(1, cosine)) * 180) / Math.PI);
}

/** @throws DesignError when b0 is not 0 to 1 or a table is not in order. @internal */
export function requireModifier(modifier: PlainModifier): void {
  if ('b0' in modifier) {
    requireNumber('incidenceModifier.b0', modifier.b0, 0, 1, '');
    return;
  }
  if ('covers' in modifier) {
    requireCover(modifier);
    return;
  }
  const { angles, values } = modifier;
  const rising = angles.every((angle, row) => angle >= 0 && angle <= 90 && (row === 0 || angle > angles[row - 1]!));
  if (angles.length === 0 || angles.length !== values.length || angles[0] !== 0 || !rising) {
    throw new DesignError([
      {
        path: 'incidenceModifier.angles',
        found: quote(angles.join(', ')),
        expected: 'angles that start at 0°, rise to at most 90°, and are as many as the values',
        remedy: 'Write one value for each angle, in rising order.',
      },
    ]);
  }
  for (const [row, value] of values.entries()) requireNumber(`incidenceModifier.values[${row}]`, value, 0, 2, '');
}
