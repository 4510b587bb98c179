/** What a step does only where the array is of several groups. */
import { groupsAlongFlow } from '../physics/collector/groups.ts';
import type { Branch, StepConditions } from '../physics/loop/circuit-state.ts';
import type { GroupDrivers } from './group-drivers.ts';
import type { Machine } from './machine.ts';
import type { GroupYear } from './result.ts';

/** What each group did, at the year's end. */
export function groupYears({ design, drivers, loop }: Machine): GroupYear[] | null {
  const { branches } = loop.circuit;
  if (branches === null) return null;
  const seconds = 3600 / drivers.stepsPerHour;
  return groupsAlongFlow(design.array).map(({ name }, at) => {
    const { end, first, heat, nodeArea } = branches[at]!;
    const area = nodeArea * (end - first);
    const light = drivers.groups![at]!.irradiance.reduce((sum, value) => sum + value, 0);
    return { name, area, irradiation: light * seconds * area, heat };
  });
}

/** Loss of each group in the hour's wind. */
export function setLosses(branches: readonly Branch[], groups: readonly GroupDrivers[], hour: number): void {
  for (let at = 0; at < groups.length; at++) {
    const { lossCoefficient } = groups[at]!;
    if (lossCoefficient !== null) branches[at]!.a1 = lossCoefficient[hour]!;
  }
}

/** Light that each group turns into heat, and their mean by area. @param at - Place in the sub-hourly drivers, -1 in the dark. */
export function setLight(
  branches: readonly Branch[],
  groups: readonly GroupDrivers[],
  hour: number,
  at: number,
  conditions: StepConditions,
): void {
  let sum = 0;
  let area = 0;
  for (let group = 0; group < groups.length; group++) {
    const { absorbed, irradiance, skyLoss } = groups[group]!;
    const branch = branches[group]!;
    const own = at >= 0 && irradiance[at]! > 0 ? absorbed[at]! : -skyLoss[hour]!;
    const whole = branch.nodeArea * (branch.end - branch.first);
    branch.conditions.absorbed = own;
    sum += own * whole;
    area += whole;
  }
  conditions.absorbed = sum / area;
}
