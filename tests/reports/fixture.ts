/**
 * Run results from plain formulas, for tests of the reports only. Everything here is invented: no physics, no balance that
 * means anything, only numbers of a plausible size.
 */
import { type DataTable, type HtmlOptions, type MoneyOptions, renderHtml, type Units } from '@noonloop/reports';
import {
  defineSystem,
  type LoopFluid,
  type NoticeCode,
  type PartBalance,
  type RunColumns,
  type RunResult,
  type SystemDesign,
} from '@noonloop/sim-core';
import { steamReach } from '@noonloop/sim-core/formulas';
import Papa from 'papaparse';
import { COLUMN_NAMES } from '../../packages/reports/src/columns.ts';

export interface FixtureOptions {
  readonly name?: string;
  readonly panels?: number;
  readonly mixingValve?: boolean;
  readonly heaterSetTemperature?: number;
  readonly latitude?: number;
  readonly fluid?: LoopFluid;
}

const KW = 3.6e6; // [J] one kilowatt for an hour

function design(options: FixtureOptions): SystemDesign {
  const { panels = 2 } = options;
  const checked = defineSystem({
    name: options.name ?? `Invented house, ${panels} panels`,
    array: { panels: 2, tilt: 40, azimuth: 180, collector: { area: 2.4, eta0: 0.75, a1: 3.6, a2: 0.012 } },
    loop: { fluid: options.fluid ?? 'propylene-glycol', fluidLimit: 140 },
    tank: { volume: 0.3, ratedTemperature: 85, reliefTemperature: 99 },
    draw: { dailyVolume: 0.24, tapTemperature: 45, mixingValve: options.mixingValve ?? true },
    heater: { setTemperature: options.heaterSetTemperature ?? 60 },
    control: { highLimit: 90 },
  });
  // Panels are set afterwards, so that no default that follows from them differs; and a short list of assumptions of our own,
  // so that these tests do not follow the defaults of the simulator.
  return {
    ...checked,
    array: { ...checked.array, panels },
    assumptions: [
      { path: 'tank.lossCoefficient', value: 1.8, unit: 'W/K', source: 'invented for this test' },
      { path: 'tank.roomTemperature', value: 18, unit: '°C', source: 'invented: a cellar' },
      { path: 'loop.pipeInnerDiameter', value: 0.0196, unit: 'm', source: 'common practice, no source' },
      { path: 'heater.burnerPower', value: 10_000, unit: 'W', source: 'invented for this test' },
      { path: 'draw.mixingValve', value: true, unit: '', source: 'judgement: most codes ask for one' },
    ],
  };
}

const part = (input: number, worstRelative: number): PartBalance => ({
  worstRelative,
  worstHour: 4000,
  residual: input * 1e-14,
  in: input,
  out: input * 0.999,
  stored: input * 0.001,
});

const made = new Map<string, RunColumns>();

/** One invented run, its columns computed once for all whose options do not change them; they are a copy of its own, which a test may change. */
export function fixture(options: FixtureOptions = {}): RunResult {
  const system = design(options);
  const south = (options.latitude ?? 36) < 0;
  const key = JSON.stringify([system.array.panels, system.draw.mixingValve, system.loop.glycolMassFraction, south]);
  const known = made.get(key) ?? inventedColumns(system, south);
  made.set(key, known);
  const columns = Object.entries(known).map(([name, column]) => [name, column.slice()]);
  return invented(system, options.latitude ?? 36, Object.fromEntries(columns) as unknown as RunColumns);
}

