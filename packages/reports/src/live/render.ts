import { DesignError, defineSystem, type SystemDesign, type SystemInput } from '@noonloop/sim-core';
import type { WeatherYear } from '@noonloop/weather-io';
import { siteWords } from '../answer/system.ts';
import { ReportError } from '../errors.ts';
import { plainText } from '../escape.ts';
import { checkPrices } from '../money/check.ts';
import type { MoneySettings } from '../money/index.ts';
import { displayUnit, type Units } from '../units.ts';
import type { LiveScript } from './bundles.ts';
import { insideScript, livePage } from './html.ts';
import { packBytes } from './pack.ts';
import type { LiveExercise, LivePrices, LiveStart, Plain } from './types.ts';
import { packWeather } from './weather-pack.ts';

/** What {@link renderLivePage} makes a page of. */
export interface LivePageOptions {
  /** Design from which the knobs begin, as somebody wrote it or as it was defined. Default: two common panels and a tank of 300 L, for four people; judgement. */
  readonly design?: SystemInput | SystemDesign;
  /** The year in which every design of the page runs. */
  readonly weather: WeatherYear;
  /** Prices from which the page begins; left out: it has no money in it until a price is typed. */
  readonly money?: Omit<MoneySettings, 'designs'>;
  /** Units that the page begins with. Default `metric`. */
  readonly units?: Units;
  /** Over the page. Default: the design's name. */
  readonly title?: string;
  /** Questions for a class, with links that set the knobs; the week that plays stands first then. Default: none. */
  readonly exercises?: readonly LiveExercise[];
}

/** Where the knobs stand without a design: a house of four with two common flat panels. Judgement throughout; every knob shows it. */
const FIRST_DESIGN: SystemInput = {
  name: 'first design',
  array: { panels: 2, tilt: 40, azimuth: 180, collector: { area: 2, eta0: 0.75, a1: 3.8, a2: 0.012 } },
  tank: { volume: '300 L' },
  draw: { people: 4 },
};

/** Plain data of what may hold typed arrays; anything else is no design that a file could have. */
function plainDesign(design: SystemInput | SystemDesign): LiveStart['design'] {
  const text = JSON.stringify(design, (_, value: unknown) =>
    value instanceof Float64Array ? Array.from(value) : value,
  );
  return JSON.parse(text) as LiveStart['design'];
}

type Fields = { [key: string]: Plain };
const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

function takeAway(fields: Fields, path: string): void {
  const names = path.split('.');
  const last = names.pop()!;
  const at = names.reduce<unknown>((inner, name) => (isFields(inner) ? inner[name] : undefined), fields);
  if (isFields(at)) delete at[last];
}

/** Rounds in which what only a written-out design has is taken away; two were enough for every kind of heater and draw. */
const ROUNDS = 4;

/**
 * A design that was written out, as somebody would write it: without what follows by default or from other fields, so that it
 * follows the knobs again. As it stands where that would make another system of it.
 */
function asWritten(whole: LiveStart['design']): LiveStart['design'] {
  const { assumptions, baseline: _, ...rest } = structuredClone(whole) as Fields;
  if (!Array.isArray(assumptions)) return whole;
  for (const { path } of assumptions as unknown as readonly { readonly path: string }[]) takeAway(rest, path);
  const sorted = (_name: string, value: unknown): unknown =>
    isFields(value) ? Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1))) : value;
  const values = ({ assumptions: _unused, ...design }: SystemDesign): string => JSON.stringify(design, sorted);
  const asked = values(defineSystem(whole as unknown as SystemInput));
  for (let round = 0; round < ROUNDS; round++) {
    try {
      return values(defineSystem(rest as unknown as SystemInput)) === asked ? rest : whole;
    } catch (error) {
      if (!(error instanceof DesignError)) throw error;
      for (const { path } of error.issues) takeAway(rest, path);
    }
  }
  return whole;
}

async function hash(text: string): Promise<string> {
  const { crypto } = globalThis as unknown as {
    crypto: { subtle: { digest(name: string, of: Uint8Array): Promise<ArrayBuffer> } };
  };
  const bytes = new Uint8Array(await crypto.subtle.digest('SHA-256', new TextEncoder().encode(text)));
  return btoa(String.fromCharCode(...bytes));
}

/**
 * A page to turn knobs on, as one HTML file that needs nothing else: the engine, a year of weather and the words of reports are in
 * it. Every turn runs the whole year, hour by hour, in the reader's browser. It works from a disk, without a network.
 *
 * @param options - the weather, and where the knobs begin
 * @throws DesignError where the design cannot be simulated, {@link ReportError} where prices or units are wrong.
 */
export function renderLivePage(options: LivePageOptions): Promise<string> {
  return livePageWith(options, async (name) => {
    // Loaded when it is wanted: it is more than all the rest.
    const { liveScript } = await import('./bundles.ts');
    return liveScript(name);
  });
}

/** {@link renderLivePage} with scripts from elsewhere. @internal */
export async function livePageWith(
  { design = FIRST_DESIGN, weather, money, units = 'metric', title, exercises = [] }: LivePageOptions,
  liveScript: (name: 'worker' | 'page') => Promise<LiveScript>,
): Promise<string> {
  displayUnit('energy', units); // refuses what is no system of units
  const defined = defineSystem(design);
  if (money !== undefined) {
    if ('designs' in money)
      throw new ReportError(
        'money.designs',
        'a list',
        'prices of one design',
        'The page has a knob for what each panel costs.',
      );
    checkPrices(money);
  }
  const start: LiveStart = {
    design: asWritten(plainDesign(design)),
    prices: money === undefined ? null : (money as LivePrices),
  };
  const [engine, script, packed] = await Promise.all([liveScript('worker'), liveScript('page'), packWeather(weather)]);
  const own = insideScript(script.text);
  const place = (await hash(JSON.stringify(start) + packed)).replace(/[^A-Za-z0-9]/g, '').slice(0, 16);
  const site = siteWords(weather.site);
  return livePage({
    title: plainText(title ?? defined.name),
    note: `Turn a knob and the year is run again, hour by hour, in this page. Weather: ${site} (${plainText(weather.source)}). A calculation, not a design check: see the cautions below.`,
    hashes: await Promise.all([own, engine.text].map(async (text) => `'sha256-${await hash(text)}'`)),
    exercises: exercises.length > 0,
    start: JSON.stringify({ ...start, place, units, exercises }).replaceAll('<', '\\u003c'),
    weather: packed,
    engine: await packBytes(Uint8Array.from(new TextEncoder().encode(engine.text))),
    licences: insideScript(engine.licences),
    script: own,
  });
}
