import { answer, type MoneyGiven, renderText, siteWords, systemLine, systemsLine } from '@noonloop/reports';
import type { RunResult } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { facingWords } from '../../packages/reports/src/answer/system.ts';
import { currencyWords, shareWords, yearsWords } from '../../packages/reports/src/answer/words.ts';
import { fixture } from './fixture.ts';

const GALLON = 0.091 * 1055.05585262e6; // [J] of propane, as the prices of these tests have it
const KWH = 3.6e6;

/** A house that burns 200 gallons of propane without the sun and as many fewer with it as said; the rest is from the fixture. Invented. */
function house(saved: number, panels = 2, mixingValve = true): RunResult {
  const run = fixture({ panels, mixingValve });
  run.columns.baselineFuel.fill((200 * GALLON) / 8760);
  run.columns.heaterFuel.fill(((200 - saved) * GALLON) / 8760);
  run.columns.solarHeat.set(run.columns.tapHeatAsked.map((asked) => 0.62 * asked));
  for (const column of ['highLimit', 'stagnation', 'reliefVolume', 'reliefHeat'] as const) run.columns[column].fill(0);
  run.columns.tankMaximumTemperature.fill(60);
  return run;
}

/** Propane at 3 dollars a gallon, no interest: sums by hand. Invented. */
const bare = {
  currency: 'USD',
  fuel: { carrier: 'propane', price: 3, per: 'gal' },
  discountRate: 0,
  life: 15,
} as const;
const costs = (...investments: number[]): MoneyGiven => ({
  ...bare,
  designs: investments.map((investment) => ({ investment })),
});

describe('the answer about one design [requirement: each rule, numbers by hand]', () => {
  it('says share, fuel and money, and when it has paid for itself', () => {
    expect(answer(house(84), { money: { ...bare, investment: 1512 } })).toEqual({
      rule: 'one-with-cost',
      does: 'The sun makes 62 % of this house’s hot water and saves 84 gallons of propane a year, about $252.',
      decides: 'At $1,510 it has paid for itself in about 6 years.', // 6 × 252
      winner: null,
    });
    expect(answer(house(84), { money: { ...bare, investment: { used: 504 } } }).decides).toBe(
      'At $504, with used parts, it has paid for itself in about 2 years.',
    );
    expect(answer(house(84), { money: { ...bare, investment: 5780 } }).decides).toBe(
      'At $5,780 it does not pay for itself in its 15 years: $2,000 are missing.', // 15 × 252 = 3780
    );
  });

  it('says what it may cost where there is a price of fuel and no cost', () => {
    const { rule, decides } = answer(house(84), { money: bare });
    expect([rule, decides]).toEqual([
      'one-with-price',
      'It pays within 15 years if it costs less than about $3,780, built.',
    ]);
    expect(answer(house(84), { money: { ...bare, maintenance: 300 } }).decides).toBe(
      'Its upkeep costs more than it saves.',
    );
  });

  it('says without prices what is left to say: hours without use, the hottest day, the least month', () => {
    const run = house(84);
    run.columns.solarHeat.fill(0, 0, 8); // a night in January
    expect(answer(run, { units: 'us' })).toMatchObject({
      rule: 'one-without-prices',
      does: 'The sun makes 62 % of this house’s hot water and saves 76 therms of fuel a year.', // 84 × 0.091 MMBtu
      decides: 'It makes least in January, 62 % of the hot water.',
    });
    run.columns.tankMaximumTemperature[5292] = 90; // 220 days and 12 hours: 9 August
    expect(answer(run).decides).toBe('The tank is hottest on 9 August, 90 °C.');
    run.columns.highLimit.fill(1, 5290, 5318);
    run.columns.stagnation.fill(1, 5340, 5360);
    expect(answer(run).decides).toBe('For about 50 hours a year it stands hot in the sun without use.');
  });

  it('says that it burns more, and by what it loses most', () => {
    const run = house(-4);
    run.columns.pipeLoss.fill((500 * KWH) / 8760);
    run.columns.tankLoss.fill((100 * KWH) / 8760);
    expect(answer(run, { money: { ...bare, investment: 1000 } })).toMatchObject({
      rule: 'one-loses',
      does: 'It burns 4 gallons of propane a year more than the heater alone.',
      decides: 'Most is lost by the pipes: 500 kWh a year.',
    });
  });
});

