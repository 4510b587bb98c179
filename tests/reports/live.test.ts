/** The live page without a browser: what is packed, what turning does to a design, what the page is made of. */
import { createHash } from 'node:crypto';
import { type LivePageOptions, renderLivePage, summarize } from '@noonloop/reports';
import { defineSystem, type SystemInput } from '@noonloop/sim-core';
import type { WeatherYear } from '@noonloop/weather-io';
import { beforeAll, describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { LiveEngine } from '../../packages/reports/src/live/engine.ts';
import { livePageWith } from '../../packages/reports/src/live/render.ts';
import { designFields } from '../../packages/reports/src/live/turned.ts';
import type { LiveReply, LiveStart, Turned, TurnReply } from '../../packages/reports/src/live/types.ts';
import { packWeather, unpackWeather } from '../../packages/reports/src/live/weather-pack.ts';
import { plainYaml } from '../../packages/reports/src/live/yaml.ts';
import { inventedValley, plainInput, withPanels, yearOf } from '../examples.ts';

let weather: WeatherYear;
beforeAll(async () => {
  weather = await inventedValley();
});

const prices = { currency: 'EUR', fuel: { carrier: 'natural-gas', price: 0.11, per: 'kWh' } } as const;
const START: LiveStart = { design: plainInput as unknown as LiveStart['design'], prices };

let engine: LiveEngine | undefined;

/** Turns one engine for all tests, as a page does: it keeps its last years. */
function turn(now: Turned, against: Turned | null = null, pins: readonly Turned[] = []): LiveReply {
  engine ??= new LiveEngine(START, weather);
  return engine.handle({ kind: 'turn', id: 1, units: 'metric', now, against, pins });
}
const taken = (reply: LiveReply): TurnReply => {
  if (reply.kind !== 'turn') throw new Error(JSON.stringify(reply));
  return reply;
};

describe('weather in the page [requirement]', () => {
  it('comes back bit for bit, whatever its numbers', async () => {
    const odd = weather.columns.dryBulb.map((value, hour) => (hour % 3 === 0 ? -0 : value / 3 + hour * 1e-9));
    const large = weather.columns.ghi.map((value, hour) => (hour === 7 ? 1e7 : value));
    for (const columns of [weather.columns, { ...weather.columns, dryBulb: odd, ghi: large, dewPoint: null }]) {
      const year = { ...weather, columns };
      const again = await unpackWeather(await packWeather(year));
      expect(Object.keys(again.columns).sort()).toEqual(Object.keys(columns).sort());
      for (const [name, column] of Object.entries(columns) as [keyof typeof columns, Float64Array | null][]) {
        const other = again.columns[name];
        expect(other === null, name).toBe(column === null);
        expect(column?.every((value, hour) => Object.is(value, other![hour])) ?? true, name).toBe(true);
      }
      expect([...again.calendarYears]).toEqual([...year.calendarYears]);
      const { columns: _, calendarYears: __, ...rest } = year;
      expect({ ...again, columns: undefined, calendarYears: undefined }).toEqual({
        ...rest,
        columns: undefined,
        calendarYears: undefined,
      });
    }
  });
});

describe('a turn [requirement]', () => {
  it('runs the design that a file with the same fields describes, to the same bits', () => {
    const now = { 'array.tilt': 55, 'tank.volume': '80 gal', 'draw.people': 3, 'control.highLimit': null };
    const input = {
      ...plainInput,
      array: { ...plainInput.array, tilt: 55 },
      tank: { volume: '80 gal' },
      draw: { people: 3 },
      control: { highLimit: null },
    } as SystemInput;
    expect(designFields(START, now)).toEqual(input);
    const { year } = summarize(yearOf(withPanels(3), weather));
    expect(taken(turn({ 'array.panels': 3 })).numbers).toEqual(year);
  });

  it('tells what changed with the signs of the sheet, and nothing where nothing can be told', () => {
    const steeper = taken(turn({ 'array.panels': 3 }, {}));
    expect(steeper.turned).toBe('panels 2 → 3');
    const [saved, tank] = ['Natural gas saved a year', 'Hottest tank'].map(
      (label) => steeper.changes.find((one) => one.label === label)!.difference,
    );
    // A third panel saves fuel and heats the tank more: common experience, no source.
    expect(saved).toMatch(/^\+\d+ kWh/);
    expect(tank).toMatch(/^\+\d+ °C$/);
    const same = taken(turn({ 'array.tilt': 40.001 }, {}));
    expect(same.changes).toEqual([]);
  });

  it('sets pins and the turned design side by side as a comparison does', () => {
    const { comparison } = taken(turn({ 'array.panels': 3 }, null, [{}, { 'array.tilt': 40.001 }]));
    expect(comparison!.letters).toEqual(['A', 'B', 'C']);
    expect(comparison!.rows[0]!.cells).toHaveLength(3);
    expect(comparison!.rows[0]!.notes[2]).toMatch(/^\+/);
  });

  it('refuses what the library refuses, at its field and in its words', () => {
    const reply = turn({ 'array.tilt': 95, 'tank.volume': '80 pounds' });
    const faults = reply.kind === 'refused' ? reply.faults : [];
    expect(faults.map(({ path }) => path)).toEqual(['array.tilt', 'tank.volume']);
    expect(faults[0]!.words).toMatch(/found 95, expected .*0 to 90/);
    const seen = turn({ 'survey.length': '2 m', 'survey.width': '9 m', 'survey.covers': 1 });
    expect(seen.kind === 'refused' && seen.faults[0]!.path).toBe('survey.width');
  });

  it('shows the year without money where a price is wrong', () => {
    const { faults, money, answer } = taken(
      turn({
        'prices.currency': 'EUR',
        'prices.fuel.carrier': 'propane',
        'prices.fuel.price': 'much',
        'prices.fuel.per': 'L',
      }),
    );
    expect(faults.map(({ path }) => path)).toEqual(['prices.fuel.price']);
    expect(money).toBeNull();
    expect(answer.rule).toBe('one-without-prices');
  });

  it('counts the cost of panels by their number', () => {
    const cost = (now: Turned) => taken(turn(now)).money!.investment;
    expect(cost({ 'array.panels': 3, 'prices.panel': 400, 'prices.rest': 2000 })).toBe(3200);
    expect(cost({ 'prices.rest': 2000 })).toBe(2000);
    expect(cost({})).toBeUndefined();
  });

  it('passes over places that no design has', () => {
    const fields = designFields(START, { '__proto__.polluted': 1, 'constructor.prototype.polluted': 1, 'a-b': 2 });
    expect(fields).toEqual(plainInput);
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });
});

describe('what is taken away [requirement]', () => {
  it('a design that YAML reads as it was', () => {
    const start = { ...START, design: { ...START.design, name: 'no: "yes" # [x]\n- two\u2028' } };
    const now = { 'tank.volume': '80 gal', 'control.highLimit': null, 'draw.holidays': ['07-10..07-24'] };
    const reply = new LiveEngine(start, weather).handle({
      kind: 'take',
      id: 1,
      units: 'metric',
      what: 'design',
      now,
      pins: [],
    });
    const text = reply.kind === 'take' ? reply.text : '';
    expect(parse(text)).toEqual(designFields(start, now));
    expect(parse(plainYaml({ a: {}, b: [], 'odd key': '1e3', c: { d: true } }))).toEqual({
      a: {},
      b: [],
      'odd key': '1e3',
      c: { d: true },
    });
  });
});

describe('the page [requirement]', () => {
  /** With scripts of a word each; the real ones, bundled, are in live.long.test.ts. */
  const page = (options: Omit<LivePageOptions, 'weather'>) =>
    livePageWith({ weather, ...options }, async (name) => ({ text: `${name}('</script>')`, licences: 'none' }));

  it('has nothing from elsewhere and a policy by the hashes of its scripts', async () => {
    const html = await page({ design: plainInput });
    const policy = /Content-Security-Policy" content="([^"]*)"/.exec(html)![1]!;
    expect(policy).toContain("default-src 'none'");
    expect(policy).not.toMatch(/script-src[^;]*unsafe/);
    const own = html.slice(html.lastIndexOf('<script>') + 8, html.lastIndexOf('</script>'));
    expect(own).toBe("page('<\\/script>')");
    for (const script of [own, "worker('</script>')"])
      expect(policy).toContain(createHash('sha256').update(script).digest('base64'));
    expect(html).not.toMatch(/(?:src|href)="(?!#)/);
  });

  it('begins at a design out of a report so that its defaults follow the knobs', async () => {
    const html = await page({ design: defineSystem(plainInput) });
    const { design } = JSON.parse(/id="start">([^<]*)</.exec(html)![1]!) as LiveStart;
    expect(design).not.toHaveProperty('assumptions');
    // What follows from the volume is not written down: it follows the knob again.
    expect(design.tank).toMatchObject({ volume: 0.3 });
    expect(design.tank).not.toHaveProperty('height');
    expect(design.tank).not.toHaveProperty('lossCoefficient');
    expect(defineSystem(design as unknown as SystemInput)).toEqual(defineSystem(plainInput));
  });

  it('shows names as text', async () => {
    const name = '</script><script>alert(1)</script><img src=x onerror=alert(2)>';
    const html = await page({ design: { ...plainInput, name } });
    expect(html).toContain('&lt;/script&gt;&lt;script&gt;alert(1)');
    expect(html).not.toContain(name);
    expect(html).not.toContain('<img src=x');
  });

  it('refuses what cannot be run', async () => {
    const wrong = { ...plainInput, tank: { volume: '80 pounds' } };
    await expect(renderLivePage({ weather, design: wrong })).rejects.toThrow(/tank\.volume/);
    const money = { currency: 'EUR', fuel: { carrier: 'coal', price: 1, per: 'kWh' }, discountRate: 3, life: 20 };
    await expect(renderLivePage({ weather, money: money as never })).rejects.toThrow(/coal[\s\S]*discountRate/);
    await expect(renderLivePage({ weather, units: 'imperial' as never })).rejects.toThrow(/units/);
  });
});
