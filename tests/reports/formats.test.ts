import { renderCsv, renderHtml, renderJson, renderMarkdown, renderText, summarize } from '@noonloop/reports';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { escapeCell, glueUnits } from '../../packages/reports/src/escape.ts';
import { csvText } from '../../packages/reports/src/formats/csv.ts';
import { HOSTILE, HOSTILE_MONEY, hostile, layered, pageOf, three, two, US_UNITS, wholePage } from './fixture.ts';

/** `1,234` or `−1.5` as a number. */
const number = (text: string): number => Number(text.replaceAll(',', '').replace('−', '-'));

/** Whether twelve months, shown with a number of decimals, add up to the year as shown. */
function expectSum(rows: readonly (readonly string[])[], columns: readonly number[]): void {
  expect(rows).toHaveLength(13);
  for (const column of columns) {
    const months = rows.slice(0, 12).map((row) => number(row[column]!));
    expect(months.reduce((sum, value) => sum + value, 0)).toBeCloseTo(number(rows[12]![column]!), 9);
  }
}

/** Words and numbers of a page. */
const plain = (html: string): string => html.replace(/<style>.*?<\/style>/gs, '').replace(/<[^>]*>/g, ' ');

/** Columns of the monthly tables that are sums: sunlight, delivered, burner, fuel saved, stagnation. */
const SUMS = [1, 2, 3, 5, 6];

describe.each(['metric', 'us'] as const)('months add up to the year as shown, %s [definition]', (units) => {
  it('in text', () => {
    const lines = renderText(three, { units }).split('\n');
    const start = lines.findIndex((line) => line.startsWith('Jan '));
    expectSum(
      lines.slice(start, start + 13).map((line) => line.split(/\s+/)),
      SUMS,
    );
  });

  it('in Markdown', () => {
    const lines = renderMarkdown(three, { units }).split('\n');
    const start = lines.findIndex((line) => line.startsWith('| January'));
    const cells = lines.slice(start, start + 13).map((line) =>
      line
        .split('|')
        .map((cell) => cell.trim())
        .slice(1),
    );
    expectSum(cells, SUMS);
  });

  it('in HTML, in the table and in the numbers of the chart', async () => {
    const html = await renderHtml(three, { units, sections: ['months', 'year'] });
    expect(html).toContain('never stood in the sun'); // in place of the chart of hard hours
    if (units === 'metric') expect(plain(html)).not.toMatch(US_UNITS);
    const rowsFrom = (table: string): string[][] =>
      [...table.matchAll(/<tr[^>]*><th scope="row">(\w+)<\/th>(.*?)<\/tr>/g)].map((match) => [
        match[1]!,
        ...[...match[2]!.matchAll(/<td>(.*?)<\/td>/g)].map((cell) => cell[1]!),
      ]);
    const tables = [...html.matchAll(/<table[^>]*>.*?<\/table>/gs)]
      .map(([table]) => table)
      .filter((table) => table.includes('<th scope="row">January<'));
    expect(tables).toHaveLength(3); // behind two pictures, and the table of months
    expectSum(rowsFrom(tables[0]!), [1, 2, 3]);
    expectSum(rowsFrom(tables[1]!), SUMS);
    expectSum(rowsFrom(tables[2]!), [1, 2, 3]); // hours of the tank at taps, heater and limit
  });

  it('in CSV, against the table of numbers', () => {
    const months = Papa.parse<Record<string, string>>(renderCsv(three, { units }), {
      header: true,
      skipEmptyLines: true,
    }).data;
    const numbers = Papa.parse<string[]>(renderCsv(three, { units, table: 'numbers' }), { skipEmptyLines: true }).data;
    expect(months).toHaveLength(12);
    const year = new Map(numbers.slice(1).map((row) => [`${row[0]}_${row[1]}`, Number(row[2])]));
    const unit = units === 'metric' ? 'kWh' : 'kBtu';
    for (const column of [`deliveredEnergy_${unit}`, 'stagnationHours_h', `irradiation_${unit}`]) {
      const sum = months.reduce((total, row) => total + Number(row[column]), 0);
      expect(sum, column).toBeCloseTo(year.get(column)!, 8);
    }
  });
});

