import { checkInWords } from '@noonloop/reports';
import { type CauseCode, calibrate, checkLog, DesignError, defineSystem, type LogCheck } from '@noonloop/sim-core';
import type { GaugeLog } from '@noonloop/weather-io';
import { beforeAll, describe, expect, it } from 'vitest';
import { CARD_WORDS } from '../../../../packages/reports/src/words/cards.ts';
import { dayInWords } from '../../../../packages/reports/src/words/check.ts';
import { TEST_CARDS } from '../../../../packages/sim-core/src/advice/check/cards.ts';
import { CAUSES } from '../../../../packages/sim-core/src/advice/check/causes.ts';
import { nextTest, testFacts } from '../../../../packages/sim-core/src/advice/check/next-test.ts';
import type { Trace } from '../../../../packages/sim-core/src/advice/check/span-run.ts';
import { noiseSchema, uncertaintySchema } from '../../../../packages/sim-core/src/advice/check/uncertainty.ts';
import { checkInput } from '../../../../packages/sim-core/src/input/check.ts';
import { inventedValley, plainInput } from '../../../examples.ts';
import { GAUGE_SETS, plant } from './planted.ts';

const design = defineSystem(plainInput);
const uncertainty = checkInput(uncertaintySchema, {});
const noise = checkInput(noiseSchema, {});