describe('the answer about several designs [requirement: each rule, numbers by hand]', () => {
  it('names the better buy, and what the next part would add and when it has earned its cost', () => {
    // 84 × 3 × 15 − 1200 = 2580; 97 × 3 × 15 − 1900 = 2465; 13 × 3 = 39 a year, 700/39 > 15.
    expect(answer([house(84), house(97, 3)], { money: costs(1200, 1900) })).toEqual({
      rule: 'worth',
      does: 'Two panels are the better buy: 84 gallons of propane saved a year, paid back in about 5 years.',
      decides: 'The third panel would save 13 gallons more, about $39 a year, and not earn its $700 in 15 years.',
      winner: 0,
    });
    // 97 × 45 − 1500 = 2865: the third is worth it; 300/39 = 7.7.
    expect(answer([house(84), house(97, 3)], { money: costs(1200, 1500) })).toMatchObject({
      does: 'Three panels are the better buy: 97 gallons of propane saved a year, paid back in about 5 years.',
      decides: 'The third panel saves 13 gallons more, about $39 a year: its $300 are earned in about 8 years.',
      winner: 1,
    });
  });

  it('names the winner of three, the next, and the step upward', () => {
    const three = answer([house(84), house(97, 3), house(103, 4)], { money: costs(1200, 1500, 2300) });
    expect(three.does).toBe(
      'Three panels are the best buy: 97 gallons of propane saved a year, paid back in about 5 years. Next is two panels, worth $285 less.',
    );
    expect(three.decides).toBe(
      'The fourth panel would save 6 gallons more, about $18 a year, and not earn its $800 in 15 years.',
    );
  });

  it('says where none pays, and below which price the least bad would', () => {
    expect(answer([house(84), house(97, 3)], { money: costs(5000, 5900) })).toMatchObject({
      rule: 'none-pays',
      does: 'None pays for itself; two panels lose least, $1,220 in 15 years.',
      decides: 'It pays if it costs less than about $3,780, built.',
      winner: null,
    });
  });

  it('compares what is saved where nobody said what each costs: an added panel is not free', () => {
    expect(answer([house(84), house(97, 3)], { money: { ...bare, investment: 1200 } })).toMatchObject({
      rule: 'saving-with-price',
      does: 'B saves 13 gallons of propane a year more than A, 97 against 84.',
      decides: 'It is worth it if the third panel costs less than about $585, built.', // 13 × 3 × 15
      winner: 1,
    });
  });

  it('compares without prices, the added part against the mean of those before it', () => {
    const [two, three] = [house(84), house(97, 3)];
    three.columns.solarHeat.set(two.columns.solarHeat.map((heat) => heat * (7 / 6))); // a third of the mean of two
    expect(answer([two, three])).toMatchObject({
      rule: 'saving-without-prices',
      decides: 'The third panel adds a third of what each of the first 2 gives.',
    });
  });

  it('calls a tie what the model cannot tell apart, and takes the cheaper or the calmer', () => {
    expect(answer([house(84), house(85)])).toMatchObject({
      rule: 'tie',
      decides: 'Take the one that is easier to build.',
      winner: null,
    });
    const hot = house(85);
    hot.columns.stagnation.fill(1, 4000, 4050);
    expect(answer([house(84), hot])).toMatchObject({
      decides: 'A stands hot without use for no hours a year, B for about 50 hours.',
      winner: 0,
    });
    const tie = answer([house(84), house(85)], { money: costs(1200, 1230) });
    expect(tie).toMatchObject({
      rule: 'tie',
      does: 'A and B are worth the same: 84 and 85 gallons of propane a year.',
      decides: 'A costs $30 less to build.',
      winner: 0,
    });
  });

  it('lets no design win that has a danger which another has not', () => {
    const [safe, hot] = [house(84), house(97, 3)];
    hot.columns.loopReliefVolume[4000] = 0.001;
    const found = answer([safe, hot], { money: bare });
    expect(found).toMatchObject({
      rule: 'danger-in-some',
      does: 'Two panels are the one to build: 84 gallons of propane saved a year.',
      winner: 0,
    });
    expect(found.decides).toMatch(/^Three panels would save 13 more, but .*relief/);
    // As good and dangerous does not win either; in both alike it does not tell them apart.
    const same = house(84);
    same.columns.loopReliefVolume[4000] = 0.001;
    expect(answer([safe, same])).toMatchObject({ rule: 'danger-in-some', winner: 0 });
    expect(answer([same, hot], { money: bare })).toMatchObject({ rule: 'saving-with-price', winner: 1 });
  });

  it('lets none win where each has a danger of its own', () => {
    const [a, b] = [house(84), house(97, 3)];
    a.columns.reliefVolume[4000] = 0.001;
    b.columns.loopReliefVolume[4000] = 0.001;
    expect(answer([a, b])).toMatchObject({ rule: 'danger-in-each', winner: null });
  });

  it('refuses to compare what was run with other weather or for another household', () => {
    const [a, b] = [house(84), { ...house(97, 3), weatherSource: 'other.csv' }];
    expect(answer([a, b])).toMatchObject({
      rule: 'not-comparable',
      does: 'These designs cannot be compared: B was run with other weather.',
      winner: null,
    });
    const more = house(97, 3);
    more.columns.tapHeatAsked.set(more.columns.tapHeatAsked.map((heat) => 1.1 * heat));
    expect(answer([a, more]).does).toBe('These designs cannot be compared: B was run for another household.');
  });

  it('judges by the year where the lives differ: a longer life wins nothing by itself', () => {
    const designs = [{ investment: 1200 }, { investment: 1900, life: 30 }];
    const [a, b] = [house(84), house(97, 3)];
    // By hand without interest: (84 × 45 − 1200)/15 = 172 a year, (97 × 90 − 1900)/30 = 228 a year.
    expect(answer([a, b], { money: { ...bare, designs } }).winner).toBe(1);
    // Twice the life at a price that eats it: (97 × 90 − 4800)/30 = 131 a year is less, though 3930 is more than 2580.
    expect(
      answer([a, b], { money: { ...bare, designs: [{ investment: 1200 }, { investment: 4800, life: 30 }] } }).winner,
    ).toBe(0);
  });

  it('keeps sentences short: 25 words and no brackets [style of the pages]', () => {
    const runs = [house(84), house(97, 3)];
    const cases: [RunResult | RunResult[], MoneyGiven | undefined][] = [
      [runs[0]!, undefined],
      [runs[0]!, bare],
      [runs[0]!, costs(1200)],
      [runs[0]!, costs(9000)],
      [runs, undefined],
      [runs, bare],
      [runs, costs(1200, 1900)],
      [runs, costs(1200, 1500)],
      [runs, costs(5000, 5900)],
      [runs, costs(1200, 1230)],
    ];
    for (const [of, money] of cases) {
      const { does, decides } = answer(of, money === undefined ? {} : { money });
      for (const sentence of [does, decides]) {
        expect(sentence.split(' ').length, sentence).toBeLessThanOrEqual(25);
        expect(sentence).not.toMatch(/[()[\]]/);
      }
    }
  });
});

