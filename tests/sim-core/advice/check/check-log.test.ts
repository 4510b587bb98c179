import { type CauseCode, calibrate, checkLog, DesignError, defineSystem, type LogCheck } from '@noonloop/sim-core';
import type { GaugeLog } from '@noonloop/weather-io';
import { beforeAll, describe, expect, it } from 'vitest';
import { CAUSES } from '../../../../packages/sim-core/src/advice/check/causes.ts';
import { nextTest } from '../../../../packages/sim-core/src/advice/check/next-test.ts';
import { noiseSchema, uncertaintySchema } from '../../../../packages/sim-core/src/advice/check/uncertainty.ts';
import { dayInWords } from '../../../../packages/sim-core/src/advice/check/words.ts';
import { inventedValley, plainInput } from '../../../examples.ts';
import { GAUGE_SETS, plant } from './planted.ts';

const design = defineSystem(plainInput);
const uncertainty = uncertaintySchema.parse({});
const noise = noiseSchema.parse({});

/** An invented log of a fortnight in May; the proof over hundreds of logs is tests/bench/check-log.ts. */
async function logOf(cause: CauseCode, seed: number): Promise<GaugeLog> {
  const weather = await inventedValley();
  const span = { from: 3000, to: 3000 + 240 + 14 * 24 };
  const gauges = GAUGE_SETS['all gauges']!;
  const common = { design, weather, span, settle: 240, uncertainty, noise, gauges, readings: 14 };
  return plant({ ...common, cause, seed, allThrough: true }).log;
}

/** Path and value of each fault. */
function faultsOf(act: () => unknown): string[] {
  try {
    act();
  } catch (error) {
    if (error instanceof DesignError) return error.issues.map(({ path }) => path);
    throw error;
  }
  return [];
}

describe('checkLog on a fortnight with a planted fault', () => {
  let check: LogCheck;
  let log: GaugeLog;
  beforeAll(async () => {
    log = await logOf('pump-fault', 11);
    check = checkLog(design, await inventedValley(), log, { members: 4 });
  }, 180_000);

  it('names the pump that stands', () => {
    expect(check.verdict).toBe('pump-fault');
    expect(check.causes[0]!.weight).toBeGreaterThan(0.75);
    expect(check.causes[0]!.evidence.join(' ')).toMatch(/pump was found running in \d+ of 14 looks/);
    expect(check.causes.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 1);
  });

  it('sets every number beside its band', () => {
    const numbers = log.readings.flatMap((row) => [row.tankTopTemperature, row.flowTemperature]);
    expect(numbers.length).toBe(28);
    expect(check.numbers.filter(({ gauge }) => gauge === 'tankTopTemperature').length).toBe(14);
    expect(check.numbers.filter(({ gauge }) => gauge === 'heaterMeter').length).toBe(13);
    for (const { low, expected, high, found, deviation, outside } of check.numbers) {
      expect(low).toBeLessThan(expected);
      expect(expected).toBeLessThan(high);
      expect(outside).toBe(found < low || found > high);
      expect(Number.isFinite(deviation)).toBe(true);
    }
    expect(check.numbers.filter(({ outside }) => outside).length).toBeGreaterThan(10);
  });

  it('warns of the loop that stands in sun', () => {
    expect(check.cautions.join(' ')).toContain('without flow in sun');
  });
});

