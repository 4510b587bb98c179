// What matters most: the outcome of a sensitivity study by input, whichever method found it.
import type { ElementaryEffects, Measure, Morris, OneAtATime, Sobol, SobolIndices } from '@noonloop/sim-core';
import type { Cell, Column } from '../sheet/model.ts';
import { unitOf } from './measures.ts';
import type { InfluenceBar } from './pictures.ts';

/** Inputs by what they do to one key figure, the strongest first. */
interface Influence {
  /** Whether the bars are shares of the variance, not changes of the key figure. */
  readonly isShare: boolean;
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly Cell[])[];
  readonly bars: readonly InfluenceBar[];
}

/** Unit of a difference. */
export const difference = (unit: string): string => (unit === '°C' ? 'K' : unit);

/** The influence that an outcome tells. @param kind - Of the study. */
export function influenceOf(kind: string, outcome: unknown, number: Measure): Influence {
  if (kind === 'one-at-a-time') return ofOneAtATime(outcome as OneAtATime, number);
  return kind === 'morris' ? ofMorris(outcome as Morris, number) : ofSobol(outcome as Sobol, number);
}

/** What a method says of one key figure, by input. */
const ofNumber = <T>(by: Readonly<Record<string, Readonly<Partial<Record<Measure, T>>>>>, number: Measure) =>
  Object.entries(by).flatMap(([name, of]) => (of[number] === undefined ? [] : [{ name, of: of[number] as T }]));

function ofOneAtATime({ changes }: OneAtATime, number: Measure): Influence {
  const found = ofNumber(changes, number).sort((a, b) => Math.abs(b.of.change ?? 0) - Math.abs(a.of.change ?? 0));
  const unit = unitOf(number);
  return {
    isShare: false,
    columns: [
      { label: 'input' },
      { label: 'at its lowest', unit },
      { label: 'in the base', unit },
      { label: 'at its highest', unit },
      { label: 'change', unit: difference(unit) },
    ],
    rows: found.map(({ name, of }) => [name, of.atFrom, of.atBase, of.atTo, of.change]),
    bars: found.map(({ name, of: { atFrom, atBase, atTo } }) => ({
      name,
      from: (atFrom ?? atBase ?? 0) - (atBase ?? 0),
      to: (atTo ?? atBase ?? 0) - (atBase ?? 0),
    })),
  };
}

function ofMorris({ effects }: Morris, number: Measure): Influence {
  const found = ofNumber<ElementaryEffects>(effects, number).sort((a, b) => b.of.meanSize - a.of.meanSize);
  const unit = difference(unitOf(number));
  return {
    isShare: false,
    columns: [
      { label: 'input' },
      { label: 'mean size of the effect', unit },
      { label: 'mean effect', unit },
      { label: 'deviation', unit },
    ],
    rows: found.map(({ name, of }) => [name, of.meanSize, of.mean, of.deviation]),
    bars: found.map(({ name, of }) => ({ name, from: 0, to: of.meanSize })),
  };
}

function ofSobol({ indices }: Sobol, number: Measure): Influence {
  const found = ofNumber<SobolIndices>(indices, number).sort((a, b) => b.of.total.share - a.of.total.share);
  return {
    isShare: true,
    columns: [
      { label: 'input' },
      { label: 'by itself', unit: '%' },
      { label: 'with all others', unit: '%' },
      { label: 'at least', unit: '%' },
      { label: 'at most', unit: '%' },
    ],
    rows: found.map(({ name, of }) => [name, of.first.share, of.total.share, of.total.low, of.total.high]),
    bars: found.map(({ name, of: { total } }) => ({
      name,
      from: 0,
      to: total.share,
      low: total.low,
      high: total.high,
    })),
  };
}
