import { DEFINITIONS, renderCsv, renderHtml, renderMarkdown, renderText, summarize } from '@noonloop/reports';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { type NumberKey, WHERE_USED } from '../../packages/reports/src/definitions.ts';
import { freezingSpare } from '../../packages/reports/src/formats/sheet-heat.ts';
import { moneyOf, moneyRows } from '../../packages/reports/src/money/rows.ts';
import { fixture, PRICES, PRICES_OF_EACH, pageOf, pricedPage, three, two, wholePage } from './fixture.ts';

const five = fixture({ panels: 5 });
/** Text of HTML, its no-break spaces plain. */
const plain = (html: string): string =>
  html
    .replace(/<[^>]*>/g, '')
    .replaceAll('\u00a0', ' ')
    .replaceAll('&#39;', "'")
    .replaceAll('&amp;', '&');
const number = (text: string): number => Number(text.replace('−', '-').replace(/[^\d.-]/g, ''));

/** Rows of a table by the text of their head. */
function rowsOf(html: string, kind: string): Map<string, string[]> {
  const table = new RegExp(`<table class="${kind}">.*?</table>`, 'gs');
  return new Map(
    [...html.matchAll(table)].flatMap(([found]) =>
      [...found.matchAll(/<tr[^>]*><th scope="row"[^>]*>(.*?)<\/th>(.*?)<\/tr>/gs)].map(
        ([, head, cells]): [string, string[]] => [
          plain(head!),
          [...cells!.matchAll(/<td[^>]*>(.*?)<\/td>/gs)].map((cell) =>
            plain(cell[1]!.replace(/<span class="(?:date|range)">.*?<\/span>/g, '')),
          ),
        ],
      ),
    ),
  );
}

/** Values of the CSV of numbers, by key: the unit and a value for each design. */
function csvOf(runs: Parameters<typeof renderCsv>[0], options: Parameters<typeof renderCsv>[1]): Map<string, string[]> {
  const { data } = Papa.parse<string[]>(renderCsv(runs, { ...options, table: 'numbers' }), { skipEmptyLines: true });
  return new Map(data.slice(1).map(([key, unit, ...cells]) => [key!, [unit!, ...cells]]));
}

/** Half a step of the last digit shown, and what rounding of the CSV itself may add. */
const step = (text: string): number => 0.501 * 10 ** -(/\.(\d+)/.exec(text)?.[1]?.length ?? 0);