describe('bad input of checkLog and calibrate', () => {
  it('lists every fault of a log by place', async () => {
    const weather = await inventedValley();
    const row = {
      line: null,
      tankTopTemperature: 50,
      flowTemperature: null,
      returnTemperature: null,
      loopPressure: null,
      pumpRuns: null,
      heaterMeter: null,
    };
    const readings = [
      { ...row, hour: 4000 },
      { ...row, hour: 4010, tankTopTemperature: 900 },
      { ...row, hour: 3990 },
      { ...row, hour: Number.NaN, pumpRuns: 'yes' },
      { ...row, hour: 4030, heaterMeter: 5e9 },
      { ...row, hour: 4040, heaterMeter: 4e9 },
      { ...row, hour: 4050, loopPressure: '2 bar' },
    ];
    const log = { source: 'x', calendarYear: 2023, readings, assumptions: [] } as unknown as GaugeLog;
    const places = [
      '[1].tankTopTemperature',
      '[2].hour',
      '[3].hour',
      '[3].pumpRuns',
      '[5].heaterMeter',
      '[6].loopPressure',
    ];
    expect(faultsOf(() => checkLog(design, weather, log))).toEqual(places.map((place) => `log.readings${place}`));
  });

  it('lists every fault of the options, with units', async () => {
    const weather = await inventedValley();
    const log = { source: 'x', calendarYear: 2023, readings: [], assumptions: [] };
    const options = { uncertainty: { draw: '3 kg', sock: 1 }, noise: { temperature: -1, meter: 'much' }, seed: 0.5 };
    expect(faultsOf(() => checkLog(design, weather, log, options as never)).sort()).toEqual([
      'noise.meter',
      'noise.temperature',
      'seed',
      'uncertainty.draw',
      'uncertainty.sock',
    ]);
    expect(faultsOf(() => checkLog(design, weather, log))).toEqual(['log.readings']);
    expect(faultsOf(() => calibrate(design, weather, log, { fit: ['roof' as never] }))).toEqual(['fit.0']);
  });

  it('refuses more than 150 days', async () => {
    const log = await logOf('healthy', 2);
    const readings = log.readings.map((row, at) => ({ ...row, hour: 100 + 400 * at }));
    expect(faultsOf(() => checkLog(design, {} as never, { ...log, readings }))).toEqual(['log.readings']);
  });
});

describe('the next test', () => {
  const between = (...causes: CauseCode[]) =>
    Object.fromEntries(CAUSES.map((cause) => [cause, causes.includes(cause) ? 1 / causes.length : 0])) as Record<
      CauseCode,
      number
    >;
  it.each([
    ['no-flow', 'pump-fault', 'ear'],
    ['scaled-coil', 'sediment', 'bucket'],
    ['healthy', 'check-valve', 'sunrise'],
    ['healthy', 'mixing-valve', 'under a tap'],
    ['healthy', 'lost-fluid', 'pressure early'],
    ['healthy', 'dirty-or-shaded', 'panels'],
    ['lost-fluid', 'sensor-wrong', 'second'],
  ] as const)('%s or %s: %s', (first, second, words) => {
    const next = nextTest(between(first, second))!;
    expect(next.gain).toBeCloseTo(1, 10);
    const groups = next.outcomes.map(
      ({ causes }) => [causes.includes(first), causes.includes(second)].filter(Boolean).length,
    );
    expect(groups).not.toContain(2);
    expect(groups.filter((count) => count === 1).length).toBe(2);
    if (words !== 'panels' && words !== 'pressure early') expect(next.what).toContain(words);
  });

  it('is none where nothing is left to tell', () => {
    expect(nextTest(between('healthy'))).toBeNull();
  });
});

describe('days in words', () => {
  it.each([
    [0, '1 January'],
    [24 * 59, '1 March'],
    [24 * 183 + 14, '3 July'],
    [8760, '31 December'],
  ])('hour %d is on %s', (hour, words) => {
    expect(dayInWords(hour)).toBe(words);
  });
});

describe('calibrate on an invented log of a house that is known', () => {
  it('finds eta0, tank loss and draw within two stated deviations, and says what it cannot tell', async () => {
    const weather = await inventedValley();
    const span = { from: 3000, to: 3000 + 240 + 21 * 24 };
    const gauges = GAUGE_SETS['all gauges']!;
    const common = { design, weather, span, settle: 240, uncertainty, noise, gauges, readings: 30 };
    const { log, differs } = plant({ ...common, cause: 'healthy', seed: 5 });
    const fit = calibrate(design, weather, log, { members: 6 });
    expect(fit.parameters.map(({ key }) => key)).toEqual(['eta0', 'tankLoss', 'draw']);
    for (const { key, before, beforeDeviation, deviation, value, low, high, told } of fit.parameters) {
      const truth = before * (1 + differs[key]!);
      expect(Math.abs(value - truth)).toBeLessThan(2 * deviation);
      expect(high - low).toBeCloseTo(3.92 * deviation, 10);
      expect(deviation).toBeLessThan(beforeDeviation);
      expect(told).toBe(deviation <= 0.7 * beforeDeviation);
    }
    expect(fit.fitAfter).toBeLessThanOrEqual(fit.fitBefore);
    expect(fit.design.draw.dailyVolume).toBe(
      fit.parameters[2]!.told ? fit.parameters[2]!.value : design.draw.dailyVolume,
    );
  });
});
