/** Pieces of the HTML page. Everything that comes from outside passes through {@link escapeHtml}. */
import { BALANCE_DEFINITION, DEFINITIONS, LEAD_KEYS, NUMBER_KEYS, type NumberKey } from '../definitions.ts';
import { escapeHtml, glueUnits } from '../escape.ts';
import type { MoneyModel, NumberCell, PlainTable, ReportModel } from '../model/types.ts';
import { formatQuantity } from '../units.ts';

/** Escaped sentence whose numbers stay with their units. */
export const sentence = (text: string): string => glueUnits(escapeHtml(text));

/** Letter and name of a design. */
export const designName = (model: ReportModel, index: number): string => {
  const { letter, name } = model.runs[index]!;
  return model.runs.length > 1 ? `<span class="letter">${letter}</span>${escapeHtml(name)}` : escapeHtml(name);
};

const definitionLink = (key: NumberKey): string =>
  `<a href="#def-${key}" title="${escapeHtml(DEFINITIONS[key].definition)}">${DEFINITIONS[key].label}</a>`;

/** A table that scrolls sideways where it does not fit. */
export function scrollTable(label: string, head: string, body: string, kind = 'numbers'): string {
  return `<div class="scroll" role="region" aria-label="${escapeHtml(label)}" tabindex="0"><table class="${kind}"><thead>${head}</thead><tbody>${body}</tbody></table></div>`;
}

/** A table of numbers; `sum` makes the last row a total. */
export function plainTable(label: string, { header, rows }: PlainTable, sum = false): string {
  const head = header
    .map((one, column) => `<th scope="col"${column === 0 ? ' class="text"' : ''}>${escapeHtml(one)}</th>`)
    .join('');
  const body = rows.map(([name, ...cells], index) => {
    const marked = sum && index === rows.length - 1 ? ' class="sum"' : '';
    return `<tr${marked}><th scope="row">${escapeHtml(name!)}</th>${cells.map((cell) => `<td>${escapeHtml(cell)}</td>`).join('')}</tr>`;
  });
  return scrollTable(label, `<tr>${head}</tr>`, body.join(''));
}

/** The three numbers that lead, one card a design, and what they mean. */
export function leadCards(model: ReportModel): string {
  const cards = model.runs.map(({ summary }, index) => {
    const numbers = LEAD_KEYS.map((key) => {
      const { kind } = DEFINITIONS[key];
      const { note } = model.numbers.find((row) => row.key === key)!.cells[index]!;
      const date = note === '' ? '' : `<span class="date">${note}</span>`;
      return `<div><dt>${definitionLink(key)}</dt><dd><span class="big">${formatQuantity(summary.year[key], kind, model.units)}</span>${date}</dd></div>`;
    });
    const name = model.runs.length > 1 ? `<h2>${designName(model, index)}</h2>` : '<h2>The year</h2>';
    return `<section class="card">${name}<dl>${numbers.join('')}</dl></section>`;
  });
  const meaning = LEAD_KEYS.map(
    (key) => `<p class="quiet"><b>${DEFINITIONS[key].label}.</b> ${DEFINITIONS[key].definition}</p>`,
  );
  const limits = model.limits.map((limit) => `<p class="quiet">${sentence(limit)}</p>`);
  return `<div class="leads${model.runs.length > 1 ? '' : ' one'}">${cards.join('')}</div>${meaning.join('')}${limits.join('')}`;
}

/** Number, and beside it what has changed; the first design has nothing to differ from. */
function numberCells({ text, difference, relative, note }: NumberCell, index: number): string {
  const number = `<td>${text}${note === '' ? '' : `<span class="date">${note}</span>`}</td>`;
  if (index === 0) return number;
  const moved = difference !== '' && difference !== '=';
  const change = [difference, relative].filter((part) => part !== '').join(' · ');
  return `${number}<td class="difference">${moved ? `<span class="moved">${change}</span>` : change}</td>`;
}

