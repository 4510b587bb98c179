import type { ArrayDesign, CollectorDesign, DesignAssumption } from '../design/design.ts';
import { DesignError, show } from '../input/errors.ts';
import { beamEfficiency } from '../physics/collector/beam-efficiency.ts';
import { diffuseModifiers } from '../physics/collector/diffuse.ts';
import { REFERENCE_WIND } from '../physics/collector/efficiency.ts';
import type { CheckedInput } from './schema/system.ts';

/** Cover emittance, and the cover's outside film with wind and its radiation at night [W/(m²·K)]; judgement. */
const COVER = { emittance: 0.88, outside: 15 };

/** Liquid in a harp of thin risers, by area; judgement. [m³/m²] */
const CONTENT = 0.7e-3;

/** Heat capacity of the loop's liquid, water or glycol, near its boiling point. [J/(m³·K)] */
const LIQUID = 3.9e6;
/** Least share of a collector's heat capacity that is not liquid; judgement. [-] */
const LEAST_DRY_SHARE = 0.3;

type CheckedCollector = CheckedInput['array']['collector'];

/** Fills one default and notes it. */
export type Fill = <T extends DesignAssumption['value']>(
  path: string,
  given: T | undefined,
  value: T,
  unit: string,
  source: string,
) => T;

const PACKED = 'judgement: panels twice as long as wide, upright side by side';

/** Defaults of the array that follow from other fields of the collector, and of its further groups. */
export function arrayDefaults(array: CheckedInput['array'], fill: Fill): ArrayDesign {
  return {
    ...array,
    ...extentDefaults('array', array, array.collector.area, fill),
    collector: collectorDefaults('array.collector', array.collector, fill),
    groups: array.groups.map((group, at) => {
      const path = `array.groups.${at}`;
      const collector = group.collector ?? array.collector;
      const asArray = 'as in the array';
      return {
        ...group,
        tilt: fill(`${path}.tilt`, group.tilt, array.tilt, '°', asArray),
        azimuth: fill(`${path}.azimuth`, group.azimuth, array.azimuth, '°', asArray),
        ...extentDefaults(path, group, collector.area, fill),
        collector: collectorDefaults(`${path}.collector`, collector, group.collector ? fill : silent),
      };
    }),
  };
}

/** The array's own collector once more: its defaults are listed there. */
const silent: Fill = (_path, given, value) => given ?? value;

/** Side by side where no size is given. */
function extentDefaults(
  path: string,
  { panels, width, slopeLength }: Pick<CheckedInput['array'], 'panels' | 'slopeLength' | 'width'>,
  area: number,
  fill: Fill,
) {
  return {
    width: fill(`${path}.width`, width, panels * Math.sqrt(area / 2), 'm', PACKED),
    slopeLength: fill(`${path}.slopeLength`, slopeLength, Math.sqrt(2 * area), 'm', PACKED),
  };
}

/** Defaults of a collector that follow from its other fields. */
function collectorDefaults(path: string, collector: CheckedCollector, fill: Fill): CollectorDesign {
  const { a8: _, ...counted } = collector;
  const { a1, a3, glazed } = collector;
  const eta0 = zeroLossOfBeam(path, collector, fill);
  const restingLoss = a1 - REFERENCE_WIND * a3;
  const a4 = fill<number | null>(
    `${path}.a4`,
    collector.a4,
    glazed ? null : eta0,
    '-',
    glazed
      ? 'glazed: by day the rated losses hold the sky’s share, at night skyCoefficient stands for it'
      : 'unglazed: eta0 times emittance over absorptance, taken as 1 for a black absorber; judgement',
  );
  const fluidContent = fill(
    `${path}.fluidContent`,
    collector.fluidContent,
    CONTENT * collector.area,
    'm³',
    'judgement: a harp of thin risers, by the area',
  );
  const atNight = (COVER.emittance * restingLoss) / (restingLoss + COVER.outside);
  return {
    ...counted,
    eta0,
    eta0Basis: 'beam',
    fluidContent,
    dryCapacityShare: fill(
      `${path}.dryCapacityShare`,
      collector.dryCapacityShare,
      Math.max(1 - (LIQUID * fluidContent) / (collector.heatCapacity * collector.area), LEAST_DRY_SHARE),
      '-',
      'judgement: heatCapacity less that of the liquid in the panel, at least 0.3 of it',
    ),
    a4,
    skyCoefficient:
      a4 ??
      fill(
        `${path}.skyCoefficient`,
        collector.skyCoefficient,
        atNight,
        '-',
        'judgement: share of the cover’s heat loss to the night sky that the absorber makes good, ε a/(a + 15) with a = a1 without the wind of the test',
      ),
  };
}

/** η0,b: as given, or from η0,hem with K_d of the cover's own incidence modifier over a whole sky. */
function zeroLossOfBeam(path: string, collector: CheckedCollector, fill: Fill): number {
  const { eta0, eta0Basis, incidenceModifier } = collector;
  if (eta0Basis === 'beam') return eta0;
  const diffuse = diffuseModifiers(incidenceModifier, 0).sky;
  const beam = beamEfficiency(eta0, diffuse);
  const source = `η0,b from the η0,hem of ${show(eta0)} given: η0,hem/(0.85 + 0.15 K_d), ISO 9806:2017; K_d ${show(diffuse, 3)} by incidenceModifier`;
  if (beam <= 1) return fill(`${path}.eta0`, undefined, beam, '-', source);
  throw new DesignError([
    {
      path: `${path}.eta0`,
      found: `${eta0}, which makes ${show(beam)} of the beam alone`,
      expected: 'at most 1 for the beam',
      remedy: 'Check eta0 and its incidence modifiers.',
    },
  ]);
}