describe('the system in a line', () => {
  const { design } = fixture();
  it('has a fixed order, in metric and US units [requirement]', () => {
    expect(systemLine(design, 'metric')).toBe(
      '2 panels of 2.4 m², tilted 40°, facing south; 300 L tank; 240 L of water a day; 39 % glycol by volume; gas heater behind.',
    );
    expect(systemLine(design, 'us', 'propane')).toBe(
      '2 panels of 26 ft², tilted 40°, facing south; 79 gal tank; 63 gal of water a day; 39 % glycol by volume; propane heater behind.',
    );
  });

  it('says of several what is the same and what differs [requirement]', () => {
    const { same, differs } = systemsLine([design, fixture({ panels: 3 }).design], 'metric');
    expect(differs).toBe('2 panels / 3 panels');
    expect(same).toMatch(/^of 2\.4 m²; tilted 40°; facing south; 300 L tank; /);
  });

  it('faces by sixteenths [definition]', () => {
    expect([0, 11, 12, 90, 200, 203, 348, 349, 360].map(facingWords)).toEqual([
      'north',
      'north',
      'north-north-east',
      'east',
      'south-south-west',
      'south-south-west',
      'north-north-west',
      'north',
      'north',
    ]);
  });

  it('names the place, or where it lies, and never “unknown” [requirement]', () => {
    const at = (name: string) => siteWords({ name, latitude: 45, longitude: -8.04, elevation: 250, utcOffset: 1 });
    expect(at('unknown, unknown')).toBe('45.0° N, 8.0° W');
    expect(at('45, 8')).toBe('45.0° N, 8.0° W');
    expect(at('')).toBe('45.0° N, 8.0° W');
    expect(at('GREENSBORO PIEDMONT TRIAD INT, NC')).toBe('Greensboro Piedmont Triad Int, NC');
    expect(at('NSRDB 401182')).toBe('NSRDB 401182');
    expect(at('Invented Hill')).toBe('Invented Hill');
  });
});

describe('words of the answer [requirement]', () => {
  it('rounds money, years and shares to what a reader keeps', () => {
    expect(currencyWords(1966, 'USD')).toBe('$1,970');
    expect(currencyWords(-330.4, 'EUR')).toBe('−€330');
    expect(currencyWords(1200, 'CHF')).toBe('CHF 1,200');
    expect([0.4, 1.2, 1.6, 2.4, 6.4].map(yearsWords)).toEqual([
      'less than a year',
      'about 1 year',
      'about 1½ years',
      'about 2½ years',
      'about 6 years',
    ]);
    expect([0.34, 0.5, 0.41, 1].map(shareWords)).toEqual(['a third of', 'half of', '41 % of', 'as much as']);
  });

  it('says how sure it is only where that is given', () => {
    expect(renderText(house(84))).not.toContain('±');
    expect(renderText(house(84), { uncertainty: 0.08 })).toContain(
      'How sure: ± 8 % on what is saved; another year’s weather is not in it.',
    );
    expect(() => renderText(house(84), { uncertainty: 8 })).toThrow(/uncertainty: found 8, .*Give 0\.08/);
  });
});
