/** The live page: a turn of a knob goes to the engine, its answer onto the page. */
import schema from '@noonloop/sim-core/schema/design-1.json' with { type: 'json' };
import { formatDay } from '../../calendar.ts';
import { listFields } from '../fields.ts';
import type { LiveExercise, LiveFault, LiveStart, Plain, TakeReply, TakeRequest, TurnReply } from '../types.ts';
import { LEFT_OUT } from '../types.ts';
import { showAnswer, spoken } from './answer-view.ts';
import { controls } from './controls.ts';
import { find, make } from './dom.ts';
import { showExercises } from './exercises.ts';
import { FieldsView } from './fields-view.ts';
import type { Changes, Ground } from './knob.ts';
import { type KnobView, knobView } from './knob-view.ts';
import { KNOBS } from './knobs.ts';
import { drawMap, monthMarks, showKey } from './map-view.ts';
import { showPins } from './pins-view.ts';
import { Runner } from './runner.ts';
import { sentence } from './sentence.ts';
import { Store } from './store.ts';
import { WeekView } from './week-view.ts';

/** Without a result for so long, an answer is shown as that of before. [ms] */
const STALE = 150;
/** Rest after which the answer is spoken. [ms] */
const SPEAK = 600;

/** What the page was made with. */
interface Given extends LiveStart {
  readonly place: string;
  readonly units: 'metric' | 'us';
  readonly exercises: readonly LiveExercise[];
}

const given = JSON.parse(find('#start').textContent!) as Given;
const store = new Store(given.place, given.units);
const runner = new Runner();
const week = new WeekView();
let reply: TurnReply | null = null;
let spokenReply: TurnReply | null = null;
let refused: readonly LiveFault[] = [];
let speaking: number | undefined;
let drawn: Uint8Array | null = null;

/** What stands in a field by what was turned, else by what the page began with. */
function fieldOf(path: string, turned: boolean): Plain | undefined {
  if (turned && path in store.turned) return store.turned[path] === LEFT_OUT ? undefined : store.turned[path];
  const [root, keys] = path.startsWith('prices.') ? [given.prices, path.slice(7)] : [given.design, path];
  return keys.split('.').reduce<Plain | null | undefined>(
    (at, key) => {
      const fields = at as { readonly [key: string]: Plain } | null | undefined;
      return typeof fields === 'object' && fields !== null && Object.hasOwn(fields, key) ? fields[key] : undefined;
    },
    root as unknown as Plain,
  ) as Plain | undefined;
}

const ground = (): Ground => ({
  reply: reply!,
  design: reply!.design,
  turned: store.turned,
  units: store.units,
  written: (path) => fieldOf(path, true),
  first: (path) => fieldOf(path, false),
});

const onTurn = (knob: string, changes: Changes): void => {
  store.turn(knob, changes);
  void run();
};
const views: readonly KnobView[] = KNOBS.map((knob) => knobView(knob, onTurn));
const fields = new FieldsView(listFields(schema), onTurn);

/** Marks faults at their knobs, else at their fields, else above all. */
function mark(faults: readonly LiveFault[]): void {
  const left = new Map<string, string>();
  const at = new Map<KnobView, string>();
  for (const { path, words } of faults) {
    const owner =
      views.find(({ knob }) => knob.paths.includes(path)) ??
      views.find(({ knob }) => knob.paths.some((own) => path.startsWith(`${own}.`)));
    if (owner !== undefined && !owner.element.hidden) at.set(owner, words);
    else left.set(path, words);
  }
  for (const view of views) view.fault(at.get(view) ?? null);
  fields.mark(new Map([...left].filter(([path]) => fields.has(path))));
  const nowhere = [...left].filter(([path]) => !fields.has(path));
  find('#faults').replaceChildren(...nowhere.map(([path, words]) => make('li', {}, `${path}: ${words}`)));
}

function focusKnob(id: string): void {
  const view = views.find(({ knob }) => knob.id === id);
  if (view === undefined || view.element.hidden) {
    fields.focus(id);
    return;
  }
  const part = view.element.closest('details');
  if (part !== null) part.open = true;
  view.element.scrollIntoView({ block: 'center' });
  view.focus();
}

