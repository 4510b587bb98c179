// Sentences with quantities in them, kept apart for readers in other units.

/** A number in a sentence, with its unit and the decimals that it is worth. */
export interface SaidQuantity {
  /** The number. */
  readonly value: number;
  /** Its unit, as in the sentence. */
  readonly unit: string;
  /** Decimals. */
  readonly digits: number;
}

/** A sentence, and the pieces that it is made of: words and quantities. */
export interface Said {
  /** The sentence, in metric units. */
  readonly text: string;
  /** Its pieces in order; `@noonloop/reports` shows their quantities in other units. */
  readonly parts: readonly (string | SaidQuantity)[];
}

/** A quantity for {@link said}. */
export const amount = (value: number, unit: string, digits = 0): SaidQuantity => ({ value, unit, digits });

/** Tag of a template whose quantities are kept apart. */
export function said(words: TemplateStringsArray, ...values: readonly (string | number | SaidQuantity)[]): Said {
  const parts = words.flatMap((word, at): (string | SaidQuantity)[] => {
    const value = values[at];
    return value === undefined ? [word] : [word, typeof value === 'number' ? String(value) : value];
  });
  return { text: parts.map(inMetric).join(''), parts };
}

const inMetric = (part: string | SaidQuantity): string =>
  typeof part === 'string' ? part : `${part.value.toFixed(part.digits).replace('-', '−')} ${part.unit}`;
