/** The collectors of an array, group by group. */
import type { ArrayDesign, CollectorDesign, CollectorGroupDesign } from '../../design/array.ts';
import type { SystemDesign } from '../../design/design.ts';

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

/** A design with something changed in the collectors of every group. */
export function changeCollectors(
  design: SystemDesign,
  change: (collector: CollectorDesign) => Partial<CollectorDesign>,
): SystemDesign {
  const { array } = design;
  const changed = (collector: CollectorDesign): CollectorDesign => ({ ...collector, ...change(collector) });
  const groups = array.groups.map((group) => ({ ...group, collector: changed(group.collector) }));
  return { ...design, array: { ...array, collector: changed(array.collector), groups } };
}
