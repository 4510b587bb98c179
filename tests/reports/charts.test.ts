import { chart, summarize } from '@noonloop/reports';
import { describe, expect, it } from 'vitest';
import { chooseWeek } from '../../packages/reports/src/charts/choose-week.ts';
import { niceAxis } from '../../packages/reports/src/charts/context.ts';
import { heatPaths } from '../../packages/reports/src/charts/heat-map.ts';
import { DARK, heatColour, LIGHT, type Palette } from '../../packages/reports/src/charts/palette.ts';
import { fixture } from './fixture.ts';

const two = fixture({ panels: 2 });
const four = fixture({ panels: 4 });

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

describe('chart', () => {
  it('refuses a name that it does not know [definition]', async () => {
    await expect(chart('pie' as 'tank-year', two)).rejects.toThrow(/found "pie", expected one of monthly-energy/);
  });

  it('shows no undefined, no NaN and no markup of others [definition]', async () => {
    const named = { ...two, design: { ...two.design, name: '<b>{a|b}</b> & "c"' } };
    for (const name of ['monthly-energy', 'tank-year', 'summer-week', 'winter-week'] as const)
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
