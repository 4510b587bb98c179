import {
  type MoneyOptions,
  money,
  presentWorthFactor,
  ReportError,
  rankDesigns,
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
    expect(bill({ carrier: 'natural-gas', price: 2.9, per: 'CCF', grossCalorificValue_kWh: 29 })).toBeCloseTo(kWh, 9);
    expect(bill({ carrier: 'natural-gas', price: 29.3071070172, per: 'MMBtu' })).toBeCloseTo(kWh, 9);
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
    [{ fuel: { carrier: 'electricity', price: 1, per: 'gal' } }, /money\.fuel\.per: found "gal", expected one of kWh/],
    [
      { fuel: { carrier: 'propane', price: 3, per: 'gal', grossCalorificValue_kWh: 91_000 } },
      /16\.0 to 37\.3 kWh\. Give it in kWh/,
    ],
    [
      { fuel: { carrier: 'propane', price: 3, per: 'gal', grossCalorificValue_kWh: 96 } },
      /grossCalorificValue_kWh: found 96/,
    ], // MJ
    [{ fuel: { carrier: 'propan', price: 3, per: 'gal' } }, /Did you mean propane\?/],
    [{ discountRate: 3 }, /money\.discountRate: found 3, .*Give 0\.03 for 3 % a year/],
    [{ inflation: 2 }, /money\.inflation: found 2, .*Give 0\.02/],
    [{ maintenace: 50 }, /money\.maintenace: found an unknown field, .*Did you mean maintenance\?/],
    [{ maintenance: '50' }, /money\.maintenance: found "50"/],
    [{ investment: { nwe: 3 } }, /money\.investment\.nwe: .*Did you mean new\?/],
    [{ investment: {} }, /money\.investment\.new: found nothing/],
  ])('refuses %j by its place [definition]', (part, message) => {
    expect(() => money(run, { ...plain, ...(part as Partial<MoneyOptions>) })).toThrow(message);
  });
});

