import {
  type MoneyOptions,
  money,
  presentWorthFactor,
  renderCsv,
  renderHtml,
  renderJson,
  renderMarkdown,
  renderText,
  summarize,
} from '@noonloop/reports';
import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { fixture } from './fixture.ts';

const run = fixture({ panels: 2 });
const { year } = summarize(run);
const KWH = 3.6e6;

/** Gas at 0.10 a kWh, no escalation, no upkeep. */
const plain: MoneyOptions = {
  currency: 'EUR',
  fuel: { carrier: 'natural-gas', price: 0.1, per: 'kWh' },
  investment: 1000,
  discountRate: 0.05,
  life: 20,
};
const saving = (0.1 * year.fuelSaved) / KWH; // [EUR/a]

describe('presentWorthFactor', () => {
  // Compound interest tables of engineering economics, as every textbook prints them to four places.
  it.each([
    [10, 0.08, 6.7101],
    [10, 0.1, 6.1446],
    [20, 0.05, 12.4622],
    [5, 0.12, 3.6048],
    [25, 0, 25],
  ])('uniform series, %i years at %d: %d [compound interest tables]', (years, rate, factor) => {
    expect(presentWorthFactor(years, rate)).toBeCloseTo(factor, 4);
  });

  it('geometric gradient: 3 years, d 10 %, g 5 %: 1/1.1 + 1.05/1.21 + 1.1025/1.331 = 2.605184 [by hand]', () => {
    expect(presentWorthFactor(3, 0.1, 0.05)).toBeCloseTo(0.9090909 + 0.8677686 + 0.8283246, 6);
  });

  it('d = g: N/(1 + d): 20/1.08 = 18.518519 [closed form]', () => {
    expect(presentWorthFactor(20, 0.08, 0.08)).toBeCloseTo(18.518519, 6);
  });

  it('is the sum that it stands for, near equal rates too [property]', () => {
    const rate = fc.double({ min: -0.2, max: 0.5, noNaN: true });
    const gap = fc.oneof(fc.constantFrom(0, 1e-12, 1e-8, -1e-7), fc.double({ min: -0.2, max: 0.2, noNaN: true }));
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 60 }), rate, gap, (years, d, difference) => {
        let sum = 0;
        for (let j = 1; j <= years; j++) sum += (1 + d + difference) ** (j - 1) / (1 + d) ** j;
        expect(Math.abs(presentWorthFactor(years, d, d + difference) - sum)).toBeLessThanOrEqual(1e-12 * (1 + sum));
      }),
    );
  });

  it('refuses broken years and a rate of −1 [definition]', () => {
    expect(() => presentWorthFactor(2.5, 0.05)).toThrow(/years: found 2.5/);
    expect(() => presentWorthFactor(2, -1)).toThrow(/discountRate: found -1/);
  });
});

