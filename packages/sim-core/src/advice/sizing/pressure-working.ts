/** The working of pressures and vessel, line by line. */
import type { LoopDesign } from '../../design/design.ts';
import { line, show, type WorkingStep } from '../../input/working.ts';
import { compileFluid, fluidDensity } from '../../physics/fluid/compile.ts';
import { SMALL_VESSEL, VESSELS_SOLD } from '../../physics/loop/vessel.ts';
import type { SteamReach, VesselNeed } from '../../physics/loop/vessel-need.ts';
import { PRACTICE, RELIEFS } from './working.ts';

/** What the lines show beside loop and steam; pressures are gauge. */
interface PressureNumbers {
  readonly need: VesselNeed;
  readonly air: number;
  readonly smallest: number;
  readonly reserveVolume: number;
  readonly hotPressure: number;
  readonly boilingAtTop: number;
}

const STANDARD = 'EN 12828, from memory';
const GAS_LAW = 'gas law, isothermal';
const bar = (pressure: number): string => `${show(pressure / 1e5, 3)} bar`;
const litres = (volume: number): string => `${show(volume * 1000)} L`;

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
  return [
    ratedPressure === undefined
      ? line('relief valve', 'of the design', bar(loop.reliefPressure), [loop.reliefPressure, 'Pa'], 'design')
      : line(
          'relief valve',
          'highest setting sold that the weakest part bears',
          `rated ${bar(ratedPressure)}`,
          [loop.reliefPressure, 'Pa'],
          `${RELIEFS.map((setting) => setting / 1e5).join(', ')} bar: ${PRACTICE}`,
        ),
    line(
      'end pressure',
      'relief less 0.5 bar, above 5 bar less 10 %',
      bar(loop.reliefPressure),
      [need.endPressure, 'Pa'],
      STANDARD,
    ),
    line(
      'column of liquid',
      'ρ g H',
      `${show(density)} × 9.80665 × ${show(loop.staticHeight)}`,
      [need.column, 'Pa'],
      'hydrostatics',
    ),
    line(
      'fill pressure, loop cold',
      'ρ g H + top pressure',
      `${bar(need.column)} + ${bar(loop.pressure)}`,
      [loop.fillPressure, 'Pa'],
      'makers’ manuals: 1.0 or 1.3 bar and 0.1 bar for each metre',
    ),
    line(
      'liquid of the loop',
      'collectors + pipe + coil',
      litres(need.systemVolume),
      [need.systemVolume, 'm³'],
      'geometry of the design',
    ),
    line(
      'expansion volume',
      'V_e = [ρ(T_fill)/ρ(T_max) − 1] V_system',
      `${show(need.expansion / need.systemVolume)} × ${litres(need.systemVolume)}, to ${show(loop.fluidLimit)} °C`,
      [need.expansion, 'm³'],
      loop.fluid === 'water' ? 'IAPWS SR6-08' : 'Melinder 2010, extrapolated above 100 °C',
    ),
  ];
}

function steamSteps(loop: LoopDesign, steam: SteamReach): WorkingStep[] {
  return [
    line(
      'steam reaches',
      "L = P A/[U' (T_s − 30 °C)]",
      `${show(steam.power)} W at ${show(loop.steamPower)} W/m²; steam of ${show(steam.temperature)} °C at the end pressure; pipe of ${show(loop.pipeLength)} m, there and back`,
      [steam.length, 'm'],
      'IEA SHC Task 26, from memory: 50 W/m² where the array empties well, 120 where badly',
    ),
    line(
      'steam volume',
      'collectors, and pipe as far as steam reaches',
      litres(steam.volume),
      [steam.volume, 'm³'],
      'geometry of the design',
    ),
  ];
}

function vesselSteps(loop: LoopDesign, steam: SteamReach, found: PressureNumbers): WorkingStep[] {
  const { need, air, smallest, reserveVolume, hotPressure, boilingAtTop } = found;
  const { vesselVolume, vesselPrecharge, fillPressure } = loop;
  const stored = (liquid: number) =>
    `${litres(vesselVolume)} × ${bar(vesselPrecharge + air)}/(${litres(vesselVolume - liquid)}) − ${bar(air)}`;
  const small = vesselVolume <= SMALL_VESSEL;
  return [
    line(
      'smallest vessel',
      'V_N = (V_e + V_steam)(p_end + p_air)/(p_end − p_fill) + V_reserve',
      `(${litres(need.expansion)} + ${litres(need.steam)}) × ${bar(need.endPressure + air)}/(${bar(need.endPressure)} − ${bar(fillPressure)}) + reserve`,
      [smallest, 'm³'],
      STANDARD,
    ),
    line(
      'vessel sold',
      'list',
      `${VESSELS_SOLD.map((size) => size * 1000).join(', ')} L`,
      [vesselVolume, 'm³'],
      PRACTICE,
    ),
    line(
      'reserve in it, loop cold',
      small ? '20 % of a vessel of up to 15 L' : '0.5 % of V_system, at least 3 L',
      `${show((100 * reserveVolume) / vesselVolume, 3)} % of ${litres(vesselVolume)}`,
      [reserveVolume, 'm³'],
      STANDARD,
    ),
    line(
      'pre-charge',
      'p_pre = (p_fill + p_air)(1 − V_reserve/V_N) − p_air',
      `${bar(fillPressure + air)} × (1 − ${litres(reserveVolume)}/${litres(vesselVolume)}) − ${bar(air)}`,
      [vesselPrecharge, 'Pa'],
      `${GAS_LAW}; makers’ manuals: 0.3 or 0.5 bar below the fill pressure`,
    ),
    line(
      'pressure hot',
      'p = V_N (p_pre + p_air)/(V_N − w) − p_air',
      stored(reserveVolume + need.expansion),
      [hotPressure, 'Pa'],
      GAS_LAW,
    ),
    line(
      'pressure with steam',
      'the same, steam’s volume pushed in',
      stored(reserveVolume + need.expansion + need.steam),
      [steam.pressure, 'Pa'],
      GAS_LAW,
    ),
    line(
      'boiling at the top',
      't_sat(p_top/y)',
      `${bar(hotPressure - need.column + air)} absolute`,
      [boilingAtTop, '°C'],
      'IF97, Raoult',
    ),
  ];
}
