import { SEVERITY_WORDS } from '../cautions/index.ts';
import { BALANCE_DEFINITION, DEFINITIONS, LEAD_KEYS, NUMBER_KEYS } from '../definitions.ts';
import { escapeMarkdown } from '../escape.ts';
import { buildModel } from '../model/build.ts';
import type { PlainTable } from '../model/types.ts';
import type { ReportOptions, Runs } from '../options.ts';
import { formatQuantity } from '../units.ts';
import { systemWords } from './text.ts';

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

/**
 * Report in GitHub-flavoured Markdown, without charts.
 *
 * @param runs - one run, or several to compare
 * @param options - units and what to compare with
 * @throws {@link ReportError} when there is no run or a column is not a whole year of finite numbers.
 */
export function renderMarkdown(runs: Runs, options: ReportOptions = {}): string {
  const model = buildModel(runs, options);
  const several = model.runs.length > 1;
  const names = model.runs.map(({ letter, name }) => escapeMarkdown(several ? `${letter} ${name}` : name));
  const lines = [`# ${escapeMarkdown(model.title)}`, '', escapeMarkdown(model.place), ''];
  const said = [model.answer.does, model.answer.decides, ...(model.sure === null ? [] : [`How sure: ${model.sure}`])];
  lines.push(...said.map((line, at) => (at === 0 ? `**${escapeMarkdown(line)}**` : escapeMarkdown(line))), '');
  lines.push(escapeMarkdown(systemWords(model)), '');
  lines.push(
    ...table(
      ['', ...names],
      LEAD_KEYS.map((key) => [
        `**${DEFINITIONS[key].label}**`,
        ...model.runs.map(
          ({ summary }) => `**${formatQuantity(summary.year[key], DEFINITIONS[key].kind, model.units)}**`,
        ),
      ]),
    ),
  );
  lines.push(...model.season.map(escapeMarkdown), ...(model.season.length > 0 ? [''] : []));
  lines.push(...model.limits.map(escapeMarkdown), '');
  if (several)
    lines.push('## What differs', '', ...model.sentences.map((sentence) => `- ${escapeMarkdown(sentence)}`), '');
  if (model.ranking !== null)
    lines.push(
      `${escapeMarkdown(model.ranking.label)}:`,
      '',
      ...model.ranking.lines.map((line, place) => `${place + 1}. ${escapeMarkdown(line)}`),
      '',
    );
  lines.push(
    `## ${several ? 'Side by side' : 'The year'}`,
    '',
    ...table(
      ['', ...names],
      model.numbers.map(({ label, unit, cells }) => [
        escapeMarkdown(`${label} [${unit}]`),
        ...cells.map(({ text, difference, note }) =>
          [text, difference, note].filter((part) => part !== '').join('<br>'),
        ),
      ]),
    ),
  );
  if (several)
    lines.push(
      `Under each number: its difference from ${options.against === 'previous' ? 'the design before it' : 'A'}.`,
      '',
    );
  lines.push('## Months', '');
  model.runs.forEach(({ months }, index) => {
    if (several) lines.push(`### ${names[index]}`, '');
    lines.push(...plainTable(months));
  });
  lines.push(`## Cautions: ${model.cautionCount.words}`, '');
  for (const { severity, findings, advice, who, source } of model.cautions) {
    lines.push(
      `- **${SEVERITY_WORDS[severity]}:** ${escapeMarkdown([...findings, advice, `Who may do it: ${who}`, `[${source}]`].join(' '))}`,
    );
  }
  lines.push('');
  if (model.money !== null)
    lines.push(
      '## Money',
      '',
      ...plainTable(model.money.table),
      ...model.money.grounds.map((ground) => `- ${escapeMarkdown(ground)}`),
      '',
    );
  lines.push('## Assumptions', '');
  lines.push(
    ...table(
      ['Where', 'Value', several ? 'Designs' : '', 'Source'].filter((head) => head !== ''),
      model.assumptions.map(({ path, value, source, designs }) =>
        (several ? [path, value, designs === '' ? 'all' : designs, source] : [path, value, source]).map(escapeMarkdown),
      ),
      4,
    ),
  );
  lines.push(...model.notes.map((note) => `- ${escapeMarkdown(note)}`), '', '## Energy balance', '');
  model.runs.forEach(({ balance }, index) => {
    if (several) lines.push(`### ${names[index]}`, '');
    lines.push(...plainTable(balance));
  });
  lines.push(BALANCE_DEFINITION, '', '## What the numbers mean', '');
  for (const key of NUMBER_KEYS) lines.push(`- **${DEFINITIONS[key].label}:** ${DEFINITIONS[key].definition}`);
  for (const [label, meaning] of model.money?.meanings ?? []) lines.push(`- **${label}:** ${meaning}`);
  return `${lines.join('\n')}\n`;
}