/** An invented log of six days in May; the proof over hundreds of logs is tests/bench/check-log.ts. */
async function logOf(cause: CauseCode, seed: number): Promise<GaugeLog> {
  const weather = await inventedValley();
  const span = { from: 3000, to: 3000 + 240 + 6 * 24 };
  const gauges = GAUGE_SETS['all gauges']!;
  const common = { design, weather, span, settle: 240, uncertainty, noise, gauges, readings: 9 };
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

describe('checkLog on six days with a planted fault', () => {
  let check: LogCheck;
  let log: GaugeLog;
  beforeAll(async () => {
    log = await logOf('pump-fault', 11);
    check = checkLog(design, await inventedValley(), log, { members: 4 });
  }, 180_000);

  it('names the pump that stands [requirement]', () => {
    expect(check.verdict).toBe('pump-fault');
    expect(check.causes[0]!.weight).toBeGreaterThan(0.75);
    expect(check.reason).toBe('leads');
    const pump = check.causes[0]!.evidence.find(({ kind }) => kind === 'pump');
    expect(pump).toMatchObject({ kind: 'pump', count: 9 });
    expect(checkInWords(check).causes[0]!.evidence.join(' ')).toMatch(/pump was found running in \d+ of 9 looks/);
    expect(check.causes.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 1);
  });

  it('sets every number beside its band [requirement]', () => {
    const numbers = log.readings.flatMap((row) => [row.tankTopTemperature, row.flowTemperature]);
    expect(numbers.length).toBe(18);
    expect(check.numbers.filter(({ gauge }) => gauge === 'tankTopTemperature').length).toBe(9);
    expect(check.numbers.filter(({ gauge }) => gauge === 'heaterMeter').length).toBe(8);
    for (const { low, expected, high, found, deviation, outside } of check.numbers) {
      expect(low).toBeLessThan(expected);
      expect(expected).toBeLessThan(high);
      expect(outside).toBe(found < low || found > high);
      expect(Number.isFinite(deviation)).toBe(true);
    }
    expect(check.numbers.filter(({ outside }) => outside).length).toBeGreaterThan(10);
  });

  it('warns of the loop that stands in sun [requirement]', () => {
    expect(check.cautions).toContain('loop-without-flow');
    expect(checkInWords(check).cautions.join(' ')).toContain('without flow in sun');
  });
});

describe('bad input of checkLog and calibrate', () => {
  it('lists every fault of a log by place [requirement]', async () => {
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

  it('lists every fault of the options, with units [requirement]', async () => {
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

  it('refuses more than 150 days [requirement]', async () => {
    const log = await logOf('healthy', 2);
    const readings = log.readings.map((row, at) => ({ ...row, hour: 100 + 500 * at }));
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
    ['no-flow', 'pump-fault', 'pump-by-ear'],
    ['scaled-coil', 'sediment', 'tank-drain'],
    ['healthy', 'check-valve', 'hot-pipe-before-sunrise'],
    ['healthy', 'mixing-valve', 'tap-by-thermometer'],
    ['healthy', 'lost-fluid', 'catch-vessel'],
    ['healthy', 'dirty-or-shaded', 'pipes-at-noon'],
    ['lost-fluid', 'sensor-wrong', 'catch-vessel'],
    ['lost-fluid', 'vessel-charge', 'pressure-swing'],
    ['healthy', 'dip-tube', 'tank-while-drawing'],
    ['mixing-valve', 'thermostat', 'tap-by-thermometer'],
    ['pump-fault', 'high-limit', 'stops-early'],
    ['healthy', 'thermostat', 'heater-display'],
  ] as const)('%s or %s: %s tells [requirement]', (first, second, card) => {
    const next = nextTest(between(first, second), design, {})!;
    expect(next.gain).toBeCloseTo(1, 10);
    const groups = next.outcomes.map(
      ({ causes }) => [causes.includes(first), causes.includes(second)].filter(Boolean).length,
    );
    expect(groups).not.toContain(2);
    expect(groups.filter((count) => count === 1).length).toBe(2);
    expect(next.card).toBe(card);
  });

  it('owners look, listen and read: what opens a part under pressure, or measures a voltage, is for the trade [requirement]', () => {
    const trade = TEST_CARDS.filter(({ who }) => who === 'licensed trade').map(({ code }) => code);
    for (const code of ['air-vent', 'tank-drain', 'vessel-pin', 'module-voltage', 'second-pressure-gauge'] as const)
      expect(trade).toContain(code);
    for (const { code } of TEST_CARDS.filter(({ who }) => who === 'owner'))
      expect(CARD_WORDS[code].what, code).not.toMatch(/\b(open|unscrew|drain|bleed|vent the|press the pin|top up)\b/i);
    // Venting: a cold loop at dawn, and never "in bright sun".
    const vent = CARD_WORDS['air-vent'];
    expect(vent.what).not.toMatch(/sun/);
    expect(vent.caution).toMatch(/cold loop: at dawn/);
    expect(vent.caution).toMatch(/for the trade/);
  });

  it('holds hot against cold pipe by the rise of the system itself: at the flow that sizing accepts it may be 58 K [direction that physics demands]', () => {
    // 8 m², η 0.7, 800 W/m² into 1.2 L/min of water: 58 K by ρ c V̇ ΔT, as the design that was objected to.
    const trace = (flow: number) =>
      ({
        flowTemperature: Float64Array.of(20, 30 + flow),
        returnTemperature: Float64Array.of(20, 30),
        pumpRuns: Float64Array.of(0, 1),
        loopPressure: new Float64Array(24).fill(2e5),
      }) as unknown as Trace;
    const facts = testFacts(design, trace(58));
    expect((facts.usualRise as { value: number }).value).toBeCloseTo(58, 10);
    expect((facts.farApart as { value: number }).value).toBeGreaterThan(58);
    expect((testFacts(design, trace(8)).farApart as { value: number }).value).toBeCloseTo(15, 10);
  });

  it('is none where nothing is left to tell [definition]', () => {
    expect(nextTest(between('healthy'), design, {})).toBeNull();
  });
});

describe('days in words', () => {
  it.each([
    [0, '1 January'],
    [24 * 59, '1 March'],
    [24 * 183 + 14, '3 July'],
    [8760, '31 December'],
  ])('hour %d is on %s [requirement]', (hour, words) => {
    expect(dayInWords(hour)).toBe(words);
  });
});

describe('calibrate on an invented log of a house that is known', () => {
  it('finds eta0, tank loss and draw within two stated deviations, and says what it cannot tell [requirement]', async () => {
    const weather = await inventedValley();
    const span = { from: 3000, to: 3000 + 240 + 14 * 24 };
    const gauges = GAUGE_SETS['all gauges']!;
    const common = { design, weather, span, settle: 240, uncertainty, noise, gauges, readings: 24 };
    const { log, differs } = plant({ ...common, cause: 'healthy', seed: 5 });
    const fit = calibrate(design, weather, log, { members: 4 });
    expect(fit.parameters.map(({ key }) => key)).toEqual(['eta0', 'tankLoss', 'draw']);
    for (const { key, before, beforeDeviation, deviation, value, low, high, told } of fit.parameters) {
      const truth = before * (1 + differs[key]!);
      expect(Math.abs(value - truth)).toBeLessThan(2 * deviation);
      expect(high - low).toBeCloseTo(3.92 * deviation, 10);
      expect(deviation).toBeLessThan(beforeDeviation);
      expect(told).toBe(deviation <= 0.7 * beforeDeviation);
    }
    expect(fit.fitAfter).toBeLessThanOrEqual(fit.fitBefore);
    // One is v (1 + z s), the other v + z (s v): the same but for rounding.
    const drawn = fit.parameters[2]!.told ? fit.parameters[2]!.value : design.draw.dailyVolume;
    expect(fit.design.draw.dailyVolume).toBeCloseTo(drawn, 12);
  });
});
