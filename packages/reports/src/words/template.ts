// Sentences with places in them: `{name}` for a fact, `{0.5 m}` for a number that the sentence itself brings, in SI.

const LITERAL = /^(-?[\d.]+(?:e[+-]?\d+)?) (\S+)$/;

/** Fills the places of a sentence; a name that the sentence has and the facts have not is a fault of the program. */
export function template<F>(
  sentence: string,
  facts: Readonly<Record<string, F>>,
  words: (fact: F | { readonly value: number; readonly unit: string }) => string,
): string {
  return sentence.replace(/\{([^{}]+)\}/g, (_, place: string) => {
    const literal = LITERAL.exec(place);
    if (literal !== null) return words({ value: Number(literal[1]), unit: literal[2]! });
    if (!Object.hasOwn(facts, place)) throw new TypeError(`no fact "${place}" for "${sentence}"`);
    return words(facts[place]!);
  });
}
