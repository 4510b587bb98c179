import type { ArrayDesign, DesignAssumption } from '../design/design.ts';
import type { CheckedInput } from './define.ts';

/** Cover emittance, and the cover's outside film with wind and its radiation at night [W/(m²·K)]; judgement. */
const COVER = { emittance: 0.88, outside: 15 };

/** Liquid in a harp of thin risers, by area; judgement. [m³/m²] */
const CONTENT = 0.7e-3;

/** Heat capacity of the loop's liquid, water or glycol, near its boiling point. [J/(m³·K)] */
const LIQUID = 3.9e6;
/** Least share of a collector's heat capacity that is not liquid; judgement. [-] */
const LEAST_DRY_SHARE = 0.3;

/** Fills one default and notes it. */
export type Fill = <T extends DesignAssumption['value']>(
  path: string,
  given: T | undefined,
  value: T,
  unit: string,
  source: string,
) => T;

/** Defaults of the array that follow from other fields of the collector. */
export function arrayDefaults(array: CheckedInput['array'], fill: Fill): ArrayDesign {
  const { collector } = array;
  const { a1, eta0, glazed } = collector;
  const a4 = fill<number | null>(
    'array.collector.a4',
    collector.a4,
    glazed ? null : eta0,
    '-',
    glazed
      ? 'glazed: by day the rated losses hold the sky’s share, at night skyCoefficient stands for it'
      : 'unglazed: eta0 times emittance over absorptance, taken as 1 for a black absorber; judgement',
  );
  const fluidContent = fill(
    'array.collector.fluidContent',
    collector.fluidContent,
    CONTENT * collector.area,
    'm³',
    'judgement: 0.7 L for each m², a harp of thin risers',
  );
  const atNight = (COVER.emittance * a1) / (a1 + COVER.outside);
  const packed = 'judgement: panels twice as long as wide, upright side by side';
  return {
    ...array,
    width: fill('array.width', array.width, array.panels * Math.sqrt(collector.area / 2), 'm', packed),
    slopeLength: fill('array.slopeLength', array.slopeLength, Math.sqrt(2 * collector.area), 'm', packed),
    collector: {
      ...collector,
      fluidContent,
      dryCapacityShare: fill(
        'array.collector.dryCapacityShare',
        collector.dryCapacityShare,
        Math.max(1 - (LIQUID * fluidContent) / (collector.heatCapacity * collector.area), LEAST_DRY_SHARE),
        '-',
        'judgement: heatCapacity less that of the liquid in the panel, at least 0.3 of it',
      ),
      a4,
      skyCoefficient:
        a4 ??
        fill(
          'array.collector.skyCoefficient',
          collector.skyCoefficient,
          atNight,
          '-',
          'judgement: share of the cover’s heat loss to the night sky that the absorber makes good, ε a1/(a1 + 15)',
        ),
    },
  };
}
