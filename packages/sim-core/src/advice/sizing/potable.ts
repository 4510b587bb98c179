import type { SystemDesign } from '../../design/design.ts';
import { checkInput } from '../../input/check.ts';
import { DesignError } from '../../input/errors.ts';
import { quantity, quantityOr } from '../../input/field.ts';
import type { Quantity } from '../../input/quantity.ts';
import { fact, type Saying, say } from '../../input/saying.ts';
import { line, type WorkingStep } from '../../input/working.ts';
import * as z from '../../input/zod.ts';
import { airPressureAt } from '../../physics/fluid/air-pressure.ts';
import { waterDensity } from '../../physics/fluid/water.ts';
import { gasNeeded, vesselSold } from '../../physics/loop/vessel.ts';
import { bothTanks } from '../../physics/tank/tank-pair.ts';
import type { AdviceCode } from '../advice-codes.ts';

const optionsSchema = z.strictObject({
  coldTemperature: quantityOr('temperature', 0, 40, 10, 'judgement: cold mains'),
  hotTemperature: quantity('temperature', 40, 120).optional(),
  supplyPressure: quantityOr('pressure', 0.5e5, 16e5, 4e5, 'judgement: behind a pressure reducer'),
  reliefPressure: quantityOr(
    'pressure',
    1e5,
    20e5,
    10e5,
    'valves of 150 psi (10.3 bar) or 10 bar, common practice, no source; read it off the valve',
  ),
  altitude: quantityOr('length', -500, 9000, 0, 'judgement: sea level'),
});

/** What {@link potableExpansion} may be told; each has a default. */
export interface PotableExpansionOptions {
  /** Water that fills the tank, 0 to 40. Default 10, judgement. [°C] */
  readonly coldTemperature?: Quantity;
  /** Hottest that the whole tank gets, 40 to 120. Default the design's high limit, or its relief valve. [°C] */
  readonly hotTemperature?: Quantity;
  /** Of the cold supply, gauge, 5e4 to 1.6e6. Default 4e5, judgement. [Pa] */
  readonly supplyPressure?: Quantity;
  /** Of the tank's relief valve, gauge, 1e5 to 2e6. Default 1e6, common practice, no source. [Pa] */
  readonly reliefPressure?: Quantity;
  /** Site above sea level, −500 to 9000. Default 0. [m] */
  readonly altitude?: Quantity;
}

/** What the tank's own water grows by, and the vessel that takes it. */
export interface PotableExpansion {
  /** Volume that must find a way out each time the tank is heated from cold. [m³] */
  readonly expansion: number;
  /** Smallest potable-water expansion vessel, pre-charged to the supply's pressure. [m³] */
  readonly minimumVolume: number;
  /** Next vessel that is sold. [m³] */
  readonly vesselVolume: number;
  /** Of that vessel's gas: the supply's pressure. [Pa gauge] */
  readonly prechargePressure: number;
  /** Highest in normal service: nine tenths of the relief valve's. [Pa gauge] */
  readonly endPressure: number;
  /** The working. */
  readonly steps: readonly WorkingStep[];
  /** What can hurt someone. */
  readonly cautions: readonly Saying<AdviceCode>[];
}

/** Share of the relief valve's pressure that the vessel may reach; as EN 12828 has it above 5 bar (from memory). [-] */
const END_SHARE = 0.9;

/**
 * Expansion of the water in the solar tank, where a check valve, a pressure reducer or a backflow preventer keeps it from going
 * back into the street.
 *
 *     V_e = V_tank [ρ(t_cold)/ρ(t_hot) − 1],   V_N = V_e (p_end + p_air)/(p_end − p_supply)
 *
 * Without such a valve the water goes back into the supply. With one and no vessel, the relief valve opens at every heating.
 *
 * @param design - From `defineSystem`.
 * @param options - Temperatures, pressures, height of the site.
 * @throws {@link DesignError} listing all faults of the options at once, and where the supply's pressure leaves no room.
 * @see IPC 607.3 and UPC 608.3 ask for such a vessel (from memory); densities IAPWS SR6-08; gas law, isothermal.
 */
export function potableExpansion(design: SystemDesign, options: PotableExpansionOptions = {}): PotableExpansion {
  const asked = checkInput(optionsSchema, options);
  const { coldTemperature: cold, supplyPressure } = asked;
  const hot = asked.hotTemperature ?? design.control.highLimit ?? design.tank.reliefTemperature;
  const endPressure = END_SHARE * asked.reliefPressure;
  if (endPressure <= supplyPressure) {
    throw new DesignError([
      {
        path: 'supplyPressure',
        found: `${supplyPressure} Pa under a relief valve of ${asked.reliefPressure} Pa`,
        expected: 'less than nine tenths of the relief valve’s',
        remedy: 'Fit a pressure reducer.',
      },
    ]);
  }
  const air = airPressureAt(asked.altitude);
  const { volume } = bothTanks(design.tank);
  const densities = [waterDensity(cold), waterDensity(hot)] as const;
  const expansion = Math.max(0, densities[0] / densities[1] - 1) * volume;
  const minimumVolume = gasNeeded(expansion, supplyPressure, endPressure, air);
  const vesselVolume = vesselSold(minimumVolume);
  return {
    expansion,
    minimumVolume,
    vesselVolume,
    prechargePressure: supplyPressure,
    endPressure,
    steps: [
      line('potable-expansion', [expansion, 'm³'], {
        volume: [volume, 'm³'],
        coldDensity: [densities[0], 'kg/m³'],
        hotDensity: [densities[1], 'kg/m³'],
        cold: [cold, '°C'],
        hot: [hot, '°C'],
      }),
      line('potable-smallest', [minimumVolume, 'm³'], {
        expansion: [expansion, 'm³'],
        endAbsolute: [endPressure + air, 'Pa'],
        end: [endPressure, 'Pa'],
        supply: [supplyPressure, 'Pa'],
      }),
      line('potable-vessel', [vesselVolume, 'm³']),
    ],
    cautions: [say('water-must-find-room', { volume: fact(expansion, 'm³') })],
  };
}
