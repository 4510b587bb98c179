// Names that stand twice in one object of a long JSON text, which the language's own reader takes without a word.
import { EXIT, Refusal } from './exit-codes.ts';

const TOKEN = /"(?:[^"\\]|\\.)*"(\s*:)?|[{}]/gs;

/** Refuses a text with a name twice in one object. @param text - JSON that can be read. @param path - Name for errors. */
export function checkJsonNames(text: string, path: string): void {
  const open: Set<string>[] = [];
  for (const token of text.matchAll(TOKEN)) {
    const [word, colon] = token;
    if (word === '{') open.push(new Set());
    else if (word === '}') open.pop();
    else if (colon !== undefined) {
      const name: unknown = JSON.parse(word.slice(0, word.length - colon.length));
      const seen = open.at(-1)!;
      if (seen.has(name as string)) throw repeated(text, token.index, String(name), path);
      seen.add(name as string);
    }
  }
}

function repeated(text: string, at: number, name: string, path: string): Refusal {
  const line = text.slice(0, at).split('\n').length;
  const words = `found ${JSON.stringify(name.slice(0, 40))} a second time, expected each field once. Remove one of the two.`;
  return new Refusal(EXIT.input, [`${path}, line ${line}: ${words}`]);
}
