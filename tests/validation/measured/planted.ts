/**
 * Faults planted into the real log of the house: its own readings, changed from a day on as the fault would change them. What a fault
 * does to the tank fades as water and heat go through it, in a day (judgement). The lumped collector of the dead pump is invented: loss and
 * capacity of a usual flat plate of 5 m² on 300 L.
 */
import type { GaugeFault } from '@noonloop/sim-core';
import type { GaugeLog, GaugeReading } from '@noonloop/weather-io';
import { parseLog } from '@noonloop/weather-io';
import { HOUSE_FILE } from './house.ts';
import { measuredText } from './sets.ts';

/** Readings as the controller of the house logs them. */
export const HOUSE_LAYOUT = {
  time: { timestamp: 'time_local' },
  columns: {
    collectorTemperature: { column: 'collector_C', unit: 'degC' },
    tankBottomTemperature: { column: 'tank_bottom_C', unit: 'degC' },
    tankTopTemperature: { column: 'tank_top_C', unit: 'degC' },
    roomTemperature: { column: 'third_C', unit: 'degC' },
    pumpSpeed: { column: 'pump_speed_pct', unit: '%' },
  },
} as const;

let log: GaugeLog | undefined;
/** The year 2017 of the house. */
export function houseGauges(): GaugeLog {
  log ??= parseLog(measuredText(HOUSE_FILE), HOUSE_LAYOUT);
  return log;
}

const dateOf = (day: number): string => new Date(Date.UTC(2017, 0, 1 + day)).toISOString().slice(0, 10);
const windows = new Map<string, GaugeLog>();
let lines: string[] | undefined;

/** Some days of it, read once: the whole takes longer than what is made of a few windows. */
export function windowOf(from: number, days: number): GaugeLog {
  lines ??= measuredText(HOUSE_FILE).split('\n');
  const [first, end] = [dateOf(from), dateOf(from + days)];
  const known = windows.get(first + end);
  if (known !== undefined) return known;
  const rows = lines.filter((line, at) => at === 0 || (line >= first && line < end));
  const window = parseLog(rows.join('\n'), HOUSE_LAYOUT);
  windows.set(first + end, window);
  return window;
}

interface State extends GaugeReading {
  collectorTemperature: number;
  tankBottomTemperature: number;
  tankTopTemperature: number;
  pumpSpeed: number;
}

/** Time of day in which heat that the tank lacks is forgotten, by draws and the next charge. Judgement. [h] */
const MEMORY = 12;
/** Start difference and limit of the house, as fitted on its log elsewhere. [K], [°C] */
const START = 7;
const NEAR_LIMIT = 70;
/** Loss of the collectors over the tank's heat capacity, and their own time constant: 20 W/K on 300 L; 8 kJ/(m² K) at 4 W/(m² K). [1/h], [h] */
const LOSS = 20 / (300 * 1.163);
const ABSORBER_TIME = 8000 / 4 / 3600;
/** Standing collectors of the log get no hotter. [°C] */
const HOTTEST = 157;
/** In which the real tank comes nearer to its room, on nights without circulation. [h] */
const NIGHT_TIME = 110;
/** Coldest a tank gets. [°C] */
const COLD = 14;

/** What a planted fault does to a reading; it may keep a deficit of the tank, in kelvin. */
type Plant = (row: State, before: GaugeReading | null, step: number, held: { deficit: number; own: number }) => State;

const cooled = (row: State, deficit: number): State => ({
  ...row,
  tankBottomTemperature: Math.max(COLD, row.tankBottomTemperature - deficit),
  tankTopTemperature: Math.max(COLD, row.tankTopTemperature - deficit),
});
const byDay = (hour: number): boolean => hour % 24 >= 6 && hour % 24 < 21;

/** A cooler tank, and the loop with it: a running collector follows, a standing one is fetched from earlier, a full tank lacks nothing. */
function followed(row: State, step: number, held: { deficit: number }): State {
  const standing = row.pumpSpeed === 0;
  if (standing && row.tankTopTemperature > NEAR_LIMIT && row.collectorTemperature - row.tankBottomTemperature > 25)
    held.deficit *= Math.exp(-step);
  const { deficit } = held;
  const cool = cooled(row, deficit);
  const over = row.collectorTemperature - cool.tankBottomTemperature;
  if (!standing) return { ...cool, collectorTemperature: row.collectorTemperature - deficit };
  if (over <= START || !byDay(row.hour) || cool.tankTopTemperature > NEAR_LIMIT) return cool;
  return { ...cool, pumpSpeed: 0.3, collectorTemperature: cool.tankBottomTemperature + Math.min(over, START + 3) };
}
/** Of the tank. */
export const meanOf = (row: GaugeReading): number => (row.tankBottomTemperature! + row.tankTopTemperature!) / 2;
/** The tank's warming by the pump since the reading before. [K] */
const gainOf = (row: State, before: GaugeReading | null): number =>
  before !== null && row.pumpSpeed > 0 ? Math.max(0, meanOf(row) - meanOf(before)) : 0;

