/** What acts on heater and pipes of the house, hour by hour; `null` where the house has no such thing. */
import type { SystemDesign } from '../design/design.ts';
import { heaterOffHours, inSpans, onDays } from '../physics/backup/hours.ts';
import { sparePower } from '../physics/backup/spare-pv.ts';
import { MONTH_STARTS } from '../physics/calendar.ts';
import { everyHour } from '../physics/column.ts';
import { hotPipeHours, ringHours } from '../physics/draw/ring.ts';
import type { DrawSchedule } from '../physics/draw/schedule.ts';
import { flowBetween } from '../physics/draw/within.ts';
import { WATER_HEAT_CAPACITY } from '../physics/tank/tank.ts';

const HOURS = 8760;

/** Part of `Drivers`. */
export interface HouseDrivers {
  /** Hours in which the heater may not heat, bits of `HEATER_OFF`. Shape [8760]. */
  readonly heaterOff: Uint8Array | null;
  /** Spare power of the house's own PV, mean of the hour. Shape [8760]. [W] */
  readonly sparePv: Float64Array | null;
  /** Loss of the recirculation ring per kelvin over its surroundings; 0 at rest. Shape [8760]. [W/K] */
  readonly ring: Float64Array | null;
  /** Heat that the pipe to the taps takes per kelvin of hot water over its surroundings. Shape [8760]. [J/K] */
  readonly hotPipe: Float64Array | null;
  /** Air around the tank; the design's one temperature where `null`. Shape [8760]. [°C] */
  readonly room: Float64Array | null;
  /** Hours in which the tank's load may take heat. Shape [8760]. */
  readonly load: Uint8Array | null;
}

/** Light on the PV, air, what the cells warm by it, and hours without mains. */
interface Outside {
  readonly light: Float64Array;
  readonly air: Float64Array;
  readonly cellRise: number;
  readonly blackout: Uint8Array;
}

/** Computes them; nothing where the house has none. */
export function compileHouseDrivers(design: SystemDesign, schedule: DrawSchedule, outside: Outside): HouseDrivers {
  const { draw, heater } = design;
  return {
    heaterOff: heaterOffHours(heater, draw.summerTime),
    sparePv: sparePvHours(design, outside),
    ring: ringOf(design, outside.blackout),
    hotPipe: hotPipeOf(design, schedule),
    room: roomOf(design, outside.air),
    load: loadHours(design),
  };
}

/** The mean of the hour's steps, of each at most what the element takes; none in a blackout, when the inverter has no mains to follow. */
function sparePvHours({ heater }: SystemDesign, { air, blackout, cellRise, light }: Outside): Float64Array | null {
  const { burnerEfficiency, burnerPower, sparePv } = heater;
  if (sparePv === null) return null;
  const most = burnerPower / burnerEfficiency;
  const steps = light.length / HOURS;
  return everyHour((hour) => {
    let sum = 0;
    for (let step = hour * steps; step < (hour + 1) * steps; step++)
      sum += Math.min(sparePower(sparePv, light[step]!, air[hour]!, cellRise), most);
    return blackout[hour] === 1 ? 0 : sum / steps;
  });
}

function ringOf({ draw }: SystemDesign, blackout: Uint8Array): Float64Array | null {
  const { ring, summerTime } = draw;
  if (ring === null) return null;
  const mayRun = inSpans(ring.hours, summerTime).map((within, hour) => (within === 1 && blackout[hour] !== 1 ? 1 : 0));
  return ringHours(ring, mayRun, WATER_HEAT_CAPACITY);
}

function hotPipeOf({ draw }: SystemDesign, { volume, within }: DrawSchedule): Float64Array | null {
  if (draw.hotPipe === null) return null;
  const parts = within === null ? 1 : within.parts;
  const drawn = (part: number): boolean => {
    const hour = Math.trunc(part / parts);
    if (volume[hour] === 0 || within === null) return volume[hour]! > 0;
    const at = within.pattern[hour]! * (parts + 1) + (part % parts);
    return within.drawn[at + 1]! > within.drawn[at]!;
  };
  const running = (hour: number): number => {
    const flow = within === null ? 0 : flowBetween(within, hour, 0, 1);
    return Math.min(volume[hour]! / (flow > 0 ? flow : draw.flow), 3600);
  };
  return hotPipeHours(draw.hotPipe, { parts, drawn, running });
}

/** Each month's own, constant from its first to its last hour, or the outdoor air. */
function roomOf({ tank }: SystemDesign, air: Float64Array): Float64Array | null {
  const { roomByMonth } = tank;
  if (roomByMonth === null) return null;
  if (roomByMonth === 'outdoors') return air;
  const room = new Float64Array(HOURS);
  for (let month = 0; month < 12; month++)
    room.fill(roomByMonth[month]!, MONTH_STARTS[month]!, MONTH_STARTS[month + 1]!);
  return room;
}

function loadHours({ draw, tank }: SystemDesign): Uint8Array | null {
  if (tank.load === null) return null;
  const { days } = tank.load;
  return days.length === 0 ? new Uint8Array(HOURS).fill(1) : onDays(days, draw.summerTime);
}
