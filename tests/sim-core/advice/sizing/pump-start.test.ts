import { adviceInWords } from '@noonloop/reports';
import { defineSystem, type SystemInput, simulate, sizePumpDrive } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { inventedValley, plainInput, sum, yearOf } from '../../../examples.ts';
import { litWithin } from '../../../property/span.ts';

/** The valley with its light in thirteen weeks alone. */
const weather = litWithin(await inventedValley(), 0, 2160);
const early = defineSystem({ ...plainInput, pump: { startPower: 0.8, stopPower: 0.4 } });
const sized = sizePumpDrive(early, {}, weather);

describe('the start that delivers most [simulations of the same roof]', () => {
  const booster = sized.bestStart!;

  it('is the best of all that were tried, and each row is the year of that threshold', () => {
    const { asDesigned, best, rows } = booster;
    expect(rows.map(({ irradiance }) => Math.round(irradiance!))).toEqual([50, 71, 100, 141, 200, 283, 400, 566]);
    for (const row of [...rows, asDesigned]) expect(best.delivered).toBeGreaterThanOrEqual(row.delivered);
    const { pump } = early;
    const again = defineSystem({
      ...plainInput,
      pump: { startPower: best.startPower!, stopPower: (best.startPower! * pump.stopPower) / pump.startPower },
    });
    const { columns } = simulate(again, weather);
    expect(sum(columns.solarHeat)).toBe(best.delivered);
    expect(sum(columns.heatGivenBack)).toBe(best.heatGivenBack);
    expect(asDesigned.delivered).toBe(sum(yearOf(early, weather).columns.solarHeat));
  });

  it('loses on either side: earlier the coil cools the tank more, later mild light is lost', () => {
    const { best, lossAtHalf, lossAtTwice, rows } = booster;
    expect(lossAtHalf).toBeGreaterThan(0);
    expect(lossAtTwice).toBeGreaterThan(0);
    const half = rows[rows.indexOf(best) - 2]!;
    expect(half.irradiance).toBeCloseTo(best.irradiance! / 2, -1);
    expect(best.delivered - half.delivered).toBe(lossAtHalf);
    for (const [at, row] of rows.entries())
      if (at > 0) expect(row.heatGivenBack).toBeLessThan(rows[at - 1]!.heatGivenBack);
  });

  it('a controller gives hardly any heat back, and delivers more than any start', () => {
    const { best, withController } = booster;
    expect(withController.delivered).toBeGreaterThan(best.delivered);
    expect(withController.heatGivenBack).toBeLessThan(0.1 * best.heatGivenBack);
  });

  it('a pump that starts far too early or late is told what to do, with figures', () => {
    const said = adviceInWords(sized.notes).join(' ');
    expect(said).toMatch(
      /A start in \d+ W\/m² instead of \d+ W\/m², by a threshold of [\d.]+ W, delivers \d+ kWh more/,
    );
    expect(said).toMatch(/controller by temperature difference delivers [\d.]+ kWh more/);
    expect(sized.steps.map(({ code }) => code)).toContain('pump-best-start');
  });

  it('a direct drive has its module sized, not a threshold', () => {
    const direct = defineSystem({ ...plainInput, pump: { drive: 'direct' } });
    const { best, by, rows } = sizePumpDrive(direct, {}, litWithin(weather, 0, 336)).bestStart!;
    expect(by).toBe('module');
    expect(best.startPower).toBeNull();
    // Twice the light by half the module: current goes with both.
    const powers = rows.map(({ irradiance, modulePower }) => irradiance! * modulePower);
    for (const power of powers) expect(power / powers[0]!).toBeCloseTo(1, 1);
  });

  it('is not looked for without weather, on the mains, or where another decides', () => {
    expect(sizePumpDrive(defineSystem(plainInput)).bestStart).toBeNull();
    const ruled: Partial<SystemInput>[] = [{ pump: { drive: 'mains' } }, { control: { mode: 'difference' } }];
    for (const over of ruled)
      expect(sizePumpDrive(defineSystem({ ...plainInput, ...over }), {}, weather).bestStart).toBeNull();
  });
});