describe('money', () => {
  it('uniform series: NPV = A (P/A, 5 %, 20) − I, simple payback I/A [closed form]', () => {
    const { cases, energySaving } = money(run, plain);
    expect(energySaving).toBeCloseTo(saving, 9);
    expect(cases[0]!.netPresentValue).toBeCloseTo(saving * ((1 - 1.05 ** -20) / 0.05) - 1000, 6);
    expect(cases[0]!.simplePayback).toBeCloseTo(1000 / saving, 9);
  });

  it('inflating fuel, inflating upkeep: NPV by P1 of each [Duffie & Beckman ch. 11, from memory; closed form]', () => {
    const fuel = { ...plain.fuel, escalation: 0.04 };
    const { cases } = money(run, { ...plain, fuel, maintenance: 20, maintenanceEscalation: 0.02 });
    const p1 = (g: number): number => (1 - ((1 + g) / 1.05) ** 20) / (0.05 - g);
    expect(cases[0]!.netPresentValue).toBeCloseTo(saving * p1(0.04) - 20 * p1(0.02) - 1000, 6);
  });

  it('net present value is the sum of the years, less the investment [definition]', () => {
    const options = { ...plain, fuel: { ...plain.fuel, escalation: 0.03 }, maintenance: 15 };
    const { cases, years } = money(run, options);
    const sum = years.reduce((total, one) => total + one.presentValue, 0);
    expect(cases[0]!.netPresentValue).toBeCloseTo(sum - 1000, 8);
  });

  it('discounted payback is 8 years where the investment is A (P/A, 5 %, 8) = 6.4632 A [closed form]', () => {
    const investment = saving * ((1 - 1.05 ** -8) / 0.05);
    expect(money(run, { ...plain, investment }).cases[0]!.discountedPayback).toBeCloseTo(8, 9);
    expect(money(run, { ...plain, investment: 1e6 }).cases[0]!.discountedPayback).toBeNull();
  });

  it('internal rate of return is 8 % where the investment is A (P/A, 8 %, 20) [closed form]', () => {
    const investment = saving * ((1 - 1.08 ** -20) / 0.08);
    const [found] = money(run, { ...plain, investment }).cases;
    expect(found!.internalRateOfReturn).toBeCloseTo(0.08, 10);
    // Two payments of 110 and 121 for 200: 110/1.1 + 121/1.21 = 200, so 10 % [by hand], with an escalation of 10 %.
    const two = { ...plain, life: 2, investment: (200 * saving) / 110, fuel: { ...plain.fuel, escalation: 0.1 } };
    expect(money(run, two).cases[0]!.internalRateOfReturn).toBeCloseTo(0.1, 10);
  });

  it('levelised cost of heat is I over Q (P/A) without upkeep and electricity [closed form]', () => {
    const [found] = money(run, plain).cases;
    const heat = (year.deliveredEnergy / KWH) * ((1 - 1.05 ** -20) / 0.05);
    expect(found!.levelisedCostOfHeat! * KWH).toBeCloseTo(1000 / heat, 10);
  });

  it('reads bills by kWh, therm, m³ and gallon alike [NIST SP 811: therm 1.054 804e8 J]', () => {
    const bill = (fuel: MoneyOptions['fuel']): number => money(run, { ...plain, fuel }).billWithout;
    const kWh = bill(plain.fuel);
    expect(bill({ carrier: 'natural-gas', price: 0.1 * 29.3001111, per: 'therm' })).toBeCloseTo(kWh, 4);
    expect(bill({ carrier: 'natural-gas', price: 1.05, per: 'm3', grossCalorificValue_kWh: 10.5 })).toBeCloseTo(kWh, 9);
    expect(bill({ carrier: 'propane', price: 2.67, per: 'gal', grossCalorificValue_kWh: 26.7 })).toBeCloseTo(kWh, 9);
    expect(bill({ carrier: 'heating-oil', price: 1.05, per: 'L', grossCalorificValue_kWh: 10.5 })).toBeCloseTo(kWh, 9);
  });

  it('carbon dioxide of gas: 53.06 kg by the million Btu [40 CFR 98 table C-1]', () => {
    const { co2Saved, co2Without } = money(run, plain);
    expect(co2Without).toBeCloseTo((53.06 * year.baselineFuel) / 1055.05585262e6, 6);
    expect(co2Saved).toBeCloseTo((53.06 * year.fuelSaved) / 1055.05585262e6, 6);
  });

  it('counts electricity of pump and controls, and has no factor for it unless given [definition]', () => {
    const powered = { ...run, columns: { ...run.columns, pumpElectricity: new Float64Array(8760).fill(KWH / 100) } };
    expect(() => money(powered, plain)).toThrow(/money\.electricity: found nothing/);
    const electricity = { carrier: 'electricity', price: 0.3, per: 'kWh' } as const;
    const found = money(powered, { ...plain, electricity });
    expect(found.energySaving).toBeCloseTo(saving - 87.6 * 0.3, 6);
    expect(found.co2Saved).toBeNull();
    const known = money(powered, { ...plain, electricity: { ...electricity, co2_kg_per_kWh: 0.4 } });
    expect(known.co2Saved).toBeCloseTo((53.06 * year.fuelSaved) / 1055.05585262e6 - 87.6 * 0.4, 6);
  });

  it('reckons used parts beside new ones [definition]', () => {
    const { cases } = money(run, { ...plain, investment: { new: 3000, used: 800 } });
    expect(cases.map(({ parts }) => parts)).toEqual(['new', 'used']);
    expect(cases[1]!.netPresentValue - cases[0]!.netPresentValue).toBeCloseTo(2200, 9);
  });

  it.each([
    [{ currency: '$' }, /money\.currency/],
    [{ life: 0 }, /money\.life/],
    [{ discountRate: -2 }, /money\.discountRate/],
    [{ investment: -1 }, /money\.investment/],
    [{ investment: { new: 1, used: Number.NaN } }, /money\.investment\.used/],
    [{ fuel: { carrier: 'electricity', price: 1, per: 'kWh' } }, /money\.fuel\.carrier/],
    [{ fuel: { carrier: 'coal', price: 1, per: 'kWh' } }, /money\.fuel\.carrier: found "coal"/],
    [{ fuel: { carrier: 'natural-gas', price: 1, per: 'm3' } }, /grossCalorificValue_kWh: found nothing/],
    [{ fuel: { carrier: 'natural-gas', price: 1, per: 'therm', grossCalorificValue_kWh: 3 } }, /by volume or mass/],
    [{ fuel: { carrier: 'natural-gas', price: 1, per: 'barrel' } }, /money\.fuel\.per/],
  ])('refuses %j by its place [definition]', (part, message) => {
    expect(() => money(run, { ...plain, ...(part as Partial<MoneyOptions>) })).toThrow(message);
  });
});

