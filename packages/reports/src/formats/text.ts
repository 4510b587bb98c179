import { MONTH_NAMES } from '../calendar.ts';
import { SEVERITY_WORDS } from '../cautions/index.ts';
import { BALANCE_DEFINITION, DEFINITIONS } from '../definitions.ts';
import { plainText } from '../escape.ts';
import { buildModel } from '../model/build.ts';
import type { ReportModel } from '../model/types.ts';
import {
  checkOptions,
  listOwnSections,
  listRuns,
  type OwnSection,
  REPORT_OPTIONS,
  type ReportOptions,
  type Runs,
} from '../options.ts';
import { formatNumber } from '../units.ts';
import { alarmWords, sheetOf } from './sheet.ts';
import { listItem, textTable, wrap } from './table.ts';

/** Options of {@link renderText}. */
export interface TextOptions extends ReportOptions {
  /** Longest line, at least 40. Default 80. [characters] */
  readonly width?: number;
  /** `short` ends after cautions and money; `full` adds all numbers, assumptions, energy balance and definitions. Default `full`. */
  readonly detail?: 'short' | 'full';
}

const heading = (text: string): string[] => ['', text.toUpperCase(), ''];

/** Title and for whom, the answer, the alarm, the months, the figures, what they rest on: the first sheet in lines. */
function sheetLines(runs: Runs, model: ReportModel, options: TextOptions, width: number): string[] {
  const { client, date, note } = options;
  const several = model.runs.length > 1;
  const forWhom = [client === undefined ? '' : `for ${client}`, date ?? ''].filter((part) => part !== '').join(' · ');
  const { rows, facts } = sheetOf(listRuns(runs), model, options);
  const share = (value: number | null): string => (value === null ? '–' : formatNumber(100 * value, 0));
  const monthRows = model.runs.map(({ letter, summary }) => [
    several ? letter : '%',
    ...summary.months.map(({ sunShare }) => share(sunShare)),
  ]);
  const two = model.runs.length === 2;
  const figures = rows.map(({ label, cells, ranges, notes, differences }) => [
    label,
    ...cells.map((cell, index) => {
      const more = two || index === 0 ? '' : differences[index]!;
      const range = ranges[index] === '' ? cell : `${cell} (${ranges[index]})`;
      return [range, several ? '' : notes[index]!, more].filter((part) => part !== '').join('  ');
    }),
    ...(two ? [differences[1]!] : []),
  ]);
  const heads = several ? [...model.runs.map(({ letter }) => letter), ...(two ? ['B − A'] : [])] : ['Year'];
  return [
    ...wrap(plainText(model.title), width),
    ...(forWhom === '' ? [] : wrap(plainText(forWhom), width)),
    ...(several ? model.runs.flatMap(({ letter, name }) => wrap(`${letter}  ${name}`, width)) : []),
    '',
    ...wrap(model.answer.does, width),
    ...wrap(model.answer.decides, width),
    ...wrap(alarmWords(model), width),
    '',
    ...wrap('Share of the hot water that the sun makes, % of each month:', width),
    ...textTable(['', ...MONTH_NAMES.map((name) => name.slice(0, 3))], monthRows, width),
    '',
    ...textTable(['', ...heads], figures, width),
    '',
    ...facts.flatMap((fact) => wrap(fact, width)),
    ...(note === undefined ? [] : wrap(plainText(note), width)),
  ];
}

function numbers(model: ReportModel, width: number): string[] {
  const several = model.runs.length > 1;
  const header = ['', ...model.runs.map(({ letter }) => (several ? letter : 'Year'))];
  const rows = model.numbers.map(({ label, unit, cells }) => [
    `${label} [${unit}]`,
    ...cells.map(({ text, range, difference, note }) => {
      const number = range === '' ? text : `${text} (${range})`;
      return several
        ? `${number}${difference === '' ? '' : `  ${difference}`}`
        : `${note === '' ? '' : `${note}  `}${number}`;
    }),
  ]);
  return textTable(header, rows, width);
}

function cautionLines(model: ReportModel, width: number): string[] {
  return model.cautions.flatMap(({ severity, findings, advice, who, source }, index) => [
    ...(index === 0 ? [] : ['']),
    ...(findings.length === 1 ? wrap(`${SEVERITY_WORDS[severity]}: ${findings[0]} ${advice}`, width) : []),
    ...(findings.length === 0 ? wrap(advice, width) : []),
    ...(findings.length > 1
      ? [
          `${SEVERITY_WORDS[severity]}:`,
          ...findings.flatMap((finding) => wrap(finding, width, '  ')),
          ...wrap(advice, width),
        ]
      : []),
    ...wrap(`Who may do it: ${who} [${source}]`, width, '    '),
  ]);
}

