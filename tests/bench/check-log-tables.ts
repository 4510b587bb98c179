// Tables of the proof of checkLog.
import { CAUSES, type CauseCode } from '../../packages/sim-core/src/advice/check/causes.ts';
import type { DoubtCode } from '../../packages/sim-core/src/advice/check/doubts.ts';
import { sharesLike, table } from './page-tables.ts';

/** First hours of the runs: late winter, spring, summer, autumn. */
export const SEASONS = { 'from February': 1000, 'from April': 2400, 'from July': 4600, 'from October': 6800 };

/** One log with a fault planted. */
export interface Outcome {
  readonly set: string;
  readonly season: string;
  readonly cause: CauseCode;
  readonly first: CauseCode;
  readonly named: CauseCode | 'cannot tell';
  readonly inFirstTwo: boolean;
  /** Whether a slip of the writing was seen, where there is none. */
  readonly doubted: boolean;
}

/** A slip of the writing, planted and looked for. */
export interface Slip {
  readonly planted: DoubtCode;
  readonly found: readonly DoubtCode[];
  readonly cause: CauseCode;
  readonly first: CauseCode;
}

export const percent = (part: number, whole: number): string =>
  whole === 0 ? '–' : `${Math.round((100 * part) / whole)} %`;
/** A share with where it truly lies, 95 %. */
const likely = (part: number, whole: number): string => {
  if (whole === 0) return '–';
  const [low, high] = sharesLike(part / whole, whole).map((end) => Math.round(100 * end));
  return `${percent(part, whole)} (${low} to ${high})`;
};
const count = (of: readonly Outcome[], test: (outcome: Outcome) => boolean): number => of.filter(test).length;

export function rates(outcomes: readonly Outcome[], by: 'set' | 'season'): string {
  const names = [...new Set(outcomes.map((outcome) => outcome[by]))];
  const rows = names.map((name) => {
    const all = outcomes.filter((outcome) => outcome[by] === name);
    const faulty = all.filter(({ cause }) => cause !== 'healthy');
    const healthy = all.filter(({ cause }) => cause === 'healthy');
    return [
      name,
      faulty.length,
      likely(
        count(faulty, ({ cause, first }) => first === cause),
        faulty.length,
      ),
      likely(
        count(faulty, ({ inFirstTwo }) => inFirstTwo),
        faulty.length,
      ),
      likely(
        count(faulty, ({ cause, named }) => named === cause),
        faulty.length,
      ),
      likely(
        count(faulty, ({ cause, named }) => named !== cause && named !== 'cannot tell' && named !== 'healthy'),
        faulty.length,
      ),
      likely(
        count(faulty, ({ named }) => named === 'healthy'),
        faulty.length,
      ),
      likely(
        count(faulty, ({ named }) => named === 'cannot tell'),
        faulty.length,
      ),
      healthy.length,
      likely(
        count(healthy, ({ named }) => named === 'healthy'),
        healthy.length,
      ),
      likely(
        count(healthy, ({ named }) => named === 'cannot tell'),
        healthy.length,
      ),
      likely(
        count(healthy, ({ named }) => named !== 'healthy' && named !== 'cannot tell'),
        healthy.length,
      ),
    ];
  });
  const head = [
    by === 'set' ? 'gauges' : 'readings',
    'faulty logs',
    'right first',
    'among first two',
    'named, right',
    'named, another fault',
    'called healthy',
    'cannot tell',
    'healthy logs',
    'called healthy',
    'cannot tell',
    'false alarm',
  ];
  return table(head, rows);
}

export function confusion(outcomes: readonly Outcome[], set: string): string {
  const named = [...CAUSES, 'cannot tell'] as const;
  const rows = CAUSES.map((cause) => {
    const all = outcomes.filter((outcome) => outcome.set === set && outcome.cause === cause);
    return [cause, ...named.map((name) => count(all, (outcome) => outcome.named === name) || '')];
  });
  return table(['planted ↓, named →', ...named], rows);
}

/** Slips of the writing, planted and named. */
export function slipTable(slips: readonly Slip[]): string {
  const rows = [...new Set(slips.map(({ planted }) => planted))].map((code) => {
    const all = slips.filter(({ planted }) => planted === code);
    const of = (test: (slip: Slip) => boolean): string => percent(all.filter(test).length, all.length);
    return [
      code,
      all.length,
      of(({ found }) => found.includes(code)),
      of(({ found }) => found.some((one) => one !== code)),
      of(({ cause, first, found }) => found.includes(code) && first === cause),
    ];
  });
  return table(['planted', 'logs', 'named', 'another named', 'named, and the cause right first'], rows);
}
