import {
  compareRuns,
  compareSummaries,
  describeComparison,
  type MoneyOptions,
  type RankKey,
  rankDesigns,
  renderHtml,
  renderJson,
  renderMarkdown,
  renderText,
  summarize,
} from '@noonloop/reports';
import { describe, expect, it } from 'vitest';
import { designChanges } from '../../packages/reports/src/design-changes.ts';
import { fixture } from './fixture.ts';

const two = fixture({ panels: 2 });
const three = fixture({ panels: 3 });
const four = fixture({ panels: 4 });
const row = (comparison: ReturnType<typeof compareRuns>, key: string) =>
  comparison.rows.find((one) => one.key === key)!;

describe('compareRuns', () => {
  it('takes differences against the first or the previous design [definition]', () => {
    const [a, b, c] = [two, three, four].map((run) => summarize(run).year.deliveredEnergy);
    expect(row(compareRuns([two, three, four]), 'deliveredEnergy').differences).toEqual([null, b! - a!, c! - a!]);
    expect(row(compareRuns([two, three, four], 'previous'), 'deliveredEnergy').differences).toEqual([
      null,
      b! - a!,
      c! - b!,
    ]);
  });

  it('has no percentage of a temperature nor of nothing [definition]', () => {
    const comparison = compareRuns([two, four]);
    expect(row(comparison, 'peakTankTemperature').relativeDifferences).toEqual([null, null]);
    expect(row(comparison, 'stagnationHours').values[0]).toBe(0);
    expect(row(comparison, 'stagnationHours').relativeDifferences).toEqual([null, null]);
  });

  it('refuses one design alone [definition]', () => {
    expect(() => compareSummaries([summarize(two)])).toThrow(/found 1, expected two or more/);
  });
});

describe('describeComparison', () => {
  const sentencesOf = (runs: Parameters<typeof compareRuns>[0], units: 'metric' | 'us' = 'metric'): string =>
    describeComparison(compareRuns(runs), units).join(' ');

  it('credits the third panel with the difference of the numbers shown [definition]', () => {
    const [a, b] = [two, three].map((run) => summarize(run).year);
    const kWh = (energy: number): number => Math.round(energy / 3.6e6);
    const text = sentencesOf([two, three]);
    expect(text).toContain(`The third panel adds ${kWh(b!.deliveredEnergy) - kWh(a!.deliveredEnergy)} kWh a year`);
    const share = Math.round((100 * (b!.deliveredEnergy - a!.deliveredEnergy)) / (a!.deliveredEnergy / 2));
    expect(text).toContain(`the added one gives ${share} % of that`);
  });

  it('says less, and names the design, where a panel is taken away [definition]', () => {
    expect(sentencesOf([three, two])).toMatch(
      /“Invented house, 2 panels” \(array\.panels 3 → 2\) delivers [\d,]+ kWh a year \([\d.]+ %\) less/,
    );
  });

  it('names what changed with its unit when it is not a panel [definition]', () => {
    const larger = { ...two, design: { ...two.design, name: 'Large tank', tank: { ...two.design.tank, volume: 0.5 } } };
    expect(sentencesOf([two, larger])).toContain('“Large tank” (tank.volume 300 L → 500 L) delivers the same energy');
    expect(sentencesOf([two, larger], 'us')).toContain('tank.volume 79.25 gal → 132.1 gal');
  });

  it('sets a panel against the one before it, and says the stagnation with it [definition]', () => {
    const stagnant = fixture({ panels: 4 });
    stagnant.columns.stagnation.fill(0);
    stagnant.columns.stagnation.fill(1, 4000, 4061);
    const [a, b, c] = [two, three, stagnant].map((run) => summarize(run).year.deliveredEnergy);
    const percent = Math.round(100 * (1 - (c! - b!) / (b! - a!)));
    expect(percent).toBeGreaterThan(0);
    const text = describeComparison(compareRuns([two, three, stagnant], 'previous')).join(' ');
    expect(text).toContain(`${percent} % less than the third did, with about 61 h more stagnation`);
    expect(text).not.toContain('than the second did'); // no design with one panel to compare with
    const larger = { ...four.design, tank: { ...four.design.tank, volume: 0.5 } };
    expect(sentencesOf([two, three, { ...four, design: larger }])).not.toContain('than the third did');
  });

  it('says when the weather differs too [definition]', () => {
    expect(sentencesOf([two, { ...three, weatherSource: 'other.csv' }])).toContain('different weather');
  });
});

