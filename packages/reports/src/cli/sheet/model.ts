// What an answer is for people: a few blocks in reading order, in SI; how they look is each format's.
import type { WorkingStep } from '@noonloop/sim-core';
import type { ExitCode } from '../exit-codes.ts';

/** A column of a table. */
export interface Column {
  readonly label: string;
  /** Of its numbers, in SI as the library has them; `%` for shares. Left out: texts and plain numbers. */
  readonly unit?: string;
}

/** Text, a number in the unit of its column, or nothing. */
export type Cell = string | number | null;

/** A table. */
export interface Table {
  readonly kind: 'table';
  /** A plain word by which `--table` finds it. */
  readonly name: string;
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly Cell[])[];
  /** Whether its last column holds sentences, too long for a line of text. */
  readonly isWordy?: true;
}

/** A part of a sheet. */
export type Block =
  | { readonly kind: 'heading'; readonly text: string }
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'list'; readonly items: readonly string[] }
  | Table
  /** Lines of a working, for whoever checks it by hand. */
  | { readonly kind: 'working'; readonly title: string; readonly steps: readonly WorkingStep[] }
  /** Lines to copy into a file. */
  | { readonly kind: 'lines'; readonly text: string }
  /** What can hurt someone. */
  | { readonly kind: 'caution'; readonly text: string }
  | { readonly kind: 'picture'; readonly svg: string; readonly words: string };

/** An answer as people read it. */
export interface Sheet {
  readonly title: string;
  readonly blocks: readonly Block[];
}

/** What a word answers. */
export interface Answer {
  readonly sheet: Sheet;
  /** For machines: the library's own result, in SI. */
  readonly data: unknown;
  /** Files that options asked for besides. */
  readonly files?: readonly { readonly option: string; readonly text: string }[];
  /** Exit code, where it is not that of success. */
  readonly exit?: ExitCode;
  /** Other formats, by name. */
  readonly formats?: Readonly<Record<string, () => string | Promise<string>>>;
}

/** A heading. */
export const heading = (text: string): Block => ({ kind: 'heading', text });
/** A sentence or two. */
export const sentences = (text: string): Block => ({ kind: 'text', text });
/** A list, or nothing where it is empty. */
export const listOf = (title: string, items: readonly string[]): readonly Block[] =>
  items.length === 0 ? [] : [heading(title), { kind: 'list', items }];
/** Cautions, each a block. */
export const cautionBlocks = (texts: readonly string[]): readonly Block[] =>
  texts.map((text): Block => ({ kind: 'caution', text }));
/** A table. */
export const table = (name: string, columns: readonly Column[], rows: readonly (readonly Cell[])[]): Table => ({
  kind: 'table',
  name,
  columns,
  rows,
});
/** A table whose last column holds sentences. */
export const wordyTable = (name: string, columns: readonly Column[], rows: readonly (readonly Cell[])[]): Table => ({
  ...table(name, columns, rows),
  isWordy: true,
});
