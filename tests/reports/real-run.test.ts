import { chart, renderHtml, summarize } from '@noonloop/reports';
import { defineSystem, simulate } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { inventedValley } from '../examples.ts';

describe('reports of a simulated year', () => {
  it('sums up what the balance of the run says, and the page of one design takes less than a second [requirement]', async () => {
    const weather = await inventedValley();
    const runs = [2, 3].map((panels) =>
      simulate(
        defineSystem({
          name: `${panels} panels`,
          array: { panels, tilt: 40, azimuth: 180, collector: { area: 2, eta0: 0.75, a1: 3.8, a2: 0.012 } },
          tank: { volume: '300 L' },
          draw: { dailyVolume: '200 L' },
        }),
        weather,
        { keepTankNodes: true },
      ),
    );
    const [two, three] = runs.map((run) => summarize(run).year);
    expect(three!.deliveredEnergy).toBeGreaterThan(two!.deliveredEnergy);
    // Burner and sun heat the same water: what came out at the taps is no more than what both put in, less what the heater lost
    // and plus what it stored, 1 % of the heat at most.
    expect(
      Math.abs(two!.deliveredEnergy + two!.heaterHeat - two!.heaterLoss - two!.tapHeat) / two!.tapHeat,
    ).toBeLessThan(0.01);
    await chart('monthly-energy', runs); // loads the drawing library
    // The least of up to four: tests beside this one slow the processor, and this process collects their garbage too.
    let least = Number.POSITIVE_INFINITY;
    let html = '';
    for (let turn = 0; turn < 4 && least >= 1; turn++) {
      const before = process.cpuUsage();
      html = await renderHtml(runs[0]!);
      const { user, system } = process.cpuUsage(before); // [µs] of this process
      least = Math.min(least, (user + system) / 1e6);
    }
    expect(least).toBeLessThan(1);
    expect(html).not.toMatch(/NaN|undefined/);
    expect(html).not.toContain('keepTankNodes'); // every chart is on it
    expect(Buffer.byteLength(html)).toBeLessThan(2e6);
  });
});