describe('designChanges', () => {
  it('leaves aside a default of both that follows from what changed, not one that was given [definition]', () => {
    const path = 'tank.lossCoefficient'; // an assumption of the fixture
    const lossier = { ...two.design.tank, lossCoefficient: two.design.tank.lossCoefficient + 1 };
    expect(designChanges(two.design, { ...two.design, tank: lossier })).toEqual([]);
    const given = two.design.assumptions.filter((one) => one.path !== path);
    const changes = designChanges(two.design, { ...two.design, tank: lossier, assumptions: given });
    expect(changes.map((change) => change.path)).toEqual([path]);
  });

  it('lists fields by path and leaves name and assumptions aside [definition]', () => {
    expect(designChanges(two.design, { ...three.design, assumptions: [] })).toEqual([
      { path: 'array.panels', from: 2, to: 3 },
    ]);
  });
});

describe('rankDesigns', () => {
  const prices = (investment: number): MoneyOptions => ({
    currency: 'EUR',
    fuel: { carrier: 'natural-gas', price: 0.1, per: 'kWh' },
    investment,
    discountRate: 0.03,
    life: 20,
  });
  const runs = [three, four, two];

  it('ranks by what the reader chooses, the better end first [definition]', () => {
    expect(rankDesigns(runs, 'deliveredEnergy')).toMatchObject({ order: [1, 0, 2], first: 'highest' });
    expect(rankDesigns(runs, 'peakTankTemperature')).toMatchObject({ order: [2, 0, 1], first: 'lowest' });
    expect(rankDesigns(runs, 'netPresentValue', [prices(9000), prices(1000), prices(2000)]).order).toEqual([1, 2, 0]);
    expect(rankDesigns(runs, 'simplePayback', [prices(9000), prices(1000), prices(2000)]).first).toBe('lowest');
  });

  it('keeps the order of equals and puts those without a value last [definition]', () => {
    expect(rankDesigns([two, two, two], 'deliveredEnergy').order).toEqual([0, 1, 2]);
    expect(rankDesigns(runs, 'discountedPayback', [prices(1e7), prices(1e7), prices(500)]).order).toEqual([2, 0, 1]);
  });

  it('refuses a number that is not known, and money without prices [definition]', () => {
    expect(() => rankDesigns(runs, 'beauty' as RankKey)).toThrow(/rankBy: found "beauty"/);
    expect(() => rankDesigns(runs, 'netPresentValue')).toThrow(/rankBy: found netPresentValue, expected prices/);
  });

  it('is in every format for people and in JSON, only where asked for [definition]', async () => {
    const options = { rankBy: 'deliveredEnergy' } as const;
    const page = (designs: typeof runs, given: object) => renderHtml(designs, { ...given, sections: ['numbers'] });
    for (const render of [renderText, renderMarkdown, page]) {
      const text = await render(runs, options);
      expect(text).toContain('Ranked by energy delivered, highest first');
      expect(text.indexOf('B Invented house, 4 panels:')).toBeLessThan(text.indexOf('A Invented house, 3 panels:'));
      expect(await render([three, four], {})).not.toContain('Ranked by');
    }
    expect(JSON.parse(renderJson(runs, options)).comparison.ranking).toEqual({
      by: 'deliveredEnergy',
      first: 'highest',
      order: [1, 0, 2],
    });
  });
});
