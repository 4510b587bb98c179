import * as z from 'zod';
import type { SystemDesign } from '../../design/design.ts';
import { checkInput } from '../../input/check.ts';
import { DesignError } from '../../input/errors.ts';
import { quantityOr } from '../../input/field.ts';
import type { Quantity } from '../../input/quantity.ts';
import { line, show, type WorkingStep } from '../../input/working.ts';
import { boilingPoint } from '../../physics/fluid/boiling.ts';
import { compileFluid, fluidDensity, HIGHEST_TEMPERATURE } from '../../physics/fluid/compile.ts';
import { type ExpansionVessel, sizeExpansionVessel } from '../../physics/loop/expansion.ts';
import { loopVolumes } from '../../physics/loop/pressure-design.ts';
import { GRAVITY } from '../../physics/loop/pump.ts';
import { PRACTICE } from './working.ts';

const optionsSchema = z.strictObject({
  topPressure: quantityOr(
    'pressure',
    0.1e5,
    5e5,
    0.5e5,
    `what keeps air out at the top when cold, 0.5 to 1 bar, ${PRACTICE}`,
  ),
  ratedPressure: quantityOr(
    'pressure',
    1e5,
    3e6,
    6e5,
    `weakest part of a small loop, often 6 bar, ${PRACTICE}; read it off each part`,
  ),
  maximumTemperature: quantityOr(
    'temperature',
    60,
    HIGHEST_TEMPERATURE,
    120,
    'from about there glycol ages fast; the liquid is then steam',
  ),
});

/** What {@link sizeLoopPressure} may be told; each has a default. */
export interface PressureSizingOptions {
  /** Gauge pressure at the top of the cold loop, 1e4 to 5e5. Default 5e4; 0.5 to 1 bar are common practice, no source. [Pa] */
  readonly topPressure?: Quantity;
  /**
   * Gauge pressure that the weakest part bears, 1e5 to 3e6. Default 6e5, common practice, no source: read it off each part.
   * [Pa]
   */
  readonly ratedPressure?: Quantity;
  /** Highest mean of the liquid, 60 to 140. Default 120: above it glycol ages fast, and it is steam. [°C] */
  readonly maximumTemperature?: Quantity;
}

/** Relief valves and vessels as they are sold, common practice, no source. [Pa], [m³] */
const RELIEFS = [2.5e5, 3e5, 4e5, 6e5, 8e5, 10e5] as const;
const VESSELS = [0.008, 0.012, 0.018, 0.024, 0.035, 0.05, 0.08, 0.1, 0.14, 0.2, 0.3, 0.5] as const;

/** Pressures and vessel of a loop, and why. All gauge, at the vessel's height. */
export interface PressureSizing {
  /** Relief valve: the highest that is sold and not above the weakest part. [Pa] */
  readonly reliefPressure: number;
  /** Of the vessel's gas, set before filling, vessel off the loop. [Pa] */
  readonly prechargePressure: number;
  /** Next vessel that is sold. [m³] */
  readonly vesselVolume: number;
  /** Fill to this with the loop cold. [Pa] */
  readonly fillPressure: number;
  /** Liquid hot, no steam. [Pa] */
  readonly hotPressure: number;
  /** Liquid hot, collectors and outdoor pipe steam. [Pa] */
  readonly steamPressure: number;
  /** At which the fluid boils at the top of the loop with the pressure of a hot loop. [°C] */
  readonly boilingAtTop: number;
  /** The vessel's own sizing. */
  readonly vessel: ExpansionVessel;
  /** The working, vessel's included. */
  readonly steps: readonly WorkingStep[];
  /** What can hurt someone. */
  readonly cautions: readonly string[];
}

/**
 * Relief setting, expansion vessel, pre-charge and fill pressure of a design's loop.
 *
 *     relief:      the highest that is sold, at most the rating of the weakest part
 *     pre-charge:  p_pre = ρ g H + top pressure − 0.3 bar, at least ρ g H + 0.2 bar
 *     vessel:      `sizeExpansionVessel`, liquid to the highest temperature, collectors and outdoor pipe as steam
 *     fill:        the vessel holding its reserve, and at least ρ g H + top pressure
 *
 * Volumes, height and fluid are the design's; its own pressures and vessel are not looked at.
 *
 * @param design - From `defineSystem`.
 * @param options - Pressure wanted at the top, rating of the weakest part, highest temperature.
 * @throws {@link DesignError} listing all faults of the options at once, and where the height leaves no room below the relief
 *   valve.
 * @see EN 12828 (details from memory).
 */
