import { DesignError } from '@noonloop/sim-core';
import { burnTime } from '@noonloop/sim-core/formulas';
import { describe, expect, it } from 'vitest';
import { burnWords } from '../../../../packages/reports/src/words/burns.ts';

describe('time until hot water burns', () => {
  it.each([
    [120, 300],
    [130, 30],
    [150, 2],
  ])('%d °F: %d s [CPSC document 5098, from memory]', (fahrenheit, seconds) => {
    expect(burnTime((fahrenheit - 32) / 1.8)).toBeCloseTo(seconds, 6);
  });

  it.each([
    [45, 10_800],
    [47, 2_700],
    [60, 5],
    [70, 1],
  ])('%d °C: %d s, full thickness [Moritz & Henriques 1947, read in secondary pages]', (temperature, seconds) => {
    expect(burnTime(temperature)).toBeCloseTo(seconds, 6);
  });

  it('falls all the way, on a line of its logarithm between rows [direction that physics demands]', () => {
    for (let at = 45; at < 71; at += 0.25) expect(burnTime(at + 0.25)).toBeLessThanOrEqual(burnTime(at));
    // Half-way from 300 s to 30 s: √(300 × 30) s.
    expect(burnTime((125 - 32) / 1.8)).toBeCloseTo(Math.sqrt(300 * 30), 6);
    expect(burnTime(40)).toBe(Number.POSITIVE_INFINITY);
    expect(() => burnTime(Number.NaN)).toThrow(DesignError);
  });

  it.each([
    [40, 'only after hours'],
    [45, 'in 3 hours'],
    [440 / 9, 'in 5 minutes'],
    [50, 'in 3 minutes'],
    [490 / 9, 'in 30 seconds'],
    [60, 'in 5 seconds'],
    [80, 'within a second'],
  ])('%d °C burns %s [requirement]', (temperature, words) => {
    expect(burnWords(temperature)).toBe(words);
  });
});
