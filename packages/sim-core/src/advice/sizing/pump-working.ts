/** The working of `sizePumpDrive`, and what to look at. */
import type { SystemDesign } from '../../design/design.ts';
import { line, show, type WorkingStep } from '../../input/working.ts';
import { startNotes, startSteps } from './pump-start-words.ts';
import type { PumpSizing } from './sizings.ts';
import { L_PER_MIN, PRACTICE } from './working.ts';

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

const litres = (flow: number): string => `${show(flow * L_PER_MIN, 3)} L/min`;

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
  const direct = pump.drive === 'direct';
  const rated = pv.module.maximumPowerCurrent * pv.module.maximumPowerVoltage;
  const onModules = `${pv.modules} module(s) of ${show(rated)} W`;
  const found = (light: number | null) => (light === null ? 'not reached up to 1200 W/m²' : 'bisection');
  const steps = [
    line(
      'start',
      direct ? 'I_standstill(light) = I_start' : 'η_booster P_mp(light) = P_start',
      `${direct ? `${show(pump.motor.startCurrent)} A` : `${show(pump.startPower)} W`}, ${onModules}`,
      [startIrradiance ?? 0, 'W/m²'],
      found(startIrradiance),
    ),
    line(
      'stop',
      direct ? 'I_standstill(light) = I_friction' : 'η_booster P_mp(light) = P_stop',
      `${direct ? `${show(pump.motor.frictionCurrent)} A` : `${show(pump.stopPower)} W`}, ${onModules}`,
      [stopIrradiance ?? 0, 'W/m²'],
      found(stopIrradiance),
    ),
  ];
  if (modulePowerForStart === null) return steps;
  const module = line(
    'module for the start wanted',
    'P = P_start/(η_booster × P_mp(light)/P_rated)',
    `${show(pump.startPower)} W/(${show(pump.boosterEfficiency)} × ${show(powerPerRated)}), in ${show(asked.startIrradiance)} W/m²`,
    [modulePowerForStart, 'W'],
    'single diode, De Soto 2006; start power of the design',
  );
  return [module, ...steps];
}

/** Flow in full sun and on a dull morning. */
function flowSteps(
  { array }: SystemDesign,
  asked: Asked,
  { dullMorning, flowPerArea, fullSun, riseInFullSun }: Results,
): WorkingStep[] {
  const area = array.panels * array.collector.area;
  return [
    line(
      'flow in full sun',
      'pump curve at the power offered = Darcy–Weisbach',
      `${show(fullSun.pumpPower)} W, fluid ${show(asked.warmFluid)} °C: ${litres(fullSun.flow)}`,
      [fullSun.flow, 'm³/s'],
      'affinity laws; loop page of the theory',
    ),
    line(
      'flow for each m²',
      'V̇/A',
      `${litres(fullSun.flow)}/${show(area)} m²`,
      [flowPerArea, 'm³/(s·m²)'],
      `0.2 (low flow) to 1.5 L/(min·m²) (high flow): ${PRACTICE}`,
    ),
    line(
      'warming through the array',
      'Δt = η0 G A/(ρ c_p V̇)',
      `${show(array.collector.eta0)} × 1000 × ${show(area)}/(3.9e6 × ${show(fullSun.flow)})`,
      [riseInFullSun, 'K'],
      'cold tank; ρ c_p of loop fluids within 6 %',
    ),
    line(
      'flow on a dull morning',
      'the same, fluid cold',
      `${show(dullMorning.pumpPower, 3)} W in ${show(asked.dullIrradiance)} W/m², fluid ${show(asked.coldFluid)} °C: ${litres(dullMorning.flow)}${dullMorning.starts ? '' : ', but a standing pump does not start'}`,
      [dullMorning.starts ? dullMorning.flow : 0, 'm³/s'],
      'viscosity: Melinder 2010',
    ),
  ];
}

/** What to look at. */
export function pumpNotes(results: Results): string[] {
  const { bestStart, dullMorning, flowPerArea, fullSun, modulePowerForStart, startIrradiance } = results;
  const notes: string[] = [];
  const light = startIrradiance?.toFixed(0);
  if (startIrradiance === null)
    notes.push('The pump never starts on this module: a larger module, or a pump that needs less.');
  else if (startIrradiance > STARTS.late)
    notes.push(
      `The pump starts only in ${light} W/m²: the panels are hot by then, and dull days are lost. A larger module starts it sooner.`,
    );
  else if (startIrradiance < STARTS.early && (modulePowerForStart !== null || startIrradiance > 0))
    notes.push(
      `The pump starts in ${light} W/m² already: in dull light it may cool the tank. A higher threshold, a smaller module, or a temperature-difference control.`,
    );
  if (bestStart !== null) notes.push(...startNotes(bestStart));
  if (fullSun.flow > 0 && flowPerArea < FLOWS.low)
    notes.push('Little flow for the array: hot collectors lose more. Wider pipe, less glycol or a stronger pump.');
  if (flowPerArea > FLOWS.high)
    notes.push('More flow than the array needs: a smaller pump or module saves money, and the tank keeps its layers.');
  if (fullSun.flow > 0 && dullMorning.flow < HARDLY * fullSun.flow)
    notes.push(
      'On a dull morning hardly anything flows: light is thin and the cold fluid thick. Mild light is then lost, which a simulation shows in figures.',
    );
  notes.push(
    'A module is live while there is light, and plugs under load arc: cover it before work; mains wiring is for licensed people.',
  );
  return notes;
}
