/** The loop's resistance and the point at which the pump works against it. */

import type { CoilDesign, CollectorGroupDesign, LoopDesign, PumpDesign, TankDesign } from '../../design/design.ts';
import { requireNumber } from '../../input/errors.ts';
import { type CompiledFluid, compileFluid, fluidDensity, fluidViscosity } from '../fluid/compile.ts';
import { waterDensity } from '../fluid/water.ts';
import { risingRoot } from '../root.ts';
import { shareFlow } from './branches.ts';
import { coilFrictionNumber } from './coil-friction.ts';
import { coilsOf } from './coils.ts';
import { type CollectorRows, rowsDrop } from './collector-drop.ts';
import type { Way } from './flow-split.ts';
import { COPPER_ROUGHNESS, type CompiledFriction, compileFriction, frictionNumber } from './friction.ts';
import { GRAVITY, pumpHead, pumpPower, pumpSpeed } from './pump.ts';

/** Parts of a design that resist or drive the loop's flow. */
export interface HydraulicParts {
  /** Drives the flow. */
  readonly pump: PumpDesign;
  /** Pipes and fittings. */
  readonly loop: LoopDesign;
  /** Tube in the tank. */
  readonly coil: CoilDesign;
  /** Further tanks that the loop charges, none by default. */
  readonly tank?: Pick<TankDesign, 'second'>;
  /** Collectors, in rows side by side. */
  readonly array: CollectorRows & {
    /** Further collectors of the loop, none by default. */
    readonly groups?: readonly (CollectorRows & Pick<CollectorGroupDesign, 'stage'>)[];
  };
}

/** Resistance of a coil. */
interface CoilDrop {
  /** Re = this · ρ Q/μ. [1/m] */
  readonly reynolds: number;
  /** Drop = this · (f Re²) μ²/ρ. [1/m²] */
  readonly drop: number;
  /** Bore over winding diameter. [-] */
  readonly curvature: number;
}

/** Resistances of a loop, worked out once a run; the pressure drops are in Pa per the unit named. */
export interface CompiledHydraulics {
  /** In the loop. */
  readonly fluid: CompiledFluid;
  /** As designed. */
  readonly pump: PumpDesign;
  /** Roughness of the pipes, worked in. */
  readonly friction: CompiledFriction;
  /** Re of the pipe = this · ρ Q/μ. [1/m] */
  readonly pipeReynolds: number;
  /** Drop of the pipe = this · (f Re²) μ²/ρ. [1/m²] */
  readonly pipeDrop: number;
  /** Drop of the fittings, and of a plate exchanger = this · ρ Q². [1/m⁴] */
  readonly fittingDrop: number;
  /** The coil; 0 with a plate exchanger. */
  readonly coil: CoilDrop;
  /** The coil of a second tank behind it; `null`: none, or a valve lets the fluid through one of the two. */
  readonly furtherCoil: CoilDrop | null;
  /** Laminar drop of the collectors = this · μ Q; 0 where they are several groups. [1/m³] */
  readonly collectorLaminar: number;
  /** Turbulent drop of the collectors = this · ρ Q², likewise. [1/m⁴] */
  readonly collectorTurbulent: number;
  /** Lift of a drain-back loop whose return does not run full. [m] */
  readonly lift: number;
  /** Groups of collectors in the order of the flow; `null` where they are one. */
  readonly groups: readonly (Way & Pick<CollectorGroupDesign, 'stage'>)[] | null;
}

/** Works a design's loop into the constants of its resistance. Checks nothing: the design is checked by `defineSystem`. */
export function compileHydraulics(parts: HydraulicParts, fluid: CompiledFluid): CompiledHydraulics {
  const { pump, loop, array, tank } = parts;
  const second = tank?.second ?? null;
  const [coil, further] = second?.charging === 'in-turn' ? coilsOf(parts.coil, null) : coilsOf(parts.coil, second);
  const { plate } = loop;
  const hasPlate = loop.exchanger === 'plate';
  const bore = loop.pipeInnerDiameter;
  const { groups = [] } = array;
  const one = groups.length === 0 ? rowsDrop(array) : { laminar: 0, turbulent: 0 };
  return {
    fluid,
    pump,
    friction: compileFriction(COPPER_ROUGHNESS / bore),
    pipeReynolds: 4 / (Math.PI * bore),
    pipeDrop: loop.pipeLength / (2 * bore ** 3),
    fittingDrop:
      (8 * loop.fittingLoss) / (Math.PI ** 2 * bore ** 4) +
      (hasPlate ? plate.ratedPressureDrop / (waterDensity(20) * plate.ratedFlow ** 2) : 0),
    coil: coilDrop(coil, hasPlate),
    furtherCoil: further === undefined ? null : coilDrop(further, false),
    collectorLaminar: one.laminar,
    collectorTurbulent: one.turbulent,
    lift: loop.layout === 'drain-back' && !loop.drainBack.siphon ? loop.drainBack.lift : 0,
    groups:
      groups.length === 0
        ? null
        : [{ ...array, stage: 1 }, ...groups]
            .toSorted((first, second) => first.stage - second.stage)
            .map((group) => ({ stage: group.stage, ...rowsDrop(group), share: 1 })),
  };
}

