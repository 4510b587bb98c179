/** Everything on the page that is no knob: units, undo, pins, views, links. */
import type { TakeReply } from '../types.ts';
import { find } from './dom.ts';
import { type Against, MOST_PINS, type Store } from './store.ts';
import { takeButtons } from './take-view.ts';

/** What the controls ask for. */
interface Acts {
  /** A year is to be run. */
  readonly changed: () => void;
  readonly drawViews: () => void;
  /** The theme is another. */
  readonly redraw: () => void;
  readonly showWeek: () => Promise<void>;
  readonly take: (what: string) => Promise<TakeReply | null>;
}

/** Listens to all of them. */
export function controls(store: Store, { changed, drawViews, redraw, showWeek, take }: Acts): void {
  const units = find<HTMLSelectElement>('#units');
  units.addEventListener('change', () => {
    store.units = units.value === 'us' ? 'us' : 'metric';
    changed();
  });
  const against = find<HTMLSelectElement>('#against');
  against.addEventListener('change', () => {
    store.against = /^\d$/.test(against.value) ? (Number(against.value) as Against) : (against.value as Against);
    changed();
  });
  const on = (id: string, act: () => void): void =>
    find(`#${id}`).addEventListener('click', () => {
      act();
      changed();
    });
  on('undo', () => store.undo());
  on('reset', () => store.set({}));
  on('pin', () =>
    store.pin(store.pins.length < MOST_PINS ? undefined : Number(find<HTMLSelectElement>('#pin-instead').value)),
  );
  for (const id of ['year', 'week']) find(`#${id}`).addEventListener('toggle', drawViews);
  const which = find<HTMLSelectElement>('#which');
  which.addEventListener('change', () => {
    store.note('page.week', which.value === 'hottest' || which.value === 'coldest' ? which.value : Number(which.value));
    store.keep();
    void showWeek();
  });
  matchMedia('(prefers-color-scheme: dark)').addEventListener('change', redraw);
  // The address holds the knobs: a link within the page must not take its place.
  find('#to-cautions').addEventListener('click', (event) => {
    event.preventDefault();
    find('#cautions-part').scrollIntoView();
    find('#cautions-title').focus();
  });
  // Paper cannot be opened.
  window.addEventListener('beforeprint', () => {
    for (const one of document.querySelectorAll<HTMLDetailsElement>('#cautions details')) one.open = true;
  });
  window.addEventListener('hashchange', () => {
    if (store.follow(location.hash)) changed();
  });
  takeButtons(take, (words) => {
    find('#status').textContent = words;
    find('#taken').textContent = words;
  });
}