export function sizeLoopPressure(design: SystemDesign, options: PressureSizingOptions = {}): PressureSizing {
  const { topPressure, ratedPressure, maximumTemperature } = checkInput(optionsSchema, options);
  const { loop, coil, array } = design;
  const { whole, steam } = loopVolumes(loop, coil, array);
  const density = fluidDensity(compileFluid(loop.fluid, loop.glycolMassFraction), loop.fillTemperature);
  const column = density * GRAVITY * loop.staticHeight;
  const reliefPressure = [...RELIEFS].reverse().find((setting) => setting <= ratedPressure) ?? ratedPressure;
  const prechargePressure = column + Math.max(topPressure - 0.3e5, 0.2e5);
  const vesselOf = (vesselVolume?: number) =>
    sizeExpansionVessel({
      fluid: loop.fluid,
      glycolMassFraction: loop.glycolMassFraction,
      systemVolume: whole,
      fillTemperature: loop.fillTemperature,
      maximumTemperature: Math.max(maximumTemperature, loop.fillTemperature),
      steamVolume: steam,
      prechargePressure,
      reliefPressure,
      ...(vesselVolume === undefined ? {} : { vesselVolume }),
    });
  const smallest = vesselOf();
  // A loop filled for the pressure at its top may hold more than the reserve: then the next vessel is needed.
  const filled = VESSELS.filter((volume) => volume >= smallest.minimumVolume).map((volume) => {
    const sized = vesselOf(volume);
    const fill = Math.max(sized.fillPressure, column + topPressure);
    const held = volume * (1 - (prechargePressure + 1e5) / (fill + 1e5));
    const stored = (pushed: number) =>
      pushed < 0.99 * volume
        ? (volume * (prechargePressure + 1e5)) / (volume - pushed) - 1e5
        : Number.POSITIVE_INFINITY;
    const hot = held + sized.expansionVolume;
    return { volume, sized, fill, hot, hotPressure: stored(hot), steamPressure: stored(hot + steam) };
  });
  const chosen = filled.find((vessel) => vessel.steamPressure <= vessel.sized.endPressure);
  if (chosen === undefined) {
    throw new DesignError([
      {
        path: 'loop',
        found: `a vessel of ${show(smallest.minimumVolume * 1000, 3)} L or more needed`,
        expected: `at most ${VESSELS[VESSELS.length - 1]! * 1000} L`,
        remedy: 'Choose a relief valve that opens later, or let the loop drain back.',
      },
    ]);
  }
  const { volume: vesselVolume, sized: reserved, fill: fillPressure, hot, hotPressure, steamPressure } = chosen;
  const top = hotPressure - column + 101_325;
  const boilingAtTop = boilingPoint(loop.fluid, loop.glycolMassFraction, top);
  const bar = (pressure: number) => `${show(pressure / 1e5, 3)} bar`;
  const steps = [
    line(
      'relief valve',
      'highest setting sold that the weakest part bears',
      `rated ${bar(ratedPressure)}`,
      reliefPressure,
      'Pa',
      `${RELIEFS.map((setting) => setting / 1e5).join(', ')} bar: ${PRACTICE}`,
    ),
    line(
      'column of liquid',
      'ρ g H',
      `${show(density)} × 9.80665 × ${show(loop.staticHeight)}`,
      column,
      'Pa',
      'hydrostatics',
    ),
    line(
      'pre-charge',
      'ρ g H + top pressure − 0.3 bar, at least ρ g H + 0.2 bar',
      `${bar(column)} + ${bar(Math.max(topPressure - 0.3e5, 0.2e5))}`,
      prechargePressure,
      'Pa',
      PRACTICE,
    ),
    line(
      'liquid of the loop',
      'collectors + pipe + coil; steam: collectors and outdoor pipe',
      `${show(whole * 1000)} L, of it ${show(steam * 1000)} L`,
      whole,
      'm³',
      'geometry of the design',
    ),
    ...reserved.steps.filter(({ quantity }) => quantity !== 'fill pressure'),
    line('vessel sold', 'list', `${VESSELS.map((size) => size * 1000).join(', ')} L`, vesselVolume, 'm³', PRACTICE),
    line(
      'fill pressure, loop cold',
      'max{V_N (p_pre + 1 bar)/(V_N − V_reserve) − 1 bar; ρ g H + top pressure}',
      `max{${bar(reserved.fillPressure)}; ${bar(column + topPressure)}}`,
      fillPressure,
      'Pa',
      'gas law, isothermal',
    ),
    line(
      'pressure hot',
      'V_N (p_pre + 1 bar)/(V_N − w) − 1 bar',
      `${show(vesselVolume * 1000)} L × ${bar(prechargePressure + 1e5)}/(${show((vesselVolume - hot) * 1000)} L) − 1 bar`,
      hotPressure,
      'Pa',
      'gas law, isothermal',
    ),
    line(
      'pressure with steam',
      'the same, steam’s volume pushed in',
      `w ${show((hot + steam) * 1000)} L`,
      steamPressure,
      'Pa',
      'gas law, isothermal',
    ),
    line('boiling at the top', 't_sat(p_top/y)', `${bar(top)} absolute`, boilingAtTop, '°C', 'IF97, Raoult'),
  ];
  return {
    reliefPressure,
    prechargePressure,
    vesselVolume,
    fillPressure,
    hotPressure,
    steamPressure,
    boilingAtTop,
    vessel: reserved,
    steps,
    cautions: [
      'Nothing that shuts may stand between collectors and relief valve; pipe its outlet to a catch vessel, never to a roof edge or a drain.',
      'Steam and hot glycol scald: fill and vent with the collectors cold or covered.',
      'The vessel must bear the relief pressure, its membrane glycol and heat; a length of bare pipe before it keeps steam from it. Pressure vessels: your local code and licensed trades decide.',
    ],
  };
}
