/** The answer of a turn: sentences, dangers, what changed, months, figures, cautions. */
import { MONTH_NAMES } from '../../calendar.ts';
import type { CautionGroup } from '../../model/types.ts';
import { formatNumber } from '../../units.ts';
import type { LiveRow, TurnReply } from '../types.ts';
import { badge, find, glued, make } from './dom.ts';

/** As the sheet of a report takes it. */
const FULL = 0.95;
/** Hours of anything below this are none. */
const hasDanger = ({ cautions }: TurnReply): boolean => cautions.some(({ severity }) => severity === 'danger');

const percent = (share: number): string => formatNumber(100 * share, 0);

/** Twelve cells filled from below, the former share as an outline. */
function monthTable({ months, monthsBefore }: TurnReply): HTMLElement {
  const head = MONTH_NAMES.map((name) =>
    make(
      'th',
      { scope: 'col' },
      make('span', { 'aria-hidden': 'true' }, name[0]!),
      make('span', { class: 'hidden' }, name),
    ),
  );
  const cells = months.map((share, month) => {
    if (share === null) return make('td', {}, '–');
    const height = (of: number): string => `height:${Math.min(100, Math.max(0, 100 * of)).toFixed(0)}%`;
    const cell = make('span', { class: 'cell', 'aria-hidden': 'true' });
    const bar = make('i');
    bar.style.cssText = height(share);
    cell.append(bar);
    const before = monthsBefore?.[month] ?? null;
    if (before !== null && percent(before) !== percent(share)) {
      const ghost = make('b', { class: 'ghost' });
      ghost.style.cssText = height(before);
      cell.append(ghost);
    }
    return make('td', share >= FULL ? { class: 'full' } : {}, cell, percent(share));
  });
  return make(
    'table',
    { class: 'months' },
    make('caption', {}, 'Share of the hot water that the sun makes, % of each month'),
    make('thead', {}, make('tr', {}, ...head)),
    make('tbody', {}, make('tr', {}, ...cells)),
  );
}

const GROUPS: Readonly<Record<LiveRow['group'], string>> = {
  saved: 'Saved a year',
  cost: 'Cost',
  heat: 'Heat and cold',
};

function figures(rows: readonly LiveRow[]): HTMLElement[] {
  return (Object.keys(GROUPS) as LiveRow['group'][]).flatMap((group) => {
    const of = rows.filter((row) => row.group === group);
    if (of.length === 0) return [];
    const lines = of.flatMap(({ label, cell, note }) => [
      make('dt', {}, label),
      make('dd', {}, glued(cell), ...(note === '' ? [] : [make('span', { class: 'range' }, glued(note))])),
    ]);
    return [make('div', {}, make('h3', {}, GROUPS[group]), make('dl', {}, ...lines))];
  });
}

const WORDS = { danger: 'DANGER', warning: 'Caution', note: 'Note' } as const;

/** What was found, open to why, what to do and who may; dangers stand open. */
function caution({ severity, findings, advice, who, source }: CautionGroup): HTMLElement {
  const [first, ...more] = [...findings, advice];
  return make(
    'li',
    { class: severity },
    make(
      'details',
      severity === 'danger' ? { open: true } : {},
      make('summary', {}, badge(severity, WORDS[severity]), ' ', glued(first!)),
      ...more.map((text) => make('p', {}, glued(text))),
      make('p', { class: 'quiet' }, ...(who === '' ? [] : [make('b', {}, `Who may do it: ${who} `)]), source),
    ),
  );
}

function cautions(list: readonly CautionGroup[]): void {
  const own = list.filter(({ findings }) => findings.length > 0);
  const general = list.filter(({ findings }) => findings.length === 0);
  find('#cautions').replaceChildren(...own.map(caution));
  find('#general').replaceChildren(...general.map(caution));
  find('#no-cautions').hidden = own.length > 0;
}

/** What changed since, in words; the bars carry the former value as an outline. */
function since({ turned, changes }: TurnReply): void {
  find('#turned').textContent = turned === '' ? '' : ` (${turned})`;
  const list = changes.map(({ label, difference }) => make('li', {}, `${label}: `, make('b', {}, glued(difference))));
  const none = turned === '' ? 'Nothing was turned yet.' : 'No change that can be told.';
  find('#changes').replaceChildren(...(list.length > 0 ? list : [make('li', { class: 'quiet' }, none)]));
}

/** Puts a turn's answer on the page. */
export function showAnswer(reply: TurnReply): void {
  find('#does').textContent = glued(reply.answer.does);
  find('#decides').textContent = glued(reply.answer.decides);
  const danger = hasDanger(reply);
  const alarm = find('#alarm');
  alarm.classList.toggle('danger', danger);
  find('#alarm-words').replaceChildren(...(danger ? [badge('danger', 'DANGER'), ' '] : []), glued(reply.alarm));
  find('#season').replaceChildren(...reply.season.map((line) => make('p', {}, glued(line))));
  since(reply);
  find('#months').replaceChildren(monthTable(reply));
  find('#figures').replaceChildren(...figures(reply.rows));
  cautions(reply.cautions);
  find('#brief').textContent = brief(reply);
  find('#brief-change').textContent = changeWords(reply, 2);
}

/** The line that stays in sight on a telephone. */
function brief({ rows, months, cautions: list }: TurnReply): string {
  const saved = rows.filter(({ group }) => group === 'saved').slice(0, 2);
  const full = months.filter((share) => share !== null && share >= FULL).length;
  const dangers = list.filter(({ severity }) => severity === 'danger').length;
  return glued(
    [
      ...saved.map(({ cell }) => cell),
      `${full} month${full === 1 ? '' : 's'} by the sun alone`,
      dangers === 0 ? 'no danger found' : `${dangers} danger${dangers === 1 ? '' : 's'}`,
    ].join(' · '),
  );
}

/** The first of the changes in a line. */
const changeWords = ({ changes }: TurnReply, most: number): string =>
  changes
    .slice(0, most)
    .map(({ label, difference }) => glued(`${label} ${difference}`))
    .join(', ');

/** What is said to those who do not see it. */
export function spoken(reply: TurnReply, before: TurnReply | null): string {
  const was = before === null ? null : before.alarm;
  const alarm = was === null || was !== reply.alarm ? ` ${reply.alarm}` : '';
  const changed = changeWords(reply, 3);
  return `${reply.answer.does}${alarm}${changed === '' ? '' : ` Changed: ${changed}.`}`;
}
