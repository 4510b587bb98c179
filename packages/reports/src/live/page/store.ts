/** What was turned, pinned and chosen; kept in the link and by the browser, so that a reload loses nothing. */
import { isPlace } from '../turned.ts';
import { LEFT_OUT, type Plain, type Turned } from '../types.ts';

/** What changes are told against. */
export type Against = 'last' | 'start' | 0 | 1 | 2 | 3;
/** Designs that can be pinned. */
export const MOST_PINS = 4;
/** Steps that can be undone. */
const MOST_UNDO = 50;
/** A pause after which the same knob begins a new turn. [ms] */
const REST = 2000;

/** Everything that a reload keeps. */
export interface Kept {
  readonly turned: Turned;
  readonly previous: Turned;
  readonly pins: readonly Turned[];
  readonly units: 'metric' | 'us';
  readonly against: Against;
}

const encode = (value: Plain): string => {
  if (typeof value !== 'string') return JSON.stringify(value);
  if (value === '') return '';
  try {
    JSON.parse(value);
    return JSON.stringify(value);
  } catch {
    return value;
  }
};

const decode = (text: string): Plain => {
  try {
    return text === '' ? LEFT_OUT : (JSON.parse(text) as Plain);
  } catch {
    return text;
  }
};

const write = (turned: Turned): string =>
  new URLSearchParams(Object.entries(turned).map(([path, value]) => [path, encode(value)])).toString();

/** What a link says was turned; names that no field can have are passed over. */
function read(text: string): Turned {
  return Object.fromEntries(
    [...new URLSearchParams(text)].flatMap(([path, value]) =>
      path.includes('.') || path === 'name' ? (isPlace(path) ? [[path, decode(value)]] : []) : [],
    ),
  );
}

/** State as the part of a link behind the `#`. */
export const toFragment = ({ turned, pins, units }: Pick<Kept, 'turned' | 'pins' | 'units'>): string =>
  [`units=${units}`, write(turned), ...pins.map((pin) => `pin=${encodeURIComponent(write(pin))}`)]
    .filter((part) => part !== '')
    .join('&');

/** State of a link; `null` for a link without any. */
function fromFragment(
  fragment: string,
): (Pick<Kept, 'turned' | 'pins'> & { readonly units: Kept['units'] | null }) | null {
  const text = fragment.replace(/^#/, '');
  if (!text.includes('=')) return null;
  const all = new URLSearchParams(text);
  const units = all.get('units');
  const pins = all.getAll('pin').slice(0, MOST_PINS).map(read);
  return { turned: read(text), pins, units: units === 'us' || units === 'metric' ? units : null };
}

/** State of one page. */
export class Store {
  turned: Turned = {};
  previous: Turned = {};
  pins: readonly Turned[] = [];
  units: Kept['units'];
  against: Against = 'last';
  readonly #undo: Pick<Kept, 'turned' | 'pins'>[] = [];
  readonly #place: string;
  #knob = '';
  #at = 0;

  /** @param place - name under which the browser keeps it: of this page's design and weather alone */
  constructor(place: string, units: Kept['units']) {
    this.#place = `noonloop-live-${place}`;
    this.units = units;
    const link = fromFragment(location.hash);
    if (link !== null) {
      this.turned = link.turned;
      this.pins = link.pins;
      this.units = link.units ?? units;
    }
    const kept = this.#kept();
    // What the browser kept goes with the same link or with none: another link is another design.
    if (kept !== null && (link === null || write(link.turned) === write(kept.turned))) {
      this.turned = kept.turned;
      this.previous = kept.previous;
      this.against = kept.against;
      if (link === null) {
        this.pins = kept.pins;
        this.units = kept.units;
      }
    } else this.previous = this.turned;
  }

  #kept(): Kept | null {
    try {
      const text = localStorage.getItem(this.#place);
      if (text === null) return null;
      const { turned, previous, pins, units, against } = JSON.parse(text) as Record<string, string>;
      const list = (pins as unknown as string[]).slice(0, MOST_PINS).map(read);
      const chosen = against as unknown as Against;
      const known = chosen === 'start' || (typeof chosen === 'number' && chosen < list.length) ? chosen : 'last';
      return {
        turned: read(turned!),
        previous: read(previous!),
        pins: list,
        units: units === 'us' ? 'us' : 'metric',
        against: known,
      };
    } catch {
      return null; // nothing kept, or kept by something else
    }
  }

  /** Writes link and browser's store. */
  keep(): void {
    history.replaceState(null, '', `#${toFragment(this)}`);
    try {
      const { turned, previous, pins, units, against } = this;
      localStorage.setItem(
        this.#place,
        JSON.stringify({ turned: write(turned), previous: write(previous), pins: pins.map(write), units, against }),
      );
    } catch {
      // A browser may forbid it; the link still keeps everything.
    }
  }

  /** Fields of another knob, or of the same after a rest, begin a turn: what was before is what changes are told against. */
  turn(knob: string, changes: Readonly<Record<string, Plain | undefined>>): void {
    const now = Date.now();
    if (knob !== this.#knob || now - this.#at > REST) {
      this.#remember();
      this.previous = this.turned;
    }
    [this.#knob, this.#at] = [knob, now];
    const next: Record<string, Plain> = { ...this.turned };
    for (const [path, value] of Object.entries(changes)) {
      if (value === undefined) delete next[path];
      else next[path] = value;
    }
    this.turned = next;
  }

  #remember(): void {
    this.#undo.push({ turned: this.turned, pins: this.pins });
    if (this.#undo.length > MOST_UNDO) this.#undo.shift();
    this.#knob = '';
  }

  /** Whether something can be undone. */
  get canUndo(): boolean {
    return this.#undo.length > 0;
  }

  /** Back to before the last turn or pin. */
  undo(): void {
    const before = this.#undo.pop();
    if (before === undefined) return;
    this.previous = this.turned;
    this.turned = before.turned;
    this.pins = before.pins;
    this.#knob = '';
    if (typeof this.against === 'number' && this.against >= this.pins.length) this.against = 'last';
  }

  /** Everything as the page began, or as an exercise sets it; pins stay. */
  set(turned: Turned): void {
    this.#remember();
    this.previous = this.turned;
    this.turned = turned;
  }

  /** Keeps something of the page's own that no year depends on, such as which week plays. */
  note(path: string, value: Plain): void {
    this.turned = { ...this.turned, [path]: value };
    this.previous = { ...this.previous, [path]: value };
  }

  /** What another link says, as a turn that can be undone. */
  follow(fragment: string): boolean {
    const link = fromFragment(fragment);
    if (link === null) return false;
    this.set(link.turned);
    this.pins = link.pins;
    this.units = link.units ?? this.units;
    return true;
  }

  /** Pins the turned design. @param place - which to replace, where there are four */
  pin(place = this.pins.length): void {
    this.#remember();
    this.pins = Object.assign([...this.pins], { [Math.min(place, MOST_PINS - 1)]: this.turned });
  }

  /** Takes a pin away. */
  unpin(place: number): void {
    this.#remember();
    this.pins = this.pins.filter((_, index) => index !== place);
    if (typeof this.against === 'number') this.against = 'last';
  }

  /** The design that changes are told against. */
  get reference(): Turned {
    if (this.against === 'start') return {};
    return this.against === 'last' ? this.previous : (this.pins[this.against] ?? this.previous);
  }
}
