import { CHART_NAMES, type ChartName, chartMissing, drawChart, tabulateChart } from '../charts/chart.ts';
import type { Season } from '../charts/choose-week.ts';
import { chartContext } from '../charts/context.ts';
import { weekDates } from '../charts/week.ts';
import { ReportError } from '../errors.ts';
import { escapeHtml } from '../escape.ts';
import { buildModel } from '../model/build.ts';
import type { ReportModel } from '../model/types.ts';
import { listRuns, type ReportOptions, type Runs } from '../options.ts';
import { htmlPage } from './html-page.ts';
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
  rankList,
  sentence,
} from './html-parts.ts';

/** Each chart is drawn for screens and paper, and for telephones; the style sheet shows one. [px] */
const WIDTHS = { wide: 960, narrow: 360 };

/** Sections of pictures: heading and charts. */
const MONTH_CHARTS: readonly ChartName[] = ['monthly-energy', 'month-multiples', 'energy-flow'];
const PICTURES: readonly [title: string, charts: readonly ChartName[]][] = [
  ['The tank over the year', ['tank-year', 'tank-duration']],
  ['Collectors and pump over the year', ['absorber-year', 'flow-year', 'pump-map']],
  ['A summer week', ['summer-week', 'tank-layers']],
  ['A winter week', ['winter-week']],
];

const DAYS_AND_HOURS = 'days from left to right, hours of the day from bottom to top.';
const CAPTIONS: Record<ChartName, string> = {
  comparison: 'The leading numbers of all designs. Bars start at nought; temperatures, which have none, are dots.',
  'monthly-energy':
    'Heat into the hot water of the house by month: what the draw took out of the solar tank, and what the burner added.',
  'month-multiples': 'Every column of the table of months, to its own scale.',
  'energy-flow':
    'The year’s heat from sun and fuel to the taps: each band is as wide as what flows in it; grey bands are lost or stored. The thinnest have no words; the numbers of this chart name all.',
  'tank-year': `Hottest node of the solar tank in each hour: ${DAYS_AND_HOURS}`,
  'absorber-year': `Hottest part of the absorber in each hour: ${DAYS_AND_HOURS}`,
  'flow-year': `Flow in the collector loop, mean of each hour: ${DAYS_AND_HOURS}`,
  'tank-duration': 'In how many hours of the year the tank is at least as hot as the height of the line.',
  'summer-week': 'The week with most sun on the collectors in the summer half of the year.',
  'tank-layers':
    'Layers of the tank from bottom to top in the same week: the sharper the colours part, the better it is stratified.',
  'winter-week': 'The week with least sun on the collectors in the winter half of the year.',
  'pump-map':
    'Every hour with light on the PV module, or with flow, is a dot: light on the module’s plane to the right, mean flow upwards.',
};

const SEASONS: Partial<Record<ChartName, Season>> = {
  'summer-week': 'summer',
  'tank-layers': 'summer',
  'winter-week': 'winter',
};

/** Options of {@link renderHtml}. */
export interface HtmlOptions extends ReportOptions {
  /** Which charts are on the page; default all. Those that the runs have no data for are left out with a line. */
  readonly charts?: readonly ChartName[];
  /** Whether losses hang below the months of `monthly-energy`. Default false. */
  readonly losses?: boolean;
}