/** Sunnier in summer, every third day dull, hotter with more panels. */
function inventedColumns(system: SystemDesign, south: boolean): RunColumns {
  const { panels } = system.array;
  const { mixingValve } = system.draw;
  const area = panels * system.array.collector.area;
  const c = Object.fromEntries(COLUMN_NAMES.map((name) => [name, new Float64Array(8760)])) as Record<
    keyof RunColumns,
    Float64Array
  >;
  let top = 30;
  for (let h = 0; h < 8760; h++) {
    const day = Math.floor(h / 24);
    const clock = h % 24;
    const season = Math.cos((2 * Math.PI * (day - 196)) / 365) * (south ? -1 : 1); // 1 in mid-July
    const clear = 0.45 + 0.4 * Math.sin(day * 2.3) + 0.15 * Math.sin(day * 0.7);
    const daylight = Math.sin((Math.PI * (clock + 0.5 - (6.5 - season))) / (11 + 2 * season));
    const sun = Math.max(0, daylight) * (750 + 200 * season) * Math.max(0.08, clear);
    const air = 14 + 11 * season + 5 * Math.sin((2 * Math.PI * (clock - 9)) / 24) - 3 * Math.sin(day * 0.9);
    const use = (0.24 * [0, 0, 0, 0, 0, 1, 5, 7, 5, 3, 3, 3, 3, 2, 2, 2, 3, 4, 6, 6, 4, 3, 2, 1][clock]!) / 65;
    const mains = 14 + 6 * season;
    const stopped = top > 88;
    const runs = sun > 180 && !stopped ? Math.min(1, (sun - 150) / 200) : 0;
    const gain = runs * Math.max(0, 0.55 * sun - 3.2 * (top - air)) * area * 3600; // [J]
    const hot = use * Math.min(1, (45 - mains) / Math.max(5, Math.max(top, 60) - mains));
    const delivered = hot * 4.16e6 * Math.max(0, top - mains);
    const loss = 1.8 * 3600 * (top - 18);
    top += (gain * 0.95 - delivered - loss) / 1.25e6;
    const needed = use * 4.16e6 * (45 - mains);
    const heat = Math.max(0, needed - delivered) + 0.08 * KW;
    const absorber = runs > 0 ? top + 8 + sun / 80 : air + sun * 0.14;
    c.irradiance[h] = sun;
    c.pvIrradiance[h] = sun;
    c.ambientTemperature[h] = air;
    c.absorberTemperature[h] = absorber + (stopped && sun > 200 ? 25 : 0);
    c.absorberMinimumTemperature[h] = Math.min(air - 3, absorber);
    c.pipeMinimumTemperature[h] = Math.max(air - 1, -5);
    c.freezingPoint[h] = -21.4;
    c.glycolMassFraction[h] = system.loop.glycolMassFraction;
    c.loopPressure[h] = 2.2e5;
    c.loopMaximumPressure[h] = 2.4e5;
    c.collectorOutletTemperature[h] = absorber - 3;
    c.tankTopTemperature[h] = top;
    c.tankMaximumTemperature[h] = top + 0.6;
    c.tankBottomTemperature[h] = mains + 0.55 * (top - mains);
    c.tankMeanTemperature[h] = mains + 0.8 * (top - mains);
    c.loopFlow[h] = runs * 6e-5;
    c.pumpRunning[h] = runs;
    c.pumpPvEnergy[h] = runs * 20 * 3600;
    c.noFlowInSun[h] = sun > 0 ? 1 - runs : 0;
    c.highLimit[h] = stopped ? 1 : 0;
    c.stagnation[h] = stopped && c.absorberTemperature[h]! > 120 ? 0.75 : 0;
    c.collectorHeat[h] = gain;
    c.pipeLoss[h] = gain * 0.05;
    c.coilHeat[h] = gain * 0.95;
    c.tankLoss[h] = loss;
    c.solarHeat[h] = delivered;
    c.reliefVolume[h] = top > 93 ? 0.001 : 0;
    c.reliefHeat[h] = c.reliefVolume[h]! * 4.16e6 * 80;
    c.mainsTemperature[h] = mains;
    c.tapVolume[h] = use;
    c.hotVolume[h] = hot;
    c.tapHeatAsked[h] = needed;
    c.tapHeat[h] = needed * (day % 50 === 0 && clock === 19 ? 0.95 : 1);
    c.tapTemperature[h] = mixingValve ? 45 : Math.max(60, top);
    c.heaterHeat[h] = heat;
    c.heaterFuel[h] = heat / 0.78;
    c.heaterLoss[h] = 0.08 * KW;
    c.baselineHeat[h] = needed + 0.08 * KW;
    c.baselineFuel[h] = (needed + 0.08 * KW) / 0.78;
  }
  return c;
}

/** What else a run has. */
function invented(system: SystemDesign, latitude: number, columns: RunColumns): RunResult {
  const run: Partial<RunResult> = {
    design: system,
    site: { name: 'Invented Hill', latitude, longitude: -80, elevation: 270, utcOffset: -5 },
    weatherSource: 'invented.csv',
    weatherAssumptions: [{ code: 'note', text: 'A weather year from formulas.' }],
    assumptions: [],
    columns,
    tankNodes: new Float64Array(0),
    stepsPerHour: 20,
    stagnationLimit: 120,
    sunThreshold: 10,
    freezingPoint: -21.4,
    loop: {
      airPressure: 101_325,
      steam: steamReach(system, 101_325),
      longestSteam: 0,
      lowestPressure: 2.1e5,
      highestPressure: 2.6e5,
      lost: 0,
      relieved: 0,
      madeUp: 0,
      circulationFails: null,
      protectionEnds: null,
      coldestAbsorber: -8,
      coldestPipe: -5,
      freezeMargin: 13.4,
      freezeMarginHour: 200,
      absorberFreezingHours: 0,
      pipeFreezingHours: 0,
      deepestFreezing: 0,
      burstPoint: -40,
      burstHours: 0,
    },
    balance: {
      collector: part(8e9, 2e-13),
      pipes: part(7e9, 3e-14),
      tank: part(7e9, 4e-13),
      heater: part(9e9, 5e-14),
      baseline: part(1.2e10, 6e-14),
      whole: part(2e10, 1e-13),
    },
    notices: [{ code: 'wind-held', facts: { highest: { value: 20, unit: 'm/s' } }, hours: 3 }],
  };
  // What reports do not read is left out.
  return run as RunResult;
}

