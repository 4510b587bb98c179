import { SEVERITY_WORDS } from '../cautions/index.ts';
import { BALANCE_DEFINITION, DEFINITIONS, LEAD_KEYS, NUMBER_KEYS } from '../definitions.ts';
import { buildModel } from '../model/build.ts';
import type { ReportModel } from '../model/types.ts';
import type { ReportOptions, Runs } from '../options.ts';
import { formatQuantity } from '../units.ts';
import { textTable, wrap } from './table.ts';

/** Options of {@link renderText}. */
export interface TextOptions extends ReportOptions {
  /** Longest line, at least 40. Default 80. [characters] */
  readonly width?: number;
  /** `short` ends after cautions and money; `full` adds assumptions, energy balance and definitions. Default `full`. */
  readonly detail?: 'short' | 'full';
}

const heading = (text: string): string[] => ['', text.toUpperCase(), ''];

function leads(model: ReportModel, width: number): string[] {
  const several = model.runs.length > 1;
  return model.runs.flatMap(({ letter, name, summary }, index) => [
    ...(several ? ['', ...wrap(`${letter}  ${name}`, width)] : index === 0 ? [''] : []),
    ...LEAD_KEYS.map((key) => {
      const { label, kind } = DEFINITIONS[key];
      const { note } = model.numbers.find((row) => row.key === key)!.cells[index]!;
      const value = formatQuantity(summary.year[key], kind, model.units);
      const line = `${several ? '   ' : ''}${label.padEnd(24)}${value.padStart(12)}`;
      return note !== '' && line.length + 2 + note.length <= width ? `${line}  ${note}` : line;
    }),
  ]);
}

function numbers(model: ReportModel, width: number): string[] {
  const several = model.runs.length > 1;
  const header = ['', ...model.runs.map(({ letter }) => (several ? letter : 'Year'))];
  const rows = model.numbers.map(({ label, unit, cells }) => [
    `${label} [${unit}]`,
    ...cells.map(({ text, difference, note }) =>
      several ? `${text}${difference === '' ? '' : `  ${difference}`}` : `${note === '' ? '' : `${note}  `}${text}`,
    ),
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

function full(model: ReportModel, width: number): string[] {
  const several = model.runs.length > 1;
  const lines = [...heading('Assumptions')];
  for (const { path, value, source, designs } of model.assumptions) {
    lines.push(
      ...wrap(`${path} = ${value}${designs === '' ? '' : `  (${designs})`}`, width),
      ...wrap(source, width, '    '),
    );
  }
  for (const note of model.notes) lines.push(...wrap(`- ${note}`, width));
  lines.push(...heading('Energy balance'));
  for (const { letter, name, balance } of model.runs) {
    if (several) lines.push(...wrap(`${letter}  ${name}`, width));
    lines.push(...textTable(balance.header, balance.rows, width), '');
  }
  lines.push(...wrap(BALANCE_DEFINITION, width), ...heading('What the numbers mean'));
  for (const key of NUMBER_KEYS)
    lines.push(...wrap(`${DEFINITIONS[key].label}: ${DEFINITIONS[key].definition}`, width));
  for (const [label, meaning] of model.money?.meanings ?? []) lines.push(...wrap(`${label}: ${meaning}`, width));
  return lines;
}

/** The system in a sentence, of several what is the same and what differs. */
export const systemWords = ({ system, differs }: ReportModel): string =>
  differs === '' ? system : `The same in all: ${system}. Differs: ${differs}.`;

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
  const { detail = 'full' } = options;
  const width = Math.max(40, options.width ?? 80);
  const model = buildModel(runs, options);
  const several = model.runs.length > 1;
  const lines = [...wrap(model.title, width), ...wrap(model.place, width)];
  lines.push('', ...wrap(model.answer.does, width), ...wrap(model.answer.decides, width));
  if (model.sure !== null) lines.push(...wrap(`How sure: ${model.sure}`, width));
  lines.push(...leads(model, width), '', ...wrap(systemWords(model), width));
  lines.push(...model.season.flatMap((line) => wrap(line, width)));
  lines.push(...model.limits.flatMap((limit) => wrap(limit, width)));
  if (several) {
    lines.push(...heading('What differs'), ...model.sentences.flatMap((sentence) => wrap(sentence, width)));
    if (model.ranking !== null)
      lines.push(
        '',
        ...wrap(`${model.ranking.label}:`, width),
        ...model.ranking.lines.flatMap((line, place) => wrap(`${place + 1}. ${line}`, width)),
      );
  }
  lines.push(...heading(several ? 'Side by side' : 'The year'), ...numbers(model, width));
  if (several)
    lines.push(
      '',
      ...wrap(
        `After each number: its difference from ${options.against === 'previous' ? 'the design before it' : 'A'}.`,
        width,
      ),
    );
  lines.push(...heading('Months'));
  for (const { letter, name, months } of model.runs) {
    if (several) lines.push(...wrap(`${letter}  ${name}`, width));
    lines.push(...textTable(months.header, months.rows.map(shortMonth), width), '');
  }
  lines.pop();
  lines.push(...heading(`Cautions: ${model.cautionCount.words}`), ...cautionLines(model, width));
  if (model.money !== null) {
    const { header, rows } = model.money.table;
    lines.push(...heading('Money'), ...textTable(header, rows, width));
    for (const ground of model.money.grounds) lines.push(...wrap(`- ${ground}`, width));
  }
  if (detail === 'full') lines.push(...full(model, width));
  return `${lines.join('\n')}\n`;
}
