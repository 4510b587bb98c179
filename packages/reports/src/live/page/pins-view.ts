/** Pinned designs beside the turned one. */
import type { TurnReply } from '../types.ts';
import { find, glued, make } from './dom.ts';
import { MOST_PINS, type Store } from './store.ts';

const MARKS = ['●', '■', '▲', '◆'];

/** Letter of a pin with its mark; the turned design is called now. */
function head(letter: string, place: number, pins: number): HTMLElement {
  if (place >= pins) return make('th', { scope: 'col' }, 'now');
  const mark = make('span', { 'aria-hidden': 'true' }, MARKS[place]!);
  mark.style.color = `var(--nl-design-${'abcd'[place]})`;
  return make('th', { scope: 'col' }, make('span', { class: 'letter' }, mark, ` ${letter}`));
}

/** Words that call the last design by a letter call it now. */
const nowWords = (text: string, letter: string): string =>
  text.replace(new RegExp(`(?<![°\\p{L}])${letter}(?!\\p{L})`, 'gu'), '“now”');

function comparison({ comparison: found }: TurnReply): HTMLElement[] {
  if (found === null) return [];
  const pins = found.letters.length - 1;
  const last = found.letters.at(-1)!;
  const rows = found.rows.map(({ label, cells, notes }) =>
    make(
      'tr',
      {},
      make('th', { scope: 'row' }, label),
      ...cells.map((cell, place) =>
        make(
          'td',
          { 'data-head': place < pins ? found.letters[place]! : 'now' },
          glued(cell),
          ...(notes[place] === '' ? [] : [make('span', { class: 'range' }, glued(notes[place]!))]),
        ),
      ),
    ),
  );
  return [
    make('p', { class: 'decides' }, glued(nowWords(`${found.answer.does} ${found.answer.decides}`, last))),
    make(
      'table',
      { class: 'compare' },
      make('thead', {}, make('tr', {}, make('td'), ...found.letters.map((letter, place) => head(letter, place, pins)))),
      make('tbody', {}, ...rows),
    ),
    make(
      'p',
      { class: 'small' },
      glued(
        `Small numbers: against A.${found.differs === '' ? '' : ` What differs, in this order: ${found.differs}.`}`,
      ),
    ),
  ];
}

/** Puts pins on the page. @param act - after pins changed */
export function showPins(store: Store, reply: TurnReply | null, act: () => void): void {
  const chips = store.pins.map((_, place) =>
    make(
      'li',
      {},
      make('span', { class: 'letter' }, `${MARKS[place]} ${'ABCD'[place]}`),
      make(
        'button',
        {
          type: 'button',
          click: () => {
            store.set(store.pins[place]!);
            act();
          },
        },
        'turn to it',
      ),
      make(
        'button',
        {
          type: 'button',
          'aria-label': `Unpin ${'ABCD'[place]}`,
          click: () => {
            store.unpin(place);
            act();
          },
        },
        'unpin',
      ),
    ),
  );
  find('#pin-list').replaceChildren(...chips);
  const full = store.pins.length >= MOST_PINS;
  find('#pin').textContent = full ? 'Pin this in place of …' : 'Pin this design';
  const instead = find<HTMLSelectElement>('#pin-instead');
  instead.hidden = !full;
  find('#pin-instead-label').hidden = !full;
  const against = find<HTMLSelectElement>('#against');
  against.replaceChildren(
    new Option('the last turn', 'last'),
    new Option('the start', 'start'),
    ...store.pins.map((_, place) => new Option(`pin ${'ABCD'[place]}`, String(place))),
  );
  against.value = String(store.against);
  if (reply !== null) find('#comparison').replaceChildren(...comparison(reply));
}
