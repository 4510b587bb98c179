import { chart, renderHtml, summarize } from '@noonloop/reports';
import { defineSystem, simulate } from '@noonloop/sim-core';
import { readWeather } from '@noonloop/weather-io';
import { describe, expect, it } from 'vitest';
import { CHART_NAMES } from '../../packages/reports/src/charts/chart.ts';
import { chooseWeek } from '../../packages/reports/src/charts/choose-week.ts';
import { niceAxis } from '../../packages/reports/src/charts/context.ts';
import { flowGraph, throughNode } from '../../packages/reports/src/charts/flow-model.ts';
import { layerPaths } from '../../packages/reports/src/charts/layers.ts';
import { DARK, heatColour, LIGHT, type Palette } from '../../packages/reports/src/charts/palette.ts';
import { pumpThreshold } from '../../packages/reports/src/charts/pump-map.ts';
import { heatPaths } from '../../packages/reports/src/charts/year-map.ts';
import { fixture, withLayers } from './fixture.ts';

const two = withLayers(fixture({ panels: 2 }));
const four = withLayers(fixture({ panels: 4 }));
const sumOf = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/** Heights of the bars of one colour, in order. [px] */
function barHeights(svg: string, colour: string): number[] {
  const bars = [...svg.matchAll(/<path d="M[\d.]+ [\d.]+l[\d.]+ 0l0 -([\d.]+)l[^"]*" fill="(#\w+)"/g)];
  return bars.filter((bar) => bar[2] === colour).map((bar) => Number(bar[1]));
}

describe('monthly-energy', () => {
  it('has 12 bars a source and design, as high as their numbers to a pixel [definition]', async () => {
    const svg = await chart('monthly-energy', [two, four]);
    const months = [two, four].flatMap((run) => summarize(run).months);
    const solar = barHeights(svg, LIGHT.solar);
    const burner = barHeights(svg, LIGHT.burner);
    expect(solar).toHaveLength(24);
    expect(burner).toHaveLength(24);
    // One scale for both panels, from the tallest bar: within 0.5 px of some 170. A bar is then within 1 px of its number.
    const tallest = burner.indexOf(Math.max(...burner));
    const scale = burner[tallest]! / months[tallest]!.heaterHeat;
    months.forEach((month, index) => {
      expect(Math.abs(solar[index]! - month.deliveredEnergy * scale)).toBeLessThan(1);
      expect(Math.abs(burner[index]! - month.heaterHeat * scale)).toBeLessThan(1);
    });
  });

  it('writes the solar share of each month over its bar [definition]', async () => {
    const svg = await chart('monthly-energy', two);
    const shares = summarize(two).months.map((month) => `${Math.round(100 * month.solarFraction!)}%`);
    const labels = [...svg.matchAll(/>(\d+%)<\/text>/g)].map((match) => match[1]);
    expect(labels).toEqual(shares);
  });
});

describe('tank-year', () => {
  it('covers each of the 8760 cells once in the colour of its step [definition]', () => {
    const column = two.columns.tankMaximumTemperature;
    const level = (value: number): number => Math.floor(value / 5);
    const seen = new Int8Array(8760).fill(-1);
    heatPaths(column, level, 30).forEach((path, step) => {
      for (const [, day, top, length] of path.matchAll(/M(\d+) (\d+)h1v(\d+)h-1z/g))
        for (let row = 0; row < Number(length); row++) {
          const hour = Number(day) * 24 + (23 - Number(top) - row);
          expect(seen[hour]).toBe(-1);
          seen[hour] = step;
        }
    });
    expect(Array.from(seen)).toEqual(Array.from(column, level));
  });

  it('says the peak of each design in its label [definition]', async () => {
    const svg = await chart('tank-year', [two, four], { units: 'us' });
    for (const run of [two, four])
      expect(svg).toContain(`highest ${Math.round(summarize(run).year.peakTankTemperature * 1.8 + 32)} °F`);
  });
});

describe('weeks', () => {
  it('takes the sunniest seven days of April to September and the dullest of the other half [definition]', () => {
    const run = fixture();
    run.columns.irradiance.fill(100);
    run.columns.irradiance.fill(500, 150 * 24, 157 * 24);
    run.columns.irradiance.fill(900, 20 * 24, 27 * 24); // brighter, but in winter
    run.columns.irradiance.fill(10, 300 * 24, 307 * 24);
    expect(chooseWeek(run, 'summer')).toBe(150);
    expect(chooseWeek(run, 'winter')).toBe(300);
    const south = { ...run, site: { ...run.site, latitude: -36 } };
    expect(chooseWeek(south, 'summer')).toBe(20);
  });

  it('draws three lines of temperature, one of sun and one of the pump a design [definition]', async () => {
    const svg = await chart('summer-week', [two, four]);
    for (const role of ['tankTop', 'tankBottom', 'absorber', 'sun'] as const) {
      const lines = svg.match(new RegExp(`fill="none"[^>]*stroke="${LIGHT[role]}"`, 'g')) ?? [];
      expect(lines.length, role).toBe(2);
    }
    expect(svg.match(new RegExp(`fill="${LIGHT.pump}"`, 'g'))).toHaveLength(2);
  });
});

describe('monthly-energy with losses', () => {
  it('hangs pipes, tank and heater below the line, as long as their numbers to a pixel [definition]', async () => {
    const svg = await chart('monthly-energy', two, { losses: true });
    const { months } = summarize(two);
    const scale = barHeights(svg, LIGHT.burner)[0]! / months[0]!.heaterHeat;
    for (const [role, key] of [
      ['absorber', 'pipeLoss'],
      ['tankBottom', 'tankLoss'],
      ['pump', 'heaterLoss'],
    ] as const) {
      const bars = [...svg.matchAll(/<path d="M[\d.]+ [\d.]+l[\d.]+ 0l0 ([\d.]+)l[^"]*" fill="(#\w+)"/g)];
      const heights = bars.filter((bar) => bar[2] === LIGHT[role]).map((bar) => Number(bar[1]));
      expect(heights, key).toHaveLength(12);
      heights.forEach((height, month) => {
        expect(Math.abs(height - Math.max(0, months[month]![key]) * scale)).toBeLessThan(1.5); // both ends on whole pixels
      });
    }
  });
});

describe('energy-flow', () => {
  /** Extent of each band where it starts and where it ends. [px] */
  const bands = (svg: string): { flow: string; start: number; end: number }[] =>
    [
      ...svg.matchAll(
        /data-flow="([^"]+)"[^>]* d="M\S+ (\S+)C\S+ \S+ \S+ \S+ \S+ (\S+)L\S+ (\S+)C\S+ \S+ \S+ \S+ \S+ (\S+)z"/g,
      ),
    ].map(([, flow, start, end, endBelow, startBelow]) => ({
      flow: flow!,
      start: Number(startBelow) - Number(start),
      end: Number(endBelow) - Number(end),
    }));

  it('has a band for each flow, as wide as its number at both ends, on one scale [definition]', async () => {
    const graphs = [two, four].map((run) => flowGraph(summarize(run))!);
    const links = graphs.flatMap((graph) => graph.links);
    const drawn = bands(await chart('energy-flow', [two, four]));
    expect(drawn.map(({ flow }) => flow)).toEqual(links.map(({ from, to }) => `${from}-${to}`));
    const scale = drawn[0]!.start / links[0]!.value;
    drawn.forEach(({ start, end }, index) => {
      // Coordinates have four decimals.
      expect(Math.abs(start - links[index]!.value * scale)).toBeLessThan(1e-3);
      expect(Math.abs(end - links[index]!.value * scale)).toBeLessThan(1e-3);
    });
  });

  it('lets widths add up at every node: what comes in goes out, and is the node [balance]', async () => {
    for (const run of [two, four]) {
      const graph = flowGraph(summarize(run))!;
      for (const { id, value } of graph.nodes) {
        const through = throughNode(graph, id);
        for (const sum of [through.in, through.out].filter((one) => one > 0))
          expect(sum / Math.max(value, sum), id).toBeCloseTo(
            Math.max(through.in, through.out) / Math.max(value, sum),
            9,
          );
      }
    }
  });

  it('of a simulated year: storage closes the sums and is small [balance of the run]', async () => {
    const weather = await readWeather(
      new URL('../../docs/examples/weather/invented-valley.csv', import.meta.url).pathname,
    );
    const run = simulate(
      defineSystem({
        array: { panels: 2, tilt: 40, azimuth: 180, collector: { area: 2, eta0: 0.75, a1: 3.8, a2: 0.012 } },
        tank: { volume: '300 L' },
        draw: { dailyVolume: '200 L' },
      }),
      weather,
    );
    const graph = flowGraph(summarize(run))!;
    const stored = graph.nodes.filter(({ id }) => /-store/.test(id)).map(({ value }) => value);
    // No more than what 300 L of tank, the heater and the loop can hold over 60 K: 30 kWh, here of some 7000.
    expect(sumOf(stored)).toBeLessThan(30 * 3.6e6);
    const tank = graph.nodes.find(({ id }) => /^coil-store/.test(id))?.value ?? 0;
    expect(Math.abs(Math.abs(run.balance.tank.stored) - tank) / tank).toBeLessThan(1e-6);
  });

  it('is left out, with a line, where heat runs backwards over the year [definition]', async () => {
    const cooled = fixture();
    cooled.columns.coilHeat.fill(-1e6);
    expect(flowGraph(summarize(cooled))).toBeNull();
    await expect(chart('energy-flow', cooled)).rejects.toThrow(/bands cannot show/);
    expect(await renderHtml(cooled, { charts: ['energy-flow'] })).toContain('bands cannot show');
  });
});

describe('tank-duration', () => {
  it('is the sorted temperatures: its points fall on their numbers to half a pixel [definition]', async () => {
    const svg = await chart('tank-duration', two);
    const path = new RegExp(`<path d="M([^"]+)" fill="none"[^>]*stroke="${LIGHT.tankTop}"`).exec(svg)![1]!;
    const points = path
      .split(/L| (?=\S+ \S+L)/)
      .join(' ')
      .trim()
      .split(/\s+/)
      .map(Number);
    const pairs = Array.from({ length: points.length / 2 }, (_, at) => [points[2 * at]!, points[2 * at + 1]!]);
    const sorted = Float64Array.from(two.columns.tankMaximumTemperature).sort().reverse();
    expect(pairs).toHaveLength(366);
    const [first, last] = [pairs[0]!, pairs.at(-1)!];
    const slope = (last[1]! - first[1]!) / (sorted[8759]! - sorted[0]!);
    pairs.forEach(([, y], point) => {
      expect(Math.abs(y! - first[1]! - slope * (sorted[Math.min(8759, point * 24)]! - sorted[0]!))).toBeLessThan(0.5);
    });
  });
});

describe('pump-map', () => {
  it('has a dot for every hour with light or flow, at its place to 0.1 px [definition]', async () => {
    const svg = await chart('pump-map', two);
    const dots = [...svg.matchAll(/<path data-dots="\w+" d="([^"]*)"/g)].flatMap(([, path]) => {
      let y = 0;
      return [...path!.matchAll(/m(-?\d+) ?(-?\d+)h0/g)].map((step) => {
        y += Number(step[2]);
        return y / 10; // tenths of a pixel
      });
    });
    const { pvIrradiance, pumpRunning, loopFlow } = two.columns;
    const hours = Array.from({ length: 8760 }, (_, hour) => hour).filter(
      (hour) => pvIrradiance[hour]! > 0 || pumpRunning[hour]! > 0,
    );
    expect(dots).toHaveLength(hours.length);
    const most = Math.max(...loopFlow);
    const [low, high] = [Math.max(...dots), Math.min(...dots)];
    const counted = dots.filter((y) => Math.abs(y - (low - ((low - high) * 0.5 * most) / most)) < 0.06).length;
    const half = hours.filter((hour) => Math.abs(loopFlow[hour]! / most - 0.5) < 0.06 / (low - high)).length;
    expect(Math.abs(counted - half)).toBeLessThanOrEqual(2); // rounding at the edges of the class
  });

  it('draws the light from which the pump runs through; none on the mains [definition]', async () => {
    const least = Math.min(...two.columns.pvIrradiance.filter((_, hour) => two.columns.pumpRunning[hour]! === 1));
    expect(pumpThreshold(two.columns, 'booster')).toBe(least);
    expect(await chart('pump-map', two)).toContain(`runs through from ${Math.round(least)} W/m²`);
    expect(pumpThreshold(two.columns, 'mains')).toBeNull();
  });
});