/** What differs and by how much, and the order that was asked for. */
function differenceLines({ sentences, ranking, runs }: ReportModel, { against }: TextOptions, width: number): string[] {
  if (runs.length === 1) return [];
  const order =
    ranking === null
      ? []
      : [
          '',
          ...wrap(`${ranking.label}:`, width),
          ...ranking.lines.flatMap((line, at) => wrap(`${at + 1}. ${line}`, width)),
        ];
  const reference = against === 'previous' ? 'the design before it' : 'A';
  return [
    ...sentences.flatMap((sentence) => wrap(sentence, width)),
    ...order,
    '',
    ...wrap(`After each number: its difference from ${reference}.`, width),
    '',
  ];
}

function full(model: ReportModel, options: TextOptions, width: number): string[] {
  const several = model.runs.length > 1;
  const lines = [
    ...heading('Numbers of the year'),
    ...differenceLines(model, options, width),
    ...numbers(model, width),
    ...heading('Assumptions'),
  ];
  for (const { path, value, source, designs } of model.assumptions) {
    lines.push(
      ...wrap(`${path} = ${value}${designs === '' ? '' : `  (${designs})`}`, width),
      ...wrap(source, width, '    '),
    );
  }
  lines.push('', ...wrap(model.place, width));
  for (const note of [...model.limits, ...model.notes]) lines.push(...listItem(note, width));
  lines.push(...heading('Energy balance'));
  for (const { letter, name, balance } of model.runs) {
    if (several) lines.push(...wrap(`${letter}  ${name}`, width));
    lines.push(...textTable(balance.header, balance.rows, width), '');
  }
  lines.push(...wrap(BALANCE_DEFINITION, width), ...heading('What the numbers mean'));
  for (const { key } of model.numbers)
    lines.push(...wrap(`${DEFINITIONS[key].label}: ${DEFINITIONS[key].definition}`, width));
  for (const [label, meaning] of model.money?.meanings ?? []) lines.push(...wrap(`${label}: ${meaning}`, width));
  return lines;
}

/** A section of the caller's own. */
const ownLines = ({ title, paragraphs = [], table }: OwnSection, width: number): string[] => [
  ...heading(plainText(title)),
  ...paragraphs.flatMap((text) => wrap(plainText(text), width)),
  ...(table === undefined
    ? []
    : [
        '',
        ...textTable(
          table.header.map(plainText),
          table.rows.map((row) => row.map(plainText)),
          width,
        ),
      ]),
];

/** `September` → `Sep`; leaves room for the numbers. */
const shortMonth = ([name, ...cells]: readonly string[]): string[] => [
  name === 'Year' ? name : name!.slice(0, 3),
  ...cells,
];

/**
 * Report for a terminal: plain text, aligned, no colour.
 *
 * @param runs - one run, or several to compare
 * @param options - units, width and length
 * @throws {@link ReportError} when there is no run or a column is not a whole year of finite numbers.
 */
export function renderText(runs: Runs, options: TextOptions = {}): string {
  checkOptions(options, [...REPORT_OPTIONS, 'width', 'detail']);
  const { detail = 'full' } = options;
  const width = Math.max(40, options.width ?? 80);
  const own = listOwnSections(options);
  const model = buildModel(runs, options);
  const several = model.runs.length > 1;
  const lines = sheetLines(runs, model, options, width);
  lines.push(...heading('Months'), ...model.season.flatMap((line) => wrap(line, width)), '');
  for (const { letter, name, months } of model.runs) {
    if (several) lines.push(...wrap(`${letter}  ${name}`, width));
    lines.push(...textTable(months.header, months.rows.map(shortMonth), width), '');
  }
  lines.pop();
  lines.push(...heading(`Cautions: ${model.cautionCount.words}`), ...cautionLines(model, width));
  if (model.money !== null) {
    const { header, rows } = model.money.table;
    lines.push(...heading('Money'), ...textTable(header, rows, width));
    for (const ground of model.money.grounds) lines.push(...listItem(ground, width));
  }
  if (detail === 'full') lines.push(...full(model, options, width));
  for (const section of own) lines.push(...ownLines(section, width));
  return `${lines.join('\n')}\n`;
}