/** A figure in both widths, its caption and its numbers; nothing where the reader left it out. */
async function figure(name: ChartName, runs: Runs, model: ReportModel, options: HtmlOptions): Promise<string> {
  if (options.charts !== undefined && !options.charts.includes(name)) return '';
  const summaries = model.runs.map(({ summary }) => summary);
  const { losses = false } = options;
  const context = (width: number) => ({
    ...chartContext(listRuns(runs), model.units, width, 'page', summaries),
    losses,
  });
  const wide = context(WIDTHS.wide);
  const missing = chartMissing(name, wide);
  if (missing !== null) return name === 'comparison' ? '' : `<p class="quiet">${sentence(missing)}</p>`;
  const svgs = await Promise.all(
    (['wide', 'narrow'] as const).map(
      async (size) => `<div class="${size}">${await drawChart(name, context(WIDTHS[size]), 'page')}</div>`,
    ),
  );
  const season = SEASONS[name];
  const letters = model.runs.length > 1 ? model.runs.map(({ letter, name: of }) => `${letter}: ${of}`).join(', ') : '';
  const dates = season === undefined ? '' : ` ${weekDates(wide, season)}.`;
  const designs = season !== undefined && letters !== '' ? ' The week is that of design A.' : '';
  const below = losses && name === 'monthly-energy' ? ' Below the line: what pipes, tank and backup heater lost.' : '';
  const numbers = plainTable(
    `Numbers of the chart ${name}${letters === '' ? '' : `, ${letters}`}`,
    tabulateChart(name, wide),
    name === 'monthly-energy' || name === 'month-multiples',
  );
  return `<figure>${svgs.join('')}<figcaption>${CAPTIONS[name]}${below}${dates}${designs}</figcaption></figure><details><summary>Numbers of this chart</summary>${numbers}</details>`;
}

/** Its id is what the list on top links to. */
const section = (title: string, content: string): string =>
  content === '' ? '' : `<section><h2 id="${idOf(title)}">${title}</h2>${content}</section>`;
const idOf = (title: string): string => title.toLowerCase().replaceAll(' ', '-');

/** Links to the sections, for keyboards and telephones. */
const contents = (sections: readonly string[]): string => {
  const titles = sections.flatMap((one) => /^<section><h2 id="[^"]*">([^<]*)</.exec(one)?.[1] ?? []);
  return `<nav aria-label="Sections"><ul>${titles.map((title) => `<li><a href="#${idOf(title)}">${title}</a></li>`).join('')}</ul></nav>`;
};

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
 * @param options - units, what to compare with, prices and which charts
 * @returns the whole document; the same input gives the same text
 * @throws {@link ReportError} when there is no run, a column is not a whole year of finite numbers, or a chart is not known.
 */
export async function renderHtml(runs: Runs, options: HtmlOptions = {}): Promise<string> {
  const unknown = options.charts?.find((name) => !CHART_NAMES.includes(name));
  if (unknown !== undefined)
    throw new ReportError('charts', JSON.stringify(unknown), `some of ${CHART_NAMES.join(', ')}`, 'Choose of these.');
  const model = buildModel(runs, options);
  const several = model.runs.length > 1;
  const against = options.against === 'previous' ? 'the design before it' : 'A';
  const differences = several
    ? `<p class="quiet">After each number: its difference from ${against}, in the same unit and in percent; “=” where there is none as shown.</p>`
    : '';
  const said = model.sentences.map((one) => `<p>${sentence(one)}</p>`).join('');
  const draw = async (names: readonly ChartName[]): Promise<string> =>
    (await Promise.all(names.map((name) => figure(name, runs, model, options)))).join('');
  const pictures = await Promise.all(PICTURES.map(async ([title, names]) => section(title, await draw(names))));
  const sections = [
    section(
      several ? 'Side by side' : 'All numbers of the year',
      `${said}${rankList(model)}${await draw(['comparison'])}${differences}${numberTable(model)}`,
    ),
    section('Energy by month', (await draw(MONTH_CHARTS)) + monthTables(model)),
    section('Cautions', cautionList(model)),
    ...(model.money === null ? [] : [section('Money', moneySection(model, model.money))]),
    ...pictures,
    section('Assumptions', assumptionTable(model)),
    section('Energy balance', balanceTables(model)),
    section('What the numbers mean', definitionList(model)),
  ].filter((one) => one !== '');
  const body = [
    `<header><h1>${escapeHtml(model.title)}</h1><p class="quiet">${sentence(model.place)}</p></header>`,
    leadCards(model),
    contents(sections),
    ...sections,
  ];
  const names = model.runs.map(({ name }) => name).join('; ');
  const title = several ? `${model.title}: ${names}` : names;
  return htmlPage(title, body);
}