/** Night and no pump: heat rises from the tank into the collectors. @param much - 0.4 to 1. [-] */
const leaks =
  (much: number): Plant =>
  (row, _, step, held) => {
    const clock = row.hour % 24;
    const open = row.pumpSpeed === 0 && (clock >= 21 || clock < 6) && row.tankTopTemperature > 30;
    const warm = row.collectorTemperature + 0.75 * much * (row.tankBottomTemperature - row.collectorTemperature);
    if (!open || warm < row.collectorTemperature) return followed(row, step, held);
    held.deficit += 0.3 * much * step;
    return { ...cooled(row, held.deficit), collectorTemperature: warm };
  };

/** The loop stands in sun: the absorber goes to where its loss takes what the loop took. @param speed - As logged then; null as it was. */
const stands =
  (speed: number | null): Plant =>
  (row, before, step, held) => {
    const gain = gainOf(row, before);
    held.deficit += gain;
    const rise = row.pumpSpeed > 0 ? gain / step / LOSS : 0;
    held.own += (rise - held.own) * Math.min(1, step / ABSORBER_TIME);
    const collector = Math.min(HOTTEST, row.collectorTemperature + held.own);
    const wants = collector - row.tankBottomTemperature + held.deficit > 7 && row.pumpSpeed >= 0;
    return {
      ...cooled(row, held.deficit),
      collectorTemperature: Math.max(collector, row.collectorTemperature),
      pumpSpeed: speed === 0 ? 0 : wants && (row.pumpSpeed > 0 || held.own > 5) ? 1 : row.pumpSpeed,
    };
  };

/** Less flow, or a fouled coil: the difference grows, the controller turns the pump up. @param share - Of flow or heat exchange left. [-] */
const weak =
  (share: number): Plant =>
  (row, before, step, held) => {
    if (row.pumpSpeed === 0) return followed(row, step, held);
    const speed = Math.min(1, row.pumpSpeed / share);
    const left = (share * speed) / row.pumpSpeed;
    const over = row.collectorTemperature - row.tankBottomTemperature;
    // A hotter collector loses more: a twentieth of the heat for a doubled difference.
    held.deficit += 0.05 * (1 / left - 1) * gainOf(row, before);
    const warmed = followed(row, step, held);
    return { ...warmed, pumpSpeed: speed, collectorTemperature: warmed.collectorTemperature + over * (1 / left - 1) };
  };

/** The tank loses more. @param times - 1.6 to 2.5 of what it did. [-] */
const loses =
  (times: number): Plant =>
  (row, _, step, held) => {
    const over = Math.max(0, meanOf(row) - held.deficit - (row.roomTemperature ?? 20));
    held.deficit += ((times - 1) * over * step) / NIGHT_TIME;
    return followed(row, step, held);
  };

/** A gauge of the log, apart from that which steers the pump. */
const off =
  (gauge: 'collectorTemperature' | 'tankBottomTemperature', by: number): Plant =>
  (row) => ({ ...row, [gauge]: row[gauge] + by });

const stuckAt =
  (gauge: 'collectorTemperature' | 'tankTopTemperature', value: number): Plant =>
  (row) => ({ ...row, [gauge]: value });

/** One planted fault: what should be found, and how severe it is, 0 to 1. */
export interface PlantedFault {
  readonly name: string;
  /** What names it; a gauge that is off may also show as one that cannot be. */
  readonly faults: readonly GaugeFault[];
  readonly plant: (severity: number, sign: number) => Plant;
}

export const PLANTED: readonly PlantedFault[] = [
  { name: 'check valve leaks by night', faults: ['night-circulation'], plant: (s) => leaks(0.4 + 0.6 * s) },
  { name: 'pump stands', faults: ['pump-stands'], plant: () => stands(0) },
  { name: 'pump runs, nothing flows', faults: ['no-flow'], plant: () => stands(null) },
  { name: 'flow or coil at 0.7 to 0.4', faults: ['weak-transfer'], plant: (s) => weak(0.7 - 0.3 * s) },
  { name: 'tank loss 1.6 to 2.5 times', faults: ['tank-loss'], plant: (s) => loses(1.6 + 0.9 * s) },
  {
    name: 'collector gauge off by 4 to 10 K',
    faults: ['sensor-apart', 'sensor-dead'],
    plant: (s, sign) => off('collectorTemperature', sign * (4 + 6 * s)),
  },
  {
    name: 'bottom gauge off by 4 to 10 K',
    faults: ['sensor-apart', 'sensor-dead'],
    plant: (s, sign) => off('tankBottomTemperature', sign * (4 + 6 * s)),
  },
  {
    name: 'collector gauge stuck',
    faults: ['sensor-dead'],
    plant: (s) => stuckAt('collectorTemperature', 20 + 40 * s),
  },
];

/** A log with a fault from an hour on. */
export function planted(given: GaugeLog, plant: Plant, since: number): GaugeLog {
  const held = { deficit: 0, own: 0 };
  const readings = given.readings.map((row, at) => {
    if (row.hour < since) return row;
    const before = given.readings[at - 1] ?? null;
    const step = before === null ? 0 : Math.min(0.25, row.hour - before.hour);
    if (byDay(row.hour)) held.deficit *= Math.exp(-step / MEMORY);
    return plant(row as State, before, step, held);
  });
  return { ...given, readings };
}
