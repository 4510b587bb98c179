/** What stands behind the first sheet, section by section. */
import { type ChartName, chartMissing, drawChart, tabulateChart } from '../charts/chart.ts';
import { type ChartContext, chartContext } from '../charts/context.ts';
import { hardHoursNone } from '../charts/hard-hours.ts';
import { weekDates } from '../charts/week.ts';
import { escapeHtml } from '../escape.ts';
import { wordsOfFields } from './given.ts';
import type { PageSection } from './html-page.ts';
import { bullets, cautionList, figureHtml, plainTable, sentence, type TableOptions } from './html-parts.ts';
import { balance, definitions, inputs, nameHeading, numbers, type SectionGround, several } from './html-tables.ts';

/** Sections of a report's page, in order. */
export const SECTION_NAMES = [
  'months',
  'cautions',
  'money',
  'flow',
  'year',
  'pump',
  'weeks',
  'numbers',
  'inputs',
  'definitions',
  'balance',
] as const;

/** A section of a report's page. */
export type SectionName = (typeof SECTION_NAMES)[number];

/** Each chart is drawn for screens and paper, and for telephones; the style sheet shows one. [px] */
const WIDTHS = { wide: 720, narrow: 342 };

/** What a picture is called, and what is said under it. */
interface Words {
  readonly title: string;
  readonly caption: string;
}

/** A chart in both widths with its numbers, or why there is none. @param only - one design of several */
async function picture(
  { results, model, options }: SectionGround,
  name: ChartName,
  words: Words | ((context: ChartContext) => Words),
  only?: number,
): Promise<string> {
  const pick = <T>(all: readonly T[]): readonly T[] => (only === undefined ? all : [all[only]!]);
  const summaries = pick(model.runs.map(({ summary }) => summary));
  const context = (width: number): ChartContext => ({
    ...chartContext(pick(results), model.units, width, 'page', summaries),
    losses: options.losses ?? false,
    money: options.money ?? null,
  });
  const wide = context(WIDTHS.wide);
  const missing = chartMissing(name, wide);
  if (missing !== null) return `<p class="quiet">${sentence(missing)}</p>`;
  const [large, small] = await Promise.all([
    drawChart(name, wide, 'page'),
    drawChart(name, context(WIDTHS.narrow), 'page'),
  ]);
  const tableOptions: TableOptions = {
    sum: name === 'monthly-energy' || name === 'tank-year' || name === 'hard-hours',
  };
  const said = typeof words === 'function' ? words(wide) : words;
  return figureHtml({ ...said, wide: large, narrow: small, table: tabulateChart(name, wide), tableOptions });
}

const DAY_AND_HOUR = 'Days run from left to right, hours of the day from bottom to top.';

async function months(ground: SectionGround): Promise<string[]> {
  const { model, options } = ground;
  const losses = options.losses === true ? ' Below the line: what pipes, tank and heater lost.' : '';
  const tables = model.runs.map(
    ({ months: table, name }, index) =>
      `<div class="block">${nameHeading(model, index)}${plainTable(`Months, ${name}`, table, { sum: true })}</div>`,
  );
  const season = model.season.map((line) => `<p>${sentence(line)}</p>`).join('');
  return [
    season,
    await picture(ground, 'monthly-energy', {
      title: 'Heat into the hot water of the house, by month',
      caption: `What the draw took out of the solar tank, and what the burner added; % under the months: hot water by the sun, its share of what the taps asked for; what the burner adds keeps the heater itself warm, too. The line: what the burner would give without the sun.${losses}`,
    }),
    `<details><summary>All numbers of the months</summary>${tables.join('')}</details>`,
  ];
}

function cautionBlocks({ model }: SectionGround): string[] {
  const inWords = model.cautions.map((caution) => ({
    ...caution,
    findings: caution.findings.map(wordsOfFields),
    advice: wordsOfFields(caution.advice),
    source: wordsOfFields(caution.source),
  }));
  const own = inWords.filter(({ findings, severity }) => findings.length > 0 && severity !== 'note');
  const rest = inWords.filter((caution) => !own.includes(caution));
  const [first, ...more] = own;
  const known = rest.length === 0 ? '' : `<div class="long"><h3>Good to know</h3>${cautionList(rest, 'notes')}</div>`;
  return [
    first === undefined ? `<p>${escapeHtml(model.cautionCount.words)}.</p>` : cautionList([first]),
    cautionList(more),
    known,
  ];
}

