/**
 * What flow, series and a heat exchanger make of a collector's removal factor. The run uses none of these: its array is resolved
 * along the flow and loses by the local temperature of the fluid, which is what they stand for (docs/theory/collector.md).
 */
import { DesignError, quote, requireNumber } from '../../input/errors.ts';

/** A collector's loss by its inlet temperature at one flow. */
export interface RemovalLoss {
  /** Area to which it refers. [m²] */
  readonly area: number;
  /** F_R U_L: loss per area and kelvin of the inlet over the air. [W/(m²·K)] */
  readonly removalLoss: number;
  /** ṁ c_p through that area. [W/K] */
  readonly capacityRate: number;
}

/** Answer of {@link flowCorrection}. */
export interface FlowCorrection {
  /** F' U_L: loss by the local fluid temperature. [W/(m²·K)] */
  readonly localLoss: number;
  /** r: F_R U_L, and F_R (τα), at the new flow over those of the test. [-] */
  readonly ratio: number;
}

/**
 * F_R U_L and F_R (τα) at another flow than that of the test, F' held.
 *
 *     F' U_L = −(ṁ c_p/A)_test ln(1 − F_R U_L A/(ṁ c_p)_test)
 *     r = (ṁ c_p/A)_use (1 − exp(−A F' U_L/(ṁ c_p)_use)) / (F_R U_L)_test
 *
 * F' is taken as independent of the flow: whether it is laminar or turbulent does not enter.
 *
 * @param test - At the flow of the test.
 * @param capacityRate - ṁ c_p in use, through the same area. [W/K]
 * @throws {@link DesignError} when a number is out of range or F_R U_L A is not less than the test's ṁ c_p.
 * @see Duffie & Beckman (2013) §6.20.
 */
export function flowCorrection(test: RemovalLoss, capacityRate: number): FlowCorrection {
  const share = shareTaken(test);
  requireNumber('capacityRate', capacityRate, 1e-3, 1e6, 'W/K');
  const localLoss = (-test.capacityRate * Math.log1p(-share)) / test.area;
  const inUse = (-capacityRate * Math.expm1((-test.area * localLoss) / capacityRate)) / test.area;
  return { localLoss, ratio: inUse / test.removalLoss };
}

/**
 * Mean F_R of n equal collectors in series over that of one, at the flow of one.
 *
 *     K = A F_R U_L/(ṁ c_p),   r_n = (1 − (1 − K)^n)/(n K)
 *
 * @param one - The first of them.
 * @param panels - n. [-]
 * @throws {@link DesignError} when a number is out of range.
 * @see Duffie & Beckman (2013) §10.4; Oonk, Jones & Cole-Appel (1979), Solar Energy 23 535 (from memory).
 */
export function seriesRatio(one: RemovalLoss, panels: number): number {
  const share = shareTaken(one);
  requireNumber('panels', panels, 1, 1000, '');
  return (1 - (1 - share) ** panels) / (panels * share);
}

/** A heat exchanger between collectors and store. */
export interface CollectorExchanger {
  /** Effectiveness of the exchanger, 0 to 1. [-] */
  readonly effectiveness: number;
  /** Lesser of its two capacity rates. [W/K] */
  readonly minimumRate: number;
}

/**
 * What a heat exchanger makes of F_R: collectors must be warmer for the same heat into the store.
 *
 *     F_R'/F_R = 1/[1 + (A F_R U_L/(ṁ c_p)_c) ((ṁ c_p)_c/(ε (ṁ c_p)_min) − 1)]
 *
 * @param collectors - With the flow on their side, (ṁ c_p)_c.
 * @param exchanger - ε and (ṁ c_p)_min.
 * @throws {@link DesignError} when a number is out of range.
 * @see de Winter (1975), Solar Energy 17 335; Duffie & Beckman (2013) §10.2.
 */
export function exchangerRatio(collectors: RemovalLoss, exchanger: CollectorExchanger): number {
  const share = shareTaken(collectors);
  const { effectiveness, minimumRate } = exchanger;
  requireNumber('effectiveness', effectiveness, 1e-6, 1, '');
  requireNumber('minimumRate', minimumRate, 1e-3, 1e6, 'W/K');
  return 1 / (1 + share * (collectors.capacityRate / (effectiveness * minimumRate) - 1));
}

/** K = A F_R U_L/(ṁ c_p), less than 1 in any real collector. [-] */
function shareTaken({ area, removalLoss, capacityRate }: RemovalLoss): number {
  requireNumber('area', area, 1e-3, 1e6, 'm²');
  requireNumber('removalLoss', removalLoss, 1e-6, 100, 'W/(m²·K)');
  requireNumber('capacityRate', capacityRate, 1e-3, 1e6, 'W/K');
  const share = (area * removalLoss) / capacityRate;
  if (share < 1) return share;
  throw new DesignError([
    {
      path: 'removalLoss',
      found: quote(removalLoss),
      expected: `less than ${capacityRate / area} W/(m²·K), the fluid’s capacity rate per area`,
      remedy: 'No collector takes more from its fluid than the fluid brings; check flow and area.',
    },
  ]);
}
