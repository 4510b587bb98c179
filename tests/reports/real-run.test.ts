import { renderHtml, summarize } from '@noonloop/reports';
import { defineSystem, simulate } from '@noonloop/sim-core';
import { readWeather } from '@noonloop/weather-io';
import { describe, expect, it } from 'vitest';

const WEATHER = new URL('../../docs/examples/weather/invented-valley.csv', import.meta.url);

describe('reports of a simulated year', () => {
  it('sums up what the balance of the run says, and the page of one design takes less than a second [requirement]', async () => {
    const weather = await readWeather(WEATHER.pathname);
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
    await renderHtml(runs); // loads the drawing library
    // The least of three: tests beside this one slow the processor, and this process collects their garbage too.
    const seconds: number[] = [];
    let html = '';
    for (let turn = 0; turn < 3; turn++) {
      const before = process.cpuUsage();
      html = await renderHtml(runs[0]!);
      const { user, system } = process.cpuUsage(before); // [µs] of this process
      seconds.push((user + system) / 1e6);
    }
    expect(Math.min(...seconds)).toBeLessThan(1);
    expect(html).not.toMatch(/NaN|undefined/);
    expect(html).not.toContain('keepTankNodes'); // every chart is on it
    expect(Buffer.byteLength(html)).toBeLessThan(2e6);
  });
});
