/** The first sheet of a report: one design, or a comparison of any number. */

import { MONTH_NAMES } from '../calendar.ts';
import { designMark } from '../charts/designs.ts';
import { cut, escapeHtml } from '../escape.ts';
import type { ReportModel } from '../model/types.ts';
import { SUN_ALONE } from '../summary.ts';
import { formatNumber } from '../units.ts';
import { sectionId } from './html-page.ts';
import { badge, designLetter, sentence, tableBox } from './html-parts.ts';
import type { SheetRow } from './sheet.ts';

/** Designs that a sheet has room for; the rest stand behind. */
const MOST = 4;

/** The gravest caution in its own words, and how many there are; always in the same place. */
export function alarmLine({ cautions, cautionCount }: ReportModel): string {
  const link = `<a href="#${sectionId('Cautions')}">See why and what to do</a>`;
  if (cautionCount.danger === 0) return `<p class="alarm">${escapeHtml(cautionCount.words)}. ${link}</p>`;
  const worst = cautions.find(({ severity }) => severity === 'danger')!;
  return `<p class="alarm danger">${badge('danger')} ${escapeHtml(cautionCount.words)}. ${sentence(worst.findings[0] ?? worst.advice)} ${link}</p>`;
}

/** Twelve cells a design, filled from below by the sun's share of the hot water, with the number in figures. */
export function monthCells({ runs }: ReportModel): string {
  const several = runs.length > 1;
  const head = MONTH_NAMES.map((name) => `<th scope="col"><abbr title="${name}">${name[0]}</abbr></th>`).join('');
  const rows = runs.slice(0, MOST).map(({ letter, name, summary }, index) => {
    const cells = summary.months.map(({ sunShare }) => {
      if (sunShare === null) return '<td>–</td>';
      const share = Math.min(1, Math.max(0, sunShare));
      const full = sunShare >= SUN_ALONE ? ' class="full"' : '';
      return `<td${full}><span class="cell" aria-hidden="true"><i style="height:${formatNumber(100 * share, 0)}%"></i></span>${formatNumber(100 * sunShare, 0)}</td>`;
    });
    const who = several
      ? `<th scope="row" class="who">${designLetter(index, letter)} <span class="name">${escapeHtml(cut(name, 24))}</span></th>`
      : '';
    return `<tr>${who}${cells.join('')}</tr>`;
  });
  return `<table class="months"><caption>Share of the hot water that the sun makes, % of each month</caption><thead><tr>${several ? '<td class="who"></td>' : ''}${head}</tr></thead><tbody>${rows.join('')}</tbody></table>`;
}

/** Months that the sun makes alone, in words. */
export const seasonLines = ({ season }: ReportModel): string =>
  season.map((line) => `<p class="small">${sentence(line)}</p>`).join('');

const GROUPS: Readonly<Record<SheetRow['group'], string>> = {
  saved: 'Saved a year',
  cost: 'Cost',
  heat: 'Heat and cold',
};

/** The figures of one design in blocks beside each other. */
export function figureBlocks(rows: readonly SheetRow[]): string {
  const blocks = (Object.keys(GROUPS) as SheetRow['group'][]).flatMap((group) => {
    const of = rows.filter((row) => row.group === group);
    if (of.length === 0) return [];
    const lines = of.map(({ label, cells, notes }, at) => {
      const note = notes[0] === '' ? '' : ` ${sentence(notes[0]!)}`;
      if (at === 0)
        return `<p class="big">${sentence(cells[0]!)}</p>${group === 'cost' ? '' : `<p>${sentence(label.replace(/ a year$/, ''))}${note}</p>`}`;
      return `<p>${sentence(label.replace(/ a year$/, ''))}: ${sentence(cells[0]!)}${note}</p>`;
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
    ({ letter, name }, index) => `<th scope="col">${designLetter(index, letter)} ${escapeHtml(cut(name, 40))}</th>`,
  );
  const difference = two ? `<th scope="col">${runs[1]!.letter} − ${runs[0]!.letter}</th>` : '';
  const body = rows.map(({ label, cells, differences }) => {
    const tds = shown.map((_, index) => {
      const change =
        !two && index > 0 && differences[index] !== ''
          ? `<span class="range">${sentence(differences[index]!)}</span>`
          : '';
      return `<td>${sentence(cells[index]!)}${change}</td>`;
    });
    return `<tr><th scope="row">${sentence(label)}</th>${tds.join('')}${two ? `<td class="difference">${sentence(differences[1]!)}</td>` : ''}</tr>`;
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

/** Marks of designs, for formats without colour. */
export const plainMark = (index: number): string => designMark(index);
