import type { LoopFluid } from '../../design/design.ts';
import { requireNumber } from '../../input/errors.ts';
import { MAXIMUM_MASS_FRACTION } from './melinder.ts';
import { glycolVolumeFromMass } from './mixture.ts';

/** Temperatures to which a share of glycol protects against bursting. */
interface BurstRows {
  /** Glycol by volume before mixing, rising from 0. [-] */
  readonly volume: readonly number[];
  /** Temperature of each. [°C] */
  readonly temperature: readonly number[];
}

/**
 * Rows of two large makers' guides for inhibited glycols, both from memory; no glycol protects to 0 °C. From the last row on the
 * slush splits no pipe at any temperature of the weather.
 */
const BURST: Readonly<Record<Exclude<LoopFluid, 'water'>, BurstRows>> = {
  'propylene-glycol': {
    volume: [0, 0.12, 0.2, 0.24, 0.28, 0.3, 0.33, 0.35],
    temperature: [0, -7, -12, -18, -23, -29, -34, -40],
  },
  'ethylene-glycol': {
    volume: [0, 0.115, 0.178, 0.231, 0.273, 0.314],
    temperature: [0, -7, -12, -18, -23, -29],
  },
};

/**
 * Temperature down to which a mixture does not burst a pipe. Between freezing point and burst point the fluid is slush, which still
 * gives way: no pipe splits, as long as the slush has room to swell into an expansion vessel, and no pump works against it. A pump that
 * turns in slush is strained, and a pocket between two shut valves may split.
 *
 * Linear between rows of a maker's guide (from memory) by volume before mixing; {@link glycolVolumeFromMass} turns the mass
 * fraction into it. Stronger mixtures than the last row have its temperature, −40 °C (propylene glycol) or −29 °C (ethylene
 * glycol): the makers' tables stop rising there. Water: 0 °C.
 *
 * @param fluid - Kind of fluid.
 * @param glycolMassFraction - Glycol by mass, 0 to 0.6; 0 for water. [-]
 * @returns [°C]
 * @throws {@link DesignError} outside 0 to 0.6, and for glycol asked of water.
 */
export function burstProtection(fluid: LoopFluid, glycolMassFraction: number): number {
  requireNumber('glycolMassFraction', glycolMassFraction, 0, fluid === 'water' ? 0 : MAXIMUM_MASS_FRACTION, '');
  if (fluid === 'water') return 0;
  const { volume, temperature } = BURST[fluid];
  const v = glycolVolumeFromMass(fluid, glycolMassFraction);
  const row = volume.findIndex((value) => value > v);
  if (row < 0) return temperature[temperature.length - 1]!;
  const from = volume[row - 1]!;
  const share = (v - from) / (volume[row]! - from);
  return temperature[row - 1]! + share * (temperature[row]! - temperature[row - 1]!);
}
