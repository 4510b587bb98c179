import { chart as anyChart, money, renderHtml, summarize } from '@noonloop/reports';
import { defineSystem } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { chooseWeek } from '../../packages/reports/src/charts/choose-week.ts';
import { niceAxis } from '../../packages/reports/src/charts/context.ts';
import { flowGraph, throughNode } from '../../packages/reports/src/charts/flow-model.ts';
import { layerPaths } from '../../packages/reports/src/charts/layers.ts';
import { worthByYear } from '../../packages/reports/src/charts/money-years.ts';
import { DARK, heatColour, LIGHT, type Palette } from '../../packages/reports/src/charts/palette.ts';
import { lightClasses, pumpThreshold } from '../../packages/reports/src/charts/pump.ts';
import { heatPaths } from '../../packages/reports/src/charts/year-map.ts';
import { inventedValley, plainInput, yearOf } from '../examples.ts';
import { fixture, US_UNITS, withLayers } from './fixture.ts';

const two = withLayers(fixture({ panels: 2 }));
const four = withLayers(fixture({ panels: 4 }));
/** A chart; in metric units it has no others. */
const chart: typeof anyChart = async (name, runs, options) => {
  const svg = await anyChart(name, runs, options);
  if (options?.units !== 'us') expect(svg.replace(/<[^>]*>/g, ' ')).not.toMatch(US_UNITS);
  return svg;
};
const sumOf = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/** Heights of the bars of one fill, upwards or downwards, in order. [px] */
function barHeights(svg: string, fill: RegExp, sign: '-' | '' = '-'): number[] {
  const bars = [...svg.matchAll(/<path d="M[\d.]+ [\d.]+l[\d.]+ 0l0 (-?)([\d.]+)l[^"]*" fill="([^"]+)"/g)];
  return bars.filter((bar) => bar[1] === sign && fill.test(bar[3]!)).map((bar) => Number(bar[2]));
}
const SOLAR = new RegExp(`^${LIGHT.solar}$`);
const FUEL = /^url\(#[\w-]+-fuel\)$/;

describe('monthly-energy', () => {
  it('has 12 bars a source and design, as high as their numbers to a pixel [definition]', async () => {
    const svg = await chart('monthly-energy', [two, four]);
    const months = [two, four].flatMap((run) => summarize(run).months);
    const solar = barHeights(svg, SOLAR);
    const burner = barHeights(svg, FUEL);
    expect(solar).toHaveLength(24);
    expect(burner).toHaveLength(24);
    // One scale for both panels, from the tallest bar: within 0.5 px of some 100. A bar is then within 1.2 px of its number.
    const tallest = burner.indexOf(Math.max(...burner));
    const scale = burner[tallest]! / months[tallest]!.heaterHeat;
    months.forEach((month, index) => {
      expect(Math.abs(solar[index]! - month.deliveredEnergy * scale)).toBeLessThan(1.2);
      expect(Math.abs(burner[index]! - month.heaterHeat * scale)).toBeLessThan(1.2);
    });
  });

  it('writes hot water by the sun under each month, on a telephone in the table alone [definition]', async () => {
    const svg = await chart('monthly-energy', two);
    const shares = summarize(two).months.map((month) => `${Math.round(100 * month.sunShare!)} %`);
    const labels = [...svg.matchAll(/>(\d+ %)<\/(?:text|tspan)>/g)].map((match) => match[1]);
    expect(labels).toEqual(shares);
    expect(await chart('monthly-energy', two, { width: 342 })).not.toMatch(/>\d+ %</);
  });

  it('hangs the losses of pipes, tank and heater below the line, as long as their numbers to a pixel [definition]', async () => {
    const svg = await chart('monthly-energy', two, { losses: true });
    const { months } = summarize(two);
    const scale = barHeights(svg, FUEL)[0]! / months[0]!.heaterHeat;
    const heights = barHeights(svg, /^none$/, '');
    expect(heights).toHaveLength(12);
    heights.forEach((height, month) => {
      const { pipeLoss, tankLoss, heaterLoss } = months[month]!;
      const lost = Math.max(0, pipeLoss) + Math.max(0, tankLoss) + Math.max(0, heaterLoss);
      expect(Math.abs(height - lost * scale)).toBeLessThan(1.5); // both ends on whole pixels
    });
  });
});

describe('tank-year', () => {
  it('covers each of the 8760 cells once in the colour of its step [definition]', () => {
    const column = two.columns.tankMaximumTemperature;
    const level = (value: number): number => Math.floor(value / 5);
    const seen = new Int8Array(8760).fill(-1);
    const twice: number[] = [];
    heatPaths(column, level, 30).forEach((path, step) => {
      for (const [, day, top, length] of path.matchAll(/M(\d+) (\d+)h1v(\d+)h-1z/g))
        for (let row = 0; row < Number(length); row++) {
          const hour = Number(day) * 24 + (23 - Number(top) - row);
          if (seen[hour] !== -1) twice.push(hour);
          seen[hour] = step;
        }
    });
    expect(twice).toEqual([]);
    expect(Array.from(seen)).toEqual(Array.from(column, level));
  });

  it('says the peak of each design in its label [definition]', async () => {
    const svg = await chart('tank-year', [two, four], { units: 'us' });
    for (const run of [two, four])
      expect(svg).toContain(`highest ${Math.round(summarize(run).year.peakTankTemperature * 1.8 + 32)} °F`);
  });
});

describe('weeks', () => {
  it('are the seven days with the hottest and with the coldest air, wherever they lie [definition]', () => {
    const run = fixture();
    run.columns.ambientTemperature.fill(10);
    run.columns.ambientTemperature.fill(30, 190 * 24, 197 * 24);
    run.columns.ambientTemperature.fill(-5, 30 * 24, 37 * 24);
    run.columns.irradiance.fill(900, 100 * 24, 107 * 24); // sunnier, and not hotter
    expect(chooseWeek(run, 'hottest')).toBe(190);
    expect(chooseWeek(run, 'coldest')).toBe(30);
  });

  it('draw three lines of temperature and one pump a design, sun and draw once where they are the same [definition]', async () => {
    const svg = await chart('hottest-week', [two, four]);
    for (const role of ['tankTop', 'tankBottom', 'solar'] as const) {
      const lines = svg.match(new RegExp(`fill="none"[^>]*stroke="${LIGHT[role]}"`, 'g')) ?? [];
      expect(lines.length, role).toBe(2);
    }
    expect(svg.match(new RegExp(`stroke="${LIGHT.sunLine}"`, 'g'))).toHaveLength(1);
    expect(svg.match(/>[AB]: pump</g)).toEqual(['>A: pump<', '>B: pump<']);
    expect(svg.match(/water at the taps/g)).toHaveLength(1);
  });

  it('show the layers of one design where the run kept them [definition]', async () => {
    expect(await chart('hottest-week', two)).toContain('>layers<');
    expect(await chart('hottest-week', fixture())).not.toContain('>layers<');
  });
});

describe('energy-flow', () => {
  /** Width of each band where it starts and where it ends, in the order of the links. [px] */
  const bands = (svg: string): { start: number; end: number }[] =>
    [...svg.matchAll(/d="M(\S+) (\S+)C\S+ \S+ \S+ \S+ (\S+) (\S+)L(\S+) (\S+)C\S+ \S+ \S+ \S+ (\S+) (\S+?)Z"/g)].map(
      ([, x0, y0, x1, y1, x2, y2, x3, y3]) => ({
        start: Math.hypot(Number(x3) - Number(x0), Number(y3) - Number(y0)),
        end: Math.hypot(Number(x2) - Number(x1), Number(y2) - Number(y1)),
      }),
    );

  it.each([720, 342])(
    'at %i px has a band for each flow that is two dots wide, as wide as its number at both ends, on one scale [definition]',
    async (width) => {
      const drawn = bands(await chart('energy-flow', [two, four], { width }));
      const links = [two, four].flatMap((run) => flowGraph(summarize(run))!.links);
      const scale = drawn[0]!.start / links[0]!.value;
      const visible = links.filter(({ value }) => value * scale > 2);
      expect(drawn.length).toBeGreaterThanOrEqual(visible.length);
      expect(visible.length).toBeGreaterThan(16);
      let at = 0;
      for (const { value } of links) {
        // Coordinates have one decimal. A band of a node too thin to be drawn is left out with it.
        if (at === drawn.length || Math.abs(drawn[at]!.start - value * scale) > 0.15 + 0.002 * value * scale) {
          expect(value * scale).toBeLessThan(2);
          continue;
        }
        expect(Math.abs(drawn[at]!.end - Math.max(1, value * scale))).toBeLessThan(0.15 + 0.002 * value * scale);
        at++;
      }
      expect(at).toBe(drawn.length);
    },
  );

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
    const run = yearOf(defineSystem(plainInput), await inventedValley()); // with a tank of 300 L
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
    expect(await renderHtml(cooled, { sections: ['flow'] })).toContain('bands cannot show');
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

describe('pump', () => {
  it('sorts the lit hours that the limit left alone by light, with their quantiles [definition]', () => {
    const { pvIrradiance, highLimit, loopFlow } = two.columns;
    const hours = Array.from({ length: 8760 }, (_, hour) => hour).filter(
      (hour) => pvIrradiance[hour]! > 0 && highLimit[hour]! === 0,
    );
    const classes = lightClasses(two.columns, 'metric');
    expect(sumOf(classes.map((one) => one.hours))).toBe(hours.length);
    for (const { from, hours: count, low, middle, high } of classes) {
      const flows = hours
        .filter((hour) => Math.floor(pvIrradiance[hour]! / 50) * 50 === from)
        .map((hour) => loopFlow[hour]!);
      expect(flows.length).toBe(count);
      for (const [share, value] of [
        [0.1, low],
        [0.5, middle],
        [0.9, high],
      ] as const) {
        expect(flows.filter((flow) => flow <= value).length).toBeGreaterThanOrEqual(share * count);
        expect(flows.filter((flow) => flow < value).length).toBeLessThan(share * count + 1e-9);
      }
    }
  });

  it('draws the light from which the pump runs through; none on the mains [definition]', async () => {
    const least = Math.min(...two.columns.pvIrradiance.filter((_, hour) => two.columns.pumpRunning[hour]! === 1));
    expect(pumpThreshold(two.columns, 'booster')).toBe(least);
    expect(await chart('pump', two)).toContain(`runs through from ${Math.round(least)} W/m²`);
    expect(pumpThreshold(two.columns, 'mains')).toBeNull();
  });
});

describe('layers', () => {
  it('cover each hour and layer once in the colour of its step [definition]', () => {
    const level = (hour: number, node: number): number => Math.floor((hour + 3 * node) / 7) % 20;
    const seen = new Int8Array(168 * 10).fill(-1);
    const twice: number[] = [];
    layerPaths(10, level, 20).forEach((path, step) => {
      for (const [, hour, top, length] of path.matchAll(/M(\d+) (\d+)h1v(\d+)h-1z/g))
        for (let row = 0; row < Number(length); row++) {
          const place = Number(hour) * 10 + (9 - Number(top) - row);
          if (seen[place] !== -1) twice.push(place);
          seen[place] = step;
        }
    });
    expect(twice).toEqual([]);
    expect([...seen]).toEqual(Array.from(seen, (_, place) => level(Math.floor(place / 10), place % 10)));
  });
});

describe('hard-hours', () => {
  it('counts each kind as the key figures do, by month [definition]', async () => {
    const { year } = summarize(four);
    expect(year.stagnationHours).toBeGreaterThan(1);
    const svg = await chart('hard-hours', four);
    expect(svg).toContain(`stagnation about ${Math.round(year.stagnationHours)} h`);
  });

  it('is a sentence and no picture where the system never stood [definition]', async () => {
    const calm = fixture({ panels: 1 });
    calm.columns.highLimit.fill(0);
    calm.columns.stagnation.fill(0);
    await expect(chart('hard-hours', calm)).rejects.toThrow(/never stood in the sun/);
  });
});

describe('money-years', () => {
  it('starts at what was paid, ends at the net present value and crosses zero at the discounted payback [definition]', () => {
    const reckoned = money(two, MONEY);
    const line = worthByYear(reckoned, reckoned.cases[0]!);
    expect(line[0]).toBe(-1500);
    expect(line.at(-1)).toBeCloseTo(reckoned.cases[0]!.netPresentValue, 6);
    const paid = reckoned.cases[0]!.discountedPayback!;
    expect(line[Math.floor(paid)]!).toBeLessThanOrEqual(0);
    expect(line[Math.floor(paid) + 1]!).toBeGreaterThan(0);
  });

  it('needs prices [definition]', async () => {
    await expect(chart('money-years', two)).rejects.toThrow(/No prices were given/);
    expect(await chart('money-years', [two, four], { money: MONEY })).toContain('EUR');
  });
});

const MONEY = {
  currency: 'EUR',
  fuel: { carrier: 'natural-gas', price: 0.1, per: 'kWh' },
  investment: 1500,
  discountRate: 0.03,
  life: 20,
} as const;

describe('chart', () => {
  it('refuses a name that it does not know [definition]', async () => {
    await expect(chart('pie' as 'tank-year', two)).rejects.toThrow(
      /found "pie", expected one of monthly-energy, energy-flow/,
    );
  });

  it('shows no undefined, no NaN and no markup of others [definition; all of a page: formats.test.ts]', async () => {
    const named = { ...two, design: { ...two.design, name: '<b>{a|b}</b> & "c"' } };
    const svg = await chart('coldest-week', [named, four], { width: 320 });
    expect(svg).not.toMatch(/NaN|undefined|Infinity|<b>/);
    expect(svg).toMatch(/&lt;b&gt;/);
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
  const THEMES: [string, Palette][] = [
    ['light', LIGHT],
    ['dark', DARK],
  ];

  it.each(THEMES)(
    '%s: words at least 4.5:1 on page and card, marks 3:1 [WCAG 2.2, 1.4.3 and 1.4.11]',
    (name, palette) => {
      for (const ground of [palette.page, palette.card])
        for (const role of ['ink', 'muted', 'link', 'danger', 'caution', 'designA', 'designB', 'designC'] as const)
          expect(contrast(palette[role], ground), role).toBeGreaterThanOrEqual(4.5);
      expect(contrast(palette.danger, palette.dangerTint)).toBeGreaterThanOrEqual(4.5);
      expect(contrast(palette.caution, palette.cautionTint)).toBeGreaterThanOrEqual(4.5);
      expect(contrast(palette.ink, palette.dangerTint)).toBeGreaterThanOrEqual(4.5);
      expect(contrast(palette.page, palette.danger), 'the word on its badge').toBeGreaterThanOrEqual(4.5);
      for (const role of ['axis', 'sunLine', 'solar', 'fuel', 'loss', 'tankTop', 'tankBottom', 'designD'] as const)
        expect(contrast(palette[role], palette.page), `${name} ${role}`).toBeGreaterThanOrEqual(3);
    },
  );

  it('gives every role a colour of its own in light, by which the page finds it [definition]', () => {
    const colours = Object.values(LIGHT);
    expect(new Set(colours).size).toBe(colours.length);
  });

  /** Lightness L* of CIELAB (CIE 15), from relative luminance. */
  const lightness = (colour: string): number => {
    const y = luminance(linear(colour));
    return y > 216 / 24389 ? 116 * Math.cbrt(y) - 16 : (24389 / 27) * y;
  };

  it.each(THEMES)(
    '%s: the heat scale runs one way in lightness, each step 4 of L* or more from the next, so that it reads in grey [requirement]',
    (name, palette) => {
      const sign = name === 'light' ? -1 : 1;
      for (let step = 1; step < 9; step++)
        expect(
          sign * (lightness(heatColour(palette, step)) - lightness(heatColour(palette, step - 1))),
        ).toBeGreaterThan(4);
    },
  );

  it.each(THEMES)(
    '%s: sun, solar heat and fuel differ by 12 of L* or more; fuel is hatched besides [requirement]',
    (_, palette) => {
      for (const [a, b] of [
        ['sun', 'solar'],
        ['solar', 'fuel'],
        ['sun', 'fuel'],
      ] as const)
        expect(Math.abs(lightness(palette[a]) - lightness(palette[b]))).toBeGreaterThanOrEqual(12);
    },
  );
});

it('an error quotes the beginning of what was given, not a whole run in place of a name [requirement]', async () => {
  const wrong = await chart({ long: 'x'.repeat(1e5) } as never, [] as never).catch((error: Error) => error);
  expect(String(wrong)).toMatch(/^ReportError: name: found \{"long":"x+…, expected one of /);
  expect(String(wrong).length).toBeLessThan(1000);
});