async function money(ground: SectionGround): Promise<string[]> {
  const { model } = ground;
  if (model.money === null) return [];
  const { table, grounds } = model.money;
  // The table first: it fills what a sheet of paper has left, where a picture would leave it empty.
  return [
    `<div class="pair"><div>${plainTable('Money', table)}</div><div><h3>Reckoned with</h3>${bullets(grounds)}</div></div>`,
    await picture(ground, 'money-years', {
      title: 'Worth of the savings less what the system cost, year by year',
      caption: 'Brought to the start at the discount rate. Where a line crosses zero, the system is paid back.',
    }),
  ];
}

/** The design that one picture stands for: the winner, or the first; `undefined` where there is one alone. */
const leading = ({ model }: SectionGround): number | undefined =>
  several(model) ? (model.answer.winner ?? 0) : undefined;

async function flow(ground: SectionGround): Promise<string[]> {
  const only = leading(ground);
  const of = only === undefined ? '' : ` of ${ground.model.runs[only]!.letter}`;
  return [
    await picture(
      ground,
      'energy-flow',
      {
        title: `Where the heat${of} goes in a year`,
        caption:
          'Each band is as wide as what flows in it; grey is lost. The thinnest bands are left out; the numbers name all.',
      },
      only,
    ),
  ];
}

const year = async (ground: SectionGround): Promise<string[]> =>
  Promise.all([
    picture(ground, 'tank-year', { title: 'Hottest part of the tank through the year', caption: DAY_AND_HOUR }),
    picture(ground, 'tank-duration', {
      title: several(ground.model)
        ? 'How long the hottest part of the tank is how hot'
        : 'How long the tank is how hot',
      caption: 'In how many hours of the year the tank is at least as hot as the height of the line.',
    }),
    picture(ground, 'hard-hours', (context) => {
      const none = hardHoursNone(context);
      const others = none.length === 0 ? '' : ` ${none.join(', ')}: none.`;
      return { title: 'Hours in the sun without flow', caption: `${DAY_AND_HOUR}${others}` };
    }),
  ]);

/** Weeks of two designs stand side by side; of more, that of the leading one. */
async function weeks(ground: SectionGround): Promise<string[]> {
  const { runs } = ground.model;
  const only = runs.length > 2 ? leading(ground) : undefined;
  const of = only === undefined ? '' : ` of ${runs[only]!.letter}`;
  return Promise.all(
    (['hottest', 'coldest'] as const).map((kind) =>
      picture(
        ground,
        `${kind}-week`,
        (context) => ({
          title: `${kind === 'hottest' ? 'Hottest' : 'Coldest'} week${of}: ${weekDates(context, kind)}`,
          caption: 'Midnight to midnight, standard time.',
        }),
        only,
      ),
    ),
  );
}

async function pump(ground: SectionGround): Promise<string[]> {
  const only = leading(ground);
  const of = only === undefined ? '' : ` of ${ground.model.runs[only]!.letter}`;
  return [
    await picture(
      ground,
      'pump',
      {
        title: `Flow in the loop${of} for the light on the PV module`,
        caption: 'Hours by classes of light; those in which the high limit stopped the pump are left out.',
      },
      only,
    ),
  ];
}

const TITLES: Readonly<Record<SectionName, string>> = {
  months: 'Month by month',
  cautions: 'Cautions',
  money: 'Money',
  flow: 'Where the heat goes',
  year: 'The tank over the year',
  weeks: 'A hot week and a cold week',
  pump: 'The pump',
  numbers: 'Numbers of the year',
  inputs: 'Inputs and defaults',
  definitions: 'What the numbers mean',
  balance: 'Energy balance',
};

/** The sections asked for, in their order. Definitions stay out of print where nobody asked for them. */
export async function reportSections(ground: SectionGround, wanted?: readonly SectionName[]): Promise<PageSection[]> {
  const given = wanted !== undefined;
  const names = wanted ?? SECTION_NAMES;
  const make: Readonly<Record<SectionName, () => string[] | Promise<string[]>>> = {
    months: () => months(ground),
    cautions: () => cautionBlocks(ground),
    money: () => money(ground),
    flow: () => flow(ground),
    year: () => year(ground),
    weeks: () => weeks(ground),
    pump: () => pump(ground),
    numbers: () => numbers(ground, names.includes('definitions')),
    inputs: () => inputs(ground),
    definitions: () => definitions(ground),
    balance: () => balance(ground),
  };
  const asked = SECTION_NAMES.filter((name) => names.includes(name));
  return Promise.all(
    asked.map(async (name) => ({
      title: TITLES[name],
      blocks: await make[name](),
      printed: name !== 'definitions' || given,
    })),
  );
}
