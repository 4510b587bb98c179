import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const folder = fileURLToPath(new URL('../../docs/theory/', import.meta.url));

/** Words of a sentence; [requirement]. */
const MOST_WORDS = 40;
/** Sentences of more than 30 words, of all pages; [requirement: few]. This number only falls. */
const MOST_LONG = 130;

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

const pages = readdirSync(folder).filter((file) => file.endsWith('.md'));
const sentences = pages.flatMap((file) =>
  sentencesOf(readFileSync(folder + file, 'utf8')).map((text) => ({ file, text, words: wordsIn(text) })),
);

describe('sentences of docs/theory [requirement: read once, understood]', () => {
  it('have at most 40 words', () => {
    expect(sentences.length).toBeGreaterThan(800);
    expect(sentences.filter(({ words }) => words > MOST_WORDS)).toEqual([]);
  });

  it('seldom have more than 30', () => {
    expect(sentences.filter(({ words }) => words > 30).length).toBeLessThanOrEqual(MOST_LONG);
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
