/** Questions for a class: each case is a link that sets the knobs, and can be gone back to. */
import type { LiveExercise, Turned } from '../types.ts';
import { find, make } from './dom.ts';
import { type Store, toFragment } from './store.ts';

/** Under this place stands which case the knobs came from. */
const PLACE = 'page.exercise';

/** Puts the list on the page. @param act - after the knobs were set */
export function showExercises(exercises: readonly LiveExercise[], store: Store, act: () => void): void {
  if (exercises.length === 0) return;
  const turnedOf = (set: Turned, name: string): Turned => ({ ...set, [PLACE]: name });
  const cases = exercises.flatMap(({ cases: all }, exercise) =>
    all.map(({ set }, at) => [`${exercise + 1}.${at + 1}`, set] as const),
  );
  const now = cases.find(([name]) => name === String(store.turned[PLACE]));
  const go =
    (set: Turned, name: string) =>
    (event: Event): void => {
      event.preventDefault();
      store.set(turnedOf(set, name));
      act();
    };
  const item = ({ title, question, cases: all }: LiveExercise, exercise: number): HTMLElement => {
    const links = all.map(({ label, set }, at) => {
      const name = `${exercise + 1}.${at + 1}`;
      const href = `#${toFragment({ turned: turnedOf(set, name), pins: [], units: store.units })}`;
      return make('a', { href, ...(name === now?.[0] ? { 'aria-current': 'true' } : {}), click: go(set, name) }, label);
    });
    return make('li', {}, make('h3', {}, title), make('p', { class: 'small' }, question), ...links);
  };
  find('#exercises').replaceChildren(...exercises.map(item));
  const again = find<HTMLButtonElement>('#again');
  again.disabled = now === undefined || JSON.stringify(store.turned) === JSON.stringify(turnedOf(now[1], now[0]));
  again.onclick = now === undefined ? null : go(now[1], now[0]);
}
