/** What a pump does on its PV module in one light: whether it starts, when it stops, what it moves. */
import type { SystemDesign } from '../../design/design.ts';
import { compileFluid } from '../fluid/compile.ts';
import { noctRise, ratedEfficiency } from '../pv/cell-temperature.ts';
import { stringParameters } from '../pv/datasheet.ts';
import { type PvModuleParameters, translateModule } from '../pv/module.ts';
import { pvOperatingPoint } from '../pv/operating-point.ts';
import { directPumpPoint, standstillCurrent } from './direct-pump.ts';
import { type CompiledHydraulics, compileHydraulics, operatingPoint } from './hydraulics.ts';
import { compileMotor } from './motor.ts';

/** Pump and module in one light. */
export interface PumpInLight {
  /** On the module. [W/m²] */
  readonly irradiance: number;
  /** Of the module or modules, before the booster; `null` with the mains. [W] */
  readonly modulePower: number | null;
  /** Offered to the pump (booster) or taken by it (direct). [W] */
  readonly pumpPower: number;
  /** Whether a standing pump breaks away. */
  readonly starts: boolean;
  /** Flow of the turning pump; 0 where it stands still. [m³/s] */
  readonly flow: number;
}

/** A pump on its module, ready to be looked at. */
export interface PumpOnModule {
  readonly design: SystemDesign;
  readonly module: PvModuleParameters;
  readonly hydraulics: CompiledHydraulics;
  /** Outdoor air, for the cells. [°C] */
  readonly air: number;
}

/** The largest power that the hydraulics are asked for; no pump of a house takes it. [W] */
const MOST_POWER = 1e6;
/** Brightest light in which a start is looked for. [W/m²] */
export const HIGHEST_LIGHT = 1200;

/** Prepares a design's pump and module for an outdoor air [°C]. */
export const pumpOnModule = (design: SystemDesign, air: number): PumpOnModule => ({
  design,
  module: stringParameters(design.pv),
  hydraulics: compileHydraulics(design, compileFluid(design.loop.fluid, design.loop.glycolMassFraction)),
  air,
});

/** Warmth of the cells in a light, as the year takes it. [°C] */
const cellsIn = ({ air, design: { pv } }: PumpOnModule, irradiance: number): number =>
  air + irradiance * noctRise(pv.module.nominalOperatingCellTemperature, ratedEfficiency(pv.module));

/** Maximum power of all modules in a light. [W] */
export const powerInLight = (of: PumpOnModule, irradiance: number): number =>
  of.design.pv.modules *
  pvOperatingPoint(of.module, { irradiance, cellTemperature: cellsIn(of, irradiance) }, { kind: 'maximum-power' })
    .power;

/** What starts the pump in a light: power offered by the booster [W], current of the standing rotor of a direct drive [A]. */
export function supplyInLight(of: PumpOnModule, irradiance: number): number {
  const { pump, pv } = of.design;
  if (pump.drive === 'mains') return Number.POSITIVE_INFINITY;
  if (pump.drive === 'booster') return pump.boosterEfficiency * powerInLight(of, irradiance);
  const p = new Float64Array(5);
  translateModule(of.module, irradiance, cellsIn(of, irradiance), p);
  return standstillCurrent(p, pv.modules, compileMotor(pump));
}

/** Pump and module in one light, the fluid at a temperature [°C]. */
export function pumpInLight(of: PumpOnModule, irradiance: number, fluidTemperature: number): PumpInLight {
  const { pump, pv } = of.design;
  const offered = supplyInLight(of, irradiance);
  if (pump.drive === 'direct') {
    const at = { irradiance, cellTemperature: cellsIn(of, irradiance), fluidTemperature, modules: pv.modules };
    const { electricalPower: pumpPower, flow } = directPumpPoint(of.design, of.module, at);
    const starts = offered >= pump.motor.startCurrent;
    return { irradiance, modulePower: powerInLight(of, irradiance), pumpPower, starts, flow };
  }
  const turns = offered >= pump.stopPower;
  const point = turns ? operatingPoint(of.hydraulics, Math.min(offered, MOST_POWER), fluidTemperature) : null;
  const flow = point?.flow ?? 0;
  return pump.drive === 'mains'
    ? { irradiance, modulePower: null, pumpPower: point!.electricalPower, starts: true, flow }
    : {
        irradiance,
        modulePower: powerInLight(of, irradiance),
        pumpPower: offered,
        starts: offered >= pump.startPower,
        flow,
      };
}

/**
 * Light at which a standing pump starts and that at which a turning one stops.
 *
 * @returns Each `null` where 1200 W/m² do not do; 0 with the mains. [W/m²]
 */
export function pumpThresholds(of: PumpOnModule): { readonly start: number | null; readonly stop: number | null } {
  const { pump } = of.design;
  if (pump.drive === 'mains') return { start: 0, stop: 0 };
  const [start, stop] =
    pump.drive === 'direct' ? [pump.motor.startCurrent, pump.motor.frictionCurrent] : [pump.startPower, pump.stopPower];
  return { start: lightForSupply(of, start), stop: lightForSupply(of, stop) };
}

/** Least light that offers a supply, see {@link supplyInLight}; by bisection. [W/m²] */
function lightForSupply(of: PumpOnModule, supply: number): number | null {
  if (supplyInLight(of, HIGHEST_LIGHT) < supply) return null;
  let low = 1;
  let high = HIGHEST_LIGHT;
  if (supplyInLight(of, low) >= supply) return 0;
  for (let round = 0; round < 40; round++) {
    const middle = (low + high) / 2;
    if (supplyInLight(of, middle) >= supply) high = middle;
    else low = middle;
  }
  return high;
}
