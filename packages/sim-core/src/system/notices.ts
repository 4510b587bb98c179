import { HIGHEST_WIND } from '../collector/quasi-dynamic.ts';
import { HIGHEST_TEMPERATURE } from '../fluid/compile.ts';
import type { Machine } from './machine.ts';
import type { RunNotice } from './result.ts';

/** Finds in a finished run what was extrapolated, clamped or left out. */
export function findNotices(machine: Machine): RunNotice[] {
  const { columns, design, drivers, fluid, stagnationLimit } = machine;
  const count = (column: Float64Array, test: (value: number, hour: number) => boolean) => column.filter(test).length;
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
      text: `The absorber was below the fluid’s freezing point, ${fluid.freezingPoint.toFixed(1)} °C; ice and slush are not modelled.`,
      hours: count(columns.absorberMinimumTemperature, (value) => value < fluid.freezingPoint),
    },
    {
      code: 'boiling-not-modelled',
      text: `The fluid stood above ${stagnationLimit.toFixed(0)} °C in sun; the absorber follows its own heat balance as if dry, boiling is not modelled.`,
      hours: count(columns.stagnation, (value) => value > 0),
    },
    {
      code: 'beam-without-sun',
      text: 'The weather has beam irradiance while the sun is below the horizon; it is left out.',
      hours: drivers.lostBeamHours,
    },
    {
      code: 'wind-held',
      text: `The wind along the collectors was above ${HIGHEST_WIND} m/s; the wind terms a3 and a6 are held there.`,
      hours: drivers.heldWindHours,
    },
    {
      code: 'module-tables-held',
      text: 'The module’s light or cell temperature was beyond its tables, which end at 1500 W/m², −40 and 100 °C; it was held there.',
      hours: drivers.heldModuleHours,
    },
    {
      code: 'relief-valve',
      text: `The relief valve opened at ${design.tank.reliefTemperature} °C; the water and heat let out are counted.`,
      hours: count(columns.reliefVolume, (value) => value > 0),
    },
  ];
  return candidates.filter((notice) => notice.hours > 0);
}
