import { MONTH_NAMES } from '../calendar.ts';
import { SEVERITY_WORDS } from '../cautions/index.ts';
import { BALANCE_DEFINITION, DEFINITIONS } from '../definitions.ts';
import { escapeMarkdown } from '../escape.ts';
import { buildModel } from '../model/build.ts';
import type { PlainTable, ReportModel, RunModel } from '../model/types.ts';
import { checkOptions, listOwnSections, listRuns, REPORT_OPTIONS, type ReportOptions, type Runs } from '../options.ts';
import { formatNumber } from '../units.ts';
import { alarmWords, sheetOf } from './sheet.ts';

/** Pipe table; cells must be escaped already. */
function table(header: readonly string[], rows: readonly (readonly string[])[], textColumns = 1): string[] {
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  return [
    line(header),
    line(header.map((_, column) => (column < textColumns ? '---' : '---:'))),
    ...rows.map(line),
    '',
  ];
}

const plainTable = ({ header, rows }: PlainTable): string[] =>
  table(
    header.map(escapeMarkdown),
    rows.map((row) => row.map(escapeMarkdown)),
  );

const paragraph = (text: string): string[] => [escapeMarkdown(text), ''];
const list = (texts: readonly string[]): string[] => [...texts.map((text) => `- ${escapeMarkdown(text)}`), ''];

/** Title and for whom, the answer, the alarm, the months, the figures, what they rest on. */
function sheetLines(runs: Runs, model: ReportModel, options: ReportOptions): string[] {
  const { client, date, note } = options;
  const several = model.runs.length > 1;
  const two = model.runs.length === 2;
  const forWhom = [client === undefined ? '' : `for ${client}`, date ?? ''].filter((part) => part !== '').join(' · ');
  const { rows, facts } = sheetOf(listRuns(runs), model, options);
  const names = model.runs.map(({ letter, name }) => escapeMarkdown(several ? `${letter} ${name}` : name));
  const figures = rows.map(({ label, cells, ranges, notes, differences }) => [
    escapeMarkdown(label),
    ...cells.map((cell, index) =>
      [ranges[index] === '' ? cell : `${cell} (${ranges[index]})`, notes[index]!, two ? '' : differences[index]!]
        .filter((part) => part !== '')
        .map(escapeMarkdown)
        .join('<br>'),
    ),
    ...(two ? [escapeMarkdown(differences[1]!)] : []),
  ]);
  const shares = model.runs.map(({ letter, summary }) => [
    several ? letter : '%',
    ...summary.months.map(({ sunShare }) => (sunShare === null ? '–' : formatNumber(100 * sunShare, 0))),
  ]);
  return [
    `# ${escapeMarkdown(model.title)}`,
    '',
    ...(forWhom === '' ? [] : paragraph(forWhom)),
    `**${escapeMarkdown(model.answer.does)}**`,
    '',
    ...paragraph(model.answer.decides),
    ...paragraph(alarmWords(model)),
    ...paragraph('Share of the hot water that the sun makes, % of each month:'),
    ...table(['', ...MONTH_NAMES.map((name) => name.slice(0, 3))], shares),
    ...table(['', ...names, ...(two ? ['B − A'] : [])], figures),
    ...list(facts),
    ...(note === undefined ? [] : paragraph(note)),
  ];
}

/** A part for each design, under its name where there are several. */
const byDesign = (model: ReportModel, part: (run: RunModel) => PlainTable): string[] =>
  model.runs.flatMap((run) => [
    ...(model.runs.length > 1 ? [`### ${escapeMarkdown(`${run.letter} ${run.name}`)}`, ''] : []),
    ...plainTable(part(run)),
  ]);

function numberLines(model: ReportModel, { against }: ReportOptions): string[] {
  const several = model.runs.length > 1;
  const { ranking } = model;
  return [
    '## Numbers of the year',
    '',
    ...(several ? list(model.sentences) : []),
    ...(ranking === null
      ? []
      : [
          ...paragraph(`${ranking.label}:`),
          ...ranking.lines.map((line, place) => `${place + 1}. ${escapeMarkdown(line)}`),
          '',
        ]),
    ...table(
      ['', ...model.runs.map(({ letter, name }) => escapeMarkdown(several ? `${letter} ${name}` : name))],
      model.numbers.map(({ label, unit, cells }) => [
        escapeMarkdown(`${label} [${unit}]`),
        ...cells.map(({ text, range, difference, note }) =>
          [range === '' ? text : `${text} (${range})`, difference, note].filter((part) => part !== '').join('<br>'),
        ),
      ]),
    ),
    ...(several
      ? paragraph(`Under each number: its difference from ${against === 'previous' ? 'the design before it' : 'A'}.`)
      : []),
  ];
}

function assumptionLines(model: ReportModel): string[] {
  const several = model.runs.length > 1;
  return [
    '## Assumptions',
    '',
    ...table(
      ['Where', 'Value', several ? 'Designs' : '', 'Source'].filter((head) => head !== ''),
      model.assumptions.map(({ path, value, source, designs }) =>
        (several ? [path, value, designs === '' ? 'all' : designs, source] : [path, value, source]).map(escapeMarkdown),
      ),
      4,
    ),
    ...paragraph(model.place),
    ...list([...model.limits, ...model.notes]),
  ];
}

/**
 * Report in GitHub-flavoured Markdown, without charts.
 *
 * @param runs - one run, or several to compare
 * @param options - units, what to compare with, and what stands over it
 * @throws {@link ReportError} when there is no run or a column is not a whole year of finite numbers.
 */
export function renderMarkdown(runs: Runs, options: ReportOptions = {}): string {
  checkOptions(options, REPORT_OPTIONS);
  const model = buildModel(runs, options);
  const cautions = model.cautions.map(
    ({ severity, findings, advice, who, source }) =>
      `- **${SEVERITY_WORDS[severity]}:** ${escapeMarkdown([...findings, advice, `Who may do it: ${who}`, `[${source}]`].join(' '))}`,
  );
  const money =
    model.money === null ? [] : ['## Money', '', ...plainTable(model.money.table), ...list(model.money.grounds)];
  const own = listOwnSections(options).flatMap(({ title, paragraphs = [], table: cells }) => [
    '',
    `## ${escapeMarkdown(title)}`,
    '',
    ...paragraphs.flatMap(paragraph),
    ...(cells === undefined ? [] : plainTable(cells)),
  ]);
  const meanings = [
    ...model.numbers.map(({ key }) => `- **${DEFINITIONS[key].label}:** ${DEFINITIONS[key].definition}`),
    ...(model.money?.meanings ?? []).map(([label, meaning]) => `- **${label}:** ${meaning}`),
  ];
  return `${[
    ...sheetLines(runs, model, options),
    '## Months',
    '',
    ...(model.season.length > 0 ? list(model.season) : []),
    ...byDesign(model, ({ months }) => months),
    `## Cautions: ${model.cautionCount.words}`,
    '',
    ...cautions,
    '',
    ...money,
    ...numberLines(model, options),
    ...assumptionLines(model),
    '## Energy balance',
    '',
    ...byDesign(model, ({ balance }) => balance),
    BALANCE_DEFINITION,
    '',
    '## What the numbers mean',
    '',
    ...meanings,
    ...own,
  ].join('\n')}\n`;
}