describe('renderJson', () => {
  const parsed = JSON.parse(renderJson([two, three]));

  it('carries a schema version, SI units in its keys and the bits of the summary [definition]', () => {
    expect(parsed).toMatchObject({ schema: 'noonloop-report', schemaVersion: 1 });
    expect(parsed.runs[0].year.deliveredEnergy_J).toBe(summarize(two).year.deliveredEnergy);
    expect(parsed.runs[1].year.peakTankTemperature_degC).toBe(summarize(three).year.peakTankTemperature);
    const sum = parsed.runs[1].months.reduce(
      (total: number, month: Record<string, number>) => total + month.deliveredEnergy_J!,
      0,
    );
    expect(sum).toBe(parsed.runs[1].year.deliveredEnergy_J);
  });

  it('has the hours only when asked (second-tank.test.ts), and no comparison of one [definition]', () => {
    expect(parsed.runs[0].hours).toBeUndefined();
    expect(JSON.parse(renderJson(two)).comparison).toBeNull();
    expect(parsed.comparison.rows[0]).toMatchObject({
      number: 'deliveredEnergy',
      differences_J: [null, expect.any(Number)],
    });
  });
});

const hostileHours = renderCsv(hostile, { table: 'hours' });

describe('renderCsv of hours', () => {
  it('has 8760 rows a design, units in every head and the numbers of the run [definition]', () => {
    // Several designs below each other: second-tank.test.ts.
    const lines = hostileHours.trimEnd().split('\r\n');
    expect(lines).toHaveLength(1 + 8760);
    const some = [lines[0], lines[4001], lines[1]].join('\r\n');
    const { data, meta } = Papa.parse<Record<string, string>>(some, { header: true });
    for (const head of meta.fields!.slice(6)) expect(head).toMatch(/_(W_per_m2|degC|L_per_min|percent|kWh|L|bar)$/);
    expect(Number(data[0]!.solarHeat_kWh)).toBeCloseTo(hostile.columns.solarHeat[4000]! / 3.6e6, 4);
    expect(data[1]).toMatchObject({ start: '1 Jan 00:00', month: '1', day: '1', hourOfDay: '0' });
  });
});

