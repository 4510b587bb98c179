// What the lines of an equation are made of.

/** A piece of an equation. `tight`: it stands right behind the piece before. */
export interface Mark {
  readonly kind:
    | 'name'
    | 'function'
    | 'prefix'
    | 'number'
    | 'unit'
    | 'words'
    | 'operator'
    | 'slash'
    | 'open'
    | 'close'
    | 'bar'
    | 'root'
    | 'index'
    | 'power'
    | 'prime'
    | 'space';
  readonly text: string;
  readonly tight: boolean;
}

const FUNCTIONS = new Set(['cos', 'sin', 'tan', 'cot', 'arccos', 'tanh', 'exp', 'ln', 'max', 'min', 'mean']);

const SMALL = '⁰¹²³⁴⁵⁶⁷⁸⁹⁺⁻ᵀⁿ';
const LARGE = '0123456789+−Tn';
const LOW = '₀₁₂₃₄₅₆₇₈₉₊₋ᵢ';
const LINE = '0123456789+−i';

/** Units, which stand behind a number; the longer first. */
const UNIT = /^(?:W\/\(m²[· ]K\)|MJ\/\(m³ K\)|W\/m²|°C|m\/s|MPa|Pa|bar|days|eV|%|K|W|L|h|m|°)(?![A-Za-zΑ-ω_^(²])/;

const LETTER = 'A-Za-zΑ-Ωα-ωμ';
const NAME = new RegExp(`^[${LETTER}](?:\\u0307)?(?:[${LETTER}]\\u0307?)*`, 'u');

const escaped = (text: string): string =>
  text.replace(/[&<>]/g, (sign) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;' })[sign]!);
const element = (tag: string, text: string): string =>
  `<${tag}${tag === 'mi' && text.length > 1 ? ' mathvariant="normal"' : ''}>${escaped(text)}</${tag}>`;

/** The pieces of a line. */
export function marksOf(line: string): Mark[] {
  const marks: Mark[] = [];
  let rest = line.trim().normalize('NFD');
  let spaced = true;
  const put = (kind: Mark['kind'], text: string, length: number, tight = !spaced): void => {
    marks.push({ kind, text, tight });
    rest = rest.slice(length);
    spaced = false;
  };
  while (rest !== '') {
    const sign = rest[0]!;
    const last = marks.at(-1);
    const behindNumber = last?.kind === 'number';
    if (sign === ' ') {
      rest = rest.trimStart();
      spaced = true;
      if (last?.kind === 'number' && UNIT.test(rest)) continue;
      // Two factors side by side are kept apart by a little; an operator brings its own room.
      if (
        last !== undefined &&
        !['operator', 'slash', 'open', 'bar', 'space'].includes(last.kind) &&
        /^[^=+−·×/≥≤<>→),\]}]/.test(rest)
      )
        marks.push({ kind: 'space', text: ' ', tight: false });
      continue;
    }
    const unit = behindNumber ? UNIT.exec(rest) : null;
    if (unit) put('unit', `${spaced ? '\u2009' : ''}${unit[0]}`, unit[0].length);
    else if (/^\d/.test(rest)) {
      const [digits] = /^\d+(?:[.,]\d+)*(?:e-?\d+)?/.exec(rest)!;
      put('number', digits, digits.length);
    } else if (sign === '`') {
      const [code] = /^`[^`]*`/.exec(rest)!;
      put('words', escaped(code.slice(1, -1)), code.length);
    } else if (sign === '_' || sign === '^') script(sign, rest, put);
    else if (SMALL.includes(sign)) run(SMALL, LARGE, 'power', rest, put);
    else if (LOW.includes(sign)) run(LOW, LINE, 'index', rest, put);
    else if (sign === '½') put('number', '½', 1);
    else if (sign === '∞') put(spaced ? 'name' : 'index', spaced ? '∞' : element('mo', '∞'), 1);
    else if (sign === "'") put('prime', '′', 1);
    else if (sign === '*' && !spaced) put('power', element('mo', '*'), 1);
    else if (sign === '√') put('root', '√', 1);
    else if (sign === '|') put('bar', '|', 1);
    else if ('([{'.includes(sign)) put('open', sign, 1);
    else if (')]}'.includes(sign)) put('close', sign, 1);
    else if (sign === '/') put('slash', '/', 1);
    else if (sign === '∂' || /^Δ[A-Za-z]/.test(rest)) put('prefix', sign, 1);
    else if (NAME.test(rest)) name(NAME.exec(rest)![0], rest, put);
    else put('operator', escaped(sign), 1);
  }
  return marks;
}

type Put = (kind: Mark['kind'], text: string, length: number, tight?: boolean) => void;

/** What stands in small signs, as one index or power. */
function run(small: string, large: string, kind: 'index' | 'power', rest: string, put: Put): void {
  let length = 0;
  while (length < rest.length && small.includes(rest[length]!)) length++;
  const text = [...rest.slice(0, length)].map((sign) => large[small.indexOf(sign)]!).join('');
  put(kind, element('mn', text), length);
}

/** `_` takes a word or number with what follows a comma right behind, `^` a name or number; both take brackets. */
function script(sign: string, rest: string, put: Put): void {
  const kind = sign === '_' ? 'index' : 'power';
  const word = sign === '_' ? /^_([A-Za-z0-9α-ω]+(?:,[a-z]+)*)/.exec(rest) : /^\^(\d+(?:\.\d+)?|[A-Za-z])/.exec(rest);
  if (word === null) put(kind, '', 1);
  else put(kind, element(/^\d/.test(word[1]!) ? 'mn' : 'mi', word[1]!), word[0].length);
}

/** Letters: a function, words, a product of letters, or a name with a number behind it as its index. */
function name(letters: string, rest: string, put: Put): void {
  const behind = rest.slice(letters.length);
  const index = /^(\d+(?:,[a-z]+)?)(?![\d.])/.exec(behind);
  const joined = /^[a-z]{2,}-[a-z]{2,}/.exec(rest);
  if (joined !== null) {
    put('words', joined[0], joined[0].length);
    return;
  }
  const single = [...letters].length === 1 || /^.\u0307$/u.test(letters);
  if (FUNCTIONS.has(letters)) {
    put('function', letters, letters.length);
    return;
  }
  // An article, and what belongs to somebody.
  if (letters === 'a' && /^ [a-z]{3}/.test(behind)) {
    put('words', letters, 1);
    return;
  }
  if (/^[a-z]{2,}$/.test(letters) && behind.startsWith("'s ")) {
    put('words', `${letters}’s`, letters.length + 2);
    return;
  }
  if (index !== null && letters !== 'eta') {
    put('name', letters, letters.length);
    put('index', element('mn', index[1]!), index[1]!.length);
    return;
  }
  if (single) {
    put('name', letters, letters.length);
    return;
  }
  // dT, ρc and the like are letters side by side; θT and γs are an angle with its index.
  if (/^d[A-Za-zΑ-ω]$/.test(letters)) {
    put('prefix', 'd', 1);
    return;
  }
  if (/^[Α-ω]/.test(letters)) {
    const first = [...letters][0]!;
    put('name', first, first.length);
    if (/^[θγ]./.test(letters)) put('index', element('mi', letters.slice(1)), letters.length - 1);
    return;
  }
  if (letters === 'eta' && index !== null) {
    put('name', 'η', 3);
    put('index', element('mn', index[1]!), index[1]!.length);
    return;
  }
  put(/^[a-z]{2,}$/.test(letters) || /^[A-Z][a-z]{3,}$/.test(letters) ? 'words' : 'name', letters, letters.length);
}
