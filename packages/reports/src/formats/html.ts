import { type ChartName, drawChart, tabulateChart } from '../charts/chart.ts';
import { chartContext } from '../charts/context.ts';
import { weekDates } from '../charts/week.ts';
import { escapeHtml } from '../escape.ts';
import { buildModel } from '../model/build.ts';
import type { ReportModel } from '../model/types.ts';
import { listRuns, type ReportOptions, type Runs } from '../options.ts';
import {
  assumptionTable,
  balanceTables,
  cautionList,
  definitionList,
  designName,
  leadCards,
  moneySection,
  numberTable,
  plainTable,
  sentence,
} from './html-parts.ts';
import { STYLE } from './html-style.ts';

/** Each chart is drawn for screens and paper, and for telephones; the style sheet shows one. [px] */
const WIDTHS = { wide: 960, narrow: 360 };

const CAPTIONS: Record<ChartName, string> = {
  'monthly-energy':
    'Heat into the hot water of the house by month: what the draw took out of the solar tank, and what the burner added.',
  'tank-year':
    'Hottest node of the solar tank in each hour: days from left to right, hours of the day from bottom to top.',
  'summer-week': 'The week with most sun on the collectors in the summer half of the year.',
  'winter-week': 'The week with least sun on the collectors in the winter half of the year.',
};

/** A figure in both widths, its caption and its numbers. */
async function figure(name: ChartName, runs: Runs, model: ReportModel): Promise<string> {
  const summaries = model.runs.map(({ summary }) => summary);
  const context = (width: number) => chartContext(listRuns(runs), model.units, width, 'page', summaries);
  const wide = context(WIDTHS.wide);
  const svgs = await Promise.all(
    (['wide', 'narrow'] as const).map(
      async (size) => `<div class="${size}">${await drawChart(name, context(WIDTHS[size]), 'page')}</div>`,
    ),
  );
  const season = name === 'summer-week' ? 'summer' : name === 'winter-week' ? 'winter' : null;
  const letters = model.runs.length > 1 ? model.runs.map(({ letter, name: of }) => `${letter}: ${of}`).join(', ') : '';
  const dates = season === null ? '' : ` ${weekDates(wide, season)}.`;
  const designs = season !== null && letters !== '' ? ' The week is that of design A.' : '';
  const numbers = plainTable(
    `Numbers of the chart${letters === '' ? '' : `, ${letters}`}`,
    tabulateChart(name, wide),
    name === 'monthly-energy',
  );
  return `<figure>${svgs.join('')}<figcaption>${CAPTIONS[name]}${dates}${designs}</figcaption></figure><details><summary>Numbers of this chart</summary>${numbers}</details>`;
}

const section = (title: string, content: string): string => `<section><h2>${title}</h2>${content}</section>`;

function monthTables(model: ReportModel): string {
  return model.runs
    .map(({ months, name }, index) => {
      const heading = model.runs.length > 1 ? `<h3>${designName(model, index)}</h3>` : '';
      return heading + plainTable(`Months, ${name}`, months, true);
    })
    .join('');
}

/**
 * The report as one HTML file that needs nothing else: no network, no script; charts as inline SVG with their numbers in
 * tables; for light and dark screens, telephones and paper.
 *
 * @param runs - one run, or several to compare
 * @param options - units and what to compare with
 * @returns the whole document; the same input gives the same text
 * @throws {@link ReportError} when there is no run or a column is not a whole year of finite numbers.
 */
export async function renderHtml(runs: Runs, options: ReportOptions = {}): Promise<string> {
  const model = buildModel(runs, options);
  const several = model.runs.length > 1;
  const against = options.against === 'previous' ? 'the design before it' : 'A';
  const differences = several
    ? `<p class="quiet">After each number: its difference from ${against}, in the same unit and in percent; “=” where there is none as shown.</p>`
    : '';
  const said = model.sentences.map((one) => `<p>${sentence(one)}</p>`).join('');
  const body = [
    `<header><h1>${escapeHtml(model.title)}</h1><p class="quiet">${sentence(model.place)}</p></header>`,
    leadCards(model),
    section(several ? 'Side by side' : 'All numbers of the year', said + differences + numberTable(model)),
    section('Energy by month', (await figure('monthly-energy', runs, model)) + monthTables(model)),
    section('Tank temperature over the year', await figure('tank-year', runs, model)),
    section('A summer week', await figure('summer-week', runs, model)),
    section('A winter week', await figure('winter-week', runs, model)),
    section('Cautions', cautionList(model)),
    ...(model.money === null ? [] : [section('Money', moneySection(model, model.money))]),
    section('Assumptions', assumptionTable(model)),
    section('Energy balance', balanceTables(model)),
    section('What the numbers mean', definitionList(model)),
  ];
  const names = model.runs.map(({ name }) => name).join('; ');
  const title = several ? `${model.title}: ${names}` : names;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>${escapeHtml(title)}</title>
<style>${STYLE}</style>
</head>
<body>
<main>
${body.join('\n')}
</main>
</body>
</html>
`;
}