/** Every number of every design, differences marked. */
export function numberTable(model: ReportModel): string {
  const several = model.runs.length > 1;
  const names = model.runs.map(({ letter }, index) => {
    const reference = model.comparison?.against === 'previous' ? model.runs[index - 1] : model.runs[0];
    const change = index === 0 ? '' : `<th scope="col" class="text">${letter} − ${reference!.letter}</th>`;
    return `<th scope="col">${several ? designName(model, index) : 'Year'}</th>${change}`;
  });
  const leads: readonly string[] = LEAD_KEYS;
  const rows = model.numbers.map(
    ({ key, unit, cells }) =>
      `<tr${leads.includes(key) ? ' class="lead"' : ''}><th scope="row">${definitionLink(key)} [${escapeHtml(unit)}]</th>${cells.map(numberCells).join('')}</tr>`,
  );
  return scrollTable('Numbers of the year', `<tr><td></td>${names.join('')}</tr>`, rows.join(''));
}

/** Designs in the order that the reader asked for. */
export const rankList = ({ ranking }: ReportModel): string =>
  ranking === null
    ? ''
    : `<p>${escapeHtml(ranking.label)}:</p><ol>${ranking.lines.map((line) => `<li>${sentence(line)}</li>`).join('')}</ol>`;

/** Cautions, gravest first. */
export function cautionList(model: ReportModel): string {
  const items = model.cautions.map(({ severity, findings, advice, source }) => {
    const found = findings.map((finding) => `<p>${sentence(finding)}</p>`).join('');
    return `<li class="${severity}"><strong>${severity}</strong>${found}<p>${sentence(advice)}</p><p class="quiet">${sentence(source)}</p></li>`;
  });
  return `<ul class="cautions">${items.join('')}</ul>`;
}

/** What the run rests on. */
export function assumptionTable(model: ReportModel): string {
  const several = model.runs.length > 1;
  const heads = ['Where in the design', 'Value', ...(several ? ['Designs'] : []), 'Source or reason'];
  const rows = model.assumptions.map(({ path, value, source, designs }) => {
    const holders = several ? `<td class="text">${designs === '' ? 'all' : escapeHtml(designs)}</td>` : '';
    return `<tr><th scope="row">${escapeHtml(path)}</th><td class="text">${sentence(value)}</td>${holders}<td class="text">${sentence(source)}</td></tr>`;
  });
  const notes = model.notes.map((note) => `<li>${sentence(note)}</li>`).join('');
  const head = `<tr>${heads.map((one) => `<th scope="col" class="text">${one}</th>`).join('')}</tr>`;
  return `<p>Values that were not given and that the simulation chose, each with its source.</p>${scrollTable('Assumptions of the design', head, rows.join(''), 'assumptions')}<h3>Weather and run</h3><ul>${notes}</ul>`;
}

/** What prices make of the numbers, and the prices. */
export function moneySection(model: ReportModel, { table, grounds }: MoneyModel): string {
  const names = model.runs.map((_, index) => `<li>${designName(model, index)}</li>`).join('');
  const list = model.runs.length > 1 ? `<ul class="plain">${names}</ul>` : '';
  return `${list}${plainTable('Money', table)}<h3>Reckoned with</h3><ul>${grounds.map((ground) => `<li>${sentence(ground)}</li>`).join('')}</ul>`;
}

/** Energy balance of each design. */
export function balanceTables(model: ReportModel): string {
  const tables = model.runs.map(({ balance, name }, index) => {
    const heading = model.runs.length > 1 ? `<h3>${designName(model, index)}</h3>` : '';
    return heading + plainTable(`Energy balance, ${name}`, balance);
  });
  return `${tables.join('')}<p class="quiet">${BALANCE_DEFINITION}</p>`;
}

/** What each number means. */
export function definitionList(model: ReportModel): string {
  const items = NUMBER_KEYS.map(
    (key) => `<dt id="def-${key}">${DEFINITIONS[key].label}</dt><dd>${escapeHtml(DEFINITIONS[key].definition)}</dd>`,
  );
  const money = (model.money?.meanings ?? []).map(
    ([label, meaning]) => `<dt>${escapeHtml(label)}</dt><dd>${escapeHtml(meaning)}</dd>`,
  );
  return `<dl class="definitions">${items.join('')}${money.join('')}</dl>`;
}