describe('tank-layers', () => {
  it('covers each hour and layer once in the colour of its step [definition]', () => {
    const level = (hour: number, node: number): number => Math.floor((hour + 3 * node) / 7) % 20;
    const seen = new Int8Array(168 * 10).fill(-1);
    layerPaths(10, level, 20).forEach((path, step) => {
      for (const [, hour, top, length] of path.matchAll(/M(\d+) (\d+)h1v(\d+)h-1z/g))
        for (let row = 0; row < Number(length); row++) {
          const place = Number(hour) * 10 + (9 - Number(top) - row);
          expect(seen[place]).toBe(-1);
          seen[place] = step;
        }
    });
    for (let place = 0; place < 1680; place++) expect(seen[place]).toBe(level(Math.floor(place / 10), place % 10));
  });

  it('is left out, with a line, where the run did not keep them [definition]', async () => {
    await expect(chart('tank-layers', fixture())).rejects.toThrow(/keepTankNodes/);
    expect(await renderHtml(fixture(), { charts: ['tank-layers'] })).toContain('keepTankNodes');
  });
});

describe('comparison', () => {
  it.each([2, 3, 9])('has a bar a design and number for %i designs, to scale [definition]', async (count) => {
    const runs = Array.from({ length: count }, (_, index) => fixture({ panels: index + 1 }));
    const svg = await chart('comparison', runs);
    const bars = [...svg.matchAll(/<path d="M[\d.]+ [\d.]+l([\d.]+) 0l0 [\d.]+l[^"]*" fill="#/g)].map((bar) =>
      Number(bar[1]),
    );
    const delivered = runs.map((run) => summarize(run).year.deliveredEnergy);
    const widths = bars.slice(0, count);
    const scale = widths.at(-1)! / delivered.at(-1)!;
    widths.forEach((width, index) => {
      expect(Math.abs(width - delivered[index]! * scale)).toBeLessThan(1);
    });
  });

  it('has nothing to say of one design [definition]', async () => {
    await expect(chart('comparison', two)).rejects.toThrow(/nothing to be compared with/);
  });
});

