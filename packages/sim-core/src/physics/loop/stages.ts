/** Collectors of several kinds on one loop, in steady sun. */
import { DesignError, requireNumber } from '../../input/errors.ts';
import { collectorOutlet, type FlowingCollector } from '../collector/along-flow.ts';
import { splitFlow } from './flow-split.ts';

/** Panels of one kind on one plane: `parallel` strings of `series` panels. */
export interface CollectorStrings extends FlowingCollector {
  /** Panels of a string. */
  readonly series: number;
  /** Strings side by side. */
  readonly parallel: number;
  /** Laminar part of a panel's drop Δp = r₁ ṁ + r₂ ṁ². [Pa·s/kg] */
  readonly laminarResistance: number;
  /** Its turbulent part. [Pa·s²/kg²] */
  readonly turbulentResistance: number;
}

/** Air and fluid for {@link collectorStages}. */
export interface StageConditions {
  /** Mass flow of the loop. [kg/s] */
  readonly flow: number;
  /** [J/(kg·K)] */
  readonly specificHeat: number;
  /** [°C] */
  readonly inlet: number;
  /** Outdoor air. [°C] */
  readonly ambient: number;
}

/** One group of {@link collectorStages}. */
export interface GroupState {
  /** Through all its strings. [kg/s] */
  readonly flow: number;
  /** [Pa] */
  readonly pressureDrop: number;
  /** [°C] */
  readonly outlet: number;
  /** Taken by the fluid. [W] */
  readonly power: number;
}

/** Answer of {@link collectorStages}. */
export interface StagesState {
  /** Groups, stage by stage. */
  readonly stages: readonly (readonly GroupState[])[];
  /** Mixed, behind the last stage. [°C] */
  readonly outlet: number;
  /** Of all. [W] */
  readonly power: number;
  /** Of the stages, one after the other. [Pa] */
  readonly pressureDrop: number;
}

/**
 * Steady state of collectors in stages: the groups of a stage lie side by side and have one pressure drop, their fluids mix before the next stage.
 * Losses go by the local temperature of the fluid, along the flow ({@link collectorOutlet}); pipes and headers are left out.
 *
 * @param stages - Along the flow; each one or more groups.
 * @param conditions - Fluid and air.
 * @throws {@link DesignError} for an empty stage or a number out of its range.
 */
export function collectorStages(
  stages: readonly (readonly CollectorStrings[])[],
  conditions: StageConditions,
): StagesState {
  const { ambient, flow, specificHeat } = conditions;
  requireNumber('flow', flow, 1e-9, 1000, 'kg/s');
  requireNumber('specificHeat', specificHeat, 100, 20_000, 'J/(kg·K)');
  let inlet = conditions.inlet;
  let pressureDrop = 0;
  let power = 0;
  const states = stages.map((groups, at) => {
    requireGroups(groups, `stages[${at}]`);
    const ways = groups.map(({ laminarResistance, parallel, series, turbulentResistance }) => ({
      laminar: (laminarResistance * series) / parallel,
      turbulent: (turbulentResistance * series) / parallel ** 2,
      share: 1,
    }));
    const drop = splitFlow(ways, 0, ways.length, { flow, density: 1, viscosity: 1 });
    const entering = inlet;
    inlet = 0;
    pressureDrop += drop;
    return groups.map((group, place): GroupState => {
      const own = flow * ways[place]!.share;
      const through = { ...group, area: group.area * group.series * group.parallel };
      const outlet = own > 0 ? collectorOutlet(through, entering, ambient, own * specificHeat) : entering;
      inlet += ways[place]!.share * outlet;
      const taken = own * specificHeat * (outlet - entering);
      power += taken;
      return { flow: own, pressureDrop: drop, outlet, power: taken };
    });
  });
  return { stages: states, outlet: inlet, power, pressureDrop };
}

function requireGroups(groups: readonly CollectorStrings[], path: string): void {
  if (groups.length === 0) {
    const remedy = 'Leave the stage out.';
    throw new DesignError([{ path, found: 'no group', expected: 'one group or more', remedy }]);
  }
  groups.forEach((group, at) => {
    requireNumber(`${path}[${at}].series`, group.series, 1, 1000, '');
    requireNumber(`${path}[${at}].parallel`, group.parallel, 1, 1000, '');
    requireNumber(`${path}[${at}].laminarResistance`, group.laminarResistance, 0, 1e12, 'Pa·s/kg');
    requireNumber(`${path}[${at}].turbulentResistance`, group.turbulentResistance, 0, 1e15, 'Pa·s²/kg²');
  });
}
