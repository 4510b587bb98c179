import { compareRuns, compareSummaries, describeComparison, summarize } from '@noonloop/reports';
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
