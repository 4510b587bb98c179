/** Hours in which a measured curve was read beyond its points; looked for once the year is over. */
import { fluidDensity, fluidViscosity } from '../physics/fluid/compile.ts';
import { loopHead } from '../physics/loop/hydraulics.ts';
import { pumpSpeed } from '../physics/loop/pump.ts';
import { isOffPoints, mostVoltage } from '../physics/loop/pump-curves.ts';
import { hydraulicsOf } from './collector-loop.ts';
import type { Machine } from './machine.ts';

/** Steps of flow and temperature within which hours are taken as one. [m³/s], [°C] */
const FLOW_STEP = 1e-7;
const WARMTH_STEP = 10;

/** Hours whose mean flow is before the first or beyond the last point of a pump by measured points. */
export function hoursOffPoints({ columns, design, loop }: Machine): number {
  const { fluid } = loop;
  const { pump } = design;
  const { curves } = pump;
  if (curves === null) return 0;
  const hydraulics = hydraulicsOf(design, fluid);
  const known = new Map<number, boolean>();
  const isOff = (flow: number, warmth: number): boolean => {
    const place = 64 * Math.round(flow / FLOW_STEP) + Math.min(Math.max(Math.round(warmth / WARMTH_STEP), -16), 40);
    const found = known.get(place);
    if (found !== undefined) return found;
    const head = loopHead(hydraulics, flow, fluidDensity(fluid, warmth), fluidViscosity(fluid, warmth));
    const off = isOffPoints(curves, pumpSpeed(pump, head, flow) * mostVoltage(curves), flow);
    known.set(place, off);
    return off;
  };
  let hours = 0;
  columns.pumpRunning.forEach((running, hour) => {
    if (running <= 0) return;
    if (isOff(columns.loopFlow[hour]! / running, columns.collectorOutletTemperature[hour]!)) hours++;
  });
  return hours;
}

/** Hours in which a heat pump by points heated in air colder than the first of them. */
export function hoursBelowCop({ columns, drivers, house }: Machine): number {
  const { cop, design } = house.heater;
  if (cop === null || cop.points === null) return 0;
  const lowest = cop.points.x[0]!;
  const air = design.airFrom === 'room' ? null : drivers.ambient;
  return columns.heaterHeat.reduce(
    (hours, heat, hour) => hours + (heat > 0 && (air === null ? design.roomTemperature : air[hour]!) < lowest ? 1 : 0),
    0,
  );
}