describe('prices as people write them', () => {
  it('says every fault at once, each with its place, value and what was expected [requirement]', () => {
    const wrong = {
      currency: 'usd',
      fuel: { carrier: 'propane', price: -3, per: 'gal', colour: 1 },
      discountRate: 3,
      maintenace: 5,
    };
    const error = (() => {
      try {
        money(run, wrong as unknown as MoneyOptions);
      } catch (thrown) {
        return thrown as ReportError;
      }
      return null;
    })();
    expect(error).toBeInstanceOf(ReportError);
    expect(error!.issues.map(({ path }) => path).sort()).toEqual([
      'money.currency',
      'money.discountRate',
      'money.fuel.colour',
      'money.fuel.price',
      'money.life',
      'money.maintenace',
    ]);
    expect(error!.message.split('\n')).toHaveLength(6);
  });

  it.each([
    ['propane', 'gal', 26.7], // 0.091 MMBtu a gallon [EPA]
    ['heating-oil', 'gal', 40.4], // No. 2, 0.138 MMBtu a gallon [EPA]
    ['propane', 'L', 7.05],
    ['propane', 'kg', 13.98], // 50.32 MJ/kg [heats of formation]
    ['wood', 'kg', 4.09], // [UK government conversion factors]
    ['natural-gas', 'CCF', 30.1], // 1026 Btu a cubic foot [40 CFR 98 table C-1, from memory]
  ] as const)(
    'takes %s by the %s for %d kWh where the bill says no more, and says so [source beside each]',
    (carrier, per, kWh) => {
      const { billWithout, assumptions } = money(run, { ...plain, fuel: { carrier, price: 3, per } });
      expect((year.baselineFuel / KWH / billWithout) * 3).toBeCloseTo(kWh, 1);
      expect(assumptions[0]).toMatch(/by gross calorific value in each \((0\.\d+ million Btu|heat of comb|air-dry)/);
    },
  );

  it('refuses no plausible heating value of a fuel [UK factors, propane 7.21, gas oil 10.74, gas 11.30 kWh; Groningen gas 9.77, from memory]', () => {
    for (const [carrier, per, value] of [
      ['propane', 'L', 7.20962],
      ['heating-oil', 'L', 10.7423],
      ['natural-gas', 'm3', 11.296],
      ['natural-gas', 'm3', 9.77],
      ['wood', 'kg', 2.8],
      ['wood-pellets', 'kg', 4.79947],
    ] as const)
      expect(() =>
        money(run, { ...plain, fuel: { carrier, price: 1, per, grossCalorificValue_kWh: value } }),
      ).not.toThrow();
  });

  it('counts what is saved in the unit of the bill [definition]', () => {
    const gallons = money(run, { ...plain, fuel: { carrier: 'propane', price: 3.1, per: 'gal' } });
    const kWh = (0.091 * 1055.05585262) / 3.6;
    expect(gallons.fuel.saved).toBeCloseTo(year.fuelSaved / KWH / kWh, 6);
    expect(gallons.fuel.savedWords).toBe(`${Math.round(gallons.fuel.saved!)} gallons of propane`);
    const text = renderText(run, { money: { ...plain, fuel: { carrier: 'propane', price: 3.1, per: 'gal' } } });
    expect(text).toMatch(
      new RegExp(`Propane saved \\[gal\\]\\s+${Math.round(gallons.fuel.without!) - Math.round(gallons.fuel.with)}\\n`),
    );
    const oil = { carrier: 'heating-oil', price: 1, per: 'L' } as const;
    const other = money(run, { ...plain, fuel: { carrier: 'propane', price: 3.1, per: 'gal' }, baselineFuel: oil });
    expect([other.fuel.saved, other.fuel.without, other.fuel.savedWords]).toEqual([null, null, null]);
  });

  it('has carbon dioxide within 3 % of the sources, and says where it is of wood [IPCC 2006 by gross value, UK factors]', () => {
    // kg/kWh gross: IPCC, UK (CO2e); wood by IPCC alone, as the UK counts its carbon dioxide apart. Wood's band there is 95,000 to 132,000 kg/TJ.
    for (const [carrier, factors, tolerance] of [
      ['natural-gas', [0.182292, 0.18296], 0.03],
      ['propane', [0.209142, 0.2141], 0.03],
      ['lpg', [0.211554, 0.2145], 0.03],
      ['heating-oil', [0.250754, 0.2565], 0.03],
      ['kerosene', [0.245898, 0.24677], 0.05],
      ['wood', [0.36288], 0.18],
    ] as const) {
      const { co2Without, assumptions } = money(run, { ...plain, fuel: { carrier, price: 0.1, per: 'kWh' } });
      for (const factor of factors)
        expect(Math.abs(co2Without! / (year.baselineFuel / KWH) / factor - 1), carrier).toBeLessThan(tolerance);
      expect(assumptions.some((line) => line.includes('the tree took it from the air'))).toBe(carrier === 'wood');
    }
    expect(money(run, { ...plain, fuel: { carrier: 'district-heat', price: 0.1, per: 'kWh' } }).co2Without).toBeNull();
  });

  it('holds rates to one footing: fuel rises with the inflation that the discount rate has in it [advice of the trade; closed form]', () => {
    // 20 years at 5 % with 2.5 % of inflation: (1 − (1.025/1.05)^20)/0.025 = 15.30, without it 12.46.
    const nominal = money(run, { ...plain, discountRate: 0.05, inflation: 0.025 });
    expect(nominal.worthOfSavings / saving).toBeCloseTo(15.3, 2);
    expect(nominal.assumptions.join(' ')).toContain('inflation of 2.5 % in it: all rates are nominal');
    expect(nominal.assumptions[0]).toContain('rising with inflation');
    const real = money(run, plain);
    expect(real.worthOfSavings / saving).toBeCloseTo(12.46, 2);
    expect(real.assumptions.join(' ')).toContain('above inflation: all rates are real');
    // Both tell the same: real rate 1.05/1.025 − 1, and one year's rise before the first payment.
    const same = money(run, { ...plain, discountRate: 1.05 / 1.025 - 1 });
    expect(nominal.worthOfSavings * 1.025).toBeCloseTo(same.worthOfSavings, 6);
    const upkeep = money(run, { ...plain, inflation: 0.025, maintenance: 100 }).years;
    expect(upkeep[1]!.maintenance).toBeCloseTo(102.5, 9);
  });

  it('sets the heat of the heater beside that of the sun on the same footing: the sun is cheaper where it pays [closed form]', () => {
    const electricity = { carrier: 'electricity', price: 0.3, per: 'kWh' } as const;
    const powered = { ...run, columns: { ...run.columns, pumpElectricity: new Float64Array(8760).fill(KWH / 200) } };
    for (const investment of [500, 2000, 4000]) {
      const options = { ...plain, fuel: { ...plain.fuel, escalation: 0.03 }, electricity, maintenance: 30, investment };
      const { cases, levelisedCostOfFuelHeat } = money(powered, options);
      const heat = year.deliveredEnergy * presentWorthFactor(20, 0.05);
      // Net present value by the heat: what its fuel would cost less what the sun's costs, pump's electricity and upkeep in it.
      expect((levelisedCostOfFuelHeat! - cases[0]!.levelisedCostOfHeat!) * heat).toBeCloseTo(
        cases[0]!.netPresentValue,
        6,
      );
      const worth = (saving * presentWorthFactor(20, 0.05, 0.03)) / heat;
      expect(levelisedCostOfFuelHeat! / worth).toBeCloseTo(1, 12);
    }
    const dearer = money(powered, { ...plain, electricity }).cases[0]!.levelisedCostOfHeat!;
    // The pump takes 8760/200 kWh a year at 0.3, over the heat of a year: present worths cancel.
    const pump = ((8760 / 200) * 0.3) / year.deliveredEnergy;
    expect((dearer - money(run, plain).cases[0]!.levelisedCostOfHeat!) / pump).toBeCloseTo(1, 9);
  });

  it('reckons bills and what the system may cost where no investment is given, and used parts alone [requirement]', () => {
    const { investment: _, ...bare } = plain;
    const found = money(run, bare);
    expect(found.cases).toEqual([]);
    expect(found.worthOfSavings).toBeCloseTo(saving * presentWorthFactor(20, 0.05), 6);
    expect(renderText(run, { money: bare })).not.toMatch(/payback/i);
    expect(money(run, { ...plain, investment: { used: 700 } }).cases.map(({ parts }) => parts)).toEqual(['used']);
  });
});

describe('prices of each design', () => {
  const three = fixture({ panels: 3 });
  const own = {
    ...plain,
    designs: [{ investment: 1000 }, { investment: { new: 1700, used: 900 }, maintenance: 40, life: 15 }],
  };

  it('takes what each has of its own, the rest once for all [requirement]', () => {
    const text = renderText([run, three], { money: own });
    expect(text).toMatch(/Investment, new \[EUR\]\s+1,000\s+1,700/);
    expect(text).toMatch(/Investment, used \[EUR\]\s+–\s+900/);
    expect(text).toMatch(/Upkeep \[EUR\]\s+0\s+40/);
    expect(text).toContain('B: Discount rate');
    expect(() => renderText([run, three], { money: { ...own, designs: [{}] } })).toThrow(
      /money\.designs: found 1 entries, expected 2/,
    );
    expect(() => renderText([run, three], { money: { ...own, designs: [{}, { lfie: 3 } as object] } })).toThrow(
      /money\.designs\[1\]\.lfie: .*Did you mean life\?/,
    );
  });

  it('ranks by money only where each has its investment: else the added panel would be free [requirement]', () => {
    expect(() => rankDesigns([run, three], 'netPresentValue', plain)).toThrow(/expected an investment for each design/);
    expect(() => rankDesigns([run, three], 'netPresentValue', { ...plain, designs: [{ investment: 1 }, {}] })).toThrow(
      /each added part would be free/,
    );
    expect(rankDesigns([run, three], 'netPresentValue', own).values).toEqual(
      [run, three].map((one, index) => money(one, { ...plain, ...own.designs[index] }).cases[0]!.netPresentValue),
    );
    expect(renderText([run, three], { money: plain })).toContain('money does not rank them');
    expect(renderText([run, three], { money: own })).not.toContain('money does not rank them');
  });
});

describe('money in reports', () => {
  const three = fixture({ panels: 3 });
  const priced = { money: { ...plain, investment: { new: 3000, used: 1200 }, maintenance: 25 } };
  const npv = Math.round(money(run, priced.money).cases[0]!.netPresentValue).toLocaleString('en').replace('-', '−');

  it('is in every format where prices are given, the same number, and in none where they are not [requirement]', async () => {
    const texts = async (options: object): Promise<string[]> => [
      renderText(run, options),
      renderMarkdown(run, options),
      // Charts are left out, but that of money.
      await renderHtml(run, {
        ...options,
        sections: ['cautions', ...(options === priced ? ['money' as const] : []), 'numbers', 'inputs', 'definitions'],
      }),
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
