// Equations of the theory pages, which stand in them as plain lines, set as MathML. The notation is close to UnicodeMath (Unicode
// Technical Note 28): `_` and `^` or the small Unicode digits for indices and powers, `/` for a fraction, brackets that vanish in one.
import { type Mark, marksOf } from './equation-marks.ts';

/** Sets every indented block of a page; fenced blocks are code and stay. */
export function equationsOf(page: string): string {
  let fenced = false;
  return page
    .split(/(\n{2,})/)
    .map((part) => {
      const lines = part.split('\n');
      const isEquation = !fenced && lines.every((line) => line.startsWith('    ')) && !/npx |pnpm /.test(part);
      for (const line of lines) if (/^```/.test(line)) fenced = !fenced;
      return isEquation ? table(lines.map((line) => line.slice(4))) : part;
    })
    .join('');
}

/** Lines below each other; what stands apart by two spaces or more becomes a column. */
function table(lines: readonly string[]): string {
  const rows = lines.map((line) =>
    line
      .trimEnd()
      .replace(/ {2,}(?==)/g, ' ')
      .split(/ {2,}/),
  );
  const cells = rows.map((row) => row.map((cell) => `<td>${equation(cell)}</td>`).join(''));
  return `<table class="equations${rows.length === 1 ? ' one' : ''}"><tbody>${cells.map((row) => `<tr>${row}</tr>`).join('')}</tbody></table>`;
}

/** One equation as an element. */
export function equation(text: string): string {
  const reader = new Reader(marksOf(text));
  return `<math displaystyle="true">${reader.row(() => false)}</math>`;
}

const CLOSING: Readonly<Record<string, string>> = { '(': ')', '[': ']', '{': '}' };

/** An operand as it is set, and what it is without its brackets. */
interface Operand {
  readonly whole: string;
  readonly inside: string | null;
}

/** Operators at which a fraction with room on both sides of its stroke ends. */
const WEAK = /^(?:[=+−±,;:→]|[≥≤]|&lt;|&gt;)$/;

class Reader {
  private at = 0;
  private scripts = 0;
  private readonly marks: readonly Mark[];

  constructor(marks: readonly Mark[]) {
    this.marks = marks;
  }

  /** Operands and operators until the end or a mark that ends them. */
  row(ends: (mark: Mark) => boolean): string {
    const parts: string[] = [];
    /** Place in `parts` behind the last weak operator. */
    let start = 0;
    while (this.at < this.marks.length && !ends(this.marks[this.at]!)) {
      const mark = this.marks[this.at]!;
      if (mark.kind === 'operator' || mark.kind === 'space') {
        this.at++;
        parts.push(mark.kind === 'space' ? '<mspace width="0.2em"></mspace>' : `<mo>${mark.text}</mo>`);
        if (WEAK.test(mark.text)) start = parts.length;
      } else if (mark.kind === 'slash') {
        this.at++;
        const below = this.below(ends);
        parts.push(`<mfrac><mrow>${parts.splice(start).join('')}</mrow>${below}</mfrac>`);
      } else parts.push(this.fraction());
    }
    return `<mrow>${parts.join('')}</mrow>`;
  }

  /** What stands below a stroke with room on both sides; a single bracket vanishes. */
  private below(ends: (mark: Mark) => boolean): string {
    while (this.peek('space')) this.at++;
    const from = this.at;
    const first = this.fraction();
    const over = (mark: Mark | undefined) =>
      mark === undefined || ends(mark) || (mark.kind === 'operator' && WEAK.test(mark.text));
    if (!over(this.marks[this.at])) {
      this.at = from;
      return this.row(over);
    }
    this.at = from;
    const alone = this.operand();
    return over(this.marks[this.at]) ? (alone.inside ?? alone.whole) : first;
  }

  private peek(kind: Mark['kind'], text?: string): boolean {
    const mark = this.marks[this.at];
    return mark?.kind === kind && (text === undefined || mark.text === text);
  }

  /** An operand, over another where a stroke stands between them without room. */
  private fraction(): string {
    const above = this.operand();
    if (!this.peek('slash') || !this.marks[this.at]!.tight) return above.whole;
    this.at++;
    const below = this.operand();
    // In an index or power a fraction would be too small to be read.
    if (this.scripts > 0) return `${above.whole}<mo>/</mo>${below.whole}`;
    return `<mfrac>${above.inside ?? above.whole}${below.inside ?? below.whole}</mfrac>`;
  }

  /** A name, number or bracket with its indices and powers, and what belongs to it: a unit, an argument, the variable behind a d. */
  private operand(): Operand {
    const mark = this.marks[this.at];
    const first = this.scripted(this.base());
    if (mark?.kind === 'prefix') return { whole: `<mrow>${first.whole}${this.operand().whole}</mrow>`, inside: null };
    if (mark?.kind === 'number' && this.peek('unit')) {
      return { whole: `<mrow>${first.whole}${this.base().whole}</mrow>`, inside: null };
    }
    if (mark?.kind === 'function' && this.peek('space')) {
      this.at++;
      return {
        whole: `<mrow>${first.whole}<mspace width="0.2em"></mspace>${this.operand().whole}</mrow>`,
        inside: null,
      };
    }
    const takes = mark?.kind === 'name' || mark?.kind === 'function';
    if (!takes || !this.peek('open', '(') || !this.marks[this.at]!.tight) return first;
    return { whole: `<mrow>${first.whole}${this.scripted(this.base()).whole}</mrow>`, inside: null };
  }

  private base(): Operand {
    const mark = this.marks[this.at++];
    if (mark === undefined) return { whole: '<mrow></mrow>', inside: null };
    if (mark.kind === 'open') {
      const close = CLOSING[mark.text]!;
      const inside = this.row(({ kind, text }) => kind === 'close' && text === close);
      this.at++;
      return { whole: `<mrow><mo>${mark.text}</mo>${inside}<mo>${close}</mo></mrow>`, inside };
    }
    if (mark.kind === 'bar') {
      const inside = this.row(({ kind }) => kind === 'bar');
      this.at++;
      return { whole: `<mrow><mo>|</mo>${inside}<mo>|</mo></mrow>`, inside: null };
    }
    if (mark.kind === 'root') {
      const under = this.base();
      return { whole: `<msqrt>${under.inside ?? under.whole}</msqrt>`, inside: null };
    }
    const tag = { number: 'mn', slash: 'mo', close: 'mo' }[mark.kind as string];
    return { whole: tag === undefined ? letters(mark.text) : `<${tag}>${mark.text}</${tag}>`, inside: null };
  }

  private scripted(base: Operand): Operand {
    let below: string | null = null;
    let above: string | null = null;
    for (;;) {
      const mark = this.marks[this.at];
      if (mark?.kind === 'index') below = this.script(below);
      else if (mark?.kind === 'power') above = this.script(above);
      else if (mark?.kind === 'prime') {
        this.at++;
        above = `${above ?? ''}<mo>${mark.text}</mo>`;
      } else break;
    }
    if (below === null && above === null) return base;
    const [sub, sup] = [`<mrow>${below}</mrow>`, `<mrow>${above}</mrow>`];
    const whole =
      above === null
        ? `<msub>${base.whole}${sub}</msub>`
        : below === null
          ? `<msup>${base.whole}${sup}</msup>`
          : `<msubsup>${base.whole}${sub}${sup}</msubsup>`;
    return { whole, inside: null };
  }

  /** What stands behind `_` or `^`, or in small digits; behind what stands there already. */
  private script(before: string | null): string {
    const { text, kind } = this.marks[this.at++]!;
    this.scripts++;
    let own = text;
    if (text === '') {
      const { whole, inside } = this.base();
      own = inside ?? whole;
    } else if (kind === 'power' && text.startsWith('<mi') && this.peek('index'))
      own = this.scripted({ whole: text, inside: null }).whole;
    this.scripts--;
    return `${before ?? ''}${own}`;
  }
}

/** A name: one letter leans, more stand upright, a dot goes above. */
function letters(text: string): string {
  if (text.endsWith('\u0307')) return `<mover accent="true">${letters(text.slice(0, -1))}<mo>˙</mo></mover>`;
  return `<mi${[...text].length > 1 ? ' mathvariant="normal"' : ''}>${text}</mi>`;
}
