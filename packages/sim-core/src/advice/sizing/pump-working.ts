/** The working of `sizePumpDrive`, and what to look at. */
import type { SystemDesign } from '../../design/design.ts';
import { fact, type Saying, say } from '../../input/saying.ts';
import { line, type WorkingStep } from '../../input/working.ts';
import { arrayArea } from '../../physics/collector/groups.ts';
import { HIGHEST_LIGHT } from '../../physics/loop/pump-in-light.ts';
import type { AdviceCode } from '../advice-codes.ts';
import { startNotes, startSteps } from './pump-start-advice.ts';
import type { PumpSizing } from './sizings.ts';
import { FLUID_HEAT, KWH, L_PER_MIN } from './working.ts';

/** Common flow of collectors: low flow to high flow, common practice, no source. [m³/(s·m²)] */
const FLOWS = { low: 0.2 / L_PER_MIN, high: 1.5 / L_PER_MIN } as const;
/** Starts in less light may cool the tank, in more they lose mild days; judgement. [W/m²] */
const STARTS = { early: 80, late: 350 } as const;
/** Share of the flow in full sun below which hardly anything flows; judgement. [-] */
const HARDLY = 0.25;

type Results = Omit<PumpSizing, 'steps' | 'notes'>;

/** What was asked, in SI. */
interface Asked {
  readonly warmFluid: number;
  readonly coldFluid: number;
  readonly startIrradiance: number;
  readonly dullIrradiance: number;
}

/** Lines of the working. */
export function pumpSteps(design: SystemDesign, asked: Asked, results: Results, powerPerRated: number): WorkingStep[] {
  return [
    ...thresholdSteps(design, asked, results, powerPerRated),
    ...flowSteps(design, asked, results),
    ...(results.bestStart === null ? [] : startSteps(results.bestStart)),
  ];
}

/** Start, stop, and the module for a start. */
function thresholdSteps(
  { pump, pv }: SystemDesign,
  asked: Asked,
  { startIrradiance, stopIrradiance, modulePowerForStart }: Results,
  powerPerRated: number,
): WorkingStep[] {
  if (pump.drive === 'mains') return [];
  const rated = pv.module.maximumPowerCurrent * pv.module.maximumPowerVoltage;
  const modules = { modules: [pv.modules, '1'], rated: [rated, 'W'] } as const;
  const { motor, boosterEfficiency, startPower, stopPower } = pump;
  const [start, stop] =
    pump.drive === 'direct'
      ? ([
          ['pump-start-direct', { ...modules, current: [motor.startCurrent, 'A'] }],
          ['pump-stop-direct', { ...modules, current: [motor.frictionCurrent, 'A'] }],
        ] as const)
      : ([
          ['pump-start-booster', { ...modules, power: [startPower, 'W'] }],
          ['pump-stop-booster', { ...modules, power: [stopPower, 'W'] }],
        ] as const);
  const highest = { highest: [HIGHEST_LIGHT, 'W/m²'] } as const;
  const steps = [
    startIrradiance === null
      ? line('pump-start-never', [0, 'W/m²'], highest)
      : line(start[0], [startIrradiance, 'W/m²'], start[1]),
    stopIrradiance === null
      ? line('pump-stop-never', [0, 'W/m²'], highest)
      : line(stop[0], [stopIrradiance, 'W/m²'], stop[1]),
  ];
  if (modulePowerForStart === null) return steps;
  const module = line('pump-module', [modulePowerForStart, 'W'], {
    power: [startPower, 'W'],
    efficiency: [boosterEfficiency, '1'],
    perRated: [powerPerRated, '1'],
    light: [asked.startIrradiance, 'W/m²'],
  });
  return [module, ...steps];
}

/** Flow in full sun and on a dull morning. */
function flowSteps(
  { array }: SystemDesign,
  asked: Asked,
  { dullMorning, flowPerArea, fullSun, riseInFullSun }: Results,
): WorkingStep[] {
  const area = [arrayArea(array), 'm²'] as const;
  const flow = [fullSun.flow, 'm³/s'] as const;
  return [
    line('pump-flow', flow, { power: [fullSun.pumpPower, 'W'], fluid: [asked.warmFluid, '°C'] }),
    line('pump-flow-per-area', [flowPerArea, 'm³/(s·m²)'], {
      flow,
      area,
      low: [FLOWS.low, 'm³/(s·m²)'],
      high: [FLOWS.high, 'm³/(s·m²)'],
    }),
    line('pump-warming', [riseInFullSun, 'K'], {
      eta0: [array.collector.eta0, '1'],
      area,
      heat: [FLUID_HEAT / KWH, 'Wh/(L·K)'],
      flow,
    }),
    line(dullMorning.starts ? 'pump-dull' : 'pump-dull-standing', [dullMorning.starts ? dullMorning.flow : 0, 'm³/s'], {
      power: [dullMorning.pumpPower, 'W'],
      light: [asked.dullIrradiance, 'W/m²'],
      fluid: [asked.coldFluid, '°C'],
      flow: [dullMorning.flow, 'm³/s'],
    }),
  ];
}

/** What to look at. */
export function pumpNotes(results: Results): Saying<AdviceCode>[] {
  const { bestStart, dullMorning, flowPerArea, fullSun, modulePowerForStart, startIrradiance } = results;
  const notes: Saying<AdviceCode>[] = [];
  if (startIrradiance === null) notes.push(say('pump-never-starts'));
  else if (startIrradiance > STARTS.late) notes.push(say('pump-starts-late', { light: fact(startIrradiance, 'W/m²') }));
  else if (startIrradiance < STARTS.early && (modulePowerForStart !== null || startIrradiance > 0))
    notes.push(say('pump-starts-early', { light: fact(startIrradiance, 'W/m²') }));
  if (bestStart !== null) notes.push(...startNotes(bestStart));
  if (fullSun.flow > 0 && flowPerArea < FLOWS.low) notes.push(say('little-flow'));
  if (flowPerArea > FLOWS.high) notes.push(say('much-flow'));
  if (fullSun.flow > 0 && dullMorning.flow < HARDLY * fullSun.flow) notes.push(say('dull-morning'));
  notes.push(say('module-is-live'));
  return notes;
}
