import type { ArrayDesign, LoopDesign } from '../design/design.ts';
import { DesignError } from '../input/errors.ts';
import { compileFluid, fluidDensity, HIGHEST_TEMPERATURE } from '../physics/fluid/compile.ts';
import { sizeExpansionVessel } from '../physics/loop/expansion.ts';
import { loopVolumes } from '../physics/loop/pressure-design.ts';
import { GRAVITY } from '../physics/loop/pump.ts';
import type { CheckedInput } from './define.ts';
import type { Fill } from './derived-array.ts';

/** Air pressure of the gas law, as in EN 12828's formula. [Pa] */
const ATMOSPHERE = 1e5;
/** Share of the vessel that holds liquid when filled cold: EN 12828's reserve of a small vessel (from memory). [-] */
const RESERVE = 0.2;
/** Pressure at the collectors when filled. [Pa] */
const TOP_PRESSURE = 1.5e5;

/** Defaults of fluid, pressure and vessel that follow from other fields of the design. */
export function loopDefaults(input: CheckedInput, array: ArrayDesign, fill: Fill): LoopDesign {
  const { loop, coil } = input;
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
          'judgement: what keeps the top of the loop under pressure when cold',
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
  const vesselPrecharge = fill(
    'loop.vesselPrecharge',
    loop.vesselPrecharge,
    Math.max(0, (1 - RESERVE) * (fillPressure + ATMOSPHERE) - ATMOSPHERE),
    'Pa',
    'a fifth of the vessel holds liquid when filled (reserve of small vessels in EN 12828, from memory)',
  );
  const { steam, whole } = loopVolumes(loop, coil, array);
  const lowest = Math.max(fillPressure, vesselPrecharge);
  const sized = () =>
    sizeExpansionVessel({
      fluid: loop.fluid,
      glycolMassFraction,
      systemVolume: whole,
      fillTemperature: loop.fillTemperature,
      maximumTemperature: Math.min(Math.max(loop.fluidLimit, loop.fillTemperature), HIGHEST_TEMPERATURE),
      steamVolume: steam,
      reserveVolume: 0,
      prechargePressure: 0,
      reliefPressure: loop.reliefPressure,
    });
  const { endPressure, expansionVolume } = sized();
  if (endPressure <= lowest) {
    throw fault(
      'loop.reliefPressure',
      loop.reliefPressure,
      `half a bar and a tenth more than fill pressure and pre-charge, ${Math.ceil(lowest)} Pa`,
    );
  }
  // Liquid at the fill pressure, and at the end pressure that and what expansion and steam push in.
  const smallest =
    (expansionVolume + steam) /
    ((vesselPrecharge + ATMOSPHERE) * (1 / (lowest + ATMOSPHERE) - 1 / (endPressure + ATMOSPHERE)));
  return {
    ...loop,
    glycolMassFraction,
    pressure,
    fillPressure,
    vesselPrecharge,
    vesselVolume: fill(
      'loop.vesselVolume',
      loop.vesselVolume,
      smallest,
      'm³',
      'smallest that takes the expansion up to the fluid’s limit and the liquid of collectors and outdoor pipes as steam, EN 12828 (from memory)',
    ),
  };
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
