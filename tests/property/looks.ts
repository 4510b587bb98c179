import { table } from '../bench/page-tables.ts';
import { LAWS, type Law, type Look } from './invariants.ts';

/** What a part of a run of random designs looked at: a line of its log. */
export interface Chunk {
  readonly seed: number;
  readonly days: number;
  /** Steps an hour that families took in turn; 0: the design's own. */
  readonly steps: string;
  readonly runs: number;
  readonly looks: readonly (readonly [Law, Look])[];
}

const grouped = (count: number): string => count.toLocaleString('en-US');

/** How often each law was looked at and broken, and how near anything came to what it allows; first what was run. */
export function looksTable(chunks: readonly Chunk[]): string {
  const runs = new Map<string, number>();
  for (const { days, runs: count, steps } of chunks) {
    const kind = `${days} days at ${steps} steps an hour`;
    runs.set(kind, (runs.get(kind) ?? 0) + count);
  }
  const looks = chunks.flatMap((chunk) => chunk.looks);
  const rows = (Object.keys(LAWS) as Law[]).map((law) => {
    const own = looks.filter(([name]) => name === law).map(([, look]) => look);
    const total = (key: 'broken' | 'looks'): number => own.reduce((sum, look) => sum + look[key], 0);
    const near = own.map(({ nearest }) => nearest).filter(Number.isFinite);
    const [says, of] = LAWS[law];
    const nearest =
      near.length === 0
        ? '-'
        : law === 'balance'
          ? Math.max(...near).toExponential(1)
          : `${Math.min(...near).toPrecision(2)} K`;
    return [says, grouped(total('looks')), of, nearest, grouped(total('broken'))];
  });
  const kinds = [...runs].map(([kind, count]) => `${grouped(count)} runs of ${kind}`).join('. ');
  return `${kinds}. Of the steps 0 are the design's own.\n\n${table(['law', 'looks', 'at', 'nearest', 'broken'], rows)}`;
}