/** Two panels, and three without a mixing valve, of which several files draw the same pages: nothing may change these. */
export const two = fixture({ panels: 2 });
export const three = fixture({ panels: 3, mixingValve: false });

/** Invented layers, 10 to the tank, so that every chart has something to show. */
export function withLayers(run: RunResult): RunResult {
  const tankNodes = new Float64Array(87_600);
  for (let hour = 0; hour < 8760; hour++)
    for (let node = 0; node < 10; node++) {
      const bottom = run.columns.tankBottomTemperature[hour]!;
      tankNodes[hour * 10 + node] = bottom + (node / 9) * (run.columns.tankTopTemperature[hour]! - bottom);
    }
  return { ...run, tankNodes };
}

const pages = new WeakMap<RunResult, { runs: readonly RunResult[]; options: string; html: Promise<string> }[]>();

/** `renderHtml`, whose charts take half a second, once for the same runs with the same options: runs that are changed in between want `renderHtml` itself. */
export function pageOf(given: RunResult | readonly RunResult[], options: HtmlOptions = {}): Promise<string> {
  const runs = [given].flat() as readonly RunResult[];
  const key = JSON.stringify({ units: 'metric', ...options });
  const made = pages.get(runs[0]!) ?? [];
  pages.set(runs[0]!, made);
  const same = made.find(
    (one) => one.options === key && one.runs.length === runs.length && one.runs.every((run, at) => run === runs[at]),
  );
  if (same !== undefined) return same.html;
  const html = renderHtml(runs, options);
  made.push({ runs, options: key, html });
  return html;
}

/** Units of the United States, in a text without markup. */
export const US_UNITS = /°F|degF|kBtu|\bBtu|\btherm\b|\bgal\b|ft²|\bft\b|\bpsi\b/;

/** Prices, invented. */
export const PRICES: MoneyOptions = {
  currency: 'USD',
  fuel: { carrier: 'propane', price: 3.1, per: 'gal' },
  investment: 1200,
  discountRate: 0.03,
  life: 15,
};
export const PRICES_OF_EACH = { ...PRICES, designs: [{ investment: 1200 }, { investment: 1900 }] };

/** The page of the two runs with every number on it, and of the charts those of months and money. */
export const pricedPage = (units: Units): Promise<string> =>
  pageOf([two, three], { units, money: PRICES_OF_EACH, losses: true, sections: WORDS_AND_NUMBERS });
const WORDS_AND_NUMBERS = ['cautions', 'months', 'money', 'numbers', 'inputs', 'definitions', 'balance'] as const;

/** What someone may have written who means harm, or knows no better. */
export const HOSTILE = '=cmd|\' /C calc\'!A0 <script>alert(1)</script> | *b* [x](http://y) \u202e\u001b[31m "q"\nline';
export const hostile = ((): RunResult => {
  const run = fixture({ name: 'x', panels: 4 });
  return {
    ...run,
    design: {
      ...run.design,
      name: HOSTILE,
      assumptions: [{ path: HOSTILE, value: HOSTILE, unit: HOSTILE, source: HOSTILE }],
    },
    site: { ...run.site, name: HOSTILE },
    weatherSource: HOSTILE,
    weatherAssumptions: [{ code: 'note', text: HOSTILE }],
    notices: [{ code: HOSTILE as NoticeCode, facts: {}, hours: 1 }],
  };
})();
export const HOSTILE_MONEY: MoneyOptions = {
  currency: 'EUR',
  fuel: { carrier: 'natural-gas', price: 1, per: 'therm', co2_kg_per_kWh: 0.2, co2Source: HOSTILE },
  investment: 1,
  discountRate: 0,
  life: 5,
};

/** Three designs, one of them hostile, for all charts. */
export const layered = [two, three, hostile].map(withLayers);

/** Their page with all that can be on one, the one that tests look at whole; in US units, for metric ones are everywhere else. */
export const wholePage = (): Promise<string> => pageOf(layered, { units: 'us', money: HOSTILE_MONEY, losses: true });

/** Columns of a table of hours that the lines for a spreadsheet, their heads first, lack or have otherwise than to their digits, in three hours. */
export function apart(lines: readonly string[], data: DataTable): string[] {
  const looked = [0, 4000, 8759];
  const text = [lines[0], ...looked.map((hour) => lines[1 + hour])].join('\r\n');
  const table = Papa.parse<Record<string, string>>(text, { header: true }).data;
  return data.columns.slice(1).flatMap(({ name, values }) =>
    looked.flatMap((hour, at) => {
      const shown = table[at]![name];
      const digits = shown?.split('.')[1]?.length ?? 0;
      const isShown = Math.abs(Number(shown) - (values[hour] as number)) <= 0.5001 * 10 ** -digits;
      return shown !== undefined && isShown ? [] : [`${name}, hour ${hour}: ${shown} for ${values[hour]}`];
    }),
  );
}
