/** The working of pressures and vessel, line by line. */
import type { LoopDesign } from '../../design/design.ts';
import { line, type WorkingStep } from '../../input/working.ts';
import { compileFluid, fluidDensity } from '../../physics/fluid/compile.ts';
import { SMALL_VESSEL, VESSELS_SOLD } from '../../physics/loop/vessel.ts';
import type { SteamReach, VesselNeed } from '../../physics/loop/vessel-need.ts';
import { RELIEFS } from './working.ts';

/** What the lines show beside loop and steam; pressures are gauge. */
interface PressureNumbers {
  readonly need: VesselNeed;
  readonly air: number;
  readonly smallest: number;
  readonly reserveVolume: number;
  readonly hotPressure: number;
  readonly boilingAtTop: number;
}

/** From the relief valve to the boiling point. @param ratedPressure - Of the weakest part, where it was given. */
export function pressureSteps(
  loop: LoopDesign,
  steam: SteamReach,
  ratedPressure: number | undefined,
  found: PressureNumbers,
): WorkingStep[] {
  return [...fillSteps(loop, ratedPressure, found), ...steamSteps(loop, steam), ...vesselSteps(loop, steam, found)];
}

function fillSteps(loop: LoopDesign, ratedPressure: number | undefined, { need }: PressureNumbers): WorkingStep[] {
  const density = fluidDensity(compileFluid(loop.fluid, loop.glycolMassFraction), loop.fillTemperature);
  const relief = [loop.reliefPressure, 'Pa'] as const;
  return [
    ratedPressure === undefined
      ? line('loop-relief', relief)
      : line('loop-relief-chosen', relief, { rated: [ratedPressure, 'Pa'], sold: [RELIEFS, 'Pa'] }),
    line('loop-end-pressure', [need.endPressure, 'Pa'], { relief }),
    line('loop-column', [need.column, 'Pa'], { density: [density, 'kg/m³'], height: [loop.staticHeight, 'm'] }),
    line('loop-fill-pressure', [loop.fillPressure, 'Pa'], { column: [need.column, 'Pa'], top: [loop.pressure, 'Pa'] }),
    line('loop-liquid', [need.systemVolume, 'm³']),
    line('loop-expansion', [need.expansion, 'm³'], {
      coefficient: [need.expansion / need.systemVolume, '1'],
      volume: [need.systemVolume, 'm³'],
      hot: [loop.fluidLimit, '°C'],
      fluid: loop.fluid,
    }),
  ];
}

function steamSteps(loop: LoopDesign, steam: SteamReach): WorkingStep[] {
  return [
    line('loop-steam-reach', [steam.length, 'm'], {
      power: [steam.power, 'W'],
      perArea: [loop.steamPower, 'W/m²'],
      steam: [steam.temperature, '°C'],
      pipe: [loop.pipeLength, 'm'],
    }),
    line('loop-steam-volume', [steam.volume, 'm³']),
  ];
}

function vesselSteps(loop: LoopDesign, steam: SteamReach, found: PressureNumbers): WorkingStep[] {
  const { need, air: airPressure, smallest, reserveVolume, hotPressure, boilingAtTop } = found;
  const { vesselVolume, vesselPrecharge, fillPressure } = loop;
  const vessel = [vesselVolume, 'm³'] as const;
  const reserve = [reserveVolume, 'm³'] as const;
  const air = [airPressure, 'Pa'] as const;
  const pressed = (liquid: number) => ({
    vessel,
    precharge: [vesselPrecharge + airPressure, 'Pa'] as const,
    gas: [vesselVolume - liquid, 'm³'] as const,
    air,
  });
  return [
    line('loop-smallest-vessel', [smallest, 'm³'], {
      expansion: [need.expansion, 'm³'],
      steam: [need.steam, 'm³'],
      endAbsolute: [need.endPressure + airPressure, 'Pa'],
      end: [need.endPressure, 'Pa'],
      fill: [fillPressure, 'Pa'],
    }),
    line('loop-vessel', vessel, { sold: [VESSELS_SOLD, 'm³'] }),
    line(vesselVolume <= SMALL_VESSEL ? 'loop-reserve-small' : 'loop-reserve', reserve, {
      share: [reserveVolume / vesselVolume, '%'],
      vessel,
    }),
    line('loop-precharge', [vesselPrecharge, 'Pa'], {
      fill: [fillPressure + airPressure, 'Pa'],
      reserve,
      vessel,
      air,
    }),
    line('loop-hot', [hotPressure, 'Pa'], pressed(reserveVolume + need.expansion)),
    line('loop-with-steam', [steam.pressure, 'Pa'], pressed(reserveVolume + need.expansion + need.steam)),
    line('loop-boiling', [boilingAtTop, '°C'], { top: [hotPressure - need.column + airPressure, 'Pa'] }),
  ];
}