describe('month-multiples', () => {
  it('has twelve bars a number that adds up or is a share, and twelve dots of the peak [definition]', async () => {
    const svg = await chart('month-multiples', two);
    expect(svg.match(new RegExp(`<path d="M[^"]*l[^"]*" fill="${LIGHT.solar}"`, 'g'))!.length).toBeGreaterThanOrEqual(
      60,
    );
    const deliver = summarize(two).months.map((month) => month.deliveredEnergy);
    const heights = barHeights(svg, LIGHT.solar).slice(12, 24);
    const scale = Math.max(...heights) / Math.max(...deliver);
    heights.forEach((height, month) => {
      expect(Math.abs(height - deliver[month]! * scale)).toBeLessThan(1);
    });
  });
});

describe('chart', () => {
  it('refuses a name that it does not know [definition]', async () => {
    await expect(chart('pie' as 'tank-year', two)).rejects.toThrow(
      /found "pie", expected one of comparison, monthly-energy/,
    );
  });

  it('shows no undefined, no NaN and no markup of others [definition]', async () => {
    const named = { ...two, design: { ...two.design, name: '<b>{a|b}</b> & "c"' } };
    for (const name of CHART_NAMES)
      for (const width of [320, 960]) {
        const svg = await chart(name, [named, four], { width });
        expect(svg).not.toMatch(/NaN|undefined|Infinity|<b>/);
        expect(svg).toMatch(/&lt;b&gt;/);
      }
  });
});