describe('what others wrote', () => {
  it('cannot start markup, script or links in HTML [escaping]', async () => {
    const html = await wholePage();
    expect(html).not.toMatch(/<script/i);
    expect(html).not.toContain('"q"');
    expect(html).not.toMatch(/[^\n\P{Cc}]|\p{Cf}/u);
    expect(html).toContain('&lt;script&gt;');
    for (const [attribute] of html.matchAll(/ (?:href|src|xlink:href)="[^"]*"/g)) expect(attribute).toMatch(/="#/);
  });

  it('cannot start markup, HTML or table cells in Markdown [escaping]', () => {
    const markdown = renderMarkdown([two, hostile]);
    expect(markdown.replaceAll('<br>', '')).not.toContain('<');
    expect(markdown).not.toMatch(/[^\\]\[x\]/);
    const table = markdown.split('\n').filter((line) => line.startsWith('| Energy delivered'));
    for (const line of table) expect(line.replaceAll('\\|', '').split('|')).toHaveLength(5);
  });

  it('cannot become a formula in CSV [escaping]', () => {
    for (const table of ['months', 'hours', 'numbers'] as const) {
      const csv = table === 'hours' ? hostileHours : renderCsv(hostile, { table });
      const { data } = Papa.parse<string[]>(csv, { skipEmptyLines: true, preview: 3 });
      for (const cell of data.flat()) expect(cell).not.toMatch(/^\s*(?:[=+@]|-\D)/);
    }
    const starts = ['=1+1', '+1', '-1', '@a', '\t=1', ' =1', '\uff1d1', '\uff0b1', '\uff0d1', '\uff20a'];
    for (const start of starts) expect(csvText([[escapeCell(start)]])).toMatch(/^"?'[=+\-@\uff1d\uff0b\uff0d\uff20]/);
    // Where a semicolon parts cells, what follows it begins one.
    const parted = { ...two, design: { ...two.design, name: 'a;=1' } };
    expect(renderCsv(parted).split('\r\n')[1]).toMatch(/^a;'=1,/);
  });

  it('is as harmless in the source of a factor and in every chart [escaping]', async () => {
    const money = HOSTILE_MONEY;
    const html = await wholePage();
    const charts = html.match(/<svg xmlns.*?<\/svg>/gs)!;
    expect(charts).toHaveLength(18); // nine charts, wide and narrow
    expect(charts.filter((svg) => /NaN|undefined|Infinity/.test(svg))).toEqual([]);
    expect(html).not.toMatch(/<script/i);
    expect(html).not.toMatch(/[^\n\P{Cc}]|\p{Cf}/u);
    expect(renderText(hostile, { money })).not.toMatch(/[^\n\P{Cc}]|\p{Cf}/u);
    expect(renderMarkdown(hostile, { money }).replaceAll('<br>', '')).not.toContain('<');
    expect(JSON.parse(renderJson(hostile, { money })).runs[0].design.name).toBe(HOSTILE);
  });

  it('cannot steer a terminal nor break a line [escaping]', () => {
    const text = renderText([two, hostile]);
    expect(text).not.toMatch(/[^\n\P{Cc}]|\p{Cf}/u);
    expect(text).toMatch(/^B {2}=cmd/m); // on one line with its letter
  });
});

describe('renderCsv for spreadsheets', () => {
  it('takes decimal commas and semicolons, the same numbers [definition]', () => {
    for (const table of ['months', 'numbers'] as const) {
      const point = Papa.parse<string[]>(renderCsv(three, { table }), { delimiter: ',', skipEmptyLines: true }).data;
      const text = renderCsv(three, { table, decimal: 'comma' });
      const comma = Papa.parse<string[]>(text, { delimiter: ';', skipEmptyLines: true }).data;
      expect(comma.map((row) => row.length)).toEqual(point.map((row) => row.length));
      let decimals = 0;
      comma.forEach((row, line) => {
        row.forEach((cell, column) => {
          const same = point[line]![column]!;
          if (/^-?\d+\.\d+$/.test(same)) {
            expect(cell).toBe(same.replace('.', ','));
            decimals++;
          } else expect(cell).toBe(same);
        });
      });
      expect(decimals).toBeGreaterThan(20);
    }
  });

  it('guards formulas with semicolons too, and bears a byte order mark when asked [escaping]', () => {
    const run = { ...two, design: { ...two.design, name: '=1;2' } };
    expect(renderCsv(run, { decimal: 'comma' }).split('\r\n')[1]).toMatch(/^"'=1;2";1;January;/);
    expect(renderCsv(two, { byteOrderMark: true }).charCodeAt(0)).toBe(0xfeff);
    expect(renderCsv(two).charCodeAt(0)).not.toBe(0xfeff);
  });

  it('refuses a table or a decimal that it does not know [definition]', () => {
    expect(() => renderCsv(two, { table: 'days' as 'hours' })).toThrow(/table: found "days"/);
    expect(() => renderCsv(two, { decimal: ';' as 'comma' })).toThrow(/decimal: found ";"/);
  });
});

describe('one system of units', () => {
  const WITHOUT_CHARTS = ['cautions', 'numbers', 'inputs', 'definitions', 'balance'] as const;
  const reports = async (units: 'metric' | 'us'): Promise<[string, string][]> => [
    ['text', renderText([two, three], { units })],
    ['markdown', renderMarkdown([two, three], { units })],
    ['csv', renderCsv([two, three], { units }) + renderCsv(two, { units, table: 'numbers' })],
    ['html', plain(await (units === 'us' ? wholePage() : renderHtml([two, three], { sections: WITHOUT_CHARTS })))],
  ];

  it('has no US unit in a metric report [definition]', async () => {
    for (const [name, text] of await reports('metric')) expect(text.match(US_UNITS), name).toBeNull();
  });

  it('has no metric unit in a US report, electricity in kWh excepted [definition]', async () => {
    for (const [name, text] of await reports('us')) {
      const others = text.replace(
        /(?:(?:(?:pump|heater|baseline)Electricity|heaterPvEnergy)(?:_|,)|Electricity of (?:the pump|heater controls|controls, no solar)\s*\\?\[)kWh/g,
        '',
      );
      expect(others.match(/°C|degC|kWh|\d L\b|\[L\]|\d K\b|W\/m|m²|\d m\b|\bbar\b|\bkPa\b/), name).toBeNull();
    }
  });
});

describe('stable output', () => {
  it('is the same text twice in one process, in every format [definition]', async () => {
    const all = async (): Promise<string[]> => [
      renderText([two, three]),
      renderMarkdown(three),
      renderCsv(three),
      renderJson(three),
      await renderHtml(three, { sections: ['cautions', 'numbers', 'inputs', 'definitions', 'balance'] }),
    ];
    expect(await all()).toEqual(await all());
    // Charts: those of a page that other tests look at, drawn anew.
    const page = await wholePage();
    const again = await renderHtml(layered, { units: 'us', losses: true, sections: ['months', 'pump'] });
    const charts = again.match(/<svg xmlns.*?<\/svg>/gs)!;
    expect(charts).toHaveLength(4);
    for (const svg of charts) expect(page).toContain(svg);
  });
});

describe('renderText', () => {
  it.each([40, 60, 80, 120])('fits a width of %i, for one design and for three [definition]', (width) => {
    for (const runs of [two, [two, three, hostile]]) {
      const longest = Math.max(
        ...renderText(runs, { width })
          .split('\n')
          .map((line) => [...line].length),
      );
      expect(longest).toBeLessThanOrEqual(width);
    }
  });

  it('ends after the cautions when short [definition]', () => {
    const short = renderText(two, { detail: 'short' });
    expect(renderText(two).startsWith(short.trimEnd())).toBe(true);
    expect(short).not.toContain('ASSUMPTIONS');
  });

  it('keeps its words and layout [ours, 2026-11-25; guards against change, proves nothing]', async () => {
    await expect(renderText([two, three])).toMatchFileSnapshot('golden/two-designs.txt');
    await expect(renderText(two, { units: 'us', detail: 'short' })).toMatchFileSnapshot('golden/one-design-us.txt');
  });
});

describe('renderHtml', () => {
  it('leads with the first sheet and takes sections in order [definition]', async () => {
    const html = await wholePage();
    const order = [
      '<h1>',
      'class="alarm',
      'class="months"',
      'class="compare"',
      '>Month by month</h2',
      '>Cautions</h2',
      '>Where the heat goes</h2',
      '>The tank over the year</h2',
      '>The pump</h2',
      '>A hot week and a cold week</h2',
      '>Numbers of the year</h2',
      '>Inputs and defaults</h2',
      '>What the numbers mean</h2',
      '>Energy balance</h2',
    ];
    const places = order.map((mark) => html.indexOf(mark));
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(places[0]).toBeGreaterThan(0);
  });

  it('has the sections that were asked for and no others, and refuses one that it does not know [definition]', async () => {
    const html = await pageOf(two, { sections: ['balance', 'months'] });
    expect([...html.matchAll(/<h2 id="[^"]*">([^<]*)</g)].map((match) => match[1])).toEqual([
      'Month by month',
      'Energy balance',
    ]);
    await expect(pageOf(two, { sections: ['pie' as 'months'] })).rejects.toThrow(/sections: found "pie"/);
  });

  it('bears the title, client, date and note of its maker, escaped, in the printed foot too [requirement]', async () => {
    const html = await pageOf(two, {
      title: 'Two or <three>?',
      client: 'M. "Hill"',
      date: '12 May 2026',
      note: 'Roof checked & found sound.',
      sections: ['balance'],
    });
    expect(html).toContain('<h1>Two or &lt;three&gt;?</h1><p class="for">for M. &quot;Hill&quot; · 12 May 2026</p>');
    expect(html).toContain('Roof checked &amp; found sound.');
    expect(html).toContain('content:"Two or \\3c three\\3e \\3f  \\b7  12 May 2026"');
  });

  it('gives every chart a role, a label and its numbers, ids once, headings without gaps [WCAG 2.2]', async () => {
    const html = await wholePage();
    const charts = html.match(/<svg xmlns[^>]*>/g)!;
    expect(charts).toHaveLength(18); // nine charts, wide and narrow
    for (const svg of charts) expect(svg).toMatch(/role="img" aria-label="[^"]{20,}"/);
    expect(html.match(/<details>/g)).toHaveLength(10); // and the tables of the months
    const ids = [...html.matchAll(/ id="([^"]*)"/g)].map((match) => match[1]);
    expect(new Set(ids).size).toBe(ids.length);
    for (const [, target] of html.matchAll(/(?:href="|url\()#([^")]*)/g)) expect(ids).toContain(target);
    const levels = [...html.matchAll(/<h(\d)/g)].map((match) => Number(match[1]));
    levels.forEach((level, index) => {
      expect(level).toBeLessThanOrEqual((levels[index - 1] ?? 0) + 1);
    });
    expect(html).toContain('<html lang="en">');
  });

  it('stays under 1 MB with three designs [requirement]', async () => {
    expect(layered).toHaveLength(3);
    expect(Buffer.byteLength(await wholePage())).toBeLessThan(1e6);
  });
});

describe('glueUnits', () => {
  it('joins a number to its unit only [definition]', () => {
    expect(glueUnits('reaches 60 °C in 3 h or 2 hours')).toBe('reaches 60\u00a0°C in 3\u00a0h or 2 hours');
  });
});
