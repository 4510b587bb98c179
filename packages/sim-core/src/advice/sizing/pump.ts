import * as z from 'zod';
import type { SystemDesign } from '../../design/design.ts';
import { checkInput } from '../../input/check.ts';
import { quantityOr } from '../../input/field.ts';
import type { Quantity } from '../../input/quantity.ts';
import { line, show, type WorkingStep } from '../../input/working.ts';
import { compileFluid } from '../../physics/fluid/compile.ts';
import { directPumpPoint } from '../../physics/loop/direct-pump.ts';
import { compileHydraulics, operatingPoint } from '../../physics/loop/hydraulics.ts';
import { cellTemperature } from '../../physics/pv/cell-temperature.ts';
import { moduleParameters } from '../../physics/pv/datasheet.ts';
import { pvOperatingPoint } from '../../physics/pv/operating-point.ts';
import { L_PER_MIN, PRACTICE } from './working.ts';

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

/** What a pump does on its module. */
export interface PumpSizing {
  /** Light at which a standing pump starts, fluid cold; `null`: not up to 1200 W/m². [W/m²] */
  readonly startIrradiance: number | null;
  /**
   * Light at which a turning pump stops, fluid cold; equals {@link startIrradiance} on a direct drive, where friction decides.
   * [W/m²]
   */
  readonly stopIrradiance: number | null;
  /** In 1000 W/m², fluid warm. */
  readonly fullSun: PumpInLight;
  /** In the light of a dull morning, fluid cold. */
  readonly dullMorning: PumpInLight;
  /** Warm fluid, 100 to 1000 W/m². */
  readonly rows: readonly PumpInLight[];
  /** Flow in full sun for each m² of collector. [m³/(s·m²)] */
  readonly flowPerArea: number;
  /** Warming of the fluid through the array in full sun, cold tank. [K] */
  readonly riseInFullSun: number;
  /**
   * Rated power of module (1000 W/m², 25 °C) that starts the pump in the light wanted; `null` on a direct drive or the mains.
   * [W]
   */
  readonly modulePowerForStart: number | null;
  /** The working. */
  readonly steps: readonly WorkingStep[];
  /** What to look at. */
  readonly notes: readonly string[];
}

/** Common flow of collectors: low flow to high flow, common practice, no source. [m³/(s·m²)] */
const FLOWS = { low: 0.2 / L_PER_MIN, high: 1.5 / L_PER_MIN } as const;

/**
 * What a pump does on its PV module: the light in which it starts, its flow in full sun, and a dull morning with cold fluid.
 *
 * Booster: it starts when efficiency × maximum power reaches the start power, and runs at the power left. Direct: it starts when
 * the standing rotor's current reaches the start current. Flow by the loop's own resistance at the fluid's temperature.
 *
 * @param design - From `defineSystem`.
 * @param options - Temperatures and the light wanted.
 * @throws {@link DesignError} listing all faults of the options at once.
 * @see `pumpOperatingPoint`, `directPumpPoint`, `pvOperatingPoint` for the models.
 */
