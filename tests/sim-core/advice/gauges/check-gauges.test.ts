// Gauges by themselves, on an invented house whose every number is a closed form; the real one is in tests/validation/measured.
import { checkGauges, DesignError, defineSystem } from '@noonloop/sim-core';
import type { GaugeLog, GaugeReading } from '@noonloop/weather-io';
import { describe, expect, it } from 'vitest';
import { plainInput } from '../../../examples.ts';

const DAYS = 24;
/** Day on which a fault begins that was not there before. */
const BEGINS = 12;
/** Time constant of the invented tank. [h] */
const TIME = 100;
const ROOM = 18;

/** One quarter of an hour of a house in invented weather: sun from 8 to 16 h, every fourth day dull. */
function readingAt(
  hour: number,
  time = TIME,
): GaugeReading & { collectorTemperature: number; tankBottomTemperature: number } {
  const [day, clock] = [Math.floor(hour / 24), hour % 24];
  const dull = day % 4 === 3;
  const runs = !dull && clock >= 9 && clock < 15;
  const evening = 55 + (day % 3);
  const cooled = ROOM + (evening - ROOM) * Math.exp(-((clock + 9) % 24) / time);
  const charged = runs ? cooled + ((evening - cooled) * (clock - 9)) / 6 : clock >= 15 ? evening : cooled;
  const mean = dull ? cooled : charged;
  const bottom = mean - 5;
  const sunny = dull ? 0 : Math.max(0, 1 - ((clock - 12) / 4) ** 2);
  const collector = runs
    ? bottom + 8 + 10 * sunny
    : Math.min(8 - 4 * Math.cos((clock * Math.PI) / 12) + 90 * sunny, bottom + 7);
  return {
    hour,
    line: null,
    tankTopTemperature: mean + 5,
    flowTemperature: null,
    returnTemperature: null,
    loopPressure: null,
    pumpRuns: runs,
    heaterMeter: null,
    collectorTemperature: collector,
    tankBottomTemperature: bottom,
    roomTemperature: ROOM,
    light: 900 * sunny,
  };
}

type Row = ReturnType<typeof readingAt>;
const logOf = (change: (row: Row) => Partial<GaugeReading> = () => ({}), days = DAYS): GaugeLog => ({
  source: 'invented',
  calendarYear: 2023,
  assumptions: [],
  readings: Array.from({ length: days * 96 }, (_, at) => {
    const row = readingAt(at / 4);
    return { ...row, ...change(row) };
  }),
});
const night = ({ hour }: Row): boolean => hour % 24 < 5;
const late = ({ hour }: Row): boolean => hour >= BEGINS * 24;
const found = (log: GaugeLog) => checkGauges(log).findings.map(({ fault }) => fault);

