/** The collectors of an array, group by group. */
import type { ArrayDesign, CollectorGroupDesign } from '../../design/array.ts';

/** All groups of an array, itself first: panels of one kind on one plane each. */
export function groupsOf(array: ArrayDesign): readonly CollectorGroupDesign[] {
  const { collector, groups, inSeries, obstacle, panels, slopeLength, tilt, azimuth, width } = array;
  const own = { name: collector.name, stage: 1, lightShare: 1, obstacle, width, slopeLength };
  return [{ ...own, panels, inSeries, tilt, azimuth, collector }, ...groups];
}

/** Area of all collectors, as their test reports count it. [m²] */
export function arrayArea({ collector, groups, panels }: Pick<ArrayDesign, 'collector' | 'groups' | 'panels'>): number {
  return groups.reduce((sum, group) => sum + group.panels * group.collector.area, panels * collector.area);
}

/** The groups in the order of the flow: by stage, within it as the design lists them. */
export const groupsAlongFlow = (array: ArrayDesign): readonly CollectorGroupDesign[] =>
  groupsOf(array).toSorted((one, other) => one.stage - other.stage);
