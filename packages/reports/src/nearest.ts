import { distance } from 'fastest-levenshtein';

/** Longest word that is looked at. */
const LONGEST = 60;

/**
 * The name that a misspelt word most likely meant; `null` where none is near. Two letters off are taken in words of four and more,
 * for two may be changed about; in longer ones two fifths of the letters. Capitals and signs do not count. @internal
 */
export function nearest(word: string, names: readonly string[]): string | null {
  if (word.length > LONGEST) return null;
  const plain = (text: string): string => text.toLowerCase().replace(/[^a-z0-9]/g, '');
  const written = plain(word);
  let least = Math.max(written.length >= 4 ? 2 : 1, Math.floor(0.4 * written.length)) + 1;
  let best: string | null = null;
  for (const name of names) {
    const far = isMuddled(written, plain(name)) ? 1 : distance(written, plain(name));
    if (far < least) [best, least] = [name, far];
  }
  return best;
}

/** Whether two words have the same letters in another order. */
const isMuddled = (a: string, b: string): boolean => a !== b && [...a].sort().join('') === [...b].sort().join('');
