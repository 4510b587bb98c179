// Slips in how a log was written down are named before any fault; a log that fits too well names nothing.
import { checkInWords } from '@noonloop/reports';
import { checkLog, defineSystem } from '@noonloop/sim-core';
import type { GaugeLog, GaugeReading } from '@noonloop/weather-io';
import { beforeAll, describe, expect, it } from 'vitest';
import { fitOf, reasonOf } from '../../../../packages/sim-core/src/advice/check/check-log.ts';
import { type SetRight, weighAndDoubt } from '../../../../packages/sim-core/src/advice/check/doubts.ts';
import { buildLibrary, type Library } from '../../../../packages/sim-core/src/advice/check/library.ts';
import { observe } from '../../../../packages/sim-core/src/advice/check/observe.ts';
import { runSpan } from '../../../../packages/sim-core/src/advice/check/span-run.ts';
import { noiseSchema, uncertaintySchema } from '../../../../packages/sim-core/src/advice/check/uncertainty.ts';
import { checkInput } from '../../../../packages/sim-core/src/input/check.ts';
import { inventedValley, plainInput } from '../../../examples.ts';
import { GAUGE_SETS, plant } from './planted.ts';
import { first, logOf, readingsOf } from './readings.ts';

const design = defineSystem(plainInput);
const uncertainty = checkInput(uncertaintySchema, {});
const noise = checkInput(noiseSchema, {});
/** Eight days of readings, and a day before them: house and runs begin alike, so that the tank has nothing to forget. */
const SETTLE = 24;
const span = { from: 3000, to: 3000 + SETTLE + 8 * 24 };
let library: Library;
beforeAll(async () => {
  library = buildLibrary(design, await inventedValley(), span, { uncertainty, members: 4, seed: 1 });
}, 180_000);

describe('a log of an invented healthy system, written down wrongly', () => {
  let log: GaugeLog;
  beforeAll(async () => {
    const weather = await inventedValley();
    const gauges = GAUGE_SETS['all gauges']!;
    const common = { design, weather, span, settle: SETTLE, uncertainty, noise, gauges, readings: 16 };
    log = plant({ ...common, cause: 'healthy', seed: 13 }).log;
  });
  /** The first ten readings are enough for most. */
  const read = (change: (reading: GaugeReading) => Partial<GaugeReading>, most = 10): SetRight => {
    const readings = log.readings.slice(0, most).map((reading) => ({ ...reading, ...change(reading) }));
    return weighAndDoubt(library, observe({ ...log, readings }), noise);
  };

  it('as it is: no doubt [requirement]', () => {
    expect(read(() => ({})).doubts).toEqual([]);
  });

  it('hot and cold pipe swapped: said so, and no check valve is blamed [requirement]', () => {
    const turned = (row: GaugeReading) => ({
      flowTemperature: row.returnTemperature,
      returnTemperature: row.flowTemperature,
    });
    const { doubts, weighing } = read(turned, 12);
    expect(doubts.map(({ code }) => code)).toEqual(['pipes-swapped']);
    expect(first(weighing)).toBe('healthy');
  });

  it('psi taken for bar: said so, and no gauge is called wrong [requirement]', () => {
    // 1 psi = 6894.757 Pa (NIST SP 811); a gauge of 30 psi is taken for 30 bar.
    const { doubts, observations, weighing } = read((row) => ({ loopPressure: (row.loopPressure! / 6894.757) * 1e5 }));
    expect(doubts.map(({ code }) => code)).toEqual(['psi-taken-for-bar']);
    expect(first(weighing)).not.toBe('sensor-wrong');
    const pressure = observations.numbers.find(({ key }) => key === 'loopPressure')!;
    expect(pressure.value).toBeCloseTo(log.readings[pressure.at]!.loopPressure!, -2);
  });

  it('°F taken for °C: said so, with the gauge [requirement]', () => {
    const { doubts } = read((row) => ({ flowTemperature: 1.8 * row.flowTemperature! + 32 }));
    expect(doubts).toMatchObject([{ code: 'fahrenheit-taken-for-celsius', facts: { gauge: 'flowTemperature' } }]);
  });

  it('weather of another year is the first word, no cause is named; bands stay where a system can be [requirement]', async () => {
    // The first days of the log are enough, and their runs shorter.
    const readings = log.readings.slice(0, 5);
    const check = checkLog(design, await inventedValley(), { ...log, readings, calendarYear: 2019 }, { members: 4 });
    expect(check).toMatchObject({ verdict: 'cannot-tell', reason: 'weather-of-another-year', next: null });
    const { headline, causes } = checkInWords(check);
    expect(headline).toMatch(/^First the log itself: The weather is of \d{4}, the log of 2019/);
    for (const { weight } of causes) expect(weight).not.toMatch(/^(0|100) %/);
    expect(checkInWords({ ...check, causes: [{ ...check.causes[0]!, weight: 1 }] }).causes[0]!.weight).toBe(
      'over 95 %',
    );
    for (const { gauge, low, high } of check.numbers) {
      if (gauge === 'heaterMeter') expect(low).toBeGreaterThanOrEqual(0);
      else if (gauge !== 'loopPressure') {
        // Nothing in this house is colder than its mains in May, nor its tank hotter than steam.
        expect(low).toBeGreaterThan(0);
        expect(high).toBeLessThan(gauge === 'tankTopTemperature' ? 105 : 160);
      }
    }
  });
});

describe('a log without any noise', () => {
  it('of the design itself fits too well: nothing is named, least of all dirty panels [definition]', () => {
    const hours = Array.from({ length: 26 }, (_, at) => span.from + SETTLE + 10 + 7 * at);
    const observations = observe(logOf(readingsOf(library.healthy.base, hours, () => [])));
    const { weighing } = weighAndDoubt(library, observations, noise);
    const fit = fitOf(weighing.best.get(first(weighing))!, observations, uncertainty.model);
    expect(fit).toBeLessThan(0.1);
    expect(reasonOf(weighing.weights[first(weighing)], fit, observations.numbers.length)).toBe('fits-too-well');
    expect(first(weighing)).toBe('healthy');
  });
});

describe('lime on the coil', () => {
  // The 2 mm that a coil has in practice, with good thermometers: doubts.long.test.ts.
  it('10 mm are found, half to twice as thick [0.01 m over 2.2 W/(m·K), handbook value from memory]', async () => {
    const limed = { ...design, coil: { ...design.coil, fouling: design.coil.fouling + 0.01 / 2.2 } };
    // Mornings, noons and afternoons; the gauges some tenths off in turn.
    const hours = Array.from(
      { length: 24 },
      (_, at) => span.from + SETTLE + 24 * Math.trunc(at / 3) + [10, 12, 14][at % 3]!,
    );
    const off = (at: number) => [at % 2 === 0 ? 0.3 : -0.3, at % 3 === 0 ? 0.3 : -0.2, at % 5 === 0 ? 0.4 : -0.1, 2000];
    const trace = runSpan(limed, await inventedValley(), span, undefined, { stepsPerHour: 12 });
    const { weighing } = weighAndDoubt(library, observe(logOf(readingsOf(trace, hours, off))), noise);
    expect(first(weighing)).toBe('scaled-coil');
    const { thickness } = weighing.best.get('scaled-coil')!.form.facts;
    expect((thickness as { value: number }).value).toBeGreaterThanOrEqual(0.005);
    expect((thickness as { value: number }).value).toBeLessThanOrEqual(0.02);
  });
});