describe.each(['metric', 'us'] as const)(
  'numbers of the page are those of the CSV, rounded once, %s [requirement]',
  (units) => {
    const page = pricedPage(units);
    const csv = csvOf([two, three], { units, money: PRICES_OF_EACH });

    it('in the long table: every number of every design', async () => {
      const rows = [...rowsOf(await page, 'numbers').values()];
      const keys = Object.keys(DEFINITIONS).filter((key) => !WHERE_USED.includes(key as NumberKey));
      expect(keys.length).toBeGreaterThan(30);
      // The long table is the one with as many rows as numbers, a difference behind the second design.
      const long = rows.filter((cells) => cells.length === 3).slice(-keys.length);
      expect(long).toHaveLength(keys.length);
      keys.forEach((key, at) => {
        const [a, b] = long[at]!;
        const [, first, second] = csv.get(key)!;
        for (const [shown, exact] of [
          [a!, first!],
          [b!, second!],
        ] as const)
          if (exact !== '') expect(Math.abs(number(shown) - Number(exact)), key).toBeLessThanOrEqual(step(shown));
      });
    });

    it('on the first sheet: whole, tens from a thousand up', async () => {
      const rows = rowsOf(await page, 'compare');
      const check = (head: string, key: string, scale = 1): void => {
        const [a, b] = rows.get(head) ?? [];
        const [, first, second] = csv.get(key)!;
        for (const [shown, exact] of [
          [a!, first!],
          [b!, second!],
        ] as const) {
          const value = Math.abs(Number(exact) * scale);
          const rounding = value >= 10_000 ? 50 : value >= 1000 ? 5 : 0.5;
          expect(Math.abs(number(shown) - Number(exact) * scale), `${head}: ${shown}`).toBeLessThanOrEqual(
            rounding + 0.01,
          );
        }
      };
      check('Money saved a year', 'energySaving');
      check('Carbon dioxide saved a year', 'co2Saved');
      check('Cost', 'investment');
      check('Gained after 15 years', 'netPresentValue');
      check('Hottest tank', 'peakTankTemperature');
      // Propane is billed by the gallon: its heat, from the CSV, over that of a gallon (91,000 Btu: US 40 CFR part 98, table C-1).
      const gallon = units === 'us' ? 91_000 / 99_976.1 : (91_000 * 1055.05585262) / 3.6e6;
      check('Propane saved a year', 'fuelSaved', 1 / gallon);
      expect(rows.get('Paid back in')!.slice(0, 2).map(number)).toEqual(
        csv
          .get('discountedPayback')!
          .slice(1, 3)
          .map((years) => Math.round(10 * Number(years)) / 10),
      );
    });

    it('in the table of money: every number of every design', async () => {
      const shownRows = rowsOf(await page, 'numbers');
      const rows = new Map([...shownRows].map(([head, cells]) => [head.replace(/ \[[^\]]*\]$/, ''), cells]));
      const money = moneyRows(moneyOf([two, three], PRICES_OF_EACH));
      expect(money.length).toBeGreaterThan(12);
      for (const { key, label } of money) {
        const shown = rows.get(label);
        const exact = csv.get(key)!.slice(1, 3);
        expect(shown, label).toBeDefined();
        for (const [at, value] of exact.entries())
          if (value !== '')
            expect(Math.abs(number(shown![at]!) - Number(value)), label).toBeLessThanOrEqual(step(shown![at]!));
      }
    });

    it('in the months of the sheet', async () => {
      const html = await page;
      const months = /<table class="months">.*?<\/table>/s.exec(html)![0];
      const shares = [...months.matchAll(/<\/i><\/span>([\d.]+)</g)].map((match) => Number(match[1]));
      const { data } = Papa.parse<Record<string, string>>(renderCsv([two, three], { units }), {
        header: true,
        skipEmptyLines: true,
      });
      expect(shares).toEqual(data.map((row) => Math.round(Number(row.sunShare_percent))));
    });
  },
);

