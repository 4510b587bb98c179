// What a design of a sweep costs, and the designs that no other beats in cost and saving at once.
import type { FrontierPoint, Measure, StudyRow } from '@noonloop/sim-core';
import { EXIT, Refusal } from '../exit-codes.ts';
import { type Block, sentences, table } from '../sheet/model.ts';
import type { BuiltStudy } from './build.ts';
import { shownValue, unitOf, wordsOf } from './measures.ts';
import type { WrittenAs } from './written.ts';

/** Money of a row: "fixed" and, for each place, money by the unit or by the value as written; `null` where a value has no price. */
export function priceOf({ said: { price = {} } }: BuiltStudy, { inputs }: StudyRow, written: WrittenAs): number | null {
  let sum = 0;
  for (const [place, of] of Object.entries(price)) {
    if (place === 'fixed') {
      if (typeof of === 'number') sum += of;
      continue;
    }
    const value = written(place, inputs[place]);
    if (typeof of === 'number' && typeof value === 'number') sum += of * value;
    else if (typeof of === 'object' && Object.hasOwn(of, String(value))) sum += of[String(value)]!;
    else return null;
  }
  return sum;
}

/** The frontier as blocks of a sheet. */
export async function frontierBlocks(
  built: BuiltStudy,
  rows: readonly StudyRow[],
  number: Measure,
  written: WrittenAs,
): Promise<{ readonly blocks: readonly Block[]; readonly points: readonly FrontierPoint[] }> {
  const { frontier } = await import('@noonloop/sim-core');
  const places = Object.keys(built.said.vary);
  const strange = Object.keys(built.said.price!).filter((place) => place !== 'fixed' && !places.includes(place));
  const placesOf = ({ inputs }: StudyRow) =>
    places.map((place) => `${place} ${shownValue(written(place, inputs[place]))}`).join(', ');
  const unpriced = rows.find((row) => priceOf(built, row, written) === null);
  if (strange.length > 0 || unpriced !== undefined) {
    const line = built.settings.lineOf('price');
    const words =
      strange.length > 0
        ? `found a price for ${strange.join(', ')}, expected prices of what varies: ${places.join(', ')}.`
        : `found no price for ${placesOf(unpriced!)}. Give money by the unit of a number, or { value: money }.`;
    throw new Refusal(EXIT.input, [`${built.settings.path}, line ${line}, price: ${words}`]);
  }
  const points = await frontier(rows, { cost: (row) => priceOf(built, row, written), saving: number });
  return {
    points,
    blocks: [
      sentences(`For ${points.length} of ${rows.length} designs there is no cheaper one that does as well.`),
      table(
        'frontier',
        [
          { label: 'design' },
          ...places.map((label) => ({ label })),
          { label: 'price' },
          { label: wordsOf(number), unit: unitOf(number) },
        ],
        points.map(({ cost, saving, row }) => [
          String(row.index + 1),
          ...places.map((place) => shownValue(written(place, row.inputs[place]))),
          cost,
          saving,
        ]),
      ),
    ],
  };
}
