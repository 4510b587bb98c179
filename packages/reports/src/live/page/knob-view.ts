/** One knob on the page: label, slider with a step either way, field, and the fault below it. */
import { AMOUNTS } from './amounts.ts';
import { badge, make } from './dom.ts';
import type { Changes, ChoiceKnob, Ground, Knob, NumberKnob } from './knob.ts';

/** What a knob does when it is turned. */
export type OnTurn = (knob: string, changes: Changes) => void;

/** A knob as it stands on the page. */
export interface KnobView {
  readonly knob: Knob;
  readonly element: HTMLElement;
  /** Shows what holds now; what a reader is typing is left alone. */
  readonly refresh: (ground: Ground) => void;
  /** Marks it, or takes the mark away. */
  readonly fault: (words: string | null) => void;
  /** Takes the keyboard there. */
  readonly focus: () => void;
}

const idOf = (knob: Knob): string => `knob-${knob.id.replaceAll('.', '-')}`;

/** Number as a field has it: no commas, no more digits than the kind has. */
const inField = (value: number, digits: number): string => String(Number(value.toFixed(digits)));

/** A number that somebody typed; `null` for other words. A comma with three digits behind it parts thousands, else decimals. */
function typedNumber(text: string): number | null {
  const plain = text.replace(/[\s\u00a0]/g, '').replace('−', '-');
  const number = /,\d{3}(?!\d)/.test(plain) ? plain.replaceAll(',', '') : plain.replace(',', '.');
  return /^-?(\d+\.?\d*|\.\d+)$/.test(number) ? Number(number) : null;
}

function shell(knob: Knob, control: readonly HTMLElement[]) {
  const id = idOf(knob);
  const wrong = make('p', { class: 'fault', id: `${id}-fault`, hidden: true });
  const help = knob.help === undefined ? [] : [make('p', { class: 'help', id: `${id}-help` }, knob.help)];
  const element = make(
    'div',
    { class: 'knob', 'data-knob': knob.id },
    make('label', { for: id }, knob.label),
    ...control,
    ...help,
    wrong,
  );
  const fault = (words: string | null, field: HTMLElement): void => {
    wrong.hidden = words === null;
    element.classList.toggle('refused', words !== null);
    if (words === null) {
      field.removeAttribute('aria-invalid');
      wrong.replaceChildren();
    } else {
      field.setAttribute('aria-invalid', 'true');
      wrong.replaceChildren(badge('danger', 'not taken'), ` ${words}`);
    }
    const described = [...(knob.help === undefined ? [] : [`${id}-help`]), ...(words === null ? [] : [`${id}-fault`])];
    if (described.length > 0) field.setAttribute('aria-describedby', described.join(' '));
    else field.removeAttribute('aria-describedby');
  };
  return { element, fault };
}

function choiceView(knob: ChoiceKnob, onTurn: OnTurn): KnobView {
  let ground: Ground | null = null;
  const select = make('select', {
    id: idOf(knob),
    change: () => onTurn(knob.id, knob.write(select.value, ground!)),
  });
  const { element, fault } = shell(knob, [select]);
  return {
    knob,
    element,
    refresh: (now) => {
      ground = now;
      element.hidden = knob.shown?.(now) === false;
      const value = knob.read(now);
      const choices = knob.choices(now);
      const all = choices.some(([known]) => known === value) ? choices : [...choices, [value, value] as const];
      select.replaceChildren(...all.map(([name, words]) => new Option(words, name, false, name === value)));
    },
    fault: (words) => fault(words, select),
    focus: () => select.focus(),
  };
}

function numberView(knob: NumberKnob, onTurn: OnTurn): KnobView {
  let ground: Ground | null = null;
  let shown = '';
  const { digits, symbol } = AMOUNTS[knob.amount];
  const range = (): readonly [number, number, number] => knob.range[ground!.units];
  const turn = (value: number): void => onTurn(knob.id, knob.write(value, ground!));
  const field = make('input', {
    id: idOf(knob),
    type: 'text',
    inputmode: 'decimal',
    autocomplete: 'off',
    spellcheck: 'false',
  });
  const unit = make('span', { class: 'unit' });
  const words = make('span', { class: 'words' });
  const slider = make('input', { type: 'range', 'aria-label': `${knob.label}, slider` });
  const speak = (value: number): void => {
    const said = knob.words?.(value) ?? '';
    words.textContent = said;
    slider.setAttribute(
      'aria-valuetext',
      `${inField(value, digits)}${symbol(ground!.units) === '°' ? '°' : ` ${symbol(ground!.units)}`}${said === '' ? '' : `, ${said}`}`,
    );
  };
  const show = (value: number | null): void => {
    shown = value === null ? (knob.none?.word ?? '') : inField(value, digits);
    if (document.activeElement !== field) field.value = value === null ? '' : shown;
    field.placeholder = knob.none?.word ?? '';
    if (value !== null) slider.valueAsNumber = value;
    if (value !== null) speak(value);
    else words.textContent = '';
  };
  const commit = (): void => {
    const text = field.value.trim();
    if (text === shown || (text === '' && shown === (knob.none?.word ?? ''))) return;
    if (text === '') {
      if (knob.none === undefined) field.value = shown;
      else onTurn(knob.id, knob.none.changes);
      return;
    }
    const number = typedNumber(text);
    shown = text;
    // Other words go on as they are: "80 gal" is a volume, and what is none is refused by the library.
    if (number === null) onTurn(knob.id, { [knob.paths[0]!]: text });
    else turn(number);
  };
  field.addEventListener('change', commit);
  field.addEventListener('keydown', (event) => {
    if (event.key === 'Enter') commit();
    if (event.key === 'Escape') field.value = shown;
  });
  slider.addEventListener('input', () => {
    const value = slider.valueAsNumber;
    shown = inField(value, digits);
    field.value = shown;
    speak(value);
    turn(value);
  });
  const step = (by: -1 | 1): void => {
    const [least, most, size] = range();
    const from = typedNumber(field.value) ?? (by < 0 ? most : least);
    const value = Math.min(Math.max(Math.round((from + by * size) / size) * size, least), most);
    shown = inField(value, digits);
    field.value = shown;
    slider.valueAsNumber = value;
    speak(value);
    turn(value);
  };
  const button = (by: -1 | 1): HTMLElement =>
    make(
      'button',
      {
        type: 'button',
        class: 'step',
        'aria-label': `${knob.label}, one step ${by < 0 ? 'less' : 'more'}`,
        click: () => step(by),
      },
      by < 0 ? '−' : '+',
    );
  const box = make('span', { class: 'box' }, field, unit);
  const { element, fault } = shell(
    knob,
    knob.fieldOnly ? [box] : [box, make('span', { class: 'slide' }, button(-1), slider, button(1)), words],
  );
  return {
    knob,
    element,
    refresh: (now) => {
      ground = now;
      element.hidden = knob.shown?.(now) === false;
      const [least, most, size] = range();
      // The slider's own keys: arrows one step, Page ten, Home and End the ends.
      Object.assign(slider, { min: String(least), max: String(most), step: String(size) });
      unit.textContent = symbol(now.units);
      if (document.activeElement !== slider || slider.value === '') show(knob.read(now));
    },
    fault: (said) => fault(said, field),
    focus: () => field.focus(),
  };
}

/** Makes a knob. */
export const knobView = (knob: Knob, onTurn: OnTurn): KnobView =>
  knob.kind === 'number' ? numberView(knob, onTurn) : choiceView(knob, onTurn);