describe('the first sheet', () => {
  it('leads with the same two sentences in every format [requirement]', async () => {
    for (const runs of [two, [two, three, five]]) {
      const html = await pageOf(runs, { money: PRICES, sections: ['balance'] });
      const [does, decides] = ['answer', 'decides'].map((name) =>
        plain(new RegExp(`<p class="${name}">(.*?)</p>`).exec(html)![1]!),
      );
      expect(renderText(runs, { money: PRICES, width: 400 }).split('\n').slice(0, 8)).toEqual(
        expect.arrayContaining([does, decides]),
      );
      const markdown = renderMarkdown(runs, { money: PRICES }).replaceAll('\\', '').split('\n').slice(0, 8);
      expect(markdown).toEqual(expect.arrayContaining([`**${does}**`, decides]));
    }
  });

  it('shows a range where the uncertainty is known, and none where not [definition]', async () => {
    const { fuelSaved } = summarize(two).year;
    const sure = await pageOf(two, { uncertainty: 0.1, sections: ['balance'] });
    const [low, high] = [0.9, 1.1].map((factor) => (fuelSaved * factor) / 3.6e6);
    const range = /([\d,]+) to ([\d,]+)</.exec(
      /<div class="figures">.*?<\/div>/s.exec(sure)![0].replaceAll('\u00a0', ' '),
    )!;
    // Ends are rounded to an eighth of the range or so.
    expect(Math.abs(number(range[1]!) - low!)).toBeLessThanOrEqual((high! - low!) / 8);
    expect(Math.abs(number(range[2]!) - high!)).toBeLessThanOrEqual((high! - low!) / 8);
    expect(plain(sure)).toContain('How sure: ± 10 %');
    expect(plain(await pageOf(two, { sections: ['balance'] }))).not.toContain('How sure');
  });

  it('marks the months that the sun makes alone, and no others [definition]', async () => {
    const months = /<table class="months">.*?<\/table>/s.exec(await pageOf([two, five], { sections: ['balance'] }))![0];
    expect(months.match(/class="full"/g)?.length ?? 0).toBe(
      summarize(two).sunAloneMonths.length + summarize(five).sunAloneMonths.length,
    );
  });

  it('says how far the coldest fluid stayed from freezing, and when it froze [definition]', async () => {
    const run = fixture();
    run.columns.absorberMinimumTemperature.fill(5);
    run.columns.pipeMinimumTemperature.fill(5);
    run.columns.freezingPoint.fill(-20);
    run.columns.pipeMinimumTemperature[100] = -11;
    expect(freezingSpare(run)).toBeCloseTo(9, 9);
    expect(plain(await renderHtml(run, { sections: ['balance'] }))).toContain('9 °C from freezing');
    run.columns.absorberMinimumTemperature[200] = -23;
    expect(freezingSpare(run)).toBeCloseTo(-3, 9);
    expect(plain(await renderHtml(run, { sections: ['balance'] }))).toContain('3 °C too cold: it froze');
    expect(plain(await renderHtml(run, { sections: ['balance'], units: 'us' }))).toContain('5 °F too cold: it froze');
  });

  it('takes any number of designs: differences against the first, from the fifth on behind [definition]', async () => {
    const runs = [two, three, five, two, three, five];
    const html = await renderHtml(runs, { sections: ['numbers'] });
    expect(html.match(/<th scope="row" class="who">/g)).toHaveLength(4);
    expect(html).toContain('2 more: <a href="#numbers-of-the-year">');
    expect([...rowsOf(html, 'numbers').values()][0]).toHaveLength(11); // six designs, five differences
  });

  it('asks the question that is asked: panels by number, otherwise designs by count [definition]', async () => {
    const title = async (runs: Parameters<typeof renderHtml>[0]): Promise<string> =>
      plain(/<h1>(.*?)<\/h1>/.exec(await renderHtml(runs, { sections: ['balance'] }))![1]!);
    expect(await title([two, fixture({ panels: 3 })])).toBe('Two panels or three?');
    expect(await title([two, fixture({ panels: 3 }), fixture({ panels: 4 })])).toBe('Two panels, three or four?');
    expect(await title([two, fixture({ panels: 3, heaterSetTemperature: 65 })])).toBe('Two designs compared');
    expect(await title(two)).toBe(two.design.name);
  });
});

describe('numbers and words of a page', () => {
  it('has one kind of minus, and no bare hyphen before a number [requirement]', async () => {
    for (const units of ['metric', 'us'] as const) {
      const html = await (units === 'us' ? wholePage() : pricedPage(units));
      const words = plain(
        html
          .replace(/<style>.*?<\/style>/gs, '')
          .replace(/<svg.*?<\/svg>/gs, (svg) =>
            [...svg.matchAll(/>([^<]+)<\/text>/g)].map((text) => text[1]).join(' '),
          ),
      );
      expect(words.match(/(?:^|[\s(>])[-–]\d/g)).toBeNull();
      expect(words).toMatch(/−\d/);
    }
  });

  it('has no word of the library on it [requirement]', async () => {
    const html = plain((await wholePage()).replace(/<style>.*?<\/style>/gs, ''));
    expect(
      html.match(
        /keepTankNodes|simulate\b|RunResult|\b(?:array|loop|tank|draw|heater|control|coil|pump)\.[a-z][A-Za-z]+/g,
      ),
    ).toBeNull();
  });
});
