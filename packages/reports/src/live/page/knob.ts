/** What a knob is: where it stands in the design, what it shows, what turning it writes. */
import type { SystemDesign } from '@noonloop/sim-core';
import type { Units } from '../../units.ts';
import type { Plain, Turned, TurnReply } from '../types.ts';
import { AMOUNTS, type Amount } from './amounts.ts';

/** What a knob reads from. */
export interface Ground {
  /** The last year that ran. */
  readonly reply: TurnReply;
  readonly design: SystemDesign;
  /** What was turned, newer than {@link reply} while a year runs. */
  readonly turned: Turned;
  readonly units: Units;
  /** What stands in a field of the design or prices as it was written or turned; `undefined` where nothing does. */
  readonly written: (path: string) => Plain | undefined;
  /** What stood there when the page began. */
  readonly first: (path: string) => Plain | undefined;
}

/** What turning writes; `undefined` gives a field back as the page began. */
export type Changes = Readonly<Record<string, Plain | undefined>>;

interface Common {
  readonly id: string;
  readonly label: string;
  readonly group: 'roof' | 'house' | 'loop' | 'money';
  /** Places whose faults belong here. */
  readonly paths: readonly string[];
  /** Whether it is of use just now; always where left out. */
  readonly shown?: (ground: Ground) => boolean;
  /** Said below it. */
  readonly help?: string;
}

/** A number with a slider. */
export interface NumberKnob extends Common {
  readonly kind: 'number';
  readonly amount: Amount;
  /** Ends and step of the slider in each system of units; the field takes more. */
  readonly range: Readonly<Record<Units, readonly [least: number, most: number, step: number]>>;
  /** In shown units; `null` for none. */
  readonly read: (ground: Ground) => number | null;
  /** @param value - in shown units */
  readonly write: (value: number, ground: Ground) => Changes;
  /** What an empty field writes; without it an empty field is put back. */
  readonly none?: { readonly word: string; readonly changes: Changes };
  /** The value in words, where they say more. */
  readonly words?: (value: number) => string;
  /** Without a slider. */
  readonly fieldOnly?: boolean;
}

/** One of several. */
export interface ChoiceKnob extends Common {
  readonly kind: 'choice';
  readonly choices: (ground: Ground) => readonly (readonly [value: string, words: string])[];
  readonly read: (ground: Ground) => string;
  readonly write: (value: string, ground: Ground) => Changes;
}

/** A knob. */
export type Knob = NumberKnob | ChoiceKnob;

/** Ends and step of a slider. */
export type Range = readonly [number, number, number];
/** The same in both systems of units. */
export const both = (range: Range): Readonly<Record<Units, Range>> => ({ metric: range, us: range });

/** A number at one place of the design. */
export function field(
  path: string,
  of: Omit<NumberKnob, 'kind' | 'id' | 'paths' | 'read' | 'write' | 'range'> & {
    readonly metric: Range;
    readonly us?: Range;
  },
): NumberKnob {
  const { metric, us = metric, ...rest } = of;
  return {
    kind: 'number',
    id: path,
    paths: [path],
    range: { metric, us },
    read: ({ design, units }) => {
      const value = path.split('.').reduce<unknown>((at, key) => (at as Record<string, unknown> | null)?.[key], design);
      return typeof value === 'number' ? AMOUNTS[of.amount].show(value, units) : null;
    },
    write: (value, { units }) => ({ [path]: AMOUNTS[of.amount].write(value, units) }),
    ...rest,
  };
}
