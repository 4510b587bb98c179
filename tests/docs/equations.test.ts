import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { equation, equationsOf } from '../../scripts/site/equations.ts';

// Requirement: an equation of a theory page reads in MathML as it reads in the page. What each form must become is the common
// practice of setting mathematics (ISO 80000-2: variables lean, names of functions and units stand upright).

const i = (name: string) => `<mi>${name}</mi>`;
const plain = (set: string): string => set.replace(/<mspace[^>]*><\/mspace>|<\/?mrow>|<\/?math[^>]*>/g, '');

describe('an equation [requirement]', () => {
  it('sets indices, powers and both', () => {
    expect(plain(equation('T_in'))).toBe('<msub><mi>T</mi><mi mathvariant="normal">in</mi></msub>');
    expect(plain(equation('a1²'))).toBe('<msubsup><mi>a</mi><mn>1</mn><mn>2</mn></msubsup>');
    expect(plain(equation('x^(n + 2)'))).toBe(`<msup>${i('x')}${i('n')}<mo>+</mo><mn>2</mn></msup>`);
  });

  it('takes a bracket beside a stroke away, and keeps factors outside the fraction', () => {
    expect(plain(equation('k (a + b)/(c d)'))).toBe(
      `${i('k')}<mfrac>${i('a')}<mo>+</mo>${i('b')}${i('c')}${i('d')}</mfrac>`,
    );
    expect(plain(equation('C dT/dt'))).toBe(`${i('C')}<mfrac>${i('d')}${i('T')}${i('d')}${i('t')}</mfrac>`);
    expect(plain(equation('a + 2 S / (b c)'))).toBe(
      `${i('a')}<mo>+</mo><mfrac><mn>2</mn>${i('S')}${i('b')}${i('c')}</mfrac>`,
    );
  });

  it('takes the argument of a function along, with brackets and without', () => {
    expect(plain(equation('1/cos θ'))).toBe(`<mfrac><mn>1</mn><mi mathvariant="normal">cos</mi>${i('θ')}</mfrac>`);
    expect(plain(equation('ln(a/b)/c'))).toMatch(/^<mfrac><mi mathvariant="normal">ln<\/mi>.*<mi>c<\/mi><\/mfrac>$/);
  });

  it('keeps units upright behind their number, and words as words', () => {
    expect(plain(equation('0.5 W/(m²·K)'))).toBe('<mn>0.5</mn><mi mathvariant="normal">\u2009W/(m²·K)</mi>');
    expect(plain(equation('0 where it rains'))).toContain('<mi mathvariant="normal">where</mi>');
  });

  it('lets nothing through that a page could run', () => {
    expect(equation('a < <script>')).not.toContain('<script');
    expect(equation('`<img onerror=x>`')).not.toContain('<img');
  });
});

it('every equation of the theory pages is set whole: well-formed, and with all its letters and digits [requirement]', () => {
  const folder = fileURLToPath(new URL('../../docs/theory/', import.meta.url));
  const signs = (text: string): string =>
    text
      .normalize('NFKD')
      .replace(/eta(?=\d)/g, '')
      .replace(/[^\p{L}\p{N}]/gu, '');
  let count = 0;
  const broken: string[] = [];
  for (const name of readdirSync(folder)) {
    const page = readFileSync(folder + name, 'utf8');
    for (const block of page.split(/\n{2,}/)) {
      const set = equationsOf(block);
      if (set === block) continue;
      count++;
      const open: string[] = [];
      for (const [, close, tag] of set.matchAll(/<(\/?)([a-z]+)[^>]*>/g)) {
        if (close === '') open.push(tag!);
        else if (open.pop() !== tag) broken.push(`${name}, ${tag} closed: ${block}`);
      }
      if (open.length > 0) broken.push(`${name}, ${open} open: ${block}`);
      const text = set.replace(/<[^>]*>/g, '').replace(/&\w+;/g, '');
      const [before, after] = [block, text].map((one) => [...signs(one).replaceAll('η', '')].sort().join(''));
      if (before !== after) broken.push(`${name}, ${before} became ${after}: ${block}`);
    }
  }
  expect(broken).toEqual([]);
  expect(count).toBeGreaterThan(50);
});
