import type { ArrayDesign, CoilDesign, LoopDesign } from '../design/design.ts';
import { DesignError } from '../input/errors.ts';
import { STANDARD_ATMOSPHERE } from '../physics/fluid/air-pressure.ts';
import { compileFluid, fluidDensity } from '../physics/fluid/compile.ts';
import { loopVolumes } from '../physics/loop/loop-volumes.ts';
import { GRAVITY } from '../physics/loop/pump.ts';
import { curveHead, mostVoltage } from '../physics/loop/pump-curves.ts';
import { gasNeeded, prechargeFor, vesselSold } from '../physics/loop/vessel.ts';
import { type VesselNeed, vesselFor, vesselNeed } from '../physics/loop/vessel-need.ts';
import type { Fill } from './derived-array.ts';
import type { CheckedInput } from './schema/system.ts';

/** Pressure at the collectors when filled cold. Makers' manuals have 1.0 or 1.3 bar and 0.1 bar for each metre. [Pa] */
const TOP_PRESSURE = 1.3e5;
/** A design does not know its site; at 2000 m the smallest vessel is 3 % smaller. [Pa] */
const AIR = STANDARD_ATMOSPHERE;

/** Defaults of fluid, pressure and vessel that follow from other fields of the design. */
export function loopDefaults(
  input: CheckedInput,
  array: ArrayDesign,
  coils: readonly CoilDesign[],
  fill: Fill,
): LoopDesign {
  const loop = withLayout(input, array, coils, fill);
  const glycolMassFraction =
    loop.fluid === 'water'
      ? 0
      : fill(
          'loop.glycolMassFraction',
          loop.glycolMassFraction,
          0.4,
          '-',
          'judgement: mild winters; check the freezing point against your climate',
        );
  const fluid = compileFluid(loop.fluid, glycolMassFraction);
  const column = fluidDensity(fluid, loop.fillTemperature) * GRAVITY * loop.staticHeight;
  if (loop.fillPressure !== undefined && loop.fillPressure < column) {
    throw fault('loop.fillPressure', loop.fillPressure, `at least ${Math.ceil(column)} Pa, the column of liquid`);
  }
  const pressure =
    loop.fillPressure !== undefined
      ? loop.fillPressure - column
      : fill(
          'loop.pressure',
          loop.pressure,
          TOP_PRESSURE,
          'Pa',
          'the higher of two makers’ manuals, at the collectors; the column of liquid down to the gauge comes on top',
        );
  const fillPressure =
    loop.pressure !== undefined
      ? pressure + column
      : fill(
          'loop.fillPressure',
          loop.fillPressure,
          pressure + column,
          'Pa',
          'pressure at the collectors and the column of liquid below them',
        );
  const filled = { ...loop, glycolMassFraction, pressure, fillPressure };
  const need = vesselNeed(filled, coils, array, AIR);
  const lowest = Math.max(fillPressure, loop.vesselPrecharge ?? 0);
  if (need.endPressure <= lowest) {
    throw fault(
      'loop.reliefPressure',
      loop.reliefPressure,
      `half a bar and a tenth more than fill pressure and pre-charge, ${Math.ceil(lowest)} Pa`,
    );
  }
  const vesselVolume = fill(
    'loop.vesselVolume',
    loop.vesselVolume,
    vesselSold(smallest(need, fillPressure, loop.vesselPrecharge)),
    'm³',
    'next size sold that takes the expansion up to the fluid’s limit and what steam pushes out, EN 12828 (from memory)',
  );
  return {
    ...filled,
    vesselVolume,
    vesselPrecharge: fill(
      'loop.vesselPrecharge',
      loop.vesselPrecharge,
      prechargeFor(vesselVolume, fillPressure, need.systemVolume, AIR),
      'Pa',
      'the vessel holds the reserve of its size when filled, EN 12828 (from memory)',
    ),
  };
}

/** Vessel over what drains into it; judgement. [-] */
const DRAIN_RESERVE = 1.5;
/** A plate of no resistance that hands on all heat: the tank's own water in the collectors. [W/K] */
const NO_PLATE = 1e9;

/** What the layout asks for: a vessel that takes the collectors' water and a pump that lifts it, or no exchanger. */
function withLayout({ loop, pump }: CheckedInput, array: ArrayDesign, coils: readonly CoilDesign[], fill: Fill) {
  const { collectors, pipe } = loopVolumes(loop, coils, array);
  const drains = collectors + pipe * loop.outdoorShare;
  const { drainBack } = loop;
  const filled = {
    ...drainBack,
    vesselVolume: fill(
      'loop.drainBack.vesselVolume',
      drainBack.vesselVolume,
      DRAIN_RESERVE * drains,
      'm³',
      'judgement: half as much again as drains from collectors and outdoor pipes',
    ),
    lift: fill(
      'loop.drainBack.lift',
      drainBack.lift,
      loop.staticHeight,
      'm',
      'judgement: the vessel at the height of the gauge',
    ),
  };
  if (loop.layout === 'drain-back') {
    const { lift, vesselVolume } = filled;
    const head = pump.curves === null ? pump.shutOffHead : curveHead(pump.curves, mostVoltage(pump.curves), 0);
    if (vesselVolume < drains)
      throw wrong(
        'loop.drainBack.vesselVolume',
        `${vesselVolume} m³`,
        `at least the ${drains.toPrecision(3)} m³ that drain`,
      );
    if (head <= lift)
      throw wrong('pump.shutOffHead', `${head} m`, `more than the lift of ${lift} m, or the collectors never fill`);
  }
  const plate = loop.layout === 'direct' ? { ...loop.plate, conductance: NO_PLATE, ratedPressureDrop: 0 } : loop.plate;
  return {
    ...loop,
    drainBack: filled,
    plate,
    exchanger: loop.layout === 'direct' ? ('plate' as const) : loop.exchanger,
  };
}

const wrong = (path: string, found: string, expected: string): DesignError =>
  new DesignError([
    { path, found, expected, remedy: 'Hang the vessel higher (loop.drainBack.lift), or take another pump or vessel.' },
  ]);

/** Smallest vessel; with a pre-charge that the user has given, what gas there is in it must do. */
function smallest(need: VesselNeed, fillPressure: number, precharge: number | undefined): number {
  if (precharge === undefined) return vesselFor(need, fillPressure, AIR);
  const lowest = Math.max(fillPressure, precharge);
  const gas = gasNeeded(need.expansion + need.steam, lowest, need.endPressure, AIR);
  return (gas * (lowest + AIR)) / (precharge + AIR);
}

const fault = (path: string, found: number, expected: string): DesignError =>
  new DesignError([
    {
      path,
      found: `${found} Pa`,
      expected,
      remedy: 'Check fill pressure, static height, pre-charge and relief valve; all are gauge.',
    },
  ]);