describe('money in reports', () => {
  const three = fixture({ panels: 3 });
  const priced = { money: { ...plain, investment: { new: 3000, used: 1200 }, maintenance: 25 } };
  const npv = Math.round(money(run, priced.money).cases[0]!.netPresentValue).toLocaleString('en').replace('-', '−');

  it('is in every format where prices are given, the same number, and in none where they are not', async () => {
    const texts = async (options: object): Promise<string[]> => [
      renderText([run, three], options),
      renderMarkdown([run, three], options),
      await renderHtml([run, three], options),
    ];
    for (const text of await texts(priced)) {
      expect(text).toMatch(/Net present value, used \\?\[EUR/);
      expect(text).toContain(npv);
      expect(text).toContain('40 CFR part 98');
    }
    for (const text of await texts({})) expect(text).not.toMatch(/EUR|present value|MONEY|>Money</);
    expect(JSON.parse(renderJson(run)).runs[0].money).toBeNull();
    const [json] = JSON.parse(renderJson(run, priced)).runs;
    expect(json.money.cases[0].netPresentValue).toBe(money(run, priced.money).cases[0]!.netPresentValue);
    const numbers = Papa.parse<string[]>(renderCsv(run, { table: 'numbers', ...priced })).data;
    const row = numbers.find(([key]) => key === 'netPresentValue')!;
    expect(row[1]).toBe('EUR');
    expect(Number(row[2])).toBeCloseTo(json.money.cases[0].netPresentValue, 4);
    expect(renderCsv(run, { table: 'numbers' })).not.toContain('netPresentValue');
  });

  it('takes one set of prices for each design, in one currency [definition]', () => {
    expect(() => renderText([run, three], { money: [plain] })).toThrow(/found 1 sets of prices/);
    expect(() => renderText([run, three], { money: [plain, { ...plain, currency: 'USD' }] })).toThrow(/EUR and USD/);
    const text = renderText([run, three], { money: [plain, { ...plain, investment: 1500 }] });
    expect(text).toMatch(/Investment \[EUR\]\s+1,000\s+1,500/);
  });

  it('shows savings as the difference of what is shown [definition]', () => {
    const number = (text: string): number => Number(text.replaceAll(',', ''));
    for (const units of ['metric', 'us'] as const) {
      const text = renderText([run, three], { ...priced, units });
      const row = (label: string): number[] =>
        [
          ...new RegExp(`^${label} \\[.*$`, 'm')
            .exec(text)![0]
            .replace(/^.*\]/, '')
            .matchAll(/[\d,]+/g),
        ].map((cell) => number(cell[0]));
      for (const [saved, without, having] of [
        ['Saved on energy', 'Energy bill without solar', 'Energy bill with solar'],
        ['Carbon dioxide saved', 'Carbon dioxide without solar', 'Carbon dioxide with solar'],
      ] as const)
        expect(row(saved)).toEqual(row(without).map((value, index) => value - row(having)[index]!));
    }
  });

  it('lists the payments year by year, in CSV [definition]', () => {
    const { data } = Papa.parse<Record<string, string>>(renderCsv(run, { table: 'money', ...priced }), {
      header: true,
      skipEmptyLines: true,
    });
    expect(data).toHaveLength(20);
    const sum = data.reduce((total, row) => total + Number(row.presentValue_EUR), 0);
    // Each of 20 cells is rounded to a cent.
    expect(Math.abs(sum - 3000 - money(run, priced.money).cases[0]!.netPresentValue)).toBeLessThan(0.1);
  });

  it('has heat by the therm and carbon dioxide in pounds in a US report [definition]', () => {
    const text = renderText(run, { units: 'us', money: { ...plain, currency: 'USD' } });
    expect(text).toMatch(/USD\/therm/);
    expect(text).toMatch(/Carbon dioxide saved \[lb\]/);
    expect(text).toMatch(/11\.695 lb per\s+therm/); // 53.06 kg a million Btu / 0.45359237 × 105.4804 MJ / 1055.05585 MJ [by hand]
  });
});
