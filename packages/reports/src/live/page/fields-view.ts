/** Every field of the design by its place, each with what holds; a knob is a shorter way to some of them. */
import { fieldWords } from '../../formats/given.ts';
import type { LiveField } from '../fields.ts';
import { LEFT_OUT, type Plain } from '../types.ts';
import { badge, find, make } from './dom.ts';
import type { Ground } from './knob.ts';
import type { OnTurn } from './knob-view.ts';

/** What somebody typed as a field's value: JSON where it is some, else text, such as "80 gal". */
function typed(text: string): Plain {
  const plain = text.trim();
  if (plain === '') return LEFT_OUT;
  try {
    return JSON.parse(plain) as Plain;
  } catch {
    return plain;
  }
}

const inField = (value: unknown): string =>
  typeof value === 'string' ? value : value === undefined ? '' : JSON.stringify(value);

const valueAt = (design: unknown, path: string): unknown =>
  path.split('.').reduce<unknown>((at, key) => (at as Record<string, unknown> | null | undefined)?.[key], design);

/** The list of all fields; made when it is first opened. */
export class FieldsView {
  readonly #fields: readonly LiveField[];
  readonly #onTurn: OnTurn;
  readonly #rows = new Map<
    string,
    { readonly field: HTMLInputElement; readonly row: HTMLElement; readonly fault: HTMLElement }
  >();
  #ground: Ground | null = null;

  constructor(fields: readonly LiveField[], onTurn: OnTurn) {
    this.#fields = fields;
    this.#onTurn = onTurn;
    find('#all').addEventListener('toggle', () => this.#make());
  }

  #make(): void {
    if (this.#rows.size > 0) return;
    const parts = new Map<string, HTMLElement[]>();
    for (const of of this.#fields) {
      const [part] = of.path.split('.');
      parts.set(part!, [...(parts.get(part!) ?? []), this.#row(of)]);
    }
    find('#fields').replaceChildren(
      ...[...parts].map(([part, rows]) => make('details', {}, make('summary', {}, fieldWords(part)), ...rows)),
    );
    if (this.#ground !== null) this.refresh(this.#ground);
  }

  #row({ path, meaning, takes }: LiveField): HTMLElement {
    const id = `field-${path.replaceAll('.', '-')}`;
    const fault = make('p', { class: 'fault', id: `${id}-fault`, hidden: true });
    const field = make('input', {
      id,
      type: 'text',
      autocomplete: 'off',
      spellcheck: 'false',
      'aria-describedby': `${id}-help ${id}-fault`,
    });
    field.addEventListener('change', () => this.#onTurn(path, { [path]: typed(field.value) }));
    const help = make('p', { class: 'help', id: `${id}-help` }, `${meaning}${takes === '' ? '' : ` ${takes}`}`);
    const row = make('div', { class: 'field' }, make('label', { for: id }, make('code', {}, path)), field, help, fault);
    this.#rows.set(path, { field, row, fault });
    return row;
  }

  /** Shows what was written, and in grey what holds where nothing was. */
  refresh(ground: Ground): void {
    this.#ground = ground;
    for (const [path, { field }] of this.#rows) {
      const written = ground.written(path);
      if (document.activeElement !== field) field.value = inField(written);
      const holds = valueAt(ground.design, path);
      field.placeholder = holds === undefined ? 'not given' : inField(holds);
    }
  }

  /** Marks fields; gives back those that are none of the list. */
  mark(faults: ReadonlyMap<string, string>): void {
    if (faults.size > 0) {
      find<HTMLDetailsElement>('#all').open = true;
      this.#make();
    }
    for (const [path, { field, row, fault }] of this.#rows) {
      const words = faults.get(path);
      fault.hidden = words === undefined;
      if (words === undefined) field.removeAttribute('aria-invalid');
      else {
        field.setAttribute('aria-invalid', 'true');
        fault.replaceChildren(badge('danger', 'not taken'), ` ${words}`);
        const part = row.closest('details');
        if (part !== null) part.open = true;
      }
    }
  }

  /** Whether a place is in the list. */
  has(path: string): boolean {
    return this.#fields.some((field) => field.path === path);
  }

  /** Opens the list at a field. */
  focus(path: string): void {
    find<HTMLDetailsElement>('#all').open = true;
    this.#make();
    const row = this.#rows.get(path);
    const part = row?.row.closest('details');
    if (part !== null && part !== undefined) part.open = true;
    row?.field.focus();
  }
}
