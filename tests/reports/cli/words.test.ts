// The words answer what the library answers, to the last digit [requirement]; all settings are the drafts, whose numbers are invented.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import * as core from '@noonloop/sim-core';
import { synthesizeYear, vetWeather, type WeatherYear } from '@noonloop/weather-io';
import { beforeAll, describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { DRAFTS, TABLES } from '../../../packages/reports/src/cli/drafts/index.ts';
import { worstTypicalBest } from '../../../packages/reports/src/cli/words/years.ts';
import { inventedValley, yearOf } from '../../examples.ts';
import { command, example, ownFolder } from './command.ts';

const valley = example('weather/invented-valley.csv');
const folder = ownFolder();
const at = (name: string) => join(folder, name);
const plain = (value: unknown): unknown =>
  JSON.parse(
    JSON.stringify(value, (_, inner: unknown) => (ArrayBuffer.isView(inner) ? Array.from(inner as never) : inner)),
  );
const input = parse(DRAFTS.design[0]) as core.SystemInput;
const design = core.defineSystem(input);
let weather: WeatherYear;

beforeAll(async () => {
  for (const [kind, [text]] of Object.entries(DRAFTS)) writeFileSync(at(`${kind}.yaml`), text);
  writeFileSync(at('house.yaml'), DRAFTS.design[0]);
  writeFileSync(at('readings.csv'), TABLES.readings);
  writeFileSync(at('meter.csv'), TABLES['meter-table']);
  const made = await command(['make-weather', at('months.yaml'), '--out', at('town.csv')]);
  expect([made.exit, made.out]).toEqual([0, '']);
  weather = vetWeather(synthesizeYear(parse(DRAFTS.months[0]) as never));
});

/** What a word says as data. */
async function answer(...words: readonly string[]): Promise<Record<string, unknown>> {
  const { exit, out, err } = await command([...words, '--json', '--quiet']);
  expect([exit, err]).toEqual([0, '']);
  return JSON.parse(out) as Record<string, unknown>;
}
const house = () => [at('house.yaml'), '--weather', at('town.csv')];

describe('weather [requirement]', () => {
  it('make-weather: months in a file and on the line give the same year, and another by another seed', async () => {
    const { site, monthly } = parse(DRAFTS.months[0]);
    const file = await command(['make-weather', at('months.yaml'), '--seed', '2']);
    expect(file.out).not.toBe(readFileSync(at('town.csv'), 'utf8'));
    const line = await command([
      ...['make-weather', '--name', site.name, '--latitude', `${site.latitude}`, '--longitude', `${site.longitude}`],
      ...['--elevation', `${site.elevation}`, '--utc-offset', `${site.utcOffset}`],
      ...['--light', monthly.dailyGhi_kWh_per_m2.join(','), '--air', monthly.dryBulb.join(',')],
      ...['--range', monthly.dailyRange.join(' '), '--seed', '2'],
    ]);
    expect(line.exit).toBe(0);
    expect(line.out).toBe(file.out);
    expect((await command(['make-weather', '--latitude', '36', '--light', '1,2', '--air', '1'])).err).toMatch(
      /--light: found 2 numbers, expected twelve/,
    );
  });

  it('years: the worst and the best of two, as they are ranked', async () => {
    const found = await answer('years', at('house.yaml'), at('town.csv'), valley);
    const runs = [weather, await inventedValley()].map((year) => core.summarizePeriods(yearOf(design, year)).year);
    const [low, high] = runs.map(({ deliveredEnergy }) => deliveredEnergy).sort((a, b) => a - b);
    const ofWord = (word: string) => (found[word] as { summary: { deliveredEnergy: number } }).summary.deliveredEnergy;
    expect(['worst', 'typical', 'best'].map(ofWord)).toEqual([low, low, high]);
    expect((found.years as { weather: string }[]).map((year) => year.weather)).toEqual([
      'town.csv, 2023',
      'invented-valley.csv, 2023',
    ]);
  });

  it('years: the typical one is the middle one of three, the lower middle of four', () => {
    const outcomes = [5, 2, 9, 3].map((deliveredEnergy) => ({ weather: '', summary: { deliveredEnergy } as never }));
    const heats = (count: number) =>
      worstTypicalBest(outcomes.slice(0, count)).map(({ summary }) => summary.deliveredEnergy);
    expect([heats(3), heats(4)]).toEqual([
      [2, 5, 9],
      [2, 3, 9],
    ]);
  });
});

describe('before buying [requirement]', () => {
  it('rate and yard-test', async () => {
    expect(await answer('rate', at('survey.yaml'))).toEqual(plain(core.rateFromSurvey(parse(DRAFTS.survey[0]))));
    expect(await answer('yard-test', at('yard-test.yaml'))).toEqual(
      plain(core.rateFromYardTest(parse(DRAFTS['yard-test'][0]))),
    );
    const low = await command(['rate', at('survey.yaml'), '--format', 'yaml', '--case', 'low']);
    expect(parse(low.out).collector.eta0).toBeCloseTo(core.rateFromSurvey(parse(DRAFTS.survey[0])).low.eta0, 4);
  });

  it('collectors', async () => {
    const { years, candidates } = parse(DRAFTS.collectors[0]);
    const found = (await answer('collectors', ...house(), '--candidates', at('collectors.yaml'))) as unknown as Omit<
      core.CollectorComparison,
      'notes'
    > & { notes: unknown };
    // The plates as the library answers of them alone; the tubes, whose year takes twice as long, by what the file says of them.
    const alone = core.compareCollectors(input, weather, { years, candidates: candidates.slice(0, 1) });
    const { run: _, ...plates } = alone.rows[0]!;
    const [first, tubes] = found.rows;
    expect(found.rows).toHaveLength(2);
    expect(first).toEqual(plain(plates));
    expect(tubes).toMatchObject({ name: 'new tubes', panels: 1, price: 1500, roofArea: 3.9, weight: 78 });
    expect(tubes!.moneyPerHeat).toBeCloseTo(1500 / (15 * tubes!.heat), 15);
    const best = (by: 'heat' | 'heatPerRoof') => [...found.rows].sort((a, b) => b[by] - a[by]).map(({ name }) => name);
    expect([found.ranking.heat, found.ranking.heatPerRoof]).toEqual([best('heat'), best('heatPerRoof')]);
    expect(found.notes).toMatchObject([{ code: 'hot-when-dry' }, ...(plain(alone.notes) as object[])]);
  });
});

describe('sizes [requirement]', () => {
  it('each part from the ones before, as by script; the design written runs with them', async () => {
    const limits = parse(DRAFTS.sizing[0]);
    const panels = core.sizeArray(design, weather, limits.panels);
    const two = core.defineSystem({ ...input, array: { ...input.array, panels: panels.panels } });
    const tank = core.sizeTank(two, { dailyGain: panels.bestDay, ...limits.tank });
    const found = await answer(
      ...[
        'size',
        ...house(),
        '--limits',
        at('sizing.yaml'),
        '--parts',
        'tank,panels',
        '--design-out',
        at('sized.yaml'),
      ],
    );
    expect(found).toEqual(plain({ panels, tank }));
    const text = readFileSync(at('sized.yaml'), 'utf8');
    expect(text).toContain('# from the horizontal [degrees]'); // comments stay
    const sized = core.defineSystem(parse(text) as core.SystemInput);
    expect([sized.array.panels, sized.tank.volume]).toEqual([panels.panels, tank.stockVolume]);
    const all = await answer('size', ...house());
    expect(Object.keys(all)).toEqual(['panels', 'tank', 'glycol', 'pipe', 'coil', 'pump', 'vessel']);
  });

  it('a fault of the limits stands at its place', async () => {
    writeFileSync(at('bad-limits.yaml'), 'tank:\n  daysOfDraw: 99\n  maximumTemprature: 80\n');
    const { exit, err } = await command(['size', ...house(), '--limits', at('bad-limits.yaml')]);
    expect(exit).toBe(1);
    expect(err).toMatch(/line 3, tank\.maximumTemprature: .*Did you mean maximumTemperature\?/);
    writeFileSync(at('bad-limits.yaml'), 'tank:\n  daysOfDraw: 99\n');
    expect((await command(['size', ...house(), '--limits', at('bad-limits.yaml')])).err).toMatch(
      /line 2, daysOfDraw: found 99/,
    );
    expect((await command(['size', ...house(), '--parts', 'roof'])).err).toMatch(
      /--parts: found "roof", expected some/,
    );
  });
});

describe('protection [requirement]', () => {
  it('freezing, thinning, ageing, refractometer', async () => {
    const share = core.glycolForSite(design, weather, { margin: '9 degF' });
    const freezing = await answer('freezing', ...house(), '--margin', '9 degF');
    expect(freezing.share).toEqual(plain(share));
    expect(freezing.design).toEqual(plain(core.freezeAtSite(design, weather)));
    const thin = core.thinning(design, {
      leak: '0.05 L/day',
      coldest: core.glycolForSite(design, weather).coldest,
      filledOn: 273, // 1 October of a year of 365 days
    });
    const thinned = await answer('thinning', ...house(), '--leak', '0.05 L/day', '--from', '2025-10-01');
    expect(thinned).toMatchObject(plain(thin) as object);
    const day = new Date(Date.UTC(2025, 9, 1) + Math.floor(thin.daysToFreezing) * 86_400_000);
    expect(thinned.dates).toMatchObject({ freezing: day.toISOString().slice(0, 10) });
    expect(await answer('ageing', ...house())).toEqual(plain(core.glycolAgeing(yearOf(design, weather))));
    const reading = core.glycolFromReading({ scale: 'freezing-point', value: '-4 degF' });
    expect(
      await answer('refractometer', '--scale', 'freezing-point', '--value', '-4 degF', '--coldest', '5 degF'),
    ).toMatchObject(plain({ ...reading, spare: -15 - reading.worstFreezingPoint }) as object);
    expect((await command(['refractometer', '--scale', 'brix', '--value', '99'])).err).toMatch(/^noonloop: --value: /);
  });
});

describe('a system at work [requirement]', () => {
  it('upkeep and meter', async () => {
    const calendar = core.maintenanceCalendar(yearOf(design, weather), {
      from: '2025-03-01',
      waterHardness: 2.8,
      fluidAge: 4,
    });
    const words = ['--from', '2025-03-01', '--hardness', '2.8', '--fluid-age', '4'];
    expect(await answer('upkeep', ...house(), ...words)).toEqual(plain(calendar));
    const meter = await answer('meter', at('meter.yaml'));
    const days = TABLES['meter-table'].trim().split('\n');
    const [first, last] = [days[2]!, days.at(-1)!].map((line) => Number(line.split(',')[1]));
    expect(meter.fileVolume).toBeCloseTo((last! - first!) / 1000, 12); // a meter's fall is the water [definition]
    // What the year's run draws of it: cli.test.ts, the same record.
    expect((await answer('meter', example('settings/own-meter.yaml'))).yearVolume).toBeCloseTo(83.954, 6);
  });
});

describe('designs [requirement]', () => {
  it('a report in JSON and a design with every default run again with the same bits, by file', async () => {
    const first = await command(['run', ...house(), '--json', '--quiet', '--out', at('first.json')]);
    expect(first.exit).toBe(0);
    await command(['fill-in', at('house.yaml'), '--out', at('whole.yaml')]);
    await command(['fill-in', at('house.yaml'), '--out', at('whole.json')]);
    const rest = JSON.parse(readFileSync(at('first.json'), 'utf8'));
    const [run] = rest.runs as { year: { deliveredEnergy_J: number }; design: object }[];
    expect(run!.year.deliveredEnergy_J).toBe(core.summarizePeriods(yearOf(design, weather)).year.deliveredEnergy);
    // Months and the year, balances and cautions: hours that differ in a bit would not leave them alone.
    const again = await command(['run', at('first.json'), '--weather', at('town.csv'), '--json', '--quiet']);
    expect(JSON.parse(again.out)).toEqual(rest);
    // What is the same design runs with the same bits.
    expect(core.defineSystem(parse(readFileSync(at('whole.yaml'), 'utf8')) as core.SystemInput)).toEqual(design);
    const [yaml, json] = ['whole.yaml', 'whole.json'].map((name) => parse(readFileSync(at(name), 'utf8')));
    expect(json).toEqual(yaml);
    expect((await command(['fill-in', at('whole.json')])).exit).toBe(0);
    writeFileSync(
      at('both.json'),
      JSON.stringify({ ...rest, runs: [{ design: run!.design }, { design: run!.design }] }),
    );
    expect((await command(['run', at('both.json'), '--weather', at('town.csv')])).err).toMatch(
      /this report holds 2 designs\. Say which: .*#1 is the first/,
    );
    expect((await command(['fill-in', `${at('both.json')}#2`, '--format', 'json'])).exit).toBe(0);
  });

  it('change: writes another design, comments kept, faults by their place', async () => {
    const { out } = await command(['change', at('house.yaml'), 'array.panels=3', 'draw.people=', 'draw.profile=M']);
    expect(parse(out)).toMatchObject({ array: { panels: 3, tilt: 40 }, draw: { profile: 'M' } });
    expect(out).toContain('# clockwise from north');
    expect((await command(['change', at('house.yaml'), 'array.tlit=3'])).err).toMatch(
      /array\.tlit: .*Did you mean tilt\?/,
    );
    expect((await command(['change', at('house.yaml'), '__proto__.tilt=3'])).exit).toBe(2);
    expect(({} as { tilt?: number }).tilt).toBeUndefined();
  });

  it('picture: one chart', async () => {
    const { out } = await command(['picture', 'tank-year', ...house()]);
    expect(out).toMatch(/^<svg .*<\/svg>\n$/s);
    expect((await command(['picture', 'tank-yaer', ...house()])).err).toMatch(/Did you mean tank-year\?/);
  });
});
