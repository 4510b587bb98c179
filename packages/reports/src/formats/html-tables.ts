/** Sections of a report that are tables: numbers, inputs, definitions, balance. */
import type { RunResult } from '@noonloop/sim-core';
import { BALANCE_DEFINITION, DEFINITIONS } from '../definitions.ts';
import { escapeHtml } from '../escape.ts';
import type { NumberCell, ReportModel } from '../model/types.ts';
import type { ReportOptions } from '../options.ts';
import { fieldWords, givenLines, wordsOfFields } from './given.ts';
import { bullets, designLetter, plainTable, sentence, tableBox } from './html-parts.ts';

/** What sections are made from. */
export interface SectionGround {
  readonly results: readonly RunResult[];
  readonly model: ReportModel;
  readonly options: ReportOptions & { readonly losses?: boolean };
}

/** Whether designs are compared. */
export const several = ({ runs }: ReportModel): boolean => runs.length > 1;

/** Letter and name of a design, where there are several. */
export const nameHeading = (model: ReportModel, index: number): string =>
  several(model)
    ? `<h3>${designLetter(index, model.runs[index]!.letter)} ${escapeHtml(model.runs[index]!.name)}</h3>`
    : '';

const definitionLink = (key: keyof typeof DEFINITIONS, linked: boolean): string =>
  linked ? `<a href="#def-${key}">${DEFINITIONS[key].label}</a>` : DEFINITIONS[key].label;

function numberCells({ text, range, difference, relative, note }: NumberCell, index: number): string {
  const ends = range === '' ? '' : `<span class="date">${range}</span>`;
  const number = `<td>${text}${ends}${note === '' ? '' : `<span class="date">${note}</span>`}</td>`;
  if (index === 0) return number;
  const change = [difference, relative].filter((part) => part !== '').join(' · ');
  return `${number}<td class="difference">${change}</td>`;
}

/** Every number of every design, differences beside. @param linked - whether definitions stand on the page */
export function numbers({ model, options }: SectionGround, linked: boolean): string[] {
  const heads = model.runs.map(({ letter }, index) => {
    const reference = options.against === 'previous' ? model.runs[index - 1] : model.runs[0];
    const change = index === 0 ? '' : `<th scope="col">${letter} − ${reference!.letter}</th>`;
    return `<th scope="col">${several(model) ? designLetter(index, letter) : 'Year'}</th>${change}`;
  });
  const rows = model.numbers.map(
    ({ key, unit, cells }) =>
      `<tr><th scope="row">${definitionLink(key, linked)} [${escapeHtml(unit)}]</th>${cells.map(numberCells).join('')}</tr>`,
  );
  const ranking =
    model.ranking === null
      ? ''
      : `<p>${escapeHtml(model.ranking.label)}:</p><ol>${model.ranking.lines.map((line) => `<li>${sentence(line)}</li>`).join('')}</ol>`;
  const table = (part: readonly string[], label = 'Numbers of the year'): string =>
    tableBox(label, `<tr><td></td>${heads.join('')}</tr>`, part.join(''), 'numbers', several(model));
  const half = Math.ceil(rows.length / 2);
  const whole =
    model.runs.length > 2
      ? table(rows)
      : `<div class="pair even"><div>${table(rows.slice(0, half))}</div><div>${table(rows.slice(half), 'Numbers of the year, continued')}</div></div>`;
  return ranking === '' ? [whole] : [ranking, whole];
}

/** What was given, what was chosen with its source, and what the run rests on. */
export function inputs({ results, model }: SectionGround): string[] {
  const given = givenLines(
    results,
    model.runs.map(({ letter }) => letter),
    model.units,
  );
  const letters = several(model) ? ['Designs'] : [];
  const of = (designs: string): string[] => (several(model) ? [designs === '' ? 'all' : designs] : []);
  const words = [1, 2, 3];
  return [
    `<h3>Given</h3>${plainTable(
      'Given',
      {
        header: ['What', 'Value', ...letters],
        rows: given.map(({ words: what, value, designs }) => [what, value, ...of(designs)]),
      },
      { narrow: 'list', words },
    )}`,
    `<div class="long"><h3>Not given, and chosen</h3>${plainTable(
      'Not given, and chosen',
      {
        header: ['What', 'Value', ...letters, 'Source or reason'],
        rows: model.assumptions.map(({ path, value, source, designs }) => [
          fieldWords(path),
          value,
          ...of(designs),
          wordsOfFields(source),
        ]),
      },
      { narrow: 'list', words },
    )}</div>`,
    `<div class="block"><h3>Weather and run</h3><p>${sentence(model.place)}</p>${bullets([...model.limits, ...model.notes].map(wordsOfFields))}</div>`,
  ];
}

/** What each number means. */
export function definitions({ model }: SectionGround): string[] {
  const items = model.numbers.map(
    ({ key }) =>
      `<dt id="def-${key}">${DEFINITIONS[key].label}</dt><dd>${escapeHtml(DEFINITIONS[key].definition)}</dd>`,
  );
  const money = (model.money?.meanings ?? []).map(
    ([label, meaning]) => `<dt>${escapeHtml(label)}</dt><dd>${escapeHtml(meaning)}</dd>`,
  );
  return [`<dl class="definitions">${items.join('')}${money.join('')}</dl>`];
}

/** Energy balance of every design. */
export const balance = ({ model }: SectionGround): string[] => [
  ...model.runs.map(
    ({ balance: table, name }, index) =>
      `<div class="block">${nameHeading(model, index)}${plainTable(`Energy balance, ${name}`, table, { words: [6] })}</div>`,
  ),
  `<p class="quiet">${BALANCE_DEFINITION}</p>`,
];
