/**
 * The hot tank of the Plataforma Solar de Almería (CIEMAT, SolarMED, Apache-2.0) with three sensors: 13.0 m³ (from memory), charged at the top,
 * emptied at the top, the cold tank's top water following below. Sensors at a sixth, half and five sixths of the height, height 4 m and a room of
 * 30 °C are judgement. Nothing is fitted: loss and conduction are the defaults of a design.
 */
import { defineSystem } from '@noonloop/sim-core';
import { chargeDown } from '../../../packages/sim-core/src/physics/tank/charge.ts';
import { compileTank, drawFromTank, restTank } from '../../../packages/sim-core/src/physics/tank/tank.ts';
import { plainInput } from '../../examples.ts';
import { measuredRows } from './sets.ts';

export const STORE_FILE = 'psa/20230630-10s.csv';
export const SENSORS = ['bottom', 'middle', 'top'] as const;
const COLUMNS = ['Tts_h_b', 'Tts_h_m', 'Tts_h_t'];
const HEIGHTS = [1 / 6, 1 / 2, 5 / 6];
const NODES = 30;

/** A minute of the store. */
export interface StoreMinute {
  /** From midnight UTC. [h] */
  readonly hour: number;
  /** Bottom, middle, top. [°C] */
  readonly measured: readonly number[];
  readonly modelled: readonly number[];
}

/** A profile through three sensors, level beyond them. */
function between(values: readonly number[], height: number): number {
  if (height <= HEIGHTS[0]!) return values[0]!;
  const above = HEIGHTS.findIndex((at) => at >= height);
  if (above < 0) return values[2]!;
  const share = (height - HEIGHTS[above - 1]!) / (HEIGHTS[above]! - HEIGHTS[above - 1]!);
  return values[above - 1]! + share * (values[above]! - values[above - 1]!);
}

/** Rows up to the last that differs from the one before: the log repeats its last row until the evening. */
function whileItLogs(rows: readonly Record<string, string>[]): readonly Record<string, string>[] {
  const same = (at: number) => COLUMNS.every((name) => rows[at]![name] === rows[at - 1]![name]);
  let end = rows.length;
  while (end > 1 && same(end - 1)) end--;
  return rows.slice(0, end);
}

/** Falls of the sensors while nothing flows, as logged: morning and evening. [K/h] */
export function standingFalls(): { readonly hot: readonly number[]; readonly cold: readonly number[] } {
  const rows = whileItLogs(measuredRows(STORE_FILE)).filter(
    (row) => Number(row.qts_src) < 0.1 && Number(row.qts_dis) < 0.1,
  );
  const falls = (names: readonly string[]) =>
    names.map((name) => {
      let [fall, hours] = [0, 0];
      for (let at = 1; at < rows.length; at++) {
        const step = (Date.parse(rows[at]!.time_utc!) - Date.parse(rows[at - 1]!.time_utc!)) / 3_600_000;
        if (step > 0.1) continue;
        fall += Number(rows[at - 1]![name]) - Number(rows[at]![name]);
        hours += step;
      }
      return fall / hours;
    });
  return { hot: falls(COLUMNS), cold: falls(['Tts_c_b', 'Tts_c_m', 'Tts_c_t']) };
}

/** The day by the tank of a run, from the flows and the temperatures that came in. */
export function storeDay(): StoreMinute[] {
  const rows = whileItLogs(measuredRows(STORE_FILE));
  const { tank: design } = defineSystem({
    ...plainInput,
    tank: { volume: 13, height: 4, roomTemperature: 30, nodes: NODES },
  });
  const tank = compileTank(design, [60]);
  const { temperature, nodeVolume } = tank;
  const start = COLUMNS.map((column) => Number(rows[0]![column]));
  for (let node = 0; node < NODES; node++) temperature[node] = between(start, (node + 0.5) / NODES);
  const column = new Float64Array(NODES);
  const minutes: StoreMinute[] = [];
  for (let at = 0; at + 6 <= rows.length; at += 6) {
    const part = rows.slice(at, at + 6);
    const mean = (name: string) => part.reduce((sum, row) => sum + Number(row[name]), 0) / 6;
    const time = Date.parse(part[0]!.time_utc!) / 3_600_000;
    minutes.push({
      hour: time % 24,
      measured: COLUMNS.map((name) => mean(name)),
      modelled: HEIGHTS.map((height) => temperature[Math.floor(height * NODES)]!),
    });
    const [charged, drawn] = [mean('qts_src') / 60, Math.max(mean('qts_dis'), 0) / 60];
    const net = charged - drawn;
    if (net > 0) chargeDown(temperature, NODES - 1, Math.min(net / nodeVolume, 1), mean('Tts_h_in'), column);
    else if (net < 0) drawFromTank(tank, Math.min(-net, 0.99 * nodeVolume), mean('Tts_c_t'), 0);
    restTank(tank, 60);
  }
  return minutes;
}
