import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const folder = (name: string): string => fileURLToPath(new URL(`../../docs/${name}/`, import.meta.url));

/** Words of a sentence in theory, and in guides, whose steps may list what to bring; [requirement]. */
const MOST_WORDS = { theory: 30, guides: 38 };
/** Tables made by code, whose cells are no prose. */
const MADE_BY_CODE = ['cautions.md', 'codes.md', 'design-fields.md', 'trust.md'];

/** Sentences of a page, without equations, tables, headings and code; a colon before a capital or a number ends one. */
function sentencesOf(page: string): string[] {
  const prose = page
    .replace(/<!--[\s\S]*?-->|```[\s\S]*?```/g, '\n\n')
    .split('\n')
    .map((line) => (/^( {4}|\||#|!\[)/.test(line) ? '' : line))
    .join('\n');
  return prose.split(/\n\s*\n|\n(?=\s*(?:[-*]|\d+\.) )/).flatMap((paragraph) =>
    paragraph
      .replace(/\s+/g, ' ')
      .replace(/\]\([^)]*\)/g, ']')
      .replace(/`[^`]*`/g, 'code')
      .split(/(?<=[.!?])["”)*_]*\s+(?=\S)|(?<=:)["”]*\s+(?=[A-Z“"(\d[*])/)
      .map((sentence) => sentence.trim()),
  );
}

const wordsIn = (sentence: string): number => sentence.split(' ').filter((word) => /[\p{L}\d]/u.test(word)).length;

const sentencesIn = (name: keyof typeof MOST_WORDS) =>
  readdirSync(folder(name))
    .filter((file) => file.endsWith('.md') && !MADE_BY_CODE.includes(file))
    .flatMap((file) => sentencesOf(readFileSync(folder(name) + file, 'utf8')).map((text) => ({ file, text })));

describe('sentences of docs [requirement: read once, understood]', () => {
  it.each(['theory', 'guides'] as const)('of %s are short', (name) => {
    const sentences = sentencesIn(name);
    expect(sentences.length).toBeGreaterThan(600);
    expect(sentences.filter(({ text }) => wordsIn(text) > MOST_WORDS[name])).toEqual([]);
  });

  it('are told apart as a reader does [by hand]', () => {
    const page =
      '# Title\n\nOne is here. Two\nis `a; b` too: and goes on.\n\n    x = y\n\n- A point.\n- Another one.\n';
    expect(sentencesOf(page).filter((text) => text !== '')).toEqual([
      'One is here.',
      'Two is code too: and goes on.',
      '- A point.',
      '- Another one.',
    ]);
    expect(wordsIn('Two is code too — and goes on.')).toBe(7);
  });
});
