import { chart, renderHtml, summarize } from '@noonloop/reports';
import { defineSystem } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { inventedValley, plainInput, yearOf } from '../examples.ts';
import { withLayers } from './fixture.ts';

describe('reports of a simulated year', () => {
  it('sums up what the balance of the run says, and the page of one design takes less than a second [requirement]', async () => {
    const run = withLayers(yearOf(defineSystem(plainInput), await inventedValley()));
    const { year } = summarize(run);
    // Burner and sun heat the same water: what came out at the taps is no more than what both put in, less what the heater lost
    // and plus what it stored, 1 % of the heat at most.
    expect(
      Math.abs(year.deliveredEnergy + year.heaterHeat - year.heaterLoss - year.tapHeat) / year.tapHeat,
    ).toBeLessThan(0.01);
    await chart('monthly-energy', run); // loads the drawing library
    // The least of up to four: tests beside this one slow the processor, and this process collects their garbage too.
    let least = Number.POSITIVE_INFINITY;
    let html = '';
    for (let turn = 0; turn < 4 && least >= 1; turn++) {
      const before = process.cpuUsage();
      html = await renderHtml(run);
      const { user, system } = process.cpuUsage(before); // [µs] of this process
      least = Math.min(least, (user + system) / 1e6);
    }
    expect(least).toBeLessThan(1);
    expect(html).not.toMatch(/NaN|undefined/);
    expect(html).not.toContain('keepTankNodes'); // every chart is on it
    expect(Buffer.byteLength(html)).toBeLessThan(2e6);
  });
});