describe('gauges by themselves', () => {
  it('nothing wrong, and the figures that were put in [closed form]', () => {
    const { verdict, figures, untold } = checkGauges(logOf(), defineSystem(plainInput));
    expect(verdict).toBe('nothing-seen');
    const figure = Object.fromEntries(figures.map(({ key, value }) => [key, value]));
    expect(Math.abs(figure['night-time-constant']! - TIME)).toBeLessThan(0.5);
    // 300 L at 4.18 kJ/(kg K) over 100 h.
    expect(Math.abs(figure['tank-loss']! - (300 * 4.18) / 3.6 / TIME)).toBeLessThan(0.05);
    expect(Math.abs(figure['running-difference']! - 18)).toBeLessThan(3);
    expect(untold).toContain('no-weather');
  });

  // What each fault does by itself: requirement.
  it.each([
    ['night-circulation', (row: Row) => (night(row) ? { collectorTemperature: row.tankBottomTemperature - 8 } : {})],
    [
      'pump-stands',
      (row: Row) =>
        row.pumpRuns
          ? { pumpRuns: false, collectorTemperature: 110, tankTopTemperature: 40, tankBottomTemperature: 35 }
          : {},
    ],
    [
      'no-flow',
      (row: Row) =>
        row.pumpRuns ? { collectorTemperature: 110, tankTopTemperature: 40, tankBottomTemperature: 35 } : {},
    ],
    ['sensor-apart', (row: Row) => (late(row) ? { collectorTemperature: row.collectorTemperature + 6 } : {})],
    ['sensor-apart', (row: Row) => (late(row) ? { tankBottomTemperature: row.tankBottomTemperature + 5 } : {})],
    ['tank-loss', (row: Row) => (late(row) ? readingAt(row.hour, TIME / 2) : {})],
    ['sensor-dead', (row: Row) => (late(row) ? { collectorTemperature: 31 } : {})],
    ['sensor-dead', (row: Row) => (row.hour % 50 === 7 ? { collectorTemperature: 300 } : {})],
    ['sensor-dead', (row: Row) => (late(row) ? { tankBottomTemperature: row.tankTopTemperature! + 8 } : {})],
  ] as const)('%s [requirement]', (fault, change) => {
    expect(found(logOf(change))).toContain(fault);
  });

  // Read off the better of two days, which takes longer to tell.
  it('a loop that needs twice the difference for its heat, however it starts [requirement]', () => {
    const weak = (row: Row) =>
      row.hour >= DAYS * 24 && row.pumpRuns && row.hour % 24 > 9
        ? { collectorTemperature: 2 * row.collectorTemperature - row.tankBottomTemperature }
        : {};
    expect(found(logOf(weak, 2 * DAYS))).toEqual(['weak-transfer']);
  });

  // The tank of T' = −(T − R)/τ in a room R that falls in a line: T = R + gτ + (T₀ − R₀ − gτ) exp(−t/τ), g the fall of R.
  it('the time constant holds in a room that cools at night [closed form]', () => {
    const fall = 0.35;
    const cooling = ({ hour }: Row): Partial<GaugeReading> => {
      const since = (hour + 2) % 24;
      if (since > 7) return {};
      const room = ROOM - fall * since;
      const mean = room + fall * TIME + (55 - ROOM - fall * TIME) * Math.exp(-since / TIME);
      return { roomTemperature: room, tankTopTemperature: mean + 5, tankBottomTemperature: mean - 5 };
    };
    const { figures } = checkGauges(logOf(cooling));
    const found = figures.find(({ key }) => key === 'night-time-constant')!;
    expect(Math.abs(found.value - TIME)).toBeLessThan(0.5);
  });

  it('a collector that warms in the dark is fed by the tank, however cold it was and is [requirement]', () => {
    const fed = (row: Row) => (row.hour % 24 >= 23 || night(row) ? { collectorTemperature: 20 } : {});
    const [first] = checkGauges(logOf(fed)).findings;
    expect(first!.fault).toBe('night-circulation');
    expect(first!.evidence.code).toBe('warms-in-the-dark');
    const before = 8 - 4 * Math.cos((22.75 * Math.PI) / 12);
    const warm = first!.evidence.facts.warm as { readonly value: number };
    expect(Math.abs(warm.value - (20 - before))).toBeLessThan(1e-9);
    // Clouds that lift it by 8 K are weather.
    expect(found(logOf((row) => (night(row) ? { collectorTemperature: 12 } : {})))).toEqual([]);
  });

  it('where the air is known, a collector under the room but over the air is seen [requirement]', () => {
    const cool = (row: Row) => (row.hour % 24 < 6 || row.hour % 24 > 19 ? { collectorTemperature: 12 } : {});
    expect(found(logOf(cool))).toEqual([]);
    expect(found(logOf((row) => ({ ...cool(row), airTemperature: 4 })))).toEqual(['night-circulation']);
  });

  it('since the day on which it began [requirement]', () => {
    const off = logOf((row) => (late(row) ? { collectorTemperature: row.collectorTemperature + 6 } : {}));
    const [first] = checkGauges(off).findings;
    expect(Math.abs(first!.since! / 24 - BEGINS)).toBeLessThanOrEqual(2);
  });

  it('light shows a pump that stands before the collector is very hot [requirement]', () => {
    const warm = (row: Row) =>
      row.pumpRuns ? { pumpRuns: false, collectorTemperature: row.tankBottomTemperature + 18 } : {};
    expect(found(logOf(warm))).toContain('pump-stands');
    expect(found(logOf((row) => ({ ...warm(row), light: null })))).not.toContain('pump-stands');
  });

  it('a loss and a start that were written count; defaults do not [requirement]', () => {
    const tight = { ...plainInput, tank: { volume: 0.3, lossCoefficient: 2 } };
    expect(checkGauges(logOf(), defineSystem(tight)).verdict).toBe('tank-loss');
    const control = { mode: 'difference', difference: { start: 20, stop: 3 } } as const;
    const { findings } = checkGauges(logOf(), defineSystem({ ...plainInput, control }));
    expect(findings.map(({ evidence }) => evidence.code)).toEqual(['starts-off-setting']);
  });

  it('refuses what it cannot use, with places [requirement]', () => {
    const faults = (log: GaugeLog): string => {
      try {
        checkGauges(log);
      } catch (error) {
        if (error instanceof DesignError) return error.message;
      }
      return 'no refusal';
    };
    const few = logOf();
    expect(faults({ ...few, readings: few.readings.filter((_, at) => at % 8 === 0) })).toContain('2 h apart');
    expect(faults({ ...few, readings: few.readings.slice(0, 300) })).toContain('at least 7 days');
    expect(faults(logOf(() => ({ collectorTemperature: null })))).toContain('no collectorTemperature');
    expect(faults(logOf(({ hour }) => (hour === 5 ? { light: -4 } : {})))).toContain(
      'log.readings[20].light: found -4',
    );
    expect(faults({ ...few, readings: 4 as never })).toContain('log.readings: found 4');
  });
});
