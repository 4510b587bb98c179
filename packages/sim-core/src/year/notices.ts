import { HIGHEST_WIND } from '../physics/collector/quasi-dynamic.ts';
import { HIGHEST_TEMPERATURE } from '../physics/fluid/compile.ts';
import type { Machine } from './machine.ts';
import type { RunNotice } from './result.ts';

/** Power of a directly driven motor over its rated power from which a notice is given; judgement. [-] */
const MOTOR_OVERLOAD = 1.5;

/** Finds in a finished run what was extrapolated, clamped or left out. */
export function findNotices(machine: Machine): RunNotice[] {
  const { columns, design, drivers, fluid } = machine;
  const count = (column: Float64Array, test: (value: number, hour: number) => boolean) => column.filter(test).length;
  const thinned = columns.glycolMassFraction[8759]! < design.loop.glycolMassFraction - 1e-6;
  const motorLimit = (hour: number): number =>
    MOTOR_OVERLOAD * design.pump.openFlowPower * 3600 * columns.pumpRunning[hour]!;
  const candidates: RunNotice[] = [
    {
      code: 'fluid-extrapolated',
      text: `Fluid properties are extrapolated above ${fluid.validTo} °C and held above ${HIGHEST_TEMPERATURE} °C while the pump runs.`,
      hours: count(
        columns.collectorOutletTemperature,
        (value, hour) => value > fluid.validTo && columns.pumpRunning[hour]! > 0,
      ),
    },
    {
      code: 'fluid-below-freezing',
      text: `The absorber was below the fluid’s freezing point, ${fluid.freezingPoint.toFixed(1)} °C${thinned ? ' at the end of the year' : ''}; ice and slush are not modelled.`,
      hours: count(columns.absorberMinimumTemperature, (value, hour) => value < columns.freezingPoint[hour]!),
    },
    {
      code: 'pipe-below-freezing',
      text: `An outdoor pipe was below the fluid’s freezing point, ${fluid.freezingPoint.toFixed(1)} °C${thinned ? ' at the end of the year' : ''}; ice and slush are not modelled.`,
      hours: count(columns.pipeMinimumTemperature, (value, hour) => value < columns.freezingPoint[hour]!),
    },
    {
      code: 'loop-relief-valve',
      text: 'The loop’s relief valve opened; the fluid let out is counted.',
      hours: count(columns.loopReliefVolume, (value) => value > 0),
    },
    {
      code: 'loop-pressure-low',
      text: 'The pump had power, but the loop had too little pressure to circulate; air is taken to leave by itself when the pressure is back.',
      hours: count(columns.lowPressure, (value) => value > 0),
    },
    {
      code: 'glycol-thinned',
      text: `Make-up water thinned the glycol to ${(100 * columns.glycolMassFraction[8759]!).toFixed(1)} % by mass; the heat capacity of pipes and absorber was held at that of the fluid as filled.`,
      hours: thinned ? count(columns.glycolMassFraction, (value) => value < design.loop.glycolMassFraction) : 0,
    },
    {
      code: 'boiling',
      text: 'Fluid boiled out of the collectors; they stood dry and without circulation until cooled. Heat that steam carries to the tank is left out.',
      hours: count(columns.boiling, (value) => value > 0),
    },
    {
      code: 'beam-without-sun',
      text: 'The weather has beam irradiance while the sun is below the horizon; it is left out.',
      hours: drivers.lostBeamHours,
    },
    {
      code: 'wind-held',
      text: `The wind along the collectors was above ${HIGHEST_WIND} m/s; the wind terms a3, a6 and a7 are held there.`,
      hours: drivers.heldWindHours,
    },
    {
      code: 'motor-overloaded',
      text: `The module drove the pump’s motor with more than ${MOTOR_OVERLOAD} times its rated power; the pump’s curve is carried on by the affinity laws.`,
      hours: count(columns.pumpPvEnergy, (energy, hour) => design.pump.drive === 'direct' && energy > motorLimit(hour)),
    },
    {
      code: 'module-tables-held',
      text: 'The module’s light or cell temperature was beyond its tables, which end at 1500 W/m², −40 and 100 °C; it was held there.',
      hours: drivers.heldModuleHours,
    },
    {
      code: 'draw-held',
      text: 'The taps want water hardly warmer than the mains; these draws of the tapping profile carry less than its heat.',
      hours: drivers.heldDrawHours,
    },
    {
      code: 'heater-not-firing',
      text: 'Water passed the instantaneous heater colder than the taps want it: too little flow, rise or power for it to fire; the shortfall is counted.',
      hours: count(columns.unfiredShortfall, (value) => value > 0),
    },
    {
      code: 'relief-valve',
      text: `The relief valve opened at ${design.tank.reliefTemperature} °C; the water and heat let out are counted.`,
      hours: count(columns.reliefVolume, (value) => value > 0),
    },
  ];
  return candidates.filter((notice) => notice.hours > 0);
}
