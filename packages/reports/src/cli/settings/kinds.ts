// The kinds of settings file: how each is called, what it cannot be without, and which word reads it.
import { createRequire } from 'node:module';
import type { ZodType } from 'zod';
import { readText } from '../files.ts';

/** Name of a kind of file. */
export type KindName =
  | 'design'
  | 'months'
  | 'layout'
  | 'meter'
  | 'log'
  | 'prices'
  | 'survey'
  | 'yard-test'
  | 'collectors'
  | 'sizing'
  | 'study';

/** One kind of settings file. */
export interface Kind {
  /** In words, with its article. */
  readonly words: string;
  /** Fields at the top without which it is none. */
  readonly needs: readonly string[];
  /** How it is read. */
  readonly use: string;
  /** Whether its published schema stands in the package of the physics. */
  readonly isPhysics?: true;
  /** What checks it here; left out: the library checks all of it. */
  readonly schema?: () => Promise<ZodType>;
}

/** Every kind. */
export const KINDS: Readonly<Record<KindName, Kind>> = {
  design: {
    words: 'a design',
    needs: ['array', 'tank'],
    use: 'noonloop run <file> --weather <file>',
    isPhysics: true,
  },
  months: {
    words: 'twelve monthly means',
    needs: ['monthly'],
    use: 'noonloop make-weather <file>',
    schema: async () => (await import('./weather-kinds.ts')).monthsSchema,
  },
  layout: {
    words: 'the layout of a weather table',
    needs: ['columns', 'stamps'],
    use: '--layout <file>',
    schema: async () => (await import('./weather-kinds.ts')).layoutSchema,
  },
  meter: {
    words: 'a record of water used',
    needs: ['file', 'column', 'quantity'],
    use: 'noonloop meter <file>, or --draw <file>',
    schema: async () => (await import('./record-kinds.ts')).meterSchema,
  },
  log: {
    words: 'a notebook of gauge readings',
    needs: ['file', 'columns'],
    use: 'noonloop check-log <design> --log <file>',
    schema: async () => (await import('./record-kinds.ts')).logSchema,
  },
  prices: {
    words: 'prices',
    needs: ['currency', 'discountRate'],
    use: '--prices <file>',
  },
  survey: {
    words: 'a survey of a used panel',
    needs: ['length', 'width', 'covers'],
    use: 'noonloop rate <file>',
    isPhysics: true,
  },
  'yard-test': {
    words: 'the readings of a yard test',
    needs: ['points'],
    use: 'noonloop yard-test <file>',
    isPhysics: true,
  },
  collectors: {
    words: 'collectors to choose from',
    needs: ['candidates'],
    use: 'noonloop collectors <design> --candidates <file>',
    schema: async () => (await import('./job-kinds.ts')).collectorsSchema,
  },
  sizing: {
    words: 'limits of the sizing',
    needs: [],
    use: 'noonloop size <design> --limits <file>',
    schema: async () => (await import('./job-kinds.ts')).sizingSchema,
  },
  study: {
    words: 'a study',
    needs: ['study'],
    use: 'noonloop study <file>',
    schema: async () => (await import('./job-kinds.ts')).studySchema,
  },
};

/** Names of all kinds. */
export const KIND_NAMES = Object.keys(KINDS) as KindName[];

/** A published schema, as far as it is read here. */
export interface JsonSchema {
  readonly properties?: Readonly<Record<string, JsonSchema>>;
  readonly additionalProperties?: boolean | JsonSchema;
  readonly items?: JsonSchema;
  readonly anyOf?: readonly JsonSchema[];
}

/** Text of the published schema of a kind. */
export function publishedSchema(kind: KindName): Promise<string> {
  const owner = KINDS[kind].isPhysics === true ? 'sim-core' : 'reports';
  return readText(createRequire(import.meta.url).resolve(`@noonloop/${owner}/schema/${kind}-1.json`));
}