export function sizePumpDrive(design: SystemDesign, options: PumpSizingOptions = {}): PumpSizing {
  const { air, warmFluid, coldFluid, startIrradiance: wanted, dullIrradiance } = checkInput(optionsSchema, options);
  const { array, loop, pump, pv } = design;
  const { drive } = pump;
  const fluid = compileFluid(loop.fluid, loop.glycolMassFraction);
  const hydraulics = compileHydraulics(design, fluid);
  const module = moduleParameters(pv.module);
  const cells = (irradiance: number) => cellTemperature(irradiance, air, pv.module.nominalOperatingCellTemperature);
  const modulePower = (irradiance: number) =>
    pv.modules *
    pvOperatingPoint(module, { irradiance, cellTemperature: cells(irradiance) }, { kind: 'maximum-power' }).power;

  const inLight = (irradiance: number, fluidTemperature: number): PumpInLight => {
    if (drive === 'direct') {
      const at = { irradiance, cellTemperature: cells(irradiance), fluidTemperature, modules: pv.modules };
      const point = directPumpPoint(design, module, at);
      const starts = point.standstillCurrent >= pump.motor.startCurrent;
      return {
        irradiance,
        modulePower: modulePower(irradiance),
        pumpPower: point.electricalPower,
        starts,
        flow: point.flow,
      };
    }
    const offered = drive === 'mains' ? Number.POSITIVE_INFINITY : pump.boosterEfficiency * modulePower(irradiance);
    const turns = drive === 'mains' || offered >= pump.stopPower;
    const point = turns ? operatingPoint(hydraulics, Math.min(offered, 1e6), fluidTemperature) : null;
    return {
      irradiance,
      modulePower: drive === 'mains' ? null : modulePower(irradiance),
      pumpPower: drive === 'mains' ? point!.electricalPower : offered,
      starts: drive === 'mains' || offered >= pump.startPower,
      flow: point?.flow ?? 0,
    };
  };

  const least = (test: (irradiance: number) => boolean): number | null => {
    if (!test(1200)) return null;
    let low = 1;
    let high = 1200;
    if (test(low)) return 0;
    for (let round = 0; round < 40; round++) {
      const middle = (low + high) / 2;
      if (test(middle)) high = middle;
      else low = middle;
    }
    return high;
  };
  const startIrradiance = least((light) => inLight(light, coldFluid).starts);
  const stopIrradiance = least((light) =>
    drive === 'booster'
      ? pump.boosterEfficiency * modulePower(light) >= pump.stopPower
      : inLight(light, coldFluid).starts,
  );
  const fullSun = inLight(1000, warmFluid);
  const dullMorning = inLight(dullIrradiance, coldFluid);
  const area = array.panels * array.collector.area;
  const flowPerArea = fullSun.flow / area;
  const heatPerKelvin = 3.9e6 * fullSun.flow; // ρ c_p of loop fluids within 6 %
  const riseInFullSun = fullSun.flow > 0 ? (array.collector.eta0 * 1000 * area) / heatPerKelvin : 0;
  const rated = pv.module.maximumPowerCurrent * pv.module.maximumPowerVoltage;
  const perRated = modulePower(wanted) / (pv.modules * rated);
  const modulePowerForStart = drive === 'booster' ? pump.startPower / (pump.boosterEfficiency * perRated) : null;
  const litres = (flow: number) => `${show(flow * L_PER_MIN, 3)} L/min`;
  const steps = [
    ...(drive === 'booster'
      ? [
          line(
            'module for the start wanted',
            'P = P_start/(η_booster × P_mp(light)/P_rated)',
            `${show(pump.startPower)} W/(${show(pump.boosterEfficiency)} × ${show(perRated)}), in ${show(wanted)} W/m²`,
            modulePowerForStart!,
            'W',
            'single diode, De Soto 2006; start power of the design',
          ),
        ]
      : []),
    line(
      'start',
      drive === 'direct' ? 'I_standstill(light) = I_start' : 'η_booster P_mp(light) = P_start',
      drive === 'direct'
        ? `${show(pump.motor.startCurrent)} A, ${pv.modules} module(s) of ${show(rated)} W`
        : `${show(pump.startPower)} W, ${pv.modules} module(s) of ${show(rated)} W`,
      startIrradiance ?? 0,
      'W/m²',
      startIrradiance === null ? 'not reached up to 1200 W/m²' : 'bisection',
    ),
    line(
      'flow in full sun',
      'pump curve at the power offered = Darcy–Weisbach',
      `${show(fullSun.pumpPower)} W, fluid ${show(warmFluid)} °C: ${litres(fullSun.flow)}`,
      fullSun.flow,
      'm³/s',
      'affinity laws; loop page of the theory',
    ),
    line(
      'flow for each m²',
      'V̇/A',
      `${litres(fullSun.flow)}/${show(area)} m²`,
      flowPerArea,
      'm³/(s·m²)',
      `0.2 (low flow) to 1.5 L/(min·m²) (high flow): ${PRACTICE}`,
    ),
    line(
      'warming through the array',
      'Δt = η0 G A/(ρ c_p V̇)',
      `${show(array.collector.eta0)} × 1000 × ${show(area)}/(3.9e6 × ${show(fullSun.flow)})`,
      riseInFullSun,
      'K',
      'cold tank; ρ c_p of loop fluids within 6 %',
    ),
    line(
      'flow on a dull morning',
      'the same, fluid cold',
      `${show(dullMorning.pumpPower, 3)} W in ${show(dullIrradiance)} W/m², fluid ${show(coldFluid)} °C: ${litres(dullMorning.flow)}${dullMorning.starts ? '' : ', but a standing pump does not start'}`,
      dullMorning.starts ? dullMorning.flow : 0,
      'm³/s',
      'viscosity: Melinder 2010',
    ),
  ];
  const notes: string[] = [];
  if (startIrradiance === null)
    notes.push('The pump never starts on this module: a larger module, or a pump that needs less.');
  else if (startIrradiance > 350)
    notes.push(
      `The pump starts only in ${startIrradiance.toFixed(0)} W/m²: the panels are hot by then, and dull days are lost. A larger module starts it sooner.`,
    );
  else if (startIrradiance < 80)
    notes.push(
      `The pump starts in ${startIrradiance.toFixed(0)} W/m² already: in dull light it may cool the tank. A smaller module, or a temperature-difference control.`,
    );
  if (fullSun.flow > 0 && flowPerArea < FLOWS.low)
    notes.push('Little flow for the array: hot collectors lose more. Wider pipe, less glycol or a stronger pump.');
  if (flowPerArea > FLOWS.high)
    notes.push('More flow than the array needs: a smaller pump or module saves money, and the tank keeps its layers.');
  if (fullSun.flow > 0 && dullMorning.flow < 0.25 * fullSun.flow)
    notes.push(
      'On a dull morning hardly anything flows: light is thin and the cold fluid thick. Mild light is then lost, which a simulation shows in figures.',
    );
  notes.push(
    'A module is live while there is light, and plugs under load arc: cover it before work; mains wiring is for licensed people.',
  );
  return {
    startIrradiance,
    stopIrradiance,
    fullSun,
    dullMorning,
    rows: [100, 150, 200, 300, 400, 500, 600, 700, 800, 900, 1000].map((light) => inLight(light, warmFluid)),
    flowPerArea,
    riseInFullSun,
    modulePowerForStart,
    steps,
    notes,
  };
}