describe('niceAxis', () => {
  it('holds the range in steps of 1, 2, 2.5 or 5 [closed form]', () => {
    expect(niceAxis(0, 417, 4)).toEqual({ min: 0, max: 600, interval: 200 });
    expect(niceAxis(-6, 43, 7)).toEqual({ min: -10, max: 50, interval: 10 });
    expect(niceAxis(0, 0, 4).max).toBeGreaterThanOrEqual(0);
  });
});

describe('palette', () => {
  const channels = (colour: string): number[] =>
    [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16) / 255);
  const linear = (colour: string): number[] =>
    channels(colour).map((one) => (one <= 0.04045 ? one / 12.92 : ((one + 0.055) / 1.055) ** 2.4));
  /** Relative luminance, WCAG 2.1. */
  const luminance = (rgb: number[]): number => 0.2126 * rgb[0]! + 0.7152 * rgb[1]! + 0.0722 * rgb[2]!;
  const contrast = (a: string, b: string): number => {
    const [low, high] = [luminance(linear(a)), luminance(linear(b))].sort((x, y) => x - y);
    return (high! + 0.05) / (low! + 0.05);
  };
  const MARKS = ['burner', 'tankTop', 'tankBottom', 'absorber', 'pump'] as const;

  it.each([
    ['light', LIGHT, '#ffffff'],
    ['dark', DARK, '#15181c'],
  ] as [string, Palette, string][])(
    '%s: text at least 4.5:1, marks 3:1, area fills 2:1 on their ground [WCAG 2.1, 1.4.3 and 1.4.11]',
    (_, palette, ground) => {
      for (const role of ['ink', 'muted'] as const)
        expect(contrast(palette[role], ground), role).toBeGreaterThanOrEqual(4.5);
      for (const role of MARKS) expect(contrast(palette[role], ground), role).toBeGreaterThanOrEqual(3);
      for (const role of ['solar', 'sun'] as const)
        expect(contrast(palette[role], ground), role).toBeGreaterThanOrEqual(2);
      expect(contrast(palette.solar, palette.burner)).toBeGreaterThanOrEqual(1.5); // stacked on each other
    },
  );

  it('heat map grows lighter at every step, so that it reads in grey [definition]', () => {
    const steps = Array.from({ length: 20 }, (_, at) => luminance(linear(heatColour(at / 19))));
    for (let at = 1; at < 20; at++) expect(steps[at]).toBeGreaterThan(steps[at - 1]!);
  });
});