const coilDrop = ({ innerDiameter, length, windingDiameter }: CoilDesign, hasPlate: boolean): CoilDrop => ({
  reynolds: 4 / (Math.PI * innerDiameter),
  drop: hasPlate ? 0 : length / (2 * innerDiameter ** 3),
  curvature: innerDiameter / windingDiameter,
});

/** Drop of a coil over μ²/ρ. @param perViscosity - ρ Q/μ. [m] */
const coilFriction = ({ curvature, drop, reynolds }: CoilDrop, perViscosity: number): number =>
  drop * coilFrictionNumber(curvature, reynolds * perViscosity);

/** Head that a flow [m³/s] of density [kg/m³] and viscosity [Pa·s] needs; rises with the flow. [m] */
export function loopHead(h: CompiledHydraulics, flow: number, density: number, viscosity: number): number {
  const perViscosity = (density * flow) / viscosity;
  const friction =
    h.pipeDrop * frictionNumber(h.friction, h.pipeReynolds * perViscosity) +
    coilFriction(h.coil, perViscosity) +
    (h.furtherCoil === null ? 0 : coilFriction(h.furtherCoil, perViscosity));
  const drop =
    (friction * viscosity * viscosity) / density +
    (h.fittingDrop + h.collectorTurbulent) * density * flow * flow +
    h.collectorLaminar * viscosity * flow +
    (h.groups === null ? 0 : shareFlow(h.groups, { flow, density, viscosity }));
  return drop / (density * GRAVITY) + h.lift;
}

/** Electrical power at which the pump drives a flow [m³/s] through the loop. [W] */
export function powerForFlow(h: CompiledHydraulics, flow: number, density: number, viscosity: number): number {
  return pumpPower(h.pump, pumpSpeed(h.pump, loopHead(h, flow, density, viscosity), flow), flow);
}

/** Flow at rated speed. [m³/s] */
export function fullFlow(h: CompiledHydraulics, density: number, viscosity: number): number {
  const excess = (flow: number): number => loopHead(h, flow, density, viscosity) - pumpHead(h.pump, 1, flow);
  return risingRoot(excess, 0, h.pump.openFlow, 1e-9 * h.pump.openFlow);
}

/** Where a pump and its loop meet. */
export interface OperatingPoint {
  /** Speed over rated speed, 0 to 1. [-] */
  readonly speed: number;
  /** [m³/s] */
  readonly flow: number;
  /** [m] */
  readonly head: number;
  /** Taken by the pump; less than offered at full speed. [W] */
  readonly electricalPower: number;
}

/** What {@link pumpOperatingPoint} is asked. */
export interface OperatingConditions {
  /** Offered to the pump by the booster, 0 or more. [W] */
  readonly electricalPower: number;
  /** Mean of the loop. [°C] */
  readonly fluidTemperature: number;
}

/**
 * The point at which a pump works for the electrical power that it is offered.
 *
 * It runs at the speed at which it takes just this power, against the head of pipes and fittings (Darcy–Weisbach), coil and
 * collectors; at most at rated speed, where it leaves the rest (the booster's voltage ceiling). The closed loop, full of liquid,
 * has no static head. Starting and stopping powers are the caller's business.
 *
 * Collectors: rows share the flow; the rated drop with water at 20 °C is half laminar, proportional to μ Q, and half turbulent,
 * proportional to ρ Q² (judgement).
 *
 * @param parts - The loop, from a design.
 * @param conditions - Power and fluid temperature.
 * @throws {@link DesignError} for a power or temperature that is not a finite number in range.
 * @see Affinity laws of the pump as in {@link pumpState}; Darcy–Weisbach as in {@link pipePressureDrop}.
 */
export function pumpOperatingPoint(parts: HydraulicParts, conditions: OperatingConditions): OperatingPoint {
  const { electricalPower, fluidTemperature } = conditions;
  requireNumber('electricalPower', electricalPower, 0, 1e6, 'W');
  requireNumber('fluidTemperature', fluidTemperature, -100, 400, '°C');
  const fluid = compileFluid(parts.loop.fluid, parts.loop.glycolMassFraction);
  return operatingPoint(compileHydraulics(parts, fluid), electricalPower, fluidTemperature);
}

/** Kernel of {@link pumpOperatingPoint}. */
export function operatingPoint(
  h: CompiledHydraulics,
  electricalPower: number,
  fluidTemperature: number,
): OperatingPoint {
  const density = fluidDensity(h.fluid, fluidTemperature);
  const viscosity = fluidViscosity(h.fluid, fluidTemperature);
  const highest = fullFlow(h, density, viscosity);
  const excess = (flow: number): number => powerForFlow(h, flow, density, viscosity) - electricalPower;
  const flow = excess(highest) <= 0 ? highest : risingRoot(excess, 0, highest, 1e-12 * h.pump.openFlow);
  const head = loopHead(h, flow, density, viscosity);
  const speed = pumpSpeed(h.pump, head, flow);
  return { speed, flow, head, electricalPower: pumpPower(h.pump, speed, flow) };
}
