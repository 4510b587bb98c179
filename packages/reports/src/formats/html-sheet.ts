/** The first sheet of a report: one design, or a comparison of any number. */

import { MONTH_NAMES } from '../calendar.ts';
import { cut, escapeHtml } from '../escape.ts';
import type { ReportModel } from '../model/types.ts';
import { SUN_ALONE } from '../summary.ts';
import { formatNumber } from '../units.ts';
import { sectionId } from './html-page.ts';
import { badge, designLetter, sentence, tableBox } from './html-parts.ts';
import { alarmWords } from './sheet.ts';
import type { SheetRow } from './sheet-rows.ts';

/** Designs that a sheet has room for; the rest stand behind. */
const MOST = 4;

/** How many dangers, the gravest in its own words; always in the same place. */
export function alarmLine(model: ReportModel): string {
  const link = `<a href="#${sectionId('Cautions')}">See why and what to do</a>`;
  const danger = model.cautionCount.danger > 0;
  return `<p class="alarm${danger ? ' danger' : ''}">${danger ? `${badge('danger')} ` : ''}${sentence(alarmWords(model))} ${link}</p>`;
}

/** Twelve cells a design, filled from below by the sun's share of the hot water, with the number in figures. */
export function monthCells({ runs }: ReportModel): string {
  const several = runs.length > 1;
  const head = MONTH_NAMES.map(
    (name) => `<th scope="col"><span aria-hidden="true">${name[0]}</span><span class="hidden">${name}</span></th>`,
  ).join('');
  const rows = runs.slice(0, MOST).map(({ letter, summary }, index) => {
    const cells = summary.months.map(({ sunShare }) => {
      if (sunShare === null) return '<td>–</td>';
      const share = Math.min(1, Math.max(0, sunShare));
      const full = sunShare >= SUN_ALONE ? ' class="full"' : '';
      return `<td${full}><span class="cell" aria-hidden="true"><i style="height:${formatNumber(100 * share, 0)}%"></i></span>${formatNumber(100 * sunShare, 0)}</td>`;
    });
    const who = several ? `<th scope="row" class="who">${designLetter(index, letter)}</th>` : '';
    return `<tr>${who}${cells.join('')}</tr>`;
  });
  return `<table class="months"><caption>Share of the hot water that the sun makes, % of each month</caption><thead><tr>${several ? '<td class="who"></td>' : ''}${head}</tr></thead><tbody>${rows.join('')}</tbody></table>`;
}

const GROUPS: Readonly<Record<SheetRow['group'], string>> = {
  saved: 'Saved a year',
  cost: 'Cost',
  heat: 'Hottest tank, heat and cold',
};

/** The figures of one design in blocks beside each other. */
export function figureBlocks(rows: readonly SheetRow[]): string {
  const blocks = (Object.keys(GROUPS) as SheetRow['group'][]).flatMap((group) => {
    const of = rows.filter((row) => row.group === group);
    if (of.length === 0) return [];
    const lines = of.map((line, at) => {
      const { short, cells } = line;
      const more = [line.ranges[0]!, line.notes[0]!].filter((part) => part !== '').join(', ');
      const note = more === '' ? '' : `<span class="range">${sentence(more)}</span>`;
      if (at === 0) return `<p class="big">${sentence(cells[0]!)}</p>${note}`;
      return `<p>${sentence(short)}: ${sentence(cells[0]!)}${note}</p>`;
    });
    return [`<div><h2>${GROUPS[group]}</h2>${lines.join('')}</div>`];
  });
  return `<div class="figures">${blocks.join('')}</div>`;
}

/** The figures of several designs, with what has changed. */
export function comparisonTable({ runs }: ReportModel, rows: readonly SheetRow[]): string {
  const shown = runs.slice(0, MOST);
  const two = runs.length === 2;
  const heads = shown.map(
    ({ letter, name }, index) =>
      `<th scope="col">${designLetter(index, letter)} ${escapeHtml(cut(name, two ? 40 : 26))}</th>`,
  );
  const difference = two ? `<th scope="col" class="difference">${runs[1]!.letter} − ${runs[0]!.letter}</th>` : '';
  const body = rows.map(({ label, cells, ranges, differences }) => {
    const tds = shown.map((_, index) => {
      const small = two ? ranges[index]! : index > 0 ? differences[index]! : '';
      const change = small === '' ? '' : `<span class="range">${sentence(small)}</span>`;
      return `<td data-head="${runs[index]!.letter}">${sentence(cells[index]!)}${change}</td>`;
    });
    return `<tr><th scope="row">${sentence(label)}</th>${tds.join('')}${two ? `<td class="difference" data-head="${runs[1]!.letter} − ${runs[0]!.letter}">${sentence(differences[1]!)}</td>` : ''}</tr>`;
  });
  const more =
    runs.length > MOST
      ? `<p class="small">${runs.length - MOST} more: <a href="#${sectionId('Numbers of the year')}">all numbers</a>.</p>`
      : '';
  return (
    tableBox(
      'The designs side by side',
      `<tr><td></td>${heads.join('')}${difference}</tr>`,
      body.join(''),
      'compare',
      shown.length > 2,
    ) + more
  );
}

/** The system, the weather, how sure, prices: what the sheet rests on. */
export const factLines = (facts: readonly string[]): string =>
  `<div class="facts">${facts.map((fact) => `<p>${sentence(fact)}</p>`).join('')}</div>`;
