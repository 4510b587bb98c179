import type { WeatherYear } from '@noonloop/weather-io';
import type { SystemDesign } from '../../design/design.ts';
import { checkInput } from '../../input/check.ts';
import { quantityOr } from '../../input/field.ts';
import type { Quantity } from '../../input/quantity.ts';
import * as z from '../../input/zod.ts';
import { arrayArea } from '../../physics/collector/groups.ts';
import { powerInLight, pumpInLight, pumpOnModule, pumpThresholds } from '../../physics/loop/pump-in-light.ts';
import { findPumpStart } from './pump-start.ts';
import { pumpNotes, pumpSteps } from './pump-working.ts';
import type { PumpSizing } from './sizings.ts';
import { FLUID_HEAT, PRACTICE } from './working.ts';

const optionsSchema = z.strictObject({
  air: quantityOr('temperature', -40, 50, 15, 'judgement: a mild day'),
  warmFluid: quantityOr('temperature', 5, 95, 45, 'judgement: loop of a working system'),
  coldFluid: quantityOr('temperature', -30, 40, 5, 'judgement: loop on a winter morning'),
  startIrradiance: quantityOr('irradiance', 50, 600, 200, `pump turns once the panels can gain, ${PRACTICE}`),
  dullIrradiance: quantityOr('irradiance', 20, 600, 150, 'judgement: a bright overcast sky in the plane'),
});

/** What {@link sizePumpDrive} may be told; each has a default. */
export interface PumpSizingOptions {
  /** Outdoor air, for the cells, −40 to 50. Default 15, judgement. [°C] */
  readonly air?: Quantity;
  /** Loop of a working system, 5 to 95. Default 45, judgement. [°C] */
  readonly warmFluid?: Quantity;
  /** Loop on a winter morning, −30 to 40. Default 5, judgement. [°C] */
  readonly coldFluid?: Quantity;
  /** Light in which the pump is wanted to start, 50 to 600. Default 200, common practice, no source. [W/m²] */
  readonly startIrradiance?: Quantity;
  /** Light of a dull morning, 20 to 600. Default 150, judgement. [W/m²] */
  readonly dullIrradiance?: Quantity;
}

/** Lights of {@link PumpSizing.rows}. [W/m²] */
const LIGHTS = [100, 150, 200, 300, 400, 500, 600, 700, 800, 900, 1000] as const;

/**
 * What a pump does on its PV module: the light in which it starts and stops, its flow in full sun, and a dull morning with cold fluid.
 * With a year of weather also the start that delivers most on that roof: ten years are run for it.
 *
 * Booster: it starts when efficiency × maximum power reaches the start power, and runs at the power left. Direct: it starts when
 * the standing rotor's current reaches the start current, and stops below that of friction. Flow by the loop's own resistance at
 * the fluid's temperature.
 *
 * @param design - From `defineSystem`.
 * @param options - Temperatures and the light wanted.
 * @param weather - One year, for {@link PumpSizing.bestStart}.
 * @throws {@link DesignError} listing all faults of the options at once.
 * @see `pumpOperatingPoint`, `directPumpPoint`, `pvOperatingPoint` for the models.
 */
export function sizePumpDrive(
  design: SystemDesign,
  options: PumpSizingOptions = {},
  weather: WeatherYear | null = null,
): PumpSizing {
  const asked = checkInput(optionsSchema, options);
  const { array, pump, pv } = design;
  const area = arrayArea(array);
  const on = pumpOnModule(design, asked.air);
  const { start, stop } = pumpThresholds(on);
  const fullSun = pumpInLight(on, 1000, asked.warmFluid);
  const rated = pv.module.maximumPowerCurrent * pv.module.maximumPowerVoltage;
  const powerPerRated = powerInLight(on, asked.startIrradiance) / (pv.modules * rated);
  const results = {
    startIrradiance: start,
    stopIrradiance: stop,
    fullSun,
    dullMorning: pumpInLight(on, asked.dullIrradiance, asked.coldFluid),
    rows: LIGHTS.map((light) => pumpInLight(on, light, asked.warmFluid)),
    flowPerArea: fullSun.flow / area,
    riseInFullSun: fullSun.flow > 0 ? (array.collector.eta0 * 1000 * area) / (FLUID_HEAT * fullSun.flow) : 0,
    modulePowerForStart: pump.drive === 'booster' ? pump.startPower / (pump.boosterEfficiency * powerPerRated) : null,
    bestStart: weather === null ? null : findPumpStart(on, weather),
  };
  return { ...results, steps: pumpSteps(design, asked, results, powerPerRated), notes: pumpNotes(results) };
}