const stale = (words: string): void => {
  document.body.classList.toggle('stale', words !== '');
  find('#state').textContent = words;
};

function refresh(): void {
  const now = ground();
  for (const view of views) view.refresh(now);
  fields.refresh(now);
  find<HTMLButtonElement>('#undo').disabled = !store.canUndo;
  find<HTMLButtonElement>('#reset').disabled = Object.keys(store.turned).every((path) => path.startsWith('page.'));
  find<HTMLSelectElement>('#units').value = store.units;
  for (const button of document.querySelectorAll<HTMLButtonElement>('[data-take="prices"]'))
    button.disabled = now.reply.money === null;
}

/** Draws what is in sight; the rest when it comes into sight. */
function drawViews(): void {
  if (reply === null) return;
  if (find<HTMLDetailsElement>('#year').open && drawn !== reply.map) {
    drawMap(reply.map);
    showKey(reply);
    drawn = reply.map;
  }
  if (find<HTMLDetailsElement>('#week').open) void showWeek();
}

/** After the theme changed. */
function redraw(): void {
  drawn = null;
  drawViews();
}

let weekOf = '';
async function showWeek(): Promise<void> {
  const which = find<HTMLSelectElement>('#which');
  const chosen = String(store.turned['page.week'] ?? 'hottest');
  if (![...which.options].some(({ value }) => value === chosen))
    which.add(new Option(`from ${formatDay(Number(chosen))}`, chosen));
  which.value = chosen;
  const day = chosen === 'hottest' || chosen === 'coldest' ? reply!.weeks[chosen] : Number(chosen);
  const key = JSON.stringify([store.turned, day, store.units]);
  if (key === weekOf) return;
  weekOf = key;
  const found = await runner.week(store.turned, day);
  if (found.kind === 'week' && weekOf === key) week.show(found, store.units);
}

function show(found: TurnReply): void {
  reply = found;
  showAnswer(found);
  sentence(found, focusKnob);
  refresh();
  showPins(store, found, changed);
  showExercises(given.exercises, store, changed);
  drawViews();
  document.body.dataset.turn = String(Number(document.body.dataset.turn ?? 0) + 1);
  clearTimeout(speaking);
  speaking = window.setTimeout(() => {
    find('#status').textContent = spoken(found, spokenReply);
    spokenReply = found;
  }, SPEAK);
}

/** Runs what is turned now and shows it, unless something newer came. */
async function run(): Promise<void> {
  store.keep();
  const late = setTimeout(() => stale('computing …'), reply === null ? 0 : STALE);
  const { turned: now, reference, pins, units } = store;
  const found = await runner.turn({ units, now, against: reference, pins });
  clearTimeout(late);
  if (found === null) return;
  if (found.kind === 'refused') {
    refused = found.faults;
    if (reply !== null) refresh();
    mark(refused);
    stale('Not taken: see the marked field. What stands here is of before.');
    find('#status').textContent = `Not taken. ${refused.map(({ words }) => words).join(' ')}`;
    document.body.dataset.turn = String(Number(document.body.dataset.turn ?? 0) + 1);
    return;
  }
  refused = [];
  stale('');
  show(found);
  mark(found.faults);
}

/** After something other than a knob changed. */
function changed(): void {
  void run();
}

async function take(what: string): Promise<TakeReply | null> {
  const { turned: now, pins, units } = store;
  const found = await runner.take({ units, what: what as TakeRequest['what'], now, pins });
  return found.kind === 'take' ? found : null;
}

async function open(): Promise<void> {
  for (const view of views) find(`#group-${view.knob.group}`).append(view.element);
  find('#map-months').replaceChildren(...monthMarks());
  controls(store, { changed, drawViews, showWeek, take, redraw });
  stale('Computing the first year …');
  await runner.open({
    kind: 'open',
    design: given.design,
    prices: given.prices,
    weather: find('#weather').textContent!,
  });
  find('#slow').hidden = !runner.slow;
  await run();
  document.body.dataset.ready = 'yes';
}

open().catch((error: unknown) => {
  stale(`The page cannot run here: ${error instanceof Error ? error.message : String(error)}`);
});
